using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Reading;

/// <summary>Numbers that stand in bullets and sentences: gauge, yarn, balls, the colours' stitches, the lean.</summary>
internal static partial class LineComparison
{
    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var (section, _, line) in read.Lines)
        {
            if (Wrong(plan, read, section, line) is { } wrong)
                notes.Add((section, $"“{line}”: {wrong}"));
        }
    }

    private static string? Wrong(Plan plan, ReadBooklet read, string section, string line)
    {
        if (Gauge().Match(line) is { Success: true } gauge)
            return GaugeWrong(plan.Project.Fabric.Swatch, gauge);
        if (Unravelled().Match(line) is { Success: true } unravelled)
        {
            var stitches = int.Parse(unravelled.Groups["n"].Value, CultureInfo.InvariantCulture);
            return Amounts.Says(unravelled.Groups["length"].Value, plan.YarnPerUnit * stitches) ? null : "is not the yarn of so many";
        }
        if (Balls().Match(line) is { Success: true } balls)
        {
            var companion = line.Contains("the companion yarn for", StringComparison.Ordinal);
            return read.Sizes.Select((name, i) => (Size: plan.Sizes.Single(s => s.Name == name), i)).All(s =>
                SizeLists.For(balls.Groups["n"].Value, s.i, read.Sizes.Length)
                    == (companion ? s.Size.Yarn.Companion!.Balls : s.Size.Yarn.BallsSafe).ToString(CultureInfo.InvariantCulture))
                ? BallWrong(companion ? plan.Project.Companion!.Ball : plan.Project.Yarn.Ball, line)
                : "the plan has other balls";
        }
        if (section == "KEEPING THE COLOURS" && Counted().Match(line) is { Success: true } counted)
        {
            var at = Symbols.Of(plan).IndexOf(counted.Groups["symbol"].Value);
            return at >= 0 && Symbols.Of(plan).Select((s, i) => (s, i)).Where(s => s.s == counted.Groups["symbol"].Value)
                .Any(s => Number(counted, "n") == Math.Round(ColourRing.ToUnits(plan.Ring.Sections[s.i]), 2)) ? null : "the plan gives it another number";
        }
        if (line.StartsWith("[Picture: The colour sequence", StringComparison.Ordinal))
        {
            var symbols = Symbols.Of(plan);
            var planned = plan.Ring.Sections.Select((s, i) => (Math.Round(ColourRing.ToUnits(s), 2), symbols[i]));
            return Run().Matches(line).Select(m => (Number(m, "n"), m.Groups["symbol"].Value)).SequenceEqual(planned) ? null : "the plan has another sequence";
        }
        if (Chart().Match(line) is { Success: true } chart)
        {
            var table = read.Tables.Where(t => t.Part.StartsWith($"Chart {chart.Groups["chart"].Value}:", StringComparison.Ordinal)).Select(t => t.Table).ToArray();
            var rows = Number(chart, "rows");
            return table.Length == 1 && rows == Number(chart, "tall") && (rows == table[0].Rows.Length || table[0].Rows.Length == 60) ? null : "its table has other rows";
        }
        if (Shift().Match(line) is { Success: true } shift)
        {
            var lean = Math.Abs(plan.Sizes[0].Pieces.First(p => p.Pooled).Lean);
            var rows = shift.Groups["two"].Success ? 2 : 1;
            var said = shift.Groups["half"].Success ? 0.5 : Number(shift, "n");
            return Math.Abs(said - rows * lean) < 0.006 ? null : "the plan leans otherwise";
        }
        return null;
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
            && Number(said, "stitches") == Math.Round(gauge.Stitches, 2)
            && Number(said, "rows") == Math.Round(gauge.Rows, 2)
            && Amounts.Says(said.Groups["over"].Value, gauge.Over) ? null : "the document has another gauge";
    }

    private static string? BallWrong(Ball ball, string line)
    {
        foreach (Match amount in Amount().Matches(line[..line.IndexOf(" a ball", StringComparison.Ordinal)]))
        {
            var value = Number(amount, "n");
            var (exact, open) = amount.Groups["unit"].Value switch
            {
                "m" => (ball.Length.Metres, 1.0),
                "yd" => (ball.Length.Inches / 36, 1),
                "g" => (ball.Mass.Grams, 1),
                _ => (ball.Mass.Ounces + 0.05, 0.1),
            };
            if (value < exact - open * (amount.Groups["unit"].Value == "oz" ? 1 : 0) - 1e-6 || value > exact + open)
                return "the document has another ball";
        }
        return null;
    }

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^- (?<state>As worked|Washed and dried|After hanging): (?<stitches>[\d.]+) stitches and (?<rows>[\d.]+) rows over (?<over>.+)\.$")]
    private static partial Regex Gauge();

    [GeneratedRegex(@"^- Yarn in (?<n>\d+) (?:stitches|pairs): (?<length>.+)\.$")]
    private static partial Regex Unravelled();

    [GeneratedRegex(@"Balls to buy: (?<n>.+)\.$")]
    private static partial Regex Balls();

    [GeneratedRegex(@"^- .* \((?<symbol>[^)]+)\): (?<n>[\d.]+) (?:stitch|stitches|pair|pairs)[,.]")]
    private static partial Regex Counted();

    [GeneratedRegex(@"(?<n>[\d.]+) of [^()]*\((?<symbol>[^)]+)\)")]
    private static partial Regex Run();

    [GeneratedRegex(@"^\[Picture: Chart (?<chart>\d+), (?:row|round)s 1 to (?<rows>\d+).*wide and (?<tall>\d+) ")]
    private static partial Regex Chart();

    [GeneratedRegex(@"each colour begins (?:(?<half>half a)|(?<n>[\d.]+)) .* than it did (?<two>two )?")]
    private static partial Regex Shift();

    [GeneratedRegex(@"(?<n>\d+(?:\.\d+)?) (?<unit>m|yd|g|oz)\b")]
    private static partial Regex Amount();
}
