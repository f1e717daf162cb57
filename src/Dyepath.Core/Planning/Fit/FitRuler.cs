using System.Collections.Immutable;
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
/// makes the motif lies, and which count serves which size. Panels alike and without side bands lie where their count does.
/// </summary>
public sealed class FitRuler
{
    private readonly Fabrication _fabrication;
    private readonly CountOptions? _options;
    private readonly Func<CountFinding, GradedCount> _measured;
    private readonly Length _edgings;
    private readonly Lazy<ImmutableArray<RulerMotif>> _motifs;
    private readonly Lazy<ImmutableArray<FitRemedy>> _remedies;

    private FitRuler(
        Fabrication fabrication, Direction direction, GarmentMeasure measure, Grading grading,
        ImmutableArray<(string Name, Length Target, bool IsPinned)> sizes, Length edgings)
    {
        (_fabrication, _edgings, Direction, Measure) = (fabrication, edgings, direction, measure);
        var offer = grading.Offer;
        _options = offer?.Options;
        _measured = offer?.Measured!;
        Counts = offer is null ? [] : [.. offer.Counts.Select(Place)];
        Nearest = offer is null ? [] : [.. offer.Search.Nearest.Select(n => Place(_measured(n.Finding))).DistinctBy(c => c.Stitches)];
        Sizes =
        [
            .. sizes.Select((size, i) => new RulerSize(
                size.Name, size.Target + edgings, grading.HasChoice ? Choice(grading.Chosen[i]) : null, size.IsPinned)),
        ];
        _motifs = new(() => Later<RulerMotif>(Motifs));
        _remedies = new(() => Later<FitRemedy>(effort => offer is null || !offer.Search.Counts.IsEmpty
            ? []
            : [.. fabrication.Decisions.Remedies(() => FitRemedies.Of(fabrication, direction, offer, effort))]));
    }

    public Direction Direction { get; }

    /// <summary>Of the finished garment.</summary>
    public Length StitchWidth => _fabrication.GaugeFor(Direction).StitchWidth;

    public Length RowHeight => _fabrication.GaugeFor(Direction).RowHeight;

    /// <summary>The measure that runs along the stitches.</summary>
    public GarmentMeasure Measure { get; }

    /// <summary>In the pattern's order.</summary>
    public ImmutableArray<RulerSize> Sizes { get; }

    /// <summary>Every count within reach of the sizes that makes the motif, and those that were fixed; by finished measure.</summary>
    public ImmutableArray<RulerCount> Counts { get; }

    /// <summary>Where no count makes the motif: those that come nearest to it, nearest first.</summary>
    public ImmutableArray<RulerCount> Nearest { get; }

    /// <summary>Where no count makes the motif: what in the document would let one; worked out when first asked for.</summary>
    public ImmutableArray<FitRemedy> Remedies => _remedies.Value;

    /// <summary>What each motif that can be asked for takes here; worked out when first asked for.</summary>
    public ImmutableArray<RulerMotif> InReach => _motifs.Value;

    /// <summary>The corner of a count's fabric in which its work begins, as worn, from the colour at which a front would begin.</summary>
    /// <param name="stitches">Along the rows; fewer where the count is smaller.</param>
    /// <exception cref="ArgumentOutOfRangeException">Under 1, or over what a fabric may have.</exception>
    public FabricCorner Corner(RulerCount count, int stitches, int rows)
    {
        ArgumentNullException.ThrowIfNull(count);
        Guard.InRange(stitches, 1, FabricPath.MostStitches, "stitches");
        if (_options is not { } options)
            throw new InvalidOperationException("A ruler without counts has no fabric.");
        FabricPath Path(int start) => _fabrication.Path(options.Working, count.RowStitches, rows, count.TurnCost, start);
        var start = SeamSearch.FirstStart(_fabrication, Path(0), count.Lean);
        return FabricCorner.Of(Fabric.Work(_fabrication.Ring, Path(start)), stitches, Direction);
    }

    /// <summary>Works out what else is worked out when first asked for.</summary>
    internal void FindAll() => _ = (Remedies, InReach);

    internal static FitRuler Of(
        Fabrication fabrication, Direction direction, GarmentMeasure measure, Grading grading,
        ImmutableArray<(string Name, Length Target, bool IsPinned)> sizes, Length edgings) =>
        new(fabrication, direction, measure, grading, sizes, edgings);

    private RulerChoice Choice(GradedCount chosen) => new(
        chosen.Front.Stitches, chosen.Back.Stitches, chosen.Front.RowStitches.Length == 2, chosen.Bands, chosen.Measure + _edgings);

    private RulerCount Place(GradedCount count)
    {
        var finding = count.Front;
        var (tighter, looser) = finding.Forgiveness is { } f ? (f.Tighter, f.Looser) : (0, 0);
        return new RulerCount(
            finding.Stitches, finding.RowStitches, finding.TurnCost, finding.Task, finding.Reading.Kind,
            finding.Reading.Lean?.UnitsPerRow ?? 0, finding.Reading.RelativeClarity, count.Measure + _edgings, tighter, looser)
        {
            HoldsFrom = _edgings + count.Measure * (1 + tighter),
            HoldsTo = _edgings + count.Measure * (1 + looser),
            RowYarn = _fabrication.YarnPerUnit * (finding.RowStitches.Average() / _fabrication.Stitch.StitchesPerUnit),
        };
    }

    /// <summary>What is asked for when the plan is done has its own limit, and is left out where it comes to nothing.</summary>
    private static ImmutableArray<T> Later<T>(Func<Effort, ImmutableArray<T>> work)
    {
        var effort = Effort.OfPlan(CancellationToken.None);
        return Whatever.Happens(effort, () => work(effort), _ => []);
    }

    private ImmutableArray<RulerMotif> Motifs(Effort effort)
    {
        if (_options is not { } options)
            return [];
        var shares = _fabrication.Decisions.Answer(
            () => CountFinder.Shares(_fabrication.Ring, options, effort), (to, found) => to.WriteAll(found, CountDecisions.Write),
            from => from.ReadAll(CountDecisions.ReadShare));
        return [.. shares.Select(m => new RulerMotif(m.Kind, m.Counts, Place(_measured(m.Example))))];
    }
}

/// <param name="Target">Finished, edgings and all.</param>
/// <param name="Choice">Missing where no count serves.</param>
/// <param name="IsPinned">Its count was fixed by hand.</param>
public sealed record RulerSize(string Name, Length Target, RulerChoice? Choice, bool IsPinned);

/// <summary>The count that serves a size.</summary>
/// <param name="Front">Stitches of the front, or of the only piece.</param>
/// <param name="IsAlternating">Rows of N and N + 1 stitches in turn.</param>
/// <param name="SideBandRows">Visible plain rows along each side of each panel.</param>
/// <param name="Finished">What the size's finished measure comes to.</param>
public sealed record RulerChoice(int Front, int Back, bool IsAlternating, int SideBandRows, Length Finished);

/// <summary>A count as a place on the ruler.</summary>
/// <param name="Stitches">The fewer where two alternate.</param>
/// <param name="TurnCost">In pooling units.</param>
/// <param name="Lean">Pooling units per row.</param>
/// <param name="Clarity">Over the best that this yarn reaches, 0 to 1.</param>
/// <param name="Finished">The finished measure of a garment of this count.</param>
/// <param name="ForgivesTighter">Relative change of yarn per stitch, 0 or less.</param>
/// <param name="ForgivesLooser">Relative change of yarn per stitch, 0 or more.</param>
public sealed record RulerCount(
    int Stitches,
    ImmutableArray<int> RowStitches,
    double TurnCost,
    CountTask Task,
    MotifKind Motif,
    double Lean,
    double Clarity,
    Length Finished,
    double ForgivesTighter,
    double ForgivesLooser)
{
    /// <summary>
    /// Yarn per stitch changed by ε draws what a row 1 + ε times as long would draw (docs/mathematics.md, forgiveness): so what the
    /// count forgives reaches from here to <see cref="HoldsTo"/> on the ruler.
    /// </summary>
    public required Length HoldsFrom { get; init; }

    public required Length HoldsTo { get; init; }

    /// <summary>Yarn of a row without its turn.</summary>
    public required Length RowYarn { get; init; }

    /// <summary>The yarn by which a row may be too long or too short, the smaller of the two.</summary>
    public Length RowSlack => RowYarn * Math.Min(-ForgivesTighter, ForgivesLooser);
}

/// <summary>A motif that the yarn could make in this direction.</summary>
/// <param name="Counts">How many counts within reach of the sizes make it.</param>
/// <param name="Example">Of these, the clearest that asks least of the maker.</param>
public sealed record RulerMotif(MotifKind Kind, int Counts, RulerCount Example);

/// <summary>A change of the document that would let a count make the motif.</summary>
/// <param name="Place">Such as <c>garment.motif</c>.</param>
/// <param name="Value">As JSON.</param>
public sealed record FitRemedy(string Place, string Value, string Text);
