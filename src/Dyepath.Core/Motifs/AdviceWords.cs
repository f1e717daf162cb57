using System.Globalization;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Motifs;

/// <summary>Says what would make an infeasible wish feasible.</summary>
public static class AdviceWords
{
    /// <summary>One sentence for the advice, and one for what it asks of the maker besides.</summary>
    public static string Say(CountAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        var words = Plain(advice);
        return advice.Task switch
        {
            CountTask.None => words,
            CountTask.ExtraEdgeStitch => words + " It asks for one stitch more in every other row.",
            CountTask.HalfStitchTurn => words + " It asks for turns that take half a stitch of yarn.",
            _ => words + " It asks for one stitch more in every other row, and for turns that take half a stitch of yarn.",
        };
    }

    private static string Plain(CountAdvice advice) => advice switch
    {
        CountAdvice.Turn turn =>
            FormattableString.Invariant($"{turn.Stitches} stitches would make it if every turn took {turn.TurnCost:0.######} stitches' yarn."),
        CountAdvice.Hook hook => FormattableString.Invariant(
            $"{hook.Stitches} stitches would make it on a hook that takes {Math.Abs(hook.YarnChange):0.0### %} {(hook.YarnChange > 0 ? "more" : "less")} yarn a stitch, {hook.SequenceUnits:0.##} stitches to the sequence."),
        CountAdvice.Motif other =>
            FormattableString.Invariant($"{other.Counts} of these counts {(other.Counts == 1 ? "makes" : "make")} {MotifWords.Of(other.Kind)} instead, {other.Example} for one."),
        CountAdvice.Way way =>
            FormattableString.Invariant($"Worked {Name(way.Working)}, {way.Counts} of these counts {(way.Counts == 1 ? "makes" : "make")} it, {way.Example} for one."),
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
