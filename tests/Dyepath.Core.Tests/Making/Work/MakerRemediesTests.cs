using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;

namespace Dyepath.Core.Tests.Making.Work;

/// <summary>What a maker can do where she is, on both sides of each limit.</summary>
public sealed class MakerRemediesTests
{
    private const double Period = 22;

    private static readonly MakingPart Part = Begun();

    private static MakingPart Begun()
    {
        var plan = TestProjects.Begun("wrap", "sc", even: true, Core.Garments.Direction.Up).Planned();
        return MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[0];
    }

    private static DriftTrack Track(double bias = 0, double spread = 0.01) => DriftTrack.Begin(
        Part.Planned!, new DriftModel(0.01, 50) { Period = Period, Bias = bias, BiasSpread = spread });

    /// <summary>
    /// Ripping leads back to where the row began: it is of use where colours were less than half as far off then, whichever likeness of
    /// them is counted.
    /// </summary>
    [Theory]
    [InlineData(8, 3.9, true)]
    [InlineData(8, 4, false)]
    [InlineData(8, 4.1, false)]
    [InlineData(-8, 3.9, true)]
    [InlineData(8, -4.1, false)]
    [InlineData(8 + Period, 3.9, true)]
    [InlineData(8, 3.9 - Period, true)]
    [InlineData(8 - Period, 4.1 + Period, false)]
    public void A_row_is_held_against_its_colours_where_ripping_it_would_mend_them(double phase, double before, bool mends)
    {
        var track = Track();
        var place = MakerRemedies.AtRowEnd(track, Part, 1, before)(track.Filter.Shift(phase));
        Assert.Equal(mends ? RowMatch.Share(track.Piece, 1, before, phase) : 1, place.Match);
        if (mends)
            Assert.InRange(place.Match, 0, 0.99);
    }

    /// <summary>A quarter of a millimetre at 4 mm is 4 % of the yarn, known to half of it; a chain gives 0.3 of a stitch, to a third.</summary>
    [Fact]
    public void A_hook_and_a_chain_change_what_they_are_known_to()
    {
        var track = Track(bias: 0.01);
        Assert.Equal((0.04, 0.02), MakerRemedies.Hook(track, 1));
        Assert.Equal((-0.04, 0.02), MakerRemedies.Hook(track, -1));
        var smaller = track.ChangeHook(-1);
        Assert.Equal(-0.03, smaller.Filter.BiasMean, 1e-12);
        Assert.Equal(Math.Sqrt(0.01 * 0.01 + 0.02 * 0.02), smaller.Filter.BiasSd, 1e-12);
        Assert.Equal(0.05, track.ChangeHook(1).Filter.BiasMean, 1e-12);
        var looser = track.Shift(0.3, 0.1);
        Assert.Equal(0.3, looser.Filter.PhaseMean, 1e-12);
        Assert.Equal(Math.Sqrt(track.Filter.PhaseSd * track.Filter.PhaseSd + 0.01), looser.Filter.PhaseSd, 1e-12);
        Assert.Equal((0.3, 0.1, 0.06), (MakerRemedies.TurnGives, Math.Round(MakerRemedies.TurnError, 12), MakerRemedies.LargestCorrection));
    }

    /// <summary>A row that is two stitches off all along shows two in the wrong colour at each border; a period off, none.</summary>
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(2, 2, 2)]
    [InlineData(-2, -2, 2)]
    [InlineData(1, 1, 1)]
    [InlineData(22, 22, 0)]
    public void A_row_that_is_off_shows_as_many_wrong_stitches_at_every_border(double from, double to, int each)
    {
        // 6, 5, 7 and 4 stitches: four borders in each row of 22.
        var piece = Pieces.Of([6, 5, 7, 4], 22, 3);
        Assert.Equal(1 - 4.0 * each / 22, RowMatch.Share(piece, 1, from, to), 1e-12);
    }

    /// <summary>From none to four stitches early over a row of 22, each border is passed by more stitches than the one before.</summary>
    [Fact]
    public void A_row_that_runs_off_is_matched_stitch_by_stitch()
    {
        var piece = Pieces.Of([6, 5, 7, 4], 22, 3);
        var right = Enumerable.Range(0, 22).Count(i => ColourOf(i + 4 * (i + 0.5) / 22) == ColourOf(i));
        Assert.Equal(right / 22.0, RowMatch.Share(piece, 1, 0, 4), 1e-12);
        Assert.InRange(right, 10, 16);

        // A stitch is named by where most of it lies.
        static int ColourOf(double at) => ((at + 0.5) % 22) switch { < 6 => 0, < 11 => 1, < 18 => 2, _ => 3 };
    }
}
