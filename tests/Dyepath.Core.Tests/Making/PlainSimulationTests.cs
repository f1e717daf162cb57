using CsCheck;
using Dyepath.Core.Making;

namespace Dyepath.Core.Tests.Making;

/// <summary>
/// The same model written down a second time, without lanes, joined sections or walking boundaries: each stitch's yarn is laid over the
/// sequence anew, in whole micro-stitches. It shares only the random numbers, so shares must agree to the stitch.
/// </summary>
public sealed class PlainSimulationTests
{
    [Fact]
    public void Law_agrees_with_the_model_written_plainly()
    {
        Gen.Select(
            Gen.Select(Gen.Int[300, 8_000], Gen.Int[0, 4]).Array[2, 6],
            Gen.Select(Gen.Int[1, 40], Gen.Int[1, 12], Gen.Int[0, 1_500], Gen.Int[0, 60_000]),
            Gen.Select(Gen.Double[0, 0.1], Gen.Double[1, 100], Gen.Double[-0.05, 0.05], Gen.Double[0, 0.2]),
            Gen.Enum<CheckHabit>(),
            Gen.Bool)
        .Where((sections, _, _, _, _) => sections.Select(s => s.Item2).Distinct().Count() > 1)
        .Holds(
            (sections, shape, hand, check, distinct) =>
            {
                if (distinct) sections = [.. sections.Select((s, j) => (s.Item1 + 1_000, j))];
                PlannedPiece piece = Pieces.Of(
                    [.. sections.Select(s => s.Item1 / 1000.0)],
                    [.. sections.Select(s => s.Item2)],
                    [.. Enumerable.Repeat(shape.Item1, shape.Item2)],
                    shape.Item3 / 1000.0,
                    shape.Item4 / 1000.0);
                HandModel hands = HandModel.Create(hand.Item1, hand.Item2, hand.Item3, hand.Item4);
                var settings = new SimulationSettings { Check = check, Trials = 3 };
                SimulationResult result = TensionSimulation.Run(
                    piece, hands, settings, cancellation: TestContext.Current.CancellationToken);
                (long, int)[] yarn = [.. sections.Select(s => (s.Item1 * 1_000L, s.Item2))];
                for (int trial = 0; trial < 3; trial++)
                {
                    double share = Work(yarn, shape.Item1, shape.Item2, shape.Item3 * 1_000L, shape.Item4 * 1_000L, hands, check, trial);
                    Assert.Equal(share, result.Shares[trial]);
                }
            },
            seed: 51, cases: 200);
    }

    private static double Work(
        (long Length, int Colour)[] yarn, int stitches, int rows, long turn, long start, HandModel hands, CheckHabit check, int trial)
    {
        const long stitch = 1_000_000;
        long sequence = yarn.Sum(s => s.Length), period = Period(yarn, sequence);
        var seed = new TrialSeed(1, trial);
        var stream = new NormalLanes();
        stream.Begin(0, seed);
        long[] plan = [.. Enumerable.Range(0, stitches * rows).Select(i => start + i * stitch + i / stitches * turn)];
        int[] checks = [.. Enumerable.Range(1, plan.Length - 1).Where(i => Checked(i))];

        bool Checked(int worked)
        {
            long ends = plan[worked - 1] + stitch;
            // Yarn that the turn took before this row counts with the row's first stitch.
            long since = worked < 2 ? start : plan[worked - 2] + stitch;
            return check switch
            {
                CheckHabit.EveryRow => worked % stitches == 0,
                CheckHabit.EverySequence => (ends - start) / sequence > (since - start) / sequence,
                CheckHabit.EverySection => Boundaries(yarn, sequence, since, ends),
                _ => false,
            };
        }

        double innovation = hands.Spread * 1e6 * Math.Sqrt(1 - hands.Correlation * hands.Correlation);
        double tension = hands.Spread * 1e6 * seed.FirstTension, correction = 0;
        long place = start;
        int right = 0;
        float spare = 0;
        for (int i = 0; i < plan.Length; i++)
        {
            // A row begins with a new pair of normals.
            int inRow = i % stitches;
            float normal = spare;
            if (inRow % 2 == 0)
            {
                uint word = stream.Next(0);
                (normal, spare) = NormalPair.Make(word, stream.Next(0));
            }
            tension = tension * hands.Correlation + normal * innovation;
            long used = (long)Math.Round((1 + hands.Bias + correction) * 1e6 + tension);
            if (MostCovered(yarn, sequence, place, place + used) == MostCovered(yarn, sequence, plan[i], plan[i] + stitch)) right++;
            place += used;
            if (checks.Contains(i + 1))
            {
                int interval = checks.Append(plan.Length).First(next => next > i + 1) - (i + 1);
                double drift = place - plan[i] - stitch;
                drift -= Math.Round(drift / period) * period;
                correction = Math.Clamp(-Math.Round(drift / 1e6) / interval, -hands.LargestCorrection, hands.LargestCorrection);
            }
            if (inRow == stitches - 1) place += turn;
        }
        return (double)right / plan.Length;
    }

    private static int ColourAt((long Length, int Colour)[] yarn, long sequence, long place)
    {
        long into = (place % sequence + sequence) % sequence;
        int section = 0;
        while (into >= yarn[section].Length) into -= yarn[section++].Length;
        return yarn[section].Colour;
    }

    private static IEnumerable<long> SectionStarts((long Length, int Colour)[] yarn, long sequence, long from, long to)
    {
        long at = from / sequence * sequence - sequence;
        for (int section = 0; at < to; section = (section + 1) % yarn.Length)
        {
            if (at > from) yield return at;
            at += yarn[section].Length;
        }
    }

    /// <summary>Whether a change of colour lies in (from, to].</summary>
    private static bool Boundaries((long Length, int Colour)[] yarn, long sequence, long from, long to) =>
        SectionStarts(yarn, sequence, from, to + 1).Any(at => ColourAt(yarn, sequence, at) != ColourAt(yarn, sequence, at - 1));

    private static int MostCovered((long Length, int Colour)[] yarn, long sequence, long from, long to)
    {
        long most = 0;
        int best = -1;
        long begins = from;
        foreach (long at in SectionStarts(yarn, sequence, from, to).Append(to))
        {
            if (at < to && ColourAt(yarn, sequence, at) == ColourAt(yarn, sequence, at - 1)) continue;
            if (at - begins > most) (most, best) = (at - begins, ColourAt(yarn, sequence, begins));
            begins = at;
        }
        return best;
    }

    private static long Period((long Length, int Colour)[] yarn, long sequence)
    {
        long[] starts = [0, .. SectionStarts(yarn, sequence, 0, sequence), sequence];
        bool SameShifted(long shift) => starts.SelectMany(s => new[] { s, s - 1, s - shift, s - shift - 1 })
            .All(at => ColourAt(yarn, sequence, at) == ColourAt(yarn, sequence, at + shift));
        return starts.SelectMany(a => starts.Select(b => b - a)).Where(shift => shift > 0).Order().First(SameShifted);
    }
}
