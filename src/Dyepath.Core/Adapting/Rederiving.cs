using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Adapting;

/// <summary>Why a piece cannot be had of a reader's yarn, the one that is nearest to it last.</summary>
internal enum Obstacle
{
    /// <summary>No count makes the motif and the size.</summary>
    NoPlan,

    /// <summary>A measure comes out too far off.</summary>
    OffSize,

    /// <summary>A body does not get into it.</summary>
    NotWorn,

    /// <summary>The colours draw nothing that is seen.</summary>
    Unreadable,

    /// <summary>Too few makers hold the colours.</summary>
    FewMakers,
}

/// <summary>A piece planned for a reader's own yarn, or what stands in its way.</summary>
/// <param name="Plan">Missing where something stands in the way.</param>
/// <param name="Obstacle">Means nothing where there is a plan.</param>
/// <param name="Furthest">Of <see cref="Adapting.Obstacle.OffSize"/>, what is off.</param>
/// <param name="Makers">Of <see cref="Adapting.Obstacle.FewMakers"/>, of whom it comes out well.</param>
internal sealed record OwnPiece(Plan? Plan, Obstacle Obstacle = Obstacle.NoPlan, FitError? Furthest = null, double Makers = 1);

/// <summary>
/// The size planned anew for a reader's yarn and gauge: the pattern's motif where her yarn makes it, else the next like it.
/// </summary>
internal static class Rederiving
{
    /// <summary>What is tried in turn where the pattern's own motif cannot be had.</summary>
    private static readonly ImmutableArray<MotifKind> Motifs =
        [MotifKind.Argyle, MotifKind.Steep, MotifKind.Shallow, MotifKind.EvenSlant, MotifKind.Columns, MotifKind.Bands];

    /// <param name="pattern">Of the whole pattern.</param>
    /// <param name="published">The size as it is published.</param>
    /// <param name="free">Her document, its counts free.</param>
    public static OwnPiece Find(Plan pattern, SizePlan published, Project free, CancellationToken cancel)
    {
        var wished = free.Garment.Motif;
        var fewest = Math.Min(AdaptLimits.FewestMakers, OwnFit.Makers(pattern, published) - AdaptLimits.LostMakers);
        var nearest = new OwnPiece(null);
        foreach (var motif in Motifs.Where(m => m != wished).Prepend(wished))
        {
            var planned = Ways(free, motif).Select(way => GarmentPlanner.Plan(way, cancel).Plan).OfType<Plan>().ToArray();
            foreach (var letOff in (Length[])[AdaptLimits.SameSize, AdaptLimits.LargestMiss])
            {
                foreach (var plan in planned)
                {
                    var piece = Judged((pattern, published), plan, letOff, fewest);
                    if (piece.Plan is not null)
                        return piece;
                    if (piece.Obstacle > nearest.Obstacle)
                        nearest = piece;
                }
            }
        }
        return nearest;
    }

    /// <summary>As the designer asks for it, and then worked whichever way serves.</summary>
    private static IEnumerable<Project> Ways(Project free, MotifKind motif)
    {
        var asked = free with { Garment = free.Garment with { Motif = motif } };
        yield return asked;
        if (free.Garment is { Direction: not null, Working: Working.Turned })
            yield return asked with { Garment = asked.Garment with { Direction = null } };
    }

    private static OwnPiece Judged((Plan Plan, SizePlan Size) pattern, Plan plan, Length letOff, double fewest)
    {
        var size = plan.Sizes[0];
        return OwnFit.Beyond(pattern.Size, size, letOff) is { } furthest ? new OwnPiece(null, Obstacle.OffSize, furthest)
            : !OwnFit.IsWorn(pattern.Size, size) ? new OwnPiece(null, Obstacle.NotWorn)
            : !OwnFit.IsReadable(plan, size, pattern) ? new OwnPiece(null, Obstacle.Unreadable)
            : OwnFit.Makers(plan, size) is var makers && makers < fewest ? new OwnPiece(null, Obstacle.FewMakers, Makers: makers)
            : new OwnPiece(plan);
    }
}
