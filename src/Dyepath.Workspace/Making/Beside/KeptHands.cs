using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>A maker's own figures from a log, kept on this device for her next designs.</summary>
/// <param name="From">The piece that they come from, by title and size.</param>
/// <param name="Spread">Relative standard deviation of the yarn in one stitch, in (0, 0.5].</param>
/// <param name="Memory">Stitches, in [1, 10,000].</param>
public sealed record KeptHands(string From, double Spread, double Memory)
{
    /// <summary>Under which the device keeps them.</summary>
    public const string Name = "hands";

    /// <summary>From a report that has figures.</summary>
    public static KeptHands Of(string from, HandsReport told)
    {
        ArgumentNullException.ThrowIfNull(told);
        return new KeptHands(from, told.Spread!.Value.Value, Math.Clamp(told.Memory!.Value.Value, 1, 10_000));
    }

    /// <summary>As the device kept them; null where it has none that can be read.</summary>
    public static KeptHands? Read(string? json)
    {
        try
        {
            var read = json is null ? null : JsonSerializer.Deserialize(json, BesideJson.Default.KeptHands);
            return read is { From: not null, Spread: > 0 and <= 0.5, Memory: >= 1 and <= 10_000 } ? read : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>As JSON, for <see cref="Read"/>.</summary>
    public string Write() => JsonSerializer.Serialize(this, BesideJson.Default.KeptHands);

    /// <summary>As a design writes them.</summary>
    public string SpreadText => string.Create(CultureInfo.InvariantCulture, $"{Spread * 100:0.##} %");

    /// <summary>As a design writes them, such as <c>50 stitches</c>.</summary>
    public string MemoryText => string.Create(CultureInfo.InvariantCulture, $"{Memory:0.#} stitches");

    /// <summary>Whether a design has these hands already.</summary>
    public bool AreIn(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Typed("fabric.hands.spread") == SpreadText && document.Typed("fabric.hands.memory") == MemoryText;
    }

    /// <summary>Writes them into a design, in place of those that it has.</summary>
    public void PutInto(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        document.Set("fabric.hands", new JsonObject { ["spread"] = SpreadText, ["memory"] = MemoryText });
    }
}
