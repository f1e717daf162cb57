using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>What she saw.</summary>
/// <param name="Phase">Phase error in whole stitches.</param>
/// <param name="Section">The colour that she was asked of, by its section; missing where that was all colours.</param>
public readonly record struct DriftSeen(int Phase, int? Section);

/// <summary>What is known of the drift in the piece at hand, and what was last advised. Immutable.</summary>
public sealed class DriftTrack
{
    private DriftTrack(PlannedPiece piece, DriftFilter filter, int worked) => (Piece, Filter, Worked) = (piece, filter, worked);

    /// <summary>As planned.</summary>
    public PlannedPiece Piece { get; }

    /// <summary>At <see cref="Worked"/> stitches.</summary>
    public DriftFilter Filter { get; private init; }

    /// <summary>Stitches, from the piece's beginning.</summary>
    public int Worked { get; private init; }

    /// <summary>What was advised last; missing before the first reading.</summary>
    public DriftAdvice? Advice { get; private init; }

    /// <summary>Stitches that were worked when it was.</summary>
    public int Given { get; private init; }

    /// <summary>What was read when it was; missing where nothing was.</summary>
    public DriftSeen? Answered { get; private init; }

    /// <summary>What was read at this very place; missing where nothing was.</summary>
    public int? Reading => Worked == Given ? Answered?.Phase : null;

    /// <summary>The level that she was asked for up to where the advice was given; 0, her natural hands.</summary>
    public double Was { get; private init; }

    /// <summary>
    /// The row, from 0, to whose beginning she was advised to rip back when she went on instead; missing after the advice that follows.
    /// </summary>
    public int? Lapsed { get; private init; }

    /// <summary>What is taken in place of the next advice; see <see cref="Expecting"/>.</summary>
    private Func<DriftFilter, DriftPlace, DriftAdvice?>? Told { get; init; }

    /// <summary>Stitches worked when she last went on where she was advised to rip back: what lies before is kept.</summary>
    public int Kept { get; private init; }

    /// <summary>Stitches for which the advised correction is still to be kept up; after them, its hold.</summary>
    public int Left => Math.Max(0, Given + (Advice?.Stitches ?? 0) - Worked);

    /// <summary>At the piece's first stitch, before anything is read.</summary>
    public static DriftTrack Begin(PlannedPiece piece, DriftModel model)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(model);
        return new DriftTrack(piece, DriftFilter.Begin(model), 0);
    }

    /// <summary>Worked on as last advised.</summary>
    public DriftTrack WorkTo(int stitches)
    {
        Guard.InRange(stitches, Worked, Piece.Stitches, "stitches");
        var filter = Stretches(stitches).Aggregate(Filter, (at, stretch) => at.Predict(stretch.Stitches, stretch.Correction));
        return new DriftTrack(Piece, filter, stitches)
        {
            Advice = Advice,
            Given = Given,
            Answered = Answered,
            Was = Was,
            Lapsed = Lapsed,
            Told = Told,
            Kept = Advice is { Kind: DriftAdviceKind.RipBack } && stitches > Given ? Given : Kept,
        };
    }

    /// <summary>What is worked on the way to a place, in stretches of one correction each.</summary>
    public ImmutableArray<(int Stitches, double Correction)> Stretches(int stitches)
    {
        var turn = Math.Min(Left, stitches - Worked);
        return [(turn, Advice?.Correction ?? 0), (stitches - Worked - turn, Advice?.Hold ?? 0)];
    }

    /// <summary>The correction asked of a stitch to come, as last advised.</summary>
    public double CorrectionAt(int stitch) => Advice?.After(stitch - Given) ?? 0;

    /// <summary>The same, where it is known what she will be told next: what she was told once, not what is advised today.</summary>
    /// <param name="told">Missing where that cannot have been said there; then she is advised anew.</param>
    public DriftTrack Expecting(Func<DriftFilter, DriftPlace, DriftAdvice?> told) => new(Piece, Filter, Worked)
    {
        Advice = Advice,
        Given = Given,
        Answered = Answered,
        Was = Was,
        Lapsed = Lapsed,
        Kept = Kept,
        Told = told,
    };

    /// <param name="phase">Phase error in whole stitches.</param>
    /// <param name="means">What she can do here, by what is known then; missing, no more than with her stitches.</param>
    /// <param name="section">The colour that she was asked of, as it is named; missing where that was all colours.</param>
    public DriftTrack Read(int phase, Func<DriftFilter, DriftPlace>? means = null, int? section = null)
    {
        var filter = Filter.Observe(phase);
        return Advised(filter, means?.Invoke(filter) ?? new DriftPlace(Piece, Worked), new DriftSeen(phase, section));
    }

    /// <summary>At a row's end where she did not look: what was advised for that row is over.</summary>
    public DriftTrack GoOn() => Advice is null ? this : Advised(Filter, new DriftPlace(Piece, Worked), null);

    /// <summary>After something other than work, such as an edge stitch skipped or another hook.</summary>
    /// <param name="place">Where she is then, and what she can do.</param>
    public DriftTrack Act(DriftFilter filter, DriftPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Advised(filter, place, null);
    }

    /// <summary>Ripped back to where <paramref name="then"/> was: what was learnt of the hands since stays.</summary>
    /// <param name="place">What she can do there; missing, no more than with her stitches.</param>
    public DriftTrack RipBackTo(DriftTrack then, DriftPlace? place = null)
    {
        ArgumentNullException.ThrowIfNull(then);
        return Act(Filter.RipBackTo(then.Filter), place ?? new DriftPlace(Piece, then.Worked));
    }

    private DriftTrack Advised(DriftFilter filter, DriftPlace place, DriftSeen? reading) => new(Piece, filter, place.Worked)
    {
        Advice = Told?.Invoke(filter, place) ?? DriftAdvice.For(filter, place with { Holding = Advice?.Hold ?? 0 }),
        Given = place.Worked,
        Answered = reading,
        Was = Worked > Given ? Advice?.After(Worked - 1 - Given) ?? 0 : Was,
        Lapsed = place.Worked > Given && Advice is { Kind: DriftAdviceKind.RipBack } ? Advice.RipTo : null,
        Kept = Math.Min(Kept, place.Worked),
    };
}
