using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>The edge of a piece as it is worn, in centimetres from its left and from its top, y downwards.</summary>
/// <param name="Points">Round the piece.</param>
/// <param name="Cuts">Along what each opening cuts out of it.</param>
public sealed record WornOutline(
    ImmutableArray<(double X, double Y)> Points, ImmutableArray<(OpeningId Opening, ImmutableArray<(double X, double Y)> Points)> Cuts)
{
    /// <summary>From the planned measures, shaped as the piece's rows are.</summary>
    public static WornOutline Of(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        var (width, height) = (piece.Width.Centimetres, piece.Height.Centimetres);
        if (piece.Taper is { } taper)
        {
            var tip = width / taper.Stitches;
            return new WornOutline(
                taper.Slope == PieceSide.Left
                    ? [(0, height), (width, height), (width, 0), (width - tip, 0)] : [(0, height), (width, height), (tip, 0), (0, 0)], []);
        }
        if (piece.Shape is not { } shape)
            return new WornOutline([(0, height), (width, height), (width, 0), (0, 0)], []);
        if (plan.Construction.GroupOf(piece.Id).Gores is not null)
            return new WornOutline(Gored(shape, width, height), []);
        var edges = new ShapedEdges(
            shape, plan.Construction, piece.Id, plan.Direction == Direction.Up, piece.WrongSideOut, (_, _) => (0, 0));
        return new WornOutline(
            [.. edges.Corners().Select(Place)],
            [.. edges.Cuts.OfType<CutExtent>().Select(c => (c.Opening, edges.CornersOf(c).Select(Place).ToImmutableArray()))]);

        (double X, double Y) Place((int X, int Y) corner) =>
            (width * corner.X / edges.Columns, height * (1 - (double)corner.Y / edges.Rows));
    }

    /// <summary>
    /// As wide from the bottom to the top as rows reach there, in the middle; between heights at which rows end, straight.
    /// </summary>
    private static ImmutableArray<(double X, double Y)> Gored(ShapedPiece shape, double width, double height)
    {
        var ends = shape.Parts[0].Outline.ByRow().Select(r => r.Last + 1).ToArray();
        int[] levels = [0, .. ends.Distinct().Order()];
        var all = levels[^1];
        var sides = new List<(double Up, int Rows)> { (0, ends.Length) };
        for (var i = 0; i + 1 < levels.Length; i++)
            sides.Add(((levels[i] + levels[i + 1]) / 2.0, ends.Count(e => e > levels[i])));
        sides.Add((all, sides[^1].Rows));
        (double X, double Y) At((double Up, int Rows) side, int way) =>
            (width * (1 + way * (double)side.Rows / ends.Length) / 2, height * (1 - side.Up / all));
        return [.. sides.Select(s => At(s, 1)), .. sides.AsEnumerable().Reverse().Select(s => At(s, -1))];
    }
}
