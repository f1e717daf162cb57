using System.Text;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Replays;

namespace Dyepath.Workspace.Pattern;

/// <summary>How a plan crosses to the second runtime: as its document, which gives the same plan wherever it is planned.</summary>
internal static class PlanAnew
{
    /// <param name="decisions">What the plan's searches found, so that they are not made again; missing, they are.</param>
    public static string Write(Plan plan, byte[]? decisions) => $"{Convert.ToBase64String(decisions ?? [])}\n{ProjectWriter.Write(plan.Project)}";

    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static Plan Read(string order)
    {
        var line = order.IndexOf('\n', StringComparison.Ordinal);
        var found = Convert.FromBase64String(order[..line]);
        using var decisions = found.Length > 0 ? Decisions.Replay(found) : null;
        return (ProjectReader.Read(Encoding.UTF8.GetBytes(order[(line + 1)..])).Project is { } project
            ? GarmentPlanner.Plan(project, decisions).Plan : null)
            ?? throw new InvalidOperationException("The document has no plan.");
    }
}
