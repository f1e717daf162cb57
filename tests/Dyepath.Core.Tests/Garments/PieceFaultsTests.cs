using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Pieces that nobody can work, and edgings that cannot go where they are wanted or have rounds that they cannot have.</summary>
public sealed class PieceFaultsTests
{
    [Theory]
    [InlineData(1000, 5000, null)]
    [InlineData(null, 5000, null)]
    [InlineData(1001, 12, "Size M: the front comes to 1001 stitches and 12 rows; 1000 stitches and 5000 rows are the most. Check the gauge, or make it smaller.")]
    [InlineData(80, 5001, "Size M: the front comes to 80 stitches and 5001 rows; 1000 stitches and 5000 rows are the most. Check the gauge, or make it smaller.")]
    [InlineData(null, 5001, "Size M: the front comes to 5001 rows; 1000 stitches and 5000 rows are the most. Check the gauge, or make it smaller.")]
    public void A_piece_too_large_is_named_with_what_it_comes_to(int? stitches, int rows, string? said)
    {
        var fault = PieceSize.Fault("M", "front", stitches, rows);
        Assert.Equal(said, fault?.Text);
        if (fault is not null)
            Assert.Equal((FindingLevel.Fault, "garment"), (fault.Level, fault.Place));
    }

    public static TheoryData<EdgingPlace, string, int?, int?, int?, Wearers, string, string> Wrong => new()
    {
        { EdgingPlace.Hem, "sc", 0, null, null, Wearers.Adult, "rounds", "Give 1 to 40 rounds." },
        { EdgingPlace.Hem, "sc", 41, null, null, Wearers.Adult, "rounds", "Give 1 to 40 rounds." },
        { EdgingPlace.Hem, "sc", null, 0, null, Wearers.Adult, "fewestRounds", "Give 1 to 40 rounds." },
        { EdgingPlace.Hem, "sc", null, null, 41, Wearers.Adult, "mostRounds", "Give 1 to 40 rounds." },
        { EdgingPlace.Hem, "sc", null, 5, 3, Wearers.Adult, "mostRounds", "Give at least 5, as many as fewestRounds." },
        { EdgingPlace.Hem, "lace", null, null, null, Wearers.Adult, "edging", $"There is no edging lace: choose one of {string.Join(", ", EdgingLibrary.All.Select(e => e.Id))}." },
        { EdgingPlace.Neck, "picot", null, null, null, Wearers.Child, "edging", "The picot edging has loops, which have no place at the neck of children's garments (neck): choose one of sc, corded, rib, clusters, slip-rib." },
        { EdgingPlace.Neck, "drawstring", null, null, null, Wearers.Baby, "edging", "The drawstring edging has a cord, which has no place at the neck of children's garments (neck): choose one of sc, corded, rib, clusters, slip-rib." },
        { EdgingPlace.Neck, "elastic-casing", null, null, null, Wearers.Adult, "edging", "The elastic-casing edging is not made for this edge (neck): choose one of sc, corded, picot, shell, v-stitch, rib, clusters, slip-rib, drawstring." },
        { EdgingPlace.Hem, "sc-rows", null, null, null, Wearers.Adult, "edging", "The sc-rows edging is worked in rows, and the ends of this edge meet: choose one that is worked in rounds." },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void An_edging_that_cannot_be_worked_says_what_to_write(
        EdgingPlace where, string edging, int? rounds, int? fewest, int? most, Wearers wearer, string member, string said)
    {
        // One that is right before it, so that the second is the one that is named.
        var faults = Faults([new(EdgingPlace.Cuffs, "sc", 3), new(where, edging, rounds) { Fewest = fewest, Most = most }], wearer);
        Assert.Equal([(FindingLevel.Fault, $"garment.edgings[1].{member}", said)], faults.Select(f => (f.Level, f.Place, f.Text)));
    }

    [Fact]
    public void What_can_be_worked_is_not_spoken_of()
    {
        Assert.Empty(Faults([new(EdgingPlace.Hem, "sc", 1), new(EdgingPlace.Neck, "picot", 40)], Wearers.Adult));
        Assert.Empty(Faults([new(EdgingPlace.Hem, "sc", null) { Fewest = 3, Most = 3 }, new(EdgingPlace.Neck, "corded", null)], Wearers.Child));
    }

    /// <summary>A fixed count that makes a quarter of what is asked for or less, or four times as much, was mistyped; others are as made.</summary>
    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.33, false)]
    [InlineData(3.6, false)]
    [InlineData(4.5, true)]
    public void A_fixed_count_that_makes_far_too_much_or_too_little_is_named(double times, bool named)
    {
        var begun = StarterDocument.Of(Repertoire.All.First(k => k.Name == "wrap")).With(g => g with { Direction = Direction.Up });
        var rows = begun.Planned().Sizes[0].Pieces[0].Rows;
        var result = begun.Fixed([], [new("One size", "panelRows", null, (int)(rows * times), "as made")]).Tried();
        Assert.Equal(named, (result.Plan?.Findings ?? result.Reasons).Any(f => f.Text.Contains(" as fixed make a length of ", StringComparison.Ordinal)));
    }

    /// <summary>What is said to make a cut does so in every size, and a centimetre less does not.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void The_least_depth_that_is_cut_in_every_size_is_said(Direction direction)
    {
        var said = 0;
        foreach (var (form, stitch) in new[] { (NeckForm.Round, "sc"), (NeckForm.Square, "sc"), (NeckForm.Square, "hdc") })
        {
            var project = Begun("pullover", stitch, even: true, direction)
                .With(g => g with { Edgings = [], Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true } });
            var remedy = Tried(project, form, 1).SelectMany(f => f.Remedies).FirstOrDefault(r => r.Place == "garment.backNeckDepth");
            if (remedy is null)
                continue;
            said++;
            var depth = int.Parse(System.Text.RegularExpressions.Regex.Match(remedy.Text, @"^Ask for (\d+) cm").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
            Assert.Empty(Tried(project, form, depth));
            if (depth > 2)
                Assert.NotEmpty(Tried(project, form, depth - 1));
        }
        Assert.True(said > 0, "Every depth was cut.");

        static Finding[] Tried(Project project, NeckForm form, int depth) =>
        [
            .. project.WithTop(t => t with { Neck = new Neck(form, null) { BackDepth = Cm(depth) } }).Planned()
                .Findings.Where(f => f.Text.StartsWith("The back's neck is not cut", StringComparison.Ordinal)),
        ];
    }

    /// <summary>A hook that is advised is planned: the same counts at the gauge that it gives, and sizes as far off as is said.</summary>
    [Theory]
    [InlineData("pullover")]
    [InlineData("vest")]
    [InlineData("wrap")]
    public void Another_hook_brings_what_is_said(string garment)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment)).With(g => g with { Direction = Direction.Up, Edgings = [] });
        var plan = project.Planned();
        var told = 0;
        foreach (var change in plan.Options.Single(o => o.Direction == Direction.Up).Ruler.Changes.Where(c => c.Kind == GradingRemedyKind.OtherHook))
        {
            told++;
            var factor = SharedFabric.Of(plan).HooksNear(Direction.Up).Single(h => h.Hook == change.Amount).Factor;
            Assert.Equal(change.Amount > 100 * project.Fabric.Swatch.HookMillimetres, factor > 1);
            var worked = project.Fabric.Swatch.Worked;
            var wider = project with { Fabric = project.Fabric with { Swatch = project.Fabric.Swatch with { Worked = worked with { Stitches = worked.Stitches / factor } } } };
            Assert.Equal(change.WorstError.Centimetres, wider.Planned().Options.Single(o => o.Direction == Direction.Up).Ruler.Sizes.Max(
                s => Math.Abs((s.Choice!.Finished - s.Target).Centimetres)), 0.05);
        }
        Assert.True(told > 0 || garment != "pullover", "No hook was advised.");
    }

    private static ImmutableArray<Finding> Faults(ImmutableArray<EdgingChoice> edgings, Wearers wearer)
    {
        var garment = StarterDocument.Of(Repertoire.All.First(k => k.Name == "pullover")).Garment with { Edgings = edgings };
        return [.. EdgingPlanner.Faults(garment, garment.Shape.Construct(garment), wearer)];
    }
}
