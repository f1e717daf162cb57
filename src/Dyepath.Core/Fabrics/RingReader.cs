using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>Reads off which colour a stretch of yarn shows.</summary>
internal sealed class RingReader
{
    private const ulong EveryByte = 0x0101_0101_0101_0101;

    private readonly ColourRing _ring;

    /// <summary>Where each section ends within the sequence.</summary>
    private readonly long[] _ends;

    public RingReader(ColourRing ring)
    {
        _ring = ring;
        _ends = new long[ring.Sections.Length];
        var end = 0L;
        for (var i = 0; i < _ends.Length; i++)
            _ends[i] = end += ring.Sections[i];
    }

    public long Total => _ring.Total;

    /// <summary>
    /// The section that a stitch shows: of the colour that covers most of the span (a tie goes to the colour met first), the
    /// section that covers most; two-toned when that colour covers less than three quarters.
    /// </summary>
    public (byte Section, bool TwoToned) Show(YarnSpan span)
    {
        var from = ColourRing.Modulo(span.From, Total);
        return Show(from, SectionAt(from), span.Length);
    }

    /// <summary>Fills <paramref name="cells"/> with whole-unit stitches from a position on, and counts the two-toned ones.</summary>
    public int FillRuns(long from, Span<byte> cells)
    {
        var ends = _ends;
        var at = ColourRing.Modulo(from, Total);
        var section = SectionAt(at);
        var twoToned = 0;
        while (true)
        {
            var run = (int)Math.Min((ends[section] - at) / ColourRing.Unit, cells.Length);
            // Most runs are short: one store that overshoots is cheaper than a call, and the next run overwrites it.
            if (run <= sizeof(ulong) && cells.Length >= sizeof(ulong))
                MemoryMarshal.Write(cells, EveryByte * (ulong)section);
            else
                cells[..run].Fill((byte)section);
            cells = cells[run..];
            if (cells.IsEmpty)
                return twoToned;
            at += run * ColourRing.Unit;
            if (at < ends[section])
            {
                (cells[0], var two) = Show(at, section, ColourRing.Unit);
                twoToned += two ? 1 : 0;
                at += ColourRing.Unit;
                cells = cells[1..];
                if (cells.IsEmpty)
                    return twoToned;
            }
            if (at >= Total)
            {
                at = at < 2 * Total ? at - Total : at % Total;
                section = 0;
            }
            while (at >= ends[section])
                section++;
        }
    }

    private (byte Section, bool TwoToned) Show(long at, int section, long length)
    {
        var first = _ends[section] - at;
        if (first >= length)
            return ((byte)section, false);
        var next = section + 1 == _ends.Length ? 0 : section + 1;
        if (next != section && first + _ring.Sections[next] >= length)
        {
            var second = length - first;
            var most = Math.Max(first, second);
            var winner = first >= second ? section : next;
            return ((byte)winner, _ring.Colours[section] != _ring.Colours[next] && 4 * most < 3 * length);
        }
        return ShowMany(at, section, length);
    }

    /// <summary>The general case: several sections, perhaps the whole sequence more than once, in one stitch.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private (byte Section, bool TwoToned) ShowMany(long at, int first, long length)
    {
        var count = _ends.Length;
        Span<long> bySection = stackalloc long[ColourRing.MostSections];
        Span<long> byColour = stackalloc long[ColourRing.MostSections];
        bySection.Clear();
        byColour.Clear();
        var (cycles, rest) = Math.DivRem(length, Total);
        for (var i = 0; i < count; i++)
            bySection[i] = cycles * _ring.Sections[i];
        for (var (i, left) = (first, _ends[first] - at); rest > 0; i = (i + 1) % count, left = _ring.Sections[i])
        {
            var taken = Math.Min(left, rest);
            bySection[i] += taken;
            rest -= taken;
        }
        for (var i = 0; i < count; i++)
            byColour[_ring.Colours[i]] += bySection[i];
        var best = first;
        for (var step = 1; step < count; step++)
        {
            var i = (first + step) % count;
            var gain = byColour[_ring.Colours[i]] - byColour[_ring.Colours[best]];
            if (gain > 0 || (_ring.Colours[i] == _ring.Colours[best] && bySection[i] > bySection[best]))
                best = i;
        }
        return ((byte)best, 4 * byColour[_ring.Colours[best]] < 3 * length);
    }

    private int SectionAt(long at)
    {
        var found = Array.BinarySearch(_ends, at);
        return found >= 0 ? found + 1 : ~found;
    }
}
