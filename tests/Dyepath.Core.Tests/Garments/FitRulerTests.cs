using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

public sealed class FitRulerTests
{
    private static readonly Project Cowl = Tideline.With(g => g with
    {
        Shape = new Cowl(Cm(60), Cm(30)),
        Working = Working.Rounds,
        Motif = MotifKind.EvenSlant,
        Edgings = [],
    }) with
    { Sizes = new SizeSelection(null, [], [], null, [], []) };

    private static readonly Project Wrap = Cowl.With(g => g with
    {
        Shape = new Wrap(Cm(50), Cm(160)),
        Working = Working.Turned,
        Motif = MotifKind.Argyle,
        Edgings = [new EdgingChoice(EdgingPlace.Border, "corded", 2)],
    });

    public static TheoryData<string> Projects =>
    [
        "tunic up", "tunic sideways", "pooled sleeves", "bands", "alternating", "cowl", "wrap up", "wrap sideways", "pinned",
    ];

    private static Project Named(string name) => name switch
    {
        "tunic up" => Tideline.Directed(Direction.Up),
        "tunic sideways" => Tideline.Directed(Direction.Sideways),
        "pooled sleeves" => Tideline.Sleeved(pooled: true),
        "bands" => Tideline.Directed(Direction.Up)
            .With(g => g with { Grading = g.Grading with { SideBands = true, UnequalPanels = true } }),
        "alternating" => Tideline.With(g => g with { Grading = g.Grading with { AlternatingRows = true, HalfStitchTurn = true } }),
        "cowl" => Cowl,
        "wrap up" => Wrap.Directed(Direction.Up),
        "wrap sideways" => Wrap.Directed(Direction.Sideways),
        "pinned" => Tideline.Directed(Direction.Sideways).Fixed([], [Pin("L", 94)]),
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    /// <summary>Several tests read the same plan, and tests of one class run one after another.</summary>
    private static readonly Dictionary<string, Plan> Plans = [];

    private static Plan PlanOf(string name)
    {
        if (!Plans.TryGetValue(name, out var plan))
            Plans.Add(name, plan = Named(name).Planned());
        return plan;
    }

    private static FixedNumber Pin(string size, int stitches) => new(size, "panelStitches", null, stitches, "as swatched");

    [Theory]
    [MemberData(nameof(Projects))]
    public void What_serves_a_size_is_on_the_ruler_at_the_measure_that_the_plan_finishes(string name)
    {
        var plan = PlanOf(name);
        var ruler = plan.Chosen.Ruler;
        Assert.Equal(plan.Sizes.Select(s => s.Name), ruler.Sizes.Select(s => s.Name));
        foreach (var (size, place) in plan.Sizes.Zip(ruler.Sizes))
        {
            Assert.Equal(size.Target[ruler.Measure].Centimetres, place.Target.Centimetres, 1e-6);
            Assert.Equal(size.Finished[ruler.Measure].Centimetres, place.Choice!.Finished.Centimetres, 1e-6);
            Assert.Equal(size.Pieces[0].Stitches, place.Choice.Front);
            var rows = size.Pieces[0].RowStitches.Length;
            foreach (var stitches in (int[])[place.Choice.Front, place.Choice.Back])
            {
                var count = Assert.Single(ruler.Counts, c => c.Stitches == stitches && c.RowStitches.Length == rows);
                Assert.Equal(size.Pieces[0].TurnCost, count.TurnCost);
                // A count lies where it does with the edging's usual rounds, a size where its own put it.
                if (place.Choice.SideBandRows == 0 && place.Choice.Front == place.Choice.Back && plan.Project.Garment.Edgings.All(e => e.Rounds is not null))
                    Assert.Equal(place.Choice.Finished.Centimetres, count.Finished.Centimetres, 1e-6);
            }
            var served = ruler.Counts.First(c => c.Stitches == place.Choice.Front && c.RowStitches.Length == rows);
            Assert.Equal(size.Pieces[0].Forgives, served.Forgives);
        }
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Counts_lie_in_order_and_hold_on_both_sides_of_their_place(string name)
    {
        foreach (var ruler in PlanOf(name).Options.Select(o => o.Ruler))
        {
            Assert.NotEmpty(ruler.Counts);
            Assert.Equal(ruler.Counts.OrderBy(c => c.Finished).Select(c => c.Finished), ruler.Counts.Select(c => c.Finished));
            Assert.All(ruler.Counts, c => Assert.True(c.HoldsFrom <= c.Finished && c.Finished <= c.HoldsTo));
            Assert.All(ruler.Counts, c => Assert.True(c.RowSlack >= Length.Zero && c.RowSlack < c.RowYarn));
        }
    }

    /// <summary>A row of linen stitch takes a unit of yarn for every two of its stitches.</summary>
    [Theory]
    [InlineData("tunic up", 1)]
    [InlineData("linen", 2)]
    public void A_row_takes_the_yarn_of_its_units(string name, int stitchesPerUnit)
    {
        var plan = name == "linen" ? Instructions.Patterns.Named("linen stitch").Planned() : PlanOf(name);
        Assert.All(plan.Chosen.Ruler.Counts, c => Assert.Equal(
            plan.Sequence.YarnPerUnit.Centimetres * c.RowStitches.Average() / stitchesPerUnit, c.RowYarn.Centimetres, 1e-5));
    }

    /// <summary>A second route to the counts: the fabric of each is read by itself.</summary>
    [Fact]
    public void Every_count_of_the_motif_within_reach_is_there_and_no_other()
    {
        var plan = PlanOf("tunic up");
        var made = plan.Chosen.Ruler.Counts.Select(c => c.Stitches).ToArray();
        var gauge = Tideline.Fabric.Swatch.ForSize();
        var colours = Tideline.Yarn.Sections.Select(s => s.Colour.ToLab()).Select(l => (l.Lightness, l.A, l.B));
        var palette = Palette.FromLab(plan.Sequence.Ring, [.. colours]);
        var reader = MotifReader.Create(plan.Sequence.Ring, Working.Turned, gauge, 1, palette, new MotifOptions());
        var rows = plan.Sizes[plan.Sizes.Length / 2].Pieces[0].Rows;
        var expected = Enumerable.Range(made[0], made[^1] - made[0] + 1).Where(n =>
            reader.Read(FabricPath.Constant(Working.Turned, n, rows)).Kind == MotifKind.Argyle);
        Assert.Equal(expected, made);
    }

    /// <summary>Yarn per stitch changed by ε draws what a row 1 + ε times as long draws, where the lean does not wrap.</summary>
    [Fact]
    public void What_a_count_forgives_reaches_less_than_half_way_to_the_next_family()
    {
        var ruler = PlanOf("tunic up").Chosen.Ruler;
        foreach (var (a, b) in ruler.Counts.Zip(ruler.Counts.Skip(1)).Where(p => p.First.Lean < 0 && p.Second.Lean > 0))
            Assert.True(a.HoldsTo <= b.HoldsFrom + Cm(0.6), $"{a.Stitches} holds beyond {b.Stitches}");
    }

    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_corner_is_the_corner_of_the_piece_as_worn(Direction direction)
    {
        var plan = PlanOf(direction == Direction.Up ? "tunic up" : "tunic sideways");
        var piece = plan.Sizes[0].Pieces[0] with { WrongSideOut = false };
        var worn = WornPiece.Of(plan, piece);
        var ruler = plan.Chosen.Ruler;
        var corner = ruler.Corner(ruler.Counts.First(c => c.Stitches == piece.Stitches), 30, 20);
        Assert.Equal(direction == Direction.Up ? (30, 20) : (20, 30), (corner.Columns, corner.Rows));
        var left = direction == Direction.Up ? worn.Columns - corner.Columns : 0;
        for (var y = 0; y < corner.Rows; y++)
        {
            for (var x = 0; x < corner.Columns; x++)
                Assert.Equal(worn.Cells[(worn.Rows - corner.Rows + y) * worn.Columns + left + x], corner.Cells[y * corner.Columns + x]);
        }
    }

    [Fact]
    public void Motifs_in_reach_share_out_all_counts()
    {
        var ruler = PlanOf("tunic up").Chosen.Ruler;
        var argyle = Assert.Single(ruler.InReach, m => m.Kind == MotifKind.Argyle);
        Assert.Equal(ruler.Counts.Length, argyle.Counts);
        Assert.Contains(ruler.Counts, c => c.Stitches == argyle.Example.Stitches && c.Finished == argyle.Example.Finished);
        Assert.All(ruler.InReach, m => Assert.Equal(m.Kind, m.Example.Motif));
        Assert.Equal(ruler.Counts.Max(c => c.Clarity), argyle.Example.Clarity);
    }

    /// <summary>Bands need sections longer than a row, which no row of a tunic is.</summary>
    [Fact]
    public void Where_no_count_makes_the_motif_the_nearest_and_the_remedies_are_there()
    {
        var wish = Tideline.With(g => g with { Motif = MotifKind.Bands });
        var result = wish.Tried();
        Assert.Equal(PlanOutcome.Infeasible, result.Outcome);
        Assert.Equal([Direction.Up, Direction.Sideways], result.Options.Select(o => o.Direction));
        foreach (var ruler in result.Options.Select(o => o.Ruler))
        {
            Assert.Empty(ruler.Counts);
            Assert.NotEmpty(ruler.Nearest);
            Assert.All(ruler.Sizes, s => Assert.Null(s.Choice));
            Assert.Contains(ruler.Remedies, r => r.Place == "garment.motif");
        }
    }

    /// <summary>Whatever a remedy promises comes true in the document.</summary>
    [Fact]
    public void Each_remedy_lets_a_count_make_the_motif()
    {
        foreach (var motif in new[] { MotifKind.Bands, MotifKind.Steep, MotifKind.Shallow, MotifKind.Columns })
        {
            foreach (var direction in Enum.GetValues<Direction>())
            {
                var wish = Tideline.Directed(direction).With(g => g with { Motif = motif }) with { Sizes = Tideline.Sizes with { Sizes = ["XS", "M", "5X"] } };
                var ruler = wish.Tried().Options.Single(o => o.Direction == direction).Ruler;
                foreach (var remedy in ruler.Counts.IsEmpty ? ruler.Remedies : [])
                {
                    var document = JsonNode.Parse(ProjectWriter.Write(wish))!;
                    var steps = remedy.Place!.Split('.');
                    var node = document.AsObject();
                    foreach (var step in steps[..^1])
                        node = (JsonObject)(node[step] ??= new JsonObject());
                    node[steps[^1]] = JsonNode.Parse(remedy.Value!);
                    var reading = ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(document.ToJsonString()));
                    Assert.NotNull(reading.Project);
                    Assert.True(
                        !reading.Project.Tried().Options.Single(o => o.Direction == direction).Ruler.Counts.IsEmpty,
                        $"{MotifNames.Of(motif)} {direction}: {remedy}");
                }
            }
        }
    }

    [Fact]
    public void Without_pins_the_unpinned_project_is_the_project()
    {
        Assert.Equal(PlanJson.Write(Tideline.Planned()), PlanJson.Write(Alternative.Unpinned(Tideline).Planned()));
        var up = Tideline.Directed(Direction.Up);
        var pinned = up.Fixed([], [Pin("S", 83), new FixedNumber("M", "length", Cm(70), null, "shorter")]);
        Assert.Equal(
            PlanJson.Write(up.Fixed([], [new FixedNumber("M", "length", Cm(70), null, "shorter")]).Planned()),
            PlanJson.Write(Alternative.Unpinned(pinned).Planned()));
    }

    [Fact]
    public void The_other_direction_lets_fixed_counts_go_and_keeps_fixed_measures()
    {
        var made = Tideline.Directed(Direction.Up).Fixed([new FixedNumber("M", "width", Cm(118), null, "")], [Pin("S", 83)]);
        Assert.Equal(made.Sizes.Overrides, Alternative.Worked(made, Direction.Up).Sizes.Overrides);
        var other = Alternative.Worked(made, Direction.Sideways);
        Assert.Empty(other.Sizes.Overrides);
        Assert.Single(other.Sizes.Locked);
        Assert.Equal(Direction.Sideways, other.Planned().Direction);
    }

    [Fact]
    public void Counts_fixed_for_one_direction_leave_the_other_as_it_is()
    {
        foreach (var project in new[] { Tideline, Wrap })
        {
            var size = project.Planned().Sizes[0].Name;
            var free = project.Directed(Direction.Sideways);
            var pinned = free.Fixed([], [Pin(size, 94), new FixedNumber(size, "panelRows", null, 90, "as swatched")]);
            var (a, b) = (Up(free), Up(pinned));
            Assert.Equal(a.Counts, b.Counts);
            Assert.Equal((a.WorstError, a.TypicalError), (b.WorstError, b.TypicalError));
        }

        static DirectionOption Up(Project project) => project.Planned().Options.Single(o => o.Direction == Direction.Up);
    }

    [Fact]
    public void A_piece_of_too_many_rows_is_refused_with_its_own_stitches()
    {
        var stitches = PlanOf("wrap up").Sizes[0].Pieces[0].Stitches;
        var tooLong = Wrap.Directed(Direction.Up).With(g => g with { Shape = new Wrap(Cm(50), Cm(6_000)) }).Tried();
        Assert.Contains($"comes to {stitches} stitches and ", Assert.Single(tooLong.Reasons).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pinned_size_says_so()
    {
        var ruler = PlanOf("pinned").Chosen.Ruler;
        var size = Assert.Single(ruler.Sizes, s => s.IsPinned);
        Assert.Equal(("L", 94), (size.Name, size.Choice!.Front));
    }
}
