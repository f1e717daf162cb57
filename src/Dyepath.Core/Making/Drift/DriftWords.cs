using System.Collections.Immutable;

namespace Dyepath.Core.Making.Drift;

/// <summary>Advice as it is said to the maker: colours and stitches, never percentages.</summary>
public static class DriftWords
{
    private static readonly ImmutableArray<string> Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <param name="advice">What to say.</param>
    /// <param name="reading">The colour last read, by name.</param>
    /// <param name="colours">Names, by the colours' indices.</param>
    /// <param name="hands">See <see cref="DriftPlace.Hands"/>.</param>
    public static string Say(DriftAdvice advice, string reading, ImmutableArray<string> colours, double hands)
    {
        ArgumentNullException.ThrowIfNull(advice);
        string seen = $"this {reading} comes {Drift(advice.Phase)}";
        return advice.Kind switch
        {
            DriftAdviceKind.CarryOn => $"This {reading} is on the count; carry on{Holding(advice.Hold, hands)}.",
            DriftAdviceKind.WorkTighter or DriftAdviceKind.WorkLooser =>
                $"{Capital(seen)}; work the next {advice.Stitches} stitches {Level(advice.Correction - advice.Hold, hands)}" +
                (advice.UntilColour is { } until ? $", until {colours[until]}." : "."),
            DriftAdviceKind.TightenTurn => $"{Capital(seen)}; make the turning chain tight.",
            DriftAdviceKind.LoosenTurn => $"{Capital(seen)}; make the turning chain loose.",
            DriftAdviceKind.SkipEdgeStitch => $"{Capital(seen)}; skip the edge stitch.",
            DriftAdviceKind.AddEdgeStitch => $"{Capital(seen)}; work one more stitch into the edge.",
            DriftAdviceKind.HookDown => "Your stitches take more yarn than tight hands can make good; go down a hook size.",
            DriftAdviceKind.HookUp => "Your stitches take less yarn than loose hands can make good; go up a hook size.",
            DriftAdviceKind.RipBack => $"{Capital(seen)}, and under half of this row matches; rip back to the last change.",
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Kind, "No such advice."),
        };
    }

    private static string Drift(double phase)
    {
        string way = phase > 0 ? "early" : "late";
        int stitches = (int)Math.Round(Math.Abs(phase), MidpointRounding.AwayFromZero);
        if (stitches == 0) return $"a little {way}";
        return $"{(stitches < Numbers.Length ? Numbers[stitches] : stitches)} stitch{(stitches == 1 ? "" : "es")} {way}";
    }

    private static string Level(double change, double hands)
    {
        string way = change > 0 ? "looser" : "tighter";
        double part = Math.Abs(change) / (DriftAdvice.Asked * hands);
        return part < 1.0 / 6 ? $"a touch {way}" : part < 0.5 ? $"a little {way}" : part < 1 ? way : $"much {way}";
    }

    private static string Holding(double hold, double hands) =>
        Math.Abs(hold) < DriftAdvice.Asked * hands / 12 ? "" : $", {Level(hold, hands)} than your hands would by themselves";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
