using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Contracts;

namespace Dyepath.Client.Store;

/// <summary>A project as this device keeps it.</summary>
/// <param name="Text">The document; missing in a list.</param>
/// <param name="Etag">Of the host's text that this one follows; missing where the host has never had it.</param>
/// <param name="Dirty">Changed here since the host last had it.</param>
/// <param name="Revision">Grows with every write by any tab.</param>
public sealed record DeviceRecord(
    string Id,
    string Name,
    string? Text,
    string? Etag,
    bool Dirty,
    int Revision,
    bool Archived,
    DateTimeOffset UpdatedAt,
    SwatchPicture? Swatch);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(DeviceRecord))]
[JsonSerializable(typeof(DeviceRecord[]))]
internal sealed partial class DeviceJson : JsonSerializerContext
{
    /// <summary>Never shown as HTML, so that the photos' base64 need not be escaped sign by sign.</summary>
    public static DeviceJson Plain { get; } = new(new JsonSerializerOptions(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
}
