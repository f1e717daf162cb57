using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Supplies;

/// <summary>Each use of yarn, worked out on paper: 230 m balls, 14 stitches and 16 rows to 10 cm as worked, 15.5 rows as hung.</summary>
public sealed class YarnTallyTests
{
    private static readonly Length TwoEnds = Cm(30);

    private static readonly Plan Demo = Tideline.Planned();

    private static readonly SizePlan Medium = Demo.Sizes.Single(s => s.Name == "M");

    /// <summary>Yarn of a single crochet of the demo: its unit is one.</summary>
    private static Length Stitch => Demo.Sequence.YarnPerUnit;

    [Fact]
    public void Pieces_take_their_stitches_and_their_chains()
    {
        var (front, sleeve) = (Medium.Pieces[0], Medium.Pieces[2]);
        Same(Stitch * ((double)front.Stitches * front.Rows), Use("front: stitches"), companion: false);
        Same(2 * Stitch * ((double)sleeve.Stitches * sleeve.Rows), Use("sleeve: stitches"), companion: true);
        // A chain is 25.5/53 of a single crochet; single crochet over n stitches begins with n + 1 chains.
        Same(Stitch * ((front.Stitches + 1) * 25.5 / 53), Use("front: foundation"), companion: false);
        Same(2 * Stitch * ((sleeve.Stitches + 1) * 25.5 / 53), Use("sleeve: foundation"), companion: true);
    }

    /// <summary>Two sleeves, two ends each; pooled pieces' ends are in the joins and restarts.</summary>
    [Fact]
    public void Plain_pieces_have_two_ends_each()
    {
        Same(2 * TwoEnds, Use("sleeve: ends"), companion: true);
        Assert.DoesNotContain(Medium.Yarn.Uses, u => u.Piece == PieceId.Front && u.Purpose == YarnPurpose.Ends);
    }

    /// <summary>Every row but the last is turned.</summary>
    [Fact]
    public void Turns_are_one_fewer_than_rows()
    {
        var plan = (Tideline with { Fabric = Tideline.Fabric with { Keeping = ColourKeeping.Free, TurnCost = 0.45 } }).Planned();
        var (size, unit) = (plan.Sizes[0], plan.Sequence.YarnPerUnit);
        var front = size.Pieces[0];
        Same(unit * (0.45 * (front.Rows - 1)), size.Yarn.Uses.Single(u => u.Piece == PieceId.Front && u.Purpose == YarnPurpose.Turning), companion: false);
        Same(unit * ((double)front.Stitches * front.Rows), size.Yarn.Uses.Single(u => u.Piece == PieceId.Front && u.Purpose == YarnPurpose.Stitches), companion: false);
    }

    [Fact]
    public void Edgings_take_their_rounds_and_two_ends_each()
    {
        var cuffs = Medium.Edgings.Single(e => e.Where == EdgingPlace.Cuffs);
        // Four rounds of rib: three at 1.1 and the picking up at 1, on two cuffs.
        Same(2 * (Stitch * (cuffs.PickUp * (3 * 1.1 + 1)) + TwoEnds), Use("edging: cuffs"), companion: true);
        var neck = Medium.Edgings.Single(e => e.Where == EdgingPlace.Neck);
        Same(Stitch * (neck.PickUp * (1 + 1.15)) + TwoEnds, Use("edging: neck"), companion: true);
    }

    /// <summary>Sewing takes three times a seam's length (common practice, no source), and an end at either side.</summary>
    [Fact]
    public void Seams_take_three_times_their_length_and_two_ends_each()
    {
        Assert.Equal(8, Medium.Seams.Length);
        var sewn = Medium.Seams.Aggregate(Length.Zero, (sum, seam) => sum + 3 * seam.Length + TwoEnds);
        Same(sewn, Use("seams"), companion: true);
    }

    /// <summary>15 cm square: 21 stitches by 24 rows.</summary>
    [Fact]
    public void The_swatch_is_fifteen_centimetres_square() => Same(Stitch * (21 * 24), Use("swatch"), companion: false);

    /// <summary>
    /// Both side edges of two panels: along the row ends, whose height over 0.85 of a stitch's width is the picked-up stitches a row, as
    /// many rows of single crochet as the band has, and two ends.
    /// </summary>
    [Fact]
    public void Side_bands_run_along_both_edges_of_every_panel()
    {
        var plan = Banded();
        var size = plan.Sizes.First(s => s.Pieces[0].SideBandRows > 0);
        var (front, stitch) = (size.Pieces[0], plan.Sequence.YarnPerUnit);
        // (10 / 15.5) / (0.85 · 10 / 14) = 1.063 a row end: one in each.
        Assert.Equal(front.Rows, front.SideBand!.Stitches);
        Assert.Equal(front.Opening(OpeningId.Armhole).First - 1, front.SideBand.Below);
        Same(2 * (stitch * (front.Rows * front.SideBandRows) + TwoEnds), size.Yarn.Uses.Single(u => u.Piece == PieceId.Front && u.Purpose == YarnPurpose.SideBands), companion: true);
        Assert.Single(size.Yarn.Uses, u => u.Piece == PieceId.Back && u.Purpose == YarnPurpose.SideBands);
        Assert.All(
            plan.Sizes.Where(s => s.Pieces[0].SideBandRows == 0), s =>
                Assert.DoesNotContain(s.Yarn.Uses, u => u.Purpose == YarnPurpose.SideBands));
    }

    /// <summary>A band widens the panel, and the shoulder is sewn across it; half of what the neck leaves, less a hidden stitch.</summary>
    [Fact]
    public void A_shoulder_runs_over_its_side_band()
    {
        var plan = Banded();
        var hung = Cm(10 / 14.0);
        foreach (var size in plan.Sizes)
        {
            var front = size.Pieces[0];
            var neck = front.Marks[1].Position - front.Marks[0].Position + 1;
            // One row of a band disappears in the side seam.
            var band = front.SideBandRows == 0 ? Length.Zero : Cm(10 / 15.5) * (front.SideBandRows - 1);
            var shoulder = hung * ((front.Stitches - neck) / 2 - 1) + band;
            Assert.All(
                size.Seams.Where(s => s.Where.EndsWith("shoulder", StringComparison.Ordinal)), s =>
                    Assert.Equal(shoulder.Centimetres, s.Length.Centimetres, 1e-6));
        }
        Assert.Contains(plan.Sizes, s => s.Pieces[0].SideBandRows > 1);
    }

    [Fact]
    public void Yarn_adds_up_and_the_companion_serves_19_makers_of_20()
    {
        Assert.All(Demo.Sizes, s =>
        {
            var (own, other) = (Sum(s, companion: false), Sum(s, companion: true));
            Assert.Equal(own.Metres, s.Yarn.Length.Metres, 1e-6);
            Assert.Equal(own.Metres / 230 * 100, s.Yarn.Mass.Grams, 1e-6);
            Assert.Equal(other.Metres, s.Yarn.Companion!.Length.Metres, 1e-6);
            Assert.Equal(other.Metres / 230 * 100, s.Yarn.Companion.Mass.Grams, 1e-6);
            // 1.645 standard deviations of 6 %, and two ends of 15 cm a ball.
            Assert.Equal((int)Math.Ceiling(other.Metres * (1 + 1.645 * 0.06) / (230 - 0.3)), s.Yarn.Companion.Balls);
        });
        Assert.False(Use("restarts, joins and their ends").Companion);
    }

    /// <summary>What the companion yarn is not kept for is made of the variegated yarn.</summary>
    [Fact]
    public void Uses_follow_what_the_companion_is_for()
    {
        var plan = (Tideline with { Companion = Tideline.Companion! with { Uses = [CompanionUse.PlainPieces] } }).Planned();
        var uses = plan.Sizes[0].Yarn.Uses;
        Assert.All(
            uses.Where(u => u.Purpose is YarnPurpose.Seams or YarnPurpose.Edging), u => Assert.False(u.Companion));
        Assert.All(uses.Where(u => u.Piece == PieceId.Sleeve), u => Assert.True(u.Companion));
        Assert.Null((Tideline.WithoutSleeves() with { Companion = null }).Planned().Sizes[0].Yarn.Companion);
    }

    private static Plan Banded() => Patterns.Named("side bands").Planned();

    private static YarnUse Use(string what) => Medium.Yarn.Uses.Single(u => YarnUseNames.Of(u) == what);

    private static Length Sum(SizePlan size, bool companion) =>
        size.Yarn.Uses.Where(u => u.Companion == companion).Aggregate(Length.Zero, (sum, use) => sum + use.Length);

    private static void Same(Length expected, YarnUse use, bool companion)
    {
        Assert.Equal(expected.Centimetres, use.Length.Centimetres, 0.01);
        Assert.Equal(companion, use.Companion);
    }
}
