using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>What came of a change.</summary>
public abstract record ChangeOutcome
{
    private ChangeOutcome()
    {
    }

    /// <summary>It is stored.</summary>
    public sealed record Done(ProjectSummary Project) : ChangeOutcome;

    /// <summary>Nothing was changed: somebody stored another text since, or the id is taken.</summary>
    public sealed record Stale(ProjectSummary Stored) : ChangeOutcome;

    /// <summary>There is no such project.</summary>
    public sealed record Missing : ChangeOutcome;
}

public enum DeleteOutcome
{
    Deleted,
    NotArchived,
    Missing,
}
