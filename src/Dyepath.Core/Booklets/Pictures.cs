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
/// <param name="Working">Decides which rows read from the right and which from the left.</param>
/// <param name="Columns">Most units of a row.</param>
/// <param name="Rows">Rows or rounds drawn.</param>
/// <param name="Cells">Section of each unit, row after row without gaps from the first, each row from its right-hand end.</param>
/// <param name="UnitWidth">To scale.</param>
/// <param name="RowHeight">To scale, like <paramref name="UnitWidth"/>.</param>
public sealed record ColourChart(
    ImmutableArray<SequenceColour> Key,
    Working Working,
    int Columns,
    int Rows,
    ImmutableArray<byte> Cells,
    Length UnitWidth,
    Length RowHeight) : Picture
{
    /// <summary>Units in each row, at most <see cref="Columns"/>.</summary>
    public required ImmutableArray<int> RowUnits { get; init; }

    /// <summary>Column of each row's rightmost unit, in half units, so that linen rows can stand half a unit over.</summary>
    public required ImmutableArray<int> RowOffsets { get; init; }

    /// <summary>Number of the first row drawn, from 1.</summary>
    public required int FirstRow { get; init; }

    /// <summary>A cell of no stitch, between the parts of a row.</summary>
    public const byte Blank = 255;

    /// <summary>After the last row the rows come again from the first, so that a picture of the fabric may go on with them.</summary>
    public bool Repeats { get; init; }

    /// <summary>
    /// Its piece is worn with the first row at the left (for left-handed makers at the right) and the row's beginning down.
    /// </summary>
    public bool Sideways { get; init; }

    /// <summary>As worn, the rows beside those that stop short close over what they leave.</summary>
    public bool Gored { get; init; }
}

/// <summary>Pieces to scale with dimension lines; coordinates in centimetres, y down.</summary>
/// <param name="Pieces">One drawing a piece, in the order in which they are made.</param>
public sealed record Schematic(ImmutableArray<SchematicPiece> Pieces) : Picture;

/// <param name="Name">As the pattern calls the piece.</param>
/// <param name="Outline">Closed polygon in centimetres.</param>
/// <param name="Dimensions">Lines that say how long the sides are.</param>
/// <param name="Marks">Openings and other stretches of the outline that are pointed out.</param>
/// <param name="WorkedTowards">
/// Direction in which rows are added, right side facing and right-handed: (0, −1) is upwards; left-handed, left and right change places.
/// </param>
public sealed record SchematicPiece(
    Phrase Name,
    ImmutableArray<PlanePoint> Outline,
    ImmutableArray<Dimension> Dimensions,
    ImmutableArray<SchematicMark> Marks,
    PlanePoint WorkedTowards);

/// <summary>Centimetres, x right and y down.</summary>
/// <param name="X">Centimetres to the right.</param>
/// <param name="Y">Centimetres down.</param>
public readonly record struct PlanePoint(double X, double Y);

/// <summary>
/// A dimension line between two points, moved off the outline by <paramref name="Offset"/> centimetres to its left as seen walking from
/// first to second.
/// </summary>
/// <param name="From">Where the measured stretch begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Offset">Centimetres to the left as seen walking from first to second; negative: to the right.</param>
/// <param name="Label">The measure, for each size.</param>
public sealed record Dimension(PlanePoint From, PlanePoint To, double Offset, Phrase Label);

/// <summary>A heavier line on the outline, such as a neck opening.</summary>
/// <param name="From">Where the marked stretch begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Label">What it is.</param>
public sealed record SchematicMark(PlanePoint From, PlanePoint To, Phrase Label);

/// <summary>The colour sequence as a ruler, to scale along the yarn.</summary>
/// <param name="Key">Name, colour and symbol of each section, in the order in which they come off the ball.</param>
/// <param name="Units">Length of each section in units, in the same order.</param>
public sealed record YarnRuler(ImmutableArray<SequenceColour> Key, ImmutableArray<double> Units) : Picture;

/// <summary>
/// Stitches by their standard symbols, for edgings and special stitches. The first row stands at the bottom; the picture is for
/// right-handed makers and mirrored as a whole for left-handed ones.
/// </summary>
/// <param name="Symbols">Where each stitch stands.</param>
/// <param name="Labels">Words beside the stitches.</param>
public sealed record SymbolChart(ImmutableArray<PlacedSymbol> Symbols, ImmutableArray<PlacedLabel> Labels) : Picture
{
    /// <summary>Rows or rounds as they are worked.</summary>
    public ImmutableArray<ChartRow> Rows { get; init; } = [];

    /// <summary>The stitches that are worked again and again; missing where nothing repeats.</summary>
    public ChartRepeat? Repeat { get; init; }

    /// <summary>Folds, and the edge that is worked into.</summary>
    public ImmutableArray<ChartLine> Lines { get; init; } = [];
}

/// <summary>Marks of the common international set; their shapes are described in docs/symbols.md.</summary>
public enum StitchSymbol
{
    /// <summary>An oval.</summary>
    Chain,

    /// <summary>A filled dot.</summary>
    SlipStitch,

    /// <summary>A plus sign; US term.</summary>
    SingleCrochet,

    /// <summary>A T without a stroke; US term.</summary>
    HalfDoubleCrochet,

    /// <summary>A T with one stroke; US term.</summary>
    DoubleCrochet,

    /// <summary>A T with two strokes; US term.</summary>
    TrebleCrochet,

    /// <summary>A single crochet worked backwards along the edge (crab stitch).</summary>
    ReverseSingleCrochet,

    /// <summary>Chain 3, slip stitch in the stitch that the chains stand on.</summary>
    Picot,

    /// <summary>Five double crochets in one stitch, US term.</summary>
    Shell,

    /// <summary>A double crochet, a chain and a double crochet in one stitch, US term.</summary>
    VStitch,

    /// <summary>Two half doubles closed together, the first worked beyond the second.</summary>
    CrossedCluster,

    /// <summary>Single crochet in the back loop.</summary>
    BackLoopSingleCrochet,

    /// <summary>A slip stitch with a yarn over before it, in the back loop.</summary>
    BackLoopHalfDoubleSlipStitch,

    /// <summary>A bunch of strands knotted into a stitch.</summary>
    Strands,
}

/// <summary>Foot of the symbol in stitch widths right and row heights up; turned by <paramref name="Degrees"/> clockwise.</summary>
/// <param name="Symbol">What is drawn.</param>
/// <param name="X">Stitch widths to the right.</param>
/// <param name="Y">Row heights up.</param>
/// <param name="Degrees">Clockwise.</param>
public sealed record PlacedSymbol(StitchSymbol Symbol, double X, double Y, double Degrees = 0);

/// <summary>Words at a place of a symbol chart.</summary>
/// <param name="Text">As printed.</param>
/// <param name="X">Stitch widths to the right.</param>
/// <param name="Y">Row heights up.</param>
public sealed record PlacedLabel(string Text, double X, double Y);

/// <summary>Where a row goes from where it begins.</summary>
public enum ChartWay
{
    /// <summary>A row that is worked from right to left.</summary>
    Left,

    /// <summary>A row that is worked from left to right.</summary>
    Right,

    /// <summary>A row across the edge, worked away from it.</summary>
    Up,

    /// <summary>A row across the edge, worked towards it.</summary>
    Down,
}

/// <summary>A row's number, which stands where the row begins, with an arrow in the direction of work.</summary>
/// <param name="Number">From 1.</param>
/// <param name="X">Stitch widths to the right.</param>
/// <param name="Y">Row heights up.</param>
/// <param name="Way">In the direction of work, for a right-handed maker.</param>
public sealed record ChartRow(int Number, double X, double Y, ChartWay Way);

/// <summary>
/// A bracket below the repeat, from <paramref name="From"/> up to and without <paramref name="To"/>, and how many stitches it is.
/// </summary>
/// <param name="From">Stitch widths to the right.</param>
/// <param name="To">Stitch widths to the right.</param>
/// <param name="Y">Row heights up.</param>
/// <param name="Stitches">Of the edge, in one repeat.</param>
public sealed record ChartRepeat(double From, double To, double Y, int Stitches);

/// <param name="FromX">Stitch widths to the right.</param>
/// <param name="FromY">Row heights up.</param>
/// <param name="ToX">Stitch widths to the right.</param>
/// <param name="ToY">Row heights up.</param>
/// <param name="Dashed">Such as a fold; or else the edge that is worked into.</param>
public sealed record ChartLine(double FromX, double FromY, double ToX, double ToY, bool Dashed = false);
