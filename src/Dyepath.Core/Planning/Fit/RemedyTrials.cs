using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>The garment planned again with a change, in the direction that was chosen: what its measures come to then.</summary>
internal sealed class RemedyTrials(DirectionPlan chosen, SizeTargets targets)
{
    private static readonly ImmutableArray<Length> LetOffs = [.. new[] { 2.5, 2, 1.5, 1, 0.5, 0 }.Select(Length.FromCentimetres)];

    /// <summary>What a change has to bring to be worth its words.</summary>
    private static readonly Length Worth = Length.FromCentimetres(0.5);

    private readonly Dictionary<Length, DirectionPlan> _letOff = [];
    private readonly Dictionary<EdgingPlace, DirectionPlan?> _edged = [];

    private Layout Layout => chosen.Layout;

    /// <summary>
    /// The most that edges may be let off, so that the motif gives way there, for no size's measure to be off by more than is accepted, or
    /// else what brings it nearest; null where none brings it nearer than it is.
    /// </summary>
    public (Length LetOff, Length Furthest)? LetOff(GarmentMeasure measure, Length accepted)
    {
        var present = Layout.Construction.Groups.Max(g => g.LetOff);
        (Length, Length Furthest)? best = null;
        foreach (var letOff in LetOffs.Where(l => l < present))
        {
            if (Nearer(LetOffBy(letOff), measure) is not { } furthest)
                continue;
            if (best is null || furthest < best.Value.Furthest - Worth)
                best = (letOff, furthest);
            if (furthest <= accepted)
                break;
        }
        return best;
    }

    /// <summary>
    /// An edge of the measure that has no edging yet, and how far the furthest size is off once it has one, whose rounds make up what the
    /// counts leave; null where none brings it nearer than it is.
    /// </summary>
    public (EdgingPlace Place, string Edging, Length Furthest)? Edged(GarmentMeasure measure)
    {
        var places = Layout.Construction.Groups.SelectMany(g => new[] { g.Across, g.Down }).Where(d => d.Measure == measure)
            .SelectMany(d => d.Edgings).Distinct().Where(p => Layout.SharedFabric.EdgingAt(p) is null);
        foreach (var place in places)
        {
            if (Nearer(EdgedAt(place), measure) is { } furthest)
                return (place, Plain(place), furthest);
        }
        return null;
    }

    /// <summary>Null where there is no plan, or one that is hardly nearer.</summary>
    private Length? Nearer(DirectionPlan? plan, GarmentMeasure measure) =>
        plan is { IsFeasible: true } && Furthest(plan, measure) is var furthest && furthest < Furthest(chosen, measure) - Worth
            ? furthest : null;

    private DirectionPlan LetOffBy(Length letOff)
    {
        if (!_letOff.TryGetValue(letOff, out var plan))
        {
            var construction = Layout.Construction;
            construction = construction with { Groups = [.. construction.Groups.Select(g => g with { LetOff = letOff })] };
            _letOff[letOff] = plan = Plan(Layout.SharedFabric, construction);
        }
        return plan;
    }

    private DirectionPlan? EdgedAt(EdgingPlace place)
    {
        if (!_edged.TryGetValue(place, out var plan))
        {
            var garment = Layout.SharedFabric.Project.Garment;
            garment = garment with { Edgings = garment.Edgings.Add(new EdgingChoice(place, Plain(place), null)) };
            var shared = Layout.SharedFabric.With(Layout.SharedFabric.Project with { Garment = garment });
            var faults = EdgingPlanner.Faults(garment, Layout.Construction, targets.Sizes.Wearer);
            var fits = faults.All(f => f.Level != FindingLevel.Fault);
            _edged[place] = plan = fits ? Plan(shared, garment.Shape.Construct(garment)) : null;
        }
        return plan;
    }

    private DirectionPlan Plan(SharedFabric shared, Construction construction) =>
        new DirectionPlanner(new Layout(shared, construction, chosen.Direction), targets).Plan();

    /// <summary>Rounds of single crochet, or rows where the edge is open.</summary>
    private string Plain(EdgingPlace place) => Layout.Construction.Edgings.Any(e => e.Place == place && e.IsOpen) ? "sc-rows" : "sc";

    private static Length Furthest(DirectionPlan plan, GarmentMeasure measure) =>
        plan.Finished.Zip(plan.Targets, (finished, target) => new FitError("", measure, finished[measure] - target[measure]).Off).Max();
}
