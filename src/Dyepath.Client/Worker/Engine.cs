using Dyepath.Core.Planning;
using Dyepath.Drawing;
using Dyepath.Workspace.Worker;

namespace Dyepath.Client.Worker;

/// <summary>Which build computes: the page and its second runtime have to be the same, or figures of two versions would mix.</summary>
internal static class Engine
{
    /// <summary>What the second runtime says where it is not the page's.</summary>
    public const string IsOther = "The second runtime is of another version of Dyepath than the page.";

    /// <summary>The compiler makes a module's id from its contents.</summary>
    public static string Id { get; } = string.Join(' ',
        new[] { typeof(Engine), typeof(JobRunner), typeof(GarmentPlanner), typeof(PdfBooklet) }
            .Select(t => t.Module.ModuleVersionId.ToString("N")));
}
