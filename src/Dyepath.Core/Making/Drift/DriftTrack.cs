using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

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
    public int? Answered { get; private init; }

    /// <summary>What was read at this very place; missing where nothing was.</summary>
    public int? Reading => Worked == Given ? Answered : null;

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

    /// <param name="phase">Phase error in whole stitches.</param>
    /// <param name="means">What she can do here, by what is known then; missing, no more than with her stitches.</param>
    public DriftTrack Read(int phase, Func<DriftFilter, DriftPlace>? means = null)
    {
        var filter = Filter.Observe(phase);
        return Advised(filter, means?.Invoke(filter) ?? new DriftPlace(Piece, Worked), phase);
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

    private DriftTrack Advised(DriftFilter filter, DriftPlace place, int? reading) => new(Piece, filter, place.Worked)
    {
        Advice = DriftAdvice.For(filter, place with { Holding = Advice?.Hold ?? 0 }),
        Given = place.Worked,
        Answered = reading,
        Kept = Math.Min(Kept, place.Worked),
    };
}
