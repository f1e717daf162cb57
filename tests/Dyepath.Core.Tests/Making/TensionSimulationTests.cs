using CsCheck;
using Dyepath.Core.Making;

namespace Dyepath.Core.Tests.Making;

public sealed class TensionSimulationTests
{
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);
    private static readonly bool[] BothWays = [false, true];

    [Fact]
    public void Known_bits_of_a_seeded_run_on_every_platform()
    {
        // Recorded from this program, x64: a guard against platforms that differ, and against changing the stream unawares.
        PlannedPiece piece = Pieces.Of([5.2, 4.1, 6, 7.3], 47, 30, turnCost: 0.45, start: 3);
        HandModel hands = HandModel.Create(0.012, 50, bias: -0.004);
        foreach (bool vectorised in BothWays)
        {
            SimulationResult plain = Work(
                piece, hands, new SimulationSettings { Check = CheckHabit.EverySequence, Trials = 45, Seed = 2026 }, vectorised);
            Assert.Equal("3fee74ecc12e1dc7 3fee0b2f220f8aa3 3feec6438a5953e1 3f82ea1fbeabaad2", Bits(plain));
            SimulationResult dyed = Work(
                piece, hands, new SimulationSettings { Trials = 21, Seed = 7, DyeVariation = 0.02 }, vectorised);
            Assert.Equal("3fed5e0c5899f68f 3fec4cfb4788e57e 3fedef4be4672051 3f83d6906b6c3e10", Bits(dyed));
        }

        static string Bits(SimulationResult result) => string.Join(
            ' ',
            new[] { result.Median, result.P05, result.P95, result.MeanCorrection }
                .Select(x => $"{BitConverter.DoubleToUInt64Bits(x):x16}"));
    }

    [Fact]
    public void Law_hands_without_fault_make_the_plan()
    {
        Gen.Select(
            Gen.Int[10, 90_000].Array[1, 6],
            Gen.Int[1, 60],
            Gen.Int[1, 40],
            Gen.Int[-2_000, 2_000],
            Gen.Int[0, 100_000],
            Gen.Enum<CheckHabit>())
        .Holds(
            (sections, stitches, rows, turn, start, check) =>
            {
                PlannedPiece piece = Pieces.Of(
                    [.. sections.Select(n => n / 1000.0)], stitches, rows, turn / 1000.0, start / 1000.0);
                foreach (bool vectorised in BothWays)
                {
                    SimulationResult result = Work(
                        piece, HandModel.Create(0, 50), new SimulationSettings { Check = check, Trials = 9 }, vectorised);
                    Assert.Equal((1, 1, 1, 1, 0), (result.Median, result.P05, result.P95, result.Good, result.MeanCorrection));
                    Assert.All(result.RowShares, share => Assert.Equal(1, share));
                }
            },
            seed: 53, cases: 150);
    }

    [Fact]
    public void Law_scalar_and_vectorised_give_the_same_bits()
    {
        // Whole and short sections, colours that come twice, every habit, dye, turns that give yarn back, a part group of lanes.
        Gen.Select(
            Gen.Select(Gen.Int[300, 8_000], Gen.Int[0, 5]).Array[1, 6],
            Gen.Select(Gen.Int[1, 90], Gen.Int[1, 30], Gen.Int[-1_500, 1_500]),
            Gen.Select(Gen.Double[0, 0.3], Gen.Double[0, 200], Gen.Double[-0.1, 0.1], Gen.Double[0, 0.3]),
            Gen.Enum<CheckHabit>(),
            Gen.Select(Gen.Int[1, 20], Gen.ULong, Gen.Bool),
            Gen.Bool)
        .Holds(
            (sections, shape, hand, check, run, distinct) =>
            {
                PlannedPiece piece = Pieces.Of(
                    [.. sections.Select(s => distinct ? 1 + s.Item1 / 1000.0 : s.Item1 / 1000.0)],
                    distinct ? [] : [.. sections.Select(s => s.Item2)],
                    [.. Enumerable.Range(0, shape.Item2).Select(r => shape.Item1 + r % 2)],
                    shape.Item3 / 1000.0);
                HandModel hands = HandModel.Create(hand.Item1, hand.Item2, hand.Item3, hand.Item4);
                var settings = new SimulationSettings
                {
                    Check = check,
                    Trials = run.Item1,
                    Seed = run.Item2,
                    DyeVariation = run.Item3 ? 0.03 : 0,
                };
                SimulationResult scalar = Work(piece, hands, settings, vectorised: false);
                SimulationResult vector = Work(piece, hands, settings, vectorised: true);
                Assert.Equal(scalar.Shares, vector.Shares);
                Assert.Equal(scalar.RowShares, vector.RowShares);
                Assert.Equal(scalar.MeanCorrection, vector.MeanCorrection);
            },
            seed: 54, cases: 400);
    }

    [Fact]
    public void Law_a_seed_gives_its_run_again_whatever_the_workers()
    {
        HandModel hands = HandModel.Create(0.01, 50);
        var settings = new SimulationSettings { Trials = 100, Seed = 5 };
        SimulationResult once = Work(Panel, hands, settings);
        SimulationResult again = Work(Panel, hands, settings with { Workers = 3 });
        SimulationResult other = Work(Panel, hands, settings with { Seed = 6 });
        Assert.Equal(once.Shares, again.Shares);
        Assert.Equal(once.RowShares, again.RowShares);
        Assert.Equal(once.MeanCorrection, again.MeanCorrection);
        Assert.NotEqual(once.Shares, other.Shares);
        Assert.Equal(once.Shares[..60], Work(Panel, hands, settings with { Trials = 60 }).Shares);
    }

    [Theory]
    [InlineData(0.003, 0)]
    [InlineData(0.005, 0.02)]
    [InlineData(0.01, 0)]
    [InlineData(0.03, 0)]
    [InlineData(0.05, 0.02)]
    public void Law_checking_more_often_is_no_worse_on_average(double spread, double dye)
    {
        HandModel hands = HandModel.Create(spread, 50);
        double[] means =
        [
            .. Enum.GetValues<CheckHabit>().Select(check =>
                Work(Panel, hands, new SimulationSettings { Check = check, Trials = 200, DyeVariation = dye }).Shares.Average()),
        ];
        Assert.Equal(means.Order(), means);
    }

    [Fact]
    public void Law_row_shares_average_to_the_trials_shares()
    {
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], [], [.. Enumerable.Range(0, 30).Select(r => 20 + r % 3)]);
        SimulationResult result = Work(piece, HandModel.Create(0.02, 20), new SimulationSettings { Trials = 77 });
        double stitches = piece.RowStitches.Zip(result.RowShares, (n, share) => n * share).Sum();
        Assert.Equal(result.Shares.Average(), stitches / piece.Stitches, 1e-12);
        Assert.Equal(result.Shares.Count(share => share >= 0.8) / 77.0, result.Good);
    }

    [Fact]
    public void Law_a_steady_bias_is_answered_by_corrections_up_to_what_hands_can_do()
    {
        // Loose by 3 %, row-checked: 83 stitches drift 2.49, so on average 3 % must be taken back.
        var settings = new SimulationSettings { Trials = 20 };
        SimulationResult held = Work(Panel, HandModel.Create(0, 50, bias: 0.03), settings);
        Assert.Equal(0.03, held.MeanCorrection, 0.001);
        SimulationResult lost = Work(Panel, HandModel.Create(0, 50, bias: 0.03, largestCorrection: 0.001), settings);
        Assert.InRange(lost.MeanCorrection, 0.0005, 0.001);
        Assert.True(lost.Median < held.Median);
    }

    [Fact]
    public void Law_drift_by_a_whole_sequence_looks_right_and_is_left_alone()
    {
        // Half a stitch too much on each of 44 stitches is 22, one whole sequence, at every row's end.
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 44, 20);
        SimulationResult result = Work(
            piece, HandModel.Create(0, 50, bias: 0.5), new SimulationSettings { Trials = 1 });
        Assert.Equal(0, result.MeanCorrection);
    }

    [Fact]
    public void Known_one_colour_is_always_right()
    {
        PlannedPiece piece = Pieces.Of([5, 4], [3, 3], [30, 31, 30]);
        SimulationResult result = Work(
            piece, HandModel.Create(0.5, 50), new SimulationSettings { Check = CheckHabit.EverySection });
        Assert.Equal((1, 1, 0), (result.P05, result.Good, result.MeanCorrection));
    }

    [Fact]
    public void Known_quantiles_of_definition_seven()
    {
        // Hyndman and Fan 1996, definition 7: (n − 1)p = 0.5 between the first two of eleven, by hand.
        var shares = Enumerable.Range(0, 11).Select(i => i / 10.0).Reverse();
        var result = new SimulationResult([.. shares], [], 0.8, 0);
        Assert.Equal((0.5, 0.05, 0.95, 3 / 11.0), (result.Median, result.P05, Math.Round(result.P95, 12), result.Good));
        Assert.Equal(0.3, new SimulationResult([0.3], [], 0.8, 0).P95);
    }

    [Fact]
    public void Extreme_the_largest_piece_and_the_wildest_hands()
    {
        PlannedPiece largest = Pieces.Of([0.5, 4, 6, 7], 1_000, 5_000, turnCost: -0.5);
        SimulationResult result = Work(
            largest, HandModel.Create(0.5, 0), new SimulationSettings { Trials = 1, Check = CheckHabit.EverySection });
        Assert.InRange(result.Median, 0.1, 0.9);
        SimulationResult slow = Work(
            Panel, HandModel.Create(0.5, 100_000, -0.5, 0.5), new SimulationSettings { Trials = 8, DyeVariation = 0.5 });
        Assert.InRange(slow.Median, 0, 1);
        SimulationResult smallest = Work(
            Pieces.Of([0.01], 1, 1), HandModel.Create(0, 0), new SimulationSettings { Trials = 1 });
        Assert.Equal(1, smallest.Median);
    }

    [Fact]
    public void Progress_ends_at_one_and_cancelling_stops()
    {
        HandModel hands = HandModel.Create(0.01, 50);
        var told = new Reports();
        TensionSimulation.Run(Panel, hands, new SimulationSettings { Trials = 20 }, told, TestContext.Current.CancellationToken);
        Assert.Equal([8 / 20.0, 16 / 20.0, 1], told.Values);
        foreach (int workers in new[] { 1, 2 })
        {
            using var source = new CancellationTokenSource();
            var stops = new Reports(source.Cancel);
            Assert.ThrowsAny<OperationCanceledException>(() => TensionSimulation.Run(
                Panel, hands, new SimulationSettings { Trials = 1_000_000, Workers = workers }, stops, source.Token));
        }
    }

    [Fact]
    public void Invalid_values_are_named()
    {
        static void Refused(string name, Action create) =>
            Assert.Equal(name, Assert.ThrowsAny<ArgumentException>(create).ParamName);

        Refused("spread", () => HandModel.Create(-0.01, 50));
        Refused("spread", () => HandModel.Create(double.NaN, 50));
        Refused("memory", () => HandModel.Create(0.01, double.PositiveInfinity));
        Refused("bias", () => HandModel.Create(0.01, 50, bias: 0.6));
        Refused("largestCorrection", () => HandModel.Create(0.01, 50, largestCorrection: -1));
        Refused("Trials", () => _ = new SimulationSettings { Trials = 0 });
        Refused("DyeVariation", () => _ = new SimulationSettings { DyeVariation = double.NaN });
        Refused("GoodShare", () => _ = new SimulationSettings { GoodShare = 1.1 });
        Refused("Workers", () => _ = new SimulationSettings { Workers = 0 });
        Refused("check", () => Work(Panel, HandModel.Create(0, 0), new SimulationSettings { Check = (CheckHabit)9 }));
    }

    private static SimulationResult Work(PlannedPiece piece, HandModel hands, SimulationSettings settings) =>
        TensionSimulation.Run(piece, hands, settings, cancellation: TestContext.Current.CancellationToken);

    private static SimulationResult Work(PlannedPiece piece, HandModel hands, SimulationSettings settings, bool vectorised) =>
        TensionSimulation.Run(piece, hands, settings, vectorised, cancellation: TestContext.Current.CancellationToken);

    private sealed class Reports(Action? then = null) : IProgress<double>
    {
        public List<double> Values { get; } = [];

        public void Report(double value)
        {
            lock (Values) Values.Add(value);
            then?.Invoke();
        }
    }
}
