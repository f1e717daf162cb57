using Dyepath.Core.Colours;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Workspace.Draft;

/// <summary>Colours by section of the ring, the companion yarn's last, as a canvas wants them.</summary>
internal static class YarnPalette
{
    private static readonly Srgb Undyed = new(0xc9, 0xc4, 0xba);

    /// <param name="seen">How a colour appears; missing, as it is.</param>
    public static int[] Of(Plan plan, Func<Srgb, Srgb>? seen = null) => Of(plan.Project, seen);

    /// <inheritdoc cref="Of(Plan, Func{Srgb, Srgb}?)"/>
    public static int[] Of(Project project, Func<Srgb, Srgb>? seen = null)
    {
        seen ??= colour => colour;
        return [.. SequenceColour.AsWorked(project.Yarn, project.Sizes.Called).Select(c => c.Colour)
            .Append(project.Companion?.Colour ?? Undyed).Select(c => Number(seen(c)))];
    }

    public static int Number(Srgb colour) => colour.Red << 16 | colour.Green << 8 | colour.Blue;
}
