using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Workspace.Fields;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

public sealed class FitWordsTests
{
    /// <summary>Sideways, what stands upright on the hook lies across the body.</summary>
    [Theory]
    [InlineData(MotifKind.Columns, Direction.Sideways, "upright as worked, across as worn")]
    [InlineData(MotifKind.Bands, Direction.Sideways, "across as worked, upright as worn")]
    [InlineData(MotifKind.Columns, Direction.Up, null)]
    [InlineData(MotifKind.Bands, Direction.Up, null)]
    [InlineData(MotifKind.Argyle, Direction.Sideways, null)]
    public void Stripes_that_lie_the_other_way_as_worn_say_so(MotifKind motif, Direction direction, string? words) =>
        Assert.Equal(words, FitWords.Lie(motif, direction));

    [Theory]
    [InlineData(1.2, Units.Centimetres, "1.2 cm over")]
    [InlineData(-1.2, Units.Centimetres, "1.2 cm under")]
    [InlineData(0.05, Units.Centimetres, "as asked")]
    [InlineData(-0.05, Units.Centimetres, "as asked")]
    [InlineData(0.06, Units.Centimetres, "0.1 cm over")]
    [InlineData(-0.06, Units.Centimetres, "0.1 cm under")]
    [InlineData(1.27, Units.Inches, "½ in over")]
    [InlineData(-1.27, Units.InchesThenCentimetres, "½ in under")]
    public void What_no_tape_shows_is_as_asked_and_the_rest_is_over_or_under(double error, Units units, string words)
    {
        Assert.Equal(words, FitWords.Error(Length.FromCentimetres(error), units));
        Assert.Equal(words == "as asked", FitWords.IsAsAsked(Length.FromCentimetres(error)));
    }

    [Fact]
    public void A_count_says_its_stitches_or_the_two_that_take_turns()
    {
        Assert.Equal("83 stitches", FitWords.Stitches(Count([83])));
        Assert.Equal("82 and 83 stitches in turn", FitWords.Stitches(Count([82, 83])));
    }

    /// <summary>Of 4 m in a row 1.5 % are 6 cm; the side that forgives less decides.</summary>
    [Fact]
    public void How_far_yarn_may_drift_is_said_in_shares_and_in_yarn()
    {
        var count = Count([83], new Forgiveness(-0.015, 0.025));
        Assert.Equal(
            "Forgives yarn per stitch 1.5 % tighter to 2.5 % looser: 6 cm in a row of 4.0 m.", FitWords.Forgives(count, Units.Centimetres));
        Assert.Equal(
            "Forgives yarn per stitch 1.5 % tighter to 2.5 % looser: 2¼ in in a row of 4.4 yd.", FitWords.Forgives(count, Units.Inches));
        Assert.Equal("Forgives nothing.", FitWords.Forgives(Count([83]), Units.Centimetres));
    }

    [Theory]
    [InlineData(CountTask.None, "")]
    [InlineData(CountTask.ExtraEdgeStitch, "Asks for one stitch more in every other row.")]
    [InlineData(CountTask.HalfStitchTurn, "Asks for turns that take half a stitch of yarn.")]
    [InlineData(
        CountTask.ExtraEdgeStitch | CountTask.HalfStitchTurn,
        "Asks for one stitch more in every other row, and for turns that take half a stitch of yarn.")]
    public void What_a_count_asks_of_the_maker_is_said(CountTask task, string words) => Assert.Equal(words, FitWords.Task(task));

    [Theory]
    [InlineData("panelStitches", "stitches of a panel")]
    [InlineData("sleeveRows", "rows of a sleeve")]
    [InlineData("armholeDepth", "armhole depth")]
    [InlineData("ArmholeDepth", "armhole depth")]
    [InlineData("ribbing", "ribbing")]
    public void A_number_that_can_be_fixed_is_called_as_a_maker_calls_it(string what, string words) =>
        Assert.Equal(words, FitWords.Fixable(what));

    /// <summary>Two panels go round the body; one piece is as wide as it is.</summary>
    [Theory]
    [InlineData("pullover", GarmentMeasure.Width, "girth")]
    [InlineData("wrap", GarmentMeasure.Width, "width")]
    [InlineData("pullover", GarmentMeasure.Length, "length")]
    [InlineData("pullover", GarmentMeasure.SleeveLength, "sleeve length")]
    public void A_ruler_is_called_what_it_measures(string kind, GarmentMeasure measure, string words)
    {
        var plan = GarmentPlanner.Plan(StarterDocument.Of(Repertoire.All.First(k => k.Name == kind))).Plan!;
        Assert.Equal(words, FitWords.Ruled(measure, plan.Construction));
    }

    [Fact]
    public void Directions_are_called_up_and_sideways() =>
        Assert.Equal(("up", "sideways"), (FitWords.Name(Direction.Up), FitWords.Name(Direction.Sideways)));

    /// <summary>A weight is a square; its root is what a designer pictures.</summary>
    [Fact]
    public void Weights_are_distances_and_one_of_her_own_stands_among_them()
    {
        var usual = FitEdits.Weights("", inches: false);
        Assert.Equal(["0 cm²", "1 cm²", "4 cm²", "9 cm²", "16 cm²"], usual.Select(w => w.Value));
        Assert.Equal(["nothing", "1 cm", "2 cm", "3 cm", "4 cm"], usual.Select(w => w.Words));
        Assert.Contains(FitEdits.UsualWeight, usual.Select(w => w.Value));
        Assert.Equal(usual, FitEdits.Weights("9 cm²", inches: false));
        Assert.Equal(["nothing", "0.4 in", "0.8 in", "1.2 in", "1.6 in"], FitEdits.Weights("", inches: true).Select(w => w.Words));
        Assert.Equal([.. usual, new Choice("6.25 cm²", "2.5 cm")], FitEdits.Weights("6.25 cm²", inches: false));
        Assert.Equal(new Choice("much", "much"), FitEdits.Weights("much", inches: false)[^1]);
    }

    private static RulerCount Count(int[] rows, Forgiveness? forgives = null) => new(
        FitBench.Ruler(Direction.Sideways).Counts[0].Finding with { Stitches = rows[0], RowStitches = [.. rows], Forgiveness = forgives },
        Length.FromCentimetres(50))
    {
        HoldsFrom = Length.FromCentimetres(49),
        HoldsTo = Length.FromCentimetres(51),
        RowYarn = Length.FromMetres(4),
    };

    [Theory]
    [InlineData(62, 56, "6.0 cm to spare")]
    [InlineData(56, 56, "just enough")]
    [InlineData(54.8, 56, "1.2 cm too little")]
    public void What_is_left_over_on_the_body_is_said(double has, double needs, string words)
    {
        var fit = new WornFit(FitPart.NeckOpening, Length.FromCentimetres(has), BodyMeasure.Head, Length.FromCentimetres(needs), "garment.neckWidth", Mend.WidenNeck);
        Assert.Equal("Neck opening, all round", FitWords.Part(fit));
        Assert.Equal(words, FitWords.Spare(fit, Units.Centimetres));
    }
}
