using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What the designer should know of what is cut out of pieces.</summary>
internal static class CutFindings
{
    /// <summary>A back neck that is hardly cut has room for one step alone (common practice, no source).</summary>
    private static readonly Length LeastCurved = Length.FromCentimetres(4);

    /// <summary>
    /// An opening's place goes by single stitches at either end, or by pairs of rows: what comes of that alone is not said (common
    /// practice, no source).
    /// </summary>
    public static readonly Length Noticed = Length.FromCentimetres(1.5);

    /// <summary>Less of a piece is not worth a number.</summary>
    private const double LeastSaid = 0.01;

    /// <summary>A piece that has lost more of its motif looks like another design (an assumption without a source).</summary>
    private const double MuchOfPiece = 1 / 3.0;

    /// <param name="sizes">Of the chosen direction.</param>
    /// <param name="other">Planned in the other direction, where there is one.</param>
    public static IEnumerable<Finding> Of(
        DirectionPlan chosen, ImmutableArray<SizePlan> sizes, DirectionPlan? other, RemedyTrials trials)
    {
        var construction = chosen.Layout.Construction;
        foreach (var apart in Apart(chosen, trials))
            yield return apart;
        if (NarrowFronts(construction, sizes, chosen.Units) is { } fronts)
            yield return fronts;
        foreach (var straight in Straight(chosen, sizes))
            yield return straight;
        foreach (var square in LooksSquare(chosen, trials))
            yield return square;
        if (NearlyPoor(construction, sizes, chosen.Units) is { } nearly)
            yield return nearly;
        if (!chosen.KeepsMotif && Broken(chosen, sizes, other, trials) is { } broken)
            yield return broken;
        var cut = construction.Groups.SelectMany(g => g.Openings).Where(o => o.Cut is not null).DistinctBy(o => o.Place);
        foreach (var raw in cut)
        {
            if (raw.Place is not { } place || chosen.Layout.SharedFabric.EdgingAt(place) is not null)
                continue;
            var seen = construction.Groups.Any(g => g.Fills?.Opening == raw.Id)
                ? "has no edging: the slopes of its inserts and the ends of its rows stay to be seen"
                : "is cut and has no edging: its steps and the ends of its rows stay to be seen";
            yield return Noted("garment.edgings", $"The {PlaceNames.Of(raw.Id)} {seen}", trials.EdgeCut(place));
        }
    }

    /// <summary>Whether a cut grows from one size to the next otherwise than is asked for, so that it is seen.</summary>
    public static bool IsUneven(Length asked, Length made) =>
        Length.Abs(made - asked) > Noticed || IsFall(asked, made);

    /// <summary>Whether a cut is seen to be smaller in a larger size.</summary>
    public static bool IsFall(Length asked, Length made) => FitError.IsFall(asked, made, Fallen);

    /// <summary>A cut that is smaller by no more in a larger size is not seen to be (common practice, no source).</summary>
    private static readonly Length Fallen = Length.FromCentimetres(1);

    /// <summary>
    /// A measure that is not graded evenly, though each size is near enough to its own target: the motif goes on in larger steps than
    /// sizes do. Null where a size is poor by itself.
    /// </summary>
    /// <param name="uneven">What leaps.</param>
    public static Finding? Uneven(DirectionPlan chosen, GarmentMeasure measure, string uneven, RemedyTrials trials)
    {
        if (chosen.Furthest(measure) > FitError.Poor)
            return null;
        var now = Furthest(chosen);
        var mend = trials.LetOffFor(
            plan => Furthest(plan) < now - RemedyTrials.Worth && Furthest(plan) <= Noticed,
            plan => $"from size to size it then grows by at most {Wording.Fine(Furthest(plan), chosen.Units)} otherwise than it is to, where now it is {Wording.Fine(now, chosen.Units)}");
        var fact = $"{uneven}: each size is within an inch of what is asked for, at a place where the colours let rows end";
        return Noted("garment.letOff", fact, mend);

        Length Furthest(DirectionPlan plan) => Enumerable.Range(1, plan.Finished.Length - 1).Max(i => Length.Abs(
            plan.Finished[i][measure] - plan.Finished[i - 1][measure] - (plan.Targets[i][measure] - plan.Targets[i - 1][measure])));
    }

    private static Finding Noted(string place, string fact, Deed? mend) =>
        Deed.Found(FindingLevel.Note, place, fact, mend is null ? [] : [mend]);

    /// <summary>Where the motif gives way along a cut, and what would keep it.</summary>
    private static Finding? Broken(
        DirectionPlan chosen, ImmutableArray<SizePlan> sizes, DirectionPlan? other, RemedyTrials trials)
    {
        var broken = sizes.SelectMany(s => s.Pieces, (s, p) => (s.Name, Piece: p))
            .Where(b => b.Piece.Shape is { KeepsMotif: false }).ToArray();
        if (broken.Length == 0)
            return null;
        var pieces = Wording.List(broken.Select(b => b.Piece.Name).Distinct());
        var names = broken.Select(b => b.Name).Distinct().ToArray();
        var most = broken.Max(b => b.Piece.Shape!.LostShare);
        List<Deed> deeds = [];
        if (trials.Kept() is { } kept)
        {
            deeds.Add(Deed.Of("garment.letOff", Deed.Json(kept.LetOff), $"let cut edges lie off by up to {Wording.Say(kept.LetOff, chosen.Units)}") with
            {
                Then = $"it goes on unbroken, and furthest off of what is cut is {kept.Furthest.Say(chosen.Units)}{trials.Moves(kept.Plan, kept.Furthest.Measure)}",
            });
        }
        if (other is { IsFeasible: true } && other.LostShare < chosen.LostShare / 2 && trials.MayTurn(other))
        {
            deeds.Add(PlanFindings.Turned(chosen, $"work it {DirectionWords.Of(other.Direction)}") with
            {
                Then = $"{(other.KeepsMotif ? "it goes on unbroken" : FormattableString.Invariant($"{other.LostShare:0 %} of all its stitches are lost to it instead of {chosen.LostShare:0 %}"))}, and {DirectionWords.Furthest(other.Option, chosen.Units)}{trials.Moves(other)}",
            });
        }
        var lost = most < LeastSaid ? "where a few stitches draw something else" : FormattableString.Invariant(
            $"there the colours draw something else, over up to {most:0 %} of its stitches");
        var fact = $"The motif gives way from the cut on, in the {pieces}{(names.Length == sizes.Length ? "" : $" of {Wording.List(names)}")}: {lost}, as the pattern and the picture show";
        if (deeds.Count == 0)
        {
            var comesEven = chosen.Layout.SharedFabric.PeriodMicro % (2 * Yarns.ColourRing.Unit) == 0;
            fact += $". Nothing that was tried keeps it in every size. A yarn whose colours come round {(comesEven ? "sooner" : "after an even number of stitches")} would help, or another depth or width of the cut";
        }
        return Deed.Found(most > MuchOfPiece ? FindingLevel.Warning : FindingLevel.Note, "garment.letOff", fact, deeds);
    }

    /// <summary>Openings that were to be cut and are not, because hardly any of the cut would be seen.</summary>
    private static IEnumerable<Finding> Straight(DirectionPlan chosen, ImmutableArray<SizePlan> sizes)
    {
        foreach (var group in chosen.Layout.Construction.Groups)
        {
            foreach (var (opening, piece) in group.Openings.SelectMany(o => o.Cut?.Depths.Keys ?? [], (o, p) => (o, p)))
            {
                var depth = opening.Cut!.Depths[piece];
                var straight = sizes.Where(s => s.Target.TryGetValue(depth, out var wanted) && wanted > Length.Zero
                    && s[piece] is { Shape: not null } plan && plan.Opening(opening.Id).Into == 0)
                    .Select(s => s.Name).ToArray();
                if (straight.Length == 0)
                    continue;
                var all = straight.Length == sizes.Length;
                var field = opening.Cut.Fields.GetValueOrDefault(depth, opening.Field);
                var isByRule = opening.Cut.ByRule.Contains(depth);
                var mend = !isByRule && chosen.CutAt.GetValueOrDefault(depth)?.Value is var (asked, least, most)
                    ? Deed.Of(field, Deed.Json(asked), $"ask for {Wording.Say(asked, chosen.Units)}") with
                    {
                        Then = $"it is then cut in every size, {PlanFindings.Range([least, most], chosen.Units)} deep",
                    }
                    : null;
                var fact =
                    $"The {PlaceNames.Of(piece)}'s {PlaceNames.Of(opening.Id)} is not cut{(all ? "" : $" in {string.Join(", ", straight)}")}: where the colours let rows end, under {Wording.Say(CutPlanner.LeastSeen, chosen.Units)} of it would be seen beside the seam{(all && sizes.Length > 1 ? " in one size or more" : "")}, so its edge is straight{(isByRule ? ". If it is to be cut, give a depth: it is then said from which depth on every size has it" : "")}";
                yield return Noted(field, fact, mend);
            }
        }
    }

    /// <summary>Pieces that mirror each other and are cut to different depths.</summary>
    private static IEnumerable<Finding> Apart(DirectionPlan chosen, RemedyTrials trials)
    {
        var said = chosen.Sizes.SelectMany(
            (_, i) => ApartIn(chosen, i).Select(a => (Size: chosen.Names[i], a.Measure, a.Deepest, a.Shallowest)));
        foreach (var apart in said.GroupBy(a => a.Measure))
        {
            var far = apart.MaxBy(a => a.Deepest.Depth - a.Shallowest.Depth);
            var mend = trials.LetOffFor(
                plan => plan.Sizes.Select((_, i) => ApartIn(plan, i)).All(a => a.All(m => m.Measure != apart.Key)), _ => "they match")
                ?? Deed.Of("choose another depth or form of the neck, or a yarn whose colours come round sooner");
            var fact = FormattableString.Invariant(
                $"{PlanFindings.Named(apart.Select(a => a.Size))}: {GarmentMeasures.Words(apart.Key)} of the {PlaceNames.Of(far.Deepest.Piece)} is {Wording.Fine(far.Deepest.Depth, chosen.Units)} and of the {PlaceNames.Of(far.Shallowest.Piece)} {Wording.Fine(far.Shallowest.Depth, chosen.Units)}{(apart.Count() == 1 ? "" : $" in {far.Size}")}, so that they do not match");
            yield return PlanFindings.Warn(fact, [mend]) with { Place = "garment.letOff" };
        }

        static IEnumerable<(
            GarmentMeasure Measure, (PieceId Piece, Length Depth) Deepest, (PieceId Piece, Length Depth) Shallowest)> ApartIn(
            DirectionPlan plan, int size) =>
            from counts in plan.Sizes[size]
            where !counts.Outlines.IsEmpty && counts.Group.Openings.Any(o => o.Cut is not null)
            let edges = plan.Layout.Edges(counts)
            from alike in plan.Layout.DepthsApart(counts, edges).GroupBy(d => d.Measure)
            let deepest = alike.MaxBy(d => d.Depth)
            let shallowest = alike.MinBy(d => d.Depth)
            where deepest.Depth - shallowest.Depth > FitError.Poor
            select (alike.Key, (deepest.Piece, deepest.Depth), (shallowest.Piece, shallowest.Depth));
    }

    /// <summary>Fronts that leave less than half as much beside their shoulders as half of the back's neck asks for.</summary>
    private static Finding? NarrowFronts(Construction construction, ImmutableArray<SizePlan> sizes, Units units)
    {
        var opening = construction.Groups.SelectMany(g => g.Openings).FirstOrDefault(o => o is { BesideAs: not null, Id: OpeningId.Neck });
        if (opening is null)
            return null;
        var narrow = sizes.Select(s => (s.Name, Has: s.Finished[opening.Measure], Half: s.Finished[GarmentMeasure.NeckWidth] / 2))
            .Where(s => s.Has < s.Half / 2).ToArray();
        return narrow.Length == 0 ? null : new Finding(FindingLevel.Warning, opening.Field, FormattableString.Invariant(
            $"{PlanFindings.Named(narrow.Select(n => n.Name))}: {GarmentMeasures.Words(opening.Measure)} is {PlanFindings.Range(narrow.Select(n => n.Has), units)}, where half of the neck is {PlanFindings.Range(narrow.Select(n => n.Half), units)}: the fronts are hardly wider than their shoulders, and pull at the neck. Make the neck wider, give more ease, or work it the other way."));
    }

    /// <summary>Openings whose curve or slopes have come down to one step at either side.</summary>
    private static IEnumerable<Finding> LooksSquare(DirectionPlan chosen, RemedyTrials trials)
    {
        foreach (var (group, at) in chosen.Layout.Construction.Groups.Select((g, i) => (g, i)))
        {
            foreach (var opening in group.Openings.Where(o => o.Cut is { IsSloped: true }))
            {
                foreach (var piece in opening.Cut!.Depths.Keys)
                {
                    var square = chosen.Sizes.Select((s, i) => (Size: i, Is: IsSquare(chosen, s[at], opening, piece))).Where(s => s.Is)
                        .Select(s => chosen.Names[s.Size]).ToArray();
                    if (square.Length == 0)
                        continue;
                    var mend = trials.LetOffFor(
                        plan => plan.Sizes.All(s => !IsSquare(plan, s[at], opening, piece)), _ => "it has more steps");
                    var fact =
                        $"The {PlaceNames.Of(piece)}'s {PlaceNames.Of(opening.Id)} looks square{(square.Length == chosen.Sizes.Length ? "" : $" in {Wording.List(square)}")}: where the colours let rows end, it has one step at either side";
                    yield return Noted("garment.letOff", fact, mend);
                }
            }
        }

        static bool IsSquare(DirectionPlan plan, GroupCounts counts, OpeningDesign opening, PieceId id)
        {
            var piece = counts.Group.Pieces.ToList().FindIndex(p => p.Id == id);
            if (counts.Outlines.IsEmpty)
                return false;
            var edges = plan.Layout.Edges(counts, piece, counts.Outlines[piece]);
            return edges.Find(opening.Id, opening.Sides[0]) is { Into: > 0 } cut
                && plan.Layout.SeenInto(counts.Group, opening, cut.Into) >= LeastCurved
                && edges.CornersOf(cut).Count() <= (opening.At == OpeningAt.Middle ? 4 : 3);
        }
    }

    /// <summary>Measures of cuts that are farther off than is expected of an edge, and not so far that they come out poorly.</summary>
    private static Finding? NearlyPoor(Construction construction, ImmutableArray<SizePlan> sizes, Units units)
    {
        var cuts = construction.Groups.SelectMany(g => g.Openings).Where(o => o.Cut is not null)
            .SelectMany(o => o.Cut!.Depths.Values.Append(o.Measure)).ToHashSet();
        var off = sizes.SelectMany(
                s => s.Target.Where(t => cuts.Contains(t.Key) && t.Value > Length.Zero && s.Finished[t.Key] > Length.Zero),
                (s, t) => new FitError(s.Name, t.Key, s.Finished[t.Key] - t.Value))
            .Where(e => e.Off > Noticed && e.Off <= FitError.Poor).GroupBy(e => (e.Measure, e.IsOver)).ToArray();
        if (off.Length == 0)
            return null;
        var said = off.Select(g => FormattableString.Invariant(
            $"{GarmentMeasures.Words(g.Key.Measure)} comes out up to {Wording.Fine(g.Max(e => e.Off), units)} {(g.Key.IsOver ? "over" : "under")}{(g.Count() == sizes.Length ? "" : $" ({Wording.List(g.Select(e => e.Size))})")}"));
        return new Finding(
            FindingLevel.Note, "garment.letOff", $"Cut edges lie where the colours let rows end: {Wording.List(said)}.");
    }
}
