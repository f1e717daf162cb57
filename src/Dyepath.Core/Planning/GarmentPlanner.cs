using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Fabrics;
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
        return SafetyNet.Run(
            effort, () => decisions is null ? PlanOf(project, null, effort) : decisions.Whole(() => PlanOf(project, decisions, effort)),
            reason => PlanResult.Bad([reason]));
    }

    private static PlanResult PlanOf(Project project, Decisions? decisions, Effort effort)
    {
        if (!SharedFabric.TryCreate(project, decisions, effort, out var shared, out var reasons))
            return PlanResult.Bad(reasons);
        var result = PlanOf(shared).From(shared.Sequence.Measured);
        if (result.Plan is null && YarnFindings.Behind(shared).ToArray() is { Length: > 0 } behind)
            result = result.Because(behind.Select(f => f with { Level = FindingLevel.Fault }));
        if (decisions is not null)
        {
            // Of a plan its own ruler is read; where there is none, any of them.
            foreach (var option in result.Options.Where(o => result.Plan is not { } plan || o.Direction == plan.Direction))
                option.Ruler.FindAll();
        }
        shared.Decided();
        return result;
    }

    private static PlanResult PlanOf(SharedFabric shared)
    {
        var project = shared.Project;
        var construction = project.Garment.Shape.Construct(project.Garment);
        var found = SizeTargets.TryFind(project, construction, out var targets, out var faults);
        var wearer = targets?.Sizes.Wearer ?? Wearers.Adult;
        faults = [.. faults, .. EdgingPlanner.Faults(project.Garment, construction, wearer), .. Faults(shared, construction)];
        if (!found || !faults.IsEmpty)
            return PlanResult.Bad(faults);
        var wanted = project.Garment.Direction;
        var planned = Directions(project.Garment).Select(direction =>
        {
            shared.Effort.Begin(EffortPart.Counts);
            var here = wanted is null || wanted == direction ? targets! : targets!.MeasuresOnly();
            return new DirectionPlanner(new Layout(shared, construction, direction), here).Plan();
        }).ToArray();
        ImmutableArray<DirectionOption> options = [.. planned.Select(p => p.Option)];
        var open = planned.Where(p => p.IsFeasible && (wanted is null || p.Direction == wanted)).ToArray();
        if (open.Length == 0)
            return PlanResult.None(Reasons(planned, wanted), options);
        var chosen = Chosen(open);
        var assembly = new SizeAssembly(chosen, targets!);
        var sizes = ImmutableArray.CreateBuilder<SizePlan>();
        for (var i = 0; i < targets!.Count; i++)
        {
            shared.Effort.Begin(EffortPart.Seams);
            if (!assembly.TryAssemble(i, out var size, out var fault))
                return PlanResult.Bad([fault]);
            sizes.Add(size);
        }
        var gauge = shared.GaugeFor(chosen.Direction);
        // Rows may have given way to a seam.
        var made = Made(chosen.Option, sizes);
        options = options.Replace(chosen.Option, made);
        return PlanResult.Of(new Plan(
            project, shared.Sequence, chosen.Direction, sizes.ToImmutable(), options,
            [
                .. shared.Findings, .. targets.Sizes.Derived,
                .. PlanFindings.Of(chosen, targets!, sizes.ToImmutable(), planned.FirstOrDefault(p => p != chosen)),
            ])
        {
            FurthestBeyond = Errors(sizes).MaxBy(e => e.Off) is { } worst && !made.Decides.Contains(worst.Measure)
                && worst.Off > made.WorstError ? worst : null,
            StitchWidth = gauge.StitchWidth,
            RowHeight = gauge.RowHeight,
            EdgingGauge = shared.EdgingGaugeFor(chosen.Direction),
            Rules = [.. project.Garment.Shape.Rules, PlanRule.Grading, PlanRule.Widths, PlanRule.Edgings],
        });
    }

    private static IEnumerable<FitError> Errors(IEnumerable<SizePlan> sizes) =>
        sizes.SelectMany(s => s.Target, (s, t) => new FitError(s.Name, t.Key, s.Finished[t.Key] - t.Value));

    /// <summary>How the sizes that were made of an option fit.</summary>
    private static DirectionOption Made(DirectionOption option, IEnumerable<SizePlan> sizes)
    {
        var errors = Errors(sizes).Where(e => option.Decides.Contains(e.Measure)).ToArray();
        return errors.Length == 0 ? option : option with
        {
            Furthest = errors.MaxBy(e => e.Off),
            TypicalError = FitError.Typical(errors),
        };
    }

    /// <summary>
    /// The direction that fits better; or the other, where it has fewer measures that fit poorly and loses no more of the motif.
    /// </summary>
    private static DirectionPlan Chosen(DirectionPlan[] open)
    {
        var better = open.MinBy(p => p.Score)!;
        return open.Where(p => p.LostShare <= better.LostShare).MinBy(p => (p.PoorMeasures, p.Score))!;
    }

    /// <summary>What is worked in rounds is worked up.</summary>
    private static Direction[] Directions(GarmentSpec garment) =>
        garment.Working == Working.Turned ? Enum.GetValues<Direction>() : [Direction.Up];

    /// <summary>Everything that a garment asks of the companion yarn, and counts that mean nothing before a direction is named.</summary>
    private static IEnumerable<Finding> Faults(SharedFabric shared, Construction construction)
    {
        var project = shared.Project;
        foreach (var fault in SeamSearch.Faults(shared))
            yield return fault;
        if (construction.Groups.FirstOrDefault(g => g.Fills is not null) is { Fills: { } fills } && project.Companion is null)
        {
            yield return new Finding(
                FindingLevel.Fault, fills.Field, $"The inserts of the {PlaceNames.Of(fills.Opening)} are worked in a companion yarn: add one, or choose another form.");
        }
        if (construction.Groups.FirstOrDefault(g => g is { Pooled: false, Fills: null }) is { } plain && project.Companion is null)
        {
            var name = PlaceNames.Of(plain.Pieces[0].Id);
            yield return new Finding(
                FindingLevel.Fault, $"garment.{project.Garment.Shape.PlainPiecesField}",
                $"Plain {name}s need a companion yarn: add one, or work the {name}s in the variegated yarn.");
        }
        if (construction.Groups.Any(g => g.IsSloped) && project.Companion is null)
        {
            yield return new Finding(
                FindingLevel.Fault, "companion",
                $"The rows of a {project.Garment.Shape.Name} go on over chains of a companion yarn, since chains of the variegated yarn would move its colours: add one.");
        }
        if (project.Garment.Grading.SideBands && project.Companion is null)
            yield return new Finding(
                FindingLevel.Fault, "garment.grading.sideBands", "Side bands need a companion yarn: add one, or do without bands.");
        foreach (var (asked, field) in new[] { (project.Garment.Grading.SideBands, "sideBands"), (project.Garment.Grading.UnequalPanels, "unequalPanels") })
        {
            if (asked && construction.Groups.Any(g => g.Pooled && g.Pieces.Any(p => p.Mirrored)))
                yield return new Finding(FindingLevel.Fault, $"garment.grading.{field}", $"The fronts of a {project.Garment.Shape.Name} are alike and go without plain bands at their sides: leave this out.");
        }
        foreach (var fault in construction.Groups.Where(g => g.IsShaped).SelectMany(_ => Unshaped(project)))
            yield return fault;
        var fixedCounts = project.Sizes.Locked.Concat(project.Sizes.Overrides).Any(f => f.Count is not null);
        if (fixedCounts && project.Garment.Direction is null && project.Garment.Working == Working.Turned)
            yield return new Finding(
                FindingLevel.Fault, "garment.direction",
                "A fixed count holds for one direction only: say whether the garment is worked up or sideways.");
    }

    /// <summary>What rows that are shaped cannot have.</summary>
    private static IEnumerable<Finding> Unshaped(Project project)
    {
        var grading = project.Garment.Grading;
        if (project.Fabric.Stitch.StitchesPerUnit != 1)
            yield return new Finding(FindingLevel.Fault, "fabric.stitch", $"A {project.Garment.Shape.Name} is not shaped in {project.Fabric.Stitch.Id} stitch: choose a stitch of which each takes its own yarn.");
        foreach (var (asked, field) in new[] { (grading.AlternatingRows, "alternatingRows"), (grading.SideBands, "sideBands"), (grading.UnequalPanels, "unequalPanels") })
        {
            if (asked)
                yield return new Finding(FindingLevel.Fault, $"garment.grading.{field}", $"The rows of a {project.Garment.Shape.Name} are shaped, which does not go with this: leave it out.");
        }
    }

    internal static Finding BallFault(SharedFabric shared) => new(
        FindingLevel.Fault, "yarn.ball.length", FormattableString.Invariant(
            $"A ball of {shared.Project.Yarn.Ball.Length.Metres:0.#} m cannot be planned: it is shorter than one sequence with its ends, or over {BallPlanner.MostBalls} would be needed. Check the ball and the yarn per stitch."));

    /// <summary>
    /// Why no direction that is allowed can be planned, each reason with its direction and what would help; what holds in every direction
    /// alike is said once.
    /// </summary>
    private static IEnumerable<Finding> Reasons(DirectionPlan[] plans, Direction? wanted)
    {
        var tried = plans.Where(p => wanted is null || p.Direction == wanted)
            .SelectMany(p => Reasons(p, plans), (p, reason) => (p.Direction, Reason: reason));
        return tried.GroupBy(t => t.Reason).Select(alike => plans.Length == 1 ? alike.Key
            : alike.Key.Behind($"Worked {string.Join(" or ", alike.Select(t => DirectionWords.Of(t.Direction)).Distinct())}: "));
    }

    /// <summary>Where the reason lies if no count makes the motif.</summary>
    private const string MotifPlace = "garment.motif";

    /// <summary>The first reason, which counts have to do with where none serve, says what would help.</summary>
    private static ImmutableArray<Finding> Reasons(DirectionPlan plan, DirectionPlan[] plans)
    {
        var first = plan.Option.Reasons[0];
        Remedy[] turned = [.. plans.Where(p => p != plan && p.IsFeasible).Select(p => PlanFindings.Turned(plan, $"work it {DirectionWords.Of(p.Direction)}") with
        {
            Then = $"there is a plan ({DirectionWords.Furthest(p.Option, plan.Units)})",
        }).Select(d => d.Remedy)];
        var ruler = plan.Option.Ruler;
        // Where counts serve, something else stands in the way.
        var served = ruler.Sizes.All(s => s.Choice is not null);
        Remedy[] counts = served ? [] : first.Place == MotifPlace ? [.. ruler.Remedies]
            : [.. ruler.Changes.Select(c => GradingWords.Deed(c, ruler).Remedy)];
        var advice = first.Remedies.Where(r => counts.All(c => c.Text != r.Text));
        ImmutableArray<Remedy> helps = [.. turned, .. counts, .. advice];
        return plan.Option.Reasons.SetItem(0, helps.IsEmpty ? first : first.Helped(helps));
    }
}
