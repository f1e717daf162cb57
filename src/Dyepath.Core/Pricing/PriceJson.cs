using System.Text.Json;

namespace Dyepath.Core.Pricing;

/// <summary>The sheet as JSON. A figure that lacks something is null, and <c>missing</c> names what.</summary>
public static class PriceJson
{
    /// <summary>One object; amounts are rounded to hundredths, hours too.</summary>
    public static void Write(Utf8JsonWriter json, PriceSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(sheet);
        json.WriteStartObject();
        json.WriteString("currency", sheet.Inputs.Currency);
        json.WriteStartObject("stitchesPerMinute");
        Range(json, sheet.Inputs.Pace.Low, sheet.Inputs.Pace.Median, sheet.Inputs.Pace.High);
        json.WriteEndObject();
        json.WriteStartArray("sizes");
        foreach (var size in sheet.Sizes)
            Size(json, size);
        json.WriteEndArray();
        json.WriteStartObject("breakEven");
        Amount(json, "perCopy", sheet.BreakEven.PerCopy);
        if (sheet.BreakEven.Copies is { } copies)
            json.WriteNumber("copies", copies);
        else
            json.WriteNull("copies");
        Missing(json, sheet.BreakEven.Missing);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Size(Utf8JsonWriter json, SizePrice size)
    {
        json.WriteStartObject();
        json.WriteString("name", size.Name);
        Work(json, "pooled", size.Work.Pooled);
        Work(json, "plain", size.Work.Plain);
        Work(json, "edgings", size.Work.Edgings);
        json.WriteNumber("seamsCm", Math.Round(size.Work.Seams.Centimetres, 1));
        json.WriteNumber("ends", size.Work.Ends);
        json.WriteNumber("singleCrochets", Math.Round(size.Work.SingleCrochets));
        json.WriteStartObject("hours");
        Range(json, size.Hours.Low, size.Hours.Median, size.Hours.High);
        json.WriteEndObject();
        json.WriteNumber("balls", size.Balls);
        Count(json, "companionBalls", size.CompanionBalls);
        Amount(json, "yarn", size.Yarn);
        json.WriteStartObject("piece");
        Amount(json, "low", size.Piece.Low);
        Amount(json, "median", size.Piece.Median);
        Amount(json, "high", size.Piece.High);
        json.WriteEndObject();
        Missing(json, size.Piece.Median.Missing);
        if (size.Kit is { } kit)
            KitOf(json, kit, size.KitYarn!);
        json.WriteEndObject();
    }

    private static void KitOf(Utf8JsonWriter json, Kit kit, Amount yarn)
    {
        json.WriteStartObject("kit");
        json.WriteNumber("people", kit.People);
        json.WriteNumber("balls", kit.Balls);
        Count(json, "companionBalls", kit.CompanionBalls);
        json.WriteNumber("hooks", kit.Hooks);
        json.WriteNumber("markers", kit.Markers);
        Count(json, "buttons", kit.Buttons);
        Amount(json, "yarn", yarn);
        json.WriteEndObject();
    }

    private static void Work(Utf8JsonWriter json, string name, Work work)
    {
        json.WriteStartObject(name);
        json.WriteNumber("stitches", work.Stitches);
        json.WriteNumber("turns", work.Turns);
        json.WriteEndObject();
    }

    private static void Range(Utf8JsonWriter json, double low, double median, double high)
    {
        json.WriteNumber("low", Math.Round(low, 2));
        json.WriteNumber("median", Math.Round(median, 2));
        json.WriteNumber("high", Math.Round(high, 2));
    }

    private static void Count(Utf8JsonWriter json, string name, int? count)
    {
        if (count is { } number)
            json.WriteNumber(name, number);
        else
            json.WriteNull(name);
    }

    private static void Amount(Utf8JsonWriter json, string name, Amount amount)
    {
        if (amount.Value is { } value)
            json.WriteNumber(name, Math.Round(value, 2, MidpointRounding.AwayFromZero));
        else
            json.WriteNull(name);
    }

    private static void Missing(Utf8JsonWriter json, IEnumerable<PriceField> missing)
    {
        json.WriteStartArray("missing");
        foreach (var field in missing)
            json.WriteStringValue(JsonNamingPolicy.CamelCase.ConvertName(field.ToString()));
        json.WriteEndArray();
    }
}
