using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Contracts;

namespace Dyepath.Storage.Backup;

/// <summary>One line of a backup: exactly one of its parts.</summary>
internal sealed record BackupLine
{
    public BackupStart? Start { get; init; }

    public BackupProject? Project { get; init; }

    public BackupVersion? Version { get; init; }

    public BackupEnd? End { get; init; }
}

/// <summary>The first line.</summary>
/// <param name="Form">Which form of backup this is.</param>
internal sealed record BackupStart(int Form, DateTimeOffset TakenAt)
{
    public const int PresentForm = 1;
}

internal sealed record BackupProject(
    string Id, string Name, bool Archived, DateTimeOffset CreatedAt, DateTimeOffset UpdatedAt, int LastVersion, string Document,
    SwatchPicture? Swatch = null);

/// <summary>A version of the project of the nearest project line above.</summary>
internal sealed record BackupVersion(int Number, DateTimeOffset SavedAt, bool Kept, string Document);

/// <summary>The last line, by which a file that was cut short is known.</summary>
internal sealed record BackupEnd(int Projects, int Versions);

[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(BackupLine))]
internal sealed partial class BackupJson : JsonSerializerContext;
