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

    /// <summary>
    /// Places of a straight stretch that is told with the steps beside it, where the band turns at neither end of it: words that can be
    /// followed are worth more than a rule of its own for a few places (an assumption without a source).
    /// </summary>
    private const int MostAmongSteps = 2 * LeastBesideCorner;

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
    /// Straight stretches with corners between, and steps that a band smooths. What is cut to a point turns back there, unless its end is
    /// so wide that it turns at either end of that.
    /// </summary>
    private IEnumerable<EdgeStretch> AroundCut(EdgeId id, PieceEdge along, LaidPiece piece)
    {
        var (runs, behind) = (edges.Runs(along, piece), piece.Id == PieceId.Back);
        var whole = Parts(runs);
        if (!IsPointed(along, piece) || CutNames.LowestOf(runs) is not { Inside: > 0 } lowest || TurnsAtEnds(whole, lowest))
            return Told(whole, new CutNames(id, along, runs, behind));
        var (before, after) = AtPoint(runs, lowest);
        var names = new CutNames(id, along, [.. before, .. after], behind) { Point = before.Length };
        return Told(Parts(before), names).Concat(
            Told(Parts(after), names).Select((s, i) => i == 0 ? s with { Corner = EdgeCorner.Inner } : s));
    }

    private static bool IsPointed(PieceEdge along, LaidPiece piece) =>
        along.Opening is { } opening && piece.Counts.Group.Opening(opening, piece.Id).Cut is { IsPointed: true };

    private static bool TurnsAtEnds(EdgePartRun[] parts, EdgeRun lowest)
    {
        var at = Array.FindIndex(parts, p => p.Taut.Runs is [var run] && run == lowest);
        return at >= 0 && at + 1 < parts.Length && parts[at].Corner == EdgeCorner.Inner && parts[at + 1].Corner == EdgeCorner.Inner;
    }

    /// <summary>What comes before the middle of the lowest edge, and what comes after it.</summary>
    private static (ImmutableArray<EdgeRun> Before, ImmutableArray<EdgeRun> After) AtPoint(ImmutableArray<EdgeRun> runs, EdgeRun lowest)
    {
        var (at, half) = (runs.IndexOf(lowest), (lowest.Count + 1) / 2);
        var rest = lowest.Count - half;
        var first = lowest with { Count = half, From = lowest.Backwards ? lowest.From + rest : lowest.From };
        var second = lowest with { Count = rest, From = lowest.Backwards ? lowest.From : lowest.From + half };
        return ([.. runs[..at], first], rest > 0 ? [second, .. runs[(at + 1)..]] : runs[(at + 1)..]);
    }

    /// <param name="Corner">Where it begins, between two long straight parts.</param>
    private readonly record struct EdgePartRun(TautPart Taut, EdgeCorner? Corner)
    {
        public bool IsLong => Taut.Runs is [{ Count: >= LeastBesideCorner }];

        /// <summary>A band smooths it, or it is as short.</summary>
        public bool IsSmall => Taut.Runs is not [{ Count: > MostAmongSteps }];
    }

    private EdgePartRun[] Parts(ImmutableArray<EdgeRun> runs)
    {
        EdgePartRun[] parts = [.. TautEdge.Of(runs, layout.Across.Step, layout.Down.Step).Select(p => new EdgePartRun(p, null))];
        for (var i = 1; i < parts.Length; i++)
        {
            if (parts[i - 1].IsLong && parts[i].IsLong)
                parts[i] = parts[i] with { Corner = Corner(parts[i - 1].Taut.Runs[0], parts[i].Taut.Runs[0]) };
        }
        return parts;
    }

    /// <summary>What is small and turns no corner is one with what comes beside it.</summary>
    private IEnumerable<EdgeStretch> Told(EdgePartRun[] parts, CutNames names)
    {
        for (int from = 0, to; from < parts.Length; from = to)
        {
            to = from + 1;
            while (to < parts.Length && IsAmongSteps(to - 1) && IsAmongSteps(to))
                to++;
            ImmutableArray<TautPart> taut = [.. parts[from..to].Select(p => p.Taut)];
            yield return taut is [{ Runs: [var run] }]
                ? new EdgeStretch(names.Straight(run), !run.AlongStitches, run.Count) { Corner = parts[from].Corner }
                : Stepped(names.Steps(taut), taut);
        }

        bool IsAmongSteps(int at) =>
            parts[at].IsSmall && parts[at].Corner is null && (at + 1 == parts.Length || parts[at + 1].Corner is null);
    }

    /// <summary>
    /// All that a band smooths, by the straight lines that it goes along; what is straight takes what it would by itself.
    /// </summary>
    private EdgeStretch Stepped(StretchId id, ImmutableArray<TautPart> taut)
    {
        var flat = layout.SharedFabric.EdgingGaugeFor(layout.Direction).Flat(layout.SharedFabric.GaugeFor(layout.Direction));
        var places = taut.Sum(p => p.Runs.Sum(r => r.Count));
        var takes = taut.Sum(p => p.Runs is [var run] ? run.Count * flat.Along(!run.AlongStitches) : FlatAlong(p.Length));
        var length = taut.Aggregate(Length.Zero, (sum, p) => sum + p.Length);
        return new EdgeStretch(id, true, places) { Own = (takes / places, length / places), Stepped = true };
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

        private readonly EdgeRun? _lowest = LowestOf(runs);

        /// <summary>Index of the run before which the edge turns back; missing where it is not cut to a point.</summary>
        public int? Point { get; init; }

        /// <summary>The longest of what looks the way of the cut's side and lies deepest.</summary>
        public static EdgeRun? LowestOf(ImmutableArray<EdgeRun> runs) => runs.Where(r => r.Side == PieceSide.Top)
            .OrderByDescending(r => r.Inside).ThenByDescending(r => r.Count).FirstOrDefault();

        public StretchId.OfEdge Straight(EdgeRun run) => new(id, run.Side switch
        {
            _ when runs.All(r => r.Side == run.Side) => EdgePart.Whole,
            PieceSide.Top => run == _lowest || Point is not null && run.Inside == _lowest!.Inside ? EdgePart.LowerEdge : EdgePart.Step,
            PieceSide.Bottom => EdgePart.UpperEdge,
            _ when !_isNotch => EdgePart.UprightEdge,
            // What looks to the left is seen at the right of what is cut out.
            _ => AtLeft(run.Side == PieceSide.Left) ? EdgePart.WearersLeft : EdgePart.WearersRight,
        });

        public StretchId.OfEdge Steps(ImmutableArray<TautPart> taut)
        {
            var (first, last) = (runs.IndexOf(taut[0].Runs[0]), runs.IndexOf(taut[^1].Runs[^1]));
            var middle = Point is { } point ? point - 0.5 : _lowest is null ? -1 : runs.IndexOf(_lowest);
            if (!_isNotch || (first <= middle && middle <= last))
                return new StretchId.OfEdge(id, EdgePart.AlongSteps);
            // Gone along from right to left, what comes before the lowest is seen at the right.
            var left = AtLeft((last < middle) == along.Backwards);
            return new StretchId.OfEdge(id, left ? EdgePart.StepsAtWearersLeft : EdgePart.StepsAtWearersRight);
        }

        private bool AtLeft(bool seenAtRight) => seenAtRight != behind;
    }
}
