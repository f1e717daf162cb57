using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>The planned fabric of a piece.</summary>
public static class PieceFabric
{
    /// <param name="rows">Rows to work; missing, all of the piece's.</param>
    public static Fabric Of(Plan plan, PiecePlan piece, int? rows = null)
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
        var path = piece.RowStitches.Length == 2
            ? FabricPath.Alternating(piece.Working, piece.Stitches, count, options)
            : FabricPath.Constant(piece.Working, piece.Stitches, count, options);
        return Fabric.Work(plan.Ring, path);
    }
}
