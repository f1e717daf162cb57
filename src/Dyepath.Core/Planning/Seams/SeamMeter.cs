using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>
/// Jumps in phase along one seam: for every pair of adjoining stitches the yarn place found on one side less the place that
/// the chosen extension of the other side would put there (derived in docs/seams.md). Starting the second piece later
/// by d adds d to every jump, so the jumps are kept as a tally and any start is judged at once.
/// </summary>
public sealed class SeamMeter
{
    private readonly long _period;
    private readonly Dictionary<long, int> _jumps = [];
    private SortedJumps? _sorted;
    private int _pairs;

    /// <param name="period">Colour period P in micro-units, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The period is not over 0.</exception>
    public SeamMeter(long period)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(period);
        _period = period;
    }

    /// <summary>Counts one pair of adjoining stitches: where its yarn lies, and where it would for no jump, in micro-units.</summary>
    public void Add(long found, long expected)
    {
        var jump = ColourRing.Modulo(found - expected, _period);
        _jumps[jump] = _jumps.GetValueOrDefault(jump) + 1;
        _pairs++;
        _sorted = null;
    }

    /// <summary>
    /// Share of the pairs whose places differ by less than half a unit, so that the colours go on across the seam; 1 without pairs.
    /// </summary>
    /// <inheritdoc cref="MeanJump"/>
    public double Match(long later = 0) => _pairs == 0
        ? 1
        : (double)_jumps.Where(j => 2 * Math.Abs(Lean.Wrap(j.Key + later, _period)) < ColourRing.Unit).Sum(j => j.Value) / _pairs;

    /// <summary>
    /// Mean size of the jump in micro-units when the second piece starts <paramref name="later"/> than tallied; 0 without
    /// pairs.
    /// </summary>
    public double MeanJump(long later = 0)
    {
        if (_pairs == 0)
            return 0;
        _sorted ??= new SortedJumps(_jumps, _period);
        return (double)_sorted.Distances(later) / _pairs;
    }
}

/// <summary>
/// Jumps by size, with running sums, so that the sum of their distances for any start is a few look-ups: of the places on a ring those
/// up to half of it ahead are as far as they are, those beyond as far as the other way round.
/// </summary>
internal sealed class SortedJumps
{
    private readonly long _period;
    private readonly long[] _jumps;
    private readonly long[] _times;
    private readonly long[] _sums;

    public SortedJumps(Dictionary<long, int> jumps, long period)
    {
        _period = period;
        _jumps = [.. jumps.Keys.Order()];
        _times = new long[_jumps.Length + 1];
        _sums = new long[_jumps.Length + 1];
        for (var i = 0; i < _jumps.Length; i++)
        {
            _times[i + 1] = _times[i] + jumps[_jumps[i]];
            _sums[i + 1] = checked(_sums[i] + jumps[_jumps[i]] * _jumps[i]);
        }
    }

    /// <summary>Σ times · |jump + later|, wrapped.</summary>
    public long Distances(long later)
    {
        var from = ColourRing.Modulo(-later, _period);
        var half = _period / 2;
        var at = Before(from);
        var ahead = Before(from + half + 1);
        var wrapped = Before(from - _period + half + 1);
        return Sum(at, ahead, 1, -from) + Sum(ahead, _jumps.Length, -1, _period + from)
            + Sum(0, wrapped, 1, _period - from) + Sum(wrapped, at, -1, from);
    }

    /// <summary>Σ times · (sign · jump + offset) over a stretch of the list.</summary>
    private long Sum(int first, int end, int sign, long offset) =>
        sign * (_sums[end] - _sums[first]) + offset * (_times[end] - _times[first]);

    /// <summary>How many jumps are under <paramref name="value"/>.</summary>
    private int Before(long value)
    {
        int low = 0, high = _jumps.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_jumps[middle] < value)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
