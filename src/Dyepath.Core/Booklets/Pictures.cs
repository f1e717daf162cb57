using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Booklets;

/// <summary>What a picture shows, free of format; Dyepath.Drawing draws it.</summary>
public abstract record Picture;

/// <summary>Colours stitch by stitch. Right-side rows read right to left (left to right for left-handed makers).</summary>
/// <param name="Key">By section of the sequence; equal colours may share a symbol.</param>
/// <param name="Cells">Section of each unit, row after row without gaps from the first, each row from its right-hand end.</param>
/// <param name="RowUnits">Units in each row, at most <paramref name="Columns"/>.</param>
/// <param name="RowOffsets">Column of each row's rightmost unit, in half units, so that linen rows can stand half a unit over.</param>
/// <param name="FirstRow">Number of the first row drawn, from 1.</param>
/// <param name="UnitWidth">To scale.</param>
public sealed record ColourChart(
    ImmutableArray<SequenceColour> Key,
    Working Working,
    int Columns,
    int Rows,
    ImmutableArray<byte> Cells,
    ImmutableArray<int> RowUnits,
    ImmutableArray<int> RowOffsets,
    int FirstRow,
    Length UnitWidth,
    Length RowHeight) : Picture
{
    /// <summary>After the last row the rows come again from the first, so that a picture of the fabric may go on with them.</summary>
    public bool Repeats { get; init; }
}

/// <summary>Pieces to scale with dimension lines; coordinates in centimetres, y down.</summary>
public sealed record Schematic(ImmutableArray<SchematicPiece> Pieces) : Picture;

/// <param name="Outline">Closed polygon in centimetres.</param>
/// <param name="WorkedTowards">
/// Direction in which rows are added, right side facing and right-handed: (0, −1) is upwards; left-handed, left and right change places.
/// </param>
public sealed record SchematicPiece(
    string Name,
    ImmutableArray<PlanePoint> Outline,
    ImmutableArray<Dimension> Dimensions,
    ImmutableArray<SchematicMark> Marks,
    PlanePoint WorkedTowards);

/// <summary>Centimetres, x right and y down.</summary>
public readonly record struct PlanePoint(double X, double Y);

/// <summary>A dimension line between two points, moved off the outline by <paramref name="Offset"/> centimetres to its left as seen walking from first to second.</summary>
public sealed record Dimension(PlanePoint From, PlanePoint To, double Offset, Phrase Label);

/// <summary>A heavier line on the outline, such as a neck opening.</summary>
public sealed record SchematicMark(PlanePoint From, PlanePoint To, Phrase Label);

/// <summary>The colour sequence as a ruler, to scale along the yarn.</summary>
public sealed record YarnRuler(ImmutableArray<SequenceColour> Key, ImmutableArray<double> Units) : Picture;

/// <summary>Stitches by their standard symbols, for edgings and special stitches.</summary>
public sealed record SymbolChart(ImmutableArray<PlacedSymbol> Symbols, ImmutableArray<PlacedLabel> Labels) : Picture;

/// <summary>Marks of the common international set; their shapes are described in docs/symbols.md.</summary>
public enum StitchSymbol
{
    Chain,
    SlipStitch,
    SingleCrochet,
    HalfDoubleCrochet,
    DoubleCrochet,
    TrebleCrochet,
    ReverseSingleCrochet,
    Picot,
    Shell,
}

/// <summary>Foot of the symbol in stitch widths right and row heights up; turned by <paramref name="Degrees"/> clockwise.</summary>
public sealed record PlacedSymbol(StitchSymbol Symbol, double X, double Y, double Degrees = 0);

public sealed record PlacedLabel(string Text, double X, double Y);
