using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>A piece as it lies in a garment, so that the stitches along its sides can be read.</summary>
/// <param name="Path">Missing where it is plain.</param>
/// <param name="At">Its place in its group.</param>
/// <param name="Turned">Wrong side out.</param>
internal sealed record LaidPiece(PieceId Id, GroupCounts Counts, int At, FabricPath? Path, bool Turned)
{
    /// <summary>Where in the sequence it begins, in whole pooling units.</summary>
    public required int Start { get; init; }

    /// <summary>Missing for a rectangle.</summary>
    public ShapedPiece? Shape { get; init; }

    /// <summary>Missing for a rectangle.</summary>
    public ShapedEdges? Edges { get; init; }
}

/// <summary>
/// Sides of pieces as worn, read off the fabric as it is worked. Worked up, the bottom is the first row and the right side the first row's
/// right-hand edge; worked sideways, the left side is the first row and the bottom its right-hand edge. Turned wrong side out, left and
/// right change places (docs/seams.md has the drawing).
/// </summary>
internal sealed class WornEdges(Layout layout)
{
    private readonly SeamChoice _seams = layout.SharedFabric.Project.Garment.Seams;
    private readonly long _unit = ColourRing.Unit / layout.SharedFabric.Stitch.StitchesPerUnit;

    private int PerUnit => layout.SharedFabric.Stitch.StitchesPerUnit;

    private (int Stitches, int Rows) Hidden => (_seams.HiddenStitches, _seams.HiddenRows);

    /// <summary>The stretch, in several where it goes round corners; what the seams at its ends hide is left out.</summary>
    public ImmutableArray<EdgeRun> Runs(PieceEdge edge, LaidPiece piece) =>
        piece.Edges?.Runs(edge, Hidden) ?? [Run(edge, piece.Counts, piece.At)];

    /// <summary>The stretch in stitches or rows of its side; what the seams at either end of the side hide is left out.</summary>
    private EdgeRun Run(PieceEdge edge, GroupCounts counts, int at)
    {
        var all = layout.PlacesAlong(counts, at, edge.Side);
        var (from, to) = Ends(edge, counts, all);
        var along = layout.For(counts.Group).Along(edge.Side);
        var hidden = along.Hidden;
        if (from == 0 && layout.Construction.IsSewnAt(edge.Piece, edge.Side, atEnd: false))
            from = Math.Min(hidden, to);
        if (to == all && layout.Construction.IsSewnAt(edge.Piece, edge.Side, atEnd: true))
            to = Math.Max(from, all - hidden);
        return new EdgeRun(edge.Piece, edge.Side, from, to - from, along.AlongStitches, edge.Backwards);
    }

    /// <summary>Stitches along a run in its order, as a seam, or the join of a round, leaves them to be seen.</summary>
    public ImmutableArray<SeamStitch> Read(EdgeRun run, LaidPiece piece, bool sewn)
    {
        if (piece.Path is not { } path)
            return [];
        if (piece.Edges is { } edges)
            return edges.Read(run, sewn ? Hidden : (0, 0));
        var (side, from, all) = (run.Side, run.From, layout.PlacesAlong(piece.Counts, piece.At, run.Side));
        var backwards = run.Backwards;
        if (piece.Turned)
        {
            side = side.Mirrored();
            if (!side.IsUpright())
                (from, backwards) = (all - run.From - run.Count, !backwards);
        }
        var stitches = run.AlongStitches ? Across(path, side, from, run.Count, all, sewn) : RowEnds(path, side, from, run.Count, sewn);
        return backwards ? stitches.Reversed() : stitches;
    }

    private static (int From, int To) Ends(PieceEdge edge, GroupCounts counts, int all)
    {
        if (edge.Above is { } below)
        {
            var (_, end) = counts.Group.Opening(below, edge.Piece).Lies(counts.Openings[below], all);
            return (end, Ends(edge with { Above = null }, counts, all).To);
        }
        if (edge.Stretch == Stretch.Whole)
            return (0, all);
        var id = edge.Opening ?? throw new InvalidOperationException($"The {edge.Stretch} of a side needs an opening.");
        var (begins, ends) = counts.Group.Opening(id, edge.Piece).Lies(counts.Openings[id], all);
        return edge.Stretch switch
        {
            Stretch.BeforeOpening => (0, begins),
            Stretch.AfterOpening => (ends, all),
            _ => (begins, ends),
        };
    }

    private ImmutableArray<SeamStitch> RowEnds(FabricPath path, PieceSide side, int from, int rows, bool sewn)
    {
        var hidden = sewn ? _seams.HiddenStitches * _unit : 0;
        return side is PieceSide.Right or PieceSide.Bottom
            ? SeamEdge.Right(path, from, rows, hidden) : SeamEdge.Left(path, from, rows, hidden);
    }

    /// <summary>
    /// Along the first or the last row that is seen. The row may be a little longer or shorter than the first one is: a run that ends at
    /// the row's left-hand edge is counted from there, every other from the right-hand one.
    /// </summary>
    private ImmutableArray<SeamStitch> Across(FabricPath path, PieceSide side, int from, int stitches, int all, bool sewn)
    {
        var hidden = sewn ? _seams.HiddenRows : 0;
        var last = side is PieceSide.Top or PieceSide.Right;
        var row = last ? path.Rows - 1 - hidden : hidden;
        // As worked, places count from the right-hand edge: worn up, that is against the order of the side.
        var (fromRight, fromLeft) = layout.Up ? (all - from - stitches, from) : (from, all - from - stitches);
        var units = (fromRight + stitches) / PerUnit - fromRight / PerUnit;
        var first = fromLeft <= hiddenEnd() && fromRight > hiddenEnd()
            ? (int)(path.RowYarn(row) / ColourRing.Unit) - fromLeft / PerUnit - units
            : fromRight / PerUnit;
        var run = last ? SeamEdge.Top(path, row, first, units) : SeamEdge.Bottom(path, row, first, units);
        return layout.Up ? run.Reversed() : run;

        int hiddenEnd() => layout.Of(stitches: true).Hidden;
    }
}
