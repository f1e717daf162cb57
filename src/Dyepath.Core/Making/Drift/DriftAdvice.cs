using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>What a maker is advised to do about a drift.</summary>
public enum DriftAdviceKind
{
    /// <summary>Nothing to watch for: what holds the hands' bias, or a grade beside it for the row.</summary>
    CarryOn,

    /// <summary>Another tension for a while, then what holds the bias.</summary>
    Correct,

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

    /// <summary>Too far off for hands: cut the yarn, leave out what lies between, and join it again.</summary>
    Rejoin,

    /// <summary>Too little of the last rows matches to keep them.</summary>
    RipBack,
}

/// <summary>
/// What to do about a drift: one level of tension for some stitches, then the level that holds the hands' bias. Levels are those of
/// <see cref="TensionGrades"/>, relative to her natural hands, negative tighter.
/// </summary>
public sealed record DriftAdvice
{
    /// <summary>Of what the hands can do, the part that a bias may take for good; the rest is left for corrections.</summary>
    public const double Held = MadeWell.HeldForGood;

    /// <summary>A phase error under this many stitches is not answered at the edge or with the turning chain.</summary>
    public const double OnTheCount = 0.25;

    /// <summary>Beyond this many stitches an edge stitch is too little.</summary>
    private const double MostAtEdge = 1.5;

    /// <summary>A correction over fewer stitches than this is over before the hands have found it.</summary>
    private const int Shortest = 10;

    /// <summary>The tension stays as it is where another would save less than this part of a row's stitches.</summary>
    private const double WorthTrimming = 0.005;

    /// <summary>A trim for a whole row is no more than this beside what is held: so little is carried on like the hold itself.</summary>
    private const double MostTrim = 0.015;

    /// <summary>A place in the row to watch for is asked for where it saves this part of the row's stitches more than a trim.</summary>
    private const double WorthMarking = 0.072;

    /// <summary>The same in mid-row: who looks there looks again soon, and little is said too late.</summary>
    private const double WorthMarkingMidRow = 0.003;

    /// <summary>A second look in mid-row is asked for where it saves this part of a row's stitches.</summary>
    private const double WorthLooking = 0.02;

    /// <summary>Cutting the yarn is asked for where tension would cost this part of a row's stitches more.</summary>
    private const double WorthCutting = 0.5;

    /// <summary>A level is held on while another would leave less by no more than so many stitches a row.</summary>
    private const double Alike = 0.05;

    /// <summary>What a look at the colours leaves unknown, in stitches.</summary>
    private const double Seen = 0.35;

    /// <summary>The relative tension by which what is left at a row's end is worked off in the rows after it.</summary>
    private const double Later = 0.03;

    /// <summary>What to do.</summary>
    public required DriftAdviceKind Kind { get; init; }

    /// <summary>The phase error that it answers, in stitches, to the nearest likeness; positive: colours come early.</summary>
    public required double Phase { get; init; }

    /// <summary>Relative correction for the next <see cref="Stitches"/>.</summary>
    public double Correction { get; init; }

    /// <summary>For which <see cref="Correction"/> is kept up; at 0 <see cref="Hold"/> begins at once. They end with a colour, or the row.</summary>
    public int Stitches { get; init; }

    /// <summary>Relative correction after them.</summary>
    public double Hold { get; init; }

    /// <summary>The stretch goes to the row's end.</summary>
    public bool ToRowEnd { get; init; }

    /// <summary>After so many stitches, where a colour ends in mid-row, a second look pays; missing where it does not.</summary>
    public int? LookAfter { get; init; }

    /// <summary>Stitches of yarn to leave out when it is cut; 0 where it is not.</summary>
    public double LeftOut { get; init; }

    /// <summary>The row, from 0, to whose beginning to rip back; missing where nothing is to be ripped.</summary>
    public int? RipTo { get; init; }

    /// <summary>Correction that is advised for a stitch to come, counted from where this was given.</summary>
    public double After(int stitches) => stitches < Stitches ? Correction : Hold;

    /// <summary>What to do by what is known of the drift and what can be done here.</summary>
    public static DriftAdvice For(DriftFilter filter, DriftPlace place)
    {
        ArgumentNullException.ThrowIfNull(filter);
        ArgumentNullException.ThrowIfNull(place);
        double period = filter.Model.Period, phase = filter.Off;
        double most = place.LargestCorrection, gain = Math.Max(filter.GainMean, 0.2);
        var ahead = new RowAhead(filter, place, phase, gain);
        double hold = HoldOf(filter, place, gain, ahead.Stitches);
        var carryOn = new DriftAdvice
        {
            Kind = DriftAdviceKind.CarryOn,
            Phase = phase,
            Correction = hold,
            Hold = hold,
            LookAfter = ahead.Look(),
        };
        if (ahead.Stitches == 0) return carryOn with { LookAfter = null };
        // An act says nothing of tension: she goes on as she was told last.
        var act = Math.Abs(place.Holding) <= most ? carryOn with { Correction = place.Holding, Hold = place.Holding } : carryOn;
        if (place.RipTo is { } row) return act with { Kind = DriftAdviceKind.RipBack, RipTo = row };
        // Only when it is nearly certain that these hands cannot hold it, and another hook would leave less: it is changed for good.
        double bias = Math.Abs(filter.BiasMean);
        if (bias - 2 * filter.BiasSd > Held * most * gain && place.HookStep > 0 && bias > place.HookStep / 2)
            return act with { Kind = filter.BiasMean > 0 ? DriftAdviceKind.HookDown : DriftAdviceKind.HookUp };

        (int Stitches, double Level, double Wrong) best = (0, hold, ahead.Wrong(0, 0, hold));
        double held = best.Wrong;
        foreach (int stitches in ahead.Ends)
        {
            foreach (double level in TensionGrades.Within(most))
            {
                double wrong = level == hold ? double.PositiveInfinity : ahead.Wrong(stitches, level, hold);
                if (wrong < best.Wrong) best = (stitches, level, wrong);
            }
        }
        double left = Math.Abs(ahead.PhaseAfter(best.Stitches, best.Level, hold));
        if (left >= 1)
        {
            // Tension alone does not bring it back within the row.
            if (place.CanJoin && best.Wrong - ahead.Wrong(0, 0, hold, joined: true) > WorthCutting * ahead.Stitches)
                return act with { Kind = DriftAdviceKind.Rejoin, LeftOut = phase < 0 ? -phase : period - phase };
            if (place.EdgeStitch && Math.Abs(phase) is >= 0.75 and < MostAtEdge)
                return act with { Kind = phase > 0 ? DriftAdviceKind.SkipEdgeStitch : DriftAdviceKind.AddEdgeStitch };
            if (place.Turn >= OnTheCount && Math.Abs(phase) < MostAtEdge)
                return act with { Kind = phase > 0 ? DriftAdviceKind.TightenTurn : DriftAdviceKind.LoosenTurn };
        }
        if (held - best.Wrong < WorthTrimming * ahead.Stitches) return carryOn;
        double trim = TensionGrades.Within(most).Where(level => Math.Abs(level - hold) <= MostTrim + 1e-9)
            .MinBy(level => ahead.Wrong(ahead.Stitches, level, hold));
        double worth = ahead.IsWhole ? WorthMarking : WorthMarkingMidRow;
        if (ahead.Wrong(ahead.Stitches, trim, hold) - best.Wrong < worth * ahead.Stitches)
            return trim == hold ? carryOn : carryOn with { Correction = trim, Stitches = ahead.Stitches, ToRowEnd = true };
        return carryOn with
        {
            Kind = DriftAdviceKind.Correct,
            Correction = best.Level,
            Stitches = best.Stitches,
            ToRowEnd = best.Stitches == ahead.Stitches,
            LookAfter = ahead.Look(best.Stitches),
        };
    }

    /// <summary>The level that leaves least of the bias; the one that she holds stays while another leaves hardly less.</summary>
    private static double HoldOf(DriftFilter filter, DriftPlace place, double gain, int stitches)
    {
        double Left(double level) => Math.Abs(filter.BiasMean + gain * level);
        double best = TensionGrades.Within(place.LargestCorrection).MinBy(Left);
        return Math.Abs(place.Holding) <= place.LargestCorrection && (Left(place.Holding) - Left(best)) * stitches < Alike
            ? place.Holding : best;
    }

    /// <summary>What is left of the row, and how many of its stitches are likely to come out in a wrong colour.</summary>
    private sealed class RowAhead
    {
        private readonly DriftFilter _filter;
        private readonly double _phase, _gain, _boundaries;
        private readonly int _step;

        /// <summary>The phase, with natural hands, and its spread, sampled: advice shall cost nothing that is felt.</summary>
        private readonly double[] _free, _spread;

        public RowAhead(DriftFilter filter, DriftPlace place, double phase, double gain)
        {
            (_filter, _phase, _gain) = (filter, phase, gain);
            var piece = place.Piece;
            int row = piece.RowOf(place.Worked), begin = piece.StitchesBefore(row), end = begin + piece.RowStitches[row];
            (Stitches, IsWhole) = (end - place.Worked, begin == place.Worked);
            for (int i = place.Worked + Shortest; i < end; i++)
            {
                if (piece.Colours[i] != piece.Colours[i - 1]) Ends.Add(i - place.Worked);
            }
            if (Stitches > 0) Ends.Add(Stitches);
            _boundaries = piece.Ring.Stretches.Length * PlannedPiece.Stitch / piece.Ring.Total;
            _step = Math.Max(1, Stitches / 24);
            (_free, _spread) = (new double[Stitches / _step], new double[Stitches / _step]);
            var at = filter;
            for (int i = 0; i < _free.Length; i++)
            {
                at = at.Predict(_step);
                (_free[i], _spread[i]) = (at.PhaseMean - filter.PhaseMean + phase, at.PhaseSd);
            }
        }

        public int Stitches { get; }

        /// <summary>Nothing of the row is worked yet.</summary>
        public bool IsWhole { get; }

        /// <summary>Where a stretch may end.</summary>
        public List<int> Ends { get; } = [];

        /// <summary>Where the phase is expected at the row's end.</summary>
        public double PhaseAfter(int stretch, double level, double hold) =>
            _phase + _filter.MeanAfter(Stitches, 0) - _filter.PhaseMean + _gain * (stretch * level + (Stitches - stretch) * hold);

        /// <summary>
        /// Stitches likely to be in a wrong colour, in this row and until what is left at its end is worked off: as many for each
        /// stitch that colours are off as there are boundaries to a stitch.
        /// </summary>
        /// <param name="joined">Had the yarn been joined at its place just now.</param>
        public double Wrong(int stretch, double level, double hold, bool joined = false)
        {
            double off = 0;
            for (int i = 0; i < _free.Length; i++)
            {
                int worked = (i + 1) * _step;
                double mean = _free[i] - (joined ? _phase : 0)
                    + _gain * (Math.Min(worked, stretch) * level + Math.Max(0, worked - stretch) * hold);
                off += _step * Off(mean, _spread[i]);
            }
            double left = PhaseAfter(stretch, level, hold) - (joined ? _phase : 0);
            return _boundaries * (off + left * left / (2 * Later));
        }

        /// <summary>Where a second look saves enough; at the end of the stretch, if that is in mid-row.</summary>
        public int? Look(int stretch = 0)
        {
            int stitches = Stitches;
            if (Ends.Count < 2) return null;
            int middle = stretch > 0.3 * stitches && stretch < 0.7 * stitches
                ? stretch : Ends.SkipLast(1).MinBy(end => Math.Abs(2 * end - stitches));
            double saved = 0;
            for (int i = 0; i < _spread.Length; i++)
            {
                int since = (i + 1) * _step - middle;
                if (since <= 0) continue;
                double then = _spread[Math.Min(since / _step, _spread.Length - 1)];
                saved += _step * (Off(0, _spread[i]) - Off(0, Math.Sqrt(Seen * Seen + then * then)));
            }
            return _boundaries * saved > WorthLooking * stitches ? middle : null;
        }

        /// <summary>How far off colours are on the average, nearly: exact for a spread of nothing, and for a mean of nothing.</summary>
        private static double Off(double mean, double spread) => Math.Sqrt(mean * mean + spread * spread * 2 / Math.PI);
    }
}
