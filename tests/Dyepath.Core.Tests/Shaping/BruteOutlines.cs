namespace Dyepath.Core.Tests.Shaping;

/// <summary>
/// What an outline costs, compared in this order: rows out of tolerance, jumps with what the steps have to spare of them, area off the silhouette with what the steps are worth,
/// steps.
/// </summary>
internal readonly record struct BruteCost(int OutOfTolerance, long Jumps, long Away, int Steps, long StepWorth, long StepSpares) : IComparable<BruteCost>
{
    public int CompareTo(BruteCost other) => Key.CompareTo(other.Key);

    public (int, long, long, int) Key => (OutOfTolerance, Jumps + Steps * StepSpares, Away + Steps * StepWorth, Steps);
}

/// <summary>
/// Tries every outline of a small panel's rows within a range, follows the yarn through each row by row and compares where stitches lie
/// with the panel that is never shaped. Shares no code with the planner.
/// </summary>
internal sealed class BruteOutlines(int units, int period, long turn, long slip)
{
    private const long Unit = BruteShape.Unit;

    private readonly List<(int First, int Last)> _rows = [];

    private (BruteCost Cost, (int First, int Last)[] Rows)? _best;

    public required (int Lowest, int Highest) Range { get; init; }

    public required long[] Right { get; init; }

    public required long[] Left { get; init; }

    public bool Chains { get; init; }

    public bool Slips { get; init; }

    public int Least { get; init; } = 1;

    public long StepWorth { get; init; }

    public long StepSpares { get; init; }

    private long Spares => Tolerance is null ? 0 : StepSpares;

    /// <summary>Null: no jump is allowed.</summary>
    public long? Tolerance { get; init; }

    public (BruteCost Cost, (int First, int Last)[] Rows) Best()
    {
        _rows.Add((0, units - 1));
        Go(0, 0, RowCost((0, units - 1), 0));
        return _best!.Value;
    }

    /// <param name="start">Where the last row's yarn began.</param>
    /// <param name="offset">How far that lies off the panel's, wrapped.</param>
    private void Go(long start, long offset, BruteCost cost)
    {
        if (_best is { } best && cost.CompareTo(best.Cost) >= 0)
            return;
        var row = _rows.Count;
        if (row == Right.Length)
        {
            _best = (cost, [.. _rows]);
            return;
        }
        var (first, last) = _rows[^1];
        var end = start + (last - first + 1) * Unit + turn;
        var fromRight = row % 2 == 0;
        var begins = fromRight ? first : last;
        for (var slipped = 0; slipped <= (Slips ? Range.Highest - Range.Lowest : 0); slipped++)
        {
            var column = fromRight ? begins + slipped : begins - slipped;
            // Something of the row below is left to work into, as wide as a row has to be.
            if ((fromRight ? last - column : column - first) + 1 < Least)
                break;
            var at = end + slipped * slip;
            var off = Wrap(at - PanelPlace(row, column));
            var jump = Wrap(off - offset);
            if (jump != 0 && (Tolerance is null || slipped > 0))
                continue;
            for (var other = Range.Lowest; other <= Range.Highest; other++)
            {
                var here = fromRight ? (First: column, Last: units - 1 - other) : (First: other, Last: column);
                var left = fromRight ? last - here.Last : here.First - first;
                if (here.Last - here.First + 1 < Least || left < 0 && !Chains)
                    continue;
                _rows.Add(here);
                Go(at, off, Sum(
                    cost, RowCost(here, row), new BruteCost(0, Math.Abs(jump), 0, (left == 0 ? 0 : 1) + (slipped == 0 ? 0 : 1), StepWorth, Spares)));
                _rows.RemoveAt(row);
            }
        }
    }

    private BruteCost RowCost((int First, int Last) row, int at)
    {
        long[] away = [Math.Abs(row.First * Unit - Right[at]), Math.Abs((row.Last + 1) * Unit - Left[at])];
        return new BruteCost(Tolerance is { } most ? away.Count(a => a > most) : 0, 0, away.Sum(), 0, StepWorth, Spares);
    }

    private static BruteCost Sum(params BruteCost[] costs) =>
        new(costs.Sum(c => c.OutOfTolerance), costs.Sum(c => c.Jumps), costs.Sum(c => c.Away), costs.Sum(c => c.Steps), costs[0].StepWorth, costs[0].StepSpares);

    /// <summary>By adding up the rows of the panel below.</summary>
    private long PanelPlace(int row, int column) =>
        row * (units * Unit + turn) + (row % 2 == 0 ? column : units - 1 - column) * Unit;

    private long Wrap(long place)
    {
        var rest = (place % (period * Unit) + period * Unit) % (period * Unit);
        return 2 * rest > period * Unit ? rest - period * Unit : rest;
    }
}
