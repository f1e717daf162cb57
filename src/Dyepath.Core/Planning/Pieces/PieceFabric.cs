using Dyepath.Core.Fabrics;

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
        return FabricPath.Steady(
            piece.Working, piece.RowStitches, rows ?? piece.Rows, plan.Project.Fabric.Path(piece.TurnCost, piece.Start));
    }
}
