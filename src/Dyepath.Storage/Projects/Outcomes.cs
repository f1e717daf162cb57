using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>What came of a change.</summary>
public abstract record ChangeOutcome
{
    private ChangeOutcome()
    {
    }

    /// <summary>It is stored.</summary>
    /// <param name="Project">As it is stored now.</param>
    public sealed record Done(ProjectSummary Project) : ChangeOutcome;

    /// <summary>Nothing was changed: somebody stored another text since, or the id is taken.</summary>
    /// <param name="Stored">As it was stored before, and is still.</param>
    public sealed record Stale(ProjectSummary Stored) : ChangeOutcome;

    /// <summary>There is no such project.</summary>
    public sealed record Missing : ChangeOutcome;
}

/// <summary>What came of deleting a project.</summary>
public enum DeleteOutcome
{
    /// <summary>It is gone, with its versions, handovers and logs.</summary>
    Deleted,

    /// <summary>It is still on the shelf: only what is in the archive is deleted.</summary>
    NotArchived,

    /// <summary>There is no such project.</summary>
    Missing,
}
