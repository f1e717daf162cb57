using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Pricing;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Shaping;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Pricing;

/// <summary>What a size is said to take is what its rows, read as a maker reads them, come to.</summary>
public sealed class WorkloadTests
{
    private static readonly Plan Demo = Tideline.Planned();

    public static TheoryData<string> Kinds => [.. Repertoire.All.Select(k => k.Name)];

    public static TheoryData<string> Named => Patterns.Data();

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Stitches_are_those_of_the_rows_of_every_garment(string kind) =>
        AsRead(StarterDocument.Of(Repertoire.All.First(k => k.Name == kind)).Planned());

    [Theory]
    [MemberData(nameof(Named))]
    public void Stitches_are_those_of_the_rows_of_every_stitch_and_working(string name) => AsRead(Patterns.Named(name).Planned());

    /// <summary>Size M, on paper: every row but the last is turned, every round joined; rib turns twice for two stitches picked up.</summary>
    [Fact]
    public void Turns_joins_seams_and_ends_of_the_demo()
    {
        var size = Demo.Sizes.Single(s => s.Name == "M");
        var work = Workload.Of(Demo, size);
        var (front, back, sleeve) = (size.Pieces[0], size.Pieces[1], size.Pieces[2]);
        Assert.Equal(front.Rows - 1 + back.Rows - 1, work.Pooled.Turns);
        Assert.Equal(2 * (sleeve.Rows - 1), work.Plain.Turns);
        EdgingPlan At(EdgingPlace place) => size.Edgings.Single(e => e.Where == place);
        Assert.Equal(1 + At(EdgingPlace.Hem).PickUp + 2 + 2 * (1 + At(EdgingPlace.Cuffs).PickUp), work.Edgings.Turns);
        Assert.Equal(size.Seams.Sum(s => s.Length.Centimetres), work.Seams.Centimetres, 1e-9);
        // Front, back, two sleeves; hem, neck, two cuffs; every seam; every ball that ends.
        Assert.Equal(2 * (4 + 4 + size.Seams.Length + size.Yarn.Joins.Length), work.Ends);
    }

    /// <summary>A rib of four rounds over n stitches: n of the first round and n for every round more.</summary>
    [Fact]
    public void Edgings_count_every_round()
    {
        var size = Demo.Sizes.Single(s => s.Name == "M");
        Assert.Equal(size.Edgings.Sum(e => e.Copies * e.PickUp * e.Rounds), Workload.Of(Demo, size).Edgings.Stitches);
        var border = Patterns.Named("blanket").With(g => g with { Edgings = [new(EdgingPlace.Border, EdgingLibrary.Plain, 3)] }).Planned();
        // At each of four corners of a round 2 stitches more than in the round before.
        var edging = border.Sizes[0].Edgings[0];
        Assert.Equal((4, 0), edging.Corners);
        Assert.Equal(3 * edging.PickUp + 8 + 16, Workload.Of(border, border.Sizes[0]).Edgings.Stitches);
        Assert.Equal(3, Workload.Of(border, border.Sizes[0]).Edgings.Turns);
    }

    /// <summary>
    /// By yarn a stitch takes as much longer as by its yarn-overs: single crochet 2, half double 3, double 4 (common instruction: each is a loop
    /// drawn up or through).
    /// </summary>
    [Theory]
    [InlineData("sc", 2)]
    [InlineData("hdc", 3)]
    [InlineData("dc", 4)]
    public void Yarn_tells_the_time_that_yarn_overs_tell(string id, int yarnOvers)
    {
        var stitch = FabricStitch.All.Single(s => s.Id == id);
        Assert.Equal(yarnOvers / 2.0, Workload.OfRow(1, stitch, turns: false), 0.05 * yarnOvers / 2);
        Assert.Equal(Workload.OfRow(40, stitch, turns: false) + Workload.Turn, Workload.OfRow(40, stitch, turns: true), 1e-9);
    }

    /// <summary>Single crochet takes one each, a chain 25.5/53; then turns, seams and ends.</summary>
    [Fact]
    public void All_of_it_adds_up_in_single_crochet()
    {
        var size = Demo.Sizes.Single(s => s.Name == "M");
        var work = Workload.Of(Demo, size);
        var chains = size.Pieces.Sum(p => p.Copies * (p.Stitches + 1)) * 25.5 / 53;
        Assert.Equal(work.Pooled.Stitches + work.Plain.Stitches + chains, work.Pooled.SingleCrochets + work.Plain.SingleCrochets, 1e-6);
        Assert.Equal(work.Hook.SingleCrochets + 2 * work.Hook.Turns + 6 * work.Seams.Centimetres + 30 * work.Ends, work.SingleCrochets, 1e-6);
    }

    [Fact]
    public void A_fringe_takes_time_for_its_bunches()
    {
        var blanket = Patterns.Named("blanket");
        Work Edged(string edging)
        {
            var plan = blanket.With(g => g with { Edgings = [new(EdgingPlace.Border, edging, 1)] }).Planned();
            return Workload.Of(plan, plan.Sizes[0]).Edgings;
        }
        var fringe = Edged("fringe");
        Assert.Equal(fringe.Stitches + fringe.Stitches / 2 * Workload.Bunch, fringe.SingleCrochets, 1e-9);
        Assert.Equal(Edged("sc").Stitches, Edged("sc").SingleCrochets, 1e-9);
    }

    private static void AsRead(Plan plan)
    {
        foreach (var size in plan.Sizes)
        {
            var work = Workload.Of(plan, size);
            var parts = MakingOrder.Of(plan, size.Name).Parts.Where(p => p.Piece is { Shape: null }).ToArray();
            Assert.Equal(
                parts.Where(p => p.Piece!.Pooled).Sum(p => Read(plan, size, p)) + size.Pieces.Sum(p => p.Shape is { } shape ? p.Copies * Drawn(plan, shape) : 0),
                work.Pooled.Stitches);
            Assert.Equal(
                parts.Where(p => !p.Piece!.Pooled).Sum(p => Read(plan, size, p))
                    + size.Pieces.Sum(p => 2L * p.Copies * (p.SideBand?.Rows ?? 0) * (p.SideBand?.Stitches ?? 0)),
                work.Plain.Stitches);
        }
    }

    /// <summary>Row after row by its words.</summary>
    private static long Read(Plan plan, SizePlan size, MakingPart part)
    {
        var wording = new Wording([size.Name], plan.Project.Edition with { Terms = Terms.Us, Language = Language.English, Hand = Hand.Right });
        var (below, all) = (part.Piece!.FoundationChains, 0L);
        foreach (var row in part.Steps.OfType<RowStep>())
        {
            // The count that is told behind the row's words is not looked at.
            var words = wording.Text(row.Text).Split(". ")[0];
            var (made, stuck) = RowCounter.Follow(words, below);
            Assert.True(made is not null, $"{wording.Text(row.Label)}: {words}: {stuck}");
            all += below = made.Value;
        }
        return all;
    }

    /// <summary>Stitch after stitch of a shaped piece's picture.</summary>
    private static long Drawn(Plan plan, ShapedPiece shape)
    {
        var cells = 0L;
        for (var row = 0; row < shape.Rows; row++)
        {
            for (var column = shape.FirstColumn; column <= shape.LastColumn; column++)
                cells += shape.SectionAt(row, column) is null ? 0 : 1;
        }
        return cells * plan.Project.Fabric.Stitch.StitchesPerUnit;
    }
}
