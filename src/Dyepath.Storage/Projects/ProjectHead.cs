using System.Linq.Expressions;
using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>A project's row without its text.</summary>
internal sealed record ProjectHead(
    string Id, string Name, bool Archived, DateTimeOffset UpdatedAt, string Etag, int LastVersion, string? Swatch)
{
    public string? Made { get; init; }

    public static readonly Expression<Func<ProjectRow, ProjectHead>> Of =
        p => new ProjectHead(p.Id, p.Name, p.Archived, p.UpdatedAt, p.Etag, p.LastVersion, p.Swatch) { Made = p.Made };

    public static readonly Func<ProjectRow, ProjectHead> Read = Of.Compile();

    /// <summary>The name as lists and messages show it.</summary>
    public string Shown => Show(Name);

    public ProjectSummary Summary => new(Id, Shown, Archived, UpdatedAt, Etag, StoredSwatch.Read(Swatch), Made);

    /// <summary>An earlier program stored names as they were typed.</summary>
    public static string Show(string name) => ShownName.Of(name) is { Length: > 0 } shown ? shown : ProjectSummary.Untitled;
}
