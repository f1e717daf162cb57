using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Adapting;

/// <summary>
/// What a reader's yarn makes where it does not make the pattern's piece: every other garment, as it is begun, in her size.
/// </summary>
internal static class OtherGarments
{
    /// <summary>
    /// At most <see cref="AdaptLimits.MostOffered"/>, the surest first; each is planned for the motif that it is begun with and then for
    /// bands, within a bounded effort.
    /// </summary>
    /// <param name="free">Her document of the pattern's garment.</param>
    public static ImmutableArray<OtherGarment> Of(Project free, CancellationToken cancel) =>
    [
        .. Repertoire.All.Where(kind => kind.Name != free.Garment.Shape.Name)
            .Select(kind => Planned(kind, free, kind.First.Motif, cancel) ?? Planned(kind, free, MotifKind.Bands, cancel))
            .OfType<(OtherGarment Garment, double Makers)>().OrderByDescending(g => Math.Round(g.Makers, 2)).Select(g => g.Garment)
            .Take(AdaptLimits.MostOffered),
    ];

    private static (OtherGarment Garment, double Makers)? Planned(
        GarmentKind kind, Project free, MotifKind motif, CancellationToken cancel)
    {
        var starter = StarterDocument.Of(kind);
        var project = starter with
        {
            Yarn = free.Yarn,
            Fabric = free.Fabric,
            Garment = starter.Garment with { Motif = motif },
            Companion = free.Companion ?? starter.Companion,
            Sizes = kind.IsToBody && free.Garment.Shape.IsToBody ? free.Sizes with { Overrides = [] } : starter.Sizes,
        };
        if (GarmentPlanner.Plan(project, new Effort(AdaptLimits.EffortOfOther, cancel)).Plan is not { } plan)
            return null;
        var size = plan.Sizes[plan.Sizes.Length / 2];
        var pooled = size.Pieces.Where(p => p.Pooled).ToArray();
        if (pooled.Length == 0 || OwnFit.Beyond(null, size, AdaptLimits.SameSize) is not null || !size.Worn.All(w => w.Holds)
            || !OwnFit.IsReadable(plan, size, null) || OwnFit.Makers(plan, size) is not (>= AdaptLimits.WellMade and var makers))
            return null;
        return (new OtherGarment(kind.Name, kind.Title, MotifWords.Of(pooled[0].Motif)), makers);
    }
}
