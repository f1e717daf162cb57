using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>Where rows go on over stitches that earlier ones left standing.</summary>
internal static class SkippedStrips
{
    public static IEnumerable<SkippedStrip> Of(ShapedPiece piece)
    {
        foreach (var part in piece.Parts)
        {
            foreach (var change in part.Changes.Where(c => c.OverStanding))
            {
                var inwards = change.Edge == RowEdge.Left ? -1 : 1;
                var (column, left) = (part.EndsAt(change.Row), -change.Shorter);
                while (left > 0)
                {
                    var skipped = Skipped(part, change.Row, column);
                    var units = 1;
                    while (units < left && Skipped(part, change.Row, column + units * inwards) == skipped)
                        units++;
                    var jump = Lean.Wrap(
                        piece.Panel.PlaceAt(change.Row, column) - piece.Panel.PlaceAt(change.Row - skipped, column), piece.Panel.Period);
                    yield return new SkippedStrip(part.Index, change.Row, change.Edge, column, units, skipped, ColourRing.ToUnits(jump));
                    (column, left) = (column + units * inwards, left - units);
                }
            }
        }
    }

    /// <summary>Rows right below one that do not have its column.</summary>
    private static int Skipped(ShapedPart part, int row, int column)
    {
        var below = row - part.FirstRow - 1;
        while (below >= 0 && !part.Outline.Has(below, column))
            below--;
        return row - part.FirstRow - 1 - below;
    }
}
