using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Work;

/// <summary>What is known of the drift in the piece at hand, and what was last advised. Immutable.</summary>
public sealed class DriftTrack
{
    /// <summary>What a turning chain gives when it is made tight or loose, in stitches of yarn.</summary>
    public const double TurnGives = 0.3;

    /// <summary>The most that hands are asked to tighten or loosen, relative; see <see cref="HandModel.LargestCorrection"/>.</summary>
    public const double Hands = 0.06;

    private DriftTrack(PlannedPiece piece, DriftFilter filter, int worked, DriftAdvice? advice, int given, int? reading) =>
        (Piece, Filter, Worked, Advice, Given, Reading) = (piece, filter, worked, advice, given, reading);

    public PlannedPiece Piece { get; }

    /// <summary>At <see cref="Worked"/> stitches.</summary>
    public DriftFilter Filter { get; }

    public int Worked { get; }

    /// <summary>What was advised at the last reading; missing before the first.</summary>
    public DriftAdvice? Advice { get; }

    /// <summary>Stitches that were worked when it was.</summary>
    public int Given { get; }

    /// <summary>What was read at this very place; missing where nothing was.</summary>
    public int? Reading { get; }

    /// <summary>Stitches for which the advised correction is still to be kept up; after them, its hold.</summary>
    public int Left => Math.Max(0, Given + (Advice?.Stitches ?? 0) - Worked);

    public static DriftTrack Begin(PlannedPiece piece, DriftModel model)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(model);
        return new DriftTrack(piece, DriftFilter.Begin(model), 0, null, 0, null);
    }

    /// <summary>Worked on as last advised.</summary>
    public DriftTrack WorkTo(int stitches)
    {
        Guard.InRange(stitches, Worked, Piece.Stitches, "stitches");
        var filter = Stretches(stitches).Aggregate(Filter, (at, stretch) => at.Predict(stretch.Stitches, stretch.Correction));
        return new DriftTrack(Piece, filter, stitches, Advice, Given, null);
    }

    /// <summary>What was worked on the way to a place, in stretches of one correction each.</summary>
    public ImmutableArray<(int Stitches, double Correction)> Stretches(int stitches)
    {
        var turn = Math.Min(Left, stitches - Worked);
        return [(turn, Advice?.Correction ?? 0), (stitches - Worked - turn, Advice?.Hold ?? 0)];
    }

    public bool AsksForRecount(int phase) => Filter.AsksForRecount(phase);

    /// <param name="row">The row that has just ended, of which little may match; missing within a row.</param>
    /// <param name="before">The mean phase error where that row began.</param>
    public DriftTrack Read(int phase, int? row = null, double before = 0)
    {
        var filter = Filter.Observe(phase);
        var place = new DriftPlace(Piece, Worked)
        {
            Turn = row is null ? 0 : TurnGives,
            EdgeStitch = row is not null,
            Match = row is { } ended && IsMendedByRipping(before, filter.PhaseMean) ? RowMatch.Share(Piece, ended, before, filter.PhaseMean) : 1,
        };
        return new DriftTrack(Piece, filter, Worked, DriftAdvice.For(filter, place), Worked, phase);
    }

    /// <summary>Stitches added or skipped at the edge, or a turning chain that was made to take more or less.</summary>
    /// <param name="stitches">Stitches of yarn beyond the plan.</param>
    /// <param name="error">Its standard deviation.</param>
    public DriftTrack Shift(double stitches, double error) => Advised(Filter.Shift(stitches, error));

    /// <summary>With another hook from here on.</summary>
    /// <param name="sizes">1 or −1.</param>
    public DriftTrack ChangeHook(int sizes)
    {
        var step = new DriftPlace(Piece, Worked).HookStep;
        return Advised(Filter.ChangeHook(sizes * step, step / 2));
    }

    /// <summary>Ripped back to where <paramref name="then"/> was: what was learnt of the hands since stays.</summary>
    public DriftTrack RipBackTo(DriftTrack then)
    {
        ArgumentNullException.ThrowIfNull(then);
        var filter = Filter.RipBackTo(then.Filter);
        return new DriftTrack(Piece, filter, then.Worked, DriftAdvice.For(filter, new DriftPlace(Piece, then.Worked)), then.Worked, null);
    }

    /// <summary>Ripping a row back leads to where it began: of no use where colours were nearly as far off by then.</summary>
    private bool IsMendedByRipping(double before, double now) => Math.Abs(Off(before)) < Math.Abs(Off(now)) / 2;

    private double Off(double phase) => phase - Math.Round(phase / Filter.Model.Period) * Filter.Model.Period;

    private DriftTrack Advised(DriftFilter filter) =>
        new(Piece, filter, Worked, DriftAdvice.For(filter, new DriftPlace(Piece, Worked)), Worked, null);
}
