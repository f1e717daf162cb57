using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>
/// Fills a fabric's cells. Steady rows repeat after a known number of rows, so that only the first block is worked out and
/// the rest copied; within the block, a sequence of whole units makes every row a stretch of one periodic strip.
/// </summary>
internal sealed class FabricFill
{
    /// <summary>More different fractions of a unit among the row starts than this, and rows are filled run by run.</summary>
    private const int MostStrips = 8;

    private readonly RingReader _reader;
    private readonly FabricPath _path;
    private readonly int _block;

    /// <summary>Whole units of the sequence.</summary>
    private readonly int _sequence;

    /// <summary>One a fraction of a unit that rows start at; empty where rows are filled run by run.</summary>
    private readonly List<Strip> _strips;

    public FabricFill(RingReader reader, FabricPath path)
    {
        _reader = reader;
        _path = path;
        _block = RepeatingRows();
        _sequence = (int)(reader.Total / ColourRing.Unit);
        _strips = PrepareStrips();
    }

    /// <summary>Returns how many cells are two-toned.</summary>
    public int Fill(Span<byte> cells)
    {
        var (twoToned, filled) = (0, 0);
        var (times, over) = Math.DivRem(_path.Rows, _block);
        for (var row = 0; row < _block; row++)
        {
            var length = _path.Cells(row);
            twoToned += FillRow(row, cells.Slice(filled, length)) * (row < over ? times + 1 : times);
            filled += length;
        }
        while (filled < cells.Length)
        {
            var copied = Math.Min(filled, cells.Length - filled);
            cells[..copied].CopyTo(cells[filled..]);
            filled += copied;
        }
        return twoToned;
    }

    private int FillRow(int row, Span<byte> cells)
    {
        var backwards = _path.RunsBackwards(row);
        var (first, end) = (0, cells.Length);
        var twoToned = 0;
        if (_path.TurningChainCounts)
            twoToned += FillSpecial(row, first++, cells, backwards);
        if (end > first && _path.SpanOf(row, end - 1).Length != ColourRing.Unit)
            twoToned += FillSpecial(row, --end, cells, backwards);
        if (end == first)
            return twoToned;
        var from = _path.RowStart(row) + first * ColourRing.Unit;
        var plain = backwards ? cells[(cells.Length - end)..(cells.Length - first)] : cells[first..end];
        if (_strips.Count > 0)
            return twoToned + CopyStrip(from, backwards, plain);
        twoToned += _reader.FillRuns(from, plain);
        if (backwards)
            plain.Reverse();
        return twoToned;
    }

    private int CopyStrip(long from, bool backwards, Span<byte> cells)
    {
        var fraction = Fraction(from);
        var phase = (int)(ColourRing.Modulo(from - fraction, _reader.Total) / ColourRing.Unit);
        foreach (var strip in _strips)
        {
            if (strip.Fraction == fraction)
                return strip.Copy(phase, backwards, cells);
        }
        throw new InvalidOperationException($"No strip was prepared for rows that start {fraction} micro-units into a stitch.");
    }

    /// <summary>A counting chain or a half unit at the row's end, of other than one unit of yarn.</summary>
    private int FillSpecial(int row, int order, Span<byte> cells, bool backwards)
    {
        (cells[backwards ? cells.Length - 1 - order : order], var two) = _reader.Show(_path.SpanOf(row, order));
        return two ? 1 : 0;
    }

    private List<Strip> PrepareStrips()
    {
        if (_reader.Total % ColourRing.Unit != 0)
            return [];
        var fractions = new List<long>();
        var longest = 0;
        for (var row = 0; row < _block; row++)
        {
            longest = Math.Max(longest, _path.Cells(row));
            var fraction = Fraction(_path.RowStart(row));
            if (fractions is [.., var last] && last == fraction || fractions.Contains(fraction))
                continue;
            fractions.Add(fraction);
            if (fractions.Count > MostStrips)
                return [];
        }
        var length = _sequence + longest;
        return (long)fractions.Count * length > (long)longest * _block ? [] : fractions.ConvertAll(f => new Strip(_reader, f, length));
    }

    /// <summary>Micro-units into the unit.</summary>
    private static long Fraction(long position) => ColourRing.Modulo(position, ColourRing.Unit);

    /// <summary>Rows after which a steady fabric repeats along the yarn, or all of them.</summary>
    private int RepeatingRows()
    {
        // The first row's own chain costs what the first turn does, so it is like the later ones only where all turns are.
        if (_path.Advance is not { } advance || (_path.TurningChainCounts && _path.Turns[0] != _path.Turns[Math.Min(1, _path.Rows - 1)]))
            return _path.Rows;
        var step = advance.Micro % _reader.Total;
        var (a, b) = (_reader.Total, step);
        while (b != 0)
            (a, b) = (b, a % b);
        var repeat = _reader.Total / a;
        return repeat > _path.Rows / advance.Rows ? _path.Rows : (int)repeat * advance.Rows;
    }

    /// <summary>The colours of one sequence and one longest row of whole units, forwards and backwards.</summary>
    private sealed class Strip
    {
        private readonly byte[] _forwards;
        private readonly byte[] _backwards;

        /// <summary>Two-toned units before each position; null where there are none.</summary>
        private readonly int[]? _twoTonedBefore;

        public Strip(RingReader reader, long fraction, int length)
        {
            Fraction = fraction;
            _forwards = GC.AllocateUninitializedArray<byte>(length);
            if (reader.FillRuns(fraction, _forwards) > 0)
            {
                _twoTonedBefore = new int[length + 1];
                for (var i = 0; i < length; i++)
                {
                    var two = reader.Show(new YarnSpan(fraction + i * ColourRing.Unit, ColourRing.Unit)).TwoToned;
                    _twoTonedBefore[i + 1] = _twoTonedBefore[i] + (two ? 1 : 0);
                }
            }
            _backwards = GC.AllocateUninitializedArray<byte>(length);
            _forwards.CopyTo(_backwards);
            _backwards.AsSpan().Reverse();
        }

        public long Fraction { get; }

        /// <summary>Returns how many of the cells are two-toned.</summary>
        public int Copy(int phase, bool backwards, Span<byte> cells)
        {
            var (strip, at) = backwards ? (_backwards, _backwards.Length - phase - cells.Length) : (_forwards, phase);
            strip.AsSpan(at, cells.Length).CopyTo(cells);
            return _twoTonedBefore is { } before ? before[phase + cells.Length] - before[phase] : 0;
        }
    }
}
