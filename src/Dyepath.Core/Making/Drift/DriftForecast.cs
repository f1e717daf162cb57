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
    /// If she follows the advice, reads every row and follows what is advised then; nothing without advice. The advised stretch goes as
    /// the filter expects; where hands at their limit do not null the phase within it, they go on until they have; from there the phase
    /// is held. What is answered at the edge, by a hook or by ripping is right at once.
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
            advice is null ? null : Course.Of(piece, worked, row, Following(filter, advice)));
    }

    private static Func<int, double> Following(DriftFilter filter, DriftAdvice advice)
    {
        // The phase's likeness that the advice aims at.
        double aim = filter.PhaseMean - advice.Phase;
        if (advice.Kind is not (DriftAdviceKind.WorkTighter or DriftAdviceKind.WorkLooser))
            return _ => advice.Kind == DriftAdviceKind.CarryOn ? filter.PhaseMean : aim;
        double left = filter.MeanAfter(advice.Stitches, advice.Correction) - aim;
        bool nulled = Math.Abs(left) < DriftAdvice.OnTheCount;
        return stitches =>
        {
            if (stitches > advice.Stitches && nulled) return aim;
            double phase = filter.MeanAfter(stitches, advice.Correction);
            if (stitches <= advice.Stitches || (phase - aim) * left > 0) return phase;
            nulled = true;
            return aim;
        };
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
