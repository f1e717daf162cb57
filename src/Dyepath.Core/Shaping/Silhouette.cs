using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>A corner of an edge that is wished for.</summary>
/// <param name="Row">Rows above the piece's beginning, 0 to 5,000: 0 is the lower side of the first row.</param>
/// <param name="Units">Pooling units leftwards from the right-hand edge of the piece's first row, −2,000 to 2,000.</param>
public readonly record struct EdgePoint(double Row, double Units);

/// <summary>
/// Where an edge should run: straight from corner to corner, upright below the first one and above the last. Rows look at it at half their
/// height.
/// </summary>
public sealed class EdgeLine
{
    /// <summary>Of one edge.</summary>
    public const int MostPoints = 10_000;

    /// <summary>Furthest from the right-hand edge of the first row, in units.</summary>
    public const int Furthest = 2_000;

    private EdgeLine(ImmutableArray<EdgePoint> points) => Points = points;

    /// <summary>From below; neighbours at one height make a step.</summary>
    public ImmutableArray<EdgePoint> Points { get; }

    /// <param name="points">1 to 10,000, from below; two at one height make a step, which a row at that height takes as worked.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    /// <exception cref="ArgumentException">Points that go down.</exception>
    public static EdgeLine Of(IReadOnlyList<EdgePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        Guard.InRange(points.Count, 1, MostPoints, "points", nameof(points));
        for (var i = 0; i < points.Count; i++)
        {
            Guard.InRange(points[i].Row, 0, FabricPath.MostRows, "rows", nameof(points));
            Guard.InRange(points[i].Units, -Furthest, Furthest, "units", nameof(points));
            if (i > 0 && points[i].Row < points[i - 1].Row)
                throw new ArgumentException($"An edge runs upwards, and point {i} lies below the one before.", nameof(points));
        }
        return new EdgeLine([.. points]);
    }

    /// <inheritdoc cref="Of"/>
    public static EdgeLine Upright(double units) => Of([new EdgePoint(0, units)]);

    /// <param name="units">Where each row's edge should be.</param>
    /// <param name="firstRow">The first of those rows.</param>
    /// <inheritdoc cref="Of"/>
    public static EdgeLine ByRow(IReadOnlyList<double> units, int firstRow = 0)
    {
        ArgumentNullException.ThrowIfNull(units);
        return Of([.. units.Select((u, i) => new EdgePoint(firstRow + i + 0.5, u))]);
    }

    /// <param name="points">Height above the piece's beginning, and distance leftwards from the right-hand edge of its first row.</param>
    /// <param name="unitWidth">Width of a pooling unit, over 0.</param>
    /// <param name="rowHeight">Over 0.</param>
    /// <inheritdoc cref="Of"/>
    public static EdgeLine FromLengths(IReadOnlyList<(Length Up, Length Across)> points, Length unitWidth, Length rowHeight)
    {
        ArgumentNullException.ThrowIfNull(points);
        return Of([.. points.Select(p => new EdgePoint(p.Up / rowHeight, p.Across / unitWidth))]);
    }

    /// <summary>At half the height of a row, in micro-units.</summary>
    internal long At(int row)
    {
        var height = row + 0.5;
        var (low, high) = (-1, Points.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Points[middle].Row <= height ? (middle, high) : (low, middle - 1);
        }
        if (low < 0 || low == Points.Length - 1)
            return ColourRing.ToMicro(Points[Math.Max(low, 0)].Units);
        var (from, to) = (Points[low], Points[low + 1]);
        return ColourRing.ToMicro(from.Units + (to.Units - from.Units) * ((height - from.Row) / (to.Row - from.Row)));
    }
}

/// <summary>Rows between two wished-for edges.</summary>
/// <param name="FirstRow">Of the piece; of the first part 0.</param>
/// <param name="Rows">1 to 5,000.</param>
/// <param name="Right">The right-hand edge; its heights are the piece's, also where the part begins further up.</param>
/// <param name="Left">The left-hand edge.</param>
public sealed record SilhouettePart(int FirstRow, int Rows, EdgeLine Right, EdgeLine Left)
{
    /// <summary>Index of the part that it stands on; none for the first.</summary>
    public int? Below { get; init; }

    /// <summary>Edges that must lie where they do, whatever that breaks, since something is sewn to what they leave.</summary>
    public ImmutableArray<EdgeHold> Held { get; init; } = [];
}

/// <summary>Rows in which an edge lies within limits.</summary>
/// <param name="Edge">Which edge of the rows.</param>
/// <param name="FirstRow">Of the piece.</param>
/// <param name="Rows">How many.</param>
/// <param name="Least">Units leftwards from the right-hand edge of the piece's first row.</param>
/// <param name="Most">Units leftwards from the right-hand edge of the piece's first row, included.</param>
public readonly record struct EdgeHold(RowEdge Edge, int FirstRow, int Rows, int Least, int Most)
{
    /// <summary>Whether a row, of the piece, is among them.</summary>
    public bool Has(int row) => row >= FirstRow && row < FirstRow + Rows;
}
