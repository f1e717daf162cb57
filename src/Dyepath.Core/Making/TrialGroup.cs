using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making;

/// <summary>
/// Up to eight trials worked side by side, a lane each: stitch by stitch in vectors, or one lane after another where there are none. Both
/// ways do the same operations in the same order on every lane, so they give the same bits.
/// </summary>
/// <remarks>
/// Places are whole micro-stitches of yarn, so that every comparison with a boundary is exact and two ways of making it cannot disagree.
/// </remarks>
internal sealed class TrialGroup
{
    private const int Lanes = NormalLanes.Count;
    private const int Half = Lanes / 2;
    private const double MostYarn = 2 * PlannedPiece.Stitch;

    /// <summary>
    /// 1.5·2⁵²: added and taken off again, it leaves the nearest whole number, ties to even, as <see cref="Math.Round(double)"/>
    /// does, which the browser's interpreter has no instruction for.
    /// </summary>
    private const double Rounder = 6755399441055744;

    private readonly PlannedPiece _piece;
    private readonly HandModel _hands;
    private readonly ulong _seed;
    private readonly bool _vectorised;
    private readonly bool _evenYarn;
    private readonly (double TwiceStart, double EndInSequences)[] _windows;
    private readonly ImmutableArray<int> _checks;
    private readonly double _correlation;
    private readonly double _innovation;

    private readonly YarnWalk _yarn;
    private readonly NormalLanes _streams = new();
    private readonly float[] _normals;
    private readonly double[] _tension = new double[Lanes];
    private readonly double[] _allowance = new double[Lanes];
    private readonly double[] _corrected = new double[Lanes];
    private readonly double[] _place = new double[Lanes];
    private readonly int[] _rightInRow = new int[Lanes];
    private readonly int[] _right = new int[Lanes];

    public TrialGroup(PlannedPiece piece, HandModel hands, SimulationSettings settings, bool vectorised)
    {
        _piece = piece;
        _hands = hands;
        _seed = settings.Seed;
        _vectorised = vectorised;
        _evenYarn = vectorised && settings.DyeVariation == 0 && MiddleDecides(piece.Ring);
        _windows = _evenYarn ? Windows(piece) : [];
        _checks = piece.CheckPoints(settings.Check);
        _correlation = hands.Correlation;
        _innovation = hands.Spread * PlannedPiece.Stitch * Math.Sqrt(1 - _correlation * _correlation);
        _yarn = new YarnWalk(piece.Ring, settings.DyeVariation, Lanes);
        RightByRow = new long[piece.RowStitches.Length];
        _normals = new float[(piece.RowStitches.Max() + 1) / 2 * 2 * Lanes];
    }

    /// <summary>Where each lane's yarn is after the last trial, in micro-stitches from its start.</summary>
    internal ReadOnlySpan<double> Places => _place;

    /// <summary>Departure of each lane's last stitch from its mean yarn, in micro-stitches.</summary>
    internal ReadOnlySpan<double> Tensions => _tension;

    /// <summary>Stitches in planned colour by row, over all trials that this group has worked.</summary>
    public long[] RightByRow { get; }

    /// <summary>
    /// Works the trials numbered from <paramref name="firstTrial"/>, as many as <paramref name="shares"/> holds (1 to 8), and fills in each
    /// one's share of stitches in planned colour and its sum of absolute relative corrections over all stitches.
    /// </summary>
    public void Work(int firstTrial, Span<double> shares, Span<double> corrections, CancellationToken cancellation)
    {
        for (int lane = 0; lane < Lanes; lane++) Begin(lane, firstTrial + lane);
        int active = shares.Length;
        int worked = 0, nextCheck = 0;
        double planned = 0;
        for (int row = 0; row < _piece.RowStitches.Length; row++)
        {
            cancellation.ThrowIfCancellationRequested();
            int stitches = _piece.RowStitches[row];
            int rowStart = worked, rowEnd = worked + stitches;
            DrawNormals(stitches, active);
            while (worked < rowEnd)
            {
                bool checksFirst = nextCheck < _checks.Length && _checks[nextCheck] <= rowEnd;
                int until = checksFirst ? _checks[nextCheck] : rowEnd;
                if (_evenYarn) WalkEvenYarn(rowStart, worked, until);
                else Walk(rowStart, worked, until, active);
                planned += (until - worked) * PlannedPiece.Stitch;
                worked = until;
                if (!checksFirst) continue;
                nextCheck++;
                int interval = (nextCheck < _checks.Length ? _checks[nextCheck] : _piece.Stitches) - worked;
                for (int lane = 0; lane < active; lane++) Correct(lane, planned, interval);
            }
            for (int lane = 0; lane < active; lane++)
            {
                RightByRow[row] += _rightInRow[lane];
                _right[lane] += _rightInRow[lane];
            }
            Array.Clear(_rightInRow);
            double turn = _piece.Turns[row];
            planned += turn;
            for (int lane = 0; lane < Lanes && turn != 0; lane++)
            {
                _place[lane] += turn;
                if (!_evenYarn) _yarn.Turn(lane, _place[lane]);
            }
        }
        for (int lane = 0; lane < active; lane++)
        {
            shares[lane] = (double)_right[lane] / _piece.Stitches;
            corrections[lane] = _corrected[lane];
        }
    }

    private void Begin(int lane, int trial)
    {
        var seed = new TrialSeed(_seed, trial);
        _streams.Begin(lane, seed);
        _yarn.Begin(lane, _piece.Start, seed);
        _tension[lane] = _hands.Spread * PlannedPiece.Stitch * seed.FirstTension;
        _allowance[lane] = (1 + _hands.Bias) * PlannedPiece.Stitch;
        _place[lane] = _corrected[lane] = 0;
        _right[lane] = _rightInRow[lane] = 0;
    }

    private void DrawNormals(int stitches, int active)
    {
        Span<float> pairs = _normals.AsSpan(0, (stitches + 1) / 2 * 2 * Lanes);
        if (_vectorised) _streams.FillVectorised(pairs);
        else _streams.Fill(pairs, active);
    }

    /// <summary>
    /// By feel: the drift in whole stitches (ties to even), as the colours' boundaries show it, is spread over the stitches until the next
    /// check. A drift by more than half a period of the colours looks like the nearer one, and is corrected so.
    /// </summary>
    private void Correct(int lane, double planned, int interval)
    {
        double drift = _place[lane] - _yarn.Starts[lane] + _yarn.PlannedStarts[lane] - planned;
        drift -= Math.Round(drift / _piece.Period) * _piece.Period;
        double wanted = -Math.Round(drift / PlannedPiece.Stitch) / interval;
        double most = _hands.LargestCorrection;
        double correction = wanted > most ? most : wanted < -most ? -most : wanted;
        _allowance[lane] = (1 + _hands.Bias + correction) * PlannedPiece.Stitch;
        _corrected[lane] += Math.Abs(correction) * interval;
    }

    /// <summary>Works the stitches from <paramref name="from"/> to before <paramref name="until"/>, all within one row.</summary>
    private void Walk(int rowStart, int from, int until, int active)
    {
        ReadOnlySpan<byte> plan = _piece.Colours;
        ReadOnlySpan<float> normals = _normals;
        double correlation = _correlation, innovation = _innovation;
        for (int lane = 0; lane < active; lane++)
        {
            double tension = _tension[lane], place = _place[lane], end = _yarn.Ends[lane];
            double allowance = _allowance[lane];
            int colour = _yarn.Colours[lane], right = 0;
            for (int i = from; i < until; i++)
            {
                tension = tension * correlation + normals[(i - rowStart) * Lanes + lane] * innovation;
                double used = allowance + tension;
                used = used > 0 ? used : 0;
                used = used < MostYarn ? used : MostYarn;
                double after = place + ((used + Rounder) - Rounder);
                if (after > end)
                {
                    right += _yarn.Work(lane, place, after) == plan[i] ? 1 : 0;
                    (end, colour) = (_yarn.Ends[lane], _yarn.Colours[lane]);
                }
                else right += colour == plan[i] ? 1 : 0;
                place = after;
            }
            (_tension[lane], _place[lane]) = (tension, place);
            _rightInRow[lane] += right;
        }
    }

    /// <summary>
    /// Works one trial as <see cref="Work"/> does, in the first lane, and fills in each stitch's colour, in working order.
    /// </summary>
    public void Draw(int trial, Span<byte> colours)
    {
        Begin(0, trial);
        int worked = 0, nextCheck = 0;
        double planned = 0;
        for (int row = 0; row < _piece.RowStitches.Length; row++)
        {
            int stitches = _piece.RowStitches[row];
            DrawNormals(stitches, active: 1);
            for (int i = 0; i < stitches; i++)
            {
                colours[worked++] = (byte)Stitch(_normals[i * Lanes]);
                planned += PlannedPiece.Stitch;
                if (nextCheck == _checks.Length || _checks[nextCheck] != worked) continue;
                nextCheck++;
                Correct(0, planned, (nextCheck < _checks.Length ? _checks[nextCheck] : _piece.Stitches) - worked);
            }
            planned += _piece.Turns[row];
            _place[0] += _piece.Turns[row];
            _yarn.Turn(0, _place[0]);
        }
    }

    /// <summary>The first lane's next stitch.</summary>
    /// <returns>Its colour.</returns>
    private int Stitch(float normal)
    {
        _tension[0] = _tension[0] * _correlation + normal * _innovation;
        double used = Math.Min(Math.Max(_allowance[0] + _tension[0], 0), MostYarn);
        double after = _place[0] + Math.Round(used);
        int colour = _yarn.Work(0, _place[0], after);
        _place[0] = after;
        return colour;
    }

    /// <summary>
    /// As <see cref="Walk"/>, all lanes at once, for yarn without dye variation: a stitch is right if its middle lies in the planned
    /// section, after whole sequences are taken off (see <see cref="MiddleDecides"/>).
    /// </summary>
    private void WalkEvenYarn(int rowStart, int from, int until)
    {
        Vector256<double> correlation = Vector256.Create(_correlation), innovation = Vector256.Create(_innovation);
        Vector256<double> tensionLow = Vector256.Create(_tension, 0), tensionHigh = Vector256.Create(_tension, Half);
        Vector256<double> placeLow = Vector256.Create(_place, 0), placeHigh = Vector256.Create(_place, Half);
        Vector256<double> allowanceLow = Vector256.Create(_allowance, 0), allowanceHigh = Vector256.Create(_allowance, Half);
        Vector256<double> most = Vector256.Create(MostYarn);
        Vector256<double> twoSequences = Vector256.Create(2.0 * _piece.Ring.Total);
        Vector256<double> perTwoSequences = Vector256.Create(1 / (2.0 * _piece.Ring.Total));
        Vector256<long> rightLow = Vector256<long>.Zero, rightHigh = Vector256<long>.Zero;
        ref float normals = ref MemoryMarshal.GetArrayDataReference(_normals);
        ReadOnlySpan<byte> plan = _piece.Colours;
        for (int i = from; i < until; i++)
        {
            (Vector256<double> low, Vector256<double> high) =
                Vector256.Widen(Vector256.LoadUnsafe(ref normals, (nuint)((i - rowStart) * Lanes)));
            tensionLow = tensionLow * correlation + low * innovation;
            tensionHigh = tensionHigh * correlation + high * innovation;
            Vector256<double> afterLow = placeLow + Yarn(allowanceLow + tensionLow, most);
            Vector256<double> afterHigh = placeHigh + Yarn(allowanceHigh + tensionHigh, most);

            (double twiceStart, double endInSequences) = _windows[plan[i]];
            Vector256<double> begins = Vector256.Create(twiceStart), ends = Vector256.Create(endInSequences);
            // A match is all ones, −1.
            rightLow -= Vector256.GreaterThan(Reduce(placeLow + afterLow, perTwoSequences, ends, twoSequences), begins).AsInt64();
            rightHigh -= Vector256.GreaterThan(Reduce(placeHigh + afterHigh, perTwoSequences, ends, twoSequences), begins).AsInt64();
            (placeLow, placeHigh) = (afterLow, afterHigh);
        }
        tensionLow.CopyTo(_tension, 0);
        tensionHigh.CopyTo(_tension, Half);
        placeLow.CopyTo(_place, 0);
        placeHigh.CopyTo(_place, Half);
        (Vector256.Narrow(rightLow, rightHigh) + Vector256.Create(_rightInRow)).CopyTo(_rightInRow);
    }

    /// <summary>Yarn of a stitch in whole micro-stitches: not less than none, not more than twice the plan's.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Yarn(Vector256<double> used, Vector256<double> most) =>
        Vector256.Round(Vector256.MinNative(Vector256.MaxNative(used, Vector256<double>.Zero), most));

    /// <summary>Takes off the whole sequences after the window's end, so that what is left lies in (end − sequence, end].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Reduce(
        Vector256<double> twiceMiddle, Vector256<double> perTwoSequences, Vector256<double> ends, Vector256<double> twoSequences) =>
        twiceMiddle - Vector256.Ceiling(twiceMiddle * perTwoSequences - ends) * twoSequences;

    /// <summary>
    /// Whether a stitch of at most two stitches' yarn has a colour exactly when its middle lies in that colour's one section. The
    /// section that holds the middle either reaches one of the stitch's ends, and so covers half of it, or lies within it; then it
    /// is at least one stitch long, half of the most that a stitch takes, and again nothing covers more. A middle on a boundary is
    /// a tie, and the earlier section's.
    /// </summary>
    private static bool MiddleDecides(MergedRing ring) => ring.IsDistinct && ring.Stretches.Min(s => s.Micro) >= ColourRing.Unit;

    /// <summary>
    /// By colour, the one section that has it: twice its start, from the piece's first stitch, and its end in sequences. Twice a
    /// middle is a whole number, so the end is put half a one late: rounding (under 10⁻² at the longest piece) cannot turn a tie.
    /// </summary>
    private static (double TwiceStart, double EndInSequences)[] Windows(PlannedPiece piece)
    {
        MergedRing ring = piece.Ring;
        var windows = new (double, double)[ring.Stretches.Max(s => s.Colour) + 1];
        double start = -piece.Start;
        for (int section = 0; section < ring.Stretches.Length; section++)
        {
            double end = start + ring.Stretches[section].Micro;
            windows[ring.Stretches[section].Colour] = (2 * start, (2 * end + 0.5) / (2.0 * ring.Total));
            start = end;
        }
        return windows;
    }
}
