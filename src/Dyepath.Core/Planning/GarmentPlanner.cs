using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>From a project to a plan for every size.</summary>
public static class GarmentPlanner
{
    /// <summary>
    /// Plans the project in every direction it allows, chooses one for the whole garment, and works out pieces, seams, edgings
    /// and yarn. The same project gives the same plan on every machine. Every project gives a plan or reasons: what goes wrong inside is
    /// a reason too.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static PlanResult Plan(Project project, CancellationToken cancel = default) => Plan(project, null, Effort.OfPlan(cancel));

    /// <param name="decisions">
    /// To record what was searched for, what the fit's ruler would search for later among it, or to be answered from: the plan is then
    /// the same, without the searches.
    /// </param>
    /// <inheritdoc cref="Plan(Project, CancellationToken)"/>
    public static PlanResult Plan(Project project, Decisions? decisions, CancellationToken cancel = default) =>
        Plan(project, decisions, Effort.OfPlan(cancel));

    internal static PlanResult Plan(Project project, Effort effort) => Plan(project, null, effort);

    internal static PlanResult Plan(Project project, Decisions? decisions, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(project);
        return Whatever.Happens(
            effort, () => decisions is null ? PlanOf(project, null, effort) : decisions.Whole(() => PlanOf(project, decisions, effort)),
            reason => PlanResult.Bad([reason]));
    }

    private static PlanResult PlanOf(Project project, Decisions? decisions, Effort effort)
    {
        if (!Fabrication.TryCreate(project, decisions, effort, out var fabrication, out var reasons))
            return PlanResult.Bad(reasons);
        var result = PlanOf(fabrication).From(fabrication.Sequence.Measured);
        if (decisions is not null)
        {
            foreach (var option in result.Options)
                option.Ruler.FindAll();
        }
        fabrication.Decided();
        return result;
    }

    private static PlanResult PlanOf(Fabrication fabrication) => fabrication.Project.Garment.Shape switch
    {
        BoxyTop top => Boxy(fabrication, top),
        Cowl or Wrap => RectanglePlanner.Plan(fabrication),
        var other => throw new ArgumentOutOfRangeException(
            nameof(fabrication), other, "project.Garment.Shape must be a boxy top, a cowl or a wrap."),
    };

    private static PlanResult Boxy(Fabrication fabrication, BoxyTop shape)
    {
        var project = fabrication.Project;
        var found = BoxyTargets.TryFind(shape, project.Sizes, out var targets, out var faults);
        faults = [.. faults, .. EdgingPlanner.Faults(project.Garment, targets?.Sizes.Wearer ?? Wearers.Adult),
            .. Faults(fabrication, shape)];
        if (!found || !faults.IsEmpty)
            return PlanResult.Bad(faults);
        var wanted = project.Garment.Direction;
        var planned = new List<(BoxyDirectionPlanner Planner, BoxyDirection Plan)>();
        foreach (var direction in Enum.GetValues<Direction>())
        {
            fabrication.Effort.Begin(EffortPart.Counts);
            var fixedHere = wanted is null || wanted == direction ? targets! : targets! with { Fixed = targets.Fixed.MeasuresOnly() };
            var planner = new BoxyDirectionPlanner(fabrication, shape, fixedHere, direction);
            planned.Add((planner, planner.Plan()));
        }
        var open = planned.Where(p => p.Plan.IsFeasible && (wanted is null || p.Plan.Direction == wanted)).ToArray();
        if (open.Length == 0)
            return PlanResult.None(Reasons(planned.Select(p => p.Plan), wanted), planned.Select(p => p.Plan.Option));
        var chosen = open.MinBy(p => p.Plan.Score);
        var assembly = new BoxyAssembly(fabrication, shape, targets!, chosen.Plan, chosen.Planner);
        var sizes = ImmutableArray.CreateBuilder<SizePlan>();
        for (var i = 0; i < targets!.Sizes.Sizes.Length; i++)
        {
            fabrication.Effort.Begin(EffortPart.Seams);
            if (!assembly.TryAssemble(i, out var size, out var fault))
                return PlanResult.Bad([fault]);
            sizes.Add(size);
        }
        return PlanResult.Of(Finish(
            fabrication, chosen.Plan.Direction, Why(planned.Select(p => p.Plan.Option).ToArray(), chosen.Plan.Option, wanted is not null),
            sizes.ToImmutable(), [.. planned.Select(p => p.Plan.Option)], BoxyTargets.Rules));
    }

    /// <summary>Everything that a garment asks of the companion yarn, and counts that mean nothing before a direction is named.</summary>
    private static IEnumerable<Finding> Faults(Fabrication fabrication, BoxyTop shape)
    {
        foreach (var fault in SeamSearch.Faults(fabrication))
            yield return fault;
        if (shape.Sleeves is { Pooled: false } && fabrication.Project.Companion is null)
            yield return new Finding(
                FindingLevel.Fault, "garment.sleeves.yarn",
                "Plain sleeves need a companion yarn: add one, or work the sleeves in the variegated yarn.");
        if (fabrication.Project.Garment.Grading.SideBands && fabrication.Project.Companion is null)
            yield return new Finding(
                FindingLevel.Fault, "garment.grading.sideBands", "Side bands need a companion yarn: add one, or do without bands.");
        var fixedCounts = fabrication.Project.Sizes.Locked.Concat(fabrication.Project.Sizes.Overrides).Any(f => f.Count is not null);
        if (fixedCounts && fabrication.Project.Garment.Direction is null)
            yield return new Finding(
                FindingLevel.Fault, "garment.direction",
                "A fixed count holds for one direction only: say whether the garment is worked up or sideways.");
    }

    internal static Finding BallFault(Fabrication fabrication) => new(
        FindingLevel.Fault, "yarn.ball.length", FormattableString.Invariant(
            $"A ball of {fabrication.Project.Yarn.Ball.Length.Metres:0.#} m cannot be planned: it is shorter than one sequence with its ends, or over {BallPlanner.MostBalls} would be needed. Check the ball and the yarn per stitch."));

    internal static IEnumerable<Finding> Reasons(IEnumerable<BoxyDirection> plans, Direction? wanted) => plans
        .Where(p => wanted is null || p.Direction == wanted)
        .SelectMany(p => p.Reasons.Select(r => r with { Text = $"Worked {Name(p.Direction)}: {r.Text}" }));

    internal static Plan Finish(
        Fabrication fabrication, Direction direction, string why, ImmutableArray<SizePlan> sizes, ImmutableArray<DirectionOption> options,
        ImmutableArray<PlanRule> rules)
    {
        var gauge = fabrication.GaugeFor(direction);
        return new Plan(
            fabrication.Project, fabrication.Sequence, gauge.StitchWidth, gauge.RowHeight, direction, why, sizes,
            options,
            [.. fabrication.Findings, .. PlanFindings.Of(fabrication, direction, sizes)])
        {
            Rules = rules,
        };
    }

    /// <summary>One sentence, with the numbers of both directions where there were two.</summary>
    internal static string Why(IReadOnlyList<DirectionOption> options, DirectionOption chosen, bool asked)
    {
        var other = options.FirstOrDefault(o => o.Direction != chosen.Direction);
        var begin = asked ? $"Worked {Name(chosen.Direction)}, as asked" : $"Worked {Name(chosen.Direction)}";
        if (other is null)
            return $"{begin}: {chosen.Reason}";
        if (!other.Feasible)
            return $"{begin}, since {Name(other.Direction)} no counts serve: {chosen.Reason}";
        return FormattableString.Invariant(
            $"{begin}: {Numbers(chosen)} against {Numbers(other)} worked {Name(other.Direction)}{(asked ? "" : ", judged by worst error, half a centimetre a count, and what the counts forgive")}.");
    }

    internal static string Name(Direction direction) => direction == Direction.Up ? "up" : "sideways";

    private static string Numbers(DirectionOption option) => FormattableString.Invariant(
        $"{option.Counts.Length} {(option.Counts.Length == 1 ? "count" : "counts")} with a worst error of {option.WorstError.Centimetres:0.0} cm");
}
