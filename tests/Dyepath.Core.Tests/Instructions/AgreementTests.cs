using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Projects;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>Good designs agree with their own check; designs that were spoilt do not.</summary>
public sealed class AgreementTests
{
    /// <summary>Names that a text could mistake for its own marks.</summary>
    private static readonly string[] Odd =
    [
        "<b>bold</b> & \"quoted\"", "rust (dark)", "X (Y)", "rust (dark, no. 3)", "Balls to buy: 9.", "500 m of sock", "3 of hearts (H), 5 of clubs (C)", "12", " x ",
        "sock, the companion yarn for edgings", "ends with 3 of it (X)", "## head", "-----", "שקיעה אדומה", "٣ ألوان", "a  b   c", "\u200f\u200eאb",
    ];

    [Fact]
    public void Designs_of_every_kind_agree_in_every_edition()
    {
        var planned = 0;
        // In part, every second one.
        var step = Extent.Of(2, 1);
        for (var seed = 20_001; seed <= 20_180; seed += step)
        {
            // The generator makes a few that the reader refuses, and some that no count serves.
            if (ProjectReader.Read(ProjectWriter.WriteUtf8(DesignGen.Of(seed))).Project is not { } project || project.Tried().Plan is not { } plan)
                continue;
            planned++;
            Assert.True(PatternCheck.Run(plan) is { IsEmpty: true } found, $"Seed {seed}: {PatternCheck.Run(plan).FirstOrDefault()}");
        }
        Assert.True(planned > 60 / step, $"only {planned}");
    }

    [Fact]
    public void Names_are_read_by_the_document_whatever_they_look_like()
    {
        foreach (var name in Odd)
        {
            var project = Patterns.Named("tunic in three sizes");
            var named = project with
            {
                Title = name,
                Designer = name,
                Yarn = project.Yarn with { Name = name, Fibre = name, Sections = project.Yarn.Sections.SetItem(0, project.Yarn.Sections[0] with { Name = name }) },
                Companion = project.Companion! with { Name = name },
                Words = WordPlaces.All.ToImmutableSortedDictionary(p => p, _ => $"{name}\nRow 1: Ch 3.\n## Front\nSizes: 1", StringComparer.Ordinal),
            };
            // In two sizes "X (Y)" is a list of both.
            Assert.Empty(PatternCheck.Run((named with { Sizes = named.Sizes with { Sizes = ["S", "M"], Base = "M" } }).Planned()));
        }
    }

    [Theory]
    [InlineData("Size")]
    [InlineData("Row")]
    [InlineData("36\"")]
    [InlineData("2–4 years")]
    [InlineData("36 in")]
    public void Sizes_may_be_called_anything_that_a_list_can_hold(string name)
    {
        var tunic = Patterns.Named("tunic in three sizes");
        SizeCharts.TryFind("women", out var chart);
        var own = new[] { "XS", name, "L" }.Select((n, i) => new OwnSize(
            n, chart!.Sizes[2 * i].Measurements.ToImmutableSortedDictionary(m => BodyMeasures.Key(m.Measure), m => m.Range.Middle))).ToImmutableArray();
        Assert.Empty(PatternCheck.Run((tunic with { Sizes = new SizeSelection(null, [], own, null, [], []) }).Planned()));
    }

    [Theory]
    [InlineData("sc", true, "Ch 1 (counts as the first st), skip first st", "2nd ch from hook (the 1 skipped ch counts as the first st)")]
    [InlineData("sc", false, "Ch 1, sc in each st", "2nd ch from hook and in each ch")]
    [InlineData("hdc", true, "Ch 2 (counts as the first st), skip first st", "3rd ch from hook (the 2 skipped ch count as the first st)")]
    [InlineData("dc", true, "Ch 3 (counts as the first st), skip first st", "4th ch from hook (the 3 skipped ch count as the first st)")]
    public void A_turning_chain_that_counts_is_said_to_and_agrees(string stitch, bool counts, string turn, string first)
    {
        var plan = Counting(stitch, counts).Planned();
        Assert.Empty(PatternCheck.Run(plan));
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us }).Replace("\n    ", " ", StringComparison.Ordinal);
        Assert.Contains(turn, text, StringComparison.Ordinal);
        Assert.Contains(first, text, StringComparison.Ordinal);
        var piece = plan.Sizes[0].Pieces[0];
        Assert.Equal(piece.Stitches + (stitch, counts) switch { ("sc", true) => 0, ("sc", false) => 1, ("hdc", true) => 1, _ => 2 }, piece.FoundationChains);
    }

    /// <summary>The chain is the row's first stitch and takes its own yarn: it lies where the row's first stitch lies.</summary>
    [Fact]
    public void Free_work_in_double_crochet_agrees_row_by_row() => Assert.Empty(PatternCheck.Run(Counting("dc", null).Planned()));

    [Fact]
    public void A_gauge_between_two_printed_figures_agrees()
    {
        var tunic = Patterns.Named("tunic in three sizes");
        // Rounded to the even figure these would come out a hundredth lower than printed.
        var swatch = tunic.Fabric.Swatch with { Blocked = null, Hung = null, Worked = new Gauge(14.125, 18.885, Cm(10)) };
        Assert.Empty(PatternCheck.Run((tunic with { Fabric = tunic.Fabric with { Swatch = swatch } }).Planned()));
    }

    /// <summary>A sequence of 23.6 stitches: its second turn does not begin at a whole one.</summary>
    [Fact]
    public void A_back_that_begins_late_in_a_sequence_that_is_not_whole_jumps_as_planned()
    {
        var project = ProjectReader.Read(ProjectWriter.WriteUtf8(DesignGen.Of(2273))).Project!;
        Assert.Empty(PlanCheck.Verify(project.Planned()));
        for (var start = 0; start < 20; start += 3)
            Assert.Empty(PlanCheck.Verify(project.With(g => g with { Starts = g.Starts.SetItem("front", start) }).Planned()));
    }

    [Fact]
    public void Pairs_of_lists_of_different_lengths_are_a_disagreement()
    {
        var tunic = Patterns.Named("tunic in three sizes");
        var plan = (tunic with { Words = tunic.Words.SetItem("notes", "Leave 3 (4, 5) cm / 1 (2) in of tail.") }).Planned();
        Assert.Contains(PatternCheck.Text(plan, TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition)), f => f.Text.Contains("different lengths", StringComparison.Ordinal));
    }

    [Fact]
    public void A_yarn_of_which_its_label_says_nothing_is_named_and_measured()
    {
        var tunic = Patterns.Named("tunic in three sizes");
        var text = TextBooklet.Write(PatternWriter.Write((tunic with { Yarn = tunic.Yarn with { Fibre = "", Category = null } }).Planned()), tunic.Edition);
        Assert.Matches($@"\n- {tunic.Yarn.Name}: [0-9]+ m", text);
    }

    /// <summary>Each changes one name or figure that only the document can tell.</summary>
    [Theory]
    [InlineData("- Tideline colourway", "- Tideline")]
    [InlineData("230 m / 252 yd", "231 m / 253 yd")]
    [InlineData("first stitch of the second colour", "")]
    [InlineData("two colours exchanged", "")]
    [InlineData("a colour left out", "")]
    [InlineData("a colour of another name", "")]
    [InlineData("a colour of another name in the sequence", "")]
    [InlineData("a colour of another name in the strip", "")]
    [InlineData("the companion of another name", "")]
    public void Planted_names_and_figures_are_noticed(string what, string other)
    {
        var plan = Patterns.Named("tunic in three sizes").Planned();
        var (yarn, companion) = (plan.Project.Yarn, plan.Project.Companion!.Name);
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        Assert.Empty(PatternCheck.Text(plan, text));
        var counted = text.Split('\n').Where(l => l.StartsWith($"- {yarn.Sections[0].Name} (", StringComparison.Ordinal) || l.StartsWith($"- {yarn.Sections[1].Name} (", StringComparison.Ordinal)).ToArray();
        var spoilt = what switch
        {
            "- Tideline colourway" => text.Replace($"- {yarn.Name}: ", "- another: ", StringComparison.Ordinal),
            "230 m / 252 yd" => text.Replace(what, other, StringComparison.Ordinal),
            "first stitch of the second colour" => text.Replace(counted[1], counted[1].Replace(": ", ": 1", StringComparison.Ordinal), StringComparison.Ordinal),
            "two colours exchanged" => text.Replace(counted[0], "#", StringComparison.Ordinal).Replace(counted[1], counted[0], StringComparison.Ordinal).Replace("#", counted[1], StringComparison.Ordinal),
            "a colour left out" => text.Replace(counted[0] + "\n", "", StringComparison.Ordinal),
            "a colour of another name" => text.Replace(counted[0], counted[0].Replace(yarn.Sections[0].Name, "mauve", StringComparison.Ordinal), StringComparison.Ordinal),
            "a colour of another name in the sequence" =>
                // A line may break within it.
                Regex.Replace(text, $@"\bof {Regex.Escape(yarn.Sections[0].Name).Replace(@"\ ", @"\s+", StringComparison.Ordinal)}\s+\(", "of mauve ("),
            "a colour of another name in the strip" => text.Replace("begins with ", "begins with 1", StringComparison.Ordinal),
            _ => text.Replace($"- {companion}, the companion yarn", "- another, the companion yarn", StringComparison.Ordinal),
        };
        Assert.NotEqual(text, spoilt);
        Assert.NotEmpty(PatternCheck.Text(plan, spoilt));
    }

    /// <summary>Where a chain counts, a row that begins a stitch late along the yarn still shows.</summary>
    [Fact]
    public void A_planted_start_is_noticed_where_the_chain_counts()
    {
        var plan = Counting("dc", null).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        var size = plan.Sizes[0];
        var late = size with { Pieces = [.. size.Pieces.Select(p => p.Pooled ? p with { Start = (p.Start + 2) % plan.Sequence.Ring.SequenceUnits } : p)] };
        Assert.Contains(PatternCheck.Text(plan with { Sizes = plan.Sizes.SetItem(0, late) }, text), f => f.Place.Contains("chart", StringComparison.Ordinal));
    }

    private static Project Counting(string stitch, bool? counts)
    {
        var (found, gauge, each) = stitch switch
        {
            "sc" => (FabricStitch.SingleCrochet, new Gauge(14, 16, Cm(10)), 6.4),
            "hdc" => (FabricStitch.HalfDoubleCrochet, new Gauge(13.5, 10.5, Cm(10)), 9.3),
            _ => (FabricStitch.DoubleCrochet, new Gauge(13, 8, Cm(10)), 12.1),
        };
        var small = Patterns.Named("tunic in three sizes").Directed(Direction.Up);
        return small with
        {
            Fabric = small.Fabric with
            {
                Stitch = found,
                TurnCost = null,
                TurningChainCounts = counts,
                Keeping = counts is null ? ColourKeeping.Free : ColourKeeping.Counted,
                SectionStitches = counts is null ? null : small.Fabric.SectionStitches,
                Swatch = new Swatch(5.5, gauge, null, null, [new YarnUsed(20, Cm(20 * each))]),
            },
        };
    }
}
