using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Constructions;

/// <summary>What the parts of a garment must agree on, among themselves and with the companion yarn.</summary>
internal static class GarmentChecks
{
    public static void SleevesAndEdgings(Place garment, SleeveSpec? sleeves, ImmutableArray<EdgingChoice> edgings, FaultList faults)
    {
        var (misplaced, next) = sleeves is null
            ? (EdgingPlace.Cuffs, "Add sleeves, or edge the armholes.")
            : (EdgingPlace.Armholes, "Edge the cuffs, or leave the sleeves out.");
        for (var i = 0; i < edgings.Length; i++)
        {
            if (edgings[i].Where == misplaced)
            {
                faults.Meaning(
                    garment.Member("edgings").Item(i).Member("where"),
                    sleeves is null ? "armholes without sleeves" : "cuffs where there are sleeves", next);
            }
        }
    }

    public static void EdgesAreThere(
        Place garment, ImmutableArray<EdgingChoice> edgings, ImmutableArray<EdgingPlace> places, ChoiceShape<EdgingPlace> words,
        FaultList faults)
    {
        var list = garment.Member("edgings");
        for (var i = 0; i < edgings.Length; i++)
        {
            if (!places.Contains(edgings[i].Where))
            {
                var allowed = string.Join(", ", places.Select(p => DocumentPrinter.Inline(words.Write(p))));
                faults.Meaning(list.Item(i).Member("where"), allowed, "Choose an edge that this garment has.");
            }
        }
        Distinctness.Check(list, [.. edgings.Select(e => ((TextNode)words.Write(e.Where)).Text)], faults);
    }

    public static void RoundsAreInOrder(Place most, int? fewest, int? largest, FaultList faults)
    {
        if (fewest > largest)
            faults.Meaning(most, $"at least {fewest}, as many as fewestRounds", "Give more rounds, or a smaller fewestRounds.");
    }

    public static void RoundsRunUp(Place garment, Working working, Direction? direction, FaultList faults)
    {
        if (working != Working.Turned && direction == Direction.Sideways)
            faults.Meaning(garment.Member("direction"), "up or best, where it is worked in rounds", "Work it turned, or up.");
    }

    public static void CompanionIsThere(Place document, GarmentSpec garment, CompanionYarn? companion, FaultList faults)
    {
        if (companion is not null && companion.Uses.Contains(CompanionUse.PlainPieces))
            return;
        var place = document.Member("garment");
        const string missing = "no companion yarn for plain pieces";
        var next = companion is null
            ? "This is worked in a plain companion yarn: add one beside the yarn, and let it serve plain pieces."
            : "This is worked in a plain companion yarn: let the companion yarn, which stands beside the yarn, serve plain pieces too.";
        if (garment.Shape.PlainPiecesField is { } field)
            faults.Meaning(field.Split('.').Aggregate(place, (at, name) => at.Member(name)), "pieces of companion yarn only with a companion yarn for plain pieces", next, missing);
        if (garment.Grading.SideBands)
            faults.Meaning(place.Member("grading").Member("sideBands"), "true only with a companion yarn for plain pieces", next, missing);
    }

    public static void EdgingIsKnown(Place edging, string id, FaultList faults)
    {
        if (EdgingLibrary.TryFind(id, out _))
            return;
        var known = EdgingLibrary.All.Select(e => e.Id).ToArray();
        faults.Meaning(edging, string.Join(", ", known), Nearest.Suggest(id, known, "Choose one of these."));
    }
}
