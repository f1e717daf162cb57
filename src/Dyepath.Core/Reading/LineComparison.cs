using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Reading;

/// <summary>
/// Numbers that stand in bullets and sentences: gauge, yarn, balls, the colours' stitches. Names are held against the document
/// letter by letter and only what stands around them is read, for a name may look like anything.
/// </summary>
internal static partial class LineComparison
{
    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var (section, _, line) in read.Lines)
        {
            if (Wrong(plan, read, section, line) is { } wrong)
                notes.Add((section, $"“{line}”: {wrong}"));
        }
        MaterialLines.Compare(plan, read, notes);
        Counted(plan, read, notes);
    }

    private static string? Wrong(Plan plan, ReadBooklet read, string section, string line)
    {
        if (section is "GAUGE" or "TENSION" && Gauge().Match(line) is { Success: true } gauge)
            return GaugeWrong(plan.Project.Fabric.Swatch, gauge);
        if (section is "GAUGE" or "TENSION" && Unravelled().Match(line) is { Success: true } unravelled)
        {
            return int.TryParse(unravelled.Groups["n"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var stitches)
                && Amounts.Says(unravelled.Groups["length"].Value, plan.Sequence.YarnPerUnit * stitches) ? null : "is not the yarn of so many";
        }
        if (Chart().Match(line) is { Success: true } chart)
        {
            var table = read.Tables.Where(t => t.Part.StartsWith($"Chart {chart.Groups["chart"].Value}:", StringComparison.Ordinal)).Select(t => t.Table).ToArray();
            var rows = Number(chart, "rows");
            return table.Length == 1 && rows == Number(chart, "tall") && rows == table[0].Rows.Max(RowNumber) ? null : "its table has other rows";
        }
        return null;
    }

    /// <summary>The list of the colours, one bullet for each in the order in which the yarn runs.</summary>
    private static void Counted(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        const string section = "KEEPING THE COLOURS";
        if (plan.Project.Fabric.Keeping != ColourKeeping.Counted)
            return;
        var lines = read.Lines.Where(l => l.Section == section && l.Part.Length == 0 && l.Line.StartsWith("- ", StringComparison.Ordinal))
            .Select(l => l.Line).ToArray();
        var colours = ColourNames.Of(plan);
        if (lines.Length != colours.Length)
            notes.Add((section, $"the text counts {lines.Length} colours, the plan {colours.Length}"));
        foreach (var ((line, colour), i) in lines.Zip(colours).Select((pair, i) => (pair, i)))
        {
            var lead = $"- {colour}: ";
            var said = line.StartsWith(lead, StringComparison.Ordinal) ? Units().Match(line[lead.Length..]) : Match.Empty;
            if (!said.Success)
                notes.Add((section, $"“{line}” does not say how many of {colour}"));
            else if (!Amounts.SaysRounded(Number(said, "n"), plan.Sequence.UnitsIn(i)))
                notes.Add((section, $"“{line}”: the plan gives it another number"));
        }
    }

    private static string? GaugeWrong(Swatch swatch, Match said)
    {
        var gauge = said.Groups["state"].Value switch
        {
            "As worked" => swatch.Worked,
            "Washed and dried" => swatch.Blocked,
            _ => swatch.Hung,
        };
        return gauge is not null
            && Amounts.SaysRounded(Number(said, "stitches"), gauge.Stitches)
            && Amounts.SaysRounded(Number(said, "rows"), gauge.Rows)
            && Amounts.Says(said.Groups["over"].Value, gauge.Over) ? null : "the document has another gauge";
    }

    /// <summary>“85 (RS), second side” is row 85.</summary>
    private static double RowNumber(ImmutableArray<string> cells) =>
        double.TryParse(cells[0].Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^- (?<state>As worked|Washed and dried|After hanging): (?<stitches>[0-9]+(?:\.[0-9]+)?) stitches and (?<rows>[0-9]+(?:\.[0-9]+)?) rows over (?<over>.+)\.$")]
    private static partial Regex Gauge();

    [GeneratedRegex(@"^- Yarn in (?<n>[0-9]+) (?:stitches|pairs): (?<length>.+)\.$")]
    private static partial Regex Unravelled();

    [GeneratedRegex(@"^(?<n>[0-9]+(?:\.[0-9]+)?) (?:stitch|stitches|pair|pairs)[,.]")]
    private static partial Regex Units();

    [GeneratedRegex(@"^\[Picture: Chart (?<chart>[0-9]+), (?:row|round)s 1 to (?<rows>[0-9]+).*wide and (?<tall>[0-9]+) ")]
    private static partial Regex Chart();
}
