using System.Collections.Immutable;
using System.Globalization;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>What the maker is told between two taps.</summary>
internal static class TapWords
{
    private static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

    /// <summary>Colours listed at most before the sequence has come round.</summary>
    private const int MostListed = 8;

    public static string NotRound(ImmutableArray<string> met) => met.Length switch
    {
        0 => "Tap the colour of each stitch as you work it.",
        > MostListed => $"The colours have not come round twice yet; the last were {string.Join(", ", met[^MostListed..])}. Go on until they have.",
        _ => $"So far: {string.Join(", ", met)}. Go on until the colours have come round twice.",
    };

    public static string Of(TapReading reading, double sequence)
    {
        var round = $"The sequence has come round {Times(reading.TimesRound)}: {string.Join(", ", reading.Sections)}, about {Stitches(sequence)} in all";
        return reading.Progress switch
        {
            TapProgress.Sure => $"{round}. That is sure: {Range(reading.Estimate!.Sequence)}.",
            TapProgress.NotByTapping =>
                $"{round}. However much you tap, hands like these leave it open by more than a stitch: check the colours as you work.",
            _ => $"{round}; {More(reading)} make{(IsOne(reading) ? "s" : "")} it sure.",
        };
    }

    /// <summary>A count in words up to ten, and in figures from there on.</summary>
    public static string Number(int count) => count < Small.Length ? Small[count] : count.ToString(CultureInfo.InvariantCulture);

    private static string Range(Estimate sequence)
    {
        var (low, high) = sequence.Interval();
        return string.Create(CultureInfo.InvariantCulture, $"{low:0.0} to {high:0.0} stitches");
    }

    private static string Stitches(double count) => string.Create(CultureInfo.InvariantCulture, $"{count:0.0} stitches");

    private static string Times(int times) => times switch { 0 => "not quite once", 1 => "once", 2 => "twice", _ => $"{Number(times)} times" };

    private static bool IsOne(TapReading reading) => (reading.MoreRows > 0 ? reading.MoreRows : reading.MoreStitches) == 1;

    private static string More(TapReading reading) => reading.MoreRows > 0
        ? $"{Number(reading.MoreRows)} more row{(reading.MoreRows == 1 ? "" : "s")}"
        : $"{Number(reading.MoreStitches)} more stitch{(reading.MoreStitches == 1 ? "" : "es")}";
}
