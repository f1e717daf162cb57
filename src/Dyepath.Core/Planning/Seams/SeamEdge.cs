using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>A stitch that a seam leaves to be seen, and the one that would follow it across the seam if the fabric went on.</summary>
/// <param name="Seen">Where its unit begins along the yarn, in micro-units.</param>
/// <param name="Beyond">The same of the one that would follow.</param>
public readonly record struct SeamStitch(long Seen, long Beyond);

/// <summary>Edges of a piece as runs of the stitches that adjoin a seam (derived in docs/seams.md).</summary>
public static class SeamEdge
{
    /// <summary>Row ends at the right-hand edge (of the first row), rows in the order given.</summary>
    /// <param name="hidden">Units that the seam hides, in micro-units.</param>
    public static ImmutableArray<SeamStitch> Right(FabricPath path, int from, int rows, long hidden) =>
        Run(rows, i => new SeamStitch(path.FromRight(from + i, hidden), path.FromRight(from + i, hidden - ColourRing.Unit)));

    /// <summary>Row ends at the left-hand edge.</summary>
    public static ImmutableArray<SeamStitch> Left(FabricPath path, int from, int rows, long hidden) =>
        Run(rows, i => new SeamStitch(path.FromLeft(from + i, hidden), path.FromLeft(from + i, hidden - ColourRing.Unit)));

    /// <summary>Stitches of a row, rightmost first; beyond it lies the next row.</summary>
    /// <param name="row">The last row that the seam leaves to be seen.</param>
    /// <param name="first">Units from the right-hand edge.</param>
    public static ImmutableArray<SeamStitch> Top(FabricPath path, int row, int first, int units) =>
        Across(path, row, row + 1, first, units);

    /// <summary>Stitches of a row, rightmost first; beyond it lies the row before.</summary>
    public static ImmutableArray<SeamStitch> Bottom(FabricPath path, int row, int first, int units) =>
        Across(path, row, row - 1, first, units);

    /// <summary>The same stitches from the other end.</summary>
    public static ImmutableArray<SeamStitch> Reversed(this ImmutableArray<SeamStitch> edge) => [.. edge.Reverse()];

    /// <summary>Adds the jumps between two edges; where one is longer, each of its stitches meets the nearest of the other.</summary>
    public static void AddSeam(
        this SeamMeter meter, ImmutableArray<SeamStitch> first, ImmutableArray<SeamStitch> second, SeamExtension extension)
    {
        ArgumentNullException.ThrowIfNull(meter);
        if (first.IsEmpty || second.IsEmpty)
            return;
        var pairs = Math.Max(first.Length, second.Length);
        for (var i = 0; i < pairs; i++)
        {
            var one = first[(int)((long)i * first.Length / pairs)];
            var other = second[(int)((long)i * second.Length / pairs)];
            meter.Add(other.Seen, extension == SeamExtension.Mirrored ? one.Seen : one.Beyond);
        }
    }

    private static ImmutableArray<SeamStitch> Across(FabricPath path, int row, int beyond, int first, int units) =>
        Run(units, i => new SeamStitch(
        path.FromRight(row, (first + i) * ColourRing.Unit), path.FromRight(beyond, (first + i) * ColourRing.Unit)));

    private static ImmutableArray<SeamStitch> Run(int length, Func<int, SeamStitch> stitch)
    {
        var run = ImmutableArray.CreateBuilder<SeamStitch>(Math.Max(0, length));
        for (var i = 0; i < length; i++)
            run.Add(stitch(i));
        return run.ToImmutable();
    }
}
