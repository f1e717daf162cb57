using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>The front of the booklet: every size as worn, in its own colours, unless the designer gives a photo.</summary>
internal static class CoverOfPlan
{
    public static BookletCover Of(PatternContext context)
    {
        var plan = context.Plan;
        var (colours, companion) = (ProjectColours.Worked(plan.Project), ProjectColours.Companion(plan.Project));
        var ofCompanion = plan.Project.Companion?.Uses.Contains(CompanionUse.Edgings) == true;
        var sample = plan.Sizes.ToList().FindIndex(s => s.Name == plan.Project.Sizes.Base);
        return new BookletCover(
            colours, companion, ofCompanion ? companion : Mixed(colours),
            [.. plan.Sizes.Select(size => new Lazy<WornViews>(() => Worn(plan, size)))],
            sample >= 0 ? sample : plan.Sizes.Length / 2)
        {
            Own = [.. context.Own(WordPlaces.Cover)],
        };
    }

    private static WornViews Worn(Plan plan, SizePlan size)
    {
        var language = plan.Project.Edition.Language;
        return new(WornGarment.Front(plan, size, language), WornGarment.Behind(plan, size, language));
    }

    /// <summary>What an edging in the variegated yarn looks like from afar.</summary>
    private static Srgb Mixed(ImmutableArray<Srgb> colours) => new(
        (byte)colours.Average(c => c.Red), (byte)colours.Average(c => c.Green), (byte)colours.Average(c => c.Blue));
}
