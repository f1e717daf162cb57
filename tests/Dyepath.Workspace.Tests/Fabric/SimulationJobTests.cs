using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Making;
using Dyepath.Core.Measuring;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Fabric;

public sealed class SimulationJobTests
{
    [Fact]
    public void The_job_gives_what_the_simulation_gives()
    {
        var plan = Demo.Plan();
        var order = SimulationOrder.Of(plan, plan.Sizes[1], CheckHabit.EverySection, 24, seed: 7);
        var told = new Told();
        var made = SimulationJob.Read(JobRunner.Run(SimulationJob.Name, SimulationJob.Write(order), told));
        Assert.Equal(["front", "back"], made.Select(m => m.Name));
        foreach (var (trials, piece) in made.Zip(plan.Sizes[1].Pieces))
        {
            var planned = PlannedPiece.Of(plan, piece);
            var result = TensionSimulation.Run(
                planned, HandModel.Create(HandsPrior.Default.Spread, HandsPrior.Default.Memory),
                new SimulationSettings
                {
                    Check = CheckHabit.EverySection,
                    Trials = 24,
                    Seed = 7,
                    DyeVariation = order.Hands.Dye,
                    GoodShare = SimulationJob.GoodShare,
                },
                cancellation: TestContext.Current.CancellationToken);
            Assert.Equal((result.Median, result.P05, result.P95, result.Good), (trials.Median, trials.P05, trials.P95, trials.Good));
            Assert.Equal(result.RowShares, trials.RowShares);
            Assert.Equal((result.Typical, result.Shares[result.Typical]), (trials.Likely.Trial, trials.Likely.Share));
            Assert.Equal(planned.Stitches, trials.Likely.Worked.Length);
        }
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.Equal(1, told.Shares[^1], 1e-9);
    }

    [Fact]
    public void Hands_and_dye_are_the_project_s_own_where_it_knows_them()
    {
        var plan = Demo.Plan(d => d.Set("fabric.hands", JsonNode.Parse("""{ "spread": "1 %", "memory": "40 stitches" }""")));
        var order = SimulationOrder.Of(plan, plan.Sizes[0], CheckHabit.Never, 5, 1);
        Assert.Equal((0.01, 40), (order.Hands.Spread, order.Hands.Memory));
        // The demo's spreads, 0.4 to 0.6 cm of 19.4 to 31.8 cm.
        Assert.InRange(order.Hands.Dye, 0.4 / 25.4, 0.4 / 19.4);
    }

    [Fact]
    public void A_job_that_is_none_is_refused_and_so_is_an_order_that_is_none()
    {
        Assert.Throws<ArgumentException>(() => JobRunner.Run("nothing", "{}", new Told()));
        Assert.Throws<JsonException>(() => JobRunner.Run(SimulationJob.Name, "no order", new Told()));
    }

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }

    /// <summary>A piece's share of the progress is its share of the stitches.</summary>
    [Fact]
    public void Progress_runs_through_all_pieces_by_their_stitches()
    {
        var told = new Told();
        var order = new SimulationOrder(
            [5_000_000, 4_000_000], [0, 1], [new("small", [9, 9], [0, 0], 0), new("large", [.. Enumerable.Repeat(9, 18)], [.. new long[18]], 0)],
            new(0.01, 40, 0), CheckHabit.Never, 40, 3);
        SimulationJob.Run(order, told);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.Contains(told.Shares, s => Math.Abs(s - 0.1) < 1e-9);
        Assert.Equal(1, told.Shares[^1], 1e-9);
        Assert.All(told.Shares, s => Assert.InRange(s, 0, 1 + 1e-9));
        Assert.Contains(told.Shares, s => s is > 0.11 and < 0.89);
    }
}
