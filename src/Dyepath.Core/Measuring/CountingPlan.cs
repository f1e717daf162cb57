using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>What to count before a stitch count is trusted.</summary>
public enum CountingVerdict
{
    /// <summary>What has been counted suffices.</summary>
    Enough,

    /// <summary>More repeats would make it suffice.</summary>
    CountMore,

    /// <summary>No counting that a maker would do suffices.</summary>
    NotByCounting,

    /// <summary>The counts speak for another whole number than the one meant.</summary>
    AnotherIsNearer,
}

/// <summary>Whether free work of one stitch count can be trusted to lean as planned.</summary>
/// <param name="Verdict">Whether to go on counting.</param>
/// <param name="MoreRepeats">Repeats still to count: 0 when enough, and what it would take even where that is too many.</param>
/// <param name="LeanError">
/// Half width of the lean's interval as things stand (before the first repeat: after it), in stitches a row.
/// </param>
/// <param name="Words">For the maker.</param>
public sealed record FreeCounting(CountingVerdict Verdict, int MoreRepeats, double LeanError, string Words);

/// <summary>Whether the whole number of stitches meant for one section is what its counts say.</summary>
/// <param name="Section">Index in the order of the yarn's sections, from 0.</param>
/// <param name="Stitches">The whole number.</param>
/// <param name="ProbabilityRight">That the section's natural length rounds to it.</param>
/// <param name="Verdict">Whether to go on counting, or to choose another whole number.</param>
/// <param name="MoreRepeats">Repeats still to count for the confidence asked; 0 when reached.</param>
/// <param name="EitherServes">The section lies so near a half that either whole number asks about the same of the hands.</param>
public sealed record SectionCounting(
    int Section, int Stitches, double ProbabilityRight, CountingVerdict Verdict, int MoreRepeats, bool EitherServes);

/// <summary>How many repeats to count, by closed forms that need no data.</summary>
public static class CountingPlan
{
    /// <summary>More repeats than anyone counts before beginning: at 22 stitches, over 1,300 of them.</summary>
    public const int MostRepeats = 60;

    /// <summary>Beyond this the search stops; by then the error falls with the root of the repeats.</summary>
    private const int SearchLimit = 1_000_000;

    /// <summary>Variance of C, in units squared, from <paramref name="repeats"/> repeats counted in one run.</summary>
    /// <remarks>
    /// G(mC)/m² + d²Σc²/m + 1/(J·m(m²−1)), derived in docs/mathematics.md: wander and dye between the ends, and the slope of J
    /// parallel lines through rounded points (times 1 + 12·boundary where boundaries are less sure). One repeat has the rounding of
    /// its two ends, 1/6.
    /// </remarks>
    /// <param name="sections">Units of each section, over 0 and at most 1,000,000.</param>
    /// <param name="dye">Relative standard deviation of each section's length, 0 to 1.</param>
    /// <param name="repeats">1 or more.</param>
    /// <exception cref="ArgumentException">No section, or not as many dye figures as sections.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    /// <param name="boundary">
    /// Variance of the place at which the eye ends a section, beyond rounding, in units squared, 0 or more.
    /// </param>
    public static double SequenceVariance(
        IReadOnlyList<double> sections, IReadOnlyList<double> dye, HandsPrior hands, int repeats, double boundary = 0)
    {
        Guard.InRange(boundary, 0, 1e6, "stitches squared");
        Check(sections, dye, hands);
        Guard.InRange(repeats, 1, int.MaxValue, "repeats");
        double m = repeats;
        var sequence = sections.Sum();
        var dyed = sections.Zip(dye, (c, d) => c * c * d * d).Sum();
        var noise = 1 + 12 * boundary;
        var rounding = noise * (repeats == 1 ? 1.0 / 6 : Math.Min(1.0 / 6, 1 / (sections.Count * m * (m * m - 1))));
        return hands.WanderVariance(m * sequence) / (m * m) + dyed / m + rounding;
    }

    /// <summary>
    /// Variance of one section, in units squared, as the mean of its counts in <paramref name="repeats"/> repeats of one run.
    /// </summary>
    /// <inheritdoc cref="SequenceVariance" path="/param"/>
    /// <inheritdoc cref="SequenceVariance" path="/exception"/>
    public static double SectionVariance(
        IReadOnlyList<double> sections, IReadOnlyList<double> dye, HandsPrior hands, int section, int repeats, double boundary = 0)
    {
        Check(sections, dye, hands);
        Guard.InRange(section, 0, sections.Count - 1, "sections");
        Guard.InRange(repeats, 1, int.MaxValue, "repeats");
        var sequence = sections.Sum();
        var length = sections[section];
        var error = Math.Sqrt(SequenceVariance(sections, dye, hands, repeats, boundary));
        var rounding = new CountCovariance([.. sections], SectionDoubt.Of(dye), hands, error);
        var sum = 0.0;
        for (var lag = 0; lag < repeats; lag++)
        {
            var apart = lag * sequence;
            var wander = (hands.WanderVariance(apart + length) + hands.WanderVariance(Math.Abs(apart - length))) / 2
                - hands.WanderVariance(apart);
            sum += (lag == 0 ? 1 : 2) * (repeats - lag) * (wander + 2 * rounding.Rounding(lag));
        }
        return sum / ((double)repeats * repeats) + (length * length * dye[section] * dye[section] + 2 * boundary) / repeats;
    }

    /// <summary>Repeats, beyond those of <paramref name="counted"/>, until the lean of free work is known well enough.</summary>
    /// <param name="sections">Units of each section, over 0: as counted, or as expected before counting.</param>
    /// <param name="dye">Relative standard deviation of each section's length.</param>
    /// <param name="counted">What has been counted; null before the first repeat.</param>
    /// <param name="crossing">
    /// N + τ − lean, the yarn between a stitch and the one of equal colour above it, in units, over 0 and at most 10,000: an error
    /// of C counts crossing/C times in the lean.
    /// </param>
    /// <param name="tolerance">Lean error allowed, in stitches a row, over 0; ½ keeps a motif of lean 1 recognisable.</param>
    /// <param name="confidence">0.5 to 0.9999.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static FreeCounting ForFreeWork(
        IReadOnlyList<double> sections,
        IReadOnlyList<double> dye,
        HandsPrior hands,
        SequenceEstimate? counted,
        double crossing,
        double tolerance = 0.5,
        double confidence = 0.95)
    {
        Check(sections, dye, hands);
        Guard.InRange(crossing, 1e-6, 10_000, "stitches");
        Guard.InRange(tolerance, 1e-6, 1_000, "stitches a row");
        var leverage = crossing / sections.Sum() * Normal.TwoSided(Guard.InRange(confidence, 0.5, 0.9999, "probability"));
        var known = counted is null ? 0 : 1 / Square(counted.Sequence.StandardError);
        var now = leverage * (counted?.Sequence.StandardError ?? Math.Sqrt(SequenceVariance(sections, dye, hands, 1)));
        var need = Square(leverage / tolerance);
        var more = known >= need ? 0 : LeastRepeats(k => known + 1 / SequenceVariance(sections, dye, hands, k) >= need);
        var verdict = more == 0 ? CountingVerdict.Enough
            : more + (counted?.Repeats ?? 0) <= MostRepeats ? CountingVerdict.CountMore
            : CountingVerdict.NotByCounting;
        return new FreeCounting(verdict, more, now, verdict switch
        {
            CountingVerdict.Enough => $"These counts are enough for this width, {hands.Words}.",
            CountingVerdict.CountMore => $"Count {Repeats(more)} before trusting this width, {hands.Words}.",
            _ => $"No counting is enough at this width, {hands.Words}: work counted, colour by colour, or check as you go.",
        });
    }

    /// <summary>For counted work: whether each section's whole number is right, and what would make sure of it.</summary>
    /// <param name="stitches">The whole numbers meant, 1 or more, one a section.</param>
    /// <param name="eitherWithin">Distance from a half, in units, within which either whole number serves.</param>
    /// <param name="boundary">As in <see cref="SequenceVariance"/>.</param>
    /// <exception cref="ArgumentException">Not as many whole numbers as sections.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static ImmutableArray<SectionCounting> ForCountedWork(
        SequenceEstimate counted,
        IReadOnlyList<double> dye,
        IReadOnlyList<int> stitches,
        double confidence = 0.95,
        double eitherWithin = 0.1,
        double boundary = 0)
    {
        ArgumentNullException.ThrowIfNull(counted);
        ArgumentNullException.ThrowIfNull(stitches);
        if (stitches.Count != counted.Sections.Length)
            throw new ArgumentException($"{counted.Sections.Length} sections need as many whole numbers.", nameof(stitches));
        var sections = counted.Sections.Select(s => Math.Max(s.Value, 1e-3)).ToArray();
        Check(sections, dye, counted.Hands);
        var reach = Normal.TwoSided(Guard.InRange(confidence, 0.5, 0.9999, "probability"));
        return [.. stitches.Select((n, j) =>
        {
            Guard.InRange(n, 1, ColourRing.LongestSequence, "stitches", nameof(stitches));
            var estimate = counted.Sections[j];
            var right = estimate.ProbabilityWithin(n - 0.5, n + 0.5);
            var room = 0.5 - Math.Abs(estimate.Value - n);
            var either = Math.Abs(room) <= eitherWithin;
            if (right >= confidence || either)
                return new SectionCounting(j, n, right, CountingVerdict.Enough, 0, either);
            if (room < 0)
                return new SectionCounting(j, n, right, CountingVerdict.AnotherIsNearer, 0, false);
            var known = 1 / Square(estimate.StandardError);
            var need = Square(reach / room);
            var more = LeastRepeats(k => known + 1 / SectionVariance(sections, dye, counted.Hands, j, k, boundary) >= need, 2 *
                MostRepeats);
            var verdict = more + counted.Repeats <= MostRepeats ? CountingVerdict.CountMore : CountingVerdict.NotByCounting;
            return new SectionCounting(j, n, right, verdict, more, false);
        })];
    }

    private static void Check(IReadOnlyList<double> sections, IReadOnlyList<double> dye, HandsPrior hands)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(dye);
        ArgumentNullException.ThrowIfNull(hands);
        if (sections.Count is 0 or > ColourRing.MostSections || dye.Count != sections.Count)
            throw new ArgumentException($"1 to {ColourRing.MostSections} sections need as many dye figures.", nameof(dye));
        foreach (var units in sections)
            Guard.InRange(units, double.Epsilon, 1e6, "stitches", nameof(sections));
        foreach (var figure in dye)
            Guard.InRange(figure, 0, 1, "of a section's length", nameof(dye));
    }

    /// <summary>The least count that is enough, supposing that more never hurts; the limit when none is.</summary>
    private static int LeastRepeats(Func<int, bool> enough, int limit = SearchLimit)
    {
        int low = 0, high = 1;
        while (high < limit && !enough(high))
            (low, high) = (high, Math.Min(limit, high * 2));
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (enough(middle))
                high = middle;
            else
                low = middle;
        }
        return high;
    }

    private static string Repeats(int count) => count == 1 ? "1 more repeat" : $"{count} more repeats";

    private static double Square(double x) => x * x;
}
