using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>The garment planned again with a change, in the direction that was chosen: what its measures come to then.</summary>
internal sealed class RemedyTrials(DirectionPlan chosen, SizeTargets targets)
{
    private static readonly ImmutableArray<Length> LetOffs = [.. new[] { 2.0, 1, 0 }.Select(Length.FromCentimetres)];

    /// <summary>
    /// Farther off than the last of these an edge is no longer the one that was asked for (an assumption without a source).
    /// </summary>
    private static readonly ImmutableArray<Length> FurtherOff = [.. new[] { 3.0, 4 }.Select(Length.FromCentimetres)];

    /// <summary>Of measures that a change moves besides, more than these are counted alone.</summary>
    private const int MostMoves = 3;

    /// <summary>What a change has to bring to be worth its words.</summary>
    public static readonly Length Worth = Length.FromCentimetres(0.5);

    private readonly Dictionary<Length, DirectionPlan> _letOff = [];
    private readonly Dictionary<EdgingPlace, DirectionPlan?> _edged = [];

    private DirectionPlan? _leaning;

    private Layout Layout => chosen.Layout;

    /// <summary>A trial may take what the plan itself took; advice is left out before the work becomes too much.</summary>
    private bool MayTry => Layout.SharedFabric.Effort.Spent < Limits.Effort.MostOfPlan / 4;

    /// <summary>Cutting everything anew takes as long as the plan took, which doubles it: tried where that is soon done.</summary>
    private bool MayCutAgain => Layout.SharedFabric.Effort.Spent < Limits.Effort.MostOfPlan / 40;

    /// <summary>What brings a measure nearer, and how far the furthest size is off then.</summary>
    /// <param name="accepted">Of an edge that is cut, how far it may be off; missing where it is not cut.</param>
    public IEnumerable<Deed> Of(FitError error, Length? accepted)
    {
        var measure = error.Measure;
        if (Deeper(measure, error) is { } deeper)
            yield return Deed.Of(deeper.Place, FormattableString.Invariant($"{deeper.Rounds}"), deeper.Deed) with { Then = Then(deeper.Plan) };
        if (Edged(measure) is { } edged)
        {
            yield return Edge(
                edged.Place, $"edge the {EdgingPlaces.Words(edged.Place)} with single crochet, whose rounds make up what the counts leave") with
            { Then = Then(edged.Plan) };
        }
        if (accepted is { } most && LetOff(measure, most) is { } trial)
            yield return Deed.LetOff(trial, chosen.Units) with { Then = Then(LetOffBy(trial)) };
        if (chosen.Option.Ruler.Measure != measure && SeveralLeans(measure) is { } leaning)
            yield return Deed.Of("garment.grading.severalLeans", "true", "allow several leans in one pattern") with { Then = Then(leaning) };

        string Then(DirectionPlan plan) => $"{Deed.OffThen(measure, plan.Furthest(measure), chosen.Units)}{Cost(plan)}{Moves(plan, measure)}";
    }

    /// <summary>Adds a plain edging to the document's.</summary>
    public Deed Edge(EdgingPlace place, string words) => Deed.Of(
        FormattableString.Invariant($"garment.edgings[{Layout.SharedFabric.Project.Garment.Edgings.Length}]"),
        $"{{\"where\": \"{EdgingPlaces.Key(place)}\", \"edging\": \"{Plain(place)}\"}}", words);

    /// <summary>
    /// Edges what is cut. The edging stands inside of what is asked for, so that all that is cut is planned anew: what comes of that.
    /// </summary>
    public Deed EdgeCut(EdgingPlace place)
    {
        if (!MayCutAgain || EdgedAt(place, chosen.Lean) is not { } plan)
        {
            return Edge(place, "edge it with single crochet") with
            {
                Then = "the edging's depth is inside what is asked for, so that all that is cut is planned anew, and may come out at other measures",
            };
        }
        if (!plan.IsFeasible)
            return Deed.Of("make it wider or deeper, and then edge it: with an edging inside it as it is there is no plan");
        if (!StillWorn(plan))
            return Deed.Of("make it wider or deeper, and then edge it: with an edging inside it as it is a body would no longer get in");
        var opens = Layout.Construction.Groups.Where(g => g.Openings.Any(o => o.Place == place))
            .SelectMany(g => g.OpeningMeasures).ToHashSet();
        var furthest = Furthest(plan, opens);
        return Edge(place, "edge it with single crochet") with
        {
            Then = $"with the edging inside it, furthest off of what is cut is {furthest.Say(chosen.Units)}{Cost(plan)}{Moves(plan, furthest.Measure)}",
        };
    }

    /// <summary>What is furthest off of some measures, in any size.</summary>
    private static FitError Furthest(DirectionPlan plan, HashSet<GarmentMeasure> measures) =>
        plan.Finished.SelectMany((f, i) => f.Where(m => measures.Contains(m.Key))
            .Select(m => new FitError(plan.Names[i], m.Key, m.Value - plan.Targets[i][m.Key]))).MaxBy(e => e.Off)!;

    /// <summary>What a change costs the motif; empty where it is as much as now, to a whole per cent.</summary>
    private string Cost(DirectionPlan plan)
    {
        var (then, now) = (Share(plan), Share(chosen));
        return then == now || Math.Abs(plan.LostShare - chosen.LostShare) < 0.005 ? "" : $", and {then} of the stitches are lost to the motif instead of {now}";

        static string Share(DirectionPlan of) => FormattableString.Invariant($"{of.LostShare:0 %}");
    }

    /// <summary>What else a change moves by more than is worth its words, the most first; empty where it moves nothing else.</summary>
    /// <param name="besides">What is told of anyway.</param>
    public string Moves(DirectionPlan plan, params ReadOnlySpan<GarmentMeasure> besides)
    {
        List<(Length By, string Words)> moves = [];
        foreach (var measure in chosen.Finished[0].Keys)
        {
            if (besides.Contains(measure) || !plan.Finished.All(f => f.ContainsKey(measure)))
                continue;
            var by = chosen.Finished.Zip(plan.Finished, (now, then) => Length.Abs(then[measure] - now[measure])).ToArray();
            if (by.Max() is var most && most <= Worth)
                continue;
            var where = by.Length == 1 ? "" : $" (most in {plan.Names[Array.IndexOf(by, most)]})";
            moves.Add((most, FormattableString.Invariant($"{GarmentMeasures.Words(measure)} by up to {Wording.Fine(most, chosen.Units)}{where}")));
        }
        if (moves.Count == 0)
            return "";
        var said = moves.OrderByDescending(m => m.By).Select(m => m.Words).Take(MostMoves).ToList();
        if (moves.Count > MostMoves)
            said.Add($"{moves.Count - MostMoves} more");
        return $"; it also moves {Wording.List(said)}";
    }

    /// <summary>
    /// The least that edges have to be let off for the motif to go on unbroken in every size, and what is furthest off of the cuts then;
    /// null where nothing that is tried keeps it, or has cuts come out poorly.
    /// </summary>
    public (Length LetOff, FitError Furthest, DirectionPlan Plan)? Kept()
    {
        var cut = Layout.Construction.Groups.Where(g => g.Openings.Any(o => o.Cut is not null));
        var measures = cut.SelectMany(g => g.OpeningMeasures).ToHashSet();
        foreach (var letOff in FurtherOff.Where(l => Layout.Construction.Groups.All(g => g.LetOff is null || l > g.LetOff)))
        {
            if (!MayTry || LetOffBy(letOff) is not { IsFeasible: true } plan || !plan.KeepsMotif || !StillWorn(plan))
                continue;
            var furthest = Furthest(plan, measures);
            if (furthest.Off <= FitError.Poor)
                return (letOff, furthest, plan);
        }
        return null;
    }

    /// <summary>
    /// The most that edges may be let off, of less than they are, for a plan to be as is asked for, with what comes of it and what it costs
    /// the motif; null where none is.
    /// </summary>
    /// <param name="then">What the plan then is.</param>
    public Deed? LetOffFor(Func<DirectionPlan, bool> isSo, Func<DirectionPlan, string> then)
    {
        foreach (var letOff in LetOffs.Where(l => Layout.Construction.Groups.Any(g => l < (g.LetOff ?? PieceGroup.UsualLetOff))))
        {
            if (MayTry && LetOffBy(letOff) is { IsFeasible: true } plan && isSo(plan) && StillWorn(plan))
                return Deed.LetOff(letOff, chosen.Units) with { Then = $"{then(plan)}{Cost(plan)}{Moves(plan)}" };
        }
        return null;
    }

    /// <summary>
    /// The most that edges may be let off, so that the motif gives way there, for no size's measure to be off by more than is accepted, or
    /// else what brings it nearest; null where none brings it nearer than it is.
    /// </summary>
    private Length? LetOff(GarmentMeasure measure, Length accepted)
    {
        (Length LetOff, Length Furthest)? best = null;
        foreach (var letOff in LetOffs.Where(l => Layout.Construction.Groups.Any(g => l < g.LetOff)))
        {
            if (!MayTry || Nearer(LetOffBy(letOff), measure) is not { } furthest)
                continue;
            if (best is null || furthest < best.Value.Furthest - Worth)
                best = (letOff, furthest);
            if (furthest <= accepted)
                break;
        }
        return best?.LetOff;
    }

    /// <summary>
    /// An edge of the measure that has no edging yet, and the plan once it has one, whose rounds make up what the counts leave; null where
    /// none brings it nearer than it is.
    /// </summary>
    private (EdgingPlace Place, DirectionPlan Plan)? Edged(GarmentMeasure measure)
    {
        var places = Layout.Construction.Groups.SelectMany(g => new[] { g.Across, g.Down }).Where(d => d.Measure == measure)
            .SelectMany(d => d.Edgings).Distinct().Where(p => Layout.SharedFabric.EdgingAt(p) is null);
        foreach (var place in places)
        {
            if (MayTry && EdgedAt(place) is { } plan && Nearer(plan, measure) is not null)
                return (place, plan);
        }
        return null;
    }

    /// <summary>The plan where leans may differ; null where that brings it no nearer than it is.</summary>
    private DirectionPlan? SeveralLeans(GarmentMeasure measure)
    {
        var garment = Layout.SharedFabric.Project.Garment;
        if (garment.Grading.SeveralLeans || !MayTry)
            return null;
        _leaning ??= Plan(
            Layout.SharedFabric.With(garment with { Grading = garment.Grading with { SeveralLeans = true } }), Layout.Construction);
        return Nearer(_leaning, measure) is null ? null : _leaning;
    }

    /// <summary>
    /// More or fewer rounds of an edging that the measure has, from those that its sizes have; null where none brings it nearer than it is.
    /// </summary>
    private (string Deed, string Place, int Rounds, DirectionPlan Plan)? Deeper(GarmentMeasure measure, FitError error)
    {
        var garment = Layout.SharedFabric.Project.Garment;
        var places = Layout.Construction.Groups.SelectMany(g => new[] { g.Across, g.Down }).Where(d => d.Measure == measure)
            .SelectMany(d => d.Edgings).ToHashSet();
        // An edging stands inside what is cut, so that fewer rounds make that larger; beside a narrower one more is left as well.
        var inside = Layout.Construction.Groups.Where(g => g.OpeningMeasures.Contains(measure)).SelectMany(g => g.Openings)
            .Select(o => o.Place).OfType<EdgingPlace>().ToHashSet();
        for (var i = 0; i < garment.Edgings.Length; i++)
        {
            var choice = garment.Edgings[i];
            if (!places.Contains(choice.Where) && !inside.Contains(choice.Where) || !EdgingLibrary.TryFind(choice.Edging, out var edging))
                continue;
            var isOver = error.IsOver != inside.Contains(choice.Where);
            var more = Math.Max(1, (int)Math.Round(error.Off / Layout.SharedFabric.EdgingGaugeFor(Direction.Up).RowHeight));
            var (fewest, wished, most) = choice.RoundsOf(edging);
            var isFree = fewest < most && Layout.Construction.Groups.Any(g => Layout.Varied(g) == choice.Where);
            // What may vary by size is let vary further; what is alike in all sizes is changed in all of them.
            var wanted = !isFree ? wished + (isOver ? -more : more) : isOver ? fewest - more : most + more;
            wanted = Math.Clamp(wanted, edging.Fewest, edging.Allowed.Largest);
            var changed = !isFree ? choice with { Rounds = wanted, Fewest = null, Most = null }
                : isOver ? choice with { Fewest = wanted } : choice with { Most = wanted };
            var name = EdgingPlaces.Words(choice.Where);
            var edgings = garment.Edgings.SetItem(i, changed);
            if (changed == choice || !MayTry)
                continue;
            var plan = Plan(Layout.SharedFabric.With(garment with { Edgings = edgings }), Layout.Construction);
            if (Nearer(plan, measure) is not null)
            {
                return !isFree ? ($"work {wanted} {(wanted == 1 ? "round" : "rounds")} of edging at the {name}", $"garment.edgings[{i}].rounds", wanted, plan)
                    : isOver ? ($"work as few as {wanted} {(wanted == 1 ? "round" : "rounds")} of edging at the {name}", $"garment.edgings[{i}].fewestRounds", wanted, plan)
                    : ($"work up to {wanted} rounds of edging at the {name}", $"garment.edgings[{i}].mostRounds", wanted, plan);
            }
        }
        return null;
    }

    /// <summary>Null where there is no plan, or one that is hardly nearer.</summary>
    private Length? Nearer(DirectionPlan? plan, GarmentMeasure measure) =>
        plan is { IsFeasible: true } && plan.Furthest(measure) is var furthest && furthest < chosen.Furthest(measure) - Worth
            && StillWorn(plan) ? furthest : null;

    /// <summary>Every part that a body gets into as it is planned it gets into after the change too.</summary>
    public bool StillWorn(DirectionPlan plan) => Enumerable.Range(0, plan.Finished.Length).All(i =>
    {
        var now = targets.Worn(i, chosen.Finished[i]).Where(f => f.Holds).Select(f => f.Part).ToHashSet();
        return targets.Worn(i, plan.Finished[i]).All(f => f.Holds || !now.Contains(f.Part));
    });

    /// <summary>
    /// It is no help to turn the work where that spoils something else: a body no longer gets in, or a measure comes out poorly that was
    /// not as far off.
    /// </summary>
    public bool MayTurn(DirectionPlan other) => StillWorn(other) && other.Finished[0].Keys.All(measure =>
        !IsHeld(chosen, measure) || !IsHeld(other, measure)
        || other.Furthest(measure) <= Length.Max(FitError.Poor, chosen.Furthest(measure)));

    private static bool IsHeld(DirectionPlan plan, GarmentMeasure measure) =>
        plan.Finished.All(f => f.ContainsKey(measure)) && plan.Targets.All(t => t.ContainsKey(measure));

    private DirectionPlan LetOffBy(Length letOff)
    {
        if (!_letOff.TryGetValue(letOff, out var plan))
        {
            var construction = Layout.Construction;
            construction = construction with { Groups = [.. construction.Groups.Select(g => g with { LetOff = letOff })] };
            // Edges that are cut say nothing of the counts.
            _letOff[letOff] = plan = Planner(Layout.SharedFabric, construction, chosen.Lean).PlanLeaning();
        }
        return plan;
    }

    /// <param name="lean">Where it is known already, since the edging is inside what is cut and no count goes by it.</param>
    private DirectionPlan? EdgedAt(EdgingPlace place, double? lean = null)
    {
        if (!_edged.TryGetValue(place, out var plan))
        {
            var garment = Layout.SharedFabric.Project.Garment;
            garment = garment with { Edgings = garment.Edgings.Add(new EdgingChoice(place, Plain(place), null)) };
            var faults = EdgingPlanner.Faults(garment, Layout.Construction, targets.Sizes.Wearer);
            var fits = faults.All(f => f.Level != FindingLevel.Fault);
            if (!fits)
                plan = null;
            else if (lean is null)
                plan = Plan(Layout.SharedFabric.With(garment), garment.Shape.Construct(garment));
            else
                plan = Planner(Layout.SharedFabric.With(garment), garment.Shape.Construct(garment), lean).PlanLeaning();
            _edged[place] = plan;
        }
        return plan;
    }

    private DirectionPlan Plan(SharedFabric shared, Construction construction) => Planner(shared, construction).Plan();

    private DirectionPlanner Planner(SharedFabric shared, Construction construction, double? lean = null) =>
        new(new Layout(shared, construction, chosen.Direction), targets, lean);

    /// <summary>Rounds of single crochet, or rows where the edge is open.</summary>
    private string Plain(EdgingPlace place) =>
        Layout.Construction.Edgings.Any(e => e.Place == place && e.IsOpen) ? EdgingLibrary.PlainRows : EdgingLibrary.Plain;
}
