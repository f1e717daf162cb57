using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Planning;

/// <summary>
/// The finished measure that a direction counts in stitches, as a ruler: where the sizes' targets lie on it, where every count that
/// makes the motif lies, and which count serves which size. Counts lie where they do with the edging's usual rounds, and a size where its
/// own rounds and side bands put it.
/// </summary>
public sealed class FitRuler
{
    private readonly SharedFabric _shared;
    private readonly CountOptions? _options;
    private readonly Func<CountFinding, GradedCount> _measured;
    private readonly StitchMeasure _ruled;
    private readonly Length _edgings;
    private readonly Lazy<ImmutableArray<GradingRemedy>> _changes;
    private readonly Lazy<ImmutableArray<RulerMotif>> _motifs;
    private readonly Lazy<ImmutableArray<Remedy>> _remedies;

    private FitRuler(SharedFabric shared, Direction direction, StitchMeasure measure, Grading grading)
    {
        (_shared, _ruled, Direction, Measure) = (shared, measure, direction, measure.Measure);
        _edgings = Edgings(null);
        var offer = grading.Offer;
        _options = offer?.Options;
        _measured = offer?.Measured!;
        Counts = offer is null ? [] : [.. offer.Counts.Select(Place)];
        Nearest = offer is null ? [] : [.. offer.Search.Nearest.Select(n => Place(_measured(n.Finding))).DistinctBy(c => c.Stitches)];
        Sizes =
        [
            .. measure.Names.Select((name, i) => new RulerSize(
                name, measure.Targets[i], grading.HasChoice ? Choice(grading.Chosen[i]) : null, measure.Pins[i] is not null)),
        ];
        _motifs = new(() => Later<RulerMotif>(Motifs));
        _changes = new(() => grading.Remedies is not { } remedies || (grading.HasChoice && grading.WorstError < Grader.CountSaving)
            ? []
            : Later<GradingRemedy>(effort => [.. shared.Decisions.GradingRemedies(() => remedies(effort))
                .Where(r => r.Kind != GradingRemedyKind.MoreRounds || !IsTooDeep(r.Amount))]));
        _remedies = new(() => offer is null || !offer.Search.Counts.IsEmpty
            ? [.. _changes.Value.Select(c => GradingWords.Deed(c, this).Remedy).Where(r => r.Place is not null)]
            : Later<Remedy>(effort => [.. shared.Decisions.Remedies(() => FitRemedies.Of(shared, direction, offer, effort))]));
    }

    /// <summary>That its project is read in.</summary>
    public Units Units => _shared.Project.Edition.Units;

    /// <summary>Whose stitches it counts.</summary>
    public Direction Direction { get; }

    /// <summary>Of the finished garment.</summary>
    public Length StitchWidth => _shared.GaugeFor(Direction).StitchWidth;

    /// <summary>Of the finished garment.</summary>
    public Length RowHeight => _shared.GaugeFor(Direction).RowHeight;

    /// <summary>2 where a pooling unit is a pair of stitches.</summary>
    internal int StitchesPerUnit => _shared.Stitch.StitchesPerUnit;

    /// <summary>The measure that runs along the stitches.</summary>
    public GarmentMeasure Measure { get; }

    /// <summary>In the pattern's order.</summary>
    public ImmutableArray<RulerSize> Sizes { get; }

    /// <summary>Every count within reach of the sizes that makes the motif, and those that were fixed; by finished measure.</summary>
    public ImmutableArray<RulerCount> Counts { get; }

    /// <summary>Where no count makes the motif: those that come nearest to it, nearest first.</summary>
    public ImmutableArray<RulerCount> Nearest { get; }

    /// <summary>
    /// Where no count makes the motif, what in the document would let one; else what would bring sizes nearer to their targets, the
    /// cheapest first. Worked out when first asked for.
    /// </summary>
    public ImmutableArray<Remedy> Remedies => _remedies.Value;

    /// <summary>
    /// What would bring sizes nearer to their targets, or let the rules hold at all, cheapest first; worked out when first asked for.
    /// </summary>
    internal ImmutableArray<GradingRemedy> Changes => _changes.Value;

    /// <summary>What each motif that can be asked for takes here; worked out when first asked for.</summary>
    public ImmutableArray<RulerMotif> InReach => _motifs.Value;

    /// <summary>What a size would come to on a count, with the rounds of edging that the size has now.</summary>
    /// <returns>Where the size is on other counts in front and at the back, or has side bands: with the edging's usual rounds.</returns>
    public Length Finished(RulerSize size, RulerCount count)
    {
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(count);
        if (size.Choice is not { } choice)
            return count.Finished;
        if (choice.IsOn(count))
            return choice.Finished;
        return choice.Front == choice.Back && choice.SideBandRows == 0 && Counts.FirstOrDefault(choice.IsOn) is { } now
            ? count.Finished + (choice.Finished - now.Finished) : count.Finished;
    }

    /// <summary>
    /// What the yarn draws at every count about those that the sizes ask for, and with tighter and looser yarn per stitch; null where the
    /// direction has no counts to choose from.
    /// </summary>
    /// <param name="reach">Relative change of the yarn per stitch, both ways, over 0 and at most <see cref="YarnMap.Farthest"/>.</param>
    public YarnMap? Map(double reach)
    {
        if (_options is not { } options)
            return null;
        var wide = Math.Min(options.To - options.From + 1, YarnMap.MostCounts);
        var from = Math.Max(1, (options.From + options.To - wide + 1) / 2);
        return YarnMap.Of(_shared.Ring, options with { From = from, To = from + wide - 1 }, reach);
    }

    /// <summary>The corner of a count's fabric in which its work begins, as worn, from the colour at which a front would begin.</summary>
    /// <param name="stitches">Along the rows; fewer where the count is smaller.</param>
    /// <exception cref="ArgumentOutOfRangeException">Under 1, or over what a fabric may have.</exception>
    public FabricCorner Corner(RulerCount count, int stitches, int rows)
    {
        ArgumentNullException.ThrowIfNull(count);
        Guard.InRange(stitches, 1, FabricPath.MostStitches, "stitches");
        if (_options is not { } options)
            throw new InvalidOperationException("A ruler without counts has no fabric.");
        FabricPath Path(int start) => _shared.Path(options.Working, count.RowStitches, rows, count.TurnCost, start);
        var start = SeamSearch.FirstStart(_shared, Path(0), count.Lean);
        return FabricCorner.Of(Fabric.Work(_shared.Ring, Path(start)), stitches, Direction);
    }

    /// <summary>Works out what else is worked out when first asked for.</summary>
    internal void FindAll() => _ = (Remedies, InReach);

    internal static FitRuler Of(SharedFabric shared, Direction direction, StitchMeasure measure, Grading grading) =>
        new(shared, direction, measure, grading);

    private Length Edgings(int? rounds) => _ruled.Edgings(_shared, rounds);

    /// <summary>Of the smallest size an edging of so many rounds leaves little of the motif.</summary>
    private bool IsTooDeep(int rounds) => _ruled.Edging is { } place
        && _ruled.EdgingTimes * _shared.EdgingDepth(place, rounds) > PlanFindings.DeepEdging * _ruled.Targets.Min();

    /// <summary>Place in the document's list of the edging whose rounds the ruler's measure leaves open.</summary>
    internal int? OpenEdging()
    {
        var edgings = _shared.Project.Garment.Edgings;
        for (var i = 0; i < edgings.Length; i++)
        {
            if (edgings[i].Where == _ruled.Edging && edgings[i].Rounds is null)
                return i;
        }
        return null;
    }

    private RulerChoice Choice(GradedCount chosen) => new(
        chosen.Front.Stitches, chosen.Back.Stitches, chosen.Front.RowStitches.Length == 2, chosen.Bands,
        chosen.Measure + Edgings(chosen.Rounds));

    private RulerCount Place(GradedCount count)
    {
        var forgives = count.Front.Forgiveness ?? default;
        return new RulerCount(count.Front, count.Measure + _edgings)
        {
            HoldsFrom = _edgings + count.Measure * (1 + forgives.Tighter),
            HoldsTo = _edgings + count.Measure * (1 + forgives.Looser),
            RowYarn = _shared.YarnPerUnit * (count.Front.RowStitches.Average() / _shared.Stitch.StitchesPerUnit),
        };
    }

    /// <summary>What is asked for when the plan is done has its own limit, and is left out where it comes to nothing.</summary>
    private static ImmutableArray<T> Later<T>(Func<Effort, ImmutableArray<T>> work)
    {
        var effort = Effort.OfPlan(CancellationToken.None);
        return SafetyNet.Run(effort, () => work(effort), _ => []);
    }

    private ImmutableArray<RulerMotif> Motifs(Effort effort)
    {
        if (_options is not { } options)
            return [];
        var shares = _shared.Decisions.Answer(
            () => CountFinder.Shares(_shared.Ring, options, effort), (to, found) => to.WriteAll(found, CountDecisions.Write),
            from => from.ReadAll(CountDecisions.ReadShare));
        return [.. shares.Select(m => new RulerMotif(m.Kind, m.Counts, Place(_measured(m.Example))))];
    }
}

/// <param name="Name">As the pattern prints it.</param>
/// <param name="Target">Finished, edgings and all.</param>
/// <param name="Choice">Missing where no count serves.</param>
/// <param name="IsPinned">Its count was fixed by hand.</param>
public sealed record RulerSize(string Name, Length Target, RulerChoice? Choice, bool IsPinned);

/// <summary>The count that serves a size.</summary>
/// <param name="Front">Stitches of the front, or of the only piece.</param>
/// <param name="Back">Stitches of the back; of one piece the same as the front's.</param>
/// <param name="IsAlternating">Rows of N and N + 1 stitches in turn.</param>
/// <param name="SideBandRows">Visible plain rows along each side of each panel.</param>
/// <param name="Finished">What the size's finished measure comes to.</param>
public sealed record RulerChoice(int Front, int Back, bool IsAlternating, int SideBandRows, Length Finished)
{
    /// <summary>Whether a count is the front's of this size, and alternates as its rows do.</summary>
    public bool IsOn(RulerCount count)
    {
        ArgumentNullException.ThrowIfNull(count);
        return count.Stitches == Front && count.RowStitches.Length == 2 == IsAlternating;
    }
}

/// <summary>A count as a place on the ruler.</summary>
/// <param name="Finding">Of a front, where front and back differ.</param>
/// <param name="Finished">The finished measure of a garment of this count.</param>
public sealed record RulerCount(CountFinding Finding, Length Finished)
{
    /// <summary>The fewer where two alternate.</summary>
    public int Stitches => Finding.Stitches;

    /// <summary>One number, or the two that alternate.</summary>
    public ImmutableArray<int> RowStitches => Finding.RowStitches;

    /// <summary>In pooling units.</summary>
    public double TurnCost => Finding.TurnCost;

    /// <summary>What it asks of the maker beyond working it.</summary>
    public CountTask Task => Finding.Task;

    /// <summary>What it makes: the motif asked for, except among <see cref="FitRuler.Nearest"/> and fixed ones.</summary>
    public MotifKind Motif => Finding.Reading.Kind;

    /// <summary>Pooling units per row.</summary>
    public double Lean => Finding.Reading.Lean?.UnitsPerRow ?? 0;

    /// <summary>Over the best that this yarn reaches, 0 to 1.</summary>
    public double Clarity => Finding.Reading.RelativeClarity;

    /// <summary>0 both ways where there is no line to lose.</summary>
    public Forgiveness Forgives => Finding.Forgiveness ?? default;

    /// <summary>
    /// Yarn per stitch changed by ε draws what a row 1 + ε times as long would draw (docs/mathematics.md, forgiveness): so what the
    /// count forgives reaches from here to <see cref="HoldsTo"/> on the ruler.
    /// </summary>
    public required Length HoldsFrom { get; init; }

    /// <summary>The upper end of what the count forgives; see <see cref="HoldsFrom"/>.</summary>
    public required Length HoldsTo { get; init; }

    /// <summary>Yarn of a row without its turn.</summary>
    public required Length RowYarn { get; init; }

    /// <summary>The yarn by which a row may be too long or too short, the smaller of the two.</summary>
    public Length RowSlack => RowYarn * Forgives.Least;
}

/// <summary>A motif that the yarn could make in this direction.</summary>
/// <param name="Kind">Which motif.</param>
/// <param name="Counts">How many counts within reach of the sizes make it.</param>
/// <param name="Example">Of these, the clearest that asks least of the maker.</param>
public sealed record RulerMotif(MotifKind Kind, int Counts, RulerCount Example);
