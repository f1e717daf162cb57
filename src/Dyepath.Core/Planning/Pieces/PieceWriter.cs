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
    /// <param name="finding">Missing for a plain piece of companion yarn.</param>
    public static PiecePlan Write(
        Fabrication fabrication,
        PieceId id,
        int copies,
        Working working,
        CountFinding? finding,
        int stitches,
        int rows,
        int start,
        Axis across,
        Axis down,
        int sideBandRows,
        ImmutableArray<PieceOpening> openings,
        bool wrongSideOut = false)
    {
        var width = finding?.RowStitches.Average() ?? stitches;
        var (acrossCount, downCount) = across.AlongStitches ? (width, (double)rows) : (rows, width);
        var foundation = finding is null
            ? Plain(fabrication, stitches)
            : Foundation.Plan(
                fabrication.Ring, fabrication.Stitch, stitches, fabrication.TurningChainCounts, start,
                fabrication.CompanionFor(CompanionUse.Foundation), working != Working.Turned);
        return new PiecePlan(
            id,
            copies,
            finding is not null,
            working,
            stitches,
            finding?.RowStitches ?? [stitches],
            rows,
            foundation.Chains,
            start,
            fabrication.Ring.Locate(start * ColourRing.Unit).Section,
            finding?.TurnCost ?? fabrication.TurnCost,
            finding?.Reading.Lean?.UnitsPerRow ?? 0,
            finding?.Reading.Kind ?? MotifKind.Scattered,
            finding?.Forgiveness?.Tighter ?? 0,
            finding?.Forgiveness?.Looser ?? 0,
            across.Of(acrossCount, 0),
            down.Of(downCount, 0),
            sideBandRows,
            openings)
        {
            Foundation = foundation,
            WrongSideOut = wrongSideOut,
        };
    }

    public static PooledPiece Pooled(Fabrication fabrication, PiecePlan piece, string name) => new(
        name,
        fabrication.Path(piece),
        piece.Foundation.Companion ? 0 : ColourRing.ToMicro(piece.Foundation.Yarn),
        piece.FoundationChains);

    private static FoundationPlan Plain(Fabrication fabrication, int stitches)
    {
        var (chains, first) = Foundation.Chains(fabrication.Stitch, stitches, fabrication.TurningChainCounts);
        return new FoundationPlan(chains, first, true, 0, 0, 0, 0, chains * Foundation.ChainInUnits(fabrication.Stitch));
    }
}
