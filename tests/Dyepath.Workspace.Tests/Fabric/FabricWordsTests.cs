using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Tests.Fabric;

public sealed class FabricWordsTests
{
    private static readonly FabricStitch Single = FabricStitch.SingleCrochet;

    [Fact]
    public void A_seam_says_how_it_meets_against_what_and_what_chance_would_give()
    {
        var seam = new SeamPlan(SeamId.LeftSide, [], [], true, 2.4, 0, Length.Zero) { Extension = SeamExtension.Mirrored, Chance = 5.25 };
        Assert.Equal("visible, mirrored: the colours jump 2.5 stitches of yarn here", FabricWords.Judged(seam, Single));
        Assert.Equal(
            "by chance, carried on: the colours jump 4 stitches of yarn here",
            FabricWords.Judged(seam with { Extension = SeamExtension.Continued, PhaseJump = 4 }, Single));
        Assert.Equal("good, mirrored: the colours run on here", FabricWords.Judged(seam with { PhaseJump = 0, Match = 1 }, Single));
        Assert.Equal("By chance the colours would jump 5.5 pairs on average", FabricWords.Chance(5.25, FabricStitch.Linen));
    }

    /// <summary>A seam along which every stitch jumps by one is led on to within a stitch, and not one stitch of it is where it belongs.</summary>
    [Theory]
    [InlineData(1, 0, "close")]
    [InlineData(0.7, 0.49, "close")]
    [InlineData(0.4, 0.5, "good")]
    [InlineData(0, 1, "good")]
    [InlineData(2, 0.5, "visible")]
    [InlineData(5, 0, "by chance")]
    public void A_seam_is_called_good_only_where_the_stitches_match(double jump, double match, string words)
    {
        var seam = new SeamPlan(SeamId.LeftSide, [], [], true, jump, match, Length.Zero) { Extension = SeamExtension.Continued, Chance = 5.25 };
        Assert.StartsWith($"{words}, ", FabricWords.Judged(seam, Single), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "the colours run on here")]
    [InlineData(0.24, "the colours run on here")]
    [InlineData(0.25, "the colours jump 0.5 stitches of yarn here")]
    [InlineData(1.2, "the colours jump 1 stitch of yarn here")]
    [InlineData(2, "the colours jump 2 stitches of yarn here")]
    [InlineData(5.26, "the colours jump 5.5 stitches of yarn here")]
    public void A_jump_is_said_to_the_half_stitch(double jump, string words) => Assert.Equal(words, FabricWords.Jump(jump, Single));

    [Theory]
    [InlineData(null, "nothing to hold")]
    [InlineData(1.0, "for nearly every maker")]
    [InlineData(0.951, "for 95 makers of 100")]
    [InlineData(0.011, "for 1 maker of 100")]
    [InlineData(0.004, "for hardly any maker")]
    public void A_chance_is_said_in_makers(double? chance, string words) => Assert.Equal(words, FabricWords.MadeWell(chance));

    /// <summary>A repeat of 20 that comes out 2.5 % shorter is 19.5, 3 % longer 20.6.</summary>
    [Fact]
    public void Counts_to_offer_are_said_by_the_repeat_that_she_counts()
    {
        var variants = new CountVariants([new CountVariant(-2, -1), new CountVariant(0, -0.025), new CountVariant(1, 0.03)], 0.7, 0.91);
        Assert.Equal("83 alone: for 70 makers of 100; 81, 83 or 84: for 91 makers of 100", FabricWords.Variants(variants, 83, Single));
        Assert.Equal(["under 19.5", "19.5 to 20.6", "20.6 or more"], Enumerable.Range(0, 3).Select(at => FabricWords.Repeats(variants, at, 20)));
        Assert.Equal([79, 83, 85], variants.Variants.Select(v => FabricWords.Variant(v, 83, FabricStitch.Linen)));
        Assert.EndsWith(": for 60 makers of 100, and further ones bring hardly more", FabricWords.Variants(variants with { Served = 0.6 }, 83, Single), StringComparison.Ordinal);
        CountVariant[] planned = [new(0, -1)];
        Assert.Equal("83 alone: for 95 makers of 100", FabricWords.Variants(new CountVariants([.. planned], 0.95, 0.95), 83, Single));
        Assert.Equal("83 alone: for 5 makers of 100; no other count serves more", FabricWords.Variants(new CountVariants([.. planned], 0.05, 0.05), 83, Single));
    }

    [Fact]
    public void In_linen_stitch_pairs_are_counted() =>
        Assert.Equal("the colours jump 3.5 pairs of yarn here", FabricWords.Jump(3.5, FabricStitch.Linen));

    [Theory]
    [InlineData(1, "all stitches lie at their place")]
    [InlineData(0.004, "no stitch lies at its place")]
    [InlineData(0.412, "41 % of the stitches lie at their place")]
    public void A_match_is_said_as_a_share(double match, string words) => Assert.Equal(words, FabricWords.Match(match));

    [Fact]
    public void A_stitch_is_read_out_with_its_place_in_piece_and_yarn()
    {
        var plan = Demo.Plan(d => d.Set("garment.direction", "sideways"));
        var front = plan.Sizes[2].Pieces[0];
        var worn = WornPiece.Of(plan, front);
        var read = StitchReading.At(plan, worn, 1, 0)!;
        var words = FabricWords.Stitch(front, read, ("foam", "F"), [2], true, Single, Units.Centimetres);
        Assert.StartsWith($"Front, row 2 (WS), stitch {front.Stitches} from the right: foam (F). ", words, StringComparison.Ordinal);
        Assert.Contains($"{read.FromStart.Metres:0.0} m of yarn from the piece's first stitch, ball 2.", words, StringComparison.Ordinal);
        var inches = FabricWords.Stitch(front, read with { TwoToned = true, ToChange = 0 }, ("foam", "F"), [null], false, Single, Units.Inches);
        Assert.Contains("round 2, stitch", inches, StringComparison.Ordinal);
        Assert.Contains("two-toned", inches, StringComparison.Ordinal);
        Assert.Contains(" yd of yarn", inches, StringComparison.Ordinal);
        Assert.EndsWith("The colour changes within it.", inches, StringComparison.Ordinal);
        // Of two sleeves each takes it from its own ball, as far as that can be told.
        var sleeve = FabricWords.Stitch(
            front with { Id = PieceId.Sleeve, Copies = 2 }, read, ("foam", "F"), [4, 5], true, Single, Units.Centimetres);
        Assert.Contains(" from the piece's first stitch, ball 4 in sleeve 1, ball 5 in sleeve 2.", sleeve, StringComparison.Ordinal);
        var second = FabricWords.Stitch(
            front with { Id = PieceId.Sleeve, Copies = 2 }, read, ("foam", "F"), [null, 5], true, Single, Units.Centimetres);
        Assert.Contains(" from the piece's first stitch, ball 5 in sleeve 2.", second, StringComparison.Ordinal);
    }

    [Fact]
    public void Eyes_change_the_palette_as_published_models_do_and_grey_keeps_the_light()
    {
        var sand = Srgb.Parse("#b89468");
        Assert.Null(Eyes.All[0].Seen);
        Assert.Equal(ColourVisionSimulation.Brettel(sand.ToLinear(), ColourVision.Tritan).ToSrgb(), Eyes.All.First(e => e.Name == "tritan").Seen!(sand));
        var grey = Eyes.All.First(e => e.Name == "grey").Seen!(sand);
        Assert.Equal(grey.Red, grey.Blue);
        Assert.Equal(Contrast.RelativeLuminance(sand), Contrast.RelativeLuminance(grey), 0.005);
    }

    [Fact]
    public void The_blur_is_of_a_distance()
    {
        // Two minutes of arc at 6 m are 3.49 mm wide; a Gaussian's width at half height is 2.3548 standard deviations.
        Assert.Equal(0.349 / 2.3548, Distance.All.First(d => d.Name == "room").Blur(0.7), 3e-4);
        Assert.Equal(2.5 * 0.7, Distance.All.First(d => d.Name == "squint").Blur(0.7), 1e-9);
        Assert.Equal(0, Distance.All[0].Blur(0.7));
    }

    [Theory]
    [InlineData(null, false, "")]
    [InlineData(0.0, false, " The colour changes right beside it.")]
    [InlineData(0.0, true, " The colour changes within it.")]
    [InlineData(1.0, false, " The next change of colour is 1 stitch of yarn away.")]
    [InlineData(2.25, false, " The nearest change of colour is 2.3 stitches of yarn away.")]
    public void How_near_the_next_colour_is_is_read_out(double? change, bool twoToned, string words)
    {
        var plan = Demo.Plan();
        var front = plan.Sizes[2].Pieces[0];
        var read = StitchReading.At(plan, WornPiece.Of(plan, front), 0, 0)! with { TwoToned = twoToned, ToChange = change };
        var said = FabricWords.Stitch(front, read, ("foam", "F"), [null], true, Single, Units.Centimetres);
        Assert.EndsWith($"m of yarn from the piece's first stitch.{words}", said, StringComparison.Ordinal);
        Assert.Contains(read.RightSide ? " (RS), stitch " : " (WS), stitch ", said, StringComparison.Ordinal);
        var yards = FabricWords.Stitch(front, read, ("foam", "F"), [null], true, Single, Units.InchesThenCentimetres);
        Assert.Contains(FormattableString.Invariant($"{read.FromStart.Metres / 0.9144:0.0} yd of yarn from"), yards, StringComparison.Ordinal);
    }

    [Fact]
    public void Seams_pieces_and_units_are_called_as_in_the_making_up()
    {
        Assert.Equal(("under the left sleeve", "left side"), (FabricWords.Seam(SeamId.LeftSleeve), FabricWords.Seam(SeamId.LeftSide)));
        Assert.Equal(("stitches", "pairs"), (FabricWords.Many(Single), FabricWords.Many(FabricStitch.Linen)));
        Assert.Equal(("stitch", "42 %"), (FabricWords.Unit(Single), FabricWords.Share(0.416)));
        var front = Demo.Plan().Sizes[2].Pieces[0];
        Assert.Equal((string.Join(" and ", front.RowStitches), front.Stitches), (FabricWords.Stitches(front), FabricWords.Count(front)));
        Assert.Equal("82 and 83", FabricWords.Stitches(front with { RowStitches = [82, 83] }));
    }

    /// <summary>Of a shaped piece its widest row was chosen; on a bias rows grow as much as they shrink, about their mean.</summary>
    [Theory]
    [InlineData("bias-wrap")]
    [InlineData("shawl")]
    [InlineData("wrap")]
    public void The_count_of_a_piece_is_the_one_that_was_chosen(string kind)
    {
        var plan = Core.Planning.GarmentPlanner.Plan(Core.Projects.StarterDocument.Of(Core.Constructions.Repertoire.All.First(k => k.Name == kind))).Plan!;
        var piece = plan.Sizes[0].Pieces[0];
        var (least, most) = piece.Shape is { } shape ? (shape.ShortestRow, shape.WidestRow) : (piece.Stitches, piece.Stitches);
        Assert.Equal(kind == "bias-wrap" ? (least + most) / 2 : most, FabricWords.Count(piece));
        Assert.Equal(piece.Shape is null ? string.Join(" and ", piece.RowStitches) : $"{least} to {most}", FabricWords.Stitches(piece));
    }
}
