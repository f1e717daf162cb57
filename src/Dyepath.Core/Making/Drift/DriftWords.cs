using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Making.Drift;

/// <summary>What a sentence speaks of beside its advice.</summary>
/// <param name="Seen">
/// The phase that she saw, and the colour that she was asked of, missing where that was all colours; missing where the sentence answers
/// no look.
/// </param>
/// <param name="One">What is counted against the yarn, one of them.</param>
/// <param name="Many">More of them.</param>
/// <param name="Row"><c>row</c> or <c>round</c>.</param>
/// <param name="NextRow">How many the row has that the next stitch is in.</param>
/// <param name="Centimetres">Yarn of one.</param>
public sealed record DriftTerms((string? Colour, int Phase)? Seen, string One, string Many, string Row, int NextRow, double Centimetres)
{
    /// <summary>The level that she has worked at up to here; 0, her natural hands.</summary>
    public double Was { get; init; }

    /// <summary>Some of the row is worked.</summary>
    public bool MidRow { get; init; }
}

/// <summary>Advice as it is said to the maker: colours and stitches, never percentages.</summary>
public static class DriftWords
{
    private static readonly ImmutableArray<string> Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>One sentence: what was seen, and after a semicolon what to do. Every level is measured from her natural hands.</summary>
    public static string Say(DriftAdvice advice, DriftTerms terms)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(terms);
        string seen = advice.Kind is DriftAdviceKind.HookDown or DriftAdviceKind.HookUp || terms.Seen is not { } saw ? "" : Seen(saw) + "; ";
        string asked = Asked(advice, terms);
        return (seen.Length == 0 ? Wording.Capital(asked) : seen + asked) + ".";
    }

    private static string Seen((string? Colour, int Phase) seen)
    {
        (string what, string is_, string comes) = seen.Colour is { } one ? ($"This {one}", "is", "comes") : ("Colours", "are", "come");
        return seen.Phase == 0 ? $"{what} {is_} on the count" : $"{what} {comes} {(seen.Phase > 0 ? "early" : "late")}";
    }

    private static string Asked(DriftAdvice advice, DriftTerms terms)
    {
        string row = terms.Row;
        int planned = terms.NextRow;
        return advice.Kind switch
        {
            DriftAdviceKind.CarryOn => CarryOn(advice.After(0), terms),
            DriftAdviceKind.Correct when advice.ToRowEnd => $"work {Level(advice.Correction)} to the end of the {row}",
            DriftAdviceKind.Correct => $"work {Level(advice.Correction)} {Length(advice.Stitches, terms)}, up to the mark, {Then(advice)} to the end of the {row}",
            DriftAdviceKind.TightenTurn => "make the turning chain tight",
            DriftAdviceKind.LoosenTurn => "make the turning chain loose",
            DriftAdviceKind.SkipEdgeStitch =>
                $"skip the first {terms.One} of the next {row}, so that it has {planned - 1}, and work two into that edge in the {row} after it, for {planned} again",
            DriftAdviceKind.AddEdgeStitch =>
                $"work one more {terms.One} into the edge where the next {row} begins, so that it has {planned + 1}, and work two together there in the {row} after it, for {planned} again",
            DriftAdviceKind.HookDown => "your stitches take more yarn than tight hands can make good: go down a hook size",
            DriftAdviceKind.HookUp => "your stitches take less yarn than loose hands can make good: go up a hook size",
            DriftAdviceKind.Rejoin =>
                $"hands cannot bring it back within a {row}: cut the yarn, leave out {Centimetres(advice.LeftOut * terms.Centimetres)} cm of it, and join it again",
            DriftAdviceKind.RipBack => $"too little matches to keep it: rip back to the beginning of {row} {advice.RipTo!.Value + 1}",
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Kind, "No such advice."),
        };
    }

    private static string Level(double level) =>
        TensionGrades.Say(level) is { } said ? $"{said} than your natural hands" : "with your natural hands";

    /// <summary>Nothing to watch for; what another way of working takes back or begins is said.</summary>
    private static string CarryOn(double level, DriftTerms terms)
    {
        string rest = terms.MidRow ? $" to the end of the {terms.Row}" : "";
        return level == terms.Was ? $"carry on {Level(level)}{rest}"
            : level == 0 ? $"{(terms.MidRow ? "enough: back" : "go back")} to your natural hands{rest}"
            : $"from here on work {Level(level)}{rest}";
    }

    /// <summary>Counted from where she has it before her: the row's beginning, or where she looked.</summary>
    private static string Length(int stitches, DriftTerms terms) =>
        !terms.MidRow ? $"for the first {stitches} {terms.Many}"
        : terms.Seen is null ? $"for the next {stitches} {terms.Many}"
        : $"for {stitches} {terms.Many} from where you looked";

    private static string Then(DriftAdvice advice)
    {
        if (TensionGrades.Say(advice.Hold) is not { } said) return "then back to your natural hands";
        // Less of the same could be heard as more of it.
        bool less = Math.Sign(advice.Hold) == Math.Sign(advice.Correction) && Math.Abs(advice.Hold) < Math.Abs(advice.Correction);
        return $"then {(less ? "only " : "")}{said} than natural";
    }

    private static string Centimetres(double length) =>
        Math.Round(length, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

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

    private static string Number(int count) =>
        count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture);
}
