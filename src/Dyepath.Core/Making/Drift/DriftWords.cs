using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Making.Drift;

/// <summary>Advice as it is said to the maker: colours and stitches, never percentages.</summary>
public static class DriftWords
{
    private static readonly ImmutableArray<string> Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <param name="advice">What to say.</param>
    /// <param name="reading">The colour last read, by name.</param>
    /// <param name="colours">Names, by the colours' indices.</param>
    /// <param name="hands">See <see cref="DriftPlace.LargestCorrection"/>.</param>
    /// <param name="unit">What is counted against the yarn, one and many; missing, stitches.</param>
    public static string Say(
        DriftAdvice advice, string reading, ImmutableArray<string> colours, double hands, (string One, string Many)? unit = null)
    {
        ArgumentNullException.ThrowIfNull(advice);
        (string One, string Many) counted = unit ?? ("stitch", "stitches");
        string seen = $"this {reading} comes {Drift(advice.Phase, counted)}";
        return advice.Kind switch
        {
            DriftAdviceKind.CarryOn => $"This {reading} is on the count; carry on{Holding(advice.Hold, hands)}.",
            DriftAdviceKind.WorkTighter or DriftAdviceKind.WorkLooser =>
                $"{Wording.Capital(seen)}; work the next {advice.Stitches} {counted.Many} {Level(advice.Correction - advice.Hold, hands)}" +
                (advice.UntilColour is { } until ? $", until {colours[until]}." : "."),
            DriftAdviceKind.TightenTurn => $"{Wording.Capital(seen)}; make the turning chain tight.",
            DriftAdviceKind.LoosenTurn => $"{Wording.Capital(seen)}; make the turning chain loose.",
            DriftAdviceKind.SkipEdgeStitch => $"{Wording.Capital(seen)}; skip the edge stitch.",
            DriftAdviceKind.AddEdgeStitch => $"{Wording.Capital(seen)}; work one more stitch into the edge.",
            DriftAdviceKind.HookDown => "Your stitches take more yarn than tight hands can make good; go down a hook size.",
            DriftAdviceKind.HookUp => "Your stitches take less yarn than loose hands can make good; go up a hook size.",
            DriftAdviceKind.RipBack => $"{Wording.Capital(seen)}, and under half of this row matches; rip back to the last change.",
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Kind, "No such advice."),
        };
    }

    /// <summary>Whether these hands hold this width, and what would if they do not.</summary>
    public static string Say(HoldableWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        if (work.Holds) return "Your hands hold this width.";
        List<string> remedies = [];
        if (work.SectionsHold) remedies.Add("look where every colour ends, not only at a row's end");
        if (work.Narrower is { } panels)
        {
            string looking = panels.Check == work.Check ? "" : " and look where every colour ends";
            remedies.Add($"work it in {Number(panels.Count)} panels of {panels.Stitches} stitches{looking}");
        }
        if (work.Steadier is { } part)
            remedies.Add(part > 0.7 ? "work a little more evenly" : part > 0.4 ? "work twice as evenly" : "work four times as evenly");
        int tenths = (int)Math.Floor(10 * work.Share);
        string held = $"Your hands cannot hold this width: about {Number(tenths)} stitches in ten would have their colours.";
        return remedies.Count == 0
            ? $"{held} Neither looking more often nor narrower panels nor much steadier hands would do."
            : $"{held} What would do: {string.Join("; or ", remedies)}.";
    }

    /// <summary>What a maker's log says of her hands.</summary>
    /// <param name="fit">Nothing when the readings are too few.</param>
    public static string Say(MakerFit? fit) => fit switch
    {
        null => "Too few rows are read yet to know your hands.",
        { Bias.Low: > 0 } => "By themselves your hands take more yarn than planned; the next plan can count with it.",
        { Bias.High: < 0 } => "By themselves your hands take less yarn than planned; the next plan can count with it.",
        _ => "By themselves your hands take the yarn that is planned, as far as the rows tell.",
    };

    private static string Drift(double phase, (string One, string Many) counted)
    {
        string way = phase > 0 ? "early" : "late";
        int stitches = (int)Math.Round(Math.Abs(phase), MidpointRounding.AwayFromZero);
        if (stitches == 0) return $"a little {way}";
        return $"{Number(stitches)} {(stitches == 1 ? counted.One : counted.Many)} {way}";
    }

    private static string Number(int count) =>
        count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture);

    private static string Level(double change, double hands)
    {
        string way = change > 0 ? "looser" : "tighter";
        double part = Math.Abs(change) / hands;
        return part < 1.0 / 6 ? $"a touch {way}" : part < 0.5 ? $"a little {way}" : part < 1 ? way : $"much {way}";
    }

    private static string Holding(double hold, double hands) =>
        Math.Abs(hold) < hands / 12 ? "" : $", {Level(hold, hands)} than your hands would by themselves";
}
