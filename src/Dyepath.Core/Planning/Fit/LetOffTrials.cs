using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>The garment again with cut edges let off by less, so that the motif gives way there: what its measures come to then.</summary>
internal sealed class LetOffTrials(DirectionPlan chosen, SizeTargets targets)
{
    private static readonly ImmutableArray<Length> LetOffs = [.. new[] { 2.5, 2, 1.5, 1, 0.5, 0 }.Select(Length.FromCentimetres)];

    /// <summary>What a change has to bring to be worth its words.</summary>
    private static readonly Length Worth = Length.FromCentimetres(0.5);

    private readonly Dictionary<Length, DirectionPlan> _plans = [];

    /// <summary>
    /// The most that edges may be let off so that no size's measure is off by more than is accepted, or else what brings it nearest; null
    /// where none brings it nearer than it is.
    /// </summary>
    public (Length LetOff, Length Furthest)? Nearest(GarmentMeasure measure, Length accepted)
    {
        var present = chosen.Layout.Construction.Groups.Max(g => g.LetOff);
        var (now, best) = (Furthest(chosen, measure), ((Length, Length Furthest)?)null);
        foreach (var letOff in LetOffs.Where(l => l < present))
        {
            if (Furthest(PlanAt(letOff), measure) is not { } furthest || !(furthest < now - Worth))
                continue;
            if (best is null || furthest < best.Value.Furthest - Worth)
                best = (letOff, furthest);
            if (furthest <= accepted)
                break;
        }
        return best;
    }

    private DirectionPlan PlanAt(Length letOff)
    {
        if (!_plans.TryGetValue(letOff, out var plan))
        {
            var construction = chosen.Layout.Construction;
            construction = construction with { Groups = [.. construction.Groups.Select(g => g with { LetOff = letOff })] };
            var layout = new Layout(chosen.Layout.SharedFabric, construction, chosen.Direction);
            _plans[letOff] = plan = new DirectionPlanner(layout, targets).Plan();
        }
        return plan;
    }

    /// <summary>Null where there is no plan.</summary>
    private static Length? Furthest(DirectionPlan plan, GarmentMeasure measure) => !plan.IsFeasible ? null
        : plan.Finished.Zip(plan.Targets, (finished, target) => new FitError("", measure, finished[measure] - target[measure]).Off).Max();
}
