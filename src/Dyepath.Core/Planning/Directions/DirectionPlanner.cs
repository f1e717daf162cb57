using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>Finds every size's counts in one direction: group after group, each along its stitches by what makes the motif.</summary>
internal sealed class DirectionPlanner
{
    /// <summary>What one more count must save in worst error to be worth its pages, as in grading.</summary>
    private static readonly double CentimetresPerCount = Grader.CountSaving.Centimetres;

    /// <summary>
    /// Centimetres of misfit that the whole motif is worth: a tenth of it as much as two counts (an assumption without a source).
    /// </summary>
    private const double CentimetresPerMotif = 10;

    /// <summary>Stitches or rows that must be left beside an opening, those that seams hide apart.</summary>
    private const int LeastBesideOpening = 2;

    private const int LeastBelowOpening = 4;

    private readonly SharedFabric _shared;
    private readonly Layout _layout;
    private readonly SizeTargets _targets;
    private readonly PlannedSizes _planned;

    private readonly Dictionary<GarmentMeasure, Lazy<DeepCut?>> _cutAt = [];

    private readonly double? _lean;

    /// <param name="lean">What the whole garment is to lean, in stitches a row; missing: as fits its first group best.</param>
    public DirectionPlanner(Layout layout, SizeTargets targets, double? lean = null)
    {
        (_shared, _layout, _targets, _lean) = (layout.SharedFabric, layout, targets, lean);
        _planned = new PlannedSizes(layout, targets.Count);
    }

    private ImmutableArray<PieceGroup> Groups => _layout.Construction.Groups;

    private GroupCounts[][] Counts => _planned.Counts;

    private Dictionary<GarmentMeasure, Length>[] Asked => _planned.Wanted;

    private Dictionary<GarmentMeasure, Length>[] Finished => _planned.Finished;

    private int Middle => _targets.Count / 2;

    /// <summary>
    /// All pieces share one lean. The first group has it chosen for its own measures; where the others then come out poorly, the lean with
    /// which fewest measures do.
    /// </summary>
    public DirectionPlan Plan()
    {
        var (uncut, first) = PlanOnce(cut: false);
        if (!uncut.IsFeasible || first.Offer is not { } offer || _shared.Project.Garment.Grading.SeveralLeans
            || Poor(uncut, Groups.Skip(1)) == 0)
            return PlanLeaning();
        // What is cut out of pieces takes longest to find, and tells nothing of their own measures.
        var own = first.Chosen[0].Front.Lean;
        List<(double? Lean, int Poor, double Score)> leans = [(null, Poor(uncut, Groups), uncut.Score)];
        foreach (var lean in Leans(offer).Where(l => Math.Abs(l - own) > Grader.LeanTolerance / 2))
        {
            if (new DirectionPlanner(_layout, _targets, lean).PlanOnce(cut: false).Plan is { IsFeasible: true } other)
                leans.Add((lean, Poor(other, Groups), other.Score));
        }
        DirectionPlan? asItFits = null;
        foreach (var (lean, _, _) in leans.OrderBy(l => l.Poor).ThenBy(l => l.Score))
        {
            var plan = lean is null ? PlanLeaning() : new DirectionPlanner(_layout, _targets, lean).PlanLeaning();
            if (plan.IsFeasible)
                return plan;
            asItFits = lean is null ? plan : asItFits;
        }
        return asItFits!;
    }

    /// <summary>With the lean that was given, or else that which fits the first group best.</summary>
    public DirectionPlan PlanLeaning() => PlanOnce(cut: true).Plan;

    /// <summary>How many measures of pieces come out poorly, of all sizes.</summary>
    private static int Poor(DirectionPlan plan, IEnumerable<PieceGroup> groups) =>
        plan.Poor(groups.Where(g => g.Pooled).SelectMany(g => new[] { g.Across.Measure, g.Down.Measure }).Distinct());

    /// <summary>Leans of counts that make the motif, no two so near that they look alike.</summary>
    private IEnumerable<double> Leans(CountOffer offer)
    {
        double? last = null;
        foreach (var lean in offer.Counts.Where(c => c.Front.Reading.Kind == _shared.Project.Garment.Motif)
            .Select(c => c.Front.Lean).Order())
        {
            if (last is { } near && lean - near <= Grader.LeanTolerance)
                continue;
            yield return lean + Grader.LeanTolerance / 2;
            last = lean;
        }
    }

    /// <param name="cut">Whether what openings cut out is looked for, too.</param>
    private (DirectionPlan Plan, Grading First) PlanOnce(bool cut)
    {
        Grading? grading = null;
        FitRuler? ruler = null;
        for (var at = 0; at < Groups.Length; at++)
        {
            // What fills a corner is as large as the cut left it.
            if (!cut && Groups[at].Fills is not null)
                continue;
            var (chosen, reasons) = PlanGroup(at);
            if (at == 0)
                (grading, ruler) = (chosen, RulerOf(chosen));
            if (reasons.IsEmpty)
                reasons = Openings(at, cut);
            if (!reasons.IsEmpty)
                return (Infeasible(grading!.Curve, reasons, ruler!), grading);
        }
        return (Feasible(grading!.Curve, ruler!), grading!);
    }

    /// <summary>Targets of both dimensions, the counts along the stitches, and the rows that are nearest.</summary>
    private (Grading Grading, ImmutableArray<Finding> Reasons) PlanGroup(int at)
    {
        var group = Groups[at];
        if (group.Fills is { } fills)
            return (new Grading([], [], []), [.. Fill(at, fills)]);
        var (alongStitches, alongRows) = (Targets(group, true), Targets(group, false));
        if (FixedApart(at).ToImmutableArray() is { IsEmpty: false } apart)
            return (new Grading([], [], apart), apart);
        if (TooShort(group).ToImmutableArray() is { IsEmpty: false } tooShort)
            return (new Grading([], [], tooShort), tooShort);
        var (stitches, rows) = (group.Along(_layout.Direction, true), group.Along(_layout.Direction, false));
        alongStitches = [.. alongStitches.Select((target, i) => target - Beside(i, at, stitches))];
        alongRows = [.. alongRows.Select((target, i) => target - Beside(i, at, rows))];
        ImmutableArray<int> rowCounts = [.. alongRows.Select((target, i) => RowsOf(group, i, target - _layout.Edgings(rows)))];
        ImmutableArray<Length> fabric = [.. alongStitches.Select(t => t - _layout.Edgings(stitches))];
        var measure = MeasureOf(at, alongStitches);
        var (axis, ends, pins) = (measure.Axis, measure.Edges, measure.Pins);
        var grading = new Grading([], [], []);
        if (SharesStitches(at) is { } earlier)
        {
            grading = new Grading([.. Counts.Select(c => c[earlier].Graded!)], [], []);
        }
        else if (group.Pooled)
        {
            var roomy = Fewest(at, stitches, NeckRoom);
            grading = Choose(measure with { Fewest = roomy });
            if (!grading.HasChoice && !roomy.IsDefault)
                grading = Choose(measure);
            if (!grading.HasChoice)
                return (grading, at == 0 ? grading.Reasons : [.. grading.Reasons.Select(r => r.Behind($"{Plural(group)}: "))]);
        }
        var reasons = ImmutableArray.CreateBuilder<Finding>();
        for (var i = 0; i < fabric.Length; i++)
        {
            var graded = grading.HasChoice ? grading.Chosen[i] : null;
            // A plain piece is worked in whole units, so that one text serves all sizes.
            var count = graded?.Front.Stitches
                ?? pins[i] ?? axis.Nearest(fabric[i] / stitches.Pieces, ends, _shared.Stitch.StitchesPerUnit);
            // A border runs along the rows' ends too, so that its rounds decide the rows.
            var rowCount = RowsOf(group, i, alongRows[i] - _layout.Edgings(rows, group, graded?.Rounds));
            Counts[i][at] = new GroupCounts(group, graded, count, rowCount, ImmutableDictionary<OpeningId, int>.Empty);
            Finished[i][stitches.Measure] = _layout.Measure(Counts[i][at], true) + Beside(i, at, stitches);
            Finished[i][rows.Measure] = _layout.Measure(Counts[i][at], false) + Beside(i, at, rows);
            reasons.AddRange(FixedFarOff(i, stitches, FixedCounts.Stitches(group)));
            reasons.AddRange(FixedFarOff(i, rows, FixedCounts.Rows(group)));
            if (PieceSize.Fault(_targets.Name(i), PlaceNames.Of(group.Pieces[0].Id), count, rowCount) is { } tooLarge)
                reasons.Add(tooLarge);
        }
        Follow(group);
        return (grading, reasons.ToImmutable());

        Grading Choose(StitchMeasure of) => PieceCounts.Choose(_shared, _layout.Direction, group.Working, of, rowCounts[Middle]);
    }

    /// <summary>A count that is fixed and makes a quarter of what is asked for, or less, or four times as much, was mistyped.</summary>
    private IEnumerable<Finding> FixedFarOff(int size, PieceDimension dimension, string name)
    {
        var (made, wanted) = (Finished[size][dimension.Measure], Asked[size][dimension.Measure]);
        if (_targets.Fixed.Where(_targets.Name(size), name) is { } at && (made < 0.25 * wanted || made > 4 * wanted))
        {
            yield return new Finding(FindingLevel.Fault, at.Place, FormattableString.Invariant(
                $"Size {_targets.Name(size)}: {at.Count} as fixed make a {GarmentMeasures.Words(dimension.Measure)} of {Wording.Fine(made, _targets.Units)} where {Wording.Fine(wanted, _targets.Units)} are asked for: fix about {at.Count * (wanted / made):0}, or release it."));
        }
    }

    /// <summary>
    /// What fills the corners of a cut is as large as they were made: the nearest counts. A row may leave out two stitches at most, so
    /// that its edge is straight.
    /// </summary>
    private IEnumerable<Finding> Fill(int at, CornerFill fills)
    {
        var (group, into) = (Groups[at], _layout.Construction.GroupOf(fills.Into));
        var (opening, own) = (into.Openings.First(o => o.Id == fills.Opening), _layout.For(group));
        for (var i = 0; i < _targets.Count; i++)
        {
            var counts = Counts[i][Groups.IndexOf(into)];
            var (name, piece) = (_targets.Name(i), into.Pieces.ToList().FindIndex(p => p.Id == fills.Into));
            var cut = counts.Outlines.IsEmpty ? null
                : _layout.Edges(counts, piece, counts.Outlines[piece]).Find(fills.Opening, opening.Sides[0]);
            var (width, height) = cut is null ? default : _layout.Corner(into, opening, cut);
            var stitches = own.Across.Nearest(width, own.SewnEnds(group, stitches: true));
            var rows = own.Down.Nearest(height, own.SewnEnds(group, stitches: false));
            Counts[i][at] = new GroupCounts(group, null, stitches, rows, ImmutableDictionary<OpeningId, int>.Empty);
            (Asked[i][group.Across.Measure], Asked[i][group.Down.Measure]) = (width, height);
            (Finished[i][group.Across.Measure], Finished[i][group.Down.Measure]) =
                (_layout.Measure(Counts[i][at], true), _layout.Measure(Counts[i][at], false));
            if (cut is null || !Taper.Serves(stitches, rows))
                yield return new Finding(FindingLevel.Fault, fills.Field, $"Size {name}: the {PlaceNames.Of(fills.Opening)} is too shallow for inserts with a straight edge: make it deeper or narrower, or choose another form.");
        }
    }

    /// <summary>The measure of an earlier group that is a part of a dimension of this one.</summary>
    private Length Beside(int size, int at, PieceDimension dimension) => _layout.Beside(dimension, Counts[size].Take(at));

    /// <summary>Counts that are fixed for pieces which have to be as long as those that they are sewn to.</summary>
    private IEnumerable<Finding> FixedApart(int at)
    {
        foreach (var stitches in new[] { true, false })
        {
            var measure = Groups[at].Along(_layout.Direction, stitches).Measure;
            var name = stitches ? FixedCounts.Stitches(Groups[at]) : FixedCounts.Rows(Groups[at]);
            if (Groups.Take(at).FirstOrDefault(g => g.Along(_layout.Direction, stitches).Measure == measure) is { } earlier
                && Enumerable.Range(0, _targets.Count).Any(i => _targets.Fixed.Count(_targets.Name(i), name) is not null))
            {
                yield return new Finding(
                    FindingLevel.Fault, "sizes", $"The {name} follow the {(stitches ? FixedCounts.Stitches(earlier) : FixedCounts.Rows(earlier))}, because the pieces are sewn together: fix those.");
            }
        }
    }

    /// <summary>An earlier group whose stitches make the same measure: both have its counts.</summary>
    private int? SharesStitches(int at)
    {
        var measure = Groups[at].Along(_layout.Direction, true).Measure;
        for (var earlier = 0; earlier < at; earlier++)
        {
            if (Groups[earlier].Pooled && Groups[at].Pooled && Groups[earlier].Along(_layout.Direction, true).Measure == measure)
                return earlier;
        }
        return null;
    }

    /// <summary>Of what the group's own pieces make of the measure.</summary>
    private ImmutableArray<Length> Floors(int at, PieceDimension dimension, ImmutableArray<Length> targets)
    {
        var floors = _targets.Floors(dimension.Measure, [.. targets.Select((t, i) => t + Beside(i, at, dimension))], Finished);
        return floors.IsDefault ? floors : [.. floors.Select((floor, i) => floor - Beside(i, at, dimension))];
    }

    /// <summary>
    /// Stitches that leave something of a piece beyond what it is sewn to, by size; <c>default</c> where none are asked for.
    /// </summary>
    /// <param name="room">Stitches left beside an opening of as many as are given.</param>
    private ImmutableArray<int> Fewest(int at, PieceDimension dimension, Func<int, int> room)
    {
        if (dimension != Groups[at].Across
            || Groups[at].Openings.FirstOrDefault(o => o.BesideAs is not null && !o.Sides[0].IsUpright())
                is not { BesideAs: { } piece } opening)
            return default;
        var other = Groups.IndexOf(_layout.Construction.GroupOf(piece));
        return
        [
            .. Counts.Select(c =>
                _layout.LeftBeside(opening, piece, c.Take(at)) + room(c[other].Openings.GetValueOrDefault(opening.Id))),
        ];
    }

    /// <summary>Half of what half of the neck takes, so that the fronts do not pull at it (common practice, no source).</summary>
    private static int NeckRoom(int neck) => Math.Max(LeastBesideOpening, (neck + 3) / 4);

    private StitchMeasure MeasureOf(int at, ImmutableArray<Length> targets)
    {
        var group = Groups[at];
        var dimension = group.Along(_layout.Direction, stitches: true);
        // What no edging lengthens, from side to side, goes round the body, unless it is flat.
        var varied = _layout.Varied(group);
        var girth = !dimension.IsFlat && dimension == group.Across && dimension.Edgings.IsEmpty && group == Groups[0];
        return new StitchMeasure(
            dimension.Measure, _layout.Of(stitches: true), _layout.SewnEnds(group, stitches: true), _targets.Sizes,
            [.. Enumerable.Range(0, _targets.Count).Select(_targets.Name)], targets,
            [.. targets.Select((_, i) => _targets.Fixed.Count(_targets.Name(i), FixedCounts.Stitches(group)))])
        {
            Panels = dimension.Pieces,
            MayDiffer = dimension.Pieces == 2 && group is { Alike: false, IsShaped: false } && !group.Pieces.Any(p => p.Mirrored),
            IsGirth = girth,
            Floors = Floors(at, dimension, targets),
            Fewest = Fewest(at, dimension, static _ => LeastBesideOpening),
            Edging = varied,
            EdgingTimes = dimension.Edgings.Count(place => place == varied),
            Further = dimension.Edgings.Where(place => place != varied)
                .Aggregate(Length.Zero, (depth, place) => depth + _shared.EdgingDepth(place)),
            Lean = at > 0 && Counts[0][0].Graded is { } body ? body.Front.Lean : _lean,
        };
    }

    /// <summary>Targets of the finished measure, edgings and all.</summary>
    private ImmutableArray<Length> Targets(PieceGroup group, bool stitches)
    {
        var dimension = group.Along(_layout.Direction, stitches);
        var locked = _targets.Fixed.Made(stitches ? FixedCounts.Stitches(group) : FixedCounts.Rows(group));
        return Wanted(dimension.Measure, locked is { } count
            ? _layout.Measure(group, stitches, count) + Beside(_targets.Sizes.Base, Groups.IndexOf(group), dimension)
            : null);
    }

    private ImmutableArray<Length> Wanted(GarmentMeasure measure, Length? made = null)
    {
        var targets = _targets.Of(measure, Finished, made);
        for (var i = 0; i < targets.Length; i++)
            Asked[i][measure] = targets[i];
        return targets;
    }

    private int RowsOf(PieceGroup group, int size, Length fabric) =>
        _targets.Fixed.Count(_targets.Name(size), FixedCounts.Rows(group))
        ?? _layout.Of(stitches: false).Nearest(
            fabric / group.Along(_layout.Direction, false).Pieces, _layout.SewnEnds(group, stitches: false),
            group.Working == Working.Turned ? 2 : 1);

    private IEnumerable<Finding> TooShort(PieceGroup group)
    {
        foreach (var dimension in new[] { group.Across, group.Down })
        {
            for (var i = 0; i < _targets.Count; i++)
            {
                var target = Asked[i][dimension.Measure];
                if (dimension.Shortest is { } least && target - _layout.Edgings(dimension) < least.Length)
                {
                    yield return new Finding(FindingLevel.Fault, least.Place, FormattableString.Invariant(
                        $"The {PlaceNames.Of(least.What)} of size {_targets.Name(i)} would be {Wording.Fine(target, _targets.Units)} long: {WornWords.Of(least.Mend)}."));
                }
            }
        }
    }

    /// <summary>Openings of a group just planned, and what they leave of its sides.</summary>
    private ImmutableArray<Finding> Openings(int at, bool cut)
    {
        var group = Groups[at];
        if (group.IsShaped)
            return Cut(at, cut);
        var reasons = ImmutableArray.CreateBuilder<Finding>();
        foreach (var opening in group.Openings)
        {
            if (opening.BesideAs is { } piece)
            {
                for (var i = 0; i < _targets.Count; i++)
                    reasons.AddRange(BesideAs(at, i, opening, piece));
                continue;
            }
            var targets = Wanted(opening.Measure);
            for (var i = 0; i < targets.Length; i++)
            {
                _planned.Open(i, at, opening, OpeningCount(i, at, opening, Counts[i][at].Rows));
                if (targets[i] <= Length.Zero)
                    reasons.Add(new Finding(FindingLevel.Fault, opening.Field, FormattableString.Invariant(
                        $"Size {_targets.Name(i)} would have {GarmentMeasures.One(opening.Measure)} of {Wording.Fine(targets[i], _targets.Units)}: give it more.")));
                else if (LeavesTooLittle(i, at, opening) is { } fault)
                    reasons.Add(fault);
            }
        }
        return reasons.ToImmutable();
    }

    /// <summary>An opening that follows another piece's is as large as that leaves it.</summary>
    private IEnumerable<Finding> BesideAs(int at, int size, OpeningDesign opening, PieceId piece)
    {
        var count = _layout.CountBeside(Counts[size][at], opening, piece, Counts[size].Take(at));
        _planned.Open(size, at, opening, Math.Max(1, count));
        if (count < 1)
            yield return new Finding(FindingLevel.Fault, opening.Field, $"The fronts of size {_targets.Name(size)} are narrower than the back's shoulders: make the {PlaceNames.Of(opening.Id)} wider, or the bands narrower.");
    }

    /// <summary>
    /// What a cut leaves is sewn to another piece; it may lie a row off, and where nothing is cut out of that other
    /// one, its opening follows.
    /// </summary>
    private void Follow(int size, int at, OpeningDesign opening, PieceId piece)
    {
        var (counts, other) = (Counts[size][at], Groups.IndexOf(_layout.Construction.GroupOf(piece)));
        var beside = _layout.PlacesAlong(counts, 0, opening.Sides[0]) - counts.Openings[opening.Id];
        var all = _layout.PlacesAlong(Counts[size][other], 0, opening.Sides[0]);
        var its = Groups[other].Openings.First(o => o.Id == opening.Id);
        if (all - 2 * beside > 0 && !IsCut(Counts[size][other], its))
            _planned.Open(size, other, its, all - 2 * beside);
    }

    private bool IsCut(GroupCounts counts, OpeningDesign opening) => !counts.Outlines.IsEmpty
        && _layout.Edges(counts).Any(e => e.Find(opening.Id, opening.Sides[0]) is not null);

    /// <summary>Outlines of a group just planned whose openings are cut, and what they come to.</summary>
    private ImmutableArray<Finding> Cut(int at, bool cut)
    {
        var reasons = ImmutableArray.CreateBuilder<Finding>();
        var group = Groups[at];
        foreach (var measure in group.OpeningMeasures)
            Wanted(measure);
        if (group.Gores is { } narrowed && _layout.Up)
            return [new Finding(FindingLevel.Fault, "garment.direction", $"Gores are rows that stop short of the {EdgeWords.Of(narrowed.Top)}, and worked up no row runs to it: work it sideways, or without gores.")];
        if (group.IsSloped || group.Gores is not null)
        {
            var planner = new CutPlanner(_layout);
            return [.. Enumerable.Range(0, _targets.Count).Select(i => Slope(i, at, planner)).OfType<Finding>()];
        }
        for (var i = 0; i < _targets.Count; i++)
        {
            foreach (var opening in group.Openings.Where(o => o.BesideAs is null))
            {
                var places = _layout.PlacesAlong(Counts[i][at], 0, opening.Sides[0]);
                _planned.Open(i, at, opening, Math.Min(OpeningCount(i, at, opening, Counts[i][at].Rows), places));
            }
            foreach (var opening in group.Openings)
            {
                if (opening.BesideAs is not { } piece)
                    continue;
                reasons.AddRange(BesideAs(at, i, opening, piece));
                Asked[i][opening.Measure] = Finished[i][opening.Measure];
            }
            // A cut at an end of its side may go on to the other cuts; one in the middle has to leave something at both ends.
            if (group.Openings.Where(o => (o.Cut is null || o.At == OpeningAt.Middle) && o.BesideAs is null)
                .Select(o => LeavesTooLittle(i, at, o)).OfType<Finding>().FirstOrDefault() is { } little)
                reasons.Add(little);
        }
        if (cut && reasons.Count == 0)
            reasons.AddRange(CutOut(at));
        foreach (var opening in group.Openings)
        {
            for (var i = 0; i < _targets.Count && opening.BesideAs is not null; i++)
                Follow(i, at, opening, opening.BesideAs.Value);
        }
        return reasons.ToImmutable();
    }

    private IEnumerable<Finding> CutOut(int at)
    {
        var cuts = new CutSizes(_layout, _targets, _planned, at);
        foreach (var size in cuts.CutAll())
            yield return new Finding(FindingLevel.Fault, Groups[at].Openings[0].Field, $"Size {_targets.Name(size)}: what is cut out leaves too little between: make the neck narrower or less deep, or the piece wider or longer.");
        foreach (var (measure, depth) in cuts.CutAt)
            _cutAt[measure] = depth;
    }

    /// <summary>The outlines of a form, of gores or of a bias, and what the rows come to.</summary>
    private Finding? Slope(int size, int at, CutPlanner planner)
    {
        var (group, counts, name) = (Groups[at], Counts[size][at], _targets.Name(size));
        var outlines = group.Pieces.Select((_, piece) => planner.Plan(counts, piece, Asked[size]))
            .OfType<CutOutline>().ToImmutableArray();
        if (outlines.Length == group.Pieces.Length)
        {
            Counts[size][at] = counts with { Outlines = outlines };
            Finished[size][group.Along(_layout.Direction, stitches: true).Measure] = _layout.Measure(Counts[size][at], true);
            if (group.Gores is { } made)
                Finished[size][made.Edge] = _layout.MeasureTop(Counts[size][at]);
            return null;
        }
        if (group is { Form: null, Gores: null })
            return new Finding(FindingLevel.Fault, "garment.length", $"Size {name}: the piece comes to lie over {Fabrics.FabricPath.MostStitches} stitches from its first row to its last: make it shorter.");
        var step = counts.Finding(0) is { } finding ? planner.Panel(finding.Stitches, finding.TurnCost).KeepingStep : null;
        if (step is null)
            return new Finding(FindingLevel.Fault, "fabric.sectionStitches", $"Size {name}: no row can end earlier or go on further without breaking the motif, since the colours do not come round after a whole number of stitches: give each colour a whole number of stitches.");
        return group.Form is { } form
            ? new Finding(FindingLevel.Fault, form.Field, $"Size {name}: rows grow and shrink by {step} stitches at a time, which is half a round of the colours, and no such rows follow this outline: make it wider or deeper.")
            : new Finding(FindingLevel.Fault, group.Gores!.Field, FormattableString.Invariant(
                $"Size {name}: rows stop short of the {EdgeWords.Of(group.Gores.Top)} by {step} stitches at a time ({Wording.Fine((_layout.Of(stitches: true).Step * step.Value), _targets.Units)}), as the colours come round, and that is too deep here: give the colours an even number of stitches in all, so that half a round is enough, or fewer; or do without gores."));
    }

    private int OpeningCount(int size, int at, OpeningDesign opening, int rows)
    {
        var counts = Counts[size][at] with { Rows = rows };
        return _layout.Count(counts.Group, opening, Asked[size][opening.Measure], _layout.PlacesAlong(counts, 0, opening.Sides[0]));
    }

    private Finding? LeavesTooLittle(int size, int at, OpeningDesign opening)
    {
        var counts = Counts[size][at];
        var (side, name) = (opening.Sides[0], _targets.Name(size));
        var places = Enumerable.Range(0, counts.Group.Pieces.Length).Min(p => _layout.PlacesAlong(counts, p, side));
        var rest = places - counts.Openings[opening.Id];
        return opening.At == OpeningAt.Middle
            ? rest >= 2 * (_layout.Along(side).Hidden + LeastBesideOpening)
                ? null
                : new Finding(FindingLevel.Fault, opening.Field, side.IsUpright()
                    ? $"The {PlaceNames.Of(opening.Id)} of size {name} takes the whole side: make it shorter."
                    : $"The {PlaceNames.Of(opening.Id)} of size {name} leaves no shoulders: make it narrower.")
            : rest >= LeastBelowOpening
                ? null
                : new Finding(FindingLevel.Fault, opening.Field, $"Size {name} is hardly longer than its {PlaceNames.Of(opening.Id)}s: make it longer.");
    }

    /// <summary>
    /// Openings of earlier groups that this one is set into. Its count along the stitches is limited by the motif, the opening is not: the
    /// opening follows the piece.
    /// </summary>
    private void Follow(PieceGroup group)
    {
        foreach (var (earlier, at) in Groups.Select((g, i) => (g, i)).TakeWhile(g => g.g != group))
        {
            foreach (var opening in earlier.Openings)
            {
                foreach (var dimension in new[] { group.Across, group.Down }.Where(d => d.Measure == opening.HalfOf))
                {
                    for (var i = 0; i < _targets.Count; i++)
                    {
                        var round = _layout.Up
                            ? _layout.Measure(group, group.Across == dimension, Counts[i][Groups.IndexOf(group)].Stitches)
                            : Asked[i][dimension.Measure];
                        var axis = _layout.Along(opening.Sides[0]);
                        var count = axis.Nearest(round / 2, 1, axis.AlongStitches ? 1 : 2);
                        _planned.Open(i, at, opening, Math.Min(count, _layout.PlacesAlong(Counts[i][at], 0, opening.Sides[0]) - 2));
                    }
                }
            }
        }
    }

    private FitRuler RulerOf(Grading grading)
    {
        var measure = Groups[0].Along(_layout.Direction, stitches: true).Measure;
        return FitRuler.Of(_shared, _layout.Direction, MeasureOf(0, [.. Asked.Select(w => w[measure])]), grading);
    }

    /// <summary>The whole garment's measures decide; a sleeve's are made to fit what it is set into.</summary>
    private FitError[] Errors() =>
    [
        .. Groups.SelectMany(g => new[] { g.Across, g.Down }).Where((d, i) => i < 2 || d.Beside is not null).Select(d => d.Measure)
            .SelectMany(measure => Finished.Select((f, i) => new FitError(_targets.Name(i), measure, f[measure] - Asked[i][measure]))),
    ];

    private DirectionPlan Feasible(ImmutableArray<CurvePoint> curve, FitRuler ruler)
    {
        var errors = Errors();
        var graded = Counts.Select(c => c[0].Graded).OfType<GradedCount>().ToArray();
        var counts = graded.SelectMany(g => new[] { g.Front.Stitches, g.Back.Stitches }).Distinct().Order().ToImmutableArray();
        var furthest = errors.MaxBy(e => e.Off)!;
        var worst = furthest.Off.Centimetres;
        var forgives = graded.Min(g => Math.Min(g.Front.Forgiveness?.Least ?? 1, g.Back.Forgiveness?.Least ?? 1));
        var option = new DirectionOption(_layout.Direction, true, counts, FitError.Typical(errors), curve)
        {
            Furthest = furthest,
            Decides = [.. errors.Select(e => e.Measure).Distinct()],
            Ruler = ruler,
            LostShare = DirectionPlan.LostShareOf(Counts.SelectMany(c => c)),
            Forgives = forgives,
        };
        return Make(option, worst + CentimetresPerCount * counts.Length + Math.Sqrt(graded.Average(g => g.Penalty))
            + CentimetresPerMotif * option.LostShare);
    }

    private DirectionPlan Infeasible(ImmutableArray<CurvePoint> curve, ImmutableArray<Finding> reasons, FitRuler ruler) => Make(
        new DirectionOption(
            _layout.Direction, false, [], Length.Zero, curve)
        {
            Reasons = reasons,
            Ruler = ruler,
        },
        double.PositiveInfinity);

    private DirectionPlan Make(DirectionOption option, double score) => new(
        _layout, option.Feasible ? [.. Counts.Select(c => c.ToImmutableArray())] : [],
        [.. Asked.Select(w => w.ToImmutableSortedDictionary())], option, score)
    {
        Names = [.. Enumerable.Range(0, _targets.Count).Select(_targets.Name)],
        Finished = option.Feasible ? [.. Finished.Select(f => f.ToImmutableSortedDictionary())] : [],
        CutAt = _cutAt.ToImmutableDictionary(),
        Lean = _lean,
    };

    private static string Plural(PieceGroup group)
    {
        var name = PlaceNames.Of(group.Pieces[0].Id);
        return $"{Wording.Capital(name)}s";
    }
}
