using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>
/// A chart's printed row: one entry a size, <c>28-30</c> or <c>17</c>, a point where the chart has none. A row printed
/// in one unit only has that unit in both forms, so that the other is the exact conversion.
/// </summary>
internal sealed record ChartRow(BodyMeasure Measure, Citation Source, string Inches, string Centimetres)
{
    public static ChartRow OnlyCentimetres(BodyMeasure measure, Citation source, string centimetres) =>
        new(measure, source, "", centimetres);

    public static ChartRow OnlyInches(BodyMeasure measure, Citation source, string inches) =>
        new(measure, source, inches, "");

    public ImmutableArray<BodyMeasurement?> Read()
    {
        var inches = Ranges(Inches, Length.FromInches);
        var centimetres = Ranges(Centimetres, Length.FromCentimetres);
        return
        [
            .. (centimetres.IsEmpty ? inches : centimetres).Zip(inches.IsEmpty ? centimetres : inches)
                .Select(both => both is ({ } metric, { } imperial) ? new BodyMeasurement(Measure, metric, imperial, Source) : null),
        ];
    }

    private static ImmutableArray<BodyRange?> Ranges(string row, Func<double, Length> unit) =>
        [.. row.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(entry => Range(entry, unit))];

    private static BodyRange? Range(string entry, Func<double, Length> unit)
    {
        if (entry == ".")
            return null;
        var ends = entry.Split('-').Select(end => unit(double.Parse(end, CultureInfo.InvariantCulture))).ToArray();
        return BodyRange.Between(ends[0], ends[^1]);
    }
}

internal static class ChartRows
{
    public static SizeChart Chart(
        string id, string title, Wearers wearer, Citation source, string sizeNames, ImmutableArray<ChartRow> rows)
    {
        var columns = rows.Select(row => row.Read()).ToImmutableArray();
        return new SizeChart(
            id, title, wearer, source,
            [
                .. sizeNames.Split(", ").Select((name, place) => new BodySize(
                    name, [.. columns.Select(column => column[place]).OfType<BodyMeasurement>()])),
            ]);
    }
}
