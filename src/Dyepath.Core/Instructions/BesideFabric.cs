using System.Collections.Immutable;

namespace Dyepath.Core.Instructions;

/// <summary>Lines and bands beside the outline of a piece; in centimetres.</summary>
internal static class BesideFabric
{
    /// <summary>Where a line meets an outline is found to this, as a share of the stretch between two of its points.</summary>
    private const double Near = 1e-4;

    /// <summary>The stretches of a line that lie behind none of the pieces.</summary>
    public static IEnumerable<ImmutableArray<(double X, double Y)>> Seen(
        ImmutableArray<(double X, double Y)> line, IReadOnlyList<ImmutableArray<(double X, double Y)>> pieces)
    {
        bool IsSeen((double X, double Y) at) => !pieces.Any(piece => Holds(piece, at));
        var stretch = ImmutableArray.CreateBuilder<(double X, double Y)>();
        for (var i = 0; i < line.Length; i++)
        {
            var seen = IsSeen(line[i]);
            if (i > 0 && seen != IsSeen(line[i - 1]))
                stretch.Add(Border(line[i - 1], line[i]));
            if (seen)
                stretch.Add(line[i]);
            if (stretch.Count > 0 && (!seen || i == line.Length - 1))
            {
                yield return stretch.ToImmutable();
                stretch.Clear();
            }
        }

        (double X, double Y) Border((double X, double Y) from, (double X, double Y) to)
        {
            var (low, high) = (0.0, 1.0);
            (double X, double Y) At(double share) => (from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y));
            while (high - low > Near)
                (low, high) = IsSeen(At((low + high) / 2)) == IsSeen(from) ? ((low + high) / 2, high) : (low, (low + high) / 2);
            // On the side from which it is seen.
            return At(IsSeen(from) ? low : high);
        }
    }

    /// <summary>What is worked along an edge of a piece, so deep, on the side where there is no fabric.</summary>
    /// <param name="edge">Along the piece's outline, or all of it.</param>
    public static ImmutableArray<(double X, double Y)> Band(
        ImmutableArray<(double X, double Y)> edge, ImmutableArray<(double X, double Y)> piece, double depth)
    {
        var round = edge.SequenceEqual(piece);
        var along = round ? edge.Add(edge[0]) : edge;
        var sides = along.Zip(along.Skip(1), Across).ToArray();
        var (x, y) = ((along[0].X + along[1].X) / 2, (along[0].Y + along[1].Y) / 2);
        if (Holds(piece, (x + Near * sides[0].X, y + Near * sides[0].Y)))
            depth = -depth;
        var outer = along.Select((point, i) =>
        {
            var before = i > 0 ? sides[i - 1] : round ? sides[^1] : sides[0];
            var after = i < sides.Length ? sides[i] : round ? sides[0] : sides[^1];
            var share = depth / (1 + before.X * after.X + before.Y * after.Y);
            return (point.X + share * (before.X + after.X), point.Y + share * (before.Y + after.Y));
        });
        return [.. along, .. outer.Reverse()];
    }

    /// <summary>Whether a point is within an outline.</summary>
    private static bool Holds(ImmutableArray<(double X, double Y)> outline, (double X, double Y) at)
    {
        var within = false;
        for (int i = 0, last = outline.Length - 1; i < outline.Length; last = i++)
        {
            var (a, b) = (outline[last], outline[i]);
            if (a.Y > at.Y != b.Y > at.Y && a.X + (at.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X) < at.X)
                within = !within;
        }
        return within;
    }

    /// <summary>Square to a side, of length 1.</summary>
    private static (double X, double Y) Across((double X, double Y) from, (double X, double Y) to)
    {
        var length = Math.Sqrt((to.X - from.X) * (to.X - from.X) + (to.Y - from.Y) * (to.Y - from.Y));
        return ((from.Y - to.Y) / length, (to.X - from.X) / length);
    }
}
