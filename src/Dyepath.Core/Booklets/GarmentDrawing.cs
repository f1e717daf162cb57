using System.Collections.Immutable;

namespace Dyepath.Core.Booklets;

/// <summary>Fabric in a drawing, in centimetres; y grows downwards.</summary>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Width">As drawn, turned.</param>
/// <param name="Height">As drawn, turned.</param>
/// <param name="Columns">Cells from side to side, before they are turned.</param>
/// <param name="Rows">Cells from top to bottom, before they are turned.</param>
/// <param name="Cells">Sections, the top line first, each from left to right; <see cref="ColourChart.Blank"/> where nothing is drawn, <see cref="Plain"/> for the companion yarn.</param>
public sealed record Patch(double X, double Y, double Width, double Height, int Columns, int Rows, byte[] Cells)
{
    /// <summary>A cell in the companion yarn.</summary>
    public const byte Plain = 254;

    /// <summary>Quarter turns clockwise that its cells, held upright, are given.</summary>
    public int Turns { get; init; }
}

/// <param name="Kind">A name of a style: <c>edge</c>, <c>opening</c>, <c>edging</c>, <c>body</c>.</param>
/// <param name="Points">One after another, in centimetres.</param>
/// <param name="Closed">The last point is joined to the first.</param>
public sealed record GarmentLine(string Kind, ImmutableArray<(double X, double Y)> Points, bool Closed = true)
{
    /// <summary>As an SVG path.</summary>
    public string Path => "M" + string.Join('L', Points.Select(p => FormattableString.Invariant($"{p.X:0.###} {p.Y:0.###}"))) + (Closed ? "Z" : "");
}

/// <summary>A dimension with its witness lines, straight across or straight down.</summary>
/// <param name="X1">In centimetres.</param>
/// <param name="Y1">In centimetres.</param>
/// <param name="X2">In centimetres.</param>
/// <param name="Y2">In centimetres.</param>
/// <param name="Label">As written beside it.</param>
public sealed record DimensionMark(double X1, double Y1, double X2, double Y2, string Label)
{
    /// <summary>Runs up and down, or else across.</summary>
    public bool IsUpright => X1 == X2;
}

/// <summary>One size of a garment as worn, to scale; all in centimetres.</summary>
/// <param name="Left">Left edge of what is drawn; may be negative.</param>
/// <param name="Top">Upper edge of what is drawn; may be negative.</param>
/// <param name="Width">Of what is drawn.</param>
/// <param name="Height">Of what is drawn.</param>
/// <param name="Patches">From the back to the front.</param>
/// <param name="Outlines">From the back to the front.</param>
/// <param name="Dimensions">Measures of the finished garment.</param>
public sealed record GarmentDrawing(
    double Left, double Top, double Width, double Height, ImmutableArray<Patch> Patches, ImmutableArray<GarmentLine> Outlines,
    ImmutableArray<DimensionMark> Dimensions)
{
    /// <summary>What a sighted person sees, in one sentence.</summary>
    public required string Sentence { get; init; }

    /// <summary>As an SVG view box.</summary>
    public string ViewBox => FormattableString.Invariant($"{Left:0.###} {Top:0.###} {Width:0.###} {Height:0.###}");

    /// <summary>Style of an element that keeps the drawing's proportions.</summary>
    public string Proportions => FormattableString.Invariant($"aspect-ratio:{Width:0.##}/{Height:0.##};--ratio:{Width / Height:0.####}");

    /// <summary>It hangs on a figure of its size.</summary>
    public bool IsOnFigure => Outlines.Any(o => o.Kind == "body");
}
