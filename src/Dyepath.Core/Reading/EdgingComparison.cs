using System.Globalization;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Reading;

/// <summary>Edgings as read against edgings as planned.</summary>
internal static class EdgingComparison
{
    public static void Compare(Construction garment, SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var edgings = read.Edgings.Where(e => e.Size == size.Name).ToArray();
        if (edgings.Length != size.Edgings.Length)
        {
            notes.Add((size.Name, $"the text has {edgings.Length} edgings, the plan {size.Edgings.Length}"));
            return;
        }
        foreach (var (said, planned) in edgings.Zip(size.Edgings))
        {
            var place = $"{size.Name}, {PlaceWords.Of(planned.Where)}";
            if ((said.Place, said.Copies, said.PickUp, said.Rounds)
                != (PlaceWords.Of(planned.Where), planned.Copies, planned.PickUp, planned.Rounds))
                notes.Add((place, $"the text picks up {said.PickUp} for {said.Rounds} rounds, {said.Copies} times; the plan {planned.PickUp}, {planned.Rounds}, {planned.Copies}"));
            var rule = PickUpWords.Text(planned.Spread);
            if (said.Rule != rule)
                notes.Add((place, $"the rule is “{said.Rule}” in the text, “{rule}” in the plan"));
            var other = planned.Other is { } second ? PickUpWords.Text(second) : null;
            if (said.OtherRule is not null ? said.OtherRule != other : planned.Other is { } unsaid && unsaid.Total != planned.PickUp)
                notes.Add((place, $"the other one's rule is “{said.OtherRule}” in the text, “{other}” in the plan"));
            if (said.Corners != planned.Corners)
                notes.Add((place, $"the text has {said.Corners.Outer} corners and {said.Corners.Inner} inner ones, the plan {planned.Corners.Outer} and {planned.Corners.Inner}"));
            // Round by round: picking up is the first, and a round of another stitch than single crochet goes into every stitch.
            var sides = said.Corners.Outer - said.Corners.Inner;
            var last = said.PickUp;
            var widening = said.Rounds - (EdgingLibrary.Find(planned.Edging).LastKeepsCount ? 1 : 0);
            for (var round = 2; round <= widening; round++)
                last += 2 * sides;
            if (said.LastCount is { } counted && counted != last || said.LastCount is null && sides != 0)
                notes.Add((place, $"the text has {said.LastCount?.ToString(CultureInfo.InvariantCulture) ?? "no"} stitches in the last round, its corners make {last}"));
            Buttonholes(garment, planned, said, place, notes);
            Widths(garment, size, planned, said, place, notes);
            if (said.Followed != planned.PickUp || said.Total != planned.PickUp)
                notes.Add((place, $"the rule makes {said.Followed} and says {said.Total}, the plan picks up {planned.PickUp}"));
        }
    }

    /// <summary>Of a band that closes: as many holes worked as counted, in its middle row, over all of its stitches.</summary>
    private static void Buttonholes(
        Construction garment, EdgingPlan planned, ReadEdging said, string place, List<(string Place, string Text)> notes)
    {
        var closes = garment.Edgings.First(e => e.Place == planned.Where).Closes is not null;
        if (said.Buttonholes is not { } holes)
        {
            if (closes && planned.PickUp > 40)
                notes.Add((place, "the text has no buttonholes"));
            return;
        }
        if (!closes)
            notes.Add((place, "the text has buttonholes where nothing closes"));
        if (holes.Worked != holes.Holes)
            notes.Add((place, $"the text counts {holes.Holes} buttonholes, its row makes {holes.Worked}"));
        if (holes.Stitches != planned.PickUp)
            notes.Add((place, $"the row of buttonholes uses {holes.Stitches} stitches, the plan picks up {planned.PickUp}"));
        var middle = planned.Rounds / 2 + 1;
        if (holes.Row != middle || holes.WorkedRow != middle)
            notes.Add((place, $"buttonholes are in row {holes.Row} and worked in row {holes.WorkedRow}; of {planned.Rounds} rows the middle one is {middle}"));
    }

    /// <summary>An elastic sewn into a ring holds the edge in to its own length, and never out.</summary>
    public static Length Rest(Edging edging, Length edge, Length? elastic) => elastic is not { } cut ? edge * edging.Relaxed
        : Length.FromCentimetres(Math.Min(edge.Centimetres, cut.Centimetres - 2.5));

    /// <summary>
    /// A share of the girth that the edge sits at, and 2.5 cm to lap; null where it takes none, or nobody knows the girth.
    /// </summary>
    public static Length? Elastic(Construction garment, SizePlan size, EdgingPlan planned)
    {
        var held = garment.Held is { } edge && edge.Place == planned.Where ? edge : null;
        var girth = held is not null ? BodyMeasures.Key(held.Girth) : planned.Where switch
        {
            EdgingPlace.Hem => "hip",
            EdgingPlace.Waist => "waist",
            EdgingPlace.Brim => "head",
            _ => null,
        };
        return EdgingLibrary.Find(planned.Edging).ElasticShare is { } share
            && girth is not null && size.Body.TryGetValue(girth, out var around)
                ? around * (held?.Share ?? share) + Length.FromCentimetres(2.5)
                : null;
    }

    /// <summary>What is said of an edging that draws in, and of its elastic; of others nothing is said.</summary>
    private static void Widths(
        Construction garment, SizePlan size, EdgingPlan planned, ReadEdging said, string place, List<(string Place, string Text)> notes)
    {
        var edging = EdgingLibrary.Find(planned.Edging);
        var drawsIn = edging.Relaxed < 1;
        var elastic = Elastic(garment, size, planned);
        Hold("edge", said.Edge, drawsIn ? planned.Edge : null);
        Hold("width at rest", said.AtRest, drawsIn ? Rest(edging, planned.Edge, elastic) : null);
        Hold("width stretched", said.Stretched, drawsIn ? planned.StretchedWidth : null);
        Hold("elastic", said.Elastic, elastic);

        void Hold(string what, string? words, Length? length)
        {
            if (words is null != length is null || words is not null && !Amounts.Says(words, length!.Value))
                notes.Add((place, $"{what}: the text says {words ?? "nothing"}"));
        }
    }
}
