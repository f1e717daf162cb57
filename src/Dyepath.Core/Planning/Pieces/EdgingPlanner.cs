using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>One edge of a garment: its stretches in order, its corners, and how often the garment has it.</summary>
internal sealed record EdgeOfGarment(
    EdgingPlace Where, int Copies, ImmutableArray<EdgeStretch> Stretches, int Corners = 0, int PerCorner = 0);

/// <summary>Plans the edgings that the project asks for.</summary>
internal static class EdgingPlanner
{
    /// <summary>False where an edge has nothing to pick up, or rows so tall that no edging lies flat along them.</summary>
    public static bool TryPlan(
        Fabrication fabrication, Direction direction, string size, IEnumerable<EdgeOfGarment> edges, out ImmutableArray<EdgingPlan> edgings,
        [NotNullWhen(false)] out Finding? fault)
    {
        fault = null;
        edgings = [];
        var gauge = fabrication.GaugeFor(direction);
        var flat = PickUp.FlatRatio(gauge.RowHeight, gauge.StitchWidth);
        var plans = ImmutableArray.CreateBuilder<EdgingPlan>();
        foreach (var edge in edges)
        {
            if (fabrication.EdgingAt(edge.Where) is not { } choice || !EdgingLibrary.TryFind(choice.Edging, out var edging))
                continue;
            if (edge.Stretches.FirstOrDefault(s => s.Places < 1) is { } empty)
            {
                fault = new Finding(
                    FindingLevel.Fault, "garment.seams",
                    $"Size {size}: seams leave nothing of the {empty.Name} to edge: hide fewer stitches and rows in seams, or leave this edging out.");
                return false;
            }
            if (edge.Stretches.Any(s => s.RowEnds) && !PickUp.Ratios.Holds(flat * edging.Draw))
            {
                fault = new Finding(FindingLevel.Fault, "fabric.swatch", FormattableString.Invariant(
                    $"A row is {gauge.RowHeight / gauge.StitchWidth:0.#} times as tall as a stitch is wide: no edging lies flat along such rows. Check the gauge, or leave edgings out."));
                return false;
            }
            var pickUp = PickUp.Plan(edging, edge.Stretches, flat, edge.Corners, edge.PerCorner);
            var rounds = choice.Rounds ?? edging.Rounds;
            plans.Add(new EdgingPlan(
                edge.Where, edging.Id, edge.Copies, pickUp, rounds, edging.Depth(rounds, fabrication.SingleCrochetHeight)));
        }
        edgings = plans.ToImmutable();
        return true;
    }

    /// <summary>Edgings that do not ship or may not go where they are wanted.</summary>
    public static IEnumerable<Finding> Faults(GarmentSpec garment, Wearers wearer)
    {
        var children = (wearer & (Wearers.Baby | Wearers.Child | Wearers.Youth)) != 0;
        for (var i = 0; i < garment.Edgings.Length; i++)
        {
            var (choice, place) = (garment.Edgings[i], $"garment.edgings[{i}]");
            if (!EdgingLibrary.TryFind(choice.Edging, out var edging))
                yield return new Finding(
                    FindingLevel.Fault, $"{place}.edging",
                    $"There is no edging {choice.Edging}: choose one of {string.Join(", ", EdgingLibrary.All.Select(e => e.Id))}.");
            else if (!edging.AllowedAt(choice.Where, children))
                yield return new Finding(
                    FindingLevel.Fault, $"{place}.edging",
                    $"The {choice.Edging} edging has loops, which have no place at the neck of children's garments: choose one without.");
            if (choice.Rounds is { } rounds && !Edging.RoundCounts.Holds(rounds))
                yield return new Finding(FindingLevel.Fault, $"{place}.rounds", $"Give {Edging.RoundCounts.Smallest} to {Edging.RoundCounts.Largest} rounds.");
        }
    }
}
