using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Garments;

/// <summary>
/// Jumps in phase along one seam: for every pair of adjoining stitches the yarn place found on one side less the place that
/// the chosen extension of the other side would put there (derived in docs/seams.md). Starting the second piece later
/// by d adds d to every jump, so the jumps are kept as a tally and any start is judged at once.
/// </summary>
public sealed class SeamMeter
{
    private readonly long _period;
    private readonly Dictionary<long, int> _jumps = [];
    private int _pairs;

    /// <param name="period">Colour period P in micro-units, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The period is not over 0.</exception>
    public SeamMeter(long period)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(period);
        _period = period;
    }

    public void Add(long found, long expected)
    {
        var jump = Foundation.FloorMod(found - expected, _period);
        _jumps[jump] = _jumps.GetValueOrDefault(jump) + 1;
        _pairs++;
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
        var sum = 0.0;
        foreach (var (jump, times) in _jumps)
            sum += (double)times * Math.Abs(Lean.Wrap(jump + later, _period));
        return sum / _pairs;
    }
}
