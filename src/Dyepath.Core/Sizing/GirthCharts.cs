using System.Collections.Immutable;
using static Dyepath.Core.Sizing.BodyMeasure;

namespace Dyepath.Core.Sizing;

/// <summary>
/// Girths of ASTM D5585-11e1, misses sizes 00 to 20, in inches; the standard has a straight and a curvy figure that differ
/// at the waist. Its hip, arm and back lengths were not to be had, so these charts cannot grade a whole garment.
/// </summary>
internal static class GirthCharts
{
    private const string Sizes = "00, 0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20";

    private static readonly Citation Preview = new(Provenance.Published, "ASTM D5585-11e1, as far as its public preview shows");

    private static readonly ImmutableArray<ChartRow> Common =
    [
        ChartRow.OnlyInches(Bust, Preview, "31.125 31.75 33 34.125 35.25 36.25 37.25 38.75 40.375 42.125 44 46"),
        ChartRow.OnlyInches(Head, Preview, "21.25 21.25 21.5 21.5 21.75 21.75 22 22 22.25 22.25 22.5 22.5"),
        ChartRow.OnlyInches(NeckBase, Preview, "13.25 13.5 13.75 14 14.25 14.625 14.875 15.125 15.5 15.75 16 16.375"),
        ChartRow.OnlyInches(MidNeck, Preview, "12.375 12.625 12.875 13.125 13.375 13.625 13.875 14.25 14.625 15 15.5 16"),
        ChartRow.OnlyInches(Shoulders, Preview, "37.125 37.75 38.375 39 39.75 40.5 41.25 42 43 44.25 45.5 46.875"),
        ChartRow.OnlyInches(UnderBust, Preview, "25.75 26.5 27.25 28 29 30 31 32.5 34 35.75 37.625 39.625"),
        ChartRow.OnlyInches(UpperChest, Preview, "31.75 32.25 33.25 34.125 35 35.875 36.75 38 39.25 40.625 42.25 43.875"),
    ];

    public static ImmutableArray<SizeChart> All { get; } =
    [
        WithWaist("straight", "25.375 26.125 26.875 27.625 28.5 29.5 30.5 32.25 34 36 38.25 40.5"),
        WithWaist("curvy", "23.875 24.625 25.375 26.125 27 28 29 30.75 32.5 34.5 36.75 39"),
    ];

    private static SizeChart WithWaist(string figure, string waistInches) => ChartRows.Chart(
        $"astm-d5585-{figure}", $"Women, ASTM D5585 {figure} figure (girths only)", Wearers.Adult, Preview, Sizes,
        [.. Common, ChartRow.OnlyInches(Waist, Preview, waistInches)]);
}
