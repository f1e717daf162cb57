using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;
using Xunit;

namespace Dyepath.Core.Tests.Making.Order;

public sealed class MakingOrderTests
{
    private static readonly Plan Tideline = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!;

    public static TheoryData<string> Sizes => [.. Tideline.Sizes.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_row_of_every_piece_is_done_once_in_order(string size)
    {
        var order = MakingOrder.Of(Tideline, size);
        var pieces = order.Size.Pieces.SelectMany(p => Enumerable.Repeat(p, p.Copies)).ToArray();
        Assert.Equal(pieces, order.Parts.Where(p => p.Piece is not null).Select(p => p.Piece));
        foreach (var part in order.Parts)
        {
            Assert.Equal(Enumerable.Range(0, part.Rows), part.Steps.OfType<RowStep>().Select(r => r.Row));
            Assert.Equal(part.Piece?.Rows ?? part.Rows, part.Rows);
            Assert.All(Enumerable.Range(0, part.Rows), row => Assert.Equal(row, ((RowStep)part.Steps[part.StepOf(row)]).Row));
        }
    }

    /// <summary>The steps say nothing that the pattern for this size does not say, but for the rows that it asks to repeat.</summary>
    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_words_are_the_pattern_s(string size)
    {
        var edition = Tideline.Project.Edition with { Size = size };
        var booklet = PatternWriter.Write(Tideline);
        var pattern = Regex.Replace(TextBooklet.Write(booklet, edition), @"\s+", " ");
        var wording = new Wording([size], edition);
        foreach (var step in MakingOrder.Of(Tideline, size).Parts.SelectMany(p => p.Steps).Where(s => wording.Text(s.Label) != "Begin"))
        {
            // What is told in lines here is a list there.
            foreach (var line in wording.Text(step.Text).Split('\n'))
                Assert.Contains(Regex.Replace(line, @"\s+", " ").Trim(), pattern, StringComparison.Ordinal);
        }
    }

    /// <summary>Rows that the pattern asks to repeat stand here as often as they are worked, each with its side and its words.</summary>
    [Theory]
    [InlineData("worked up", 0, "Row 1 (RS)", "Sc in 2nd ch from hook and in each ch to end, turn.")]
    [InlineData("worked up", 1, "Row 2 (WS)", "Ch 1, sc in each st to end, turn.")]
    [InlineData("worked up", 2, "Row 3 (RS)", "Ch 1, sc in each st to end, turn.")]
    [InlineData("worked up", 7, "Row 8 (WS)", "Ch 1, sc in each st to end, turn.")]
    [InlineData("linen cowl in rounds", 0, "Round 1", "Ch 1, *sc in next ch, ch 1, skip next ch;")]
    [InlineData("linen cowl in rounds", 1, "Round 2", "Ch 2 (counts as a ch-1 space), skip first sc,")]
    [InlineData("linen cowl in rounds", 2, "Round 3", "Ch 1, *sc in next ch-1 space, ch 1, skip next sc;")]
    [InlineData("linen cowl in rounds", 3, "Round 4", "Ch 2 (counts as a ch-1 space), skip first sc,")]
    [InlineData("linen cowl in rounds", 4, "Round 5", "Ch 1, *sc in next ch-1 space, ch 1, skip next sc;")]
    [InlineData("linen cowl in rounds", 9, "Round 10", "Ch 2 (counts as a ch-1 space), skip first sc,")]
    public void Each_row_has_its_own_words(string name, int row, string label, string begins)
    {
        var plan = Instructions.Patterns.Named(name).Planned();
        var part = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[0];
        var wording = new Wording([plan.Sizes[0].Name], plan.Project.Edition);
        var step = part.Steps[part.StepOf(row)];
        Assert.Equal(label, wording.Text(step.Label));
        Assert.StartsWith(begins, wording.Text(step.Text), StringComparison.Ordinal);
    }

    /// <summary>Made piece after piece, then up, then edged; what is made twice is numbered.</summary>
    [Fact]
    public void Parts_come_in_the_order_in_which_they_are_made()
    {
        var wording = new Wording(["M"], Tideline.Project.Edition);
        Assert.Equal(
            [
                "Front", "Back", "Sleeve, 1 of 2", "Sleeve, 2 of 2", "Making up", "Hem: sideways rib (sc in the back loop)",
                "Neck: corded edge (reverse sc)", "Cuffs: sideways rib (sc in the back loop), 1 of 2", "Cuffs: sideways rib (sc in the back loop), 2 of 2",
                "After the edgings",
            ],
            MakingOrder.Of(Tideline, "M").Parts.Select(p => wording.Text(p.Title)));
    }

    /// <summary>Said in the row in which it is done: that the last one is the last, and where a ball ends.</summary>
    [Fact]
    public void Notes_stand_in_their_rows()
    {
        var order = MakingOrder.Of(Tideline, "M");
        var wording = new Wording(["M"], Tideline.Project.Edition);
        foreach (var part in order.Parts.Where(p => p.Piece is not null))
        {
            var rows = part.Steps.OfType<RowStep>().ToArray();
            Assert.Equal([part.Rows - 1], rows.Where(r => r.Notes.Any(n => wording.Text(n) == "Then fasten off.")).Select(r => r.Row));
            foreach (var join in order.Size.Yarn.Joins.Where(j => j.Run == new PieceRun(part.Piece!.Id)))
                Assert.Contains(rows[join.Row - 1].Notes, n => wording.Text(n) == $"About here ball {join.Ball} ends, in stitch {Nth(join)}: join the next one at the same place of the colours.");
            Assert.Equal(order.Size.Yarn.Joins.Count(j => j.Run == new PieceRun(part.Piece!.Id)), rows.SelectMany(r => r.Notes).Count(n => wording.Text(n).StartsWith("About here", StringComparison.Ordinal)));
        }
        Assert.NotEmpty(order.Size.Yarn.Joins);

        // 5 of deep water, 4 of shallows, 3 of foam, 5 of wet sand, 4 of kelp.
        static string Nth(BallJoin join) => (join.Place / 1e6) switch
        {
            var place when place < 5 => $"{(int)place + 1} of deep water (D)",
            var place when place < 9 => $"{(int)place - 4} of shallows (H)",
            var place when place < 12 => $"{(int)place - 8} of foam (F)",
            var place when place < 17 => $"{(int)place - 11} of wet sand (W)",
            var place => $"{(int)place - 16} of kelp (K)",
        };
    }

    /// <summary>An edging in rounds: the first as told, the last as told, what lies between as the first.</summary>
    [Theory]
    [InlineData("corded", 3, "Ch 1, sc in every place", "Ch 1, sc in each sc", "Without turning, ch 1, reverse sc")]
    [InlineData("sc", 3, "Ch 1, sc in every place", "Ch 1, sc in each sc around", "Ch 1, sc in each sc around")]
    [InlineData("picot", 2, "Ch 1, sc in every place", "Ch 1, * sc in each of the next 3 sc, ch 3")]
    public void An_edging_is_worked_round_by_round(string edging, int rounds, params string[] begin)
    {
        var plan = Instructions.Patterns.Named("blanket").With(g => g with { Edgings = [new(Core.Edgings.EdgingPlace.Border, edging, rounds)] }).Planned();
        var part = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[^2];
        var wording = new Wording([plan.Sizes[0].Name], plan.Project.Edition);
        // Of two rounds under picots none widens.
        string[] first = edging == "picot" ? ["Yarn", "Pick up", "Work", "Spread"] : ["Yarn", "Pick up", "Work", "Corners", "Count", "Spread"];
        Assert.Equal(first, part.Steps.Take(first.Length).Select(s => wording.Text(s.Label)));
        var steps = part.Steps.OfType<RowStep>().ToArray();
        Assert.Equal(begin.Length, steps.Length);
        Assert.Equal(Enumerable.Range(1, rounds).Select(r => $"Round {r}"), steps.Select(s => wording.Text(s.Label)));
        Assert.All(steps.Zip(begin), s => Assert.StartsWith(s.Second, wording.Text(s.First.Text), StringComparison.Ordinal));
    }

    /// <summary>After its rounds an edging may have something that is done once; rib rows, which stand across the edge, are told and not numbered.</summary>
    [Theory]
    [InlineData("drawstring", 4, "Round 1", "Round 2", "Round 3", "Round 4", "Cord")]
    [InlineData("elastic-casing", 2, "Round 1", "Round 2", "Casing", "Elastic")]
    [InlineData("clusters", 3, "Round 1", "Round 2", "Round 3")]
    [InlineData("slip-rib", 5, "Round 1", "Rib row 1", "Rib row 2", "Rib row 3")]
    public void An_edging_is_finished_after_its_rounds(string edging, int rounds, params string[] labels)
    {
        var plan = Instructions.Patterns.Named("tunic").With(g => g with { Edgings = [new(Core.Edgings.EdgingPlace.Hem, edging, rounds)] }).Planned();
        var part = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[^2];
        var wording = new Wording([plan.Sizes[0].Name], plan.Project.Edition);
        Assert.Equal(labels, part.Steps.Select(s => wording.Text(s.Label)).SkipWhile(l => l != "Spread").Skip(1));
        Assert.Equal(edging == "slip-rib" ? 0 : rounds, part.Rows);
        Assert.Equal(part.Rows, part.Steps.OfType<RowStep>().Count());
    }

    /// <summary>Two ways are a choice, not two things to do one after the other.</summary>
    [Fact]
    public void Of_the_two_ways_to_begin_one_is_chosen()
    {
        var wording = new Wording(["M"], Tideline.Project.Edition);
        var front = MakingOrder.Of(Tideline, "M").Parts[0].Steps;
        Assert.Equal(["Begin", "Foundation", "Row 1 (RS)"], front.Take(3).Select(s => wording.Text(s.Label)));
        Assert.Equal(
            "Choose one way. Easy: slip knot at the beginning of K; extra chains: 1. No waste: slip knot 2.3 cm / ⅞ in after the beginning of K. "
            + "Extra chains come before the foundation: they use up yarn until the colours lie right, nothing is worked into them, and they are undone before "
            + "sewing. Either way row 1 begins at D1, stitch 1 of deep water (D).",
            wording.Text(front[0].Text));
    }

    /// <summary>Beside the hook nobody turns back to what the pattern says of extra chains: a piece that has some says what they are.</summary>
    [Fact]
    public void Extra_chains_are_explained_where_there_are_some()
    {
        var project = Tideline.Project;
        var seen = new HashSet<bool>();
        foreach (var start in Enumerable.Range(0, 5))
        {
            var starts = project.Garment.Starts.SetItem("front", start);
            var plan = GarmentPlanner.Plan(project with { Garment = project.Garment with { Starts = starts } }).Plan!;
            var some = plan.Sizes[0].Pieces[0].Foundation.MoreChains > 0;
            var begin = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[0].Steps[0];
            Assert.Equal(some, new Wording([plan.Sizes[0].Name], project.Edition).Text(begin.Text).Contains("nothing is worked into them", StringComparison.Ordinal));
            seen.Add(some);
        }
        Assert.Contains(true, seen);
    }

    [Fact]
    public void With_a_foundation_of_companion_yarn_only_the_place_is_said()
    {
        var project = Tideline.Project;
        var plan = GarmentPlanner.Plan(project with { Companion = project.Companion! with { Uses = [.. project.Companion.Uses, CompanionUse.Foundation] } }).Plan!;
        var wording = new Wording(["M"], project.Edition);
        var begin = MakingOrder.Of(plan, "M").Parts[0].Steps[0];
        Assert.Matches("^Row 1 begins at ([A-Z])([0-9]+), stitch \\2 of [a-z ]+ \\(\\1\\)\\.$", wording.Text(begin.Text));
    }

    [Fact]
    public void Every_mark_is_made_once()
    {
        foreach (var part in MakingOrder.Of(Tideline, "M").Parts.Where(p => p.Piece is not null))
        {
            var wording = new Wording(["M"], Tideline.Project.Edition);
            var said = part.Steps.Select(s => wording.Text(s.Label)).Concat(part.Steps.OfType<RowStep>().SelectMany(r => r.Notes.Select(wording.Text)));
            Assert.Equal(part.Piece!.Marks.Length, said.Count(words => words.StartsWith("Mark", StringComparison.Ordinal)));
        }
    }
}
