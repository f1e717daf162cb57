using System.Text;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;

namespace Dyepath.Storage.Backup;

/// <summary>Rows as lines, and lines as rows.</summary>
internal sealed class BackupRows(BackupRules rules)
{
    private readonly HashSet<string> _handovers = [];

    public static BackupLine Line(ProjectRow row) => new()
    {
        Project = new(
            row.Id, row.Name, row.Archived, row.CreatedAt, row.UpdatedAt, row.LastVersion, Text(row.Document), StoredSwatch.Read(row.Swatch)),
    };

    public static BackupLine Line(VersionRow row) => new() { Version = new(row.Number, row.SavedAt, row.Kept, Text(row.Document)) };

    public static BackupLine Line(HandoverRow row) => new()
    {
        Handover = new(row.Id, row.Size, row.CreatedAt, row.KeyHash, Text(row.Document)),
    };

    public static BackupLine Line(MakerLogRow row) => new()
    {
        Log = new(row.Id, row.MakingId, row.Size, row.ReceivedAt, row.Entries, Text(row.Document), row.HandoverId),
    };

    public static BackupLine Line(MakingRow row) => new()
    {
        Making = new(row.Id, row.Title, row.Size, row.Entries, row.UpdatedAt, Text(row.Document), row.ProjectId),
    };

    /// <summary>The line's row; null where it may not be stored.</summary>
    /// <param name="project">Id of the project that versions, handovers and logs belong to.</param>
    public object? Row(BackupLine line, string? project) => line switch
    {
        { Project: { } part } => Row(part),
        { Version: { } part } => Row(project!, part),
        { Handover: { } part } => Row(project!, part),
        { Log: { } part } => Row(project!, part),
        { Making: { } part } => Row(part),
        _ => null,
    };

    private ProjectRow? Row(BackupProject part)
    {
        var document = Bytes(part.Document);
        return !rules.IsId(part.Id) || !rules.IsProject(document) ? null : new ProjectRow
        {
            Id = part.Id,
            Name = part.Name,
            Archived = part.Archived,
            CreatedAt = part.CreatedAt.ToUniversalTime(),
            UpdatedAt = part.UpdatedAt.ToUniversalTime(),
            Etag = Draft.EtagOf(document),
            LastVersion = part.LastVersion,
            Swatch = StoredSwatch.Write(part.Swatch),
            Document = document,
        };
    }

    private VersionRow? Row(string project, BackupVersion part)
    {
        var document = Bytes(part.Document);
        return !rules.IsProject(document) ? null : new VersionRow
        {
            ProjectId = project,
            Number = part.Number,
            SavedAt = part.SavedAt.ToUniversalTime(),
            Kept = part.Kept,
            Bytes = document.Length,
            Document = document,
        };
    }

    private HandoverRow? Row(string project, BackupHandover part)
    {
        var document = Bytes(part.Document);
        return !rules.IsId(part.Id) || !rules.IsMaking(document) || !_handovers.Add(part.Id) ? null : new HandoverRow
        {
            Id = part.Id,
            ProjectId = project,
            Size = part.Size,
            CreatedAt = part.CreatedAt.ToUniversalTime(),
            KeyHash = part.KeyHash,
            Document = document,
        };
    }

    private MakerLogRow? Row(string project, BackupLog part)
    {
        var document = Bytes(part.Document);
        var hasIds = rules.IsId(part.Id) && rules.IsId(part.MakingId) && (part.HandoverId is null || _handovers.Contains(part.HandoverId));
        return !hasIds || !rules.IsMaking(document) ? null : new MakerLogRow
        {
            Id = part.Id,
            ProjectId = project,
            HandoverId = part.HandoverId,
            MakingId = part.MakingId,
            Size = part.Size,
            ReceivedAt = part.ReceivedAt.ToUniversalTime(),
            Entries = part.Entries,
            Bytes = document.Length,
            Document = document,
        };
    }

    private MakingRow? Row(BackupMaking part)
    {
        var document = Bytes(part.Document);
        var hasIds = rules.IsId(part.Id) && (part.ProjectId is null || rules.IsId(part.ProjectId));
        return !hasIds || !rules.IsMaking(document) ? null : new MakingRow
        {
            Id = part.Id,
            Title = part.Title,
            Size = part.Size,
            ProjectId = part.ProjectId,
            Entries = part.Entries,
            UpdatedAt = part.UpdatedAt.ToUniversalTime(),
            Etag = Draft.EtagOf(document),
            Document = document,
        };
    }

    private static string Text(byte[] document) => Encoding.UTF8.GetString(document);

    private static byte[] Bytes(string document) => Encoding.UTF8.GetBytes(document);
}
