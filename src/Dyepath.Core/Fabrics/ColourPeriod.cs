using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>
/// P: the shortest stretch after which the colours come again, equal neighbours merged round the ring. A ring that is
/// written with several repeats, or whose palette makes its halves alike, has a period shorter than its sequence.
/// </summary>
/// <param name="Micro">P in micro-units; where repeats differ within their tolerance, their mean, rounded.</param>
/// <param name="Repeats">Periods in one sequence.</param>
/// <param name="Stretches">Colours of one period, lengths the mean of its repeats, rounded.</param>
/// <param name="Origin">Where the first stretch begins, in micro-units from the sequence's start; 0 or negative.</param>
public sealed record ColourPeriod(long Micro, int Repeats, ImmutableArray<ColourStretch> Stretches, long Origin)
{
    /// <param name="tolerance">How far repeats of one stretch may differ and still be the same, in units, 0 to 1,000.</param>
    /// <returns>Null for a ring of one colour, which has no period and no lean.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is outside its range.</exception>
    public static ColourPeriod? Of(ColourRing ring, double tolerance = 0)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var within = ColourRing.ToMicro(Guard.InRange(tolerance, 0, 1_000, "units"));
        var (merged, origin) = MergedRing.Of(ring);
        if (merged.Length == 1)
            return null;
        var length = Enumerable.Range(1, merged.Length).First(d => merged.Length % d == 0 && IsPeriod(merged, d, within));
        var repeats = merged.Length / length;
        var stretches = Enumerable.Range(0, length)
            .Select(i => new ColourStretch(
                merged[i].Colour, Mean(Enumerable.Range(0, repeats).Sum(k => merged[i + k * length].Micro), repeats)))
            .ToImmutableArray();
        return new ColourPeriod(Mean(ring.Total, repeats), repeats, stretches, origin);
    }

    private static bool IsPeriod(ImmutableArray<ColourStretch> merged, int d, long within)
    {
        for (var i = 0; i < merged.Length; i++)
        {
            var (one, other) = (merged[i], merged[(i + d) % merged.Length]);
            if (one.Colour != other.Colour || Math.Abs(one.Micro - other.Micro) > within)
                return false;
        }
        return true;
    }

    private static long Mean(long sum, int count) => (2 * sum + count) / (2 * count);
}
