using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Contracts;

namespace Dyepath.Storage.Backup;

/// <summary>One line of a backup: exactly one of its parts, behind the line's hash.</summary>
internal sealed record BackupLine
{
    /// <summary>Written and held against the line by <see cref="BackupChain"/>; here so that it is known.</summary>
    public string? Hash { get; init; }

    public BackupStart? Start { get; init; }

    public BackupProject? Project { get; init; }

    public BackupVersion? Version { get; init; }

    public BackupHandover? Handover { get; init; }

    public BackupLog? Log { get; init; }

    public BackupMaking? Making { get; init; }

    public BackupCounts? End { get; init; }

    [JsonIgnore]
    public bool HasOnePart => new object?[] { Start, Project, Version, Handover, Log, Making, End }.Count(part => part is not null) == 1;
}

/// <summary>The first line.</summary>
/// <param name="Form">Which form of backup this is. The first had projects and versions only, the second no hashes.</param>
internal sealed record BackupStart(int Form, DateTimeOffset TakenAt)
{
    public const int FirstForm = 1;

    public const int FirstFormWithHashes = 3;

    public const int PresentForm = 3;
}

internal sealed record BackupProject(
    string Id, string Name, bool Archived, DateTimeOffset CreatedAt, DateTimeOffset UpdatedAt, int LastVersion, string Document)
{
    public SwatchPicture? Swatch { get; init; }
}

/// <summary>A version of the project of the nearest project line above.</summary>
internal sealed record BackupVersion(int Number, DateTimeOffset SavedAt, bool Kept, string Document, int? Edition = null);

/// <summary>A handover of the project of the nearest project line above; with its key's hash, so that the key goes on opening it.</summary>
internal sealed record BackupHandover(string Id, string Size, DateTimeOffset CreatedAt, string KeyHash, string Document);

/// <summary>A maker's log of the project of the nearest project line above, below the handover that it belongs to.</summary>
internal sealed record BackupLog(
    string Id, string MakingId, string Size, DateTimeOffset ReceivedAt, int Entries, string Document, string? HandoverId = null);

internal sealed record BackupMaking(
    string Id, string Title, string Size, int Entries, DateTimeOffset UpdatedAt, string Document, string? ProjectId = null);

/// <summary>How much of each there is; the last line of a backup, by which a file that was cut short is known.</summary>
/// <param name="Projects">On the shelf and in the archive.</param>
/// <param name="Versions">Of all projects.</param>
/// <param name="Handovers">Of all projects; 0 in the first form of backup.</param>
/// <param name="Logs">Of all handovers; 0 in the first form of backup.</param>
/// <param name="Makings">0 in the first form of backup.</param>
public sealed record BackupCounts(int Projects, int Versions, int Handovers = 0, int Logs = 0, int Makings = 0)
{
    internal BackupCounts With(BackupLine line) => new(
        Projects + One(line.Project), Versions + One(line.Version), Handovers + One(line.Handover), Logs + One(line.Log),
        Makings + One(line.Making));

    private static int One(object? part) => part is null ? 0 : 1;
}

[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false)]
[JsonSerializable(typeof(BackupLine))]
internal sealed partial class BackupJson : JsonSerializerContext;
