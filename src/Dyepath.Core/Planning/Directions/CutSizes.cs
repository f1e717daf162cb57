using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>A depth that would have a cut made in every size, which now has it in none.</summary>
/// <param name="Asked">To ask for.</param>
/// <param name="Least">What the shallowest size then comes to.</param>
/// <param name="Most">What the deepest does.</param>
internal sealed record DeepCut(Length Asked, Length Least, Length Most);

/// <summary>
/// What openings cut out of the pieces of one group, in all sizes: wide enough for what has to pass, near what is asked for, and evenly
/// graded.
/// </summary>
internal sealed class CutSizes
{
    /// <summary>
    /// How often an opening is tried a stitch wider at either end, so that something passes: over half a period of most yarns.
    /// </summary>
    private const int MostWider = 12;

    /// <summary>Centimetres: a back neck is not cut deeper (common practice, no source).</summary>
    private const int DeepestTried = 8;

    /// <summary>
    /// How far edges are let off by turns where something does not pass, and how often it is then tried a stitch wider: let off by less,
    /// edges lie near what is wished for. Missing: as the document lets them.
    /// </summary>
    private static readonly ImmutableArray<(Length? LetOff, int MostWider)> LetOffs =
        [(null, 3), (Length.FromCentimetres(2), 3), (Length.FromCentimetres(1), 3), (Length.Zero, 3), (null, MostWider)];

    /// <summary>Edges are let lie so far off where that keeps the motif, and what they leave comes out near enough.</summary>
    private static readonly Length Furthest = Length.FromCentimetres(4);

    /// <summary>Centimetres by which sizes are off and leap that a piece's whole motif is worth (an assumption without a source).</summary>
    private const double CentimetresPerMotif = 100;

    /// <summary>
    /// What each centimetre is worth by which a larger size is seen to have less than a smaller one: a fifth of a piece's motif (an
    /// assumption without a source).
    /// </summary>
    private const double PerFall = 0.2 * CentimetresPerMotif;

    /// <summary>
    /// By how much more or less a size is wished for than it asks, so that sizes do not fall: no more than comes out poorly.
    /// </summary>
    private static readonly ImmutableArray<Length> Wishes =
        [.. new[] { -2.5, -1.25, 1.25, 2.5 }.Select(Length.FromCentimetres)];

    private readonly Layout _layout;
    private readonly SizeTargets _targets;
    private readonly PlannedSizes _planned;
    private readonly int _at;
    private readonly CutPlanner _planner;

    /// <summary>Depths of cuts that are left out of every size.</summary>
    private readonly HashSet<GarmentMeasure> _uncut = [];

    private readonly Dictionary<(int Size, Length? LetOff, string Wishes), ImmutableArray<CutOutline>?> _outlines = [];
    private readonly ImmutableDictionary<OpeningId, int>[] _asSlits;
    private readonly GarmentMeasure[] _measures;
    private readonly Dictionary<GarmentMeasure, Lazy<DeepCut?>> _cutAt = [];

    /// <param name="planned">Its openings are as long as they are wished for.</param>
    /// <param name="at">The group's place.</param>
    public CutSizes(Layout layout, SizeTargets targets, PlannedSizes planned, int at)
    {
        (_layout, _targets, _planned, _at, _planner) = (layout, targets, planned, at, new CutPlanner(layout));
        _asSlits = [.. planned.Counts.Select(c => c[at].Openings)];
        _measures =
        [
            .. Group.Openings.Where(o => o is { Cut: not null, BesideAs: null }).Select(o => o.Measure)
                .Concat(Group.Openings.SelectMany(o => o.Cut?.Depths.Values ?? [])).Distinct(),
        ];
    }

    /// <summary>Of cuts that are left out of every size: a depth with which they are made in all, if there is one.</summary>
    public IReadOnlyDictionary<GarmentMeasure, Lazy<DeepCut?>> CutAt => _cutAt;

    /// <param name="most">Missing: as the document lets edges off.</param>
    private CutPlanner LetOff(Length? most) => most is null ? _planner : new CutPlanner(_layout, most);

    private PieceGroup Group => _layout.Construction.Groups[_at];

    private GroupCounts[][] Counts => _planned.Counts;

    private Dictionary<GarmentMeasure, Length>[] Wanted => _planned.Wanted;

    private Dictionary<GarmentMeasure, Length>[] Finished => _planned.Finished;

    /// <summary>
    /// A cut in the middle of a side that not every size can have is made in none, where all ask for one: sizes of one pattern look alike.
    /// </summary>
    private void LeaveUncut()
    {
        var sizes = Enumerable.Range(0, _targets.Count).ToArray();
        foreach (var opening in Group.Openings.Where(o => o is { At: OpeningAt.Middle, Cut: not null }))
        {
            foreach (var measure in opening.Cut!.Depths.Values.Distinct())
            {
                var made = sizes.Where(i => Finished[i][measure] > Length.Zero).ToArray();
                if (made.Length == sizes.Length || sizes.Any(i => Wanted[i][measure] <= Length.Zero))
                    continue;
                _uncut.Add(measure);
                var before = made.Select(i => (Counts[i][_at], new Dictionary<GarmentMeasure, Length>(Finished[i]))).ToArray();
                if (!made.All(i => CutWideEnough(i)))
                {
                    _uncut.Remove(measure);
                    foreach (var (i, (counts, finished)) in made.Zip(before))
                        (Counts[i][_at], Finished[i]) = (counts, finished);
                }
                else
                    _cutAt[measure] = new(() => MadeAt(measure));
            }
        }
    }

    /// <summary>A depth, in whole centimetres, that makes the cut in every size; the least that is found by halving.</summary>
    private DeepCut? MadeAt(GarmentMeasure measure)
    {
        var (none, all) = ((int)Wanted.Max(w => w[measure]).Centimetres, DeepestTried);
        if (none >= all || Made(all) is not { } made)
            return null;
        while (all - none > 1)
        {
            var middle = (none + all) / 2;
            if (Made(middle) is { } shallower)
                (all, made) = (middle, shallower);
            else
                none = middle;
        }
        // What lies beside it may come out otherwise once all sizes are graded together.
        return made.CutAll().Length == 0 && made.Finished.All(f => f[measure] > Length.Zero)
            ? new DeepCut(Length.FromCentimetres(all), made.Finished.Min(f => f[measure]), made.Finished.Max(f => f[measure])) : null;

        // Null where a size has none.
        CutSizes? Made(int centimetres)
        {
            var planned = _planned.Copy();
            foreach (var wanted in planned.Wanted)
                wanted[measure] = Length.FromCentimetres(centimetres);
            for (var i = 0; i < planned.Counts.Length; i++)
                planned.Counts[i][_at] = planned.Counts[i][_at] with { Openings = _asSlits[i], Outlines = [] };
            var trial = new CutSizes(_layout, _targets, planned, _at);
            return Enumerable.Range(0, planned.Counts.Length).All(i => trial.CutWideEnough(i) && planned.Finished[i][measure] > Length.Zero)
                ? trial : null;
        }
    }

    /// <summary>Cuts every size, each wide enough, the same cuts in all and evenly graded.</summary>
    /// <returns>Sizes of which cuts leave too little between them; none where all are cut.</returns>
    public int[] CutAll()
    {
        int[] meeting = [.. Enumerable.Range(0, Counts.Length).Where(i => !CutWideEnough(i))];
        if (meeting.Length == 0)
        {
            LeaveUncut();
            GradeEvenly();
        }
        return meeting;
    }

    /// <summary>
    /// The nearest outlines; or where their steps leave an opening too small for what has to pass, or, unless the document says how far
    /// edges may be let off, come out poorly, those that let it pass and come nearest to what is wished for: wished for wider by as little
    /// as helps, or let off by less, so that the motif gives way. False where no outline leaves enough between its cuts.
    /// </summary>
    private bool CutWideEnough(int size)
    {
        var nearest = Widened(size, _planner, 0);
        if (nearest is { Passes: true } && (Group.LetOff is not null || nearest is { IsNear: true, LostShare: 0 }))
            return true;
        if (Group.LetOff is null)
        {
            // Edges further off may keep the motif, and what they leave come out near enough.
            if (Widened(size, LetOff(Furthest), 3) is { Passes: true, IsNear: true, LostShare: 0 })
                return true;
            if (nearest is { Passes: true, IsNear: true })
                return Measure(size, nearest.Outlines) is not null;
        }
        TriedCuts? best = null;
        // As little of the motif as can be gives way for an opening that is near enough.
        foreach (var (letOff, most) in LetOffs.Where(l => l.LetOff is null || l.LetOff < (Group.LetOff ?? PieceGroup.UsualLetOff)))
        {
            if (Widened(size, LetOff(letOff), most) is not { Passes: true } tried)
                continue;
            if (best is null || tried.Off < best.Off)
                best = tried;
            if (tried.IsNear)
                break;
        }
        return (best ?? nearest) is { } chosen && Measure(size, chosen.Outlines) is not null;
    }

    /// <summary>
    /// Where sizes that are near enough each by itself leap or fall from one to the next, those outlines of each size are taken that
    /// together do so least, unless the document says how far edges may be let off. Where a larger size still has less than a smaller
    /// one, it is tried with more and the smaller one with less.
    /// </summary>
    private void GradeEvenly()
    {
        var sizes = Counts.Length;
        if (Group.LetOff is not null || Enumerable.Range(0, sizes).All(i => Tight(i) == 0) && !_measures.Any(IsUneven))
            return;
        var choices = Enumerable.Range(0, sizes).Select(Choices).ToArray();
        TakeMostEven(choices);
        foreach (var measure in _measures.Where(Falls))
        {
            for (var i = 0; i < sizes; i++)
                choices[i].AddRange(Wished(i, measure));
            TakeMostEven(choices);
        }
    }

    /// <summary>A measure that leaps or falls, so that it is seen.</summary>
    private bool IsUneven(GarmentMeasure measure) =>
        Enumerable.Range(1, Counts.Length - 1).Any(i => CutFindings.IsUneven(Asked(i, measure), Made(i, measure)));

    /// <summary>A measure that a larger size has less of, so that it is seen.</summary>
    private bool Falls(GarmentMeasure measure) =>
        Enumerable.Range(1, Counts.Length - 1).Any(i => CutFindings.IsFall(Asked(i, measure), Made(i, measure)));

    /// <summary>By how much it is to grow from the size before.</summary>
    private Length Asked(int size, GarmentMeasure measure) => Wanted[size][measure] - Wanted[size - 1][measure];

    private Length Made(int size, GarmentMeasure measure) =>
        Finished[size].GetValueOrDefault(measure) - Finished[size - 1].GetValueOrDefault(measure);

    /// <summary>What comes of a size whose opening is wished for more, or less, of a measure than it asks for.</summary>
    private IEnumerable<TriedCuts> Wished(int size, GarmentMeasure measure) =>
        from more in Wishes
        from letOff in new Length?[] { null, Length.Zero }
        where Wanted[size][measure] + more > Length.Zero
        let tried = Widened(size, LetOff(letOff), 0, (measure, more))
        where tried is { Passes: true }
        select tried;

    /// <summary>Of sizes in a row by dynamic programming.</summary>
    private void TakeMostEven(List<TriedCuts>[] choices)
    {
        var best = choices.Select(c => new (Unevenness Cost, int From)[c.Count]).ToArray();
        for (var i = 0; i < choices.Length; i++)
        {
            for (var at = 0; at < choices[i].Count; at++)
            {
                var own = Own(i, choices[i][at]);
                best[i][at] = i == 0 ? (own, -1) : choices[i - 1]
                    .Select((before, b) => (best[i - 1][b].Cost + own + new Unevenness(0, Leaps(i, before.Made, choices[i][at].Made)), b))
                    .MinBy(c => c.Item1);
            }
        }
        var chosen = best[^1].Index().MinBy(c => c.Item.Cost).Index;
        for (var i = choices.Length - 1; i >= 0; i--)
        {
            Measure(i, choices[i][chosen].Outlines);
            chosen = best[i][chosen].From;
        }
    }

    /// <param name="Bad">What is poor, missing or too tight.</param>
    /// <param name="Centimetres">By which measures are off and leap, and what is lost of the motif.</param>
    private readonly record struct Unevenness(int Bad, double Centimetres) : IComparable<Unevenness>
    {
        public static Unevenness operator +(Unevenness a, Unevenness b) => new(a.Bad + b.Bad, a.Centimetres + b.Centimetres);

        public int CompareTo(Unevenness other) => (Bad, Centimetres).CompareTo((other.Bad, other.Centimetres));
    }

    private Unevenness Own(int size, TriedCuts tried)
    {
        var missing = _measures.Index().Count(m => tried.Made[m.Index] == Length.Zero && Wanted[size][m.Item] > Length.Zero
            && !_uncut.Contains(m.Item));
        return new(
            missing + tried.Tight + (tried.IsNear ? 0 : 1), tried.Off.Centimetres + CentimetresPerMotif * tried.LostShare);
    }

    /// <summary>By how much measures leap or fall, of a size from the one before, and what that is worth.</summary>
    private double Leaps(int size, ImmutableArray<Length> before, ImmutableArray<Length> after) => _measures.Select((measure, i) =>
    {
        var (asked, made) = (Asked(size, measure), after[i] - before[i]);
        var leaps = CutFindings.IsUneven(asked, made) ? Length.Abs(made - asked).Centimetres : 0;
        // Falls that are not seen by themselves add up over several sizes.
        var falls = FitError.IsFall(asked, made, Length.Zero) ? -made.Centimetres : 0;
        return leaps + falls * (CutFindings.IsFall(asked, made) ? PerFall : 1);
    }).Sum();

    /// <summary>What can be taken of a size: all outlines that let pass what has to, or else what it has.</summary>
    private List<TriedCuts> Choices(int size)
    {
        var outlines = Counts[size][_at].Outlines;
        List<TriedCuts> choices =
        [
            .. LetOffs.Prepend((LetOff: null, MostWider: 0)).Prepend((LetOff: Furthest, MostWider: 3))
                .Select(l => Widened(size, LetOff(l.LetOff), l.MostWider))
                .OfType<TriedCuts>().Where(t => t.Passes),
        ];
        return choices.Count > 0 ? choices : [Tried(size, outlines, Measure(size, outlines) ?? Length.Zero, passes: false)];
    }

    /// <summary>By measure, as a size has it now.</summary>
    private ImmutableArray<Length> Made(int size) => [.. _measures.Select(m => Finished[size].GetValueOrDefault(m))];

    /// <param name="Off">See <see cref="Measure"/>.</param>
    /// <param name="Made">By measure.</param>
    /// <param name="Tight">See <c>Tight</c> of a size.</param>
    private sealed record TriedCuts(ImmutableArray<CutOutline> Outlines, Length Off, ImmutableArray<Length> Made, int Tight, bool Passes)
    {
        public bool IsNear => Off <= FitError.Poor;

        public double LostShare => Outlines.Average(o => o.LostShare);
    }

    private TriedCuts Tried(int size, ImmutableArray<CutOutline> outlines, Length off, bool passes) =>
        new(outlines, off, Made(size), Tight(size), passes);

    /// <summary>How much of what is held against a size's body does not hold, once all its pieces have counts.</summary>
    private int Tight(int size) => _at < _layout.Construction.Groups.Length - 1 ? 0
        : _targets.Worn(size, Finished[size]).Count(f => !f.Holds);

    /// <summary>
    /// The first outlines that let pass what has to, their openings wished for a place wider at either end so often, or else the nearest;
    /// null where there are none.
    /// </summary>
    /// <param name="wish">By how much more than the size asks for its opening is wished for.</param>
    private TriedCuts? Widened(int size, CutPlanner planner, int mostWider, (GarmentMeasure Measure, Length More)? wish = null)
    {
        var wanted = new Dictionary<GarmentMeasure, Length>(Wanted[size]);
        if (wish is var (wished, more))
            wanted[wished] += more;
        foreach (var measure in _uncut)
            wanted[measure] = Length.Zero;
        TriedCuts? nearest = null;
        for (var wider = 0; wider <= mostWider; wider++)
        {
            if (Outlines(size, planner, wanted) is not { } outlines || Measure(size, outlines) is not { } off)
                break;
            var small = Group.Openings.Where(o => o.Cut is not null && !_targets.Passes(size, o.Id, Finished[size])).ToArray();
            if (small.Length == 0)
                return Tried(size, outlines, off, passes: true);
            nearest ??= Tried(size, outlines, off, passes: false);
            foreach (var opening in small)
                wanted[opening.Measure] += 2 * _layout.Along(opening.Sides[0]).Step;
        }
        return nearest;
    }

    /// <summary>What is wished for alike comes out alike, and is tried by turns more than once.</summary>
    private ImmutableArray<CutOutline>? Outlines(int size, CutPlanner planner, Dictionary<GarmentMeasure, Length> wanted)
    {
        var key = (size, planner.LetOff, string.Join(' ', Group.OpeningMeasures.Select(m => wanted[m])));
        if (!_outlines.TryGetValue(key, out var outlines))
            _outlines[key] = outlines = planner.PlanAlike(Counts[size][_at], wanted);
        return outlines;
    }

    /// <summary>Takes outlines, and what they come to.</summary>
    /// <returns>
    /// How far what is cut lies off, of its widths and of each piece's depth, or pieces that mirror each other lie apart; null where two
    /// cuts meet.
    /// </returns>
    private Length? Measure(int size, ImmutableArray<CutOutline> outlines)
    {
        var counts = Counts[size][_at] = Counts[size][_at] with { Outlines = outlines };
        var (group, edges) = (counts.Group, _layout.Edges(counts));
        if (edges.Any(e => e.Cuts.Contains(null)))
            return null;
        foreach (var opening in group.Openings)
        {
            var cuts = edges.SelectMany((e, p) =>
                    group.Opening(opening.Id, group.Pieces[p].Id).Sides.Select(side => e.Find(opening.Id, side)))
                .OfType<CutExtent>().ToArray();
            _planned.Open(size, _at, opening, cuts.Length > 0 ? cuts.Max(c => c.Length) : _asSlits[size][opening.Id]);
        }
        foreach (var (measure, depth) in _layout.Depths(counts, edges))
            Finished[size][measure] = depth;
        var (finished, wanted) = (Finished[size], Wanted[size]);
        var depths = _layout.DepthsApart(counts, edges).Where(d => !_uncut.Contains(d.Measure) && wanted[d.Measure] > Length.Zero)
            .ToArray();
        return group.Openings.Where(o => o.Cut is not null && wanted[o.Measure] > Length.Zero)
            .Select(o => Length.Abs(finished[o.Measure] - wanted[o.Measure]))
            .Concat(depths.Select(d => Length.Abs(d.Depth - wanted[d.Measure])))
            // Two pieces side by side show twice as much of what one by itself hides.
            .Concat(depths.GroupBy(d => d.Measure).Select(alike => 2 * (alike.Max(d => d.Depth) - alike.Min(d => d.Depth))))
            .DefaultIfEmpty(Length.Zero).Max();
    }
}
