using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>The planned fabric of a piece.</summary>
public static class PieceFabric
{
    /// <param name="rows">Rows to work; missing, all of the piece's.</param>
    public static Fabric Of(Plan plan, PiecePlan piece, int? rows = null) => Fabric.Work((plan ?? throw new ArgumentNullException(nameof(plan))).Ring, PathOf(plan, piece, rows));

    /// <summary>Where its stitches lie along the yarn, without their colours.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    public static FabricPath PathOf(Plan plan, PiecePlan piece, int? rows = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        var fabric = plan.Project.Fabric;
        var options = new PathOptions
        {
            TurnCost = piece.TurnCost,
            Start = piece.Start,
            StitchesPerUnit = fabric.Stitch.StitchesPerUnit,
            TurningChainCounts = fabric.ChainCountsAsStitch,
        };
        var count = rows ?? piece.Rows;
        return piece.RowStitches.Length == 2
            ? FabricPath.Alternating(piece.Working, piece.Stitches, count, options)
            : FabricPath.Constant(piece.Working, piece.Stitches, count, options);
    }
}
