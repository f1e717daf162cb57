using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>One piece, or a part of it that is joined on, as the ball plan sees it. All yarn in micro-units of the pooling unit.</summary>
/// <param name="Run">What is worked.</param>
/// <param name="Path">Where its stitches lie along the yarn.</param>
/// <param name="Foundation">Yarn of the foundation chains, 0 where they are of companion yarn.</param>
/// <param name="Chains">How many they are.</param>
public sealed record PooledPiece(PieceRun Run, FabricPath Path, long Foundation, int Chains)
{
    /// <summary>Row of the piece, from 0, with which it begins.</summary>
    public int FirstRow { get; init; }

    /// <summary>Where along the sequence the piece's yarn begins.</summary>
    public long Begins => Path.RowStart(0) - Foundation;

    /// <summary>With its foundation.</summary>
    public long Yarn => Foundation + Path.Yarn;

    /// <summary>
    /// Row (from 1; 0 in the foundation) and stitch (from 1) in which the yarn <paramref name="place"/> after the beginning
    /// lies.
    /// </summary>
    public (int Row, int Stitch) Locate(long place)
    {
        if (place < Foundation)
            return (0, (int)Math.Min(Chains, place * Chains / Foundation + 1));
        var worked = place - Foundation + Path.RowStart(0);
        int row = 0, end = Path.Rows;
        while (end - row > 1)
        {
            var middle = (row + end) / 2;
            if (Path.RowStart(middle) <= worked)
                row = middle;
            else
                end = middle;
        }
        var stitch = Math.Max(0, worked - Path.RowStart(row)) * Path.StitchesPerUnit / ColourRing.Unit + 1;
        return (FirstRow + row + 1, (int)Math.Min(stitch, Path.RowStitches[row]));
    }
}

/// <summary>How many balls the pooled pieces and everything else take, and where each ball ends.</summary>
/// <param name="Balls">0 or more, at most <see cref="BallPlanner.MostBalls"/>.</param>
/// <param name="Wasted">Yarn cut away at restarts and joins, ends included.</param>
/// <param name="Left">What remains of the last ball.</param>
/// <param name="Joins">In the order in which balls end; none for the last ball.</param>
public sealed record BallPlan(int Balls, Length Wasted, Length Left, ImmutableArray<BallJoin> Joins);

/// <summary>
/// Pieces are made in order. When a ball ends, the next one is joined at the same place of the sequence, which wastes up to
/// one sequence since a ball may begin anywhere; a new piece from the same ball first runs to its own colour.
/// </summary>
public static class BallPlanner
{
    /// <summary>An end that is woven in: 15 cm, two at every join and restart (common practice, no source).</summary>
    public static Length End { get; } = Length.FromCentimetres(15);

    /// <summary>Most balls that a plan may come to; more means that a number in the document is wrong.</summary>
    public const int MostBalls = 1_000;

    /// <param name="sequence">C in micro-units.</param>
    /// <param name="unit">Yarn of one pooling unit.</param>
    /// <param name="ball">Yarn in a ball.</param>
    /// <param name="joinWaste">Share of the sequence that a new ball wastes: 0.5 on average, 1 at worst.</param>
    /// <param name="otherUses">Yarn for all that need not begin at a colour, taken last.</param>
    /// <returns>Null where a ball is too short to join at all, or over <see cref="MostBalls"/> are needed.</returns>
    public static BallPlan? Plan(
        long sequence, Length unit, Length ball, IReadOnlyList<PooledPiece> pieces, double joinWaste, Length otherUses)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        Guard.InRange(joinWaste, 0, 1, "sequences");
        var end = (long)Math.Round(End / unit * ColourRing.Unit);
        var waste = (long)Math.Round(joinWaste * sequence);
        var fresh = (long)Math.Floor(ball / unit * ColourRing.Unit) - waste - 2 * end;
        if (fresh <= 0)
            return null;
        var joins = ImmutableArray.CreateBuilder<BallJoin>();
        var wastedAtJoin = Yarn(waste + 2 * end, unit);
        long left = 0, place = 0, wasted = 0;
        var balls = 0;
        foreach (var piece in pieces)
        {
            var run = ColourRing.Modulo(piece.Begins - place, sequence) + 2 * end;
            if (balls == 0 || left <= run)
            {
                wasted += left;
                TakeBall();
            }
            else
            {
                left -= run;
                wasted += run;
            }
            var yarn = piece.Yarn;
            for (var done = left; done < yarn; done += fresh)
            {
                var (row, stitch) = piece.Locate(done);
                var inSequence = ColourRing.Modulo(piece.Begins + done, sequence);
                joins.Add(new BallJoin(balls, piece.Run, row, stitch, wastedAtJoin) { Place = inSequence });
                if (balls >= MostBalls)
                    return null;
                TakeBall();
                left += done;
                if (left >= yarn)
                    break;
            }
            left -= yarn;
            place = piece.Begins + yarn;
        }
        var rest = (long)Math.Ceiling(otherUses / unit * ColourRing.Unit) - left;
        if (rest > 0)
        {
            var more = (int)Math.Min(MostBalls, Math.Ceiling((double)rest / (fresh + waste)));
            balls += more;
            wasted += more * 2 * end;
            rest -= more * (fresh + waste);
        }
        return balls > MostBalls ? null : new BallPlan(balls, Yarn(wasted, unit), Yarn(-rest, unit), joins.ToImmutable());

        void TakeBall()
        {
            balls++;
            left = fresh;
            wasted += waste + 2 * end;
        }
    }

    private static Length Yarn(long micro, Length unit) => unit * ColourRing.ToUnits(micro);
}
