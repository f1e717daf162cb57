using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What each garment is called, which way its stitches run and what is said of its size, written from the trade's words.</summary>
public sealed class GarmentWordsTests
{
    /// <summary>Across and then upwards (a skirt downwards, what lies flat along its length), and the measures as a sentence has them.</summary>
    [Theory]
    [InlineData("pullover", "A boxy pullover", "round the body", "up the body", "{0} round, {0} long")]
    [InlineData("tunic", "A boxy tunic", "round the body", "up the body", "{0} round, {0} long")]
    [InlineData("cardigan", "A boxy cardigan", "round the body", "up the body", "{0} round, {0} long, with rectangular sleeves {0} long")]
    [InlineData("vest", "A vest", "round the body", "up the body", "{0} round, {0} long, with armholes {0} deep")]
    [InlineData("off-shoulder-top", "An off-shoulder top", "round the body", "up the body", "{0} round, {0} long, with sleeves {0} long")]
    [InlineData("off-shoulder-dress", "An off-shoulder dress", "round the body", "up the body", "{0} round, {0} long, with sleeves {0} long")]
    [InlineData("tabard", "A tabard", "across the body", "up the body", "front and back {0} wide, {0} long")]
    [InlineData("pet-tabard", "A pet's tabard", "round the body", "up the body", "{0} round, {0} long, with leg openings {0} deep")]
    [InlineData("poncho", "A poncho", "across the poncho", "up the poncho", "{0} from wrist to wrist, {0} long")]
    [InlineData("skirt", "A straight skirt", "round the body", "down the skirt", "{0} round, {0} long")]
    [InlineData("hat", "A hat", "round the head", "up the hat", "{0} round, {0} high")]
    [InlineData("headband", "A headband", "round the head", "up the headband", "{0} round, {0} high")]
    [InlineData("cowl", "A cowl", "round the cowl", "up the cowl", "{0} round, {0} high")]
    [InlineData("shawl", "A shawl", "from side to side of the shawl", "up the shawl", "{0} from tip to tip, {0} deep")]
    [InlineData("wrap", "A wrap", "across the width", "along the length", "{0} wide, {0} long")]
    [InlineData("blanket", "A blanket", "across the width", "along the length", "{0} wide, {0} long")]
    [InlineData("bias-wrap", "A wrap on the bias", "across the width", "along the length", "{0} wide, {0} long")]
    [InlineData("bag", "A bag", "across the bag", "up the bag", "{0} wide, {0} high")]
    [InlineData("cushion", "A cushion cover", "across the cushion", "up the cushion", "{0} wide, {0} high")]
    public void A_garment_has_its_words(string garment, string called, string across, string down, string measures)
    {
        var words = GarmentWords.Of(StarterDocument.Of(Repertoire.All.First(k => k.Name == garment)).Garment.Shape);
        Assert.Equal(
            (called, across, down, measures),
            (words.Called, $"{words.Across.Way} {words.Across.What}", $"{words.Down.Way} {words.Down.What}", string.Join(", ", words.Measures.Select(m => m.Words))));
    }

    [Fact]
    public void Every_garment_of_the_repertoire_is_asked_for_above() => Assert.Equal(
        Repertoire.All.Select(k => k.Name).Order(),
        typeof(GarmentWordsTests).GetMethod(nameof(A_garment_has_its_words))!.GetCustomAttributes(typeof(InlineDataAttribute), false)
            .Cast<InlineDataAttribute>().Select(d => (string)d.Data[0]!).Order());

    /// <summary>Whatever has no words yet, by garment, and the file that they belong into.</summary>
    [Fact]
    public void Nothing_of_a_garment_is_without_words()
    {
        var missing = new List<string>();
        foreach (var kind in Repertoire.All)
        {
            if (Record.Exception(() => GarmentWords.Of(kind.First.Shape)) is not null)
                missing.Add($"{kind.Name}: Instructions/GarmentWords.cs");
            missing.AddRange(kind.First.Shape.Rules.Where(rule => Record.Exception(() => RuleWords.Of(rule, kind.First.Shape)) is not null)
                .Select(rule => $"{kind.Name}: {rule} in Planning/RuleWords.cs"));
        }
        Assert.Empty(missing);
    }

    [Theory]
    [InlineData(PlanRule.HemWidth, "skirt", "The hem is the flare wider than the hip. Worked sideways, pairs of rows stop short of the waist")]
    [InlineData(PlanRule.Circumference, "hat", "A hat is a little smaller than the head, 5 % unless the document says otherwise")]
    [InlineData(PlanRule.Circumference, "headband", "A headband is smaller than the head, 8 % unless the document says otherwise")]
    [InlineData(PlanRule.Height, "hat", "Height is from the edge of the brim to the drawn crown.")]
    [InlineData(PlanRule.Height, "headband", "Height is from edge to edge as the document gives it, edgings included.")]
    public void A_rule_says_what_it_goes_by(PlanRule rule, string garment, string begin) =>
        Assert.StartsWith(begin, RuleWords.Of(rule, StarterDocument.Of(Repertoire.All.First(k => k.Name == garment))), StringComparison.Ordinal);

    [Fact]
    public void A_casing_is_folded_along_the_top_of_its_middle_round()
    {
        var text = GarmentTrials.Text(Begun("skirt", "sc", true, Direction.Sideways).Planned());
        Assert.Matches(@"Work: \d+ .*rounds, about .* deep once folded; the fold runs along the top of round \d+", text);
    }

    [Fact]
    public void Stitches_worked_into_a_chain_follow_without_a_gap() => Assert.Contains(
        "The stitches worked into it follow the last stitch of the row without a gap, in the colours as they come.",
        GarmentTrials.Text(Begun("vest", "sc", true, Direction.Sideways).Planned()), StringComparison.Ordinal);

    /// <summary>A band along a stair of single steps lies on its slope; down, across and up again it turns corners (Pythagoras).</summary>
    [Fact]
    public void A_band_goes_straight_along_small_steps_and_round_corners()
    {
        EdgeRun Run(PieceSide side, int count, bool backwards) => new(PieceId.Front, side, 0, count, !side.IsUpright(), backwards);
        ImmutableArray<EdgeRun> runs =
        [
            Run(PieceSide.Left, 20, true), Run(PieceSide.Top, 20, true),
            .. Enumerable.Range(0, 20).SelectMany(_ => new[] { Run(PieceSide.Right, 1, false), Run(PieceSide.Top, 1, true) }),
        ];
        var parts = TautEdge.Of(runs, Length.FromCentimetres(0.6), Length.FromCentimetres(0.8));
        Assert.Equal([1, 1, 40], parts.Select(p => p.Runs.Length));
        Assert.Equal([16, 12, 20], parts.Select(p => Math.Round(p.Length.Centimetres, 9)));
    }
}
