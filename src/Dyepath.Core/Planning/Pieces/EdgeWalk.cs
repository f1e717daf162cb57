using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>
/// The edges of a garment as an edging goes along them, stretch after stretch in the order in which they are met, and the corners between
/// them.
/// </summary>
internal sealed class EdgeWalk(Layout layout, WornEdges edges, ImmutableArray<LaidPiece> laid)
{
    /// <summary>
    /// Places at either side of a corner; shorter steps are smoothed by the edging itself (an assumption without a source).
    /// </summary>
    private const int LeastBesideCorner = 6;

    /// <summary>Every edge of the garment that can be edged.</summary>
    public IEnumerable<EdgeToEdge> Edges()
    {
        foreach (var edge in layout.Construction.Edgings)
        {
            var stretches = Along(edge.Edges);
            var bands = edge.Edges.Select(e => e.Edge).Sum(e =>
                e is { Side: PieceSide.Bottom or PieceSide.Top, Stretch: Stretch.Whole } ? 2 * Of(e.Piece).Counts.Bands : 0);
            if (bands > 0)
                stretches.Add(new EdgeStretch(new StretchId.SideBands(), true, bands));
            yield return new EdgeToEdge(edge, stretches.ToImmutable(), Along(edge.Other).ToImmutable());
        }
    }

    private ImmutableArray<EdgeStretch>.Builder Along(ImmutableArray<EdgedEdge> met)
    {
        var stretches = ImmutableArray.CreateBuilder<EdgeStretch>();
        var slanted = false;
        foreach (var (id, along) in met)
        {
            var piece = Of(along.Piece);
            var fills = piece.Counts.Group.Fills is not null;
            var own = fills ? [Slanted(id, along, piece)]
                : piece.Counts.Group.IsSloped || along.Stretch != Stretch.Opening ? BySide(id, along, piece)
                : AroundCut(id, along, piece);
            // Two slopes meet in a point.
            stretches.AddRange(fills && slanted ? own.Select(s => s with { Corner = EdgeCorner.Inner }) : own);
            slanted = fills;
        }
        return stretches;
    }

    private LaidPiece Of(PieceId piece) => laid.First(l => l.Id == piece);

    /// <summary>
    /// What a row end takes along the slope of what fills a corner, and its length there: all of them are as long as the slope.
    /// </summary>
    private EdgeStretch Slanted(EdgeId id, PieceEdge along, LaidPiece piece)
    {
        var rows = edges.Runs(along, piece)[0].Count;
        var (width, height) = (layout.Measure(piece.Counts, stitches: true), layout.Measure(piece.Counts, stitches: false));
        var each = Length.FromCentimetres(double.Hypot(width.Centimetres, height.Centimetres)) / Math.Max(1, rows);
        return new EdgeStretch(new StretchId.OfEdge(id), true, rows) { Own = (FlatAlong(each), each) };
    }

    /// <summary>What looks the same way is picked up alike; along a slope, stitches and row ends come by turns.</summary>
    private IEnumerable<EdgeStretch> BySide(EdgeId id, PieceEdge along, LaidPiece piece)
    {
        var runs = edges.Runs(along, piece);
        return runs.GroupBy(r => r.Side).Select(alike =>
        {
            var part = runs.All(r => r.Side == alike.Key) ? EdgePart.Whole
                : alike.First().AlongStitches ? EdgePart.Steps : EdgePart.RowEnds;
            return new EdgeStretch(new StretchId.OfEdge(id, part), !alike.First().AlongStitches, alike.Sum(r => r.Count));
        });
    }

    /// <summary>
    /// Straight stretches with corners between, and steps that a band smooths; a short stretch beside such steps is one of them.
    /// </summary>
    private IEnumerable<EdgeStretch> AroundCut(EdgeId id, PieceEdge along, LaidPiece piece)
    {
        var runs = edges.Runs(along, piece);
        var parts = TautEdge.Of(runs, layout.Across.Step, layout.Down.Step);
        var stepped = parts.Select(p => p.Runs.Length > 1).ToArray();
        for (var i = 1; i < parts.Length; i++)
            stepped[i] |= stepped[i - 1] && parts[i].Runs is [{ Count: < LeastBesideCorner }];
        for (var i = parts.Length - 2; i >= 0; i--)
            stepped[i] |= stepped[i + 1] && parts[i].Runs is [{ Count: < LeastBesideCorner }];
        var names = new CutNames(id, along, runs, piece.Id == PieceId.Back);
        EdgeRun? before = null;
        for (int from = 0, to; from < parts.Length; from = to)
        {
            to = from + 1;
            if (stepped[from])
            {
                while (to < parts.Length && stepped[to])
                    to++;
                yield return Stepped(names.Steps(parts[from..to]), parts[from..to]);
                before = null;
                continue;
            }
            var run = parts[from].Runs[0];
            yield return new EdgeStretch(names.Straight(run), !run.AlongStitches, run.Count)
            {
                Corner = before is { Count: >= LeastBesideCorner } && run.Count >= LeastBesideCorner ? Corner(before, run) : null,
            };
            before = run;
        }
    }

    /// <summary>All that a band smooths, by the straight lines that it goes along.</summary>
    private EdgeStretch Stepped(StretchId id, ImmutableArray<TautPart> taut)
    {
        var places = taut.Sum(p => p.Runs.Sum(r => r.Count));
        var each = taut.Aggregate(Length.Zero, (sum, p) => sum + p.Length) / places;
        return new EdgeStretch(id, true, places) { Own = (FlatAlong(each), each), Stepped = true };
    }

    private double FlatAlong(Length each) => layout.SharedFabric.EdgingGaugeFor(layout.Direction).AlongRowEnds(each);

    /// <summary>The fabric stands out where the second looks along the way of the first, and goes in where it looks back.</summary>
    private static EdgeCorner? Corner(EdgeRun first, EdgeRun second)
    {
        if (first.Side.IsUpright() == second.Side.IsUpright())
            return null;
        var ahead = (first.Side.IsUpright(), first.Backwards) switch
        {
            (false, false) => PieceSide.Right,
            (false, true) => PieceSide.Left,
            (true, false) => PieceSide.Top,
            _ => PieceSide.Bottom,
        };
        return second.Side == ahead ? EdgeCorner.Outer : EdgeCorner.Inner;
    }

    /// <summary>What the stretches along a cut are called; one without corners is whole.</summary>
    /// <param name="behind">Seen from behind, the wearer's left is at the left.</param>
    private sealed class CutNames(EdgeId id, PieceEdge along, ImmutableArray<EdgeRun> runs, bool behind)
    {
        private readonly bool _isNotch = runs.Any(r => r.Side == PieceSide.Left) && runs.Any(r => r.Side == PieceSide.Right);

        /// <summary>The longest of what looks the way of the cut's side and lies deepest.</summary>
        private readonly EdgeRun? _lowest =
            runs.Where(r => r.Side == PieceSide.Top).OrderByDescending(r => r.Inside).ThenByDescending(r => r.Count).FirstOrDefault();

        public StretchId.OfEdge Straight(EdgeRun run) => new(id, run.Side switch
        {
            _ when runs.All(r => r.Side == run.Side) => EdgePart.Whole,
            PieceSide.Top => run == _lowest ? EdgePart.LowerEdge : EdgePart.Step,
            PieceSide.Bottom => EdgePart.UpperEdge,
            _ when !_isNotch => EdgePart.UprightEdge,
            // What looks to the left is seen at the right of what is cut out.
            _ => AtLeft(run.Side == PieceSide.Left) ? EdgePart.WearersLeft : EdgePart.WearersRight,
        });

        public StretchId.OfEdge Steps(ImmutableArray<TautPart> taut)
        {
            var first = runs.IndexOf(taut[0].Runs[0]);
            var (lowest, last) = (_lowest is null ? -1 : runs.IndexOf(_lowest), runs.IndexOf(taut[^1].Runs[^1]));
            if (!_isNotch || (first <= lowest && lowest <= last))
                return new StretchId.OfEdge(id, EdgePart.AlongSteps);
            // Gone along from right to left, what comes before the lowest is seen at the right.
            var left = AtLeft((last < lowest) == along.Backwards);
            return new StretchId.OfEdge(id, left ? EdgePart.StepsAtWearersLeft : EdgePart.StepsAtWearersRight);
        }

        private bool AtLeft(bool seenAtRight) => seenAtRight != behind;
    }
}
