using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Making.Store;

/// <summary>A piece under way as this device keeps it, without its log.</summary>
/// <param name="ProjectId">The project that it was begun from; missing where it came from nobody's shelf.</param>
/// <param name="Key">Of the handover that it was begun from. Such a piece is never sent by itself.</param>
/// <param name="Text">The document with an empty log; missing in a list.</param>
/// <param name="Etag">Of the host's copy that this one follows; missing where the host has none.</param>
/// <param name="Sent">Entries that the host has.</param>
/// <param name="Differs">
/// The host's copy is not merely shorter: the yarn was counted anew here, or this log was chosen over that one.
/// </param>
/// <param name="Revision">Grows whenever document or log are written anew, not with an entry.</param>
/// <param name="UpdatedAt">In a list, when its last entry was made.</param>
/// <param name="Entries">Length of its log; of a list only.</param>
public sealed record MakingHeader(
    string Id,
    string? ProjectId,
    string? Key,
    string Title,
    string Size,
    string? Text,
    string? Etag,
    int Sent,
    bool Differs,
    int Revision,
    DateTimeOffset BegunAt,
    DateTimeOffset UpdatedAt,
    int Entries = 0);

/// <param name="Entries">Its log, the oldest first.</param>
public sealed record KeptMaking(MakingHeader Header, ImmutableArray<Entry> Entries)
{
    /// <summary>As it is put on this device for the first time.</summary>
    public static KeptMaking Of(string id, MakingDocument making, DateTimeOffset now, string? projectId = null, string? key = null) => new(
        new MakingHeader(
            id, projectId, key, making.Project.Title, making.Size, Slim(making), null, 0, false, 0,
            making.Log.IsEmpty ? now : making.Log[0].At, now),
        making.Log);

    /// <summary>The document with an empty log.</summary>
    public static string Slim(MakingDocument making) => Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making with { Log = [] }));

    /// <summary>The whole document; null where it cannot be read.</summary>
    public MakingDocument? Read() =>
        Header.Text is { } text && MakingReader.Read(Encoding.UTF8.GetBytes(text)).Making is { } making ? making with { Log = Entries } : null;
}

[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(KeptMaking))]
[JsonSerializable(typeof(MakingHeader[]))]
[JsonSerializable(typeof(Entry))]
internal sealed partial class MakingJson : JsonSerializerContext;
