using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>What a maker is advised to do about a drift.</summary>
public enum DriftAdviceKind
{
    /// <summary>On the count: nothing but what holds the hands' bias.</summary>
    CarryOn,

    /// <summary>Colours come early: less yarn in each stitch for a while.</summary>
    WorkTighter,

    /// <summary>Colours come late: more yarn in each stitch for a while.</summary>
    WorkLooser,

    /// <summary>Colours come early: make the turning chain tight.</summary>
    TightenTurn,

    /// <summary>Colours come late: make the turning chain loose.</summary>
    LoosenTurn,

    /// <summary>Colours come early: leave out the stitch at the row's end.</summary>
    SkipEdgeStitch,

    /// <summary>Colours come late: work one more into the row's end.</summary>
    AddEdgeStitch,

    /// <summary>Stitches take more yarn than tight hands make good: the next smaller hook.</summary>
    HookDown,

    /// <summary>Stitches take less yarn than loose hands make good: the next larger hook.</summary>
    HookUp,

    /// <summary>Too little of the row matches to keep it.</summary>
    RipBack,
}

/// <summary>Where the maker is and what she can do about a drift.</summary>
public sealed record DriftPlace
{
    /// <param name="piece">The piece as planned.</param>
    /// <param name="worked">Stitches worked, in [0, the piece's].</param>
    public DriftPlace(PlannedPiece piece, int worked)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Piece = piece;
        Worked = Guard.InRange(worked, 0, piece.Stitches, "stitches");
    }

    /// <summary>As planned.</summary>
    public PlannedPiece Piece { get; }

    /// <summary>Stitches, from the piece's beginning.</summary>
    public int Worked { get; }

    /// <summary>As <see cref="HandModel.LargestCorrection"/>.</summary>
    public double LargestCorrection { get; init => field = Guard.InRange(value, 0.001, 0.5, "of the yarn per stitch", nameof(LargestCorrection)); } = 0.06;

    /// <summary>The most that a looser or tighter turning chain gives or takes, in stitches of yarn, in [0, 5]; 0 in a spiral.</summary>
    public double Turn { get; init => field = Guard.InRange(value, 0, 5, "stitches", nameof(Turn)); }

    /// <summary>Whether an edge stitch may be skipped or added here: at a row's end, in fabric that hides it.</summary>
    public bool EdgeStitch { get; init; }

    /// <summary>
    /// What the next hook size changes in the yarn per stitch, relative, in [0, 0.5]; 0 where there is no other hook. By default a
    /// quarter of a millimetre at 4 mm: yarn in proportion to the diameter's 0.6th power (<see cref="Measuring.HookResponse"/>).
    /// </summary>
    public double HookStep { get; init => field = Guard.InRange(value, 0, 0.5, "of the yarn per stitch", nameof(HookStep)); } = 0.04;

    /// <summary>The share in planned colour of the row just worked, in [0, 1]; see <see cref="RowMatch"/>.</summary>
    public double Match { get; init => field = Guard.InRange(value, 0, 1, "of the row", nameof(Match)); } = 1;
}

/// <summary>
/// What to do about a drift: one level of correction for some stitches, then the level that holds the hands' bias. Corrections are
/// relative, negative tighter, and never more than the hands can do.
/// </summary>
public sealed record DriftAdvice
{
    /// <summary>Of what the hands can do, the part that a bias may take for good; the rest is left for corrections.</summary>
    public const double Held = 0.75;

    /// <summary>A phase error under this many stitches is on the count: no boundary moves.</summary>
    public const double OnTheCount = 0.25;

    /// <summary>A row of which less matches is not worth keeping.</summary>
    public const double LeastMatch = 0.5;

    /// <summary>A correction over fewer stitches than this is over before the hands have found it.</summary>
    private const int Shortest = 10;

    /// <summary>A correction over more stitches than this is forgotten.</summary>
    private const int Longest = 200;

    /// <summary>What to do.</summary>
    public required DriftAdviceKind Kind { get; init; }

    /// <summary>The phase error that it answers, in stitches, to the nearest likeness; positive: colours come early.</summary>
    public required double Phase { get; init; }

    /// <summary>Relative correction for the next <see cref="Stitches"/>.</summary>
    public double Correction { get; init; }

    /// <summary>For which <see cref="Correction"/> is kept up; at 0 <see cref="Hold"/> begins at once.</summary>
    public int Stitches { get; init; }

    /// <summary>Relative correction after them.</summary>
    public double Hold { get; init; }

    /// <summary>The planned colour that begins where the correction ends; none where no colour begins there.</summary>
    public int? UntilColour { get; init; }

    /// <summary>What to do by what is known of the drift and what can be done here.</summary>
    public static DriftAdvice For(DriftFilter filter, DriftPlace place)
    {
        ArgumentNullException.ThrowIfNull(filter);
        ArgumentNullException.ThrowIfNull(place);
        double phase = filter.PhaseMean - Math.Round(filter.PhaseMean / filter.Model.Period) * filter.Model.Period;
        double most = place.LargestCorrection, gain = Math.Max(filter.GainMean, 0.2);
        double needed = -filter.BiasMean / gain;
        double hold = Math.Clamp(needed, -most, most);
        DriftAdvice Simply(DriftAdviceKind kind) => new() { Kind = kind, Phase = phase, Correction = hold, Hold = hold };

        if (place.Match < LeastMatch) return Simply(DriftAdviceKind.RipBack);
        // Only when it is nearly certain that these hands cannot hold it, and another hook would leave less: it is changed for good.
        double bias = Math.Abs(filter.BiasMean);
        if (bias - 2 * filter.BiasSd > Held * most * gain && place.HookStep > 0 && bias > place.HookStep / 2)
            return Simply(filter.BiasMean > 0 ? DriftAdviceKind.HookDown : DriftAdviceKind.HookUp);
        if (Math.Abs(phase) < OnTheCount || place.Worked == place.Piece.Stitches) return Simply(DriftAdviceKind.CarryOn);

        (int stitches, double correction) = Null(filter, place, phase, most, gain);
        if (Math.Abs(correction) > most)
        {
            // Tension alone does not bring it back in reach.
            if (place.EdgeStitch && Math.Abs(phase) >= 0.75)
                return Simply(phase > 0 ? DriftAdviceKind.SkipEdgeStitch : DriftAdviceKind.AddEdgeStitch);
            if (place.Turn >= OnTheCount) return Simply(phase > 0 ? DriftAdviceKind.TightenTurn : DriftAdviceKind.LoosenTurn);
            correction = Math.Clamp(correction, -most, most);
        }
        int end = place.Worked + stitches;
        return new DriftAdvice
        {
            Kind = correction > hold ? DriftAdviceKind.WorkLooser : DriftAdviceKind.WorkTighter,
            Phase = phase,
            Correction = correction,
            Stitches = stitches,
            Hold = hold,
            UntilColour = place.Piece.SectionEnds.AsSpan().BinarySearch(end) >= 0 ? place.Piece.Colours[end] : null,
        };
    }

    /// <summary>The shortest stretch, to a colour's end or the piece's, over which one level within reach nulls the phase.</summary>
    private static (int Stitches, double Correction) Null(DriftFilter filter, DriftPlace place, double phase, double most, double gain)
    {
        var ends = place.Piece.SectionEnds;
        int next = ends.AsSpan().BinarySearch(place.Worked + Shortest);
        if (next < 0) next = ~next;
        while (true)
        {
            int end = next < ends.Length ? ends[next++] : place.Piece.Stitches;
            int stitches = end - place.Worked;
            double drifts = filter.MeanAfter(stitches, 0) - filter.PhaseMean;
            double correction = -(phase + drifts) / (stitches * gain);
            if (Math.Abs(correction) <= most || stitches >= Longest || end == place.Piece.Stitches) return (stitches, correction);
        }
    }
}
