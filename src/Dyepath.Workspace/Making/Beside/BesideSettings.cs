using System.Text.Json;
using System.Text.Json.Serialization;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>How a maker wants the page: kept on her device, for all her pieces.</summary>
public sealed record BesideSettings
{
    /// <summary>Under which the device keeps them.</summary>
    public const string Name = "beside";

    /// <summary>A tap finishes a run of one colour instead of a row.</summary>
    public bool ByRuns { get; set; }

    /// <summary>The hook is in the left hand: rows run from left to right. Missing, as the pattern says.</summary>
    public bool? LeftHook { get; set; }

    /// <summary>The device is held, or reached, with the left hand.</summary>
    public bool LeftThumb { get; set; }

    /// <summary>Rows and runs are said aloud.</summary>
    public bool Speaks { get; set; }

    /// <summary>From 0.5, slow, to 2.</summary>
    public double Rate { get; set; } = 1;

    /// <summary>The voice's own name; empty, the device's choice.</summary>
    public string Voice { get; set; } = "";

    /// <summary>The device buzzes at the end of a run or row.</summary>
    public bool Buzzes { get; set; } = true;

    /// <summary>The screen stays on while the page is in view.</summary>
    public bool StaysAwake { get; set; } = true;

    /// <summary>What the words of the advice come to was shown on a strip of her yarn.</summary>
    public bool Taught { get; set; }

    /// <summary>Letters half as large again.</summary>
    public bool Large { get; set; }

    /// <summary>As the device kept them; the usual ones where it has none that can be read.</summary>
    public static BesideSettings Read(string? json)
    {
        try
        {
            var read = json is null ? null : JsonSerializer.Deserialize(json, BesideJson.Default.BesideSettings);
            return read is null ? new BesideSettings()
                : read with { Rate = double.IsFinite(read.Rate) ? Math.Clamp(read.Rate, 0.5, 2) : 1, Voice = read.Voice ?? "" };
        }
        catch (JsonException)
        {
            return new BesideSettings();
        }
    }

    /// <summary>As JSON, for <see cref="Read"/>.</summary>
    public string Write() => JsonSerializer.Serialize(this, BesideJson.Default.BesideSettings);
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(BesideSettings))]
[JsonSerializable(typeof(KeptHands))]
internal sealed partial class BesideJson : JsonSerializerContext;
