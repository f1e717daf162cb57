using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Replays;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Work;

/// <summary>Plans off the page's thread; on it only where the browser allows no second runtime.</summary>
public sealed class Planner(IJobs jobs, Faults faults)
{
    /// <summary>There is no second runtime: while a plan is made, the page stands still.</summary>
    public bool StandsStill { get; private set; }

    /// <summary>Opens the second runtime beforehand.</summary>
    public void Warm() => faults.Watch(jobs.WarmAsync);

    /// <exception cref="JobException">It could not be worked out.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    /// <param name="read">The document, read.</param>
    public Task<Outcome> WorkOutAsync(ProjectDocument document, Outcome read, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(read);
        return read.WorkedOutAsync(document, order => SearchAsync(order, cancel));
    }

    /// <summary>A plan of a project that is no document: another direction of one, or a piece's own.</summary>
    /// <inheritdoc cref="WorkOutAsync" path="/exception"/>
    public async Task<PlanResult> PlanAsync(Project project, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(project);
        var found = await SearchAsync(PlanJob.Order(true, ProjectWriter.Write(project with { Photos = [] })), cancel);
        using var decisions = Decisions.Replay(found);
        return GarmentPlanner.Plan(project, decisions, CancellationToken.None);
    }

    /// <summary>A browser that has once had no second runtime is not asked for it again.</summary>
    private Task<byte[]> SearchAsync(string order, CancellationToken cancel) => StandsStill
        ? JobsOnPage.RunAsync(PlanJob.Name, order, _ => { }, cancel)
        : jobs.RunOrHereAsync(PlanJob.Name, order, _ => { }, cancel, () => StandsStill = true);
}
