using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Instructions;

/// <summary>Draws one size of a garment as worn, to scale, on a figure of its size.</summary>
public static class WornGarment
{
    private const double Margin = 9;

    /// <summary>The standing figure is drawn to this far below the garment, and to this far below its waist at least.</summary>
    private const double UnderHem = 4, Thighs = 38;

    /// <summary>From where the neck meets the shoulder down to the points of the shoulders.</summary>
    private const double ShoulderPoint = 4;

    /// <summary>An edge that leaves the shoulders bare lies this far below their points (common practice, no source).</summary>
    private const double BelowShoulders = 5;

    /// <summary>Seen from the front.</summary>
    /// <param name="language">Of the sentence that says what is seen.</param>
    public static GarmentDrawing Front(Plan plan, SizePlan size, Language language = Language.English)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new Pencil(plan, size, plan.Construction.Worn).Draw(GarmentSentence.Of(plan, size, language));
    }

    /// <summary>Seen from behind; null where there is nothing else to see.</summary>
    /// <param name="language">Of the sentence that says what is seen.</param>
    public static GarmentDrawing? Behind(Plan plan, SizePlan size, Language language = Language.English)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Construction.Behind is { IsEmpty: false } behind
            ? new Pencil(plan, size, behind).Draw(GarmentSentence.FromBehind(plan, size, language))
            : null;
    }

    /// <summary>What is drawn so far.</summary>
    private sealed class Pencil(Plan plan, SizePlan size, ImmutableArray<WornPart> worn)
    {
        private readonly ImmutableArray<Patch>.Builder _patches = ImmutableArray.CreateBuilder<Patch>();
        private readonly ImmutableArray<GarmentLine>.Builder _outlines = ImmutableArray.CreateBuilder<GarmentLine>();
        private readonly ImmutableArray<DimensionMark>.Builder _dimensions = ImmutableArray.CreateBuilder<DimensionMark>();

        private Units Units => plan.Project.Edition.Units;

        private readonly Construction _construction = plan.Construction;

        public GarmentDrawing Draw(string sentence)
        {
            var shown = Lay();
            var main = shown[0];
            foreach (var part in shown)
            {
                var (columns, rows, sections) = part.Cells;
                _patches.Add(new Patch(part.X, part.Y, part.Width, part.Height, columns, rows, sections) { Turns = part.Part.Turns });
                var shaped = part.Piece.Shape is not null && (IsWhole(part) || IsGored(part));
                _outlines.Add(new GarmentLine("edge", shaped || part.Piece.Taper is not null
                    ? Edge(part)
                    : Box(part.X, part.Y, part.Width, part.Height)));
            }
            foreach (var part in shown)
                Edgings(part);
            foreach (var part in shown)
                Openings(part);
            double Least(Func<Shown, double> of) => shown.Min(of);
            double Most(Func<Shown, double> of) => shown.Max(of);
            var deepest = size.Edgings.Select(e => e.Depth.Centimetres).DefaultIfEmpty(0).Max();
            var (left, right) = (Least(s => s.X) - deepest, Most(s => s.X + s.Width) + deepest);
            var (top, bottom) = (Least(s => s.Y), Most(s => s.Y + s.Height));
            Measures(shown, (left, right, top, bottom + deepest));
            var figure = Figure((Body(shown).Min(s => s.X) + Body(shown).Max(s => s.X + s.Width)) / 2, bottom + deepest + UnderHem);
            if (figure.IsEmpty)
                return Finish(left, top - deepest, right, bottom + deepest, sentence);
            var pieces = _outlines.Where(o => o.Kind == "edge").Select(o => o.Points).ToArray();
            _outlines.InsertRange(0, BesideFabric.Seen(figure, pieces).Select(seen => new GarmentLine("body", seen, false)));
            return Finish(
                Math.Min(left, figure.Min(p => p.X)), Math.Min(top - deepest, figure.Min(p => p.Y)), Math.Max(right, figure.Max(p => p.X)),
                Math.Max(bottom + deepest, figure.Max(p => p.Y)), sentence);
        }

        /// <summary>A part of the garment where it hangs.</summary>
        private sealed record Shown(WornPart Part, PiecePlan Piece, double X, double Y, double Width, double Height,
            (int Columns, int Rows, byte[] Sections) Cells);

        /// <summary>The first part and those of its group.</summary>
        private Shown[] Body(List<Shown> shown)
        {
            var group = _construction.GroupOf(shown[0].Piece.Id);
            return [.. shown.Where(s => group.Pieces.Any(p => p.Id == s.Piece.Id))];
        }

        private bool IsGored(Shown shown) => _construction.GroupOf(shown.Piece.Id).Gores is not null;

        private bool Fills(PieceId piece) => _construction.GroupOf(piece).Fills is not null;

        /// <summary>Of it, or as much of a gored piece as is seen, narrower from the bottom up; a triangle's as it is drawn.</summary>
        private ImmutableArray<(double X, double Y)> Edge(Shown shown)
        {
            var (across, down) = (shown.Width / shown.Piece.Width.Centimetres, shown.Height / shown.Piece.Height.Centimetres);
            return At(shown, WornOutline.Of(plan, shown.Piece).Points.Select(p => (p.X * across, p.Y * down)));
        }

        /// <summary>Where its upper edge begins, and how long it is.</summary>
        private (double X, double Length) Top(Shown shown)
        {
            if (!IsGored(shown))
                return (shown.X, shown.Width);
            var ends = Edge(shown).Where(p => p.Y <= shown.Y + 1e-9).Select(p => p.X).ToArray();
            return (ends.Min(), ends.Max() - ends.Min());
        }

        private static bool IsWhole(Shown shown) => shown.Part is { Portion: Portion.Whole, Turns: 0 };

        private static ImmutableArray<(double X, double Y)> At(Shown shown, IEnumerable<(double X, double Y)> points) =>
            [.. points.Select(p => (shown.X + p.X, shown.Y + p.Y))];

        private List<Shown> Lay()
        {
            var shown = new List<Shown>();
            foreach (var part in worn)
            {
                var piece = WornPiece.Of(plan, size[part.Piece]);
                var cells = part.Portion == Portion.Whole ? Whole(piece) : Half(piece, part.Portion == Portion.LeftHalf);
                var (width, height) = (piece.Piece.Width.Centimetres * (part.Portion == Portion.Whole ? 1 : 0.5),
                    piece.Piece.Height.Centimetres);
                if (part.Turns % 2 == 1)
                    (width, height) = (height, width);
                var (x, y) = (0.0, 0.0);
                if (part.Beside is { } beside && shown.Find(s => s.Piece.Id == beside) is { } other)
                {
                    var between = part.Between is { } band ? Depth(band) : 0;
                    (x, y) = part.Side switch
                    {
                        PieceSide.Left => (other.X - width - between, other.Y),
                        PieceSide.Right => (other.X + other.Width + between, other.Y),
                        PieceSide.Bottom => (other.X, other.Y + other.Height),
                        _ => (other.X, other.Y - height),
                    };
                }
                if (_construction.GroupOf(part.Piece).Fills is { } fills && shown.Find(s => s.Piece.Id == fills.Into) is { } cut)
                    (x, y, width, height) = Corner(cut, fills.Opening, piece.Piece);
                shown.Add(new Shown(part, piece.Piece, x, y, width, height, cells));
            }
            return shown;
        }

        /// <summary>The half of what an opening cuts out of a part that a triangle fills; no seam is drawn.</summary>
        private (double X, double Y, double Width, double Height) Corner(Shown into, OpeningId opening, PiecePlan triangle)
        {
            var points = At(into, WornOutline.Of(plan, into.Piece).Cuts.First(c => c.Opening == opening).Points);
            var (left, right) = (points.Min(p => p.X), points.Max(p => p.X));
            var (top, bottom) = (points.Min(p => p.Y), points.Max(p => p.Y));
            var width = (right - left) / 2;
            return (triangle.Taper!.Slope == PieceSide.Left ? left + width : left, top, width, bottom - top);
        }

        /// <summary>Edgings along the outer sides of a part, those inside an opening apart.</summary>
        private void Edgings(Shown shown)
        {
            foreach (var place in _construction.Edgings)
            {
                var depth = Depth(place.Place);
                if (_construction.GroupOf(shown.Piece.Id).IsSloped)
                {
                    Round(shown, depth);
                    continue;
                }
                // Bands that overlap are seen as the one on top.
                if (place.Closes is { } pair && pair.Holes != shown.Piece.Id)
                    continue;
                foreach (var (_, edge) in place.Edges.Where(e => e.Edge.Piece == shown.Piece.Id || place.Closes is not null)
                    .Select(e => place.Closes is null || e.Edge.Piece == shown.Piece.Id
                        ? e
                        : e with { Edge = e.Edge with { Piece = shown.Piece.Id, Side = e.Edge.Side.Mirrored() } }))
                {
                    // The other one of a pair is on the opposite side.
                    var sides = place is { Copies: 2, Closes: null } && shown.Piece.Copies == 1
                        && (worn.Length == 1 || worn.Count(w => w.Portion == Portion.Whole && !Fills(w.Piece)) == 1)
                        ? [edge.Side, Opposite(edge.Side)] : ImmutableArray.Create(edge.Side);
                    foreach (var side in sides)
                        Edging(shown, side, edge, depth);
                }
            }
        }

        /// <summary>All round a piece whose sides are slopes.</summary>
        private void Round(Shown shown, double depth)
        {
            var edge = Edge(shown);
            if (depth > 0)
                _outlines.Add(new GarmentLine("edging", BesideFabric.Band(edge, edge, depth)));
        }

        private void Edging(Shown shown, PieceSide side, PieceEdge edge, double depth)
        {
            var design = edge.Opening is { } id ? _construction.GroupOf(edge.Piece).Opening(id, edge.Piece) : null;
            // What is left open at the top or cut out is edged where the opening is drawn.
            if (depth <= 0 || design is not null
                && (edge.Stretch == Stretch.Opening && !side.IsUpright() || shown.Piece.Opening(design.Id).Into > 0)
                || Fills(shown.Piece.Id))
                return;
            var seen = Turned(side, shown.Part.Turns);
            // A half of a piece has no edge where it folds.
            if (shown.Part.Portion != Portion.Whole && side.IsUpright())
                return;
            if (design is not null && !side.IsUpright())
            {
                var (begins, ends) = Lies(shown, design);
                var (left, right) = edge.Stretch == Stretch.BeforeOpening ? (shown.X, begins) : (ends, shown.X + shown.Width);
                _outlines.Add(new GarmentLine("edging", Box(left, shown.Y - depth, right - left, depth)));
                return;
            }
            var (from, length) = design switch
            {
                null => (0, double.PositiveInfinity),
                { At: OpeningAt.Middle } => (edge.Stretch == Stretch.BeforeOpening ? (shown.Height + Finished(design.Measure)) / 2 : 0,
                    (shown.Height - Finished(design.Measure)) / 2),
                _ => (0, Finished(design.Measure) + depth),
            };
            var top = Top(shown);
            var corner = _construction.Edgings.FirstOrDefault(e => e.Edges.Any(n => n.Edge == edge))?.Corners == 4 ? depth : 0;
            _outlines.Add(new GarmentLine("edging", seen switch
            {
                PieceSide.Bottom => Box(shown.X - corner, shown.Y + shown.Height, shown.Width + 2 * corner, depth),
                PieceSide.Top => Box(top.X - corner, shown.Y - depth, top.Length + 2 * corner, depth),
                PieceSide.Left => Box(shown.X - depth, shown.Y + from, depth, Math.Min(shown.Height, length)),
                _ => Box(shown.X + shown.Width, shown.Y + from, depth, Math.Min(shown.Height, length)),
            }));
        }

        /// <summary>Where an opening of the upper edge begins, and where it ends.</summary>
        private (double Begins, double Ends) Lies(Shown shown, OpeningDesign opening)
        {
            var length = Finished(opening.Measure);
            var begins = opening.At switch
            {
                OpeningAt.Beginning => shown.X,
                OpeningAt.End => shown.X + shown.Width - length,
                _ => shown.X + (shown.Width - length) / 2,
            };
            return (begins, begins + length);
        }

        /// <summary>Each with the edging that stands inside it.</summary>
        private void Openings(Shown shown)
        {
            // What is filled is open along the slopes of what fills it.
            if (shown.Piece.Taper is { } taper)
            {
                var edge = Edge(shown);
                ImmutableArray<(double, double)> slope = taper.Slope == PieceSide.Left ? [edge[0], edge[^1]] : [edge[1], edge[2]];
                var fills = _construction.GroupOf(shown.Piece.Id).Fills!;
                var filled = _construction.GroupOf(fills.Into).Opening(fills.Opening, fills.Into);
                if (filled.Place is { } round && Depth(round) is > 0 and var deep)
                    _outlines.Add(new GarmentLine("edging", BesideFabric.Band(slope, edge, deep)));
                _outlines.Add(new GarmentLine("opening", slope, false));
                return;
            }
            if (!IsWhole(shown))
                return;
            var group = _construction.GroupOf(shown.Piece.Id);
            var open = WornOutline.Of(plan, shown.Piece).Cuts.Where(c => !_construction.IsFilled(c.Opening, shown.Piece.Id));
            foreach (var (id, points) in open)
            {
                var cut = At(shown, points);
                if (group.Opening(id, shown.Piece.Id).Place is { } place && Depth(place) is > 0 and var depth)
                    _outlines.Add(new GarmentLine("edging", BesideFabric.Band(cut, Edge(shown), depth)));
                _outlines.Add(new GarmentLine("opening", cut, false));
            }
            foreach (var opening in group.OpeningsOf(shown.Piece.Id).Where(o => shown.Piece.Opening(o.Id).Into == 0))
            {
                foreach (var side in opening.Sides)
                {
                    var length = Finished(opening.Measure);
                    var x = side == PieceSide.Left ? shown.X : shown.X + shown.Width;
                    if (!side.IsUpright())
                        Slit(shown, opening);
                    else
                    {
                        _outlines.Add(new GarmentLine("opening", opening.At == OpeningAt.Middle
                            ? [(x, shown.Y + (shown.Height - length) / 2), (x, shown.Y + (shown.Height + length) / 2)]
                            : [(x, shown.Y), (x, shown.Y + Math.Min(shown.Height, length))], false));
                    }
                }
            }
        }

        /// <summary>An opening of the upper edge out of which nothing is cut: its edging stands up in it.</summary>
        private void Slit(Shown shown, OpeningDesign opening)
        {
            var (begins, ends) = Lies(shown, opening);
            if (opening.Place is { } place && Depth(place) is > 0 and var depth)
            {
                var left = opening.At == OpeningAt.Beginning ? begins : begins - depth;
                var right = opening.At == OpeningAt.End ? ends : ends + depth;
                _outlines.Add(new GarmentLine("edging", Box(left, shown.Y - depth, right - left, depth)));
            }
            _outlines.Add(new GarmentLine("opening", [(begins, shown.Y), (ends, shown.Y)], false));
        }

        /// <summary>
        /// The first part's measures below and at the left, openings above, what hangs beside it above and at the right. Each line is as
        /// long as its number says: between seams, edgings included.
        /// </summary>
        private void Measures(List<Shown> shown, (double Left, double Right, double Top, double Bottom) drawn)
        {
            // What fills a corner stands within the others.
            shown = [.. shown.Where(s => !Fills(s.Piece.Id))];
            var main = shown[0];
            var group = _construction.GroupOf(main.Piece.Id);
            var gap = Math.Max(2, 0.05 * Math.Max(main.Width, main.Height));
            var body = Body(shown);
            var (left, right) = (body.Min(s => s.X), body.Max(s => s.X + s.Width));
            Across(left, right, drawn.Bottom + gap, group.Across, main.Piece.Id);
            Down(drawn.Left - gap, main, group.Down);
            var (level, room) = (-4 - Depth(EdgingPlace.TopEdge), drawn.Right + 4);
            if (group.Gores is { } gores)
                Across(left, right, level - Depth(EdgingPlace.Waist), group.Across with { Measure = gores.Edge }, main.Piece.Id);
            foreach (var opening in group.Openings)
            {
                var length = Finished(opening.Measure);
                if (opening.Sides[0] is PieceSide.Top && opening.At == OpeningAt.End)
                    Dimension(main.X + main.Width - length, level, main.X + main.Width, level, EachSide(opening.Measure));
                else if (opening.Sides[0] is PieceSide.Top)
                    Dimension(main.X + (main.Width - length) / 2, level, main.X + (main.Width + length) / 2, level, opening.Measure);
                else if (shown.Count == body.Length)
                {
                    var from = opening.At == OpeningAt.Middle ? main.Y + (main.Height - length) / 2 : main.Y;
                    Dimension(room, from, room, from + length, opening.Measure);
                }
            }
            var beside = shown.FindLast(s => !body.Contains(s) && body.Any(b => s.Part.Beside == b.Piece.Id)
                && s.Part.Side == PieceSide.Right);
            if (beside is null)
                return;
            var own = _construction.GroupOf(beside.Piece.Id);
            if (beside.Part.Turns % 2 == 0)
            {
                Across(beside.X, beside.X + beside.Width, level, own.Across, beside.Piece.Id);
                Down(room, beside, own.Down);
                return;
            }
            // A sleeve that stands out ends at its cuff, and is folded along its upper edge.
            var cuff = beside.X + beside.Width + Below(beside.Piece.Id, own.Down);
            Dimension(cuff - Finished(own.Down.Measure), level, cuff, level, own.Down.Measure);
            var (round, seen) = Seen(own.Across, beside.Piece.Id);
            Dimension(room, beside.Y, room, beside.Y + seen, round ? Round(own.Across.Measure) : Said(own.Across.Measure));
        }

        /// <summary>A width between seams, in the middle of what is drawn of it; a measure that goes all the way round says so.</summary>
        private void Across(double left, double right, double y, PieceDimension dimension, PieceId piece)
        {
            var (round, seen) = Seen(dimension, piece);
            var middle = (left + right) / 2;
            Dimension(middle - seen / 2, y, middle + seen / 2, y, round ? Round(dimension.Measure) : Said(dimension.Measure));
        }

        /// <summary>A height up from the lower edge, its edging included.</summary>
        private void Down(double x, Shown part, PieceDimension dimension)
        {
            var bottom = part.Y + part.Height + Below(part.Piece.Id, dimension);
            Dimension(x, bottom - Finished(dimension.Measure), x, bottom, dimension.Measure);
        }

        /// <summary>The depth of the edging below a piece that its height counts.</summary>
        private double Below(PieceId piece, PieceDimension down) => _construction.Edgings
            .Where(e => down.Edgings.Contains(e.Place) && e.Edges.Any(n => n.Edge.Piece == piece && n.Edge.Side == PieceSide.Bottom))
            .Sum(e => Depth(e.Place));

        /// <summary>Whether a width goes all the way round, and how much of it is seen from the front.</summary>
        private (bool Round, double Length) Seen(PieceDimension dimension, PieceId piece)
        {
            var tube = _construction.Joins.Any(j => j.First[0] is { Side: PieceSide.Left or PieceSide.Right } edge && edge.Piece == piece
                && j.Second[0].Piece == piece);
            var round = dimension.Pieces > 1 || tube;
            return (round, Finished(dimension.Measure) / (round ? 2 : 1));
        }

        private string Round(GarmentMeasure measure) => Said(measure) is { Length: > 0 } length ? length + " round" : "";

        /// <summary>An opening that a front has half of: the line would else be read as all of it.</summary>
        private string EachSide(GarmentMeasure measure) => Said(measure) is { Length: > 0 } length ? length + " each side" : "";

        private string Said(GarmentMeasure measure) => size.Finished.TryGetValue(measure, out var length) ? Wording.Say(length, Units) : "";

        private static PieceSide Opposite(PieceSide side) => (PieceSide)(((int)side + 2) % 4);

        /// <summary>Where a side of a piece points after quarter turns clockwise.</summary>
        private static PieceSide Turned(PieceSide side, int turns) => (PieceSide)((((int)side - turns) % 4 + 4) % 4);

        private static ImmutableArray<(double X, double Y)> Box(double x, double y, double width, double height) =>
            [(x, y), (x + width, y), (x + width, y + height), (x, y + height)];

        private GarmentDrawing Finish(double left, double top, double right, double bottom, string sentence)
        {
            var margin = Math.Max(Margin, 0.12 * Math.Max(right - left, bottom - top));
            return new GarmentDrawing(
                left - margin, top - margin / 2, right - left + 2 * margin, bottom - top + 1.5 * margin,
                _patches.ToImmutable(), _outlines.ToImmutable(), _dimensions.ToImmutable())
            {
                Sentence = sentence,
            };
        }

        /// <summary>
        /// A standing figure of the size's own measures; a girth is seen as 0.37 of itself (an ellipse 0.7 as deep as wide).
        /// </summary>
        /// <param name="end">It ends here, or at its thighs where those are lower.</param>
        private ImmutableArray<(double X, double Y)> Figure(double middle, double end)
        {
            if (!plan.Project.Garment.Shape.Needs.Any(n => n != BodyMeasure.Head)
                || !size.Body.TryGetValue("bust", out var bust) || !size.Body.TryGetValue("backWaistLength", out var back))
                return [];
            const double seen = 0.37 / 2;
            var (chest, waist) = (bust.Centimetres * seen, (Body("waist") ?? 0.82 * bust.Centimetres) * seen);
            var hip = (Body("hip") ?? 1.05 * bust.Centimetres) * seen;
            var shoulder = Math.Max(chest * 0.95, (Body("crossBack") ?? 0.4 * bust.Centimetres) / 2 + 2);
            var (under, at) = (back.Centimetres * 0.48, back.Centimetres);
            var neck = _construction.Held?.Girth switch
            {
                BodyMeasure.Shoulders => -ShoulderPoint - BelowShoulders - Depth(EdgingPlace.TopEdge),
                BodyMeasure.Waist => -at - Depth(EdgingPlace.Waist),
                _ => 0,
            };
            var low = Math.Max(end - neck, at + Thighs);
            (double X, double Y)[] half =
            [
                (0, -23), (4.5, -22), (7.4, -16), (7, -9), (5, -4.5), (5, -1.5), (shoulder * 0.6, 1), (shoulder, ShoulderPoint),
                (shoulder * 1.02, 9),
                (chest, under), (waist, at), (hip, at + 20), (hip * 0.97, low),
            ];
            (double X, double Y)[] whole = [.. half.Reverse().Select(p => (middle - p.X, p.Y)),
                .. half.Skip(1).Select(p => (middle + p.X, p.Y))];
            return [.. Smooth(whole).Select(p => (p.X, p.Y + neck))];
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

        private void Dimension(double x1, double y1, double x2, double y2, GarmentMeasure measure)
        {
            if (Said(measure) is { Length: > 0 } label)
                Dimension(x1, y1, x2, y2, label);
        }

        private void Dimension(double x1, double y1, double x2, double y2, string label)
        {
            if (label.Length > 0)
                _dimensions.Add(new DimensionMark(x1, y1, x2, y2, label));
        }

        private static (int Columns, int Rows, byte[] Cells) Whole(WornPiece piece) => (piece.Columns, piece.Rows, piece.Cells.ToArray());

        /// <summary>The left or the right half of an upright piece.</summary>
        private static (int Columns, int Rows, byte[] Cells) Half(WornPiece piece, bool first)
        {
            var columns = Math.Max(1, piece.Columns / 2);
            var from = first ? 0 : piece.Columns - columns;
            var cells = new byte[columns * piece.Rows];
            for (var y = 0; y < piece.Rows; y++)
            {
                var line = piece.Cells.Slice(y * piece.Columns, piece.Columns);
                if (piece.Piece.Shape is { Strips.IsEmpty: false })
                    Narrow(line, first, cells.AsSpan(y * columns, columns));
                else
                    line.Slice(from, columns).CopyTo(cells.AsSpan(y * columns));
            }
            return (columns, piece.Rows, cells);
        }

        /// <summary>Half of what a gored piece has in a line, in the middle of the half.</summary>
        private static void Narrow(ReadOnlySpan<byte> line, bool first, Span<byte> half)
        {
            var begin = line.IndexOfAnyExcept(WornPiece.Empty);
            var worked = line[begin..(line.LastIndexOfAnyExcept(WornPiece.Empty) + 1)];
            var seen = first ? worked[..(worked.Length / 2)] : worked[(worked.Length - worked.Length / 2)..];
            half.Fill(WornPiece.Empty);
            seen.CopyTo(half[((half.Length - seen.Length) / 2)..]);
        }
    }
}
