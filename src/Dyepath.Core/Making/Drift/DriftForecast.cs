using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Drift;

/// <summary>The rest of a piece as it will look in the mean, without what chance adds.</summary>
public sealed record DriftForecast
{
    /// <summary>A row of which so much has its planned colours keeps them.</summary>
    public const double KeptShare = 0.75;

    private DriftForecast(int firstRow, Course unchanged, Course? advised) =>
        (FirstRow, Unchanged, Advised) = (firstRow, unchanged, advised);

    /// <summary>The row, from 0, that the next stitch is in; the number of rows when none is left.</summary>
    public int FirstRow { get; }

    /// <summary>If she changes nothing.</summary>
    public Course Unchanged { get; }

    /// <summary>
    /// If she follows the advice of this row and of every row after it; nothing without advice, or where rows are to be ripped
    /// back. An edge stitch gives what it gives, and the yarn that is joined again lies right at once.
    /// </summary>
    public Course? Advised { get; }

    /// <param name="piece">The piece as planned.</param>
    /// <param name="worked">Stitches worked, in [0, the piece's].</param>
    /// <param name="filter">What is known there.</param>
    /// <param name="advice">What is advised there.</param>
    /// <param name="correction">The relative correction that she is at, in [−0.5, 0.5].</param>
    public static DriftForecast Of(PlannedPiece piece, int worked, DriftFilter filter, DriftAdvice? advice, double correction = 0)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(filter);
        Guard.InRange(worked, 0, piece.Stitches, "stitches");
        Guard.InRange(correction, -0.5, 0.5, "of the yarn per stitch");
        int row = 0, rowEnd = piece.RowStitches[0];
        while (rowEnd <= worked && ++row < piece.RowStitches.Length) rowEnd += piece.RowStitches[row];
        return new DriftForecast(
            row,
            Course.Of(piece, worked, row, stitches => filter.MeanAfter(stitches, correction)),
            advice is null or { Kind: DriftAdviceKind.RipBack }
                ? null : Course.Of(piece, worked, row, Following(piece, worked, filter, advice)));
    }

    private static Func<int, double> Following(PlannedPiece piece, int worked, DriftFilter filter, DriftAdvice advice)
    {
        // What is done at once, in the mean; the rest is worked off row by row by the same advice, never said to be right before it is.
        filter = advice.Kind switch
        {
            DriftAdviceKind.SkipEdgeStitch => filter.Shift(-1),
            DriftAdviceKind.AddEdgeStitch => filter.Shift(1),
            DriftAdviceKind.Rejoin => filter.Shift(-filter.Off),
            DriftAdviceKind.HookDown => filter.ChangeHook(-new DriftPlace(piece, worked).HookStep, 0),
            DriftAdviceKind.HookUp => filter.ChangeHook(new DriftPlace(piece, worked).HookStep, 0),
            _ => filter,
        };
        bool acted = advice.Kind is not (DriftAdviceKind.CarryOn or DriftAdviceKind.Correct);
        (int given, int end) = (worked, 0);
        int row = 0;
        if (acted) advice = DriftAdvice.For(filter, new DriftPlace(piece, worked) { Holding = advice.Hold, HookStep = 0 });
        return more =>
        {
            while (end <= given && row < piece.RowStitches.Length) end += piece.RowStitches[row++];
            int at = worked + more;
            if (at > end)
            {
                filter = Mean(filter, end - given, advice);
                advice = DriftAdvice.For(filter, new DriftPlace(piece, end) { Holding = advice.Hold, HookStep = 0 });
                given = end;
                while (end <= given && row < piece.RowStitches.Length) end += piece.RowStitches[row++];
            }
            return Mean(filter, at - given, advice).PhaseMean;
        };
    }

    private static DriftFilter Mean(DriftFilter filter, int stitches, DriftAdvice advice)
    {
        int stretch = Math.Min(stitches, advice.Stitches);
        return filter.Predict(stretch, advice.Correction).Predict(stitches - stretch, advice.Hold);
    }

    /// <summary>One way that the rest may go.</summary>
    /// <param name="Colours">Of every remaining stitch in working order, as in <see cref="Yarns.ColourRing.Colours"/>.</param>
    /// <param name="RowShares">
    /// The share in planned colour, in [0, 1], of the row that the next stitch is in, as far as it is left, and of every row after it.
    /// </param>
    public sealed record Course(ImmutableArray<byte> Colours, ImmutableArray<double> RowShares)
    {
        /// <summary>Rows of which at least <see cref="KeptShare"/> has its planned colours.</summary>
        public int RowsKept => RowShares.Count(share => share >= KeptShare);

        /// <param name="piece">The piece as planned.</param>
        /// <param name="worked">Stitches worked.</param>
        /// <param name="row">The row that the next stitch is in.</param>
        /// <param name="phase">The phase after so many more stitches, asked in ascending order from 0.</param>
        internal static Course Of(PlannedPiece piece, int worked, int row, Func<int, double> phase)
        {
            MergedRing ring = piece.Ring;
            double planned = piece.PlaceOf(worked, row), place = ColourRing.ToMicro(phase(0));
            double start = (piece.Start + planned + place) % ring.Total;
            if (start < 0) start += ring.Total;
            // Places are counted from here.
            (double origin, place) = (planned + place, 0);
            var walk = new YarnWalk(ring, dyeVariation: 0, lanes: 1);
            walk.Begin(0, start, default);

            byte[] colours = new byte[piece.Stitches - worked];
            var shares = ImmutableArray.CreateBuilder<double>();
            int rowEnd = piece.RowStitches.Take(row + 1).Sum();
            for (int first = worked, at = worked, right = 0; at < piece.Stitches;)
            {
                planned += PlannedPiece.Stitch;
                double after = Math.Max(place, planned + ColourRing.ToMicro(phase(at + 1 - worked)) - origin);
                colours[at - worked] = (byte)walk.Work(0, place, after);
                if (colours[at - worked] == piece.Colours[at]) right++;
                place = after;
                if (++at < rowEnd) continue;
                shares.Add((double)right / (rowEnd - first));
                (first, right) = (rowEnd, 0);
                if (++row < piece.RowStitches.Length) rowEnd += piece.RowStitches[row];
                planned += piece.Turns[row - 1];
                place += piece.Turns[row - 1];
                walk.Turn(0, place);
            }
            return new Course(ImmutableCollectionsMarshal.AsImmutableArray(colours), shares.ToImmutable());
        }
    }
}
