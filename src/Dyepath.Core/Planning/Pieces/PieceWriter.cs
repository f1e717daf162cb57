using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>Writes pieces down: numbers that follow from a count, a start and the fabric.</summary>
internal static class PieceWriter
{
    /// <param name="bands">Plain rows along each side, those that the seam hides included.</param>
    public static PiecePlan Write(
        SharedFabric shared, Layout layout, LaidPiece laid, int copies, int bands, ImmutableArray<PieceOpening> openings)
    {
        var (finding, working, start) = (laid.Counts.Finding(laid.At), laid.Counts.Group.Working, laid.Start);
        var (stitches, rows) = (laid.Shape?.Panel.Units ?? laid.Counts.StitchesOf(laid.At), laid.Counts.Rows);
        var (group, own) = (laid.Counts.Group, layout.For(laid.Counts.Group));
        var width = finding?.RowStitches.Average() ?? stitches;
        var (acrossCount, downCount) = laid.Edges is { } edges
            ? (edges.Columns, edges.Rows) : own.Up ? (width, (double)rows) : (rows, width);
        var foundation = finding is null
            ? Plain(shared, group.Fills is null ? shared.Stitch : FabricStitch.SingleCrochet, stitches)
            : Foundation.Plan(
                shared.Ring, shared.Sequence.Dyed, shared.Stitch, stitches, shared.TurningChainCounts, start,
                inRounds: working != Working.Turned) with
            { Companion = shared.CompanionFor(CompanionUse.Foundation) };
        return new PiecePlan(
            laid.Id,
            copies,
            finding is not null,
            working,
            stitches,
            laid.Shape is not null ? [stitches] : finding?.RowStitches ?? [stitches],
            rows)
        {
            FoundationChains = foundation.Chains,
            Start = start,
            StartSection = shared.Ring.Locate(start * ColourRing.Unit).Section,
            TurnCost = finding?.TurnCost ?? shared.TurnCost,
            Lean = finding?.Reading.Lean?.UnitsPerRow ?? 0,
            Motif = finding?.Reading.Kind ?? MotifKind.Scattered,
            Forgives = finding?.Forgiveness ?? default,
            Width = own.Across.Of(acrossCount, 0),
            Height = own.Down.Of(downCount, 0),
            SideBandRows = bands,
            Openings = openings,
            Foundation = foundation,
            Shape = laid.Shape,
            Taper = group.Fills is null ? null : new Taper(stitches, rows, group.SlopeOf(laid.Id)),
            WrongSideOut = laid.Turned,
        };
    }

    /// <summary>What takes yarn from the balls in one go; the first begins with the foundation.</summary>
    /// <param name="copy">From 1; missing where only one is made.</param>
    public static IEnumerable<PooledPiece> Pooled(SharedFabric shared, PiecePlan piece, int? copy) =>
        PieceFabric.Stretches(shared.Project.Fabric, piece).Select(stretch => new PooledPiece(
            stretch.In(piece.Id, copy),
            stretch.Path,
            stretch.Index > 0 || piece.Foundation.Companion ? 0 : ColourRing.ToMicro(piece.Foundation.Yarn),
            piece.FoundationChains)
        {
            FirstRow = stretch.FirstRow,
        });

    private static FoundationPlan Plain(SharedFabric shared, FabricStitch stitch, int stitches)
    {
        var (chains, first) = Foundation.Chains(stitch, stitches, stitch == shared.Stitch && shared.TurningChainCounts);
        return new FoundationPlan(chains, first, true, 0, 0, 0, 0) { Yarn = chains * Foundation.ChainInUnits(shared.Stitch) };
    }
}
