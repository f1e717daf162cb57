using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Shaping;

/// <summary>Rows of the same columns, until the next run begins.</summary>
/// <param name="FromRow">Counted from the outline's first row.</param>
/// <param name="First">The rightmost column, in pooling units leftwards from the right-hand edge of the piece's first row.</param>
/// <param name="Last">The leftmost column, itself included.</param>
/// <param name="OverStanding">
/// Columns that the row before does not have are worked into stitches left standing (short rows), not over chains.
/// </param>
public readonly record struct OutlineRun(int FromRow, int First, int Last, bool OverStanding = false)
{
    /// <summary>Columns of each row.</summary>
    public int Units => Last - First + 1;
}

/// <summary>
/// Which columns each row has, in whole pooling units, held as runs of equal rows. Each row shares at least one column with the
/// row before.
/// </summary>
public sealed class Outline
{
    private Outline(int rows, ImmutableArray<OutlineRun> runs)
    {
        (Rows, Runs) = (rows, runs);
        FirstColumn = runs.Min(r => r.First);
        LastColumn = runs.Max(r => r.Last);
    }

    /// <summary>1 to 5,000.</summary>
    public int Rows { get; }

    /// <summary>From the first row up; neighbours differ.</summary>
    public ImmutableArray<OutlineRun> Runs { get; }

    /// <summary>The rightmost column of all rows.</summary>
    public int FirstColumn { get; }

    /// <summary>The leftmost column of all rows.</summary>
    public int LastColumn { get; }

    /// <param name="rows">1 to 5,000.</param>
    /// <param name="runs">
    /// The first from row 0, then upwards; columns −1,000 to 1,000 and at most 1,000 units a row. Runs that go on as before are merged.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A row, column or width outside its range.</exception>
    /// <exception cref="ArgumentException">Runs out of order, a row that does not meet the one before, or stitches left standing where
    /// there are none.</exception>
    public static Outline Of(int rows, IReadOnlyList<OutlineRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        Guard.InRange(rows, 1, FabricPath.MostRows, "rows");
        if (runs.Count == 0 || runs[0].FromRow != 0)
            throw new ArgumentException("An outline's first run begins at row 0.", nameof(runs));
        var merged = ImmutableArray.CreateBuilder<OutlineRun>();
        foreach (var run in runs)
        {
            Guard.InRange(run.FromRow, 0, rows - 1, "rows", nameof(runs));
            Guard.InRange(run.First, -FabricPath.MostStitches, FabricPath.MostStitches, "columns", nameof(runs));
            Guard.InRange(run.Last, run.First, run.First + FabricPath.MostStitches - 1, "columns", nameof(runs));
            if (merged.Count > 0 && run.FromRow <= merged[^1].FromRow)
                throw new ArgumentException($"A run from row {run.FromRow} comes after one from row {merged[^1].FromRow}.", nameof(runs));
            if (merged.Count == 0)
            {
                merged.Add(run with { OverStanding = false });
                continue;
            }
            var below = merged[^1];
            if ((run.First, run.Last) == (below.First, below.Last))
                continue;
            if (run.First > below.Last || run.Last < below.First)
                throw new ArgumentException($"Row {run.FromRow} shares no column with the row before.", nameof(runs));
            var grows = run.First < below.First || run.Last > below.Last;
            if (grows && run.OverStanding && (run.First < merged.Min(r => r.First) || run.Last > merged.Max(r => r.Last)))
                throw new ArgumentException($"Row {run.FromRow} has columns in which no stitch was left standing.", nameof(runs));
            merged.Add(run with { OverStanding = grows && run.OverStanding });
        }
        return new Outline(rows, merged.ToImmutable());
    }

    /// <summary>Rows that reach the leftmost column.</summary>
    public int FullRows => ByRow().Count(r => r.Last == LastColumn);

    /// <inheritdoc cref="Of"/>
    /// <param name="columns">First and last column of each row.</param>
    public static Outline ByRow(IReadOnlyList<(int First, int Last)> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        return Of(columns.Count, [.. columns.Select((c, row) => new OutlineRun(row, c.First, c.Last))]);
    }

    /// <inheritdoc cref="Of"/>
    public static Outline Rectangle(int units, int rows) => Of(rows, [new OutlineRun(0, 0, units - 1)]);

    /// <summary>The same so many columns further left, further right where negative.</summary>
    /// <inheritdoc cref="Of"/>
    public Outline Shifted(int columns) => Of(Rows, [.. Runs.Select(r => r with { First = r.First + columns, Last = r.Last + columns })]);

    /// <summary>The run that a row belongs to.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such row.</exception>
    public OutlineRun At(int row)
    {
        Guard.InRange(row, 0, Rows - 1, "rows");
        var (low, high) = (0, Runs.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Runs[middle].FromRow <= row ? (middle, high) : (low, middle - 1);
        }
        return Runs[low];
    }

    /// <summary>Whether the row, if there is one, has the column.</summary>
    public bool Has(int row, int column) =>
        row >= 0 && row < Rows && At(row) is var run && column >= run.First && column <= run.Last;

    /// <summary>Each row's columns, from the first row up.</summary>
    internal IEnumerable<OutlineRun> ByRow()
    {
        for (var i = 0; i < Runs.Length; i++)
        {
            var end = i + 1 < Runs.Length ? Runs[i + 1].FromRow : Rows;
            for (var row = Runs[i].FromRow; row < end; row++)
                yield return Runs[i] with { FromRow = row, OverStanding = Runs[i].OverStanding && row == Runs[i].FromRow };
        }
    }
}
