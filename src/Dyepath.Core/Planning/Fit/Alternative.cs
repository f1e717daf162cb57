using Dyepath.Core.Garments;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>The same project otherwise decided, so that what a decision costs can be seen beside it.</summary>
public static class Alternative
{
    /// <summary>Worked the other way. Counts that were fixed hold for one direction only, so another lets them go.</summary>
    public static Project Worked(Project project, Direction direction)
    {
        ArgumentNullException.ThrowIfNull(project);
        var directed = project with { Garment = project.Garment with { Direction = direction } };
        return project.Garment.Direction is { } now && now != direction
            ? directed with { Sizes = WithoutCounts(project.Sizes) with { Locked = [.. project.Sizes.Locked.Where(IsNoCount)] } }
            : directed;
    }

    /// <summary>Without the counts that override the plan's own; measures and what is locked as made stay.</summary>
    public static Project Unpinned(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return project with { Sizes = WithoutCounts(project.Sizes) };
    }

    private static SizeSelection WithoutCounts(SizeSelection sizes) => sizes with { Overrides = [.. sizes.Overrides.Where(IsNoCount)] };

    private static bool IsNoCount(FixedNumber number) => number.Count is null;
}
