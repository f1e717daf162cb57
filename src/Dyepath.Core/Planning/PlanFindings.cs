using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>What the designer should know of a finished plan.</summary>
internal static class PlanFindings
{
    /// <summary>Below this it is not seen that a larger size is smaller (common practice, no source).</summary>
    private static readonly Length Noticed = Length.FromCentimetres(0.5);

    /// <summary>What a customer of neighbouring sizes expects to differ (common practice, no source).</summary>
    private static readonly Length AskedApart = Length.FromCentimetres(1);

    /// <summary>A motif that forgives less than this is held only by counting.</summary>
    private const double HardToHold = 0.01;

    /// <summary>More than these are no help.</summary>
    private const int MostRemedies = 3;

    /// <param name="sizes">Of the chosen direction.</param>
    /// <param name="other">Planned in the other direction, where there is one.</param>
    public static IEnumerable<Finding> Of(
        DirectionPlan chosen, SizeTargets targets, ImmutableArray<SizePlan> sizes, DirectionPlan? other)
    {
        var (construction, shared, direction) = (chosen.Layout.Construction, chosen.Layout.SharedFabric, chosen.Direction);
        var project = shared.Project;
        var trials = new RemedyTrials(chosen, targets);
        // What is measured wrong has consequences in all that follows.
        foreach (var yarn in YarnFindings.Of(shared))
            yield return yarn;
        var errors = sizes.SelectMany(
            s => s.Target, (s, t) => new SizeError(new FitError(s.Name, t.Key, s.Finished[t.Key] - t.Value), t.Value));
        foreach (var poor in errors.Where(e => e.Fit.Off > FitError.Poor).GroupBy(e => (e.Fit.Measure, e.Fit.IsOver)))
        {
            yield return Warn(Say([.. poor], chosen.Units), Helps(poor.MaxBy(e => e.Fit.Off)!.Fit));
        }
        foreach (var (measure, uneven, rows) in Uneven(chosen, sizes))
        {
            if (rows is { } step)
            {
                yield return new Finding(FindingLevel.Note, "garment.grading", FormattableString.Invariant(
                    $"{uneven}: a piece grows by {step.Rows} {(step.Rows == 1 ? "round" : "rows")} at a time, which makes {Wording.Fine(step.Grows, chosen.Units)} in all."));
                continue;
            }
            if (IsCut(construction, measure) && CutFindings.Uneven(chosen, measure, uneven, trials) is { } steps)
            {
                yield return steps;
                continue;
            }
            var furthest = errors.Where(e => e.Fit.Measure == measure).MaxBy(e => e.Fit.Off)!.Fit;
            // What is poor by itself has its remedies said above.
            yield return furthest.Off > FitError.Poor
                ? new Finding(FindingLevel.Warning, Grading, $"{uneven}.") : Warn(uneven, Helps(furthest)) with { Place = Grading };
        }
        foreach (var deep in DeepEdgings(construction, project, sizes))
            yield return deep;
        var tooTight = sizes.SelectMany(s => s.Worn, (s, f) => (s.Name, Fit: f)).Where(f => !f.Fit.Holds);
        foreach (var alike in tooTight.GroupBy(f => (f.Fit.Place, f.Fit.Part, f.Fit.Body, f.Fit.Mend)))
        {
            var (its, has) = (alike.Count() == 1 ? "its" : "their", Named(alike.Select(f => f.Name)));
            yield return new Finding(FindingLevel.Warning, alike.Key.Place, FormattableString.Invariant(
                $"{has}: the {WornWords.Subject(alike.Key.Part)} is {Range(alike.Select(f => f.Fit.Garment), chosen.Units)}; for {its} {project.Sizes.Words(alike.Key.Body)} it must be {Range(alike.Select(f => f.Fit.Wanted), chosen.Units)} at least: {WornWords.Of(alike.Key.Mend, project.Sizes)}."));
        }
        foreach (var close in CloseToHead(sizes, project))
            yield return close;
        foreach (var size in sizes)
        {
            foreach (var piece in size.Pieces.Where(p => p.Pooled && p.Motif != project.Garment.Motif))
                yield return new Finding(
                    FindingLevel.Warning, "sizes",
                    $"Size {size.Name}: the {piece.Name}'s {piece.Shape?.WidestRow ?? piece.Stitches} stitches, as fixed, make {MotifWords.Of(piece.Motif)}.");
        }
        if (construction.Held is { } held
            && !project.Garment.Edgings.Any(e => e.Where == held.Place && EdgingLibrary.Find(e.Edging).IsDrawnIn))
        {
            yield return new Finding(
                FindingLevel.Warning, "garment.edgings",
                $"Nothing holds it up: its {EdgingPlaces.Words(held.Place)} is as wide as its pieces and must be drawn in to the body's {project.Sizes.Words(held.Girth)}. Edge the {EdgingPlaces.Words(held.Place)} with a casing, such as {EdgingLibrary.ElasticCasing}.");
        }
        // Bands of two edges may be left out, so that the edges hang open side by side; one edge alone is there to be closed.
        foreach (var open in construction.Edgings.Where(e => e is { Closes: not null, Copies: 1 }
            && shared.EdgingAt(e.Place) is null))
        {
            yield return new Finding(
                FindingLevel.Warning, "garment.edgings", $"Nothing closes the {EdgeWords.Of(open.Edges[0].Id)}: edge it with a button band.");
        }
        foreach (var narrow in sizes.SelectMany(s => s.Pieces, (s, p) => (Size: s, Piece: p)).Where(n => IsNarrow(shared, n.Piece))
            .GroupBy(n => n.Piece.Name))
        {
            yield return new Finding(FindingLevel.Warning, "garment", FormattableString.Invariant(
                $"The {narrow.Key} is narrower than one repeat of the colours in {string.Join(", ", narrow.Select(n => n.Size.Name))}: the motif will not be seen whole there; plain companion yarn may look better."));
        }
        if (Faint(chosen) is { } faint)
            yield return faint;
        foreach (var gored in Gored(shared, construction, sizes))
            yield return gored;
        foreach (var cut in CutFindings.Of(chosen, sizes, other, trials))
            yield return cut;
        var least = sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled).Select(
            p => p.Forgives.Least).DefaultIfEmpty(1).Min();
        if (least < HardToHold && project.Fabric.Keeping == ColourKeeping.Free)
            yield return new Finding(FindingLevel.Warning, "fabric.keeping", FormattableString.Invariant(
                $"The widest pieces forgive only {least:0.0 %} of yarn per stitch: even tension alone will not hold the motif; work counted."));
        if (direction == Direction.Sideways && project.Fabric.Swatch.Hung is not null)
            yield return new Finding(
                FindingLevel.Note, "fabric.swatch.hung",
                "The swatch was hung with its rows across the pull, and this garment hangs the other way: sizes follow the blocked gauge. Hang a swatch by its side to see how far it drops.");
        foreach (var example in ExampleValues.Findings(project))
            yield return example;

        ImmutableArray<Deed> Helps(FitError error) => Deeds(chosen, error, other, trials);
    }

    /// <summary>A firm edging takes as much of what stretches over a head (common practice, no source).</summary>
    private static readonly Length HeadRoom = Length.FromCentimetres(1);

    /// <summary>What goes over the head, and hardly does.</summary>
    private static IEnumerable<Finding> CloseToHead(ImmutableArray<SizePlan> sizes, Project project)
    {
        var close = sizes.SelectMany(s => s.Worn, (s, f) => (s.Name, Fit: f))
            .Where(f => f.Fit is { Holds: true, Body: BodyMeasure.Head } && f.Fit.Spare < HeadRoom);
        foreach (var alike in close.GroupBy(f => (f.Fit.Place, f.Fit.Part, f.Fit.Mend)))
        {
            var has = Named(alike.Select(f => f.Name));
            yield return new Finding(FindingLevel.Note, alike.Key.Place,
                $"{has}: the {WornWords.Subject(alike.Key.Part)} goes over the head with {Range(alike.Select(f => f.Fit.Spare), project.Edition.Units)} to spare, which a firm edging or a larger head takes. For more, {WornWords.Of(alike.Key.Mend, project.Sizes)}.");
        }
    }

    /// <summary>Where the picture of a gored piece jumps, how far and how often: at the line of each gore alone.</summary>
    private static IEnumerable<Finding> Gored(SharedFabric shared, Construction construction, ImmutableArray<SizePlan> sizes)
    {
        foreach (var group in construction.Groups)
        {
            if (group.Gores is not { } gores)
                continue;
            var pieces = sizes.Select(s => s[group.Pieces[0].Id].Shape!).ToArray();
            var counts = pieces.Select(p => (p.Rows - p.Parts[0].Outline.FullRows) / 2).ToArray();
            var lengths = pieces.SelectMany(p => p.Parts[0].Outline.Runs.Select(r => p.LastColumn - r.Last)).Where(left => left > 0)
                .ToArray();
            var jumps = pieces.SelectMany(p => p.Strips).Select(s => Math.Abs(s.Jump)).Distinct().Order().ToArray();
            if (lengths.Length == 0)
                continue;
            if (gores.Cone is not null && pieces.Any(EndsAtOnce))
                yield return new Finding(
                    FindingLevel.Warning, gores.Field,
                    $"Most of the {EdgeWords.Of(gores.Top)} closes at one height, since rows can stop short only by half a repeat of the colours: it becomes a pouch and not a dome. Draw it together instead, or take a yarn whose colours repeat sooner.");
            var step = shared.Stitches(Direction.Sideways).Step;
            yield return new Finding(FindingLevel.Note, gores.Field, FormattableString.Invariant(
                $"{Between(counts.Min(), counts.Max())} pairs of rows stop {Range(lengths.Select(l => l * step), shared.Project.Edition.Units)} short of the {EdgeWords.Of(gores.Top)}: from there up to it the lines of colour step by {string.Join(" or ", jumps.Select(j => FormattableString.Invariant($"{j:0.##}")))} stitches, and everywhere else the picture goes on."));
        }

        // Of all rows, more than half stop at one stitch.
        static bool EndsAtOnce(ShapedPiece piece) => piece.Parts[0].Outline.ByRow()
            .Select(r => piece.LastColumn - r.Last).Where(left => left > 0)
            .CountBy(left => left).Any(l => 2 * l.Value > piece.Rows);

        static string Between(int least, int most) =>
            least.Equals(most) ? FormattableString.Invariant($"{least}") : FormattableString.Invariant($"{least} to {most}");
    }

    /// <summary>
    /// What edgings may take of the measure that they lengthen before there is more edging than motif (an assumption without a source).
    /// </summary>
    public const double DeepEdging = 1 / 3.0;

    private static IEnumerable<Finding> DeepEdgings(Construction construction, Project project, ImmutableArray<SizePlan> sizes)
    {
        var (garment, units) = (project.Garment, project.Edition.Units);
        for (var i = 0; i < garment.Edgings.Length; i++)
        {
            var place = garment.Edgings[i].Where;
            var dimension = construction.Groups.SelectMany(g => new[] { g.Across, g.Down }).FirstOrDefault(d => d.Edgings.Contains(place));
            if (dimension is null)
                continue;
            var times = dimension.Edgings.Count(e => e == place);
            var deepest = sizes.SelectMany(
                    s => s.Edgings.Where(e => e.Where == place), (s, e) => (Size: s, Edging: e, All: s.Finished[dimension.Measure]))
                .Where(s => times * s.Edging.Depth > DeepEdging * s.All).OrderByDescending(s => s.Edging.Depth / s.All).FirstOrDefault();
            if (deepest.Size is null)
                continue;
            var fewer = (int)(deepest.Edging.Rounds * (DeepEdging * deepest.All / (times * deepest.Edging.Depth)));
            yield return new Finding(FindingLevel.Warning, $"garment.edgings[{i}].rounds", FormattableString.Invariant(
                $"Size {deepest.Size.Name}: of {Wording.Fine(deepest.All, units)} of {GarmentMeasures.Words(dimension.Measure)} the edging of the {EdgingPlaces.Words(place)} takes {Wording.Fine((times * deepest.Edging.Depth), units)}, so that little of the motif is left. Work {fewer} rounds or fewer."));
        }
    }

    /// <summary>
    /// A motif that is less clear than this share of the clearest that the yarn can make is hardly seen (an assumption without a source).
    /// </summary>
    public const double FaintMotif = 0.1;

    private static Finding? Faint(DirectionPlan chosen)
    {
        var faint =
            (from i in Enumerable.Range(0, chosen.Sizes.Length)
             from counts in chosen.Sizes[i]
             from piece in Enumerable.Range(0, counts.Group.Pieces.Length)
             let count = counts.Finding(piece)
             where count is not null && count.Reading.RelativeClarity < FaintMotif
             select (Size: chosen.Names[i], Count: count)).ToArray();
        if (faint.Length == 0)
            return null;
        var alike = faint.GroupBy(f => (f.Count.Stitches, f.Count.Reading.RelativeClarity));
        var said = string.Join("; ", alike.Select(g => FormattableString.Invariant(
            $"{g.Key.Stitches} stitches, in {Wording.List(g.Select(f => f.Size).Distinct())}, make it {Math.Max(1, 100 * g.Key.RelativeClarity):0} %")));
        return new Finding(FindingLevel.Warning, "garment.grading", FormattableString.Invariant(
            $"The motif will hardly be seen: {said} as clear as this yarn can make one. Let clearness weigh when counts are chosen, choose another motif, or fix other counts by hand."));
    }

    /// <summary>No row of it holds one repeat of the colours, so that its motif is nowhere seen whole.</summary>
    internal static bool IsNarrow(SharedFabric shared, PiecePlan piece) =>
        piece.Pooled && piece.Motif != MotifKind.Bands && shared.Period is { } period
        && (piece.Shape?.WidestRow ?? piece.RowStitches.Min()) * (ColourRing.Unit / shared.Stitch.StitchesPerUnit) < period.Micro;

    /// <param name="Target">What it asks for.</param>
    private sealed record SizeError(FitError Fit, Length Target);

    /// <summary>Errors of one measure, all over or all under.</summary>
    private static string Say(SizeError[] errors, Units units)
    {
        var first = errors[0].Fit;
        var (size, its) = errors.Length == 1
            ? ($"Size {first.Size}", $"its target of {Wording.Fine(errors[0].Target, units)}")
            : ($"Sizes {Wording.List(errors.Select(e => e.Fit.Size))}", "their targets");
        return $"{size}: {GarmentMeasures.Words(first.Measure)} comes out {Range(errors.Select(e => e.Fit.Off), units)} {(first.IsOver ? "over" : "under")} {its}";
    }

    /// <summary>As a sentence begins with them, such as <c>Size M</c>, or <c>Sizes M and L</c>.</summary>
    internal static string Named(IEnumerable<string> sizes)
    {
        var all = sizes.ToArray();
        return $"{(all.Length == 1 ? "Size" : "Sizes")} {Wording.List(all)}";
    }

    /// <summary>Such as <c>5.0 cm</c>, or <c>5.0 to 6.5 cm</c>.</summary>
    internal static string Range(IEnumerable<Length> lengths, Units units)
    {
        var (least, most) = (Wording.Fine(lengths.Min(), units), Wording.Fine(lengths.Max(), units));
        return least == most ? least : $"{least[..least.IndexOf(' ')]} to {most}";
    }

    /// <summary>
    /// Measures that do not grow as their targets do: smaller in a larger size, or with a leap between neighbours; or sizes alike, with
    /// how many rows a piece grows by where it can grow by no less, so that nothing helps.
    /// </summary>
    private static IEnumerable<(GarmentMeasure Measure, string Text, (int Rows, Length Grows)? AtOnce)> Uneven(
        DirectionPlan chosen, ImmutableArray<SizePlan> sizes)
    {
        var construction = chosen.Layout.Construction;
        foreach (var measure in sizes[0].Target.Keys)
        {
            var cut = IsCut(construction, measure);
            var steps = sizes.Zip(sizes.Skip(1), (a, b) => (
                a, b, Asked: b.Target[measure] - a.Target[measure], Made: b.Finished[measure] - a.Finished[measure])).ToArray();
            bool Leaps(Length asked, Length made) => cut ? CutFindings.IsUneven(asked, made) : FitError.IsLeap(asked, made);
            var opens = construction.Groups.Any(g => g.OpeningMeasures.Contains(measure));
            var falls = steps.Where(s => !Leaps(s.Asked, s.Made) && FitError.IsFall(s.Asked, s.Made, opens ? CutFindings.Noticed : Noticed))
                .Select(s => FormattableString.Invariant($"{s.b.Name} has {Wording.Fine(s.b.Finished[measure], chosen.Units)} where {s.a.Name} has {Wording.Fine(s.a.Finished[measure], chosen.Units)}"));
            var leaps = steps.Where(s => Leaps(s.Asked, s.Made))
                .Select(s => $"from {s.a.Name} to {s.b.Name} it {Grow(s.Made, chosen.Units, "s")} where it is to {Grow(s.Asked, chosen.Units)}");
            // Along the stitches counts are shared on purpose.
            var rows = construction.Groups[0].Along(chosen.Direction, stitches: false);
            var isAlongRows = rows.Measure == measure;
            var atOnce = construction.Groups[0].Working == Working.Turned ? 2 : 1;
            var grows = rows.Pieces * atOnce * chosen.Layout.Of(stitches: false).Step;
            var alike = steps.Where(s => isAlongRows && s.Made == Length.Zero && s.Asked >= AskedApart)
                .Select(s => FormattableString.Invariant($"{s.a.Name} and {s.b.Name} both have {Wording.Fine(s.b.Finished[measure], chosen.Units)} where {Wording.Fine(s.Asked, chosen.Units)} more are asked for"));
            string[] said = [.. falls, .. leaps, .. alike];
            var tooNear = isAlongRows && said.Length == alike.Count()
                && steps.Where(s => s.Made == Length.Zero).All(s => s.Asked < grows);
            if (said.Length > 0)
                yield return (measure, $"{Wording.Capital(GarmentMeasures.Words(measure))} is not graded evenly: {Wording.List(said)}", tooNear ? (atOnce, grows) : null);
        }
    }

    /// <param name="s">Behind the verb, where a sentence tells what happens and not what is to.</param>
    private static string Grow(Length by, Units units, string s = "") => by == Length.Zero ? $"stay{s} as it is"
        : $"{(by > Length.Zero ? "grow" : "shrink")}{s} by {Wording.Fine(Length.Abs(by), units)}";

    /// <summary>
    /// What can be done about a poor fit: along the stitches what the grading program finds when it is solved again, cheapest first, and
    /// the other direction where that fits better; then what the garment planned again brings.
    /// </summary>
    private static ImmutableArray<Deed> Deeds(DirectionPlan plan, FitError error, DirectionPlan? other, RemedyTrials trials)
    {
        var (ruler, cut) = (plan.Option.Ruler, IsCut(plan.Layout.Construction, error.Measure));
        List<Deed> deeds = [];
        if (ruler.Measure == error.Measure)
        {
            var changes = ruler.Changes.Where(c => c.WorstError < error.Off).Take(MostRemedies);
            deeds.AddRange(changes.Select(c => GradingWords.Deed(c, ruler)));
        }
        if (other is { IsFeasible: true } && trials.MayTurn(other))
        {
            var furthest = other.Furthest(error.Measure);
            if (cut ? furthest <= FitError.Poor : other.Option.WorstError < plan.Option.WorstError)
            {
                deeds.Add(Turned(plan, $"work it {DirectionWords.Of(other.Direction)}") with
                {
                    Then = $"{(cut ? $"{Deed.OffThen(error.Measure, furthest, plan.Units)}, and " : "")}{DirectionWords.Furthest(other.Option, plan.Units)}{(cut ? trials.Moves(other, error.Measure) : trials.Moves(other))}",
                });
            }
        }
        deeds.AddRange(trials.Of(error, cut ? FitError.Poor : null));
        return [.. deeds];
    }

    /// <summary>Counts that are fixed hold for one direction alone: where there are any, it is no single change.</summary>
    internal static Deed Turned(DirectionPlan plan, string words) =>
        plan.Layout.SharedFabric.Project.Sizes is var sizes && sizes.Locked.Concat(sizes.Overrides).Any(f => f.Count is not null)
            ? Deed.Of(words)
            : Deed.Of("garment.direction", plan.Direction == Direction.Up ? "\"sideways\"" : "\"up\"", words);

    private const string Nothing = "no change to edgings, cuts, hooks, counts or direction that was tried brings it nearer";

    /// <summary>What is wrong and what helps, found where the first of that is done.</summary>
    internal static Finding Warn(string text, ImmutableArray<Deed> deeds) => Deed.Found(
        FindingLevel.Warning, deeds.FirstOrDefault()?.Place ?? Grading, deeds.IsEmpty ? $"{text}: {Nothing}" : text, deeds, goesOn: true);

    private const string Grading = "garment.grading";

    private static bool IsCut(Construction construction, GarmentMeasure measure) => construction.Groups.SelectMany(g => g.Openings)
        .Any(o => o.Cut is { } cut && (o.Measure == measure || cut.Depths.ContainsValue(measure)));
}
