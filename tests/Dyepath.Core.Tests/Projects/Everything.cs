using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Everything that is worked out from a document, in the order in which its pages ask for it.</summary>
internal static class Everything
{
    /// <summary>Of pieces beyond this many stitches no cloth is made here: the same code runs for smaller ones.</summary>
    private const int MostStitches = 60_000;

    public static void From(Project project)
    {
        Assert.Equal(ProjectWriter.Write(project), ProjectWriter.Write(ProjectReader.Read(ProjectWriter.WriteUtf8(project)).Project!));
        Yarn(project);
        var result = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);
        Sound(result.HasPlan ? result.Plan.Findings : result.Reasons);
        Assert.True(result.HasPlan || !result.Reasons.IsEmpty);
        foreach (var option in result.Options)
        {
            _ = option.Ruler.InReach;
            _ = option.Ruler.Remedies;
        }
        if (result.Plan is not { } plan)
            return;
        Sound(PlanCheck.Verify(plan));
        PlanJson.Write(new Utf8JsonWriter(new ArrayBufferWriter<byte>()), plan);
        if (plan.Sizes.SelectMany(s => s.Pieces).Any(p => (long)p.Stitches * p.Rows > MostStitches))
            return;
        var booklet = PatternWriter.Write(plan);
        Assert.NotEmpty(TextBooklet.Write(booklet, project.Edition));
        Sound(PatternCheck.Text(plan, TextBooklet.Write(booklet, project.Edition with { Language = Language.English })));
        foreach (var piece in plan.Sizes[0].Pieces)
        {
            _ = WornPiece.Of(plan, piece);
            if (piece.Pooled)
                Simulated(plan, piece);
        }
        Made(plan, plan.Sizes[^1].Name, [], [new Entry(EntryKind.Step, default), new Entry(EntryKind.Row, default, 1), new Entry(EntryKind.Run, default, -1)]);
    }

    public static void From(MakingDocument making)
    {
        var result = GarmentPlanner.Plan(making.Project, TestContext.Current.CancellationToken);
        if (result.Plan is { } plan && plan.Sizes.Any(s => s.Name == making.Size))
            Made(plan, making.Size, making.Counted, making.Log);
    }

    /// <summary>Words are for what a maker wrote; a fault of the program behind them is no answer.</summary>
    private static void Sound(ImmutableArray<Finding> findings)
    {
        if (findings.FirstOrDefault(f => f.Cause is not null) is { } broken)
            throw new InvalidOperationException($"{broken.Place}: {broken.Cause}", broken.Cause);
        Assert.All(findings, f => Assert.True(f.Place.Length > 0 && f.Text.Length > 0));
    }

    private static void Yarn(Project project)
    {
        if (!MeasuredYarn.TryMeasure(project.Yarn, project.Fabric, out var measured, out var reasons))
        {
            Assert.NotEmpty(reasons);
            return;
        }
        measured.Tension();
        var hooks = HookSizes.All.Select(h => h.Diameter.Millimetres).Where(d => d is >= 0.5 and <= 50).ToArray();
        var advice = measured.AdviseHook(hooks);
        measured.AtHook(advice.Advised.Millimetres);
        measured.CountingForCountedWork();
        measured.CountingForFreeWork(100);
        measured.SequenceErrorAfter(3);
    }

    private static void Simulated(Plan plan, PiecePlan piece) => TensionSimulation.Run(
        PlannedPiece.Of(plan, piece), HandModel.Create(0.02, 50), new SimulationSettings { Trials = 2 });

    private static void Made(Plan plan, string size, ImmutableArray<ImmutableArray<int>> counted, IEnumerable<Entry> log)
    {
        var own = counted.IsEmpty ? null : OwnYarn.Of(plan.Project, plan.Sequence.Ring, counted);
        if (own is not null)
            Sound(GarmentPlanner.Plan(OwnYarn.Rederive(plan.Project, counted), TestContext.Current.CancellationToken).Reasons);
        var state = MakingState.Begin(MakingOrder.Of(plan, size), own).Apply(log);
        HandsLog.Of(state);
    }
}
