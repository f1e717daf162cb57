using System.Text;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Pattern;

/// <summary>How a plan crosses to the second runtime: as its document, which gives the same plan wherever it is planned.</summary>
internal static class PlanAnew
{
    public static string Write(Plan plan) => ProjectWriter.Write(plan.Project);

    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static Plan Read(string document) =>
        (ProjectReader.Read(Encoding.UTF8.GetBytes(document)).Project is { } project ? GarmentPlanner.Plan(project).Plan : null)
        ?? throw new InvalidOperationException("The document has no plan.");
}
