using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Bench.Makers;

/// <summary>How much a maker is asked for, in her own idea of it.</summary>
internal enum Grade
{
    Natural,
    Touch,
    Little,
    Plain,
    Much,
}

/// <summary>A way of working: which way, and how much.</summary>
/// <param name="Way">−1 tighter, 1 looser, 0 as the hands like.</param>
internal readonly record struct Feel(Grade Grade, int Way)
{
    public static Feel Natural => new(Grade.Natural, 0);
}

/// <summary>What is kept up for a while.</summary>
/// <param name="Feel">How.</param>
/// <param name="Stitches">For so many; missing where no number is said.</param>
/// <param name="Until">Up to this colour's next beginning; missing where none is said.</param>
/// <param name="ToMark">Up to what the page has marked.</param>
internal sealed record Stretch(Feel Feel, int? Stitches, string? Until, bool ToMark);

/// <summary>What a sentence asks for.</summary>
internal sealed record Understood
{
    /// <summary>One after another; empty where she just goes on.</summary>
    public IReadOnlyList<Stretch> Stretches { get; init; } = [];

    /// <summary>How she works after them; missing where the sentence does not say.</summary>
    public Feel? After { get; init; }

    /// <summary>Stitches at the edge beyond the plan: −1 skipped, 1 added.</summary>
    public int Edge { get; init; }

    /// <summary>−1 a tight turning chain, 1 a loose one.</summary>
    public int Turn { get; init; }

    /// <summary>−1 a smaller hook, 1 a larger one.</summary>
    public int Hook { get; init; }

    /// <summary>She is to rip back.</summary>
    public bool Rips { get; init; }

    /// <summary>To the beginning of this row, from 1; missing where the sentence does not say.</summary>
    public int? RipsTo { get; init; }

    /// <summary>Yarn to be cut out before it is joined again; missing where it is not to be cut.</summary>
    public double? CutCentimetres { get; init; }

    /// <summary>The sentence says that it measures from her natural hands; else “tighter” is tighter than she works now.</summary>
    public bool FromNatural { get; init; }

    /// <summary>Nothing changes: the sentence tells her to carry on.</summary>
    public bool CarriesOn { get; init; }
}

/// <summary>
/// Reads advice as a maker reads it: by its English words alone. It shares nothing with what writes them, and what it does not
/// understand is a fault of the sentence.
/// </summary>
internal static partial class SentenceReader
{
    /// <exception cref="FormatException">A maker would not know what to do.</exception>
    public static Understood Read(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        // What is seen comes before the semicolon, what is to be done after it.
        string asked = sentence[(sentence.LastIndexOf(';') + 1)..].Trim().TrimEnd('.');
        asked = char.ToLowerInvariant(asked[0]) + asked[1..];
        if (Rip().Match(asked) is { Success: true } rip)
            return new Understood { Rips = true, RipsTo = rip.Groups["row"].Success ? Whole(rip.Groups["row"]) : null };
        if (Cut().Match(asked) is { Success: true } cut)
            return new Understood { CutCentimetres = double.Parse(cut.Groups["cm"].Value, CultureInfo.InvariantCulture) };
        if (asked.Contains("hook size", StringComparison.Ordinal))
            return new Understood { Hook = asked.Contains("down", StringComparison.Ordinal) ? -1 : 1 };
        if (asked.Contains("turning chain", StringComparison.Ordinal))
            return new Understood { Turn = asked.Contains("tight", StringComparison.Ordinal) ? -1 : 1 };
        if (asked.StartsWith("skip", StringComparison.Ordinal)) return new Understood { Edge = -1 };
        if (asked.StartsWith("work one more", StringComparison.Ordinal)) return new Understood { Edge = 1 };
        string[] parts = asked.Split("then ", 2);
        var first = Part(parts[0]);
        bool carriesOn = first is { Stitches: null, Until: null, ToMark: false } && CarryOn().IsMatch(asked);
        bool natural = parts[0].Contains("than your natural hands", StringComparison.Ordinal) || first.Feel == Feel.Natural;
        if (parts.Length == 2)
        {
            // Two levels in one sentence are measured from one thing, or a maker does not know from which.
            var after = Part(parts[1]).Feel;
            if (after != Feel.Natural && !parts[1].Contains("natural", StringComparison.Ordinal))
                throw new FormatException($"“{parts[1]}”: than what?");
            return new Understood { Stretches = [first], After = after, CarriesOn = carriesOn, FromNatural = natural };
        }
        return first is { Stitches: null, Until: null, ToMark: false }
            ? new Understood { After = first.Feel, CarriesOn = carriesOn, FromNatural = natural }
            : new Understood { Stretches = [first], CarriesOn = carriesOn, FromNatural = natural };
    }

    private static Stretch Part(string words)
    {
        var number = Number().Match(words);
        var until = Until().Match(words);
        return new Stretch(
            FeelOf(words), number.Success ? Whole(number.Groups["n"]) : null, until.Success ? until.Groups["colour"].Value.Trim() : null,
            words.Contains("the mark", StringComparison.Ordinal));
    }

    private static Feel FeelOf(string words)
    {
        var said = Level().Match(words);
        if (!said.Success)
        {
            return words.Contains("natural hands", StringComparison.Ordinal) || words.Contains("carry on", StringComparison.Ordinal)
                ? Feel.Natural
                : throw new FormatException($"“{words}” does not say how.");
        }
        var grade = said.Groups["much"].Value.Trim() switch
        {
            "a touch" => Grade.Touch,
            "a little" => Grade.Little,
            "much" => Grade.Much,
            _ => Grade.Plain,
        };
        return new Feel(grade, said.Groups["way"].Value == "tighter" ? -1 : 1);
    }

    private static int Whole(Group digits) => int.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("(?<much>a touch |a little |much )?(?<way>tighter|looser)")]
    private static partial Regex Level();

    /// <summary>One way of working and nothing to watch for, whether it is the one that she is at or another.</summary>
    [GeneratedRegex("^(carry on|from here on|enough: back|go back) ")]
    private static partial Regex CarryOn();

    [GeneratedRegex(@"(?<n>\d+) (stitches|pairs)")]
    private static partial Regex Number();

    [GeneratedRegex(", until (?<colour>[a-z ]+)$")]
    private static partial Regex Until();

    [GeneratedRegex(@"rip back(.*row (?<row>\d+))?")]
    private static partial Regex Rip();

    [GeneratedRegex(@"cut.* (?<cm>\d+(\.\d+)?) cm")]
    private static partial Regex Cut();
}
