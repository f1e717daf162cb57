using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>An edge of a size, as an edging runs along it.</summary>
/// <param name="Other">Of the other one of a pair, where it is told apart.</param>
internal sealed record EdgeToEdge(EdgingEdge Edge, ImmutableArray<EdgeStretch> Stretches, ImmutableArray<EdgeStretch> Other);

/// <summary>Plans the edgings that the project asks for.</summary>
internal static class EdgingPlanner
{
    /// <summary>False where an edge has nothing to pick up, or rows so tall that no edging lies flat along them.</summary>
    /// <param name="chosen">Rounds that were chosen for this size; null: as wished.</param>
    public static bool TryPlan(
        SharedFabric shared, Direction direction, string size, IEnumerable<EdgeToEdge> edges,
        Func<EdgingPlace, int?> chosen, out ImmutableArray<EdgingPlan> edgings,
        [NotNullWhen(false)] out Finding? fault)
    {
        fault = null;
        edgings = [];
        var gauge = shared.GaugeFor(direction);
        var own = shared.EdgingGaugeFor(direction);
        var flat = own.Flat(gauge);
        var plans = ImmutableArray.CreateBuilder<EdgingPlan>();
        foreach (var (edge, along, second) in edges)
        {
            if (shared.EdgingAt(edge.Place) is not { } choice || !EdgingLibrary.TryFind(choice.Edging, out var edging))
                continue;
            ImmutableArray<EdgeStretch> stretches = [.. Ends(edge.Over.Before), .. along, .. Ends(edge.Over.After)];
            // The other one of a pair of bands runs the other way.
            ImmutableArray<EdgeStretch> others = second.IsEmpty ? [] : [.. Ends(edge.Over.After), .. second, .. Ends(edge.Over.Before)];
            if (stretches.Concat(others).FirstOrDefault(s => s.Places < 1) is { } empty)
            {
                fault = new Finding(
                    FindingLevel.Fault, "garment.seams",
                    $"Size {size}: seams leave nothing of the {EdgeWords.Of(empty.Id)} to edge: hide fewer stitches and rows in seams, or leave this edging out.");
                return false;
            }
            if (stretches.Concat(others).FirstOrDefault(s => !PickUp.Ratios.Holds(flat.Along(s.RowEnds) * edging.Draw)) is { } steep)
            {
                fault = new Finding(FindingLevel.Fault, own.IsMeasured ? "fabric.edging" : "fabric.swatch", FormattableString.Invariant(
                    $"A {(steep.RowEnds ? "row is" : "stitch is")} {flat.Along(steep.RowEnds):0.#} times as {(steep.RowEnds ? "tall" : "wide")} as a stitch of the edging is wide: no edging lies flat along it. Check the gauge, or leave edgings out."));
                return false;
            }
            var rounds = chosen(edge.Place) ?? choice.RoundsOf(edging).Wished;
            var widening = edging.CornerRounds(rounds);
            var turns = widening > 0;
            if (!turns)
                (stretches, others) = (Straight(stretches), Straight(others));
            var corners = (
                Outer: stretches.Count(s => s.Corner == EdgeCorner.Outer) + (turns && edge.PerCorner > 0 ? edge.Corners : 0),
                Inner: stretches.Count(s => s.Corner == EdgeCorner.Inner));
            var pickUp = Along(stretches);
            plans.Add(new EdgingPlan(
                edge.Place, edging.Id, edge.Copies, pickUp, rounds, edging.Depth(rounds, own.RowHeight))
            {
                Other = others.IsEmpty ? null : Along(others),
                Edge = pickUp.EdgeLength(gauge),
                Corners = corners,
            });

            PickUp Along(ImmutableArray<EdgeStretch> met) =>
                PickUp.Plan(
                    edging, met, flat, edge.Corners, edge.PerCorner, !edging.InRows, 2 * (corners.Outer - corners.Inner) * widening);
        }
        edgings = plans.ToImmutable();
        return true;

        static ImmutableArray<EdgeStretch> Straight(ImmutableArray<EdgeStretch> turning) =>
            [.. turning.Select(s => s with { Corner = null })];

        IEnumerable<EdgeStretch> Ends(EdgingPlace? place) => plans.Where(p => p.Where == place)
            .Select(p => new EdgeStretch(new StretchId.EndOf(p.Where), true, p.Rounds)
            {
                Own = (own.AlongRowEnds(own.RowHeight), own.RowHeight),
            });
    }

    /// <summary>Edgings that do not ship or may not go where they are wanted.</summary>
    public static IEnumerable<Finding> Faults(GarmentSpec garment, Construction construction, Wearers wearer)
    {
        var children = (wearer & (Wearers.Baby | Wearers.Child | Wearers.Youth)) != 0;
        var open = construction.Edgings.Where(e => e.IsOpen).Select(e => e.Place).ToHashSet();
        for (var i = 0; i < garment.Edgings.Length; i++)
        {
            var (choice, place) = (garment.Edgings[i], $"garment.edgings[{i}]");
            if (!EdgingLibrary.TryFind(choice.Edging, out var edging))
                yield return new Finding(
                    FindingLevel.Fault, $"{place}.edging",
                    $"There is no edging {choice.Edging}: choose one of {string.Join(", ", EdgingLibrary.All.Select(e => e.Id))}.");
            else if (edging.Objection(choice.Where, children) is { } objection)
                yield return new Finding(FindingLevel.Fault, $"{place}.edging", $"The {choice.Edging} edging {objection} ({EdgingPlaces.Key(choice.Where)}): choose one of {string.Join(", ", Fitting(choice.Where))}.");
            else if (edging.InRows != open.Contains(choice.Where))
                yield return new Finding(FindingLevel.Fault, $"{place}.edging", edging.InRows
                    ? $"The {choice.Edging} edging is worked in rows, and the ends of this edge meet: choose one that is worked in rounds."
                    : $"The {choice.Edging} edging is worked in rounds, and the ends of this edge do not meet: choose {string.Join(" or ", Fitting(choice.Where))}.");
            var allowed = edging?.Allowed ?? Edging.RoundCounts;
            foreach (var (rounds, field) in new[] { (choice.Rounds, "rounds"), (choice.Fewest, "fewestRounds"), (choice.Most, "mostRounds") })
            {
                if (rounds is { } count && !allowed.Holds(count))
                    yield return new Finding(FindingLevel.Fault, $"{place}.{field}", $"Give {allowed.Smallest} to {allowed.Largest} rounds.");
            }
            if (choice.Fewest > choice.Most)
                yield return new Finding(FindingLevel.Fault, $"{place}.mostRounds", $"Give at least {choice.Fewest}, as many as fewestRounds.");
        }

        IEnumerable<string> Fitting(EdgingPlace place) => EdgingLibrary.At(place, open.Contains(place), children).Select(e => e.Id);
    }
}
