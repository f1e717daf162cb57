using Dyepath.Core.Colours;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Workspace.Draft;

/// <summary>Colours by section of the ring, the companion yarn's last, as a canvas wants them.</summary>
internal static class YarnPalette
{
    /// <param name="seen">How a colour appears; missing, as it is.</param>
    public static int[] Of(Plan plan, Func<Srgb, Srgb>? seen = null) => Of(plan.Project, seen);

    /// <inheritdoc cref="Of(Plan, Func{Srgb, Srgb}?)"/>
    public static int[] Of(Project project, Func<Srgb, Srgb>? seen = null)
    {
        seen ??= colour => colour;
        return [.. ProjectColours.Worked(project).Append(ProjectColours.Companion(project)).Select(c => Number(seen(c)))];
    }

    public static int Number(Srgb colour) => colour.Red << 16 | colour.Green << 8 | colour.Blue;
}
