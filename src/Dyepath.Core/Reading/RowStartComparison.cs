using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

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
        if (uses.Length > 0 && sizes > 1 && !uses.Split("; ").Any(use => Serves(use, piece.Name, size)))
            notes.Add((place, $"“{heading}” does not name the size"));
    }

    /// <summary>“front and back in 1X, 2X” or “sleeve, all sizes”.</summary>
    private static bool Serves(string use, string piece, string size)
    {
        const string all = ", all sizes";
        if (use.EndsWith(all, StringComparison.Ordinal))
            return use[..^all.Length].Split(" and ").Contains(piece);
        var at = use.IndexOf(" in ", StringComparison.Ordinal);
        return at >= 0 && use[..at].Split(" and ").Contains(piece) && use[(at + 4)..].Split(", ").Contains(size);
    }

    private static void Follow(Plan plan, PiecePlan piece, ReadBeginning begin, ReadTable table, string place, List<(string Place, string Text)> notes)
    {
        for (var row = begin.ChartRow - 1; row < Math.Min(table.Rows.Length, begin.ChartRow - 1 + piece.Rows); row++)
        {
            var cells = table.Rows[row];
            if (cells[0].Split(' ')[0] != (row + 1).ToString(CultureInfo.InvariantCulture))
                notes.Add((place, $"row {row + 1} is headed {cells[0]}"));
            var runs = Short(plan, Runs(plan, piece, row - (begin.ChartRow - 1)));
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
        var rows = read.Lines.Select(l => StripRows().Match(l.Line)).FirstOrDefault(m => m.Success)?.Groups["n"].Value;
        var begins = $"- chart {begin.Chart} from {(piece.Working == Working.Turned ? "row" : "round")} {begin.ChartRow}: ";
        var strips = read.Lines.Where(l => l.Line.StartsWith(begins, StringComparison.Ordinal)).Select(l => l.Line[begins.Length..]).ToArray();
        var runs = int.TryParse(rows, NumberStyles.None, CultureInfo.InvariantCulture, out var row) && row > 0 ? Runs(plan, piece, row - 1) : [];
        var colours = ColourNames.Of(plan);
        if (runs.Count == 0 || strips is not [var strip]
            || strip != $"begins with {runs[0].Units} of {colours[runs[0].Section]}, ends with {runs[^1].Units} of {colours[runs[^1].Section]}.")
            notes.Add((place, $"the test strip of chart {begin.Chart} from {begin.ChartRow} does not say {string.Join(" and ", Short(plan, runs).Where((_, i) => i == 0 || i == runs.Count - 1))}"));
    }

    /// <summary>“5 D” as <c>5D</c>.</summary>
    private static string Short(string cell) => Run().Match(cell) is { Success: true } run ? run.Groups["n"].Value + run.Groups["symbol"].Value : cell;

    private static List<string> Short(Plan plan, List<(int Section, int Units)> runs)
    {
        var symbols = plan.Sequence.Colours;
        return [.. runs.Select(r => $"{r.Units}{symbols[r.Section].Symbol}")];
    }

    /// <summary>
    /// A row of the piece, run by run in the order of work, followed along the yarn in millionths of a stitch. A turning chain that counts
    /// as the row's first stitch takes a stitch's yarn and the turn's; any other turn lies between the rows.
    /// </summary>
    private static List<(int Section, int Units)> Runs(Plan plan, PiecePlan piece, int row)
    {
        var fabric = plan.Project.Fabric;
        var turn = ColourRing.ToMicro(piece.TurnCost);
        var chain = fabric.ChainCountsAsStitch ? turn : 0;
        var at = ColourRing.ToMicro(piece.Start) - chain;
        for (var before = 0; before < row; before++)
            at += piece.RowStitches[before % piece.RowStitches.Length] * (ColourRing.Unit / fabric.Stitch.StitchesPerUnit) + turn;
        var units = piece.RowStitches[row % piece.RowStitches.Length] / fabric.Stitch.StitchesPerUnit;
        var runs = new List<(int Section, int Units)>();
        for (var unit = 0; unit < units; unit++)
        {
            var yarn = ColourRing.Unit + (unit == 0 ? chain : 0);
            var section = Covering(plan.Sequence.Ring, at, yarn);
            at += yarn;
            if (runs.Count > 0 && plan.Sequence.Ring.Colours[runs[^1].Section] == plan.Sequence.Ring.Colours[section])
                runs[^1] = runs[^1] with { Units = runs[^1].Units + 1 };
            else
                runs.Add((section, 1));
        }
        return runs;
    }

    /// <summary>
    /// Of the colour that covers most of a stretch of yarn, the section that covers most of it; the one met first in a tie.
    /// </summary>
    private static int Covering(ColourRing ring, long from, long length)
    {
        var place = (from % ring.Total + ring.Total) % ring.Total;
        var section = 0;
        while (place >= ring.Sections[section])
            place -= ring.Sections[section++];
        var met = new List<int>();
        var covered = new long[ring.Sections.Length];
        for (var left = length; left > 0; (section, place) = ((section + 1) % ring.Sections.Length, 0))
        {
            var here = Math.Min(left, ring.Sections[section] - place);
            if (covered[section] == 0)
                met.Add(section);
            covered[section] += here;
            left -= here;
        }
        // MaxBy keeps the first of equals.
        var colour = ring.Colours[met.MaxBy(s => met.Where(other => ring.Colours[other] == ring.Colours[s]).Sum(other => covered[other]))];
        return met.Where(s => ring.Colours[s] == colour).MaxBy(s => covered[s]);
    }

    [GeneratedRegex(@"^Chart \d+: (?<n>\d+(?: and \d+)?) stitches(?: in turn)?(?: \((?<uses>.*)\))?$")]
    private static partial Regex Counts();

    [GeneratedRegex(@"^Chart (?<n>\d+):")]
    private static partial Regex ChartNumber();

    [GeneratedRegex(@"^(?<n>\d+) (?<symbol>\S+)$")]
    private static partial Regex Run();

    [GeneratedRegex(@"^Begin any piece and stop after (?<n>\d+) (?:row|round)s\.")]
    private static partial Regex StripRows();
}
