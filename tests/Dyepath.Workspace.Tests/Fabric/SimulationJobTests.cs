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

    /// <summary>By hand, of spread over length: the root of the mean square; only sections with both are measured; more than half is not believed.</summary>
    [Fact]
    public void Dye_is_the_root_mean_square_of_what_is_measured()
    {
        Assert.Equal(HandsPrior.For(Demo.Plan().Project.Fabric.Hands).Dye, Dye());
        Assert.Equal(Math.Sqrt((0.03 * 0.03 + 0.04 * 0.04) / 2), Dye(("0.6 cm", "20 cm"), ("1 cm", "25 cm")), 1e-9);
        Assert.Equal(0.5, Dye(("19 cm", "20 cm")), 1e-9);
        Assert.Equal(0.03, Dye(("0.6 cm", "20 cm")), 1e-9);

        static double Dye(params (string Spread, string Length)[] measured)
        {
            var plan = Demo.Plan();
            var sections = plan.Project.Yarn.Sections.Select((s, i) => s with
            {
                Length = i < measured.Length ? Read(measured[i].Length) : null,
                Spread = i < measured.Length ? Read(measured[i].Spread) : Core.Quantities.Length.FromCentimetres(9),
            });
            var yarn = plan.Project.Yarn with { Sections = [.. sections] };
            return SimulationOrder.Of(plan with { Project = plan.Project with { Yarn = yarn } }, plan.Sizes[0], CheckHabit.Never, 5, 1).Hands.Dye;
        }

        static Core.Quantities.Length? Read(string text) => Core.Quantities.Length.FromCentimetres(double.Parse(text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>Four in five stitches in planned colour make a piece that counts as good.</summary>
    [Fact]
    public void An_order_says_how_each_piece_is_worked()
    {
        Assert.Equal((0.8, "simulate", 500), (SimulationJob.GoodShare, SimulationJob.Name, Simulator.Trials));
        var plan = Demo.Plan();
        var order = SimulationOrder.Of(plan, plan.Sizes[1], CheckHabit.EveryRow, 24, seed: 7);
        Assert.Equal((24, 7UL, CheckHabit.EveryRow), (order.Trials, order.Seed, order.Check));
        Assert.Equal(plan.Sizes[1].Pieces.Where(p => p.Pooled).Select(p => (p.Name, p.Rows, p.Start)), order.Pieces.Select(p => (p.Name, p.RowStitches.Length, p.Start)));
        Assert.Equal(plan.Sequence.Ring.Sections, order.Sections);
    }
}
