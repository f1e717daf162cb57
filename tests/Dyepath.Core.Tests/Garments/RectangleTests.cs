using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

public sealed class RectangleTests
{
    private static readonly SizeSelection OneSize = new(null, [], [], null, [], []);

    [Theory]
    [InlineData(Working.Rounds, MotifKind.EvenSlant)]
    [InlineData(Working.Rounds, MotifKind.Columns)]
    [InlineData(Working.RoundsTurned, MotifKind.Argyle)]
    [InlineData(Working.Spiral, MotifKind.Columns)]
    [InlineData(Working.Turned, MotifKind.Argyle)]
    public void A_cowl_is_planned_in_every_way_of_working(Working working, MotifKind motif)
    {
        var plan = Cowl(working, motif).Planned();
        var size = Assert.Single(plan.Sizes);
        Assert.Equal("One size", size.Name);
        Assert.Equal(motif, size.Pieces[0].Motif);
        Assert.Equal(60, size.Finished[GarmentMeasure.Circumference].Centimetres, 6.0);
        Assert.Equal(30, size.Finished[GarmentMeasure.Height].Centimetres, 0.7);
        Assert.Empty(PlanCheck.Verify(plan));
        Assert.Equal(working == Working.Turned ? 2 : 1, plan.Options.Length);
    }

    [Theory]
    [InlineData("rounds", MotifKind.EvenSlant)]
    [InlineData("rounds-turned", MotifKind.Argyle)]
    [InlineData("spiral", MotifKind.EvenSlant)]
    [InlineData("turned", MotifKind.Argyle)]
    public void A_cowl_that_asks_for_no_motif_gets_one_that_its_way_of_working_can_draw(string working, MotifKind motif)
    {
        var document = JsonNode.Parse(DemoProject.Utf8)!;
        document["garment"] = new JsonObject
        {
            ["shape"] = "cowl",
            ["circumference"] = "60 cm",
            ["height"] = "30 cm",
            ["working"] = working,
        };
        document.AsObject().Remove("sizes");
        document.AsObject().Remove("words");
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.ToJsonString()));
        Assert.Empty(reading.Faults);
        Assert.Equal(motif, reading.Project!.Planned().Sizes[0].Pieces[0].Motif);
        Assert.DoesNotContain("motif", ProjectWriter.Write(reading.Project!), StringComparison.Ordinal);
    }

    [Fact]
    public void Joined_rounds_jump_by_what_the_count_misses_and_a_spiral_not_at_all()
    {
        var joined = Cowl(Working.Rounds, MotifKind.EvenSlant).Planned().Sizes[0];
        var piece = joined.Pieces[0];
        Assert.Equal(Math.Abs(Math.IEEERemainder(piece.Stitches, 21)), Assert.Single(joined.Seams).PhaseJump);
        Assert.Equal(0, Assert.Single(Cowl(Working.Spiral, MotifKind.Columns).Planned().Sizes[0].Seams).PhaseJump);
    }

    [Fact]
    public void Sizes_of_a_cowl_come_from_the_designers_own_measures()
    {
        static OwnSize Size(string name, double around) =>
            new(name, new Dictionary<string, Length> { ["circumference"] = Cm(around) }.ToImmutableSortedDictionary());
        var plan = (Cowl(Working.RoundsTurned, MotifKind.Argyle) with
        {
            Sizes = new SizeSelection(null, [], [Size("child", 48), Size("adult", 62)], null, [], []),
        }).Planned();
        Assert.Equal(["child", "adult"], plan.Sizes.Select(s => s.Name));
        Assert.Equal([48, 62], plan.Sizes.Select(s => s.Target[GarmentMeasure.Circumference].Centimetres));
        Assert.All(plan.Sizes, s => Assert.Equal(30, s.Target[GarmentMeasure.Height].Centimetres));
    }

    [Fact]
    public void A_wrap_is_bordered_all_round_with_two_extra_at_each_corner()
    {
        var plan = Wrapped(Cm(50), Cm(160)).Planned();
        var size = Assert.Single(plan.Sizes);
        var border = Assert.Single(size.Edgings);
        Assert.Equal(2 * (size.Pieces[0].Stitches + size.Pieces[0].Rows) + 8, border.PickUp);
        Assert.Contains("2 extra at each of the 4 corners", PickUpWords.Text(border.Spread), StringComparison.Ordinal);
        Assert.Equal(50, size.Finished[GarmentMeasure.Width].Centimetres, 4.0);
        Assert.Equal(160, size.Finished[GarmentMeasure.Length].Centimetres, 4.0);
        Assert.Empty(size.Seams);
        Assert.Empty(PlanCheck.Verify(plan));
    }

    /// <summary>A seam hides rows of the sideways cowl, or stitches of one worked up, at both ends of its brims.</summary>
    [Theory]
    [InlineData(Direction.Sideways, 2, 0)]
    [InlineData(Direction.Sideways, 0, 2)]
    [InlineData(Direction.Up, 2, 0)]
    [InlineData(Direction.Up, 0, 2)]
    public void A_brim_is_what_the_back_seam_leaves(Direction direction, int stitches, int rows)
    {
        var plan = Cowl(Working.Turned, MotifKind.Argyle).Directed(direction).With(g => g with { Seams = new SeamChoice(SeamExtension.Continued, stitches, rows) }).Planned();
        var size = plan.Sizes[0];
        var piece = size.Pieces[0];
        var visible = direction == Direction.Up ? piece.Stitches - 2 * stitches : piece.Rows - 2 * rows;
        var places = direction == Direction.Up ? "stitches" : "row ends";
        Assert.StartsWith($"brim: pick up 1 in each of the {visible} {places}", PickUpWords.Text(size.Edgings[0].Spread), StringComparison.Ordinal);
        var step = direction == Direction.Up ? plan.StitchWidth : plan.RowHeight;
        Assert.Equal((step * visible).Centimetres, size.Finished[GarmentMeasure.Circumference].Centimetres, 1e-6);
        var seam = Assert.Single(size.Seams);
        Assert.Equal("back seam", seam.Where);
        Assert.Equal((direction == Direction.Up ? plan.RowHeight * piece.Rows : plan.StitchWidth * piece.Stitches).Centimetres, seam.Length.Centimetres, 1e-6);
    }

    /// <summary>Two extra stitches at each of the four corners, and four edges named in the order in which they are met.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_border_runs_along_four_edges(Direction direction)
    {
        var plan = Wrapped(Cm(50), Cm(70)).Directed(direction).Planned();
        var (piece, border) = (plan.Sizes[0].Pieces[0], plan.Sizes[0].Edgings[0]);
        var (wide, tall) = direction == Direction.Up
            ? ($"{piece.Stitches} stitches = {piece.Stitches}", $"{piece.Rows} row ends = {piece.Rows}")
            : ($"{piece.Rows} row ends = {piece.Rows}", $"{piece.Stitches} stitches = {piece.Stitches}");
        Assert.Equal(
            $"lower edge: pick up 1 in each of the {wide}; right edge: pick up 1 in each of the {tall}; upper edge: pick up 1 in each of the {wide}; left edge: pick up 1 in each of the {tall}; 2 extra at each of the 4 corners; {2 * (piece.Stitches + piece.Rows) + 8} in all.",
            PickUpWords.Text(border.Spread));
    }

    [Fact]
    public void A_measure_of_nothing_is_refused() =>
        Assert.Equal(PlanOutcome.BadInput, Wrapped(Cm(50), Cm(0)).Tried().Outcome);

    [Fact]
    public void A_cowl_narrower_than_its_motif_says_what_would_help()
    {
        var result = Cowl(Working.Rounds, MotifKind.Argyle).Tried();
        Assert.Equal(PlanOutcome.Infeasible, result.Outcome);
        Assert.Contains(result.Reasons, r => r.Text.Contains("in turned rows", StringComparison.Ordinal));
    }

    private static Project Cowl(Working working, MotifKind motif) => Tideline.With(g => g with
    {
        Shape = new Cowl(Cm(60), Cm(30)),
        Working = working,
        Direction = null,
        Motif = motif,
        Edgings = [new(EdgingPlace.Brims, "sc", 2)],
    }) with
    { Sizes = OneSize };

    private static Project Wrapped(Length width, Length length) => Tideline.With(g => g with
    {
        Shape = new Wrap(width, length),
        Direction = null,
        Edgings = [new(EdgingPlace.Border, "sc", 3)],
    }) with
    { Sizes = OneSize };
}
