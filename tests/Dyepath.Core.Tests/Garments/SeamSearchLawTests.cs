using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Rows, side out and first colour of a piece, against every way that it could lie beside seams of any jumps.</summary>
public sealed class SeamSearchLawTests
{
    // Colours of 6, 5, 7 and 4 stitches begin at 0, 6, 11 and 18.
    private const int Period = 22;

    private static readonly int[] Begins = [0, 6, 11, 18];

    private sealed record Tallied(int[][] Jumps, int Later, double Weight);

    [Fact]
    public void Law_what_is_chosen_jumps_least_with_what_it_is_charged()
    {
        Assert.True(SharedFabric.TryCreate(Begun("wrap", "sc", even: true, Direction.Up), null, new Effort(), out var shared, out _), "No fabric.");
        Assert.Equal(Period * (long)ColourRing.Unit, shared.PeriodMicro);
        var (moved, turnedOver, within) = (0, 0, 0);
        Gen.Select(Gen.Int[3, 60], Gen.Double[0.05, 0.7], Gen.Double[-0.9, 0.9],
            Gen.Bool, Gen.Bool, Gen.Int[-22, 21], Gen.Int[0, 100_000]).Holds(
            (rows, high, off, mayChange, mayTurn, wished, seed) =>
            {
                int? start = wished < 0 ? null : wished;
                Length ErrorOf(int count) => Cm(off + high * (count - rows));
                var chosen = SeamSearch.Choose(shared, rows, (mayChange, mayTurn, start), ErrorOf,
                    (count, turned) => [.. Seams(seed, count, turned).Select(Open)]);
                var least = double.PositiveInfinity;
                for (var count = rows - 10; count <= rows + 10; count++)
                {
                    // At most eight rows more or fewer, five at least, and a centimetre off.
                    var error = off + high * (count - rows);
                    if (count != rows && (!mayChange || count <= 4 || Math.Abs(count - rows) > 8 || Math.Abs(error) > 1))
                        continue;
                    for (var turned = 0; turned <= (mayTurn ? 1 : 0); turned++)
                    {
                        for (var at = start ?? 0; at <= (start ?? Period - 1); at++)
                            least = Math.Min(least, Cost(count, turned == 1, at));
                    }
                }
                Assert.Equal(least, Cost(chosen.Rows, chosen.Turned, chosen.Start), 1e-6);
                Assert.True(start is null || chosen.Start == start, "The designer's start is kept.");
                Assert.True((mayChange || chosen.Rows == rows) && (mayTurn || !chosen.Turned), "Nothing is changed that may not be.");
                (moved, turnedOver) = (moved + (chosen.Rows != rows ? 1 : 0), turnedOver + (chosen.Turned ? 1 : 0));
                within += start is null && !Begins.Contains(chosen.Start) ? 1 : 0;

                double Cost(int count, bool turned, int at) =>
                    0.05 * Math.Abs(off + high * (count - rows)) + (turned ? 0.03 : 0) + (count % 2 == 1 ? 0.02 : 0)
                    + (start is null && !Begins.Contains(at) ? 0.5 : 0) + Mean(Seams(seed, count, turned), at);
            },
            seed: 71, cases: 250);
        Assert.True(moved > 20 && turnedOver > 20 && within > 20, $"{moved}, {turnedOver}, {within}");
    }

    /// <summary>Of ways that are as good, the rows that were asked for, not turned over, from the first colour.</summary>
    [Theory]
    [InlineData(20, 0.0, 20)]
    [InlineData(21, 0.0, 20)]
    [InlineData(21, 0.5, 21)]
    public void Where_nothing_jumps_it_stays_as_it_is(int rows, double high, int taken)
    {
        Assert.True(SharedFabric.TryCreate(Begun("wrap", "sc", even: true, Direction.Up), null, new Effort(), out var shared, out _), "No fabric.");
        // An odd row is charged 0.02, and 0.5 cm more than that: 0.025.
        var chosen = SeamSearch.Choose(shared, rows, (true, true, null), count => Cm(high * (count - rows)),
            (_, _) => [Open(new Tallied([[0]], 0, 1))]);
        Assert.Equal(new SeamDecision(taken, false, 0), chosen);
    }

    private static Tallied[] Seams(int seed, int count, bool turned)
    {
        var random = new Random(seed * 131 + count * 2 + (turned ? 1 : 0));
        return [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => new Tallied(
            [.. Enumerable.Range(0, random.Next(1, 3)).Select(_ =>
                Enumerable.Range(0, random.Next(1, 4)).Select(_ => random.Next(0, Period)).ToArray())],
            random.Next(-1, 2), random.Next(1, 20)))];
    }

    private static OpenSeam Open(Tallied seam) => new(
        [.. seam.Jumps.Select(jumps =>
        {
            var meter = new SeamMeter(Period * (long)ColourRing.Unit);
            foreach (var jump in jumps)
                meter.Add(jump * (long)ColourRing.Unit, 0);
            return new JudgedSeam(SeamExtension.Continued, meter);
        })], seam.Later, seam.Weight);

    /// <summary>Round the colours whichever way is shorter, of the extension that comes nearest, by the seams' lengths.</summary>
    private static double Mean(Tallied[] seams, int start) => seams.Sum(s => s.Weight * s.Jumps.Min(jumps => jumps.Average(j =>
    {
        var ahead = ((j + s.Later * start) % Period + Period) % Period;
        return Math.Min(ahead, Period - ahead);
    }))) / seams.Sum(s => s.Weight);
}
