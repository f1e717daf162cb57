using Dyepath.Core.Fabrics;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Planning;

/// <summary>The planned fabric of a piece.</summary>
public static class PieceFabric
{
    /// <param name="rows">Rows to work; missing, all of the piece's.</param>
    public static Fabric Of(Plan plan, PiecePlan piece, int? rows = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Fabric.Work(plan.Sequence.Ring, PathOf(plan, piece, rows));
    }

    /// <summary>Where its stitches lie along the yarn, without their colours.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    public static FabricPath PathOf(Plan plan, PiecePlan piece, int? rows = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        return PathOf(plan.Project.Fabric, piece, rows);
    }

    internal static FabricPath PathOf(FabricChoice fabric, PiecePlan piece, int? rows = null) =>
        FabricPath.Steady(piece.Working, piece.RowStitches, rows ?? piece.Rows, fabric.Path(piece.TurnCost, piece.Start));
}
