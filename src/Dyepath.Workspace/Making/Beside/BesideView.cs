using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>What stays the same while a piece is made: its order, its words and its colours.</summary>
public sealed class BesideView
{
    private readonly Wording _wording;

    private BesideView(Project project, MakingOrder order, OwnYarn? own)
    {
        (Project, Order, Own) = (project, order, own);
        _wording = new Wording([order.Size.Name], project.Edition with { Size = order.Size.Name });
        Names = [.. Key.Select(c => c.Name)];
        Palette = YarnPalette.Of(order.Plan);
    }

    /// <summary>The design as it was when the piece was begun.</summary>
    public Project Project { get; }

    /// <summary>Everything that is done, in order.</summary>
    public MakingOrder Order { get; }

    /// <summary>What the maker counted in her own yarn; missing where she did not.</summary>
    public OwnYarn? Own { get; }

    /// <summary>By section of the ring, in the order in which they are worked.</summary>
    public ImmutableArray<SequenceColour> Key => Order.Plan.Sequence.Colours;

    /// <summary>What each section is called, in the order of work.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>0xRRGGBB of each section, in the order of work; the companion yarn after them.</summary>
    public int[] Palette { get; }

    /// <summary>Stitches of each colour of her sequence in the order of work: her own count, else the pattern's.</summary>
    public ImmutableArray<int> Sequence
    {
        get
        {
            if (Own is null)
                return [.. Enumerable.Range(0, Key.Length).Select(section => Whole(Order.Plan.Sequence.UnitsIn(section)))];
            var counted = Own.Sections.Select(Whole);
            return [.. Project.Yarn.FromOtherEnd ? counted.Reverse() : counted];

            static int Whole(double stitches) => (int)Math.Round(stitches, MidpointRounding.AwayFromZero);
        }
    }

    /// <summary>What is counted against the yarn.</summary>
    public (string One, string Many) Unit => Project.Fabric.Stitch.StitchesPerUnit == 2 ? ("pair", "pairs") : ("stitch", "stitches");

    /// <summary>Null where the document cannot be planned in its size, with the reason.</summary>
    public static BesideView? TryOpen(MakingDocument making, out string why)
    {
        ArgumentNullException.ThrowIfNull(making);
        return TryOpen(making, GarmentPlanner.Plan(making.Project), out why);
    }

    /// <summary>The same, planned off the page's thread.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static async Task<(BesideView? View, string Why)> OpenAsync(
        MakingDocument making, Planner planner, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(making);
        ArgumentNullException.ThrowIfNull(planner);
        try
        {
            var view = TryOpen(making, await planner.PlanAsync(making.Project, cancel), out var why);
            return (view, why);
        }
        catch (JobException)
        {
            return (null, "It could not be worked out just now. The piece is kept as it is: open the page anew to try again.");
        }
    }

    private static BesideView? TryOpen(MakingDocument making, PlanResult result, out string why)
    {
        why = "";
        if (result.Plan is not { } plan)
        {
            why = string.Join(" ", result.Reasons.Select(r => r.Text));
            return null;
        }
        if (plan.Sizes.All(s => s.Name != making.Size))
        {
            why = $"The pattern has no size {making.Size}.";
            return null;
        }
        // A repeat without a stitch says nothing of the yarn.
        ImmutableArray<ImmutableArray<int>> counted = [.. making.Counted.Where(repeat => repeat.Sum() > 0)];
        var own = counted.IsEmpty ? null : OwnYarn.Of(making.Project, plan.Sequence.Ring, counted);
        return new BesideView(making.Project, MakingOrder.Of(plan, making.Size), own);
    }

    /// <summary>In the terms, units and hand of the project's edition.</summary>
    public string Say(Phrase phrase) => _wording.Text(phrase);

    /// <summary>Where the maker is, in one line.</summary>
    public string Where(MakingState state) => state switch
    {
        { IsDone: true } => "Everything is done",
        { IsPartDone: true } => $"{Say(state.Part.Title)}: finished",
        { Row: { } row } => $"{Say(state.Part.Title)}: {Say(row.Label)} of {state.Part.Rows}",
        _ => $"{Say(state.Part.Title)}: {StepName(state.Part, state.Here.Step)}",
    };

    /// <summary>A step's label; of several in turn with one label, which of them it is, too.</summary>
    /// <param name="step">Index in <see cref="MakingPart.Steps"/>.</param>
    public string StepName(MakingPart part, int step)
    {
        ArgumentNullException.ThrowIfNull(part);
        var (label, first, end) = (part.Steps[step].Label, step, step + 1);
        while (first > 0 && part.Steps[first - 1].Label == label)
            first--;
        while (end < part.Steps.Length && part.Steps[end].Label == label)
            end++;
        return end - first == 1 ? Say(label) : FormattableString.Invariant($"{Say(label)}, {step - first + 1} of {end - first}");
    }
}
