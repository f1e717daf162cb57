using System.Linq.Expressions;
using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>A project's row without its text.</summary>
internal sealed record ProjectHead(
    string Id, string Name, bool Archived, DateTimeOffset UpdatedAt, string Etag, int LastVersion, string? Swatch, string? Made)
{
    public static readonly Expression<Func<ProjectRow, ProjectHead>> Of =
        p => new ProjectHead(p.Id, p.Name, p.Archived, p.UpdatedAt, p.Etag, p.LastVersion, p.Swatch, p.Made);

    public static readonly Func<ProjectRow, ProjectHead> Read = Of.Compile();

    /// <summary>An earlier program stored names as they were typed.</summary>
    public ProjectSummary Summary =>
        new(Id, ShownName.Of(Name) is { Length: > 0 } name ? name : ProjectSummary.Untitled, Archived, UpdatedAt, Etag, StoredSwatch.Read(Swatch), Made);
}
