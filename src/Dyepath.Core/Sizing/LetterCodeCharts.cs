using System.Collections.Immutable;

namespace Dyepath.Core.Sizing;

/// <summary>
/// The letter codes of EN 13402-3:2004, bust or chest girth in centimetres. The bands touch: a body on a common edge is
/// in both.
/// </summary>
internal static class LetterCodeCharts
{
    private static readonly Citation Women = new(
        Provenance.FromMemory,
        "EN 13402-3:2004, letters from memory; edges 74 to 102 and 107 to 131 cm confirmed by an open statistics package");

    private static readonly Citation Men = new(Provenance.FromMemory, "EN 13402-3:2004, from memory");

    public static ImmutableArray<SizeChart> All { get; } =
    [
        ChartRows.Chart("en13402-3-women", "Women, EN 13402-3 letter codes", Wearers.Adult, Women,
            "XXS, XS, S, M, L, XL, XXL, 3XL, 4XL, 5XL",
        [
            ChartRow.OnlyCentimetres(BodyMeasure.Bust, Women, "66-74 74-82 82-90 90-98 98-107 107-119 119-131 131-143 143-155 155-167"),
        ]),
        ChartRows.Chart("en13402-3-men", "Men, EN 13402-3 letter codes", Wearers.Adult, Men,
            "XXS, XS, S, M, L, XL, XXL, 3XL",
        [
            ChartRow.OnlyCentimetres(BodyMeasure.Bust, Men, "70-78 78-86 86-94 94-102 102-110 110-118 118-129 129-141"),
        ]),
    ];
}
