using Dyepath.Core.Fabrics;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Order;

namespace Dyepath.Core.Making.Work;

/// <summary>What a maker can do about a drift where she is, as the page advises it.</summary>
public static class MakerRemedies
{
    /// <summary>What a turning chain gives when it is made tight or loose, in stitches of yarn.</summary>
    public const double TurnGives = 0.3;

    /// <summary>The standard deviation of that.</summary>
    public const double TurnError = TurnGives / 3;

    /// <summary>The most that hands are asked to tighten or loosen, relative; see <see cref="HandModel.LargestCorrection"/>.</summary>
    public const double LargestCorrection = 0.06;

    /// <summary>The standard deviation of where colours lie after the yarn was joined again, in stitches.</summary>
    public const double JoinError = 0.5;

    /// <summary>The standard deviation of what the yarn of another ball changes in its sequence, relative. An assumption.</summary>
    public const double BallError = 0.01;

    /// <summary>
    /// At the end of a row. Only rows have edges, and only a plain stitch can be left out there unseen; a spiral has no chain.
    /// </summary>
    /// <param name="part">The piece that is worked in the variegated yarn.</param>
    /// <param name="row">The row that has just ended, from 0.</param>
    /// <param name="begun">The mean phase error where a row began; missing where that is not known.</param>
    public static Func<DriftFilter, DriftPlace> AtRowEnd(DriftTrack track, MakingPart part, int row, Func<int, double?> begun)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(begun);
        var path = part.Fabric!.Path;
        return filter => new DriftPlace(track.Piece, track.Worked)
        {
            LargestCorrection = LargestCorrection,
            Turn = path.Working == Working.Spiral ? 0 : TurnGives,
            EdgeStitch = path is { Working: Working.Turned, StitchesPerUnit: 1 },
            CanJoin = true,
            RipTo = BadRows.Worst(track.Piece, Rows(filter.PhaseMean)),
        };

        IEnumerable<WorkedRow> Rows(double ends)
        {
            for (int at = row; at >= 0 && track.Piece.StitchesBefore(at + 1) > track.Kept && begun(at) is { } began; at--)
            {
                yield return new WorkedRow(at, began, ends);
                ends = began;
            }
        }
    }

    /// <summary>Yarn that was taken (positive) or given back beside the plan, in stitches, and the standard deviation of that.</summary>
    public static DriftTrack Shift(this DriftTrack track, double stitches, double error = 0)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.Act(track.Filter.Shift(stitches, error), new DriftPlace(track.Piece, track.Worked));
    }

    /// <summary>What the next hook size changes in the yarn per stitch, relative, and the standard deviation of that.</summary>
    public static (double Step, double Error) Hook(DriftTrack track, int sizes)
    {
        ArgumentNullException.ThrowIfNull(track);
        var step = new DriftPlace(track.Piece, track.Worked).HookStep;
        return (sizes * step, step / 2);
    }

    /// <param name="sizes">1 or −1.</param>
    public static DriftTrack ChangeHook(this DriftTrack track, int sizes)
    {
        var (step, error) = Hook(track, sizes);
        return track.Act(track.Filter.ChangeHook(step, error), new DriftPlace(track.Piece, track.Worked));
    }

    /// <summary>The yarn was cut and joined again where the plan has it.</summary>
    public static DriftTrack Join(this DriftTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.Act(track.Filter.Placed(JoinError), new DriftPlace(track.Piece, track.Worked));
    }

    /// <summary>
    /// A new ball, joined where the colours go on: they lie as planned, and its sequence may differ as two dyeings do.
    /// </summary>
    public static DriftTrack JoinBall(this DriftTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.Act(track.Filter.Placed(JoinError).ChangeHook(0, BallError), new DriftPlace(track.Piece, track.Worked));
    }

    /// <summary>After a knot the colours lie anywhere in the sequence until she looks.</summary>
    public static DriftTrack MeetKnot(this DriftTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.Act(track.Filter.Placed(Anywhere(track)), new DriftPlace(track.Piece, track.Worked));
    }

    /// <summary>The standard deviation of a phase of which nothing is known but that it lies within a sequence, in stitches.</summary>
    public static double Anywhere(DriftTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return Math.Min(50, track.Filter.Model.Period / Math.Sqrt(12));
    }
}
