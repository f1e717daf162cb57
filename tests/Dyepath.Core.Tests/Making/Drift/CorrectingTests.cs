using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>How a maker who goes by feel turns what she reads into her next stitches.</summary>
public sealed class CorrectingTests
{
    private const double Free = 1;

    /// <summary>Three stitches late over the next sixty are a twentieth of a stitch each, whatever she read before.</summary>
    [Fact]
    public void By_feel_what_is_off_is_taken_back_by_the_next_reading()
    {
        var maker = new CorrectingByFeel(Free, period: 22, learns: false);
        maker.Read(40, 3, 100);
        Assert.Equal((3.0, -0.05), (maker.Phase, maker.Correction(41)), new Near());
        maker.Read(100, -2, 110);
        Assert.Equal((-2.0, 0.2), (maker.Phase, maker.Correction(105)), new Near());
        Assert.False(maker.AsksForRecount(110, 9), "Who goes by feel counts once.");
    }

    [Theory]
    [InlineData(5, -0.02)]
    [InlineData(-5, 0.02)]
    [InlineData(1, -0.01)]
    public void Hands_correct_by_no_more_than_they_can(int reading, double correction)
    {
        var maker = new CorrectingByFeel(0.02, period: 22, learns: false);
        maker.Read(100, reading, 200);
        Assert.Equal(correction, maker.Correction(150), 1e-12);
    }

    /// <summary>
    /// What the hands do by themselves is what they did, less what she meant to do; she supposes nothing first, and takes the mean of that and
    /// of all that she has seen so far.
    /// </summary>
    [Fact]
    public void Who_learns_takes_the_mean_of_what_her_hands_did_by_themselves()
    {
        var maker = new CorrectingByFeel(Free, period: 1000, learns: true);
        List<double> seen = [0];
        var (phase, meant, at) = (0, 0.0, 0);
        foreach (var (stitches, reading) in new[] { (50, 3), (80, -1), (40, 2), (100, 0), (60, 5), (90, 4) })
        {
            at += stitches;
            seen.Add((double)(reading - phase) / stitches - meant);
            maker.Read(at, reading, at + 70);
            meant = -reading / 70.0 - seen.Average();
            Assert.Equal(meant, maker.Correction(at + 1), 1e-12);
            phase = reading;
        }
    }

    /// <summary>
    /// Hands that change are followed: from the twentieth reading on the newest one weighs a twentieth, so that of an old habit 0.95 to the
    /// power of the readings since is left.
    /// </summary>
    [Fact]
    public void Old_habits_are_forgotten()
    {
        var maker = new CorrectingByFeel(Free, period: 100_000, learns: true);
        var (at, phase, meant) = (0, 0, 0.0);
        List<double> since = [];
        for (var i = 0; i < 90; i++)
        {
            // Sixty readings find nothing; then every hundred stitches come out two late. She takes back what she reads over a thousand.
            var change = i < 60 ? 0 : 2;
            (at, phase) = (at + 100, phase + change);
            maker.Read(at, phase, at + 1000);
            if (i >= 60)
                since.Add(change / 100.0 - meant);
            meant = maker.Correction(at);
            var learnt = since.Select((own, n) => own * 0.05 * Math.Pow(0.95, since.Count - 1 - n)).Sum();
            Assert.Equal(-phase / 1000.0 - learnt, meant, 1e-9);
        }
    }

    /// <summary>A whole round of the colours looks like none: what she learns of it is what she would without.</summary>
    [Theory]
    [InlineData(-2)]
    [InlineData(-1)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_round_of_the_colours_teaches_nothing(int rounds)
    {
        var (one, other) = (new CorrectingByFeel(Free, 22, learns: true), new CorrectingByFeel(Free, 22, learns: true));
        one.Read(100, 2, 200);
        other.Read(100, 2 + rounds * 22, 200);
        // Both take back what they read; half of 2 in 100, beside the nothing that she supposed, is left of either.
        Assert.Equal(-2 / 100.0 - 0.01, one.Correction(101), 1e-12);
        Assert.Equal(-(2 + rounds * 22) / 100.0 - 0.01, other.Correction(101), 1e-12);
    }

    [Fact]
    public void What_is_ripped_back_is_as_it_was_at_the_rows_beginning()
    {
        var maker = new CorrectingByFeel(Free, 22, learns: false);
        maker.Read(100, 2, 150);
        maker.BeginRow(120);
        var (phase, correction) = (maker.Phase, maker.Correction(121));
        maker.Read(150, 5, 200);
        Assert.NotEqual(correction, maker.Correction(151));
        maker.RipBack();
        Assert.Equal((phase, correction), (maker.Phase, maker.Correction(121)));
    }

    private sealed class Near : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) < 1e-12 && Math.Abs(x.Item2 - y.Item2) < 1e-12;

        public int GetHashCode((double, double) obj) => 0;
    }
}
