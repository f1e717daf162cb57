using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>
/// A band lies flat where its rounds grow and shrink as the edge turns: round a corner of the fabric by 2 stitches a round, round an inner
/// corner back by as many (common practice, no source).
/// </summary>
public sealed class EdgingCornerTests
{
    /// <summary>A square neck has an inner corner at either end of each lower edge that is cut; a vest's armhole one on front and on back.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Inner_corners_of_square_cuts_are_counted_and_said(Direction direction)
    {
        var project = Begun("vest", "sc", true, direction).With(g => g with
        {
            Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.Square, null) { Depth = Cm(14), BackDepth = Cm(8) } },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        project = GarmentTrials.Edged(project, direction, EdgingPlace.Neck, EdgingPlace.Armholes).With(g => g with
        {
            Edgings = [.. g.Edgings.Select(e => e with { Rounds = 4 })],
        });
        var plan = GarmentTrials.Check(project);
        foreach (var size in plan.Sizes)
        {
            var (neck, arm) = (size.Edgings.Single(e => e.Where == EdgingPlace.Neck), size.Edgings.Single(e => e.Where == EdgingPlace.Armholes));
            var lower = new[] { PieceId.Front, PieceId.Back }.Count(p => size[p].Opening(OpeningId.Neck).Into >= 7);
            Assert.Equal((0, 2 * lower), neck.Corners);
            Assert.Equal(0, arm.Corners.Outer);
            Assert.InRange(arm.Corners.Inner, 0, 2);
            Assert.Equal(-2 * neck.Corners.Inner, neck.PerRound);
        }
        Assert.Contains("sc3tog over it and the stitches beside it", GarmentTrials.Text(plan), StringComparison.Ordinal);
    }

    /// <summary>The slopes of two inserts meet in the point of the V.</summary>
    [Fact]
    public void The_point_of_a_V_is_an_inner_corner()
    {
        var project = Begun("vest", "sc", true, Direction.Sideways).With(g => g with { Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) } });
        project = GarmentTrials.Edged(project with { Companion = Tideline.Companion }, Direction.Sideways, EdgingPlace.Neck);
        var plan = GarmentTrials.Check(project.With(g => g with { Edgings = [g.Edgings[0] with { Rounds = 3 }] }));
        Assert.All(plan.Sizes, s => Assert.Equal((0, 1), s.Edgings.Single().Corners));
        Assert.Contains("- inner corner - front neck, slope at the wearer's right: ", GarmentTrials.Text(plan), StringComparison.Ordinal);
    }

    /// <summary>
    /// A V that is cut in steps turns back at its point too: every round takes three stitches together there (common practice, no source),
    /// or, where its end is so wide that it is an edge of its own, at either end of that.
    /// </summary>
    [Theory]
    [InlineData("vest", Direction.Up, "sc", 4)]
    [InlineData("vest", Direction.Sideways, "sc", 3)]
    [InlineData("pullover", Direction.Up, "sc", 3)]
    [InlineData("pullover", Direction.Sideways, "corded", 4)]
    [InlineData("vest", Direction.Sideways, "picot", 5)]
    public void A_V_cut_in_steps_narrows_at_its_point_in_every_round(string garment, Direction direction, string edging, int rounds)
    {
        var starter = Bench.Starter.Of(Repertoire.All.First(k => k.Name == garment), "women").First(s => s.Neck == "v");
        var plan = GarmentTrials.Check(starter.Project().With(g => g with
        {
            Direction = direction,
            Edgings = [new EdgingChoice(EdgingPlace.Neck, edging, rounds)],
        }));
        foreach (var size in plan.Sizes)
        {
            var neck = size.Edgings.Single();
            Assert.True(neck.Corners.Inner > neck.Corners.Outer, size.Name);
            var met = neck.Spread.Stretches.Select(r => r.Stretch).ToList();
            // Before the point everything lies at the wearer's left, after it at the right.
            var atPoint = met.FindIndex(s => s is { Corner: EdgeCorner.Inner, Id: StretchId.OfEdge { Part: EdgePart.StepsAtWearersRight or EdgePart.WearersRight } });
            Assert.InRange(atPoint, 1, met.Count - 2);
            Assert.All(met[..atPoint], s => Assert.False(s.Id is StretchId.OfEdge { Part: EdgePart.StepsAtWearersRight or EdgePart.WearersRight }, size.Name));
            // Round by round; the last of a corded edge or of picots goes over what it finds.
            var counts = new List<int> { neck.PickUp };
            for (var round = 2; round <= rounds; round++)
                counts.Add(counts[^1] + (round == rounds && edging != "sc" ? 0 : 2 * (neck.Corners.Outer - neck.Corners.Inner)));
            Assert.Equal(counts[^1], neck.LastCount);
            Assert.Equal(0, counts[^1] % EdgingLibrary.Find(edging).Multiple);
            var of = EdgingLibrary.Find(edging);
            var stitches = counts.Select((count, at) => count * (at == rounds - 1 ? of.LastYarn : of.RoundYarn)).Sum();
            Assert.Equal(stitches, of.YarnInSingleCrochet(neck.PickUp, rounds, neck.PerRound), 9);
        }
        var text = GarmentTrials.Text(plan);
        Assert.Contains("work sc3tog over it and the stitches beside it", text, StringComparison.Ordinal);
        Assert.Contains("sc3tog", text[text.IndexOf("ABBREVIATIONS", StringComparison.Ordinal)..text.IndexOf("EDGINGS", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    /// <summary>The check counts for itself: it misses a point that no round turns at, and a last round of too many stitches.</summary>
    [Fact]
    public void A_point_that_is_left_out_is_noticed()
    {
        var starter = Bench.Starter.Of(Repertoire.All.First(k => k.Name == "vest"), "women").First(s => s.Neck == "v");
        var plan = starter.Project().With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Neck, "sc", 3)] }).Planned();
        var straight = plan with
        {
            Sizes = [.. plan.Sizes.Select(s => s with { Edgings = [s.Edgings[0] with { Corners = (0, 0) }] })],
        };
        Assert.Contains(
            PlanCheck.Verify(straight, TestContext.Current.CancellationToken),
            d => d.ToString()!.Contains("No round is narrower at the point of the edge.", StringComparison.Ordinal));
    }

    /// <summary>A band of one round turns at no corner, nor does a rib whose rows stand across the edge.</summary>
    [Theory]
    [InlineData("sc", 1)]
    [InlineData("slip-rib", 6)]
    public void Where_no_round_narrows_a_V_has_no_corner(string edging, int rounds)
    {
        var starter = Bench.Starter.Of(Repertoire.All.First(k => k.Name == "vest"), "women").First(s => s.Neck == "v");
        var plan = GarmentTrials.Check(starter.Project().With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Neck, edging, rounds)] }));
        Assert.All(plan.Sizes, s => Assert.Equal((0, 0), s.Edgings.Single().Corners));
        Assert.DoesNotContain("3tog", GarmentTrials.Text(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void Outer_corners_take_more_each_round_and_their_yarn_is_counted()
    {
        var project = Begun("blanket", "sc", true, Direction.Up).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, "sc", 5)] });
        var plan = GarmentTrials.Check(project);
        var border = plan.Sizes[0].Edgings.Single();
        Assert.Equal((4, 0), border.Corners);
        // Stitch by stitch: each round has 8 more than the one before it.
        var edging = EdgingLibrary.Find("sc");
        var stitches = Enumerable.Range(0, 5).Sum(round => (border.PickUp + 8 * round) * (round == 4 ? edging.LastYarn : edging.RoundYarn));
        Assert.Equal(stitches, edging.YarnInSingleCrochet(border.PickUp, 5, border.PerRound), 9);
        Assert.Contains("Work what is extra at each of the 4 corners into the last place before it, and mark the middle one of the stitches there. In every round of sc after the first work 3 sc in it, so that the corner lies flat, and mark the middle one of them: 8 stitches more each time.", GarmentTrials.Text(plan), StringComparison.Ordinal);
    }

    /// <summary>Stitches are spread by the width of an edging's stitch, which is said, as measured or as taken.</summary>
    [Theory]
    [InlineData(false, "No swatch was made of the edgings: they are taken to come out a little closer than the fabric, with 16.5 sc over 10")]
    [InlineData(true, "The edgings' swatch has 18 sc over 10")]
    public void The_gauge_of_the_edgings_is_said(bool measured, string words)
    {
        var project = Begun("blanket", "sc", true, Direction.Up).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, "sc", 5)] });
        if (measured)
            project = project with { Fabric = project.Fabric with { Edging = new Gauge(18, 20, Cm(10)) } };
        Assert.Contains(words, GarmentTrials.Text(GarmentTrials.Check(project)), StringComparison.Ordinal);
    }

    /// <summary>
    /// Rounds under a lace or a corded round widen as any others do; the last one goes over what it finds, in whole repeats.
    /// </summary>
    [Theory]
    [InlineData("picot", 3, "between the first and the last")]
    [InlineData("shell", 6, "between the first and the last")]
    [InlineData("v-stitch", 3, "between the first and the last")]
    [InlineData("corded", 1, "after the first")]
    public void Rounds_under_a_last_one_of_its_own_widen_and_leave_it_whole_repeats(string id, int multiple, string when)
    {
        for (var rounds = 3; rounds <= 6; rounds++)
        {
            var project = Begun("blanket", "sc", true, Direction.Up).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, id, rounds)] });
            var plan = GarmentTrials.Check(project);
            var border = plan.Sizes[0].Edgings.Single();
            Assert.Equal((4, 0), border.Corners);
            // Round by round: rounds 2 to the last but one grow by 8, the last goes over as many as it finds.
            var counts = new List<int> { border.PickUp };
            for (var round = 2; round < rounds; round++)
                counts.Add(counts[^1] + 8);
            counts.Add(counts[^1]);
            Assert.Equal(0, counts[^1] % multiple);
            Assert.Equal(counts[^1], border.LastCount);
            var edging = EdgingLibrary.Find(id);
            var stitches = counts.Select((count, at) => count * (at == rounds - 1 ? edging.LastYarn : edging.RoundYarn)).Sum();
            Assert.Equal(stitches, edging.YarnInSingleCrochet(border.PickUp, rounds, border.PerRound), 9);
            Assert.Contains($"In every round of sc {when} work 3 sc in it", GarmentTrials.Text(plan), StringComparison.Ordinal);
        }
    }

    /// <summary>Of one round nothing is said, nor where no round could grow without breaking a repeat or a fold.</summary>
    [Theory]
    [InlineData("sc", 1)]
    [InlineData("shell", 1)]
    [InlineData("picot", 2)]
    [InlineData("corded", 2)]
    [InlineData("slip-rib", 7)]
    public void Nothing_is_said_where_no_round_follows_or_none_could_grow(string edging, int rounds)
    {
        var project = Begun("blanket", "sc", true, Direction.Up).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, edging, rounds)] });
        Assert.DoesNotContain("Corners: ", GarmentTrials.Text(GarmentTrials.Check(project)), StringComparison.Ordinal);
    }
}
