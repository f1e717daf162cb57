using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>
/// What a maker does before she begins, and the example that the tables are explained by, against the document's yarn and the text's own
/// pieces, edgings and tables.
/// </summary>
internal static partial class BeforeComparison
{
    private const string Section = "BEFORE YOU BEGIN";

    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var lines = read.Lines.Where(l => l.Section == Section).Select(l => l.Line).ToArray();
        Order(plan, lines, notes);
        Count(plan, lines, notes);
        Markers(read, lines, notes);
        foreach (var example in read.Lines.Select(l => Example().Match(l.Line)).Where(m => m.Success))
            Table(read, example, notes);
    }

    /// <summary>The document's colours in the order of work, and the other way round from the same colour on.</summary>
    private static void Order(Plan plan, string[] lines, List<(string Place, string Text)> notes)
    {
        var said = lines.Select(l => Way().Match(l)).FirstOrDefault(m => m.Success);
        var symbols = plan.Sequence.Colours.Select(c => c.Symbol).ToArray();
        string[] other = [symbols[0], .. symbols[1..].Reverse()];
        var differs = !Enumerable.Range(0, symbols.Length).Any(by => symbols[by..].Concat(symbols[..by]).SequenceEqual(other));
        if (differs != said is not null)
            notes.Add((Section, differs ? "the text does not say which way the yarn runs" : "the text tells two ways of a yarn whose colours come alike from both ends"));
        else if (said is not null && (said.Groups["one"].Value != string.Join(", ", symbols) || said.Groups["other"].Value != string.Join(", ", other)))
            notes.Add((Section, $"“{said.Value}”: the plan's colours come as {string.Join(", ", symbols)}"));
    }

    /// <summary>From 3.5 % under two sequences as planned to as much over them, and never less than a stitch either way.</summary>
    private static void Count(Plan plan, string[] lines, List<(string Place, string Text)> notes)
    {
        if (lines.Select(l => Counted().Match(l)).FirstOrDefault(m => m.Success) is not { } said)
        {
            notes.Add((Section, "the text does not say what two sequences count"));
            return;
        }
        var (least, most) = (Whole(said, "least"), Whole(said, "most"));
        var planned = 2 * Enumerable.Range(0, plan.Sequence.Colours.Length).Sum(plan.Sequence.UnitsIn);
        var either = Math.Max(1, planned * 7 / 200);
        if (Math.Abs(least - (planned - either)) > 0.5 + 1e-9 || Math.Abs(most - (planned + either)) > 0.5 + 1e-9)
            notes.Add((Section, FormattableString.Invariant($"“{said.Value}”: two sequences take {planned:0.##} in the plan")));
    }

    /// <summary>One for the row, and as many as all pieces have marks, which stay until they are sewn, or an edging corners.</summary>
    private static void Markers(ReadBooklet read, string[] lines, List<(string Place, string Text)> notes)
    {
        if (lines.Select(l => MarkersSaid().Match(l)).FirstOrDefault(m => m.Success) is not { } said)
        {
            notes.Add((Section, "the text does not say how many markers it takes"));
            return;
        }
        var needed = 1 + read.Pieces.GroupBy(p => p.Size)
            .Select(size => size.Sum(p => MaterialLines.Copies(p.Name) * p.MarkedPlaces)
                + (size.Any(p => p.Shaped.Any(r => r.Chains > 0) || p.Joined.Any()) ? 1 : 0))
            .Concat(read.Edgings.Select(e => e.Corners.Outer + e.Corners.Inner)).DefaultIfEmpty(0).Max();
        if (Whole(said, "n") < needed - 1 || read.Sizes.Length > 1 && Whole(said, "n") > needed + 1)
            notes.Add((Section, $"“{said.Value}”: the pieces and edgings take {needed}"));
    }

    private static void Table(ReadBooklet read, Match example, List<(string Place, string Text)> notes)
    {
        var chart = read.Tables.Where(t => t.Part.StartsWith($"Chart {example.Groups["chart"].Value}:", StringComparison.Ordinal)).Select(t => t.Table).FirstOrDefault();
        string[] said = [Run("first"), Run("second"), Run("last")];
        var (row, after) = (Whole(example, "row"), Cells(Whole(example, "row") + 1));
        if (Cells(row) is not { } cells || !cells.Skip(1).Take(3).SequenceEqual(said))
            notes.Add(("CHARTS AND ROW STARTS", $"“{example.Value}” is not row {row} of that chart's table"));
        else if (example.Groups["next"].Success && (Whole(example, "after") != row + 1 || after?[1] != Run("next")))
            notes.Add(("CHARTS AND ROW STARTS", $"“{example.Value}”: row {row + 1} of the table begins with {after?[1]}"));

        string[]? Cells(int row) => chart?.Rows.Where(r => r[0].Split(' ')[0] == row.ToString(CultureInfo.InvariantCulture))
            .Select(r => r.ToArray()).FirstOrDefault();

        string Run(string group) => $"{example.Groups[group].Value} {example.Groups[group + "Symbol"].Value}";
    }

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("^Way of the yarn: The colours come off the ball as (?<one>.+?) and so on\\. If yours come as (?<other>.+?) and so on, work from the ball's other end\\.$")]
    private static partial Regex Way();

    [GeneratedRegex("^Count: .* that 2 whole sequences of the colours take: (?<least>[0-9]+) to (?<most>[0-9]+)\\.")]
    private static partial Regex Counted();

    [GeneratedRegex("^Markers: (?<n>[0-9]+) at a time: ")]
    private static partial Regex MarkersSaid();

    [GeneratedRegex(@"^For instance chart (?<chart>\d+), (?:row|round) (?<row>\d+): it begins with (?<first>\d+) \w+ of .+? \((?<firstSymbol>[^()]+)\) and (?<second>\d+) \w+ of .+ \((?<secondSymbol>[^()]+)\), the colours go on whole .*? ends with (?<last>\d+) \w+ of .+? \((?<lastSymbol>[^()]+)\)\.(?: (?:Row|Round) (?<after>\d+) begins with the rest of that colour: (?<next>\d+) \w+ of .+ \((?<nextSymbol>[^()]+)\), [0-9.]+ with the )?")]
    private static partial Regex Example();
}
