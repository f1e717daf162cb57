using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Client.Draft;

/// <summary>Fabric in a drawing, in centimetres; y grows downwards.</summary>
/// <param name="Turns">Quarter turns clockwise that its cells, held upright, are given.</param>
public sealed record Patch(double X, double Y, double Width, double Height, int Columns, int Rows, int Turns, byte[] Cells);

/// <param name="Kind">A name of a style: <c>edge</c>, <c>opening</c>, <c>edging</c>, <c>body</c>.</param>
public sealed record Outline(string Kind, ImmutableArray<(double X, double Y)> Points, bool Closed = true)
{
    /// <summary>As an SVG path.</summary>
    public string Path => "M" + string.Join('L', Points.Select(p => FormattableString.Invariant($"{p.X:0.###} {p.Y:0.###}"))) + (Closed ? "Z" : "");
}

/// <summary>A dimension with its witness lines, straight across or straight down.</summary>
public sealed record DimensionMark(double X1, double Y1, double X2, double Y2, string Label)
{
    public bool IsUpright => X1 == X2;
}

/// <summary>One size of a garment as worn, seen from the front, to scale; all in centimetres.</summary>
public sealed record GarmentDrawing(
    double Left, double Top, double Width, double Height, ImmutableArray<Patch> Patches, ImmutableArray<Outline> Outlines,
    ImmutableArray<DimensionMark> Dimensions, string Sentence)
{
    private const double Margin = 9;

    /// <summary>As an SVG view box.</summary>
    public string ViewBox => FormattableString.Invariant($"{Left:0.###} {Top:0.###} {Width:0.###} {Height:0.###}");

    /// <summary>Style of an element that keeps the drawing's proportions.</summary>
    public string Proportions => FormattableString.Invariant($"aspect-ratio:{Width:0.##}/{Height:0.##}");

    public static GarmentDrawing Of(Plan plan, SizePlan size)
    {
        var picture = new Pencil(plan, size);
        return plan.Project.Garment.Shape is BoxyTop ? picture.Top() : picture.Rectangle();
    }

    /// <summary>What is drawn so far.</summary>
    private sealed class Pencil(Plan plan, SizePlan size)
    {
        private readonly ImmutableArray<Patch>.Builder _patches = ImmutableArray.CreateBuilder<Patch>();
        private readonly ImmutableArray<Outline>.Builder _outlines = ImmutableArray.CreateBuilder<Outline>();
        private readonly ImmutableArray<DimensionMark>.Builder _dimensions = ImmutableArray.CreateBuilder<DimensionMark>();

        private Units Units => plan.Project.Edition.Units;

        public GarmentDrawing Top()
        {
            var front = WornPiece.Of(plan, size[PieceId.Front]);
            var (width, height) = (front.Piece.Width.Centimetres, front.Piece.Height.Centimetres);
            var hem = Depth(EdgingPlace.Hem);
            var armhole = Math.Min(height, Finished(GarmentMeasure.ArmholeDepth));
            Body(height);
            Put(front, 0, 0, width, height, 0);
            var (left, right) = (0.0, width);
            if (size.Find(PieceId.Sleeve) is { } sleevePlan)
            {
                var sleeve = WornPiece.Of(plan, sleevePlan);
                var (half, length) = (sleevePlan.Width.Centimetres / 2, sleevePlan.Height.Centimetres);
                // Seen from the front, the half of each sleeve before the fold at the shoulder; cuffs point outwards.
                Put(Half(sleeve, first: false), -length, 0, length, half, 1);
                Put(Half(sleeve, first: true), width, 0, length, half, 3);
                var cuff = Depth(EdgingPlace.Cuffs);
                Band(-length - cuff, 0, cuff, half);
                Band(width + length, 0, cuff, half);
                (left, right) = (-length - cuff, width + length + cuff);
                Dimension(width, -4, width + length + cuff, -4, GarmentMeasure.SleeveLength);
                Dimension(right + 4, 0, right + 4, half, Wording.Say(size.Finished[GarmentMeasure.SleeveWidth], Units) + " round");
            }
            else
            {
                var edge = Depth(EdgingPlace.Armholes);
                Band(-edge, 0, edge, armhole);
                Band(width, 0, edge, armhole);
                (left, right) = (-edge, width + edge);
                Dimension(right + 4, 0, right + 4, armhole, GarmentMeasure.ArmholeDepth);
            }
            Band(0, height, width, hem);
            var neck = Finished(GarmentMeasure.NeckWidth);
            _outlines.Add(new Outline("opening", [((width - neck) / 2, 0), ((width + neck) / 2, 0)], false));
            _outlines.Add(new Outline("opening", [(0, 0), (0, armhole)], false));
            _outlines.Add(new Outline("opening", [(width, 0), (width, armhole)], false));
            Dimension((width - neck) / 2, -4, (width + neck) / 2, -4, GarmentMeasure.NeckWidth);
            Dimension(0, height + hem + 5, width, height + hem + 5, Wording.Say(size.Finished[GarmentMeasure.Width], Units) + " round");
            Dimension(left - 4, 0, left - 4, height + hem, GarmentMeasure.Length);
            return Finish(left, -24, right, height + hem);
        }

        public GarmentDrawing Rectangle()
        {
            var cowl = plan.Project.Garment.Shape is Cowl;
            var piece = WornPiece.Of(plan, size.Pieces[0]);
            // A tube lies flat: half of it is seen.
            var seen = cowl ? Half(piece, first: true) : Whole(piece);
            var (width, height) = (piece.Piece.Width.Centimetres / (cowl ? 2 : 1), piece.Piece.Height.Centimetres);
            var edge = Depth(cowl ? EdgingPlace.Brims : EdgingPlace.Border);
            var gap = Math.Max(2, 0.05 * Math.Max(width, height));
            Put(seen, 0, 0, width, height, 0);
            Band(0, -edge, width, edge);
            Band(0, height, width, edge);
            if (!cowl)
            {
                Band(-edge, -edge, edge, height + 2 * edge);
                Band(width, -edge, edge, height + 2 * edge);
            }
            var across = cowl ? GarmentMeasure.Circumference : GarmentMeasure.Width;
            var label = Wording.Say(size.Finished[across], Units) + (cowl ? " round" : "");
            Dimension(0, height + edge + gap, width, height + edge + gap, label);
            Dimension(-edge - gap, -edge, -edge - gap, height + edge, cowl ? GarmentMeasure.Height : GarmentMeasure.Length);
            return Finish(-edge, -edge, width + edge, height + edge);
        }

        private GarmentDrawing Finish(double left, double top, double right, double bottom)
        {
            var margin = Math.Max(Margin, 0.12 * Math.Max(right - left, bottom - top));
            return new GarmentDrawing(
                left - margin, top - margin / 2, right - left + 2 * margin, bottom - top + 1.5 * margin,
                _patches.ToImmutable(), _outlines.ToImmutable(), _dimensions.ToImmutable(), GarmentSentence.Of(plan, size));
        }

        /// <summary>A standing figure of the size's own measures; a girth is seen as 0.37 of itself (an ellipse 0.7 as deep as wide).</summary>
        private void Body(double panel)
        {
            if (!size.Body.TryGetValue("bust", out var bust) || !size.Body.TryGetValue("backWaistLength", out var back))
                return;
            const double seen = 0.37 / 2;
            var middle = size.Pieces[0].Width.Centimetres / 2;
            var (chest, waist) = (bust.Centimetres * seen, (Body("waist") ?? 0.82 * bust.Centimetres) * seen);
            var hip = (Body("hip") ?? 1.05 * bust.Centimetres) * seen;
            var shoulder = Math.Max(chest * 0.95, (Body("crossBack") ?? 0.4 * bust.Centimetres) / 2 + 2);
            var (under, at) = (back.Centimetres * 0.48, back.Centimetres);
            var low = Math.Max(at + 24, panel + 4);
            (double X, double Y)[] half =
            [
                (0, -23), (4.5, -22), (7.4, -16), (7, -9), (5, -4.5), (5, -1.5), (shoulder * 0.6, 1), (shoulder, 4), (shoulder * 1.02, 9),
                (chest, under), (waist, at), (hip, at + 20), (hip * 0.97, low),
            ];
            (double X, double Y)[] whole = [.. half.Reverse().Select(p => (middle - p.X, p.Y)), .. half.Skip(1).Select(p => (middle + p.X, p.Y))];
            _outlines.Add(new Outline("body", Smooth(whole), false));
        }

        /// <summary>Points of a curve through all of these (a Catmull–Rom spline).</summary>
        private static ImmutableArray<(double X, double Y)> Smooth((double X, double Y)[] through)
        {
            const int between = 6;
            var points = ImmutableArray.CreateBuilder<(double X, double Y)>();
            for (var i = 0; i + 1 < through.Length; i++)
            {
                var (a, b, c, d) = (through[Math.Max(0, i - 1)], through[i], through[i + 1], through[Math.Min(through.Length - 1, i + 2)]);
                for (var k = 0; k < between; k++)
                {
                    var t = (double)k / between;
                    points.Add((Along(a.X, b.X, c.X, d.X, t), Along(a.Y, b.Y, c.Y, d.Y, t)));
                }
            }
            points.Add(through[^1]);
            return points.ToImmutable();

            static double Along(double a, double b, double c, double d, double t) =>
                0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t * t * t);
        }

        private double? Body(string measure) => size.Body.TryGetValue(measure, out var length) ? length.Centimetres : null;

        private double Finished(GarmentMeasure measure) => size.Finished.TryGetValue(measure, out var length) ? length.Centimetres : 0;

        private double Depth(EdgingPlace where) => size.Edgings.FirstOrDefault(e => e.Where == where)?.Depth.Centimetres ?? 0;

        private void Put(WornPiece piece, double x, double y, double width, double height, int turns) =>
            Put(Whole(piece), x, y, width, height, turns);

        private void Put((int Columns, int Rows, byte[] Cells) cells, double x, double y, double width, double height, int turns)
        {
            _patches.Add(new Patch(x, y, width, height, cells.Columns, cells.Rows, turns, cells.Cells));
            _outlines.Add(new Outline("edge", [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]));
        }

        private void Band(double x, double y, double width, double height)
        {
            if (width > 0 && height > 0)
                _outlines.Add(new Outline("edging", [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]));
        }

        private void Dimension(double x1, double y1, double x2, double y2, GarmentMeasure measure)
        {
            if (size.Finished.TryGetValue(measure, out var length))
                Dimension(x1, y1, x2, y2, Wording.Say(length, Units));
        }

        private void Dimension(double x1, double y1, double x2, double y2, string label) =>
            _dimensions.Add(new DimensionMark(x1, y1, x2, y2, label));

        private static (int Columns, int Rows, byte[] Cells) Whole(WornPiece piece) => (piece.Columns, piece.Rows, piece.Cells.ToArray());

        /// <summary>The left or the right half of an upright piece.</summary>
        private static (int Columns, int Rows, byte[] Cells) Half(WornPiece piece, bool first)
        {
            var columns = Math.Max(1, piece.Columns / 2);
            var from = first ? 0 : piece.Columns - columns;
            var cells = new byte[columns * piece.Rows];
            for (var y = 0; y < piece.Rows; y++)
                piece.Cells.Slice(y * piece.Columns + from, columns).CopyTo(cells.AsSpan(y * columns));
            return (columns, piece.Rows, cells);
        }
    }
}
