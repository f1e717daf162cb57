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
                var again = read.Lines.Any(l => l.Part.StartsWith($"Chart {begin.Chart}:", StringComparison.Ordinal) && Again().IsMatch(l.Line));
                Follow(plan, planned, begin, (chart, again), $"{place}, chart {begin.Chart}", notes);
                Strip(plan, planned, size.Name, read, place, notes);
            }
        }
    }

    /// <summary>“Chart 2: 96 stitches (front and back in 1X, 2X)” against a piece that follows it.</summary>
    private static void Heading(
        PiecePlan piece, string size, string heading, int sizes, string place, List<(string Place, string Text)> notes)
    {
        var counts = Counts().Match(heading);
        var widths = (piece.Shape?.Parts ?? []).SelectMany(p => Enumerable.Range(0, p.Rows).Select(r => p.Outline.At(r).Units)).ToArray();
        var said = widths.Length == 0 ? string.Join(" and ", piece.RowStitches) : widths.Min() == widths.Max() ? $"{widths.Max()}" : $"{widths.Min()} to {widths.Max()}";
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

    private static void Follow(Plan plan, PiecePlan piece, ReadBeginning begin, (ReadTable Table, bool Again) chart, string place,
        List<(string Place, string Text)> notes)
    {
        var (table, again) = chart;
        if (piece.Shape is not null)
        {
            FollowShaped(plan, piece, table, place, notes);
            return;
        }
        var last = begin.ChartRow - 1 + piece.Rows;
        if (table.Rows.Length < last && !(again && Comes(plan, piece, table.Rows.Length)))
            notes.Add((place, $"the table ends with row {table.Rows.Length}, and the rows after it are not those before"));
        for (var row = begin.ChartRow - 1; row < Math.Min(table.Rows.Length, begin.ChartRow - 1 + piece.Rows); row++)
        {
            var cells = table.Rows[row];
            if (cells[0].Split(' ')[0] != (row + 1).ToString(CultureInfo.InvariantCulture))
                notes.Add((place, $"row {row + 1} is headed {cells[0]}"));
            var runs = Short(plan, Runs(plan, piece, row - (begin.ChartRow - 1)));
            string[] planned = [runs[0], runs.Count > 2 ? runs[1] : "–", runs.Count > 1 ? runs[^1] : "–"];
            for (var i = 0; i < planned.Length; i++)
            {
                if (Short(cells[i + 1]) != planned[i])
                    notes.Add((place, $"row {row + 1}: {cells[i + 1]} in the text, {planned[i]} in the yarn"));
            }
        }
    }

    /// <summary>Whether the rows after so many are the first ones once more.</summary>
    private static bool Comes(Plan plan, PiecePlan piece, int rows) =>
        (PlaceOf(plan, piece, rows) - PlaceOf(plan, piece, 0)) % plan.Sequence.Ring.Total == 0;

    private static void FollowShaped(Plan plan, PiecePlan piece, ReadTable table, string place, List<(string Place, string Text)> notes)
    {
        if (table.Rows.Length != piece.Shape!.Parts.Sum(p => p.Rows))
            notes.Add((place, $"the table has {table.Rows.Length} rows, the piece {piece.Shape.Parts.Sum(p => p.Rows)}"));
        var (before, partBefore) = (0, "");
        foreach (var cells in table.Rows)
        {
            var label = ShapedRow().Match(cells[0]);
            var number = label.Success ? int.Parse(label.Groups["n"].Value, CultureInfo.InvariantCulture) : 0;
            var face = number % 2 == 1 ? "RS" : "WS";
            if (label.Groups["face"].Value != face || PartOf(piece, number - 1, label.Groups["part"]) is not { } part)
            {
                notes.Add((place, $"{cells[0]} names no row of the piece"));
                continue;
            }
            var stitches = piece.Shape.Parts[part].Outline.At(number - 1 - piece.Shape.Parts[part].FirstRow).Units;
            var width = before > 0 && before != stitches && partBefore == label.Groups["part"].Value ? $"now {stitches}" : $"{stitches}";
            if (cells[^1] != width)
                notes.Add((place, $"row {cells[0]}: “{cells[^1]}” stitches in the text, “{width}” in the piece"));
            (before, partBefore) = (stitches, label.Groups["part"].Value);
            var runs = Short(plan, Runs(plan, piece, part, number - 1));
            string[] planned = [runs[0], runs.Count > 2 ? runs[1] : "–", runs.Count > 1 ? runs[^1] : "–"];
            for (var i = 0; i < planned.Length; i++)
            {
                if (Short(cells[i + 1]) != planned[i])
                    notes.Add((place, $"row {cells[0]}: {cells[i + 1]} in the text, {planned[i]} in the yarn"));
            }
        }
    }

    /// <summary>
    /// The part that has a row: the one that is named, or else the one that is worked without a cut from the foundation on.
    /// </summary>
    private static int? PartOf(PiecePlan piece, int row, Group name)
    {
        for (var i = 0; i < piece.Shape!.Parts.Length; i++)
        {
            var part = piece.Shape.Parts[i];
            if (row >= part.FirstRow && row < part.FirstRow + part.Rows
                && (name.Success ? PartNames.Of(part) == name.Value : part.Below is null || part.Continues))
                return i;
        }
        return null;
    }

    private static void Strip(
        Plan plan, PiecePlan piece, string size, ReadBooklet read, string place, List<(string Place, string Text)> notes)
    {
        var rows = read.Lines.Select(l => StripRows().Match(l.Line)).FirstOrDefault(m => m.Success)?.Groups["n"].Value;
        var strips = read.Lines.Where(l => l.Part == "Test strip" && l.Line.StartsWith("- ", StringComparison.Ordinal))
            .Select(l => (Line: l.Line[2..], Ends: l.Line[2..].IndexOf(": begins with ", StringComparison.Ordinal)))
            .Where(l => l.Ends > 0 && (read.Sizes.Length == 1
                ? l.Line[..l.Ends].Split(" and ").Contains(piece.Name) : Serves(l.Line[..l.Ends], piece.Name, size)))
            .Select(l => l.Line[(l.Ends + 2)..]).ToArray();
        var runs = int.TryParse(rows, NumberStyles.None, CultureInfo.InvariantCulture, out var row) && row > 0
            ? piece.Shape is null ? Runs(plan, piece, row - 1) : Runs(plan, piece, 0, row - 1) : [];
        var colours = ColourNames.Of(plan);
        if (runs.Count == 0 || strips is not [var strip]
            || strip != $"begins with {runs[0].Units} of {colours[runs[0].Section]}, ends with {runs[^1].Units} of {colours[runs[^1].Section]}.")
            notes.Add((place, $"the test strip does not say {string.Join(" and ", Short(plan, runs).Where((_, i) => i == 0 || i == runs.Count - 1))}"));
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
        var chain = fabric.ChainCountsAsStitch ? ColourRing.ToMicro(piece.TurnCost) : 0;
        var units = piece.RowStitches[row % piece.RowStitches.Length] / fabric.Stitch.StitchesPerUnit;
        return Runs(plan, PlaceOf(plan, piece, row) - chain, units, chain);
    }

    /// <summary>Where the row's first stitch lies along the yarn, past a turning chain that counts.</summary>
    internal static long PlaceOf(Plan plan, PiecePlan piece, int row)
    {
        var at = ColourRing.ToMicro(piece.Start);
        for (var before = 0; before < row; before++)
            at += piece.RowStitches[before % piece.RowStitches.Length] * (ColourRing.Unit / plan.Project.Fabric.Stitch.StitchesPerUnit)
                + ColourRing.ToMicro(piece.TurnCost);
        return at;
    }

    /// <summary>
    /// The same of a shaped piece: a part that is joined on begins where a piece without cuts would be, so many rows below and stitches
    /// before.
    /// </summary>
    private static List<(int Section, int Units)> Runs(Plan plan, PiecePlan piece, int index, int row)
    {
        var part = piece.Shape!.Parts[index];
        var chain = plan.Project.Fabric.ChainCountsAsStitch ? ColourRing.ToMicro(piece.TurnCost) : 0;
        return Runs(plan, PlaceOf(piece, index, row) - chain, part.Outline.At(row - part.FirstRow).Units, chain);
    }

    /// <inheritdoc cref="PlaceOf(Plan, PiecePlan, int)"/>
    private static long PlaceOf(PiecePlan piece, int index, int row)
    {
        var turn = ColourRing.ToMicro(piece.TurnCost);
        var first = index;
        while (piece.Shape!.Parts[first].Continues)
            first--;
        var begin = piece.Shape.Parts[first].FirstRow;
        var joined = piece.Shape.Parts[first].Outline.At(0);
        var at = ColourRing.ToMicro(piece.Start) + begin * (piece.Stitches * ColourRing.Unit + turn)
            + (begin % 2 == 0 ? joined.First : piece.Stitches - 1 - joined.Last) * ColourRing.Unit;
        for (var one = first; one <= index; one++)
        {
            var below = piece.Shape.Parts[one];
            for (var before = below.FirstRow; before < Math.Min(row, below.FirstRow + below.Rows); before++)
                at += below.Outline.At(before - below.FirstRow).Units * ColourRing.Unit + turn;
        }
        return at;
    }

    /// <summary>The first two runs and the last of so many stitches; fewer where there are fewer.</summary>
    private static List<(int Section, int Units)> Runs(Plan plan, long at, int units, long chain)
    {
        var ring = plan.Sequence.Ring;
        var runs = new List<(int Section, int Units)>();
        var unit = 0;
        while (unit < units && runs.Count < 3)
        {
            var (section, first) = (At(unit), unit);
            while (unit < units && ring.Colours[At(unit)] == ring.Colours[section])
                unit++;
            runs.Add((section, unit - first));
        }
        if (runs.Count < 3 || unit == units)
            return runs;
        var last = units - 1;
        while (ring.Colours[At(last - 1)] == ring.Colours[At(units - 1)])
            last--;
        runs[2] = (At(last), units - last);
        return runs;

        int At(int nth) => Covering(ring, at + nth * ColourRing.Unit + (nth == 0 ? 0 : chain), ColourRing.Unit + (nth == 0 ? chain : 0));
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

    [GeneratedRegex(@"^Chart \d+: (?<n>\d+(?: (?:and|to) \d+)?) stitches(?: in turn|, shaped)?(?: \((?<uses>.*)\))?$")]
    private static partial Regex Counts();

    [GeneratedRegex(@"^(?<n>\d+) \((?<face>RS|WS)\)(?:, (?<part>.+))?$")]
    private static partial Regex ShapedRow();

    [GeneratedRegex(@" After (?:row|round) \d+ they begin again as (?:row|round) 1\.$")]
    private static partial Regex Again();

    [GeneratedRegex(@"^Chart (?<n>\d+):")]
    private static partial Regex ChartNumber();

    [GeneratedRegex(@"^(?<n>\d+) (?<symbol>\S+)$")]
    private static partial Regex Run();

    [GeneratedRegex(@"^Begin (?:any|the) piece and stop after (?<n>\d+) (?:row|round)s\.")]
    private static partial Regex StripRows();
}
