using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What the grading program finds, in words and as changes of the document.</summary>
internal static class GradingWords
{
    /// <summary>Which sizes and rules conflict.</summary>
    public static Finding Say(GradingConflict conflict, GradingProblem problem, IReadOnlyList<string> names)
    {
        var sizes = string.Join(", ", conflict.Sizes.Select(s => names[s]));
        List<string> rules = [];
        if (conflict.Pins.Length > 0)
            rules.Add($"the counts fixed for {string.Join(", ", conflict.Pins.Select(s => names[s]))} are kept");
        if (conflict.Rise)
            rules.Add(problem.Rules.LeastRise > Length.Zero ? "each size comes out larger than the one before it" : "no size comes out smaller than the one before it");
        if (conflict.Floor)
            rules.Add("none comes out under the largest body of its range");
        if (conflict.OneLean)
            rules.Add("all share one lean");
        if (conflict.MostCounts)
            rules.Add(problem.Rules.MostCounts == 1 ? "only 1 count is used" : $"at most {problem.Rules.MostCounts} counts are used");
        var which = conflict.Sizes.Length == 1 ? $"Size {sizes} has no count" : $"Sizes {sizes} have no counts";
        var text = rules.Count switch
        {
            0 => $"{which} that makes the motif: choose another motif or hook.",
            1 => $"{which} with which {rules[0]}.",
            _ => $"{which} with which {string.Join(", ", rules.SkipLast(1))} and {rules[^1]}.",
        };
        return new Finding(FindingLevel.Fault, conflict.Pins.Length > 0 ? "sizes" : "garment.grading", text);
    }

    /// <summary>
    /// What to do, without a full stop, such as <c>allow 3 counts (furthest off of width then: 0.8 cm)</c>: of other measures nothing is
    /// known, as no garment was planned with it.
    /// </summary>
    /// <param name="measure">That the counts decide.</param>
    public static string Say(GradingRemedy remedy, GarmentMeasure measure, Units units) => $"{Words(remedy)} ({Off(remedy, measure, units)})";

    /// <summary>Without a place where the document has none for it, as another hook asks for another swatch.</summary>
    public static Deed Deed(GradingRemedy remedy, FitRuler ruler) => Field(remedy, ruler.OpenEdging()) is var (place, value)
        ? new Deed(Say(remedy, ruler.Measure, ruler.Units), place, value) : Planning.Deed.Of(Say(remedy, ruler.Measure, ruler.Units));

    private static string Off(GradingRemedy remedy, GarmentMeasure measure, Units units) =>
        $"furthest off of {GarmentMeasures.Words(measure)} then: {Wording.Fine(remedy.WorstError, units)}";

    private static (string Place, string Value)? Field(GradingRemedy remedy, int? edging) => remedy.Kind switch
    {
        GradingRemedyKind.MoreRounds when edging is { } at => ($"garment.edgings[{at}].mostRounds", FormattableString.Invariant($"{remedy.Amount}")),
        GradingRemedyKind.SideBands => ("garment.grading.sideBands", "true"),
        GradingRemedyKind.UnequalPanels => ("garment.grading.unequalPanels", "true"),
        GradingRemedyKind.MoreCounts => ("garment.grading.mostCounts", FormattableString.Invariant($"{remedy.Amount}")),
        GradingRemedyKind.SeveralLeans => ("garment.grading.severalLeans", "true"),
        _ => null,
    };

    private static string Words(GradingRemedy remedy) => remedy.Kind switch
    {
        GradingRemedyKind.MoreRounds => $"let the edging have up to {remedy.Amount} rounds, each size its own",
        GradingRemedyKind.SideBands => $"allow side bands of up to {remedy.Amount} rows",
        GradingRemedyKind.UnequalPanels => $"allow front and back to differ by up to {remedy.Amount} stitches",
        GradingRemedyKind.MoreCounts => $"allow {remedy.Amount} {(remedy.Amount == 1 ? "count" : "counts")}",
        GradingRemedyKind.SeveralLeans => "allow several leans in one pattern",
        GradingRemedyKind.OtherHook => FormattableString.Invariant($"swatch with a {remedy.Amount / 100.0:0.##} mm hook"),
        _ => throw new ArgumentOutOfRangeException(nameof(remedy), remedy.Kind, "No such remedy."),
    };
}
