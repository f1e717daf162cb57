using System.Globalization;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Motifs;

/// <summary>Says what would make an infeasible wish feasible.</summary>
public static class AdviceWords
{
    public static string Say(CountAdvice advice) => advice switch
    {
        CountAdvice.Turn turn =>
            FormattableString.Invariant($"{turn.Stitches} stitches would make it if every turn took {turn.TurnCost:0.##} stitches' yarn."),
        CountAdvice.Hook hook => FormattableString.Invariant(
            $"{hook.Stitches} stitches would make it on a hook that takes {Math.Abs(hook.YarnChange):0.0 %} {(hook.YarnChange > 0 ? "more" : "less")} yarn a stitch, {hook.SequenceUnits:0.##} stitches to the sequence."),
        CountAdvice.Motif other =>
            FormattableString.Invariant($"{other.Counts} of these counts make {MotifWords.Of(other.Kind)} instead, {other.Example} for one."),
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
