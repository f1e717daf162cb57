using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Workspace.Yarn;

/// <summary>What to count next, in words.</summary>
public static class CountWords
{
    private static readonly string[] Ordinals =
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    /// <summary>What a ball is called until the maker says otherwise.</summary>
    public static string Ball(int index) =>
        (index < Ordinals.Length ? Ordinals[index] : string.Create(CultureInfo.InvariantCulture, $"{index + 1}th")) + " ball";

    /// <summary>For counted work, section by section taken together.</summary>
    /// <param name="names">One name a section.</param>
    public static string ForCountedWork(ImmutableArray<SectionCounting> sections, IReadOnlyList<string> names)
    {
        if (sections.IsEmpty)
            return "Count two or three repeats first.";
        var said = new List<string>();
        var other = sections.Where(s => s.Verdict == CountingVerdict.AnotherIsNearer).ToArray();
        var open = sections.Where(s => s.Verdict == CountingVerdict.CountMore).ToArray();
        var never = sections.Where(s => s.Verdict == CountingVerdict.NotByCounting).ToArray();
        if (open.Length > 0)
            said.Add($"Count {Repeats(open.Max(s => s.MoreRepeats))} to be sure of {Names(open, names)}.");
        if (never.Length > 0)
            said.Add($"No counting that anyone does will settle {Names(never, names)}: choose, and let your hands do the rest.");
        if (other.Length > 0)
            said.Add($"The counts speak for other whole numbers than those meant of {Names(other, names)}: see the Swatch page.");
        if (said.Count == 0)
            said.Add("Enough is counted: every colour's whole number is sure.");
        var either = sections.Where(s => s.EitherServes).ToArray();
        if (either.Length > 0)
        {
            var lie = either.Length == 1 ? "lies" : "lie";
            said.Add($"{Wording.Capital(Names(either, names))} {lie} so near a half that either whole number asks the same of your hands.");
        }
        return string.Join(' ', said);
    }

    /// <summary>One section: which whole number, how sure, and what would make sure.</summary>
    public static string Of(SectionCounting counting) => counting switch
    {
        { EitherServes: true } => Said($"{counting.Stitches}, or its neighbour: either serves"),
        { Verdict: CountingVerdict.Enough } => Said($"{counting.Stitches}, sure"),
        { Verdict: CountingVerdict.CountMore } => Said($"{counting.Stitches}, {Sure(counting)}; {Repeats(counting.MoreRepeats)} would tell"),
        { Verdict: CountingVerdict.AnotherIsNearer } => Said($"{counting.Stitches} is meant, another is nearer"),
        _ => Said($"{counting.Stitches}, {Sure(counting)}; counting will not tell"),
    };

    /// <summary>Such as <c>3 more repeats</c>.</summary>
    public static string Repeats(int count) => Said($"{count} more {(count == 1 ? "repeat" : "repeats")}");

    private static string Sure(SectionCounting counting) => Said($"{Math.Floor(100 * counting.ProbabilityRight):0} in 100 sure");

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Names(SectionCounting[] sections, IReadOnlyList<string> names) =>
        Wording.List(sections.Select(s => names[s.Section]).Distinct());
}
