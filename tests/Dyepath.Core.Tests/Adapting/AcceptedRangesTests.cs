using Dyepath.Core.Adapting;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Adapting.Readers;

namespace Dyepath.Core.Tests.Adapting;

/// <summary>The ranges say of every yarn and gauge what the reader who has it is told.</summary>
public sealed class AcceptedRangesTests
{
    private static readonly AcceptedRanges Ranges = AcceptedRanges.Of(Tideline, "M", TestContext.Current.CancellationToken);

    [Fact]
    public void The_patterns_own_lies_within()
    {
        Assert.InRange(Tideline.Sequence.Measured.Natural.Total.Value, Ranges.Sequence.Least, Ranges.Sequence.Most);
        Assert.InRange(13.75, Ranges.Stitches.Least, Ranges.Stitches.Most);
        Assert.InRange(15.75, Ranges.Rows.Least, Ranges.Rows.Most);
        Assert.InRange(230, Ranges.BallMetres.Least, Ranges.BallMetres.Most);
        Assert.Equal(Tideline.Sizes[2].Yarn.BallsSafe, Ranges.Balls);
    }

    /// <summary>An inch of 106.7 cm is 2.4 %: rows of a garment worked sideways, which give its width, may differ by about as much.</summary>
    [Fact]
    public void A_gauge_is_accepted_as_far_as_an_inch_of_the_widest_measure()
    {
        var width = Tideline.Sizes[2].Finished.Max(f => f.Value.Inches);
        Assert.InRange(15.75 / Ranges.Rows.Least - 1, 0.9 / width, 1.1 / width);
        Assert.InRange(1 - 15.75 / Ranges.Rows.Most, 0.9 / width, 1.1 / width);
    }

    /// <summary>A hook makes up for more than hands do, a millimetre up and down by 0.6 · ln(6.5/5.5) = 10 % each way.</summary>
    [Fact]
    public void Another_hook_accepts_more()
    {
        Assert.InRange(Ranges.SequenceWithOtherHook.Most / Ranges.Sequence.Most, 1.06, 1.16);
        Assert.InRange(Ranges.Sequence.Least / Ranges.SequenceWithOtherHook.Least, 1.06, 1.16);
    }

    [Theory]
    [InlineData(0.5, true)]
    [InlineData(-0.5, true)]
    [InlineData(1.05, false)]
    [InlineData(-1.05, false)]
    public void Readers_are_told_what_the_ranges_say(double share, bool asWritten)
    {
        Assert.Equal(asWritten, Told(1, Place(15.75, Ranges.Rows) / 15.75) == AdaptVerdict.AsWritten);
        Assert.Equal(asWritten, Told(Place(13.75, Ranges.Stitches) / 13.75, 1) == AdaptVerdict.AsWritten);

        double Place(double own, AcceptedRange range) => own + Math.Abs(share) * ((share > 0 ? range.Most : range.Least) - own);

        static AdaptVerdict Told(double stitches, double rows) => Tideline.Adapt("M", Designer(Tideline.Project) with
        {
            Gauge = new Gauge(13.75 * stitches, 15.75 * rows, Length.FromCentimetres(10)),
            YarnPerStitch = Tideline.Sequence.Measured.YarnPerStitch.PerUnit,
        }).Verdict;
    }

    /// <summary>As many balls are bought of every ball within, and more or fewer beyond.</summary>
    [Fact]
    public void Balls_are_as_many_as_the_range_says()
    {
        Assert.Equal(Ranges.Balls, Balls(Ranges.BallMetres.Least));
        Assert.Equal(Ranges.Balls, Balls(Ranges.BallMetres.Most));
        Assert.True(Balls(Ranges.BallMetres.Least * 0.97) > Ranges.Balls);
        Assert.True(Balls(Ranges.BallMetres.Most * 1.03) < Ranges.Balls);

        static int Balls(double metres) => Tideline.Adapt("M", Designer(Tideline.Project) with { Ball = Length.FromMetres(metres) })
            .Plan!.Sizes[0].Yarn.BallsSafe;
    }
}
