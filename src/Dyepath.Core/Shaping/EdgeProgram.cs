using System.Buffers;
using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>
/// One edge of a part on its way through the rows. Columns are said as the shortfall: units short of the panel's edge, negative beyond it.
/// </summary>
/// <param name="Targets">The shortfall that the silhouette has in each row, micro-units.</param>
/// <param name="Least">The least shortfall that a row may have, where other parts lie beyond.</param>
/// <param name="Most">The most, where the edge is held.</param>
/// <param name="Ground">The shortfall of the row below the part.</param>
internal sealed record EdgeWish(long[] Targets, int[] Least, int[] Most, int Ground)
{
    /// <summary>Wished for at the panel's own edge from below on and free to lie there: nothing is nearer, and nothing breaks.</summary>
    public bool IsStraightUp =>
        Ground == 0 && Targets.All(t => t == 0) && Least.All(l => l <= 0) && Most.All(m => m >= 0);
}

/// <summary>How a part's first row comes from what is below it.</summary>
internal enum PartBeginning
{
    /// <summary>On the foundation chain: the panel's edges.</summary>
    Foundation,

    /// <summary>On a foundation chain under any of the panel's columns.</summary>
    Anywhere,

    /// <summary>After a turn, like any other row.</summary>
    Continued,

    /// <summary>With the yarn joined at any stitch.</summary>
    Joined,
}

/// <summary>What an outline costs, smaller first.</summary>
/// <param name="Broken">Rows out of tolerance and then, below that, the sum of the jumps and of what steps have to spare of them.</param>
/// <param name="Off">The area off the silhouette and then, below that, the number of steps.</param>
internal readonly record struct OutlineCost(long Broken, long Off) : IComparable<OutlineCost>
{
    /// <summary>
    /// More than all jumps of a piece together, 5,000 turns of at most half a sequence of 4,096 units, and two steps a
    /// row of at most 100 units.
    /// </summary>
    private const long OutOfTolerance = 1L << 44;

    /// <summary>More than all steps of a piece.</summary>
    private const long Micro = 1L << 14;

    public static OutlineCost Never { get; } = new(long.MaxValue, 0);

    public bool IsNever => Broken == long.MaxValue;

    /// <param name="worth">What a step has to bring, in micro-units of area.</param>
    /// <param name="spares">What it has to spare of jumps, in micro-units.</param>
    public static OutlineCost Step(long worth, long spares) => new(spares, worth * Micro + 1);

    public static OutlineCost Jump(long micro) => new(Math.Abs(micro), 0);

    public static OutlineCost Away(long micro, bool outOfTolerance) => new(outOfTolerance ? OutOfTolerance : 0, Math.Abs(micro) * Micro);

    public static OutlineCost operator +(OutlineCost a, OutlineCost b) =>
        a.IsNever || b.IsNever ? Never : new(a.Broken + b.Broken, a.Off + b.Off);

    public static bool operator <(OutlineCost a, OutlineCost b) => a.Broken < b.Broken || a.Broken == b.Broken && a.Off < b.Off;

    public static bool operator >(OutlineCost a, OutlineCost b) => b < a;

    public int CompareTo(OutlineCost other) => this < other ? -1 : other < this ? 1 : 0;
}

/// <summary>
/// The cheapest way of both edges through the rows of a part, by dynamic programming over rows with a state for each pair of shortfalls. A
/// row changes its beginning edge (slip stitches) and then its ending edge (left, grown); each change runs along one axis of the states,
/// with prefix minima, so that a row costs what it has states. One edge by itself is the same program with a single state on the other
/// axis.
/// </summary>
internal sealed class EdgeProgram
{
    /// <summary>Most states of all rows together.</summary>
    public const long MostStates = 1 << 24;

    private readonly SteadyPanel _panel;
    private readonly ShapeOptions _options;
    private readonly bool _breaks;
    private readonly Axis _right;
    private readonly Axis _left;
    private readonly bool _both;
    private readonly OutlineCost _step;
    private readonly long _tolerance;
    private readonly OutlineCost[] _ofLeft;

    /// <param name="right">Null: the left-hand edge alone.</param>
    /// <param name="left">Null: the right-hand edge alone.</param>
    /// <param name="breaks">Whether jumps are allowed, at their cost.</param>
    public EdgeProgram(SteadyPanel panel, ShapeOptions options, EdgeWish? right, EdgeWish? left, bool breaks)
    {
        (_panel, _options, _breaks, _both) = (panel, options, breaks, right is not null && left is not null);
        (_right, _left) = (
            new Axis(panel, options, right, breaks, Fabrics.FabricPath.MostStitches),
            new Axis(panel, options, left, breaks, EdgeLine.Furthest));
        _ofLeft = new OutlineCost[_left.Count];
        _tolerance = breaks ? ColourRing.ToMicro(options.Tolerance ?? EdgeLine.Furthest) : long.MaxValue;
        _step = OutlineCost.Step(ColourRing.ToMicro(options.StepWorth), breaks ? ColourRing.ToMicro(options.StepSpares) : 0);
        Rows = (right ?? left)!.Targets.Length;
    }

    public int Rows { get; }

    public long States => (long)Rows * _right.Count * _left.Count;

    /// <param name="firstRow">Of the piece.</param>
    /// <param name="goesOn">Whether another part goes on from the last row without a cut, so that its end is kept in step.</param>
    /// <returns>The shortfalls of each row; null where there is no way.</returns>
    public (int Right, int Left)[]? Solve(int firstRow, PartBeginning beginning, bool goesOn, Effort effort)
    {
        var size = _right.Count * _left.Count;
        var costs = new OutlineCost[size];
        Array.Fill(costs, beginning == PartBeginning.Anywhere ? default : OutlineCost.Never);
        if (beginning != PartBeginning.Anywhere)
            costs[_right.IndexOfGround * _left.Count + _left.IndexOfGround] = default;
        var next = new OutlineCost[size];
        // Written in full row by row, and done with once they are traced.
        var (atBeginning, atEnd) = (ArrayPool<ushort>.Shared.Rent(Rows * size), ArrayPool<ushort>.Shared.Rent(Rows * size));
        for (var row = 0; row < Rows; row++)
        {
            effort.Spend(4 * size);
            var fromRight = _panel.BeginningOf(firstRow + row) == RowEdge.Right;
            var beginnings = atBeginning.AsSpan(row * size, size);
            var ends = atEnd.AsSpan(row * size, size);
            if (row > 0 || beginning is PartBeginning.Continued or PartBeginning.Joined)
            {
                var rule = row == 0 && beginning == PartBeginning.Joined ? Rule.Join : Rule.Turn;
                Along(fromRight, rule, costs, next, beginnings);
                if (_both)
                    DropUnworkable(next);
                Along(!fromRight, Rule.End, next, costs, ends);
            }
            else
            {
                KeepIndices(fromRight, beginnings);
                KeepIndices(!fromRight, ends);
            }
            if (_both)
                DropUnworkable(costs);
            Add(costs, row);
        }
        if (goesOn && !_breaks)
            Along(_panel.EndOf(firstRow + Rows - 1) == RowEdge.Right, Rule.Stay, costs, costs, []);
        var best = 0;
        for (var i = 1; i < size; i++)
            best = costs[i] < costs[best] ? i : best;
        var way = costs[best].IsNever ? null : Trace(firstRow, best, atBeginning, atEnd);
        ArrayPool<ushort>.Shared.Return(atBeginning);
        ArrayPool<ushort>.Shared.Return(atEnd);
        return way;
    }

    private enum Rule
    {
        /// <summary>The next row begins after a turn.</summary>
        Turn,

        /// <summary>After a turn and without slip stitches.</summary>
        Stay,

        /// <summary>The yarn is joined further in or at the edge.</summary>
        Join,

        /// <summary>A row's end.</summary>
        End,
    }

    private (int Right, int Left)[] Trace(int firstRow, int at, ushort[] atBeginning, ushort[] atEnd)
    {
        var size = _right.Count * _left.Count;
        var rows = new (int, int)[Rows];
        for (var row = Rows - 1; row >= 0; row--)
        {
            rows[row] = (_right.ValueAt(at / _left.Count), _left.ValueAt(at % _left.Count));
            var fromRight = _panel.BeginningOf(firstRow + row) == RowEdge.Right;
            at = With(at, !fromRight, atEnd[row * size + at]);
            at = With(at, fromRight, atBeginning[row * size + at]);
        }
        return rows;
    }

    private int With(int at, bool right, int index) =>
        right ? index * _left.Count + at % _left.Count : at / _left.Count * _left.Count + index;

    private void KeepIndices(bool right, Span<ushort> from)
    {
        for (var i = 0; i < from.Length; i++)
            from[i] = (ushort)(right ? i / _left.Count : i % _left.Count);
    }

    /// <summary>Takes out what is too narrow or too wide.</summary>
    private void DropUnworkable(OutlineCost[] costs)
    {
        var most = Fabrics.FabricPath.MostStitches / _panel.Options.StitchesPerUnit;
        for (var i = 0; i < _right.Count; i++)
        {
            for (var j = 0; j < _left.Count; j++)
            {
                var units = _panel.Units - _right.ValueAt(i) - _left.ValueAt(j);
                if (units < _options.LeastUnits || units > most)
                    costs[i * _left.Count + j] = OutlineCost.Never;
            }
        }
    }

    /// <summary>What a finished row costs.</summary>
    private void Add(OutlineCost[] costs, int row)
    {
        if (!_both)
        {
            var axis = _right.Wish is null ? _left : _right;
            for (var i = 0; i < axis.Count; i++)
            {
                if (!costs[i].IsNever)
                    costs[i] += RowCost(axis, row, i);
            }
            return;
        }
        for (var j = 0; j < _left.Count; j++)
            _ofLeft[j] = RowCost(_left, row, j);
        for (var i = 0; i < _right.Count; i++)
        {
            var right = RowCost(_right, row, i);
            for (var j = 0; j < _left.Count; j++)
                costs[i * _left.Count + j] += right + _ofLeft[j];
        }
    }

    private OutlineCost RowCost(Axis axis, int row, int index)
    {
        if (axis.Wish is not { } wish)
            return default;
        var value = axis.ValueAt(index);
        if (value < wish.Least[row] || value > wish.Most[row])
            return OutlineCost.Never;
        var away = value * ColourRing.Unit - wish.Targets[row];
        return OutlineCost.Away(away, Math.Abs(away) > _tolerance);
    }

    /// <summary>
    /// Changes one edge: the costs of all states afterwards, and from which index along the axis each came, where that is asked for.
    /// </summary>
    private void Along(bool right, Rule rule, OutlineCost[] from, OutlineCost[] to, Span<ushort> source)
    {
        var (axis, lines, step, stride) = right ? (_right, _left.Count, 1, _left.Count) : (_left, _right.Count, _left.Count, 1);
        if (axis.Wish is null)
        {
            from.CopyTo(to, 0);
            source.Clear();
            return;
        }
        for (var line = 0; line < lines; line++)
        {
            var at = line * step;
            if (rule == Rule.End)
                End(axis.Count, at, stride, from, to, source);
            else if (rule == Rule.Join)
                Join(axis.Count, at, stride, from, to, source);
            else
                Turn(axis, rule == Rule.Turn && _options.SlipStitches, at, stride, from, to, source);
        }
    }

    private void End(int count, int at, int stride, OutlineCost[] from, OutlineCost[] to, Span<ushort> source)
    {
        Join(count, at, stride, from, to, source);
        if (!_options.Chains)
            return;
        var (least, best) = (OutlineCost.Never, 0);
        for (var i = count - 1; i >= 0; i--)
        {
            var cell = at + i * stride;
            if (least < to[cell])
                (to[cell], source[cell]) = (least, (ushort)best);
            if (from[cell] + _step is var grown && grown < least)
                (least, best) = (grown, i);
        }
    }

    /// <summary>As it was, or shorter.</summary>
    private void Join(int count, int at, int stride, OutlineCost[] from, OutlineCost[] to, Span<ushort> source)
    {
        var (least, best) = (OutlineCost.Never, 0);
        for (var i = 0; i < count; i++)
        {
            var cell = at + i * stride;
            (to[cell], source[cell]) = least < from[cell] ? (least, (ushort)best) : (from[cell], (ushort)i);
            if (from[cell] + _step is var shorter && shorter < least)
                (least, best) = (shorter, i);
        }
    }

    private void Turn(Axis axis, bool slips, int at, int stride, OutlineCost[] from, OutlineCost[] to, Span<ushort> source)
    {
        var best = slips ? axis.Slips.Clear() : null;
        for (var i = 0; i < axis.Count; i++)
        {
            var cell = at + i * stride;
            var came = from[cell];
            to[cell] = came + axis.Jumps[i];
            if (!source.IsEmpty)
                source[cell] = (ushort)i;
            if (best is null)
                continue;
            if (best[axis.Slips.To[i]] is var (least, index) && least < to[cell])
                (to[cell], source[cell]) = (least, (ushort)index);
            if (came + _step is var slipped && slipped < best[axis.Slips.From[i]].Cost)
                best[axis.Slips.From[i]] = (slipped, i);
        }
    }

    /// <summary>The shortfalls that an edge may have.</summary>
    private sealed class Axis
    {
        private readonly int _lowest;
        private readonly int _step = 1;

        public Axis(SteadyPanel panel, ShapeOptions options, EdgeWish? wish, bool breaks, int furthest)
        {
            Wish = wish;
            if (wish is null)
            {
                (Count, Jumps, Slips) = (1, [default], new SlipClasses(panel, [0]));
                return;
            }
            if (options.WithinPanel)
            {
                // Wherever a row may turn, and the first one too: whole steps that keep the motif from the panel's edge.
                _step = panel.KeepingStep ?? throw new ArgumentException("No step of this panel keeps the motif.", nameof(panel));
                (Count, IndexOfGround) = ((panel.Units - 1) / _step + 1, wish.Ground / _step);
                Slips = new SlipClasses(panel, [.. Enumerable.Range(0, Count).Select(ValueAt)]);
                Jumps = [.. Enumerable.Repeat(default(OutlineCost), Count)];
                return;
            }
            // Nothing further out is nearer: what the silhouette has, with two steps that keep the motif to either side of it.
            var beyond = 2 * (panel.KeepingStep ?? 0);
            var (outermost, innermost) = (
                Math.Floor(ColourRing.ToUnits(wish.Targets.Min())), Math.Ceiling(ColourRing.ToUnits(wish.Targets.Max())));
            _lowest = Math.Max((int)Math.Min(outermost, wish.Ground) - beyond, -furthest);
            var highest = Math.Min((int)Math.Max(innermost, wish.Ground) + beyond, furthest);
            Count = highest - _lowest + 1;
            IndexOfGround = wish.Ground - _lowest;
            int[] values = [.. Enumerable.Range(_lowest, Count)];
            Slips = new SlipClasses(panel, values);
            Jumps = [.. values.Select(v => panel.JumpAtTurn(v, v) is var jump && jump == 0 ? default
                : breaks ? OutlineCost.Jump(jump) : OutlineCost.Never)];
        }

        /// <summary>Missing: the edge is left aside.</summary>
        public EdgeWish? Wish { get; }

        public int Count { get; }

        public int IndexOfGround { get; }

        /// <summary>What a turn costs at each shortfall.</summary>
        public ImmutableArray<OutlineCost> Jumps { get; }

        public SlipClasses Slips { get; }

        public int ValueAt(int index) => _lowest + index * _step;
    }

    /// <summary>
    /// Slip stitches from shortfall x to y keep the motif when yarn·(y − x) − x − y ≡ 0 (mod P): when x and y have one class. So the best x
    /// below each y is kept a class.
    /// </summary>
    private sealed class SlipClasses
    {
        private readonly (OutlineCost Cost, int Index)[] _best;

        public SlipClasses(SteadyPanel panel, int[] values)
        {
            var classes = new Dictionary<long, int>();
            int ClassOf(long place)
            {
                var rest = ColourRing.Modulo(place, panel.Period);
                if (!classes.TryGetValue(rest, out var found))
                    classes.Add(rest, found = classes.Count);
                return found;
            }
            From = [.. values.Select(x => ClassOf(x * (panel.SlipMicro + ColourRing.Unit)))];
            To = [.. values.Select(y => ClassOf(y * (panel.SlipMicro - ColourRing.Unit)))];
            _best = new (OutlineCost, int)[classes.Count];
        }

        public ImmutableArray<int> From { get; }

        public ImmutableArray<int> To { get; }

        public (OutlineCost Cost, int Index)[] Clear()
        {
            Array.Fill(_best, (OutlineCost.Never, 0));
            return _best;
        }
    }
}
