using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>A garment planned in one direction: every size's counts, and how well they fit.</summary>
/// <param name="Sizes">By size, then by group.</param>
/// <param name="Targets">By size: targets of the measures that the construction names.</param>
/// <param name="Score">Centimetres of misfit, with what counts, the motif's weakness and what is lost of it are worth; less is better.</param>
internal sealed record DirectionPlan(
    Layout Layout,
    ImmutableArray<ImmutableArray<GroupCounts>> Sizes,
    ImmutableArray<ImmutableSortedDictionary<GarmentMeasure, Length>> Targets,
    DirectionOption Option,
    double Score)
{
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>By size: what those measures come to; none where it is not feasible.</summary>
    public ImmutableArray<ImmutableSortedDictionary<GarmentMeasure, Length>> Finished { get; init; } = [];

    /// <summary>
    /// Of cuts that are not made in any size: a depth with which they are made in all; missing where none was found.
    /// </summary>
    public ImmutableDictionary<GarmentMeasure, Lazy<DeepCut?>> CutAt { get; init; } =
        ImmutableDictionary<GarmentMeasure, Lazy<DeepCut?>>.Empty;

    /// <summary>What the whole garment was to lean, in stitches a row; missing: as fitted its first group best.</summary>
    public double? Lean { get; init; }

    public Direction Direction => Layout.Direction;

    /// <summary>That its findings speak in.</summary>
    public Units Units => Layout.SharedFabric.Project.Edition.Units;

    public bool IsFeasible => Option.Feasible;

    /// <summary>No edge that is cut breaks the motif in any size.</summary>
    public bool KeepsMotif => Sizes.All(groups => groups.All(g => g.Outlines.All(o => o.KeepsMotif)));

    /// <inheritdoc cref="DirectionOption.LostShare"/>
    public double LostShare => Option.LostShare;

    /// <summary>Share of the variegated stitches of all sizes at which the colours draw something else than the motif, 0 to 1.</summary>
    public static double LostShareOf(IEnumerable<GroupCounts> groups)
    {
        var (lost, all) = (0.0, 0.0);
        foreach (var counts in groups.Where(c => c is not null && c.Group.Pooled))
        {
            double stitches = counts.Stitches * counts.Rows;
            all += counts.Group.Pieces.Length * stitches;
            lost += counts.Outlines.Sum(o => o.LostShare * stitches);
        }
        return all == 0 ? 0 : lost / all;
    }

    /// <summary>How many of some measures, in all sizes, come out poorly.</summary>
    public int Poor(IEnumerable<GarmentMeasure> measures) =>
        measures.Sum(m => Finished.Zip(Targets).Count(s => Length.Abs(s.First[m] - s.Second[m]) > FitError.Poor));

    /// <summary>How many measures, of all sizes, come out poorly, openings included.</summary>
    public int PoorMeasures => Poor(Targets[0].Keys);

    /// <summary>How far the size furthest off is off of a measure.</summary>
    public Length Furthest(GarmentMeasure measure) =>
        Finished.Zip(Targets, (finished, target) => Length.Abs(finished[measure] - target[measure])).Max();
}
