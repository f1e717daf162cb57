using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Limits;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>
/// Tests of what was counted and measured against what it is supposed to be; <c>units</c> is what the maker calls what she counts.
/// </summary>
internal static class SequenceFindings
{
    /// <summary>Each finding that rests on chance being excluded is wrong at most this often.</summary>
    private const double Significance = 0.01;

    /// <summary>Repeats of one ball needed before its halves are compared.</summary>
    private const int LeastForDrift = 6;

    /// <summary>Balls whose sequence differs from that of all others together, at 1 % shared among the balls.</summary>
    public static IEnumerable<MeasuringFinding> Balls(
        Yarn yarn, IReadOnlyList<CountedRun> runs, SequenceEstimate whole, SectionDoubt doubt, string units, Effort? effort)
    {
        var balls = runs.GroupBy(r => r.Ball).Select(g => g.ToArray()).ToArray();
        if (balls.Length < 2)
            yield break;
        foreach (var (group, (own, others)) in balls.Zip(SequenceEstimator.Apart(balls, whole, doubt, effort)))
        {
            if (ChanceOfDifference(own, others!) >= Significance / balls.Length)
                continue;
            var ball = group[0].Ball;
            yield return new(FindingKind.BallDisagrees, $"yarn.counted[{ball}]", string.Create(CultureInfo.InvariantCulture,
                $"{yarn.Counted[ball].Name} takes {own.Sequence.Value:0.0} {units} a sequence where the other balls "
                + $"take {others!.Sequence.Value:0.0}, section by section more than chance explains. Work it with its own "
                + $"counts, or keep it apart."));
        }
    }

    /// <summary>Balls whose sequence changes from their first half to their second, at 1 % shared among the balls.</summary>
    public static IEnumerable<MeasuringFinding> Drifts(
        Yarn yarn, IReadOnlyList<CountedRun> runs, SequenceEstimate whole, SectionDoubt doubt, string units, Effort? effort)
    {
        var balls = runs.GroupBy(r => r.Ball).Where(g => g.Sum(r => r.Rows.Length) >= LeastForDrift).ToArray();
        var halves = balls.SelectMany<IGrouping<int, CountedRun>, IReadOnlyList<CountedRun>>(Halves).ToArray();
        var estimates = SequenceEstimator.Apart(halves, whole, doubt, effort);
        for (var i = 0; i < balls.Length; i++)
        {
            var (early, late) = (estimates[2 * i].Own, estimates[2 * i + 1].Own);
            if (ChanceOfDifference(early, late) >= Significance / balls.Length)
                continue;
            yield return new(FindingKind.BallDrifts, $"yarn.counted[{balls[i].Key}]", string.Create(CultureInfo.InvariantCulture,
                $"{yarn.Counted[balls[i].Key].Name} takes {early.Sequence.Value:0.0} {units} a sequence at first and "
                + $"{late.Sequence.Value:0.0} later on, section by section more than chance explains. Check the count as "
                + $"you go."));
        }
    }

    private static IReadOnlyList<CountedRun>[] Halves(IGrouping<int, CountedRun> ball)
    {
        var half = ball.Sum(r => r.Rows.Length) / 2;
        var first = new List<CountedRun>();
        var second = new List<CountedRun>();
        foreach (var run in ball)
        {
            var before = Math.Clamp(half - first.Sum(r => r.Rows.Length), 0, run.Rows.Length);
            if (before > 0)
                first.Add(run with { Rows = run.Rows[..before] });
            if (before < run.Rows.Length)
                second.Add(run with { FirstRepeat = run.FirstRepeat + before, Rows = run.Rows[before..] });
        }
        return [first, second];
    }

    /// <summary>Repeats with a count, or a total, that such hands and dye reach less than once in a hundred records.</summary>
    public static IEnumerable<MeasuringFinding> OddRepeats(
        Yarn yarn, IReadOnlyList<CountedRun> runs, SequenceEstimate estimate, SectionDoubt doubt, string units)
    {
        var hands = estimate.Hands;
        var sections = estimate.Sections;
        var rows = runs.Sum(r => r.Rows.Length);
        if (rows < 3)
            yield break;
        var limit = Normal.TwoSided(1 - Significance / (rows * (sections.Length + 1)));
        var dyed = sections.Select((s, j) => s.Value * s.Value * doubt.Dye[j] * doubt.Dye[j]).ToArray();
        var deviations = sections.Select((s, j) => Math.Sqrt(
            1.0 / 6 + doubt.OfBothEnds(j) + hands.WanderVariance(Math.Max(0, s.Value)) + dyed[j])).ToArray();
        var total = Math.Sqrt(
            1.0 / 6 + doubt.OfBothEnds(0) + hands.WanderVariance(estimate.Sequence.Value) + dyed.Sum());
        foreach (var run in runs)
        {
            for (var r = 0; r < run.Rows.Length; r++)
            {
                var row = run.Rows[r];
                var repeat = run.FirstRepeat + r;
                var place = $"yarn.counted[{run.Ball}].repeats[{repeat}]";
                var where = $"Repeat {repeat + 1} of {yarn.Counted[run.Ball].Name}";
                var worst = Enumerable.Range(0, row.Length).MaxBy(j => Math.Abs(row[j] - sections[j].Value) / deviations[j]);
                // A count is a whole number: half a stitch on either side is rounding, not oddity.
                if ((Math.Abs(row[worst] - sections[worst].Value) - 0.5) / deviations[worst] > limit)
                {
                    yield return new(FindingKind.OddRepeat, $"{place}[{worst}]", string.Create(CultureInfo.InvariantCulture,
                        $"{where}: {row[worst]} {units} of {yarn.Sections[worst].Name} where about "
                        + $"{sections[worst].Value:0.0} are usual. Count it again, or look for a knot."));
                }
                else if ((Math.Abs(row.Sum() - estimate.Sequence.Value) - 0.5) / total > limit)
                {
                    yield return new(FindingKind.OddRepeat, place, string.Create(CultureInfo.InvariantCulture,
                        $"{where} takes {row.Sum()} {units} where about {estimate.Sequence.Value:0.0} are usual. Count "
                        + $"it again, or look for a knot."));
                }
            }
        }
    }

    /// <summary>Counts that vary more than the hands supposed, at 1 %.</summary>
    public static IEnumerable<MeasuringFinding> Hands(SequenceEstimate estimate)
    {
        if (estimate.DegreesOfFreedom > 0
            && Normal.ChiSquareAbove(estimate.Residual, estimate.DegreesOfFreedom) < Significance)
        {
            yield return new(FindingKind.HandsUnlikePrior, "fabric.hands",
                $"The counts vary more than they would {estimate.Hands.Words}. The intervals are too narrow: give the "
                + "maker's own figures.");
        }
    }

    /// <summary>
    /// A shorter sequence inside the one listed, and a sequence that runs there and back: equal colours, and lengths equal within
    /// their error.
    /// </summary>
    public static IEnumerable<MeasuringFinding> Symmetries(Yarn yarn, ReadOnlySpan<double> sections, double[] covariance)
    {
        var found = new List<MeasuringFinding>();
        var count = sections.Length;
        for (var period = 1; period < count; period++)
        {
            var shift = period;
            if (count % period != 0 || !Matches(yarn, sections, covariance, j => (j + shift) % count))
                continue;
            found.Add(new(FindingKind.ShorterPeriod, "yarn.sections",
                $"The sequence repeats after {(period == 1 ? "1 section" : $"{period} sections")}: list those only, "
                + "and the counts in shorter rows, which then say more."));
            break;
        }
        // One or two colours always run there and back.
        for (var axis = 0; axis < count && count > 2; axis++)
        {
            var sum = axis;
            if (!Matches(yarn, sections, covariance, j => (sum - j + count) % count))
                continue;
            var turn = axis % 2 == 0 ? axis / 2 : (axis + count) % 2 == 0 ? (axis + count) / 2 % count : -1;
            found.Add(new(FindingKind.ThereAndBack, "yarn.sections",
                (turn >= 0 ? $"The sequence runs there and back about {yarn.Sections[turn].Name}" : "The sequence runs there and back")
                + ": it is the same from either end of the ball, and the pattern may repeat in half the rows."));
            break;
        }
        return found;
    }

    /// <summary>
    /// Sections whose share of the counted stitches is not their share of the measured length, at 1 % shared among the sections.
    /// </summary>
    /// <param name="lengths">Measured lengths with their errors, cm.</param>
    public static IEnumerable<MeasuringFinding> Lengths(Yarn yarn, SequenceEstimate estimate, ImmutableArray<Estimate> lengths)
    {
        var limit = Normal.TwoSided(1 - Significance / lengths.Length);
        var total = lengths.Sum(l => l.Value);
        var variance = lengths.Sum(l => l.StandardError * l.StandardError);
        for (var j = 0; j < lengths.Length && lengths.Length > 1; j++)
        {
            var share = lengths[j].Value / total;
            var own = lengths[j].StandardError * lengths[j].StandardError;
            var measured = new Estimate(share, Math.Sqrt(own * (1 - 2 * share) + share * share * variance) / total);
            var counted = estimate.Share(j);
            if (Estimate.Apart(measured, counted) <= limit)
                continue;
            yield return new(FindingKind.CountsAndLengthsDisagree, $"yarn.sections[{j}].length", string.Create(CultureInfo.InvariantCulture,
                $"{yarn.Sections[j].Name} is {Math.Max(0, counted.Value) * 100:0.0} % of the counted stitches but "
                + $"{measured.Value * 100:0.0} % of the measured length. The counts are used; measure the length again, or "
                + $"count more."));
        }
    }

    private static bool Matches(Yarn yarn, ReadOnlySpan<double> sections, double[] covariance, Func<int, int> partner)
    {
        var count = sections.Length;
        var pairs = Enumerable.Range(0, count).Select(j => (A: j, B: partner(j))).Where(p => p.A < p.B).Distinct().ToArray();
        for (var j = 0; j < count; j++)
        {
            if (yarn.Sections[j].Colour != yarn.Sections[partner(j)].Colour)
                return false;
        }
        foreach (var (a, b) in pairs)
        {
            var variance = covariance[a * count + a] + covariance[b * count + b] - 2 * covariance[a * count + b];
            var limit = Normal.TwoSided(1 - Significance / pairs.Length) * Math.Sqrt(Math.Max(0, variance));
            if (Math.Abs(sections[a] - sections[b]) > limit)
                return false;
        }
        return true;
    }

    /// <summary>Probability that independent estimates of one sequence lie at least so far apart.</summary>
    private static double ChanceOfDifference(SequenceEstimate a, SequenceEstimate b)
    {
        var apart = a.Sections.Zip(b.Sections, (x, y) => x.Value - y.Value).ToArray();
        var covariance = a.CovarianceMatrix.Zip(b.CovarianceMatrix, (x, y) => x + y).ToArray();
        return Normal.ChiSquareAbove(Cholesky.Factor(covariance, apart.Length).QuadraticForm(apart), apart.Length);
    }
}
