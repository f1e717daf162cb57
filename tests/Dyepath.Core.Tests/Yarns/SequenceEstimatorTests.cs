using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Measuring;
using Dyepath.Core.Swatches;
using MathNet.Numerics.LinearAlgebra;

namespace Dyepath.Core.Tests.Yarns;

public class SequenceEstimatorTests
{
    private static readonly HandsPrior Hands = new(0.02, 50, 0.02);

    [Theory]
    [InlineData(0.02, 50, 0.02, 4, 1)]
    [InlineData(0.001, 20, 0.0, 3, 2)]
    [InlineData(0.05, 200, 0.01, 6, 3)]
    public void Agrees_with_a_numerics_library(double spread, double memory, double dye, int repeats, ulong seed)
    {
        var hands = new HandsPrior(spread, memory, dye);
        var counts = new SimulatedMaker(spread, memory, dye, seed).Count([5.2, 4.4, 6.1], repeats);
        var mean = Enumerable.Range(0, 3).Select(j => counts.Average(row => row[j])).ToArray();
        var first = Direct(mean);
        var direct = Direct([.. first.Sections]);

        var estimate = SequenceEstimator.Estimate(counts, hands);

        for (var a = 0; a < 3; a++)
        {
            Assert.Equal(direct.Sections[a], estimate.Sections[a].Value, 1e-7);
            for (var b = 0; b < 3; b++)
                Assert.Equal(direct.Covariance[a, b], estimate.Covariance(a, b), 1e-7);
        }
        Assert.Equal(Math.Sqrt(direct.Covariance.Enumerate().Sum()), estimate.Sequence.StandardError, 1e-7);

        (Vector<double> Sections, Matrix<double> Covariance) Direct(double[] sections)
        {
            var error = Math.Sqrt(CountingPlan.SequenceVariance(sections, [dye, dye, dye], hands, repeats));
            return DirectEstimate.Solve(counts, sections, hands, error, correlatedRounding: true);
        }
    }

    [Fact]
    public void One_repeat_gives_its_own_counts()
    {
        var estimate = SequenceEstimator.Estimate([[5, 4, 6, 7]], Hands);

        Assert.Equal([5, 4, 6, 7], estimate.Sections.Select(s => (int)Math.Round(s.Value, 6)));
        Assert.Equal(22, estimate.Sequence.Value, 6);
        Assert.True(estimate.Sequence.StandardError > 0.4);
    }

    [Fact]
    public void The_largest_sequence_and_a_long_record_stay_finite()
    {
        var row = Enumerable.Range(0, 64).Select(j => 3 + j % 5).ToImmutableArray();
        var estimate = SequenceEstimator.Estimate([.. Enumerable.Repeat(row, 50)], Hands);

        Assert.Equal(64, estimate.Sections.Length);
        Assert.Equal(row.Sum(), estimate.Sequence.Value, 6);
        Assert.InRange(estimate.Sequence.StandardError, 0.1, 3);
    }

    [Fact]
    public void Perfectly_steady_hands_and_even_dye_still_give_an_answer()
    {
        var estimate = SequenceEstimator.Estimate([.. Enumerable.Repeat(ImmutableArray.Create(5, 4, 6, 7), 30)], new HandsPrior(0, 50, 0));

        Assert.Equal(22, estimate.Sequence.Value, 6);
        Assert.All(estimate.Sections, s => Assert.InRange(s.StandardError, 0.05, 0.45));
    }

    [Theory]
    [InlineData(1, 400, 1_000)]
    [InlineData(64, 12, 1_000)]
    [InlineData(64, 12, 1)]
    [InlineData(1, 400, 1)]
    public void The_wildest_hands_and_the_largest_counts_stay_finite(int sections, int repeats, int count)
    {
        var rows = Enumerable.Repeat(Enumerable.Repeat(count, sections).ToImmutableArray(), repeats).ToImmutableArray();
        foreach (var hands in (HandsPrior[])[new(0.5, 10_000, 0.5), new(0.5, 0.1, 0), new(0, 10_000, 0.5), new(1e-9, 10_000, 0)])
        {
            var estimate = SequenceEstimator.Estimate(rows, hands);

            Assert.Equal((double)sections * count, estimate.Sequence.Value, 1e-3 * count);
            Assert.InRange(estimate.Sequence.StandardError, 1e-9, (double)sections * count);
            Assert.All(estimate.Sections, e => Assert.InRange(e.StandardError, 1e-9, 2.0 * count));
        }
    }

    [Fact]
    public void A_cut_record_gives_nearly_what_an_uncut_one_would()
    {
        // 100 repeats of four sections are cut; 79 are the most that fit one piece.
        var counts = new SimulatedMaker(0.02, 50, 0.02, 9).Count([5.2, 4.4, 6.1, 6.8], 100);
        var closed = CountingPlan.SequenceVariance([5.2, 4.4, 6.1, 6.8], [0.02, 0.02, 0.02, 0.02], Hands, 100);

        var estimate = SequenceEstimator.Estimate(counts, Hands);

        Assert.InRange(estimate.Sequence.StandardError / Math.Sqrt(closed), 0.97, 1.05);
    }

    [Fact]
    public void More_repeats_never_widen_the_intervals() =>
        Gen.Int[3, 9].Array[2, 6].Holds(
            row =>
            {
                var counts = ImmutableArray.Create(row);
                double last = double.PositiveInfinity;
                foreach (var repeats in (int[])[1, 2, 4, 8])
                {
                    var now = SequenceEstimator.Estimate([.. Enumerable.Repeat(counts, repeats)], Hands).Sequence.StandardError;
                    Assert.True(now < last);
                    last = now;
                }
            },
            seed: 60, cases: 40);

    [Fact]
    public void Rotating_the_record_rotates_the_answer()
    {
        // The first and the last boundary change places, so only steady long records agree closely.
        var counts = new SimulatedMaker(0.02, 50, 0.02, 5).Count([5.2, 4.4, 6.1], 20).SelectMany(r => r).ToArray();
        var straight = SequenceEstimator.Estimate([.. counts.Take(57).Chunk(3).Select(r => r.ToImmutableArray())], Hands);
        var rotated = SequenceEstimator.Estimate([.. counts.Skip(1).Take(57).Chunk(3).Select(r => r.ToImmutableArray())], Hands);

        for (var j = 0; j < 3; j++)
            Assert.Equal(straight.Sections[(j + 1) % 3].Value, rotated.Sections[j].Value, 0.1);
    }

    [Fact]
    public void Shares_sum_to_one_and_know_their_error()
    {
        var estimate = SequenceEstimator.Estimate(new SimulatedMaker(0.02, 50, 0.02, 6).Count([5.2, 4.4, 6.1], 5), Hands);

        Assert.Equal(1, Enumerable.Range(0, 3).Sum(j => estimate.Share(j).Value), 12);
        // The hands' wander is common to all sections and leaves their shares alone.
        Assert.All(Enumerable.Range(0, 3), j => Assert.True(
            estimate.Share(j).StandardError < estimate.Sections[j].StandardError / estimate.Sequence.Value));
    }

    [Fact]
    public void Bad_records_are_refused_by_name()
    {
        Assert.Throws<ArgumentException>("repeats", () => SequenceEstimator.Estimate([], Hands));
        Assert.Throws<ArgumentException>("repeats", () => SequenceEstimator.Estimate([[1, 2], [1]], Hands));
        Assert.Throws<ArgumentException>("repeats", () => SequenceEstimator.Estimate([[1, -2]], Hands));
        Assert.Throws<ArgumentException>("repeats", () => SequenceEstimator.Estimate([[0, 0]], Hands));
        Assert.Throws<ArgumentException>("dye", () => SequenceEstimator.Estimate([[1, 2]], Hands, [double.NaN, 0]));
        Assert.Throws<ArgumentNullException>("hands", () => SequenceEstimator.Estimate([[1, 2]], null!));
    }

    [Fact]
    public void Sections_never_counted_are_answered_without_fault()
    {
        var estimate = SequenceEstimator.Estimate([[5, 0, 6], [4, 0, 7], [5, 1, 6]], Hands);

        Assert.All(estimate.Sections, s => Assert.True(double.IsFinite(s.Value) && double.IsFinite(s.StandardError)));
    }
}
