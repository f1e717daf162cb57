using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Xunit;

namespace Dyepath.Core.Tests.Making.Work;

public sealed class HandsLogTests
{
    private static readonly MakingOrder Tunic =
        MakingOrder.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!, "M");

    private static readonly DateTimeOffset Then = DateTimeOffset.UnixEpoch;

    /// <summary>A maker who follows what the page says, row by row, and takes back a slip of the thumb now and then.</summary>
    [Theory]
    [InlineData(1, 0.012, 0.01)]
    [InlineData(2, 0.012, -0.015)]
    [InlineData(3, 0.02, 0.0)]
    public void Hands_are_found_from_what_was_tapped(int seed, double spread, double bias)
    {
        const double memory = 50, gain = 0.9;
        var random = new Random(seed);
        var state = AtFirstRow();
        double phase = 0, tension = spread * Normal(random);
        var correlation = Math.Exp(-1 / memory);
        var rows = state.Part.Rows;
        for (var row = 0; row < rows; row++)
        {
            var end = state.Part.Planned!.StitchesBefore(row + 1);
            foreach (var (stitches, correction) in state.Drift!.Stretches(end))
            {
                for (var i = 0; i < stitches; i++)
                {
                    tension = correlation * tension + spread * Math.Sqrt(1 - correlation * correlation) * Normal(random);
                    phase += bias + tension + gain * correction;
                }
            }
            var reading = (int)Math.Round(phase);
            if (row % 7 == 3)
                state = state.Apply(new Entry(EntryKind.Row, Then, Phase: reading + 1)).Apply(new Entry(EntryKind.Back, Then));
            state = state.Apply(new Entry(EntryKind.Row, Then, Phase: reading));
        }
        // What follows the last row is no look at the colours.
        while (!state.IsPartDone)
            state = state.Apply(new Entry(EntryKind.Step, Then));
        var log = Assert.Single(HandsLog.Of(state));
        Assert.Equal(state.Part.Planned!.Stitches, log.Entries.OfType<MakerLog.Worked>().Sum(worked => worked.Stitches));
        Assert.Equal(rows, log.Entries.OfType<MakerLog.Read>().Count());
        var fit = MakerFit.Of(log)!;
        Assert.InRange(bias, fit.Bias.Low, fit.Bias.High);
        Assert.InRange(spread, fit.Spread.Low, fit.Spread.High);
        Assert.InRange(fit.Spread.Value / spread, 0.5, 2);
        // The page held her colours meanwhile.
        Assert.InRange(Math.Abs(phase), 0, 3);
    }

    [Fact]
    public void What_was_done_at_the_edge_and_with_the_hook_is_known_to_the_fit()
    {
        var state = AtFirstRow()
            .Apply(new Entry(EntryKind.Row, Then, Phase: 2)).Apply(new Entry(EntryKind.Edge, Then, To: -1)).Apply(new Entry(EntryKind.Turn, Then, To: 1))
            .Apply(new Entry(EntryKind.Row, Then)).Apply(new Entry(EntryKind.Hook, Then, To: -1)).Apply(new Entry(EntryKind.At, Then, To: 1));
        var log = Assert.Single(HandsLog.Of(state));
        Assert.Equal(
            [-1, MakerRemedies.TurnGives, 0], log.Entries.OfType<MakerLog.Shifted>().Select(shifted => shifted.Stitches));
        Assert.Equal(-0.04, Assert.Single(log.Entries.OfType<MakerLog.HookChanged>()).Step, 1e-12);
        // Two rows' yarn was worked, whatever was ripped back afterwards.
        Assert.Equal(state.Part.Planned!.StitchesBefore(2), log.Entries.OfType<MakerLog.Worked>().Sum(worked => worked.Stitches));
        Assert.Null(MakerFit.Of(log));
    }

    [Fact]
    public void Advice_that_is_acted_on_at_the_edge_counts_at_once()
    {
        var early = AtFirstRow().Apply(new Entry(EntryKind.Row, Then, Phase: 2));
        var skipped = early.Apply(new Entry(EntryKind.Edge, Then, To: -1));
        Assert.Equal(early.Drift!.Filter.PhaseMean - 1, skipped.Drift!.Filter.PhaseMean, 1e-12);
        var smaller = early.Apply(new Entry(EntryKind.Hook, Then, To: -1));
        Assert.Equal(early.Drift.Filter.BiasMean - 0.04, smaller.Drift!.Filter.BiasMean, 1e-12);
        Assert.True(smaller.Drift.Filter.BiasSd > early.Drift.Filter.BiasSd);
    }

    /// <summary>Rows have edges and turning chains, joined rounds a chain alone, a spiral neither.</summary>
    [Theory]
    [InlineData("turned", true, MakerRemedies.TurnGives)]
    [InlineData("rounds", false, MakerRemedies.TurnGives)]
    [InlineData("spiral", false, 0)]
    public void Only_what_can_be_done_is_advised(string working, bool edge, double turn)
    {
        var text = System.Text.Encoding.UTF8.GetString(DemoProject.Utf8);
        var document = System.Text.Json.Nodes.JsonNode.Parse(text)!.AsObject();
        document["garment"] = System.Text.Json.Nodes.JsonNode.Parse(
            $$"""{ "shape": "cowl", "circumference": "70 cm", "height": "30 cm", "working": "{{working}}" }""");
        document.Remove("sizes");
        var project = ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(document.ToJsonString())).Project!;
        var plan = GarmentPlanner.Plan(project).Plan!;
        var part = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts[0];
        var track = DriftTrack.Begin(part.Planned!, new DriftModel(0.01, 50)).WorkTo(part.Planned!.StitchesBefore(1));
        var means = MakerRemedies.AtRowEnd(track, part, 0, _ => 0)(track.Filter);
        Assert.Equal((edge, turn), (means.EdgeStitch, means.Turn));
    }

    /// <summary>A maker who would rather work on than rip back is told how to get her colours back.</summary>
    [Fact]
    public void Who_does_not_rip_back_is_told_how_to_go_on()
    {
        var far = AtFirstRow().Apply(new Entry(EntryKind.Row, Then, Phase: 8));
        Assert.Equal(DriftAdviceKind.RipBack, far.Drift!.Advice!.Kind);
        var on = far.Apply(new Entry(EntryKind.Row, Then, Phase: 8));
        Assert.NotEqual(DriftAdviceKind.RipBack, on.Drift!.Advice!.Kind);
        Assert.NotEqual(DriftAdviceKind.CarryOn, on.Drift.Advice.Kind);
    }

    private static MakingState AtFirstRow()
    {
        var state = MakingState.Begin(Tunic);
        while (state.Row is null)
            state = state.Apply(new Entry(EntryKind.Step, Then));
        return state;
    }

    /// <summary>By Box and Muller.</summary>
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
