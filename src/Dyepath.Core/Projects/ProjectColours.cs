using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>The colours that a project's fabric shows.</summary>
public static class ProjectColours
{
    /// <summary>Of a companion yarn that is not named.</summary>
    private static readonly Srgb Undyed = new(0xc9, 0xc4, 0xba);

    /// <summary>By section of the sequence as it is worked.</summary>
    public static ImmutableArray<Srgb> Worked(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return [.. SequenceColour.AsWorked(project.Yarn, project.Sizes.Called).Select(c => c.Colour)];
    }

    /// <summary>Of what is worked in the companion yarn.</summary>
    public static Srgb Companion(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return project.Companion?.Colour ?? Undyed;
    }
}
