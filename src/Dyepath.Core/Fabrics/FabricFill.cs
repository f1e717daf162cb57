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
    private readonly Dictionary<long, Strip> _strips = [];
    private readonly bool _stripped;
    private readonly int _longest;
    private readonly int _block;

    public FabricFill(RingReader reader, FabricPath path)
    {
        _reader = reader;
        _path = path;
        _block = RepeatingRows();
        for (var row = 0; row < path.Rows; row++)
            _longest = Math.Max(_longest, path.Cells(row));
        _stripped = PrepareStrips();
    }

    /// <summary>Returns how many cells are two-toned.</summary>
    public int Fill(Span<byte> cells)
    {
        var (twoToned, filled) = (0, 0);
        var perRow = new int[_block];
        for (var row = 0; row < _block; row++)
        {
            var length = _path.Cells(row);
            perRow[row] = FillRow(row, cells.Slice(filled, length));
            filled += length;
        }
        for (var row = 0; row < _path.Rows; row++)
            twoToned += perRow[row % _block];
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
        if (_stripped)
        {
            var (strip, phase) = (_strips[FractionOf(from)], PhaseOf(from));
            strip.Copy(phase, backwards, plain);
            return twoToned + strip.TwoTonedWithin(phase, plain.Length);
        }
        twoToned += _reader.FillRuns(from, plain);
        if (backwards)
            plain.Reverse();
        return twoToned;
    }

    /// <summary>A counting chain or a half unit at the row's end, of other than one unit of yarn.</summary>
    private int FillSpecial(int row, int order, Span<byte> cells, bool backwards)
    {
        (cells[backwards ? cells.Length - 1 - order : order], var two) = _reader.Show(_path.SpanOf(row, order));
        return two ? 1 : 0;
    }

    private bool PrepareStrips()
    {
        if (_reader.Total % ColourRing.Unit != 0)
            return false;
        var fractions = new HashSet<long>();
        for (var row = 0; row < _block && fractions.Count <= MostStrips; row++)
            fractions.Add(FractionOf(_path.RowStart(row)));
        var length = (int)(_reader.Total / ColourRing.Unit) + _longest;
        if (fractions.Count > MostStrips || (long)fractions.Count * length > (long)_longest * _block)
            return false;
        foreach (var fraction in fractions)
            _strips.Add(fraction, new Strip(_reader, fraction, length));
        return true;
    }

    private static long FractionOf(long position)
    {
        var rest = position % ColourRing.Unit;
        return rest < 0 ? rest + ColourRing.Unit : rest;
    }

    private int PhaseOf(long position)
    {
        var rest = (position - FractionOf(position)) % _reader.Total;
        return (int)((rest < 0 ? rest + _reader.Total : rest) / ColourRing.Unit);
    }

    /// <summary>Rows after which a steady fabric repeats along the yarn, or all of them.</summary>
    private int RepeatingRows()
    {
        if (_path.Advance is not { } advance)
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
            _forwards = new byte[length];
            if (reader.FillRuns(fraction, _forwards) > 0)
            {
                _twoTonedBefore = new int[length + 1];
                for (var i = 0; i < length; i++)
                {
                    var two = reader.Show(new YarnSpan(fraction + i * ColourRing.Unit, ColourRing.Unit)).TwoToned;
                    _twoTonedBefore[i + 1] = _twoTonedBefore[i] + (two ? 1 : 0);
                }
            }
            _backwards = [.. _forwards];
            Array.Reverse(_backwards);
        }

        public void Copy(int phase, bool backwards, Span<byte> cells)
        {
            var (strip, at) = backwards ? (_backwards, _backwards.Length - phase - cells.Length) : (_forwards, phase);
            strip.AsSpan(at, cells.Length).CopyTo(cells);
        }

        public int TwoTonedWithin(int phase, int length) =>
            _twoTonedBefore is { } before ? before[phase + length] - before[phase] : 0;
    }
}
