using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Checking;

/// <summary>Picks up as a maker does, and holds it against the edges of the pieces.</summary>
internal static class EdgingCheck
{
    public static void Edging(Plan plan, SizePlan size, EdgingPlan edging, PlainFabric fabric, Disagreements notes)
    {
        if (!EdgingLibrary.TryFind(edging.Edging, out var made))
        {
            notes.Say("edging", $"There is no edging {edging.Edging}.");
            return;
        }
        var (stitches, places) = Follow(edging.Spread);
        notes.Same("pickUp", edging.PickUp, stitches);
        notes.Same("pickUp, over whole repeats", edging.PickUp % made.Multiple, 0);
        notes.Same("rule, places on the edge", places, Places(plan, size, edging.Where, fabric));
        notes.Same("depth", edging.Depth, PlainFabric.EdgingDepth(plan, edging.Where, fabric.EdgingRow), Length.FromMillimetres(0.1));
    }

    /// <summary>Stitches picked up, and places passed, by one who goes along the edge group by group.</summary>
    private static (int Stitches, int Places) Follow(PickUp spread)
    {
        var (stitches, places) = (spread.Extra, 0);
        foreach (var rule in spread.Stretches)
        {
            var left = rule.Stretch.Places;
            for (; left >= rule.Places; left -= rule.Places)
                (stitches, places) = (stitches + rule.Stitches, places + rule.Places);
            if (left > 0)
                (stitches, places) = (stitches + rule.RestStitches, places + rule.RestPlaces);
        }
        return (stitches, places);
    }

    private static int Places(Plan plan, SizePlan size, EdgingPlace where, PlainFabric fabric)
    {
        var up = plan.Direction == Direction.Up;
        int Across(PiecePlan piece) => up ? piece.Stitches - 2 * fabric.Seams.HiddenStitches : piece.Rows - 2 * fabric.Seams.HiddenRows;
        var first = size.Pieces[0];
        switch (where)
        {
            case EdgingPlace.Hem:
                var bands = first.SideBandRows == 0 ? 0 : 4 * (first.SideBandRows - fabric.Seams.HiddenRows);
                return Across(size[PieceId.Front]) + Across(size[PieceId.Back]) + bands;
            case EdgingPlace.Neck:
                return 2 * first.Opening(OpeningId.Neck).Length;
            case EdgingPlace.Armholes:
                var depth = first.Opening(OpeningId.Armhole).Length;
                return 2 * (depth - (up ? fabric.Seams.HiddenRows : fabric.Seams.HiddenStitches));
            case EdgingPlace.Cuffs:
                return Across(size[PieceId.Sleeve]);
            case EdgingPlace.Border:
                return 2 * (first.Stitches + first.Rows);
            default:
                return first.Working == Fabrics.Working.Turned ? Across(first) : first.Stitches;
        }
    }
}
