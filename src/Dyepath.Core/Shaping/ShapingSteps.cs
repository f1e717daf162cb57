using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>What the maker does, read off the outlines.</summary>
internal static class ShapingSteps
{
    public static IEnumerable<ShapingStep> Of(ShapedPiece piece)
    {
        foreach (var part in piece.Parts)
        {
            var last = part.FirstRow + part.Rows - 1;
            if (!part.Continues)
                yield return Beginning(piece, part);
            foreach (var change in part.Changes)
                yield return Step(piece, part, change);
            if (part.Index + 1 == piece.Parts.Length || !piece.Parts[part.Index + 1].Continues)
                yield return new ShapingStep(ShapingAct.FastenOff, part.Index, last, part.EndOf(last), part.EndsAt(last), 0);
        }
    }

    private static ShapingStep Beginning(ShapedPiece piece, ShapedPart part)
    {
        var (edge, column) = (part.From, part.BeginsAt(part.FirstRow));
        var place = PlaceOf(piece, part, part.FirstRow);
        if (part.Ground is not { } ground)
            return new ShapingStep(ShapingAct.Begin, part.Index, part.FirstRow, edge, column, part.Outline.At(0).Units, place);
        var over = edge == RowEdge.Left ? ground.Last - column : column - ground.First;
        return new ShapingStep(ShapingAct.Join, part.Index, part.FirstRow, edge, column, over, place);
    }

    private static ShapingStep Step(ShapedPiece piece, ShapedPart part, RowChange change)
    {
        var units = Math.Abs(change.Shorter);
        if (change.AtBeginning)
        {
            var place = PlaceOf(piece, part, change.Row);
            return new ShapingStep(ShapingAct.SlipStitchBack, part.Index, change.Row, change.Edge, part.BeginsAt(change.Row), units, place)
            {
                Yarn = ColourRing.ToUnits(piece.Panel.PulledOver(units)),
            };
        }
        var act = change.Shorter > 0 ? ShapingAct.LeaveUnworked
            : change.OverStanding ? ShapingAct.WorkOverStanding : ShapingAct.WorkOverChains;
        return new ShapingStep(act, part.Index, change.Row, change.Edge, part.EndsAt(change.Row), units);
    }

    private static YarnPlace PlaceOf(ShapedPiece piece, ShapedPart part, int row) =>
        YarnPlace.Of(piece.Panel.Ring, part.Path.SpanOf(row - part.FirstRow, 0).From);
}
