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

    /// <summary>Rows are judged by how they began and ended, the latest first, and no further back than she has chosen to keep.</summary>
    [Fact]
    public void What_is_to_be_ripped_follows_from_how_rows_began()
    {
        var track = Track().WorkTo(Part.Planned!.StitchesBefore(3));
        double?[] begun = [0, 0, 6];
        DriftPlace At(DriftTrack at) => MakerRemedies.AtRowEnd(at, Part, 2, row => begun[row])(at.Filter.Shift(6));
        Assert.Equal(BadRows.Worst(track.Piece, [new(2, 6, 6), new(1, 0, 6), new(0, 0, 0)]), At(track).RipTo);
        Assert.Equal(1, At(track).RipTo);
        begun[1] = null;
        Assert.Null(At(track).RipTo);
    }

    [Fact]
    public void Yarn_that_is_joined_again_lies_where_the_plan_has_it()
    {
        var joined = Track(bias: 0.01).WorkTo(100).Join();
        Assert.Equal((0, MakerRemedies.JoinError, 0.01), (joined.Filter.PhaseMean, joined.Filter.PhaseSd, joined.Filter.BiasMean));
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
