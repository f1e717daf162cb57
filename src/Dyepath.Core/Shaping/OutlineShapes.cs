using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Shaping;

/// <summary>
/// Outlines of turned rows that follow from a rule; each begins with a row of the panel's full width, worked from the right.
/// </summary>
public static class OutlineShapes
{
    /// <summary>
    /// A bias panel: every row that ends on the side it leans to is worked on over <paramref name="step"/> chains, every row that ends on
    /// the other side leaves as many unworked. Even rows keep the count.
    /// </summary>
    /// <param name="step">Units a row pair, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A row or column outside its range, as in <see cref="Outline.Of"/>.</exception>
    /// <exception cref="ArgumentException">A step that leaves no stitch.</exception>
    public static Outline Bias(int units, int rows, int step, RowEdge towards)
    {
        Guard.InRange(step, 1, FabricPath.MostStitches, "units");
        return Outline.ByRow([.. Enumerable.Range(0, rows).Select(row =>
        {
            // Even rows end on the left and odd ones on the right, so that each edge moves with its own rows.
            var (left, right) = (row / 2 * step, (row + 1) / 2 * step);
            return towards == RowEdge.Left ? (right, units - 1 + left) : (-right, units - 1 - left);
        })]);
    }

    /// <summary>Every row leaves <paramref name="step"/> units unworked at its end, the first row none.</summary>
    /// <param name="step">0 or more; negative where every row is worked on over as many chains.</param>
    /// <inheritdoc cref="Bias"/>
    public static Outline Taper(int units, int rows, int step) =>
        Outline.ByRow([.. Enumerable.Range(0, rows).Select(row => ((row + 1) / 2 * step, units - 1 - row / 2 * step))]);

    /// <summary>
    /// A panel with short-row pairs: a row that ends at the edge stops short, the next one works back, and the first row of the next pair
    /// goes on over what was left, as far as it is worked itself.
    /// </summary>
    /// <param name="edge">Where they stop short.</param>
    /// <param name="pairs">
    /// The first row of each pair, which ends at that edge, in rising order and not row 0; and the units that it leaves of the panel's.
    /// </param>
    /// <inheritdoc cref="Bias"/>
    /// <exception cref="ArgumentException">A row that does not end at the edge, or pairs that overlap.</exception>
    public static Outline ShortRows(int units, int rows, RowEdge edge, IReadOnlyList<(int Row, int Leave)> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        OutlineRun Row(int row, int leave) =>
            edge == RowEdge.Left ? new(row, 0, units - 1 - leave, OverStanding: true) : new(row, leave, units - 1, OverStanding: true);
        List<OutlineRun> runs = [Row(0, 0)];
        var free = 1;
        foreach (var (row, leave) in pairs)
        {
            Guard.InRange(leave, 1, units - 1, "units");
            if (row < free || row % 2 != (edge == RowEdge.Left ? 0 : 1))
                throw new ArgumentException($"Row {row} does not end at that edge, or meets another pair.", nameof(pairs));
            if (row > free && free > 1)
                runs.Add(Row(free, 0));
            runs.Add(Row(row, leave));
            free = row + 2;
        }
        if (free > 1 && free < rows)
            runs.Add(Row(free, 0));
        return Outline.Of(rows, runs);
    }
}
