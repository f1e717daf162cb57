using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Fit;

/// <summary>How well a plan serves its makers.</summary>
public enum Prospect
{
    /// <summary>Most makers get a good piece.</summary>
    Good,

    /// <summary>Many do, and many do not.</summary>
    Fair,

    /// <summary>Most makers lose the motif.</summary>
    Poor,
}

/// <summary>A plan judged in a few sentences: its counts, its fit, and how many makers get a good piece.</summary>
/// <param name="Counts">Such as <c>84 stitches serve all nine sizes, worked sideways.</c></param>
/// <param name="Fit">Such as <c>Size S is furthest from what it asks for: width, 0.6 cm too wide.</c></param>
/// <param name="Motif">That the motif gives way where edges are cut, and how far; empty where it goes on.</param>
/// <param name="Makers">Such as <c>Of 100 makers …, 41 hold every motif in size 5X, the hardest, and …</c>; empty for a plain garment.</param>
public sealed record FitVerdict(string Counts, string Fit, string Motif, string Makers, Prospect Prospect)
{
    /// <summary>Shares of makers from which a plan is good, and fair: four of five, and half.</summary>
    public const double GoodFrom = 0.8, FairFrom = 0.5;

    /// <summary>Shares of a piece's stitches that are lost to the motif, from which a plan is only fair, and poor.</summary>
    public const double LostFair = 0.1, LostPoor = 0.25;

    public static FitVerdict Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var counts = plan.Chosen.Counts;
        var sizes = plan.Sizes.Length switch { 1 => "the one size", 2 => "both sizes", var n => $"all {n} sizes" };
        var serve = counts.Length == 1 ? $"{counts[0]} stitches serve {sizes}" : $"{counts.Length} stitch counts ({string.Join(", ", counts)}) serve {sizes}";
        var furthest = Furthest(plan);
        var chances = plan.Sizes.Where(s => s.MadeWell is not null).ToArray();
        var (makers, prospect) = ("", Prospect.Good);
        if (chances.Length > 0)
        {
            var (hardest, easiest) = (chances.MinBy(s => s.MadeWell)!, chances.MaxBy(s => s.MadeWell)!);
            var (few, many) = (Hundred(hardest), Hundred(easiest));
            makers = few == many ? $"Of 100 makers with hands as on Swatch, {few} hold every motif as planned{(chances.Length > 1 ? ", whatever the size" : "")}."
                : $"Of 100 makers with hands as on Swatch, {few} hold every motif as planned in size {hardest.Name}, the hardest, and {many} in {easiest.Name}.";
            prospect = hardest.MadeWell >= GoodFrom ? Prospect.Good : hardest.MadeWell >= FairFrom ? Prospect.Fair : Prospect.Poor;
        }
        var lost = plan.Sizes.SelectMany(s => s.Pieces).Max(p => p.Shape?.LostShare ?? 0);
        var motif = lost < LostFair ? "" : $"Where edges are cut the motif gives way, in up to {Math.Round(100 * lost)} % of a piece's stitches.";
        var worst = new[]
        {
            prospect, lost >= LostPoor ? Prospect.Poor : lost >= LostFair ? Prospect.Fair : Prospect.Good,
            furthest is null || furthest.Off <= FitError.Poor ? Prospect.Good
                : furthest.Off <= 2 * FitError.Poor ? Prospect.Fair : Prospect.Poor,
        }.Max();
        return new FitVerdict(
            $"{serve}, worked {DirectionWords.Of(plan.Direction)}.",
            furthest is null || FitWords.IsAsAsked(furthest.Error) ? "Every size comes out as it asks for." : $"Furthest from what it asks for: {furthest.Say(plan.Project.Edition.Units)}.",
            motif, makers, worst);
    }

    /// <summary>The measure of any size that is furthest from its target; missing where none has one.</summary>
    public static FitError? Furthest(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Sizes.SelectMany(s => s.Target, (s, t) => new FitError(s.Name, t.Key, s.Finished[t.Key] - t.Value)).MaxBy(e => e.Off);
    }

    /// <summary>
    /// What would let more makers hold the colours, each with what it brings; empty where most do, or nothing is known to help.
    /// </summary>
    /// <param name="other">The same design in the other direction; missing where it cannot be planned so, or is not worked out.</param>
    public static IEnumerable<string> Helps(Plan plan, Plan? other)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Sizes.Where(s => s.MadeWell is not null).MinBy(s => s.MadeWell) is not { } hardest || hardest.MadeWell >= GoodFrom)
            yield break;
        var least = other?.Sizes.Min(s => s.MadeWell);
        if (other is not null && least >= hardest.MadeWell + Noticeable)
        {
            yield return $"Work it {DirectionWords.Of(other.Direction)}: in the hardest size {Math.Round(100 * least.Value)} of 100 hold every motif; "
                + (Furthest(other) is { } off ? $"furthest off is then {off.Say(plan.Project.Edition.Units)}." : "every size comes out as it asks for.");
        }
        var piece = hardest.Pieces.Where(p => p.MadeWell is not null).MinBy(p => p.MadeWell)!;
        if (CountVariants.Of(plan, piece) is { Variants.Length: > 1 } offered)
        {
            var counts = Wording.List(offered.Variants.Select(v => $"{FabricWords.Variant(v, FabricWords.Count(piece), plan.Project.Fabric.Stitch)}"));
            yield return $"Offer the {piece.Name} of size {hardest.Name} in {counts} stitches, each maker taking the one that suits her own count of the yarn: "
                + $"of 100 makers of every kind, steady and unsteady, it serves {Math.Round(100 * offered.Served)} instead of {Math.Round(100 * offered.Alone)}.";
        }
    }

    /// <summary>A gain in the share of makers that is worth telling: one of twenty.</summary>
    private const double Noticeable = 0.05;

    /// <summary>Of a hundred makers; a whole number, so that nearly nobody and nearly all are not said to be nobody and all.</summary>
    private static int Hundred(SizePlan size) => (int)Math.Clamp(Math.Round(100 * size.MadeWell!.Value), 1, 99);
}
