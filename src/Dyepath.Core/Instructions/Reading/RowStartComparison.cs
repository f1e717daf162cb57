using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Reading;

/// <summary>
/// Row starts and test strips against the yarn followed stitch by stitch: every piece must find its own rows in the chart that its
/// instructions name, from the chart row that they name.
/// </summary>
internal static partial class RowStartComparison
{
    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var tables = read.Tables.Where(t => t.Table.Head[0] is "Row" or "Round").ToLookup(t => ChartNumber().Match(t.Part).Groups["n"].Value, t => t.Table);
        foreach (var size in plan.Sizes.Where(s => read.Sizes.Contains(s.Name)))
        {
            var pieces = read.Pieces.Where(p => p.Size == size.Name).ToArray();
            foreach (var (said, planned) in pieces.Zip(size.Pieces).Where(p => p.Second.Pooled))
            {
                var place = $"{size.Name}, {planned.Name}";
                if (said.Beginning is not { } begin || tables[$"{begin.Chart}"].ToArray() is not [var chart])
                {
                    notes.Add((place, $"chart {said.Beginning?.Chart} is not in the text"));
                    continue;
                }
                Heading(planned, size.Name, read.Tables.First(t => t.Table == chart).Part, plan.Sizes.Length, place, notes);
                // Rows that end in half a unit are drawn by their own rules.
                if (planned.RowStitches.Any(n => n % plan.Project.Fabric.Stitch.StitchesPerUnit != 0))
                    continue;
                Follow(plan, planned, begin, chart, $"{place}, chart {begin.Chart}", notes);
                Strip(plan, planned, begin, read, place, notes);
            }
        }
    }

    /// <summary>“Chart 2: 96 stitches (front and back in 1X, 2X)” against a piece that follows it.</summary>
    private static void Heading(PiecePlan piece, string size, string heading, int sizes, string place, List<(string Place, string Text)> notes)
    {
        var counts = Counts().Match(heading);
        var said = string.Join(" and ", piece.RowStitches);
        if (counts.Groups["n"].Value != said)
            notes.Add((place, $"“{heading}” is for {said} stitches in the plan"));
        var uses = counts.Groups["uses"].Value;
        if (uses.Length > 0 && sizes > 1 && !uses.Contains("all sizes", StringComparison.Ordinal)
            && !Name().Matches(uses).Any(m => m.Value == size))
            notes.Add((place, $"“{heading}” does not name the size"));
    }

    private static void Follow(Plan plan, PiecePlan piece, ReadBeginning begin, ReadTable table, string place, List<(string Place, string Text)> notes)
    {
        for (var row = begin.ChartRow - 1; row < Math.Min(table.Rows.Length, begin.ChartRow - 1 + piece.Rows); row++)
        {
            var cells = table.Rows[row];
            if (cells[0].Split(' ')[0] != (row + 1).ToString(CultureInfo.InvariantCulture))
                notes.Add((place, $"row {row + 1} is headed {cells[0]}"));
            var runs = Runs(plan, piece, row - (begin.ChartRow - 1));
            string[] planned = [runs[0], runs.Count > 1 ? runs[1] : "–", runs[^1]];
            for (var i = 0; i < planned.Length; i++)
            {
                if (Short(cells[i + 1]) != planned[i])
                    notes.Add((place, $"row {row + 1}: {cells[i + 1]} in the text, {planned[i]} in the yarn"));
            }
        }
    }

    private static void Strip(Plan plan, PiecePlan piece, ReadBeginning begin, ReadBooklet read, string place, List<(string Place, string Text)> notes)
    {
        var rows = read.Lines.Select(l => StripRows().Match(l.Line)).FirstOrDefault(m => m.Success)?.Groups["n"].Value ?? "1";
        var strips = read.Lines.Select(l => StripLine().Match(l.Line))
            .Where(m => m.Success && m.Groups["chart"].Value == $"{begin.Chart}" && m.Groups["row"].Value == $"{begin.ChartRow}").ToArray();
        var runs = Runs(plan, piece, int.Parse(rows, CultureInfo.InvariantCulture) - 1);
        if (strips.Length != 1 || strips[0].Groups["first"].Value + strips[0].Groups["a"].Value != runs[0]
            || strips[0].Groups["last"].Value + strips[0].Groups["b"].Value != runs[^1])
            notes.Add((place, $"the test strip of chart {begin.Chart} from {begin.ChartRow} does not say {runs[0]} and {runs[^1]}"));
    }

    /// <summary>“5 D” as <c>5D</c>.</summary>
    private static string Short(string cell) => Run().Match(cell) is { Success: true } run ? run.Groups["n"].Value + run.Groups["symbol"].Value : cell;

    /// <summary>A row of the piece, run by run in the order of work, followed along the yarn from its first stitch.</summary>
    private static List<string> Runs(Plan plan, PiecePlan piece, int row)
    {
        var symbols = Symbols.Of(plan);
        var perUnit = plan.Project.Fabric.Stitch.StitchesPerUnit;
        var at = piece.Start;
        for (var before = 0; before < row; before++)
            at += (double)piece.RowStitches[before % piece.RowStitches.Length] / perUnit + piece.TurnCost;
        var units = piece.RowStitches[row % piece.RowStitches.Length] / perUnit;
        var runs = new List<(string Symbol, int Colour, int Units)>();
        for (var unit = 0; unit < units; unit++)
        {
            var section = Covering(plan.Ring, ColourRing.ToMicro(at + unit));
            var colour = plan.Ring.Colours[section];
            if (runs.Count > 0 && runs[^1].Colour == colour)
                runs[^1] = runs[^1] with { Units = runs[^1].Units + 1 };
            else
                runs.Add((symbols[section], colour, 1));
        }
        return [.. runs.Select(r => $"{r.Units}{r.Symbol}")];
    }

    /// <summary>The section whose colour covers most of one unit of yarn, the earlier one in a tie.</summary>
    private static int Covering(ColourRing ring, long from)
    {
        var (best, most) = (0, 0L);
        var covered = new Dictionary<int, long>();
        var place = from % ring.Total;
        var section = 0;
        while (place >= ring.Sections[section])
            place -= ring.Sections[section++];
        var first = new Dictionary<int, int>();
        for (var left = ColourRing.Unit; left > 0;)
        {
            var here = Math.Min(left, ring.Sections[section] - place);
            var colour = ring.Colours[section];
            first.TryAdd(colour, section);
            covered[colour] = covered.GetValueOrDefault(colour) + here;
            if (covered[colour] > most)
                (best, most) = (first[colour], covered[colour]);
            left -= here;
            (section, place) = ((section + 1) % ring.Sections.Length, 0);
        }
        return best;
    }

    [GeneratedRegex(@"^Chart \d+: (?<n>\d+(?: and \d+)?) stitches(?: in turn)?(?: \((?<uses>.*)\))?$")]
    private static partial Regex Counts();

    [GeneratedRegex(@"[^\s,;]+")]
    private static partial Regex Name();

    [GeneratedRegex(@"^Chart (?<n>\d+):")]
    private static partial Regex ChartNumber();

    [GeneratedRegex(@"^(?<n>\d+) (?<symbol>\S+)$")]
    private static partial Regex Run();

    [GeneratedRegex(@"^Begin any piece and stop after (?<n>\d+) (?:row|round)s\.")]
    private static partial Regex StripRows();

    [GeneratedRegex(@"^- chart (?<chart>\d+) from (?:row|round) (?<row>\d+): begins with (?<first>\d+) of .*\((?<a>[^)]+)\), ends with (?<last>\d+) of .*\((?<b>[^)]+)\)\.$")]
    private static partial Regex StripLine();
}
