using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Making.Drift;

/// <summary>
/// A maker's own figures from her logs by maximum likelihood, each with its 95 % interval by profile likelihood: the values at which
/// the best that the other two can do is within 1.92 of the best log-likelihood (Wilks, Annals of Mathematical Statistics 9, 1938).
/// An interval that reaches an end of the search, a spread of 0.05 % or 30 % or a memory of 0.1 or 1,000 stitches, is open there.
/// </summary>
/// <param name="Bias">
/// Yarn per stitch relative to the plan, less 1; positive is looser. An error in the sequence's length is part of it.
/// </param>
/// <param name="Spread">See <see cref="HandModel.Spread"/>.</param>
/// <param name="Memory">See <see cref="HandModel.Memory"/>. Readings a row apart say little of a memory much under a row.</param>
/// <param name="Readings">How many they come from.</param>
public sealed record MakerFit(Figure Bias, Figure Spread, Figure Memory, int Readings)
{
    /// <summary>Fewer readings say too little: intervals from them are no longer what they claim.</summary>
    public const int FewestReadings = 30;

    /// <summary>
    /// Readings that lie closer than this many stitches in the mean crowd: a filter that keeps a normal takes one rounding read many
    /// times over for as many roundings, and believes too much. The fall that bounds an interval is then <see cref="Crowding"/> times
    /// as deep, as simulated makers who read every section ask for; see docs/making.md.
    /// </summary>
    private const int CrowdedUnder = 40;

    private const double Crowding = 2.3;

    private const int OfBias = 0, OfSpread = 1, OfMemory = 2;

    /// <summary>What the search goes over: the bias, and the logarithms of spread and memory.</summary>
    private static readonly double[] Least = [-0.3, Math.Log(0.0005), Math.Log(0.1)], Most = [0.3, Math.Log(0.3), Math.Log(1_000)];

    /// <summary>First steps towards an interval's ends.</summary>
    private static readonly double[] Steps = [0.003, 0.2, 0.7];

    private static readonly double[] Begin = [0, Math.Log(0.02), Math.Log(30)];

    /// <param name="logs">Of one maker's pieces, in order; bias, spread, memory and gain are taken to be the same in all.</param>
    /// <returns>Nothing when the readings are too few.</returns>
    public static MakerFit? Of(params ImmutableArray<MakerLog> logs)
    {
        MakerLog.Entry[] entries = [.. logs.SelectMany(log => log.Entries)];
        int readings = entries.Count(entry => entry is MakerLog.Read);
        if (readings < FewestReadings) return null;
        bool crowded = entries.OfType<MakerLog.Worked>().Sum(worked => (double)worked.Stitches) < (double)CrowdedUnder * readings;
        double reach = DriftFilter.Sd95 * (crowded ? Math.Sqrt(Crowding) : 1);
        double Value(double[] at)
        {
            double[] within = Within(at);
            // Beyond the ends it falls off, so that the search turns back.
            double beyond = at.Zip(within, (a, b) => Math.Abs(a - b)).Sum();
            return LogLikelihood(logs, within[OfBias], Math.Exp(within[OfSpread]), Math.Exp(within[OfMemory])) - 10 * beyond;
        }

        double[] best = Begin;
        double value = double.NegativeInfinity;
        // Twice, because a simplex may collapse before it has arrived.
        for (int time = 0; time < 2; time++) (best, value) = Maximise(Value, best, null, 0.001);
        double[] found = Within(best);
        Figure Found(int of, Func<double, double> unit) => new(
            unit(found[of]), unit(End(Value, found, value, reach, of, -1)), unit(End(Value, found, value, reach, of, 1)));
        return new MakerFit(Found(OfBias, x => x), Found(OfSpread, Math.Exp), Found(OfMemory, Math.Exp), readings);
    }

    /// <summary>
    /// The logarithm of how likely the readings are, one after another under the filter, for hands known but for their gain. What is
    /// learnt of the gain goes on from piece to piece.
    /// </summary>
    internal static double LogLikelihood(ImmutableArray<MakerLog> logs, double bias, double spread, double memory)
    {
        double sum = 0;
        DriftFilter? filter = null;
        foreach (MakerLog log in logs)
        {
            DriftModel model = log.Model.Of(spread, memory, bias);
            if (filter is not null)
                model = model with { Gain = Math.Clamp(filter.GainMean, 0, 2), GainSpread = Math.Min(filter.GainSd, 1) };
            filter = DriftFilter.Begin(model);
            DriftFilter row = filter;
            foreach (MakerLog.Entry entry in log.Entries)
            {
                switch (entry)
                {
                    case MakerLog.RowBegun:
                        row = filter;
                        break;
                    case MakerLog.Worked worked:
                        filter = filter.Predict(worked.Stitches, worked.Correction);
                        break;
                    case MakerLog.Read read:
                        filter = filter.Observe(read.Phase, adapts: false, out double mass);
                        sum += Math.Log(mass);
                        break;
                    case MakerLog.RippedBack:
                        filter = filter.RipBackTo(row);
                        break;
                    case MakerLog.Shifted shifted:
                        filter = filter.Shift(shifted.Stitches, shifted.Error);
                        break;
                    case MakerLog.HookChanged hook:
                        filter = filter.ChangeHook(hook.Step, hook.Error);
                        break;
                }
            }
        }
        return sum;
    }

    /// <summary>Where the profile has fallen by half the square of <paramref name="reach"/>, or the search's end.</summary>
    private static double End(Func<double[], double> value, double[] best, double most, double reach, int of, int way)
    {
        double[] others = best;
        // Fallen as a distance in standard deviations, which is nearly straight.
        double Fallen(double x)
        {
            (others, double there) = Maximise(value, others, (of, x), 0.005);
            return Math.Sqrt(Math.Max(0, 2 * (most - there))) - reach;
        }
        double limit = way > 0 ? Most[of] : Least[of];
        double inner = best[of], outer = inner, innerFall = -reach, outerFall = innerFall;
        for (double step = Steps[of]; outerFall < 0; step *= 2)
        {
            if (outer == limit) return limit;
            (inner, innerFall) = (outer, outerFall);
            outer = way > 0 ? Math.Min(outer + step, limit) : Math.Max(outer - step, limit);
            outerFall = Fallen(outer);
        }
        for (int time = 0; time < 8; time++)
        {
            double between = inner + (outer - inner) * innerFall / (innerFall - outerFall);
            double fall = Fallen(between);
            if (Math.Abs(fall) < 0.02) return between;
            if (fall < 0) (inner, innerFall) = (between, fall);
            else (outer, outerFall) = (between, fall);
        }
        return inner + (outer - inner) * innerFall / (innerFall - outerFall);
    }

    /// <summary>The best from somewhere, with one of the three held if asked.</summary>
    private static (double[] At, double Value) Maximise(
        Func<double[], double> value, double[] from, (int Of, double At)? held, double tolerance)
    {
        // A longer memory and a smaller spread give alike much wander from reading to reading: one step goes along that ridge.
        double[][] steps = [[0.002, 0, 0], [0, 0.2, 0], [0, -0.3, 0.6]];
        int[] free = [.. Enumerable.Range(0, 3).Where(of => of != held?.Of)];
        double[] Whole(double[] at)
        {
            double[] whole = new double[3];
            if (held is { } fix) whole[fix.Of] = fix.At;
            for (int i = 0; i < free.Length; i++) whole[free[i]] = at[i];
            return whole;
        }
        double[] start = [.. free.Select(of => from[of])];
        double[][] corners = [start, .. free.Select(step => free.Select((of, i) => start[i] + steps[step][of]).ToArray())];
        (double[] best, double most) = Simplex.Maximise(at => value(Whole(at)), corners, tolerance);
        return (Whole(best), most);
    }

    private static double[] Within(double[] at) => [.. at.Select((x, of) => Math.Clamp(x, Least[of], Most[of]))];
}
