using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

/// <summary>What a plan is judged as, held against the plan's own figures by another route.</summary>
public sealed class FitVerdictTests
{
    private static Plan Demo(params (string Place, System.Text.Json.Nodes.JsonNode? Value)[] changes)
    {
        var document = FitBench.Demo();
        foreach (var (place, value) in changes)
            document.Set(place, value);
        return FitBench.Plan(document).Plan!;
    }

    [Fact]
    public void It_tells_counts_fit_and_how_many_makers_of_a_hundred_get_a_good_piece()
    {
        var plan = Demo();
        var verdict = FitVerdict.Of(plan);
        var chances = plan.Sizes.Select(s => s.Pieces.Where(p => p.MadeWell is not null).Min(p => p.MadeWell!.Value)).ToArray();
        var (few, many) = ((int)Math.Round(100 * chances.Min()), (int)Math.Round(100 * chances.Max()));
        var (hard, easy) = (plan.Sizes[Array.IndexOf(chances, chances.Min())].Name, plan.Sizes[Array.IndexOf(chances, chances.Max())].Name);
        Assert.Equal($"Of 100 makers with hands as on Swatch, {few} hold every motif as planned in size {hard}, the hardest, and {many} in {easy}.", verdict.Makers);
        Assert.Equal($"{Assert.Single(plan.Chosen.Counts)} stitches serve all 9 sizes, worked sideways.", verdict.Counts);
        var several = FitBench.Plan(FitBench.Uneven()).Options.Single(o => o.Direction == Direction.Up).Counts;
        var up = Demo(("garment.direction", "up"), ("garment.grading", System.Text.Json.Nodes.JsonNode.Parse("""{"unevenWidths":true,"severalLeans":true}""")));
        Assert.Equal($"{several.Length} stitch counts ({string.Join(", ", several)}) serve all 9 sizes, worked up.", FitVerdict.Of(up).Counts);
        var off = (from s in plan.Sizes from t in s.Target select Math.Abs((s.Finished[t.Key] - t.Value).Centimetres)).Max();
        Assert.Contains(FormattableString.Invariant($"{Math.Round(off, 1):0.#} cm"), verdict.Fit, StringComparison.Ordinal);
        Assert.Equal(chances.Min() >= 0.8 ? Prospect.Good : chances.Min() >= 0.5 ? Prospect.Fair : Prospect.Poor, verdict.Prospect);
    }

    /// <summary>Unsteady hands lose the motif: the verdict is red, and says what would help and how much.</summary>
    [Fact]
    public void A_plan_that_most_makers_lose_is_poor_and_says_what_would_help()
    {
        var plan = Demo(("fabric.hands.spread", "6 %"), ("fabric.hands.memory", "50 stitches"));
        var verdict = FitVerdict.Of(plan);
        Assert.Equal(Prospect.Poor, verdict.Prospect);
        var hardest = plan.Sizes.MinBy(s => s.MadeWell)!;
        var piece = hardest.Pieces.Where(p => p.MadeWell is not null).MinBy(p => p.MadeWell)!;
        var offered = CountVariants.Of(plan, piece)!;
        var help = Assert.Single(FitVerdict.Helps(plan, null));
        Assert.Contains($"serves {Math.Round(100 * offered.Served)} instead of {Math.Round(100 * offered.Alone)}", help, StringComparison.Ordinal);
        Assert.Contains($"size {hardest.Name}", help, StringComparison.Ordinal);
        // Another direction is told only where it helps.
        Assert.Single(FitVerdict.Helps(plan, plan));
    }

    /// <summary>Hands that hold the colours do not make good a motif that is cut, or a size that does not fit.</summary>
    [Fact]
    public void A_motif_that_gives_way_or_a_size_far_off_is_no_good_plan()
    {
        var document = FitBench.Demo();
        document.Set("garment", System.Text.Json.Nodes.JsonNode.Parse("""{"shape":"vest","neck":"v","ease":{"revision":"newer","category":"classic"}}"""));
        document.Set("garment.grading", System.Text.Json.Nodes.JsonNode.Parse("""{"unevenWidths":true}"""));
        var cut = FitBench.Plan(document).Plan!;
        var lost = (from s in cut.Sizes from p in s.Pieces where p.Shape is not null select p.Shape!.LostShare).Max();
        var verdict = FitVerdict.Of(cut);
        Assert.Equal(lost >= 0.1 ? $"Where edges are cut the motif gives way, in up to {Math.Round(100 * lost)} % of a piece's stitches." : "", verdict.Motif);
        Assert.True(lost < 0.25 || verdict.Prospect == Prospect.Poor);
        Assert.Empty(FitVerdict.Of(Demo()).Motif);
        var off = Demo(("garment.grading", System.Text.Json.Nodes.JsonNode.Parse("""{"unevenWidths":true,"mostCounts":1}""")), ("garment.direction", "up"));
        var inches = (from s in off.Sizes from t in s.Target select Math.Abs((s.Finished[t.Key] - t.Value).Inches)).Max();
        Assert.True(inches <= 1 || FitVerdict.Of(off).Prospect != Prospect.Good, $"{inches:0.0} inches off is {FitVerdict.Of(off).Prospect}");
        Assert.True(inches > 1, "The design is no longer off by an inch, and tries nothing.");
    }

    [Fact]
    public void A_good_plan_needs_no_help_and_nobody_is_said_to_be_nobody()
    {
        var plan = Demo(("fabric.hands.spread", "0.3 %"), ("fabric.hands.memory", "50 stitches"));
        var verdict = FitVerdict.Of(plan);
        Assert.DoesNotContain(" 100 hold", verdict.Makers, StringComparison.Ordinal);
        Assert.DoesNotContain(", 0 hold", verdict.Makers, StringComparison.Ordinal);
        Assert.Equal(plan.Sizes.Min(s => s.MadeWell) >= FitVerdict.GoodFrom, !FitVerdict.Helps(plan, null).Any());
    }
}
