using System.Reflection;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>The edgings that ship, one by one: what a leaflet would say of each, and what a maker would measure.</summary>
public sealed class EdgingLibraryTests
{
    public static TheoryData<string> Theories =>
        [.. typeof(EdgingLibraryTests).GetMethods().Where(m => Rows(m).Any() && m.GetParameters()[0].Name == "id").Select(m => m.Name)];

    [Theory]
    [MemberData(nameof(Theories))]
    public void Every_edging_has_its_row(string theory)
    {
        var rows = Rows(typeof(EdgingLibraryTests).GetMethod(theory)!).Select(row => (string)row.Data[0]!);
        Assert.Empty(EdgingLibrary.All.Select(e => e.Id).Except(rows));
    }

    /// <summary>Repeats: none in a band, 3 single crochets under a picot or a V, 6 from shell to shell, 2 for each slip stitch that holds a rib.</summary>
    [Theory]
    [InlineData("sc", "plain sc band", 1, 3)]
    [InlineData("sc-rows", "plain sc band in rows", 1, 3)]
    [InlineData("corded", "corded edge (reverse sc)", 1, 2)]
    [InlineData("picot", "picot edge", 3, 2)]
    [InlineData("shell", "shell edge", 6, 2)]
    [InlineData("v-stitch", "V-stitch edge", 3, 2)]
    [InlineData("rib", "sideways rib (sc in the back loop)", 2, 6)]
    [InlineData("clusters", "crossed clusters of hdc", 2, 3)]
    [InlineData("slip-rib", "sideways slip-stitch rib (hdc sl st in the back loop)", 1, 7)]
    [InlineData("elastic-casing", "folded casing for an elastic", 1, 6)]
    [InlineData("drawstring", "drawstring casing", 2, 3)]
    [InlineData("button-band", "button band", 1, 5)]
    [InlineData("fringe", "fringe", 2, 1)]
    public void Its_name_its_repeat_and_its_usual_rounds(string id, string name, int multiple, int rounds)
    {
        var edging = Of(id);
        Assert.Equal(name, Say(edging.Name));
        Assert.Equal((multiple, rounds), (edging.Multiple, edging.Rounds));
        Assert.Equal(0, edging.Plus);
    }

    [Theory]
    [InlineData("sc", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.", "Every further round: Ch 1, sc in each sc around; sl st in the first sc.")]
    [InlineData("sc-rows", "Row 1: Ch 1, sc in every place of the pick-up, turn.", "Every further row: Ch 1, sc in each sc across, turn.")]
    [InlineData("corded", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Every round between: Ch 1, sc in each sc around; sl st in the first sc.",
        "Last round: Without turning, ch 1, reverse sc in each sc around, going back the way you came; sl st in the first of them.")]
    [InlineData("picot", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Every round between: Ch 1, sc in each sc around; sl st in the first sc.",
        "Last round: Ch 1, * sc in each of the next 3 sc, ch 3, sl st in the sc just made; repeat from * around; sl st in the first sc.")]
    [InlineData("shell", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Every round between: Ch 1, sc in each sc around; sl st in the first sc.",
        "Last round: Ch 1, * sc in the next sc, skip 2 sc, 5 dc in the next sc, skip 2 sc; repeat from * around; sl st in the first sc.")]
    [InlineData("v-stitch", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Every round between: Ch 1, sc in each sc around; sl st in the first sc.",
        "Last round: Ch 2 (not counted), * skip 1 sc, V-stitch in the next sc, skip 1 sc; repeat from * around; sl st in the first dc.")]
    [InlineData("rib", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc. Ch 1 for every further round, and 1 more.",
        "Rib row 1: Sc in the 2nd ch and in each ch to the edge, sl st in each of the next 2 sc of round 1, turn.",
        "Rib row 2: Skip the 2 sl st, sc in the back loop of each sc to the end, ch 1, turn.",
        "Rib row 3: Sc in the back loop of each sc to the edge, sl st in each of the next 2 sc of round 1, turn. Repeat rib rows 2 and 3 around; sew the last row to the first.")]
    [InlineData("slip-rib", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc. Ch 1 for every further round, and 1 more.",
        "Rib row 1: Hdc sl st in the 2nd ch and in each ch to the edge, sl st in the next sc of round 1, turn.",
        "Rib row 2: Skip the sl st, hdc sl st in the back loop of each hdc sl st to the end, ch 1, turn.",
        "Rib row 3: Hdc sl st in the back loop of each hdc sl st to the edge, sl st in the next sc of round 1, turn. Repeat rib rows 2 and 3 around; sew the last row to the first.")]
    [InlineData("clusters", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Every further round: Ch 2 (not counted), * cluster over the next 2 sts, ch 1; repeat from * around; sl st in the first cluster. Each cluster and each ch is a st of the next round.")]
    [InlineData("elastic-casing", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.", "Every further round: Ch 1, sc in each sc around; sl st in the first sc.",
        "Casing: Fold the band to the inside along the round named, then sl st in each sc of the last round and in the foot of the sc of round 1 behind it together, all around but for the last 3 cm.",
        "Elastic: Draw it through the casing, overlap its ends by 2.5 cm, sew them together, and close the casing.")]
    [InlineData("drawstring", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Round 2: Ch 2 (not counted), * dc in the next sc, ch 1, skip 1 sc; repeat from * around; sl st in the first dc.",
        "Every further round: Ch 1, sc in each st around; sl st in the first sc.",
        "Cord: Chain a cord as long as the edge and 40 cm more, sl st in each ch back to its beginning, fasten off, and thread it through the eyelets of round 2.")]
    [InlineData("button-band", "Row 1: Ch 1, sc in every place of the pick-up, turn.", "Every further row: Ch 1, sc in each st and in each ch of a buttonhole, turn.",
        "Buttons: Sew a button opposite the middle of each buttonhole, fast enough that no pull takes it off.")]
    [InlineData("fringe", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.", "Every further round: Ch 1, sc in each sc around; sl st in the first sc.",
        "Fringe: Cut 3 strands of 28 cm for every 2 sc. * skip 1 sc, knot a bunch of 3 strands into the next sc; repeat from * around. Trim to 12 cm.")]
    public void It_is_worked_so(string id, params string[] steps) =>
        Assert.Equal(steps, Of(id).Steps.Concat(Of(id).Finishing).Select(s => Capital($"{Say(s.Label)}: ") + Capital(Say(s.Text))));

    /// <summary>
    /// Over 60 stitches picked up, in single crochets of yarn: a picot is three chains and a slip stitch, a shell's repeat five double
    /// crochets and a single one, a V's two double crochets and a chain; reverse single crochet takes 1.15 of a plain one, a rib's row 1.1 (from memory, a strip each).
    /// </summary>
    [Theory]
    [InlineData("sc", 3, 180)]
    [InlineData("sc-rows", 3, 180)]
    [InlineData("corded", 2, 60 + 60 * 1.15)]
    [InlineData("picot", 2, 60 + 60 + 20 * (3 * 25.5 / 53 + 0.5))]
    [InlineData("shell", 2, 60 + 10 * (5 * 102.0 / 53 + 1))]
    [InlineData("v-stitch", 2, 60 + 20 * (2 * 102.0 / 53 + 25.5 / 53))]
    [InlineData("rib", 6, 60 * (5 * 1.1 + 1))]
    [InlineData("clusters", 3, 60 * (1 + 2 * (78.5 / 53 + 25.5 / 53 / 2)))]
    [InlineData("slip-rib", 7, 60 * (6 * 1.5 + 1))]
    [InlineData("elastic-casing", 6, 60 * 6.5)]
    [InlineData("drawstring", 3, 60 * 2 + 30 * (102.0 / 53 + 25.5 / 53) + 72 * (25.5 / 53 + 0.5))]
    [InlineData("button-band", 5, 300)]
    [InlineData("fringe", 1, 60)]
    public void It_takes_the_yarn_of_its_stitches(string id, int rounds, double singleCrochets) =>
        Assert.Equal(singleCrochets, Of(id).YarnInSingleCrochet(60, rounds), 1e-9);

    /// <summary>
    /// With rows of 1 cm: a corded last round lies flatter than single crochet, a picot stands higher, a shell or a V is as tall as its double
    /// crochet (1.65 stitch widths against 0.9); a rib's rows run outwards, so that each adds a stitch's width.
    /// </summary>
    [Theory]
    [InlineData("sc", 3, 3)]
    [InlineData("sc-rows", 3, 3)]
    [InlineData("corded", 2, 1.7)]
    [InlineData("picot", 2, 2.4)]
    [InlineData("shell", 2, 1 + 1.65 / 0.9)]
    [InlineData("v-stitch", 2, 1 + 1.65 / 0.9)]
    [InlineData("rib", 6, 5 / 0.9 + 1)]
    [InlineData("clusters", 3, 1 + 2 * 1.3 / 0.9)]
    [InlineData("slip-rib", 7, 6 / 0.9 + 1)]
    [InlineData("elastic-casing", 6, 3)]
    [InlineData("drawstring", 3, 2 + 1.65 / 0.9)]
    [InlineData("button-band", 5, 5)]
    [InlineData("fringe", 1, 1)]
    public void It_is_as_deep_as_its_rounds(string id, int rounds, double centimetres) =>
        Assert.Equal(centimetres, Of(id).Depth(rounds, Length.FromCentimetres(1)).Centimetres, 1e-6);

    /// <summary>Ribs and casings draw the edge in; how far at rest and stretched, of an edge of 100 cm (common practice, no source).</summary>
    [Theory]
    [InlineData("sc", 100, 105)]
    [InlineData("sc-rows", 100, 105)]
    [InlineData("corded", 100, 100)]
    [InlineData("picot", 100, 105)]
    [InlineData("shell", 100, 110)]
    [InlineData("v-stitch", 100, 110)]
    [InlineData("clusters", 100, 110)]
    [InlineData("rib", 75, 110)]
    [InlineData("slip-rib", 75, 125)]
    [InlineData("elastic-casing", 85, 100)]
    [InlineData("drawstring", 80, 100)]
    [InlineData("button-band", 100, 100)]
    [InlineData("fringe", 100, 105)]
    public void It_is_so_wide_at_rest_and_stretched(string id, double relaxed, double stretched)
    {
        Assert.Equal(relaxed, Of(id).RelaxedWidth(Length.FromCentimetres(100)).Centimetres, 1e-9);
        Assert.Equal(stretched, Of(id).StretchedWidth(Length.FromCentimetres(100)).Centimetres, 1e-9);
    }

    [Fact]
    public void Ribs_alone_pick_up_fewer()
    {
        Assert.Equal((0.75, 0.8), (Of("rib").Draw, Of("slip-rib").Draw));
        Assert.All(EdgingLibrary.All.Where(e => !e.Across), e => Assert.Equal(1, e.Draw));
    }

    /// <summary>
    /// At the neck of children's garments neither loops nor cords (16 CFR 1120 and EN 14682:2014 for cords; loops common practice), and no loose
    /// strands on what children wear (common practice); cords elsewhere may be.
    /// </summary>
    [Theory]
    [InlineData("picot", EdgingPlace.Neck, true, "has loops, which have no place at the neck of children's garments")]
    [InlineData("shell", EdgingPlace.Neck, true, "has loops, which have no place at the neck of children's garments")]
    [InlineData("v-stitch", EdgingPlace.Neck, true, "has loops, which have no place at the neck of children's garments")]
    [InlineData("drawstring", EdgingPlace.Neck, true, "has a cord, which has no place at the neck of children's garments")]
    [InlineData("fringe", EdgingPlace.Border, true, "has loose strands, which have no place on what children wear")]
    [InlineData("fringe", EdgingPlace.Hem, false, "is not made for this edge")]
    [InlineData("button-band", EdgingPlace.Hem, false, "is not made for this edge")]
    [InlineData("elastic-casing", EdgingPlace.Border, false, "is not made for this edge")]
    [InlineData("sc", EdgingPlace.Fronts, false, "is not made for this edge")]
    [InlineData("sc-rows", EdgingPlace.Cuffs, false, "is not made for this edge")]
    [InlineData("sc-rows", EdgingPlace.Neck, true, null)]
    [InlineData("picot", EdgingPlace.Hem, true, null)]
    [InlineData("v-stitch", EdgingPlace.Hem, true, null)]
    [InlineData("picot", EdgingPlace.Neck, false, null)]
    [InlineData("drawstring", EdgingPlace.Hem, true, null)]
    [InlineData("drawstring", EdgingPlace.Neck, false, null)]
    [InlineData("fringe", EdgingPlace.Border, false, null)]
    [InlineData("button-band", EdgingPlace.Fronts, true, null)]
    [InlineData("corded", EdgingPlace.Neck, true, null)]
    [InlineData("rib", EdgingPlace.Neck, true, null)]
    [InlineData("clusters", EdgingPlace.Neck, true, null)]
    [InlineData("slip-rib", EdgingPlace.Cuffs, true, null)]
    public void It_goes_where_it_may(string id, EdgingPlace place, bool children, string? objection)
    {
        Assert.Equal(objection, Of(id).Objection(place, children));
        Assert.Equal(objection is null, Of(id).AllowedAt(place, children));
    }

    /// <summary>Nine tenths of the girth and 2.5 cm to overlap, or another share that is asked for.</summary>
    [Fact]
    public void An_elastic_is_cut_to_a_share_of_the_body()
    {
        var casing = Of("elastic-casing");
        Assert.Equal(92.5, casing.ElasticLength(Length.FromCentimetres(100)).Centimetres, 1e-9);
        Assert.Equal(82.5, casing.ElasticLength(Length.FromCentimetres(100), 0.8).Centimetres, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => casing.ElasticLength(Length.FromCentimetres(100), 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => casing.ElasticLength(Length.FromCentimetres(100), double.NaN));
        Assert.Throws<InvalidOperationException>(() => Of("sc").ElasticLength(Length.FromCentimetres(100)));
    }

    /// <summary>Thirty bunches of three strands of 28 cm over 60 stitches, besides their single crochets of 4 cm each.</summary>
    [Fact]
    public void A_fringe_takes_the_yarn_of_its_strands() =>
        Assert.Equal(60 * 4 + 30 * 3 * 28, Of("fringe").Yarn(60, 1, Length.FromCentimetres(4)).Centimetres, 1e-6);

    /// <summary>Every special word of the steps is explained, and the steps say what is explained.</summary>
    [Theory]
    [InlineData("corded", "Reverse sc: without turning, insert the hook in the next st to the right, draw up a loop, yarn over and draw through both loops.")]
    [InlineData("picot", "Picot: ch 3, sl st in the sc just made.")]
    [InlineData("v-stitch", "V-stitch: dc, ch 1 and dc, all in the same st.")]
    [InlineData("rib", "Back loop: the loop of the st that lies farther from you.")]
    [InlineData("slip-rib", "Back loop: the loop of the st that lies farther from you.", "hdc sl st: yarn over, insert the hook, yarn over and draw through the st and all loops on the hook.")]
    [InlineData("clusters",
        "Cluster: yarn over, skip a st, insert the hook in the following st and draw up a loop, yarn over, insert the hook in the skipped st, in front of what is there, and draw up a loop, yarn over and draw through all 5 loops.")]
    [InlineData("fringe", "To knot a bunch: fold the strands in half, draw the fold through the st from back to front with the hook, draw the ends through the fold, and pull tight.")]
    [InlineData("sc")]
    [InlineData("sc-rows")]
    [InlineData("shell")]
    [InlineData("elastic-casing")]
    [InlineData("drawstring")]
    [InlineData("button-band")]
    public void Its_special_stitches_are_explained(string id, params string[] special) => Assert.Equal(special, Of(id).Special.Select(Say));

    /// <summary>A round that may occur and of which nothing is said could not be worked; only the first one is worked into the pick-up.</summary>
    [Fact]
    public void Every_round_that_may_occur_has_words()
    {
        foreach (var edging in EdgingLibrary.All.Where(e => !e.Across))
        {
            for (var rounds = edging.Allowed.Smallest; rounds <= edging.Allowed.Largest; rounds++)
            {
                var steps = Enumerable.Range(0, rounds).Select(round => edging.StepOf(round, rounds)).ToArray();
                Assert.Contains("place of the pick-up", Say(steps[0].Text), StringComparison.Ordinal);
                Assert.All(steps.Skip(1), step => Assert.DoesNotContain("place of the pick-up", Say(step.Text), StringComparison.Ordinal));
                Assert.Equal(edging.Steps.Where(steps.Contains), edging.StepsOver([rounds]));
            }
        }
    }

    /// <summary>At corners only rounds and rows of single crochet grow, and a last one of another stitch goes into every stitch as it is.</summary>
    [Fact]
    public void A_last_round_of_another_stitch_keeps_the_count()
    {
        foreach (var edging in EdgingLibrary.All.Where(e => e.Multiple == 1 && !e.Folded && !e.Across))
        {
            var last = new StepFollower(Say(edging.StepOf(edging.Rounds - 1, edging.Rounds).Text)).Made(1).Keys;
            Assert.Equal((edging.Id, !last.SequenceEqual([StitchSymbol.SingleCrochet])), (edging.Id, edging.LastKeepsCount));
        }
    }

    /// <summary>A term is a whole word, or stands among the abbreviations that a pattern explains.</summary>
    [Fact]
    public void Every_abbreviation_can_be_explained()
    {
        string[] known = ["skip", "skipped", "yarn over", .. AbbreviationsSection.Terms.Select(t => t.Short)];
        foreach (var edging in EdgingLibrary.All)
        {
            Phrase[] said = [edging.Name, .. edging.Steps.Concat(edging.Finishing).Select(s => s.Text), .. edging.Special];
            Assert.Empty(said.SelectMany(AbbreviationsSection.Inlines).OfType<Term>().Select(t => t.Us.ToLowerInvariant()).Except(known));
        }
    }

    [Fact]
    public void Nobody_is_asked_for_more_or_fewer_rounds_than_an_edging_has() =>
        Assert.All(EdgingLibrary.All, e => Assert.True(e.Fewest <= e.Rounds && e.Rounds <= e.Allowed.Largest, e.Id));

    /// <summary>It is made of the one round that it has, and nothing of it tells of another.</summary>
    [Fact]
    public void An_edging_of_exactly_one_round_says_that_alone()
    {
        var band = Of("sc");
        var one = new Edging { Id = "one", Name = band.Name, Rounds = 1, Most = 1, Steps = [band.Steps[0]], Chart = band.Chart };
        Assert.Equal((1, 1), (one.Fewest, one.Allowed.Largest));
        Assert.Equal((1, 1, 1), new EdgingChoice(EdgingPlace.Hem, one.Id, null).RoundsOf(one));
        Assert.Equal(band.Steps[0], one.StepOf(0, 1));
        Assert.Throws<InvalidOperationException>(() => one.StepOf(1, 2));
    }

    private static IEnumerable<InlineDataAttribute> Rows(MethodInfo theory) => theory.GetCustomAttributes<InlineDataAttribute>();

    private static Edging Of(string id) => EdgingLibrary.All.Single(e => e.Id == id);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Say(Phrase phrase) => EdgingSayings.Say(phrase);
}
