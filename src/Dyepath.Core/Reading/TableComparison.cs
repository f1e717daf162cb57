using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Reading;

/// <summary>The tables by size: measurements, dimensions, yarn and seams, against the plan.</summary>
internal static class TableComparison
{
    public static void Compare(SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var (section, _, table) in read.Tables.Where(t => t.Table.Head[0] is "Size" or "Seam"))
        {
            // From the first size on: a size may be called as the first column is.
            var column = table.Head.IndexOf(size.Name, 1);
            if (column < 0)
            {
                notes.Add(($"{section}, {size.Name}", "the table has no such column"));
                continue;
            }
            foreach (var row in table.Rows)
            {
                if (row.Length != table.Head.Length)
                    notes.Add(($"{section}, {row[0]}", "a cell is missing"));
                else if (!Agrees(size, section, table.Head[0] == "Seam", row[0], row[column]))
                    notes.Add(($"{section}, {row[0]}, {size.Name}", $"the text says {row[column]}"));
            }
        }
    }

    private static bool Agrees(SizePlan size, string section, bool seam, string label, string cell)
    {
        var comma = label.LastIndexOf(", ", StringComparison.Ordinal);
        var (name, units) = comma < 0 ? (label, "") : (label[..comma], label[(comma + 2)..]);
        if (seam)
        {
            var where = label.Replace("under the ", "", StringComparison.Ordinal);
            return size.Seams.FirstOrDefault(s => s.Where == where) is { } planned
                && SizeLists.TryNumber(cell, out var jump) && Math.Abs(jump - planned.PhaseJump) <= 0.25 + 1e-6 && jump * 2 == Math.Round(jump * 2);
        }
        if (section == "MATERIALS")
            return Yarn(size, label, name, cell);
        return Length(size, name) is { } length && Amounts.Says(cell, length, units);
    }

    private static bool Yarn(SizePlan size, string label, string name, string cell)
    {
        var yarn = size.Yarn;
        bool Lengths(Length length) => Rounded(cell, label, length.Metres, length.Inches / 36, 1, 1);
        return name switch
        {
            "Length" => Lengths(yarn.Length),
            "Weight" => Rounded(cell, label, yarn.Mass.Grams, yarn.Mass.Ounces, 1, 0),
            "Companion yarn" when !label.EndsWith("balls to buy", StringComparison.Ordinal) => Lengths(yarn.Companion!.Length),
            "Companion yarn" => cell == yarn.Companion!.Balls.ToString(CultureInfo.InvariantCulture),
            "Balls" => cell == yarn.BallsTypical.ToString(CultureInfo.InvariantCulture),
            "Balls to buy" => cell == yarn.BallsSafe.ToString(CultureInfo.InvariantCulture),
            _ => false,
        };
    }

    /// <summary>In the order in which the label names its units.</summary>
    private static bool Rounded(string cell, string label, double metric, double imperial, double metricSlack, double imperialSlack)
    {
        var metricFirst = label.EndsWith(", m", StringComparison.Ordinal) || label.EndsWith(", g", StringComparison.Ordinal)
            || label.Contains(", m /", StringComparison.Ordinal) || label.Contains(", g /", StringComparison.Ordinal);
        var count = label.Contains(" / ", StringComparison.Ordinal) ? 2 : 1;
        double[] exact = metricFirst ? [metric, imperial] : [imperial, metric];
        double[] slack = metricFirst ? [metricSlack, imperialSlack] : [imperialSlack, metricSlack];
        return Amounts.SaysRoundedUp(cell, exact.AsSpan(0, count), slack.AsSpan(0, count));
    }

    private static Length? Length(SizePlan size, string name)
    {
        var girth = size.Body.ContainsKey("bust") ? "bust" : "chest";
        Length? Finished(GarmentMeasure measure) => size.Finished.TryGetValue(measure, out var value) ? value : null;
        switch (name)
        {
            case "To fit bust" or "To fit chest":
                return size.Body[name["To fit ".Length..]];
            case "Finished bust" or "Finished chest":
                return Finished(GarmentMeasure.Width);
            case "Ease at the bust" or "Ease at the chest":
                return Finished(GarmentMeasure.Width) - size.Body[girth];
            case "Width":
                return Finished(GarmentMeasure.Width);
            case "Length":
                return Finished(GarmentMeasure.Length);
            case "Armhole depth":
                return Finished(GarmentMeasure.ArmholeDepth);
            case "Neck opening, flat":
                return Finished(GarmentMeasure.NeckWidth);
            case "Sleeve, round":
                return Finished(GarmentMeasure.SleeveWidth);
            case "Sleeve length":
                return Finished(GarmentMeasure.SleeveLength);
            case "Circumference":
                return Finished(GarmentMeasure.Circumference);
            case "Height":
                return Finished(GarmentMeasure.Height);
        }
        // Lettered dimensions: “a: front and back, width”.
        var colon = name.IndexOf(": ", StringComparison.Ordinal);
        var comma = name.LastIndexOf(", ", StringComparison.Ordinal);
        if (colon < 0 || comma < colon)
            return null;
        var lengths = name[(colon + 2)..comma].Split(" and ").Select(one => size.Pieces.FirstOrDefault(p => p.Name == one))
            .Select(piece => name[(comma + 2)..] == "width" ? piece?.Width : piece?.Height).ToArray();
        return lengths.All(l => l is not null && l == lengths[0]) ? lengths[0] : null;
    }
}
