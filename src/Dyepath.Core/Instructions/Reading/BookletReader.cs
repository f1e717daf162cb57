using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Instructions.Reading;

/// <summary>What a piece's instructions say for one size when they are followed word by word.</summary>
/// <param name="Name">As the pattern heads it.</param>
/// <param name="Chains">Chains of the foundation.</param>
/// <param name="RowStitches">Stitches of the first rows, one for each row that is written out.</param>
/// <param name="Rows">The last row that is worked.</param>
public sealed record ReadPiece(string Name, string Size, int Chains, ImmutableArray<int> RowStitches, int Rows);

/// <summary>What a booklet's text says, and where it contradicts itself.</summary>
/// <param name="Disagreements">Each names the line and what was counted against what is said.</param>
public sealed record ReadBooklet(
    ImmutableArray<string> Sizes, ImmutableArray<ReadPiece> Pieces, ImmutableArray<string> Disagreements);

/// <summary>
/// Reads a booklet's text back as a technical editor would: sizes from its head, then every piece's rows counted from their words,
/// never from the plan. Works in US and UK terms and in any units.
/// </summary>
public sealed partial class BookletReader
{
    private readonly ImmutableArray<string> _sizes;
    private readonly List<ReadPiece> _pieces = [];
    private readonly List<string> _wrong = [];

    private BookletReader(ImmutableArray<string> sizes) => _sizes = sizes;

    /// <exception cref="FormatException">The text has no line of sizes: it is not a booklet's.</exception>
    public static ReadBooklet Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = Unwrapped(text);
        var sizes = lines.FirstOrDefault(l => l.StartsWith("Sizes: ", StringComparison.Ordinal))
            ?? throw new FormatException("The text has no line that begins with “Sizes: ”.");
        var reader = new BookletReader(Split(sizes["Sizes: ".Length..]));
        reader.ReadPieces(lines);
        reader.ReadPickUps(lines);
        return new ReadBooklet(reader._sizes, [.. reader._pieces], [.. reader._wrong]);
    }

    /// <summary>Puts wrapped lines together again: a continuation is indented by four spaces.</summary>
    private static List<string> Unwrapped(string text)
    {
        var lines = new List<string>();
        foreach (var line in text.Split('\n'))
        {
            if (line.StartsWith("    ", StringComparison.Ordinal) && lines.Count > 0)
                lines[^1] += " " + line.Trim();
            else
                lines.Add(line);
        }
        return lines;
    }

    private void ReadPieces(List<string> lines)
    {
        var heading = "";
        var steps = new List<(string Label, string Words)>();
        foreach (var line in lines)
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
                (heading, steps) = (line[3..], []);
            else if (StepLine().Match(line) is { Success: true } step)
                steps.Add((step.Groups["label"].Value, step.Groups["words"].Value));
            if (steps.Count > 0 && steps[^1].Label == "End")
            {
                for (var size = 0; size < _sizes.Length; size++)
                    Follow(heading, steps, size);
                steps = [];
            }
        }
    }

    private void Follow(string heading, List<(string Label, string Words)> steps, int size)
    {
        var place = $"{heading}, size {_sizes[size]}";
        var chains = 0;
        var below = 0;
        var rows = ImmutableArray.CreateBuilder<int>();
        var last = 0;
        foreach (var (label, words) in steps)
        {
            if (label == "Foundation")
            {
                below = chains = NumberIn(FoundationChains().Match(words), "n", size);
                continue;
            }
            if (label == "End")
            {
                var said = NumberIn(LastRow().Match(words), "n", size);
                if (said != last)
                    _wrong.Add($"{place}: the rows end with {last}, the last line says {said}");
                continue;
            }
            if (RepeatRows().Match(label) is { Success: true } repeat)
            {
                var from = int.Parse(repeat.Groups["from"].Value, CultureInfo.InvariantCulture);
                if (from != rows.Count + 1)
                    _wrong.Add($"{place}: “{label}” follows row {rows.Count}");
                last = NumberIn(repeat, "to", size);
                continue;
            }
            var match = WorkedRow().Match(words);
            var stated = NumberIn(match, "n", size);
            var (made, stuck) = RowCounter.Follow(match.Groups["work"].Value, below);
            if (stuck is not null)
                _wrong.Add($"{place}, {label}: cannot be followed at “{stuck}”");
            else if (made != stated)
                _wrong.Add($"{place}, {label}: its words make {made} stitches, it says {stated}");
            rows.Add(stated);
            below = stated;
            last = rows.Count;
        }
        _pieces.Add(new ReadPiece(heading, _sizes[size], chains, rows.ToImmutable(), last));
    }

    /// <summary>Adds up every pick-up rule and holds it against the total that it states.</summary>
    private void ReadPickUps(List<string> lines)
    {
        foreach (var line in lines.Where(l => PickUpTotal().IsMatch(l)))
        {
            var sum = 0;
            foreach (Match group in PickUpGroup().Matches(line))
            {
                var names = group.Groups["where"].Value.Split(" and ").Length;
                var each = Whole(group, "stitches") * Whole(group, "times") + (group.Groups["rest"].Success ? Whole(group, "rest") : 0);
                sum += names * each;
            }
            foreach (Match extra in PickUpExtra().Matches(line))
            {
                var sign = extra.Groups["what"].Value == "extra" ? 1 : -1;
                sum += sign * Whole(extra, "n") * (extra.Groups["corners"].Success ? Whole(extra, "corners") : 1);
            }
            var total = Whole(PickUpTotal().Match(line), "n");
            if (sum != total)
                _wrong.Add($"“{line.Trim()}”: the rule makes {sum}, it says {total}");
        }
    }

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    /// <summary>The size's own number of a size list, or the one number that serves all.</summary>
    private int NumberIn(Match match, string group, int size)
    {
        if (!match.Success)
            return -1;
        var numbers = Split(match.Groups[group].Value);
        if (numbers.Length != 1 && numbers.Length != _sizes.Length)
        {
            _wrong.Add($"“{match.Value}” has {numbers.Length} numbers for {_sizes.Length} sizes");
            return -1;
        }
        return int.Parse(numbers[numbers.Length == 1 ? 0 : size], CultureInfo.InvariantCulture);
    }

    /// <summary>“57 (61, 65)” into its parts.</summary>
    private static ImmutableArray<string> Split(string list) =>
        [.. list.Split(['(', ')', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    private const string Numbers = @"\d+(?: \(\d+(?:, \d+)*\))?";

    [GeneratedRegex($@"^(?<label>Foundation|(?:Row|Round) \d+(?: \((?:RS|WS)\))?|(?:Row|Round)s \d+ to {Numbers}|End): (?<words>.*)$")]
    private static partial Regex StepLine();

    [GeneratedRegex($@"^Ch (?<n>{Numbers})\.")]
    private static partial Regex FoundationChains();

    [GeneratedRegex($@"after (?:row|round) (?<n>{Numbers})\.")]
    private static partial Regex LastRow();

    [GeneratedRegex($@"^(?:Row|Round)s (?<from>\d+) to (?<to>{Numbers})$")]
    private static partial Regex RepeatRows();

    [GeneratedRegex($@"^(?<work>.*)\. (?<n>{Numbers}) sts\.$")]
    private static partial Regex WorkedRow();

    [GeneratedRegex(@"pick up .*: (?<n>\d+) in all\.")]
    private static partial Regex PickUpTotal();

    [GeneratedRegex(@"(?:^|; |: |- )(?<where>[^:;]+): pick up (?<stitches>\d+) in (?:each of the (?<times>\d+)|every \d+ (?:row ends|stitches) (?<times>\d+) times)(?: (?:row ends?|stitch(?:es)?))?(?:, then (?<rest>\d+) in the last \d+)?")]
    private static partial Regex PickUpGroup();

    [GeneratedRegex(@"; (?<n>\d+) (?<what>extra|fewer)(?: at each of the (?<corners>\d+) corners)?")]
    private static partial Regex PickUpExtra();
}
