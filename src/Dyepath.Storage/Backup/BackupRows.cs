using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;

namespace Dyepath.Storage.Backup;

/// <summary>Rows as lines, and lines as rows.</summary>
internal static class BackupRows
{
    /// <param name="document">The row's own text, or the one that stands for it.</param>
    public static BackupLine Line(ProjectRow row, byte[] document) => new()
    {
        Project = new(
            row.Id, row.Name, row.Archived, row.CreatedAt, row.UpdatedAt, row.LastVersion, Text(document))
        {
            Swatch = StoredSwatch.Read(row.Swatch),
        },
    };

    public static BackupLine Line(VersionRow row) => new()
    {
        Version = new(row.Number, row.SavedAt, row.Kept, Text(row.Document), row.Edition),
    };

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

    /// <param name="line">One that <see cref="BackupOrder"/> found nothing wrong with.</param>
    /// <param name="project">Id of the project that versions, handovers and logs belong to.</param>
    public static object Row(BackupLine line, string? project) => line switch
    {
        { Project: { } part } => Row(part),
        { Version: { } part } => Row(project!, part),
        { Handover: { } part } => Row(project!, part),
        { Log: { } part } => Row(project!, part),
        { Making: { } part } => Row(part),
        _ => throw new ArgumentOutOfRangeException(nameof(line), line, "The line must hold what has a row."),
    };

    public static byte[] Bytes(string document) => Encoding.UTF8.GetBytes(document);

    private static ProjectRow Row(BackupProject part)
    {
        var document = Bytes(part.Document);
        return new ProjectRow
        {
            Id = part.Id,
            Name = ShownName.Of(part.Name),
            Archived = part.Archived,
            CreatedAt = part.CreatedAt.ToStored(),
            UpdatedAt = part.UpdatedAt.ToStored(),
            Etag = Etags.Of(document),
            LastVersion = part.LastVersion,
            Swatch = StoredSwatch.Write(part.Swatch?.IsDrawable() == true ? part.Swatch : null),
            Document = document,
        };
    }

    private static VersionRow Row(string project, BackupVersion part)
    {
        var document = Bytes(part.Document);
        return new VersionRow
        {
            ProjectId = project,
            Number = part.Number,
            SavedAt = part.SavedAt.ToStored(),
            Kept = part.Kept,
            Edition = part.Edition,
            Bytes = document.Length,
            Document = document,
        };
    }

    private static HandoverRow Row(string project, BackupHandover part) => new()
    {
        Id = part.Id,
        ProjectId = project,
        Size = ShownName.Of(part.Size),
        CreatedAt = part.CreatedAt.ToStored(),
        KeyHash = part.KeyHash,
        Document = Bytes(part.Document),
    };

    private static MakerLogRow Row(string project, BackupLog part)
    {
        var document = Bytes(part.Document);
        return new MakerLogRow
        {
            Id = part.Id,
            ProjectId = project,
            HandoverId = part.HandoverId,
            MakingId = part.MakingId,
            Size = ShownName.Of(part.Size),
            ReceivedAt = part.ReceivedAt.ToStored(),
            Entries = part.Entries,
            Bytes = document.Length,
            Document = document,
        };
    }

    private static MakingRow Row(BackupMaking part)
    {
        var document = Bytes(part.Document);
        return new MakingRow
        {
            Id = part.Id,
            Title = ShownName.Of(part.Title),
            Size = ShownName.Of(part.Size),
            ProjectId = part.ProjectId,
            Entries = part.Entries,
            UpdatedAt = part.UpdatedAt.ToStored(),
            Etag = Etags.Of(document),
            Document = document,
        };
    }

    private static string Text(byte[] document) => Encoding.UTF8.GetString(document);
}
