using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>What is known of one pooling unit of a pooled piece.</summary>
/// <param name="Row">From 1.</param>
/// <param name="RightSide">Worked with the side outwards that odd rows show.</param>
/// <param name="Column">From 1, counted from the right-hand edge of the row, right side facing.</param>
/// <param name="Order">From 1, in the order in which the row is worked.</param>
/// <param name="Section">The section that it shows.</param>
/// <param name="TwoToned">The colour that it shows covers less than three quarters of it.</param>
/// <param name="FromStart">
/// Yarn from the piece's first stitch to this one; less than nothing where a turning chain that counts begins earlier.
/// </param>
public sealed record StitchReading(int Row, bool RightSide, int Column, int Order, int Section, bool TwoToned, Length FromStart)
{
    /// <summary>As <see cref="PieceRun.Side"/> has it.</summary>
    public int? Side { get; init; }

    /// <summary>Its place in stitches, from 1, in the order in which the row is worked; the first where a unit is two.</summary>
    public int FirstStitch { get; init; }

    /// <summary>
    /// Pooling units of yarn from the unit to the nearest change of colour, before or after it; 0 where the colour changes within it or
    /// right beside it. Missing for one colour.
    /// </summary>
    public double? ToChange { get; init; }

    /// <summary>Reads the unit at a place of the piece as worn.</summary>
    /// <returns>Null where nothing is worked, or nothing in colours.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a place of the piece.</exception>
    public static StitchReading? At(Plan plan, WornPiece worn, int x, int y)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(worn);
        if (worn.UnitAt(x, y) is not { } at || worn.FabricOf(at.Row, at.Unit) is not var (firstRow, fabric, unit))
            return null;
        var path = fabric.Path;
        var row = at.Row - firstRow;
        var column = path.FirstColumns[row] + unit;
        var span = path.SpanAt(row, column);
        var backwards = path.RunsBackwards(row);
        var order = backwards ? path.Cells(row) - unit : unit + 1;
        return new StitchReading(
            at.Row + 1,
            !backwards,
            unit + 1,
            order,
            fabric.Row(row)[unit],
            fabric.IsTwoToned(row, column),
            plan.Sequence.YarnPerUnit * ColourRing.ToUnits(span.From - path.RowStart(0)))
        {
            Side = worn.Piece.Shape is { } shape ? SideOf(shape, fabric) : null,
            FirstStitch = path.StitchesPerUnit * (order - 1) + 1,
            ToChange = ToChangeOf(plan.Sequence.Ring, span),
        };
    }

    private static int? SideOf(ShapedPiece shape, Fabric fabric)
    {
        var part = shape.Parts.First(p => p.Fabric == fabric);
        while (part.Continues)
            part = shape.Parts[part.Index - 1];
        return PartNames.SideOf(part);
    }

    private static double? ToChangeOf(ColourRing ring, YarnSpan span)
    {
        long? nearest = null;
        var change = 0L;
        for (var section = 0; section < ring.Sections.Length; section++)
        {
            if (ring.Colours[section] != ring.Colours[(section + ring.Sections.Length - 1) % ring.Sections.Length])
            {
                var after = ColourRing.Modulo(change - span.From, ring.Total);
                var distance = after <= span.Length ? 0 : Math.Min(after - span.Length, ring.Total - after);
                nearest = Math.Min(nearest ?? distance, distance);
            }
            change += ring.Sections[section];
        }
        return nearest is { } micro ? ColourRing.ToUnits(micro) : null;
    }
}
