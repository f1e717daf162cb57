using System.Collections.Immutable;
using static Dyepath.Core.Sizing.BodyMeasure;

namespace Dyepath.Core.Sizing;

/// <summary>
/// The body charts of the Craft Yarn Council's standards, inches and centimetres as printed there: the centimetres stand
/// on a grid of half a centimetre and differ from the exact conversion by up to 0.52 cm. Women's bands leave gaps: a bust
/// of 35 in is in none. Steps are uneven (women's hip minima rise by 2, 3, 4, 4, 6, 2, 2 and 5 in, the cross back stands
/// still over 1X to 3X), so rows are never interpolated. Published experience: the upper arms run small from about
/// 40 in of bust.
/// </summary>
internal static class CraftYarnCharts
{
    private static readonly Citation QuotedByPatterns = new(
        Provenance.Published, "Craft Yarn Council standards; confirmed by published patterns that quote them");

    private static readonly Citation Excerpt = new(
        Provenance.FromMemory, "Craft Yarn Council standards, from memory; agrees with an excerpt that transcribes them");

    private static readonly Citation Memory = new(Provenance.FromMemory, "Craft Yarn Council standards, from memory");

    public static ImmutableArray<SizeChart> All { get; } =
    [
        ChartRows.Chart("women", "Women", Wearers.Adult, Memory, "XS, S, M, L, 1X, 2X, 3X, 4X, 5X",
        [
            new(Bust, QuotedByPatterns,
                "28-30 32-34 36-38 40-42 44-46 48-50 52-54 56-58 60-62",
                "71-76 81-86 91.5-96.5 101.5-106.5 111.5-117 122-127 132-137 142-147 152-158"),
            new(Waist, Memory,
                "23-24 25-26.5 28-30 32-34 36-38 40-42 44-45 46-47 49-50",
                "58.5-61 63.5-67.5 71-76 81.5-86.5 91.5-96.5 101.5-106.5 111.5-114 116.5-119 124-127"),
            new(Hip, Memory,
                "33-34 35-36 38-40 42-44 46-48 52-53 54-55 56-57 61-62",
                "83.5-86 89-91.5 96.5-101.5 106.5-111.5 116.5-122 132-134.5 137-139.5 142-144.5 155-157"),
            new(CrossBack, Memory,
                "14-14.5 14.5-15 16-16.5 17-17.5 17.5-18 18 18 18.5 18.5",
                "35.5-37 37-38 40.5-42 43-44.5 44.5-45.5 45.5 45.5 47 47"),
            new(BackWaistLength, Memory, "16.5 17 17.25 17.5 17.75 18 18 18.5 18.5", "42 43 43.5 44.5 45 45.5 45.5 47 47"),
            new(ArmLengthToUnderarm, Memory, "16.5 17 17 17.5 17.5 18 18 18.5 18.5", "42 43 43 44.5 44.5 45.5 45.5 47 47"),
            new(UpperArm, Memory, "9.75 10.25 11 12 13.5 15.5 17 18.5 19.5", "25 26 28 30.5 34.5 39.5 43 47 49.5"),
            new(ArmholeDepth, Memory,
                "6-6.5 6.5-7 7-7.5 7.5-8 8-8.5 8.5-9 9-9.5 9.5-10 10-10.5",
                "15.5-16.5 16.5-17.5 17.5-19 19-20.5 20.5-21.5 21.5-23 23-24 24-25.5 25.5-26.5"),
            new(CentreBackNeckToCuff, Memory,
                "27-27.5 28-28.5 28.5-29 29-29.5 29-29.5 30-30.5 30.5-31 31.5-32 31.5-32",
                "68.5-70 71-72.5 72.5-73.5 73.5-75 73.5-75 76-77.5 77.5-79 80-81.5 80-81.5"),
        ]),
        ChartRows.Chart("men", "Men", Wearers.Adult, Memory, "S, M, L, XL, 2X",
        [
            new(Bust, Memory, "34-36 38-40 42-44 46-48 50-52", "86-91.5 96.5-101.5 106.5-111.5 116.5-122 127-132"),
            new(Waist, Memory, "28-30 32-34 36-38 42-44 46-48", "71-76 81.5-86.5 91.5-96.5 106.5-112 117-122"),
            new(Hip, Memory, "35-37 39-41 43-45 47-49 .", "89-94 99-104 109-114 119-124.5 ."),
            new(CrossBack, Memory, "15.5-16 16.5-17 17.5-18 18-18.5 18.5-19", "39.5-40.5 42-43 44.5-45.5 45.5-47 47-48"),
            new(BackHipLength, Memory,
                "25-25.5 26.5-26.75 27-27.25 27.5-27.75 28-28.5",
                "63.5-64.5 67.5-68 68.5-69 69.5-70.5 71-72.5"),
            new(ArmLengthToUnderarm, Memory, "18 18.5 19.5 20 20.5", "45.5 47 49.5 50.5 52"),
            new(UpperArm, Memory, "12 13 15 16 17", "30.5 33 38 40.5 43"),
            new(ArmholeDepth, Memory, "8.5-9 9-9.5 9.5-10 10-10.5 10.5-11", "21.5-23 23-24 24-25.5 25.5-26.5 26.5-28"),
            new(CentreBackNeckToCuff, Memory, "32-32.5 33-33.5 34-34.5 35-35.5 36-36.5", "81-82.5 83.5-85 86.5-87.5 89-90 91-92.5"),
        ]),
        ChartRows.Chart("youth", "Youth", Wearers.Youth, Memory, "12, 14, 16",
        [
            new(Bust, Memory, "30 31.5 32.5", "76 80 82.5"),
            new(Waist, Memory, "25 26.5 27.5", "63.5 67.5 69.5"),
            new(Hip, Memory, "31.5 33 35.5", "80 83.5 90"),
            new(CrossBack, Memory, "12 12.25 13", "30.5 31 33"),
            new(BackWaistLength, Memory, "15 15.5 16", "38 39.5 40.5"),
            new(ArmLengthToUnderarm, Memory, "15 16 16.5", "38 40.5 42"),
            new(UpperArm, Memory, "9 9.25 9.5", "23 23.5 24"),
            new(ArmholeDepth, Memory, "6.5 7 7.5", "16.5 17.5 19"),
            new(CentreBackNeckToCuff, Memory, "26 27 28", "66 68.5 71"),
        ]),
        ChartRows.Chart("child", "Child", Wearers.Child, Memory, "2, 4, 6, 8, 10",
        [
            new(Bust, Excerpt, "21 23 25 26.5 28", "53 58.5 63.5 67 71"),
            new(Waist, Memory, "21 21.5 22.5 23.5 24.5", "53.5 54.5 57 59.5 62"),
            new(Hip, Memory, "22 23.5 25 28 29.5", "56 59.5 63.5 71 75"),
            new(CrossBack, Excerpt, "9.25 9.75 10.25 10.75 11.25", "23.5 25 26 27 28.5"),
            new(BackWaistLength, Excerpt, "8.5 9.5 10.5 12.5 14", "21.5 24 26.5 31.5 35.5"),
            new(ArmLengthToUnderarm, Excerpt, "8.5 10.5 11.5 12.5 13.5", "21.5 26.5 29 31.5 34.5"),
            new(UpperArm, Excerpt, "7 7.5 8 8.5 8.75", "17.5 19 20.5 21.5 22"),
            new(ArmholeDepth, Excerpt, "4.25 4.75 5 5.5 6", "10.5 12 12.5 14 15.5"),
            new(CentreBackNeckToCuff, Memory, "18 19.5 20.5 22 24", "45.5 49.5 52 56 61"),
        ]),
        ChartRows.Chart("baby", "Baby", Wearers.Baby, Memory, "3 months, 6 months, 12 months, 18 months, 24 months",
        [
            new(Bust, Excerpt, "16 17 18 19 20", "40.5 43 45.5 48 50.5"),
            new(Waist, Excerpt, "18 19 20 20.5 21", "45.5 48 50.5 52 53.5"),
            new(Hip, Excerpt, "19 20 20 21 22", "48 50.5 50.5 53.5 56"),
            new(CrossBack, Excerpt, "7.25 7.75 8.25 8.5 8.75", "18.5 19.5 21 21.5 22"),
            new(BackWaistLength, Excerpt, "6 7 7.5 8 8.5", "15.5 17.5 19 20.5 21.5"),
            new(ArmLengthToUnderarm, Excerpt, "6 6.5 7.5 8 8.5", "15.5 16.5 19 20.5 21.5"),
            new(UpperArm, Excerpt, "5.5 6 6.5 7 7.5", "14 15.5 16.5 17.5 19"),
            new(ArmholeDepth, Excerpt, "3.25 3.5 3.75 4 4.25", "8.5 9 9.5 10 10.5"),
            new(CentreBackNeckToCuff, Excerpt, "10.5 11.5 12.5 14 18", "26.5 29 31.5 35.5 45.5"),
        ]),
    ];
}
