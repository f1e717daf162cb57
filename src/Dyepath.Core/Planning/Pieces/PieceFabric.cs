using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Shaping;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>Rows of a piece that are worked without cutting the yarn.</summary>
/// <param name="Index">Among the piece's, in the order of work.</param>
/// <param name="FirstRow">Of the piece, from 0.</param>
/// <param name="Path">Its rows are counted from the first; columns are the piece's.</param>
public sealed record PieceStretch(int Index, int FirstRow, FabricPath Path)
{
    /// <summary>Of a shaped piece; none of a rectangle.</summary>
    public ImmutableArray<ShapedPart> Parts { get; init; } = [];

    /// <summary>Which of a piece's it is.</summary>
    /// <param name="copy">From 1; missing where only one is made.</param>
    public PieceRun In(PieceId piece, int? copy = null) => new(piece, copy, Index == 0 ? null : PartNames.SideOf(Parts[0]));
}

/// <summary>The planned fabric of a piece; of a shaped one, of the rectangle that its first row would make.</summary>
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

    /// <summary>The rows of a piece by how the yarn goes through them: all of a rectangle's are one stretch.</summary>
    public static ImmutableArray<PieceStretch> Stretches(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        return Stretches(plan.Project.Fabric, piece);
    }

    internal static ImmutableArray<PieceStretch> Stretches(FabricChoice fabric, PiecePlan piece)
    {
        if (piece.Shape is not { } shape)
            return [new PieceStretch(0, 0, PathOf(fabric, piece))];
        var stretches = ImmutableArray.CreateBuilder<PieceStretch>();
        for (var i = 0; i < shape.Parts.Length;)
        {
            var end = i + 1;
            while (end < shape.Parts.Length && shape.Parts[end].Continues)
                end++;
            var parts = shape.Parts[i..end];
            var options = shape.Panel.Options with
            {
                Start = ColourRing.ToUnits(parts[0].Path.RowStart(0)),
                FirstRowBackwards = parts[0].From == RowEdge.Left,
            };
            var path = parts.Length == 1 ? parts[0].Path : FabricPath.RowByRow(
                piece.Working, [.. parts.SelectMany(p => p.Path.RowStitches)], options, [.. parts.SelectMany(p => p.Path.FirstColumns)],
                pulled: [.. parts.SelectMany(p => p.Path.Pulled).Select(ColourRing.ToUnits)]);
            stretches.Add(new PieceStretch(stretches.Count, parts[0].FirstRow, path) { Parts = parts });
            i = end;
        }
        return stretches.ToImmutable();
    }

    internal static FabricPath PathOf(FabricChoice fabric, PiecePlan piece, int? rows = null) =>
        FabricPath.Steady(piece.Working, piece.RowStitches, rows ?? piece.Rows, fabric.Path(piece.TurnCost, piece.Start));
}
