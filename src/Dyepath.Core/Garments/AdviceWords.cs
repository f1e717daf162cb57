using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;

namespace Dyepath.Core.Garments;

/// <summary>Says what is nearest to a motif that no count makes, and what would help.</summary>
internal static class AdviceWords
{
    public static ImmutableArray<Finding> Of(CountSearch search, MotifKind motif, int from, int to)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.Add(new Finding(FindingLevel.Fault, "garment.motif", FormattableString.Invariant(
            $"No count from {from} to {to} makes {Name(motif)}.")));
        if (!search.Nearest.IsEmpty)
        {
            findings.Add(new Finding(FindingLevel.Note, "garment.motif", "Nearest: " + string.Join("; ", search.Nearest.Select(n =>
                FormattableString.Invariant($"{n.Finding.Stitches} stitches make {Name(n.Finding.Reading.Kind)}"))) + "."));
        }
        findings.AddRange(search.Advice.Select(a => new Finding(FindingLevel.Note, "garment.motif", Say(a))));
        return findings.ToImmutable();
    }

    public static string Name(MotifKind kind) => kind switch
    {
        MotifKind.EvenSlant => "an even slant",
        MotifKind.Steep => "steep diamonds or a steep slant",
        MotifKind.Shallow => "shallow diamonds or a shallow slant",
        MotifKind.Scattered => "nothing that the eye holds on to",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static string Say(CountAdvice advice) => advice switch
    {
        CountAdvice.Turn turn =>
            FormattableString.Invariant($"{turn.Stitches} stitches would make it if every turn took {turn.TurnCost:0.##} stitches' yarn."),
        CountAdvice.Hook hook => FormattableString.Invariant(
            $"{hook.Stitches} stitches would make it on a hook that takes {Math.Abs(hook.YarnChange):0.0 %} {(hook.YarnChange > 0 ? "more" : "less")} yarn a stitch, {hook.SequenceUnits:0.##} stitches to the sequence."),
        CountAdvice.Motif other =>
            FormattableString.Invariant($"{other.Counts} of these counts make {Name(other.Kind)} instead, {other.Example} for one."),
        CountAdvice.Way way =>
            FormattableString.Invariant($"Worked {Name(way.Working)}, {way.Counts} of these counts make it, {way.Example} for one."),
        CountAdvice.Range range =>
            string.Create(CultureInfo.InvariantCulture, $"The nearest count that makes it is {range.Stitches} stitches."),
        _ => throw new ArgumentOutOfRangeException(nameof(advice), advice, "No words for this advice."),
    };

    private static string Name(Working working) => working switch
    {
        Working.Turned => "in turned rows",
        Working.Rounds => "in joined rounds",
        Working.RoundsTurned => "in rounds turned at each join",
        _ => "in a spiral",
    };
}
