using System.Collections.Immutable;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Drift;

/// <summary>
/// One maker at one piece. Where nothing goes wrong that <see cref="TensionSimulation"/> leaves out, the stitches are that simulation's
/// to the bit: the same streams, the same operations.
/// </summary>
internal sealed class MakerTrial
{
    private const double Stitch = PlannedPiece.Stitch;
    private const double MostYarn = 2 * Stitch;

    /// <summary>A row of which less matches she rips back, whoever tells her.</summary>
    private const double LeastMatch = 0.5;

    private const int Lanes = NormalLanes.Count;

    private readonly PlannedPiece _piece;
    private readonly MakerWorld _world;
    private readonly ImmutableArray<int> _checks;
    private readonly ICorrecting? _maker;
    private readonly YarnWalk _yarn;
    private readonly NormalLanes _streams = new(), _chances = new();
    private readonly float[] _normals;
    private readonly double _correlation, _innovation, _gain, _hookStep;
    private double _tension, _place, _planned, _bias;
    private int _covered;

    public MakerTrial(PlannedPiece piece, MakerWorld world, MakerPolicy policy, ulong seed, int number)
    {
        (_piece, _world) = (piece, world);
        _checks = piece.CheckPoints(policy.Check);
        HandModel hands = world.Hands;
        double period = piece.Period / Stitch;
        _maker = _checks.IsEmpty ? null : policy.Steering switch
        {
            Steering.Advice => new CorrectingByAdvice(piece, world.Model(piece), world),
            _ => new CorrectingByFeel(hands.LargestCorrection, period, learns: policy.Steering == Steering.LearningFeel),
        };
        _correlation = hands.Correlation;
        _innovation = hands.Spread * Stitch * Math.Sqrt(1 - _correlation * _correlation);
        _normals = new float[(piece.RowStitches.Max() + 1) / 2 * 2 * Lanes];

        var trial = new TrialSeed(seed, number);
        _streams.Begin(0, trial);
        _yarn = new YarnWalk(piece.Ring, world.Dye, 1);
        _yarn.Begin(0, piece.Start, trial);
        _tension = hands.Spread * Stitch * trial.FirstTension;

        // What TensionSimulation does not model is drawn from a random stream of its own, so that its draws stay the same.
        var apart = new TrialSeed(~seed, number);
        _chances.Begin(0, apart);
        _bias = hands.Bias + world.LargestBias * (2 * Chance() - 1);
        _gain = world.Gain + world.GainSpread * apart.FirstTension;
        _hookStep = world.HookStep * Math.Max(0, 1 + apart.Dye(0) / 2);
        FirstBias = _bias;
    }

    /// <summary>Where what she does and reads is written down.</summary>
    public List<MakerLog.Entry>? Log { get; init; }

    /// <summary>With the hook that she begins with.</summary>
    public double FirstBias { get; }

    public int Right { get; private set; }

    public int RipBacks { get; private set; }

    public int Recounts { get; private set; }

    /// <summary>Edge stitches, turning chains and hooks, as advised.</summary>
    public int Acts { get; private set; }

    /// <summary>Share of rows, ripped ones too, at whose end the filter's 95 % interval held the phase.</summary>
    public double Coverage => (double)_covered / (_piece.RowStitches.Length + RipBacks);

    public void Work()
    {
        int first = 0, check = 0;
        for (int row = 0; row < _piece.RowStitches.Length; row++)
        {
            int end = first + _piece.RowStitches[row];
            int from = row > 0 && _maker is CorrectingByAdvice advised ? Act(advised, first) : first;
            if (check < _checks.Length && _checks[check] <= from && from > first) check++;
            int checkBefore = check;
            (double place, double planned) = (_place, _planned);
            _maker?.BeginRow(from);
            Log?.Add(new MakerLog.RowBegun());
            double believed = _maker?.Phase ?? 0;
            for (int ripped = 0; ; ripped++)
            {
                int right = WorkRow(from, end, ref check);
                if (_maker is null || ripped == _world.MostRipBacks ||
                    RowMatch.Share(_piece, row, first, believed, _maker.Phase) >= LeastMatch)
                {
                    Right += right;
                    break;
                }
                RipBacks++;
                (_place, _planned, check) = (place, planned, checkBefore);
                _yarn.Turn(0, place);
                _maker.RipBack();
                Log?.Add(new MakerLog.RippedBack());
            }
            _planned += _piece.Turns[row];
            _place += _piece.Turns[row];
            _yarn.Turn(0, _place);
            first = end;
        }
    }

    /// <summary>Does what she was advised to do where a row begins.</summary>
    /// <returns>Stitches worked then: a skipped one counts, and is in no colour.</returns>
    private int Act(CorrectingByAdvice maker, int first)
    {
        (DriftAdvice? advice, int given) = maker.Advised;
        int hook = advice?.Kind switch { DriftAdviceKind.HookDown => -1, DriftAdviceKind.HookUp => 1, _ => 0 };
        if (hook != 0)
        {
            _bias = (1 + _bias) * (1 + hook * _hookStep) - 1;
            maker.Act(first, first, filter => filter.ChangeHook(hook * _world.HookStep, _world.HookStep / 2));
            Log?.Add(new MakerLog.HookChanged(hook * _world.HookStep, _world.HookStep / 2));
            Acts++;
        }
        if (given != first) return first;
        double chain = Math.Min(_world.Turn, Math.Abs(advice!.Phase));
        (double planned, double error) = advice.Kind switch
        {
            DriftAdviceKind.SkipEdgeStitch => (-1, 0),
            DriftAdviceKind.AddEdgeStitch => (1, 0),
            DriftAdviceKind.TightenTurn => (-chain * _world.Gain, chain * _world.GainSpread),
            DriftAdviceKind.LoosenTurn => (chain * _world.Gain, chain * _world.GainSpread),
            _ => (0.0, 0.0),
        };
        if (planned == 0) return first;
        Acts++;
        Log?.Add(new MakerLog.Shifted(planned, error));
        bool skips = advice.Kind == DriftAdviceKind.SkipEdgeStitch;
        if (skips) _planned += Stitch;
        else
        {
            _place += advice.Kind == DriftAdviceKind.AddEdgeStitch ? Stitch : ColourRing.ToMicro(Math.Sign(planned) * chain * _gain);
            _yarn.Turn(0, _place);
        }
        int after = skips ? first + 1 : first;
        maker.Act(first, after, filter => filter.Shift(planned, error));
        return after;
    }

    private int WorkRow(int first, int end, ref int check)
    {
        _streams.Fill(_normals.AsSpan(0, (end - first + 1) / 2 * 2 * Lanes), lanes: 1);
        int right = 0;
        for (int worked = first; worked < end;)
        {
            double chance = _world.Slips == 0 ? 1 : Chance();
            double doubled = chance < _world.Slips / 2 ? Stitch : 0;
            bool missed = doubled == 0 && chance < _world.Slips;
            double correction = _maker?.Correction(worked) ?? 0;
            _tension = _tension * _correlation + _normals[(worked - first) * Lanes] * _innovation;
            double used = Math.Min(Math.Max((1 + _bias + _gain * correction) * Stitch + _tension, 0), MostYarn) + doubled;
            double after = missed ? _place : _place + Math.Round(used);
            int colour = _yarn.Work(0, _place, after);
            if (!missed && colour == _piece.Colours[worked]) right++;
            _place = after;
            _planned += Stitch;
            worked++;
            if (Log is not null) LogStitch(correction);
            if (worked == end && _maker is CorrectingByAdvice advised) Cover(advised.At(worked));
            if (check == _checks.Length || _checks[check] != worked) continue;
            check++;
            Read(worked, check < _checks.Length ? _checks[check] : _piece.Stitches);
        }
        return right;
    }

    private void Read(int worked, int until)
    {
        int reading = Look();
        if (_maker!.AsksForRecount(worked, reading))
        {
            Recounts++;
            reading = Look();
        }
        _maker.Read(worked, reading, until);
        Log?.Add(new MakerLog.Read(reading));
    }

    private void LogStitch(double correction)
    {
        int stitches = 1;
        if (Log!.Count > 0 && Log[^1] is MakerLog.Worked last && last.Correction == correction)
        {
            stitches += last.Stitches;
            Log.RemoveAt(Log.Count - 1);
        }
        Log.Add(new MakerLog.Worked(stitches, correction));
    }

    /// <summary>The phase as the colours' boundaries show it, within half a period, now and then a stitch off.</summary>
    private int Look()
    {
        double drift = Drift();
        drift -= Math.Round(drift / _piece.Period) * _piece.Period;
        int seen = (int)Math.Round(drift / Stitch);
        double chance = _world.Misreads == 0 ? 1 : Chance();
        return chance < _world.Misreads / 2 ? seen - 1 : chance < _world.Misreads ? seen + 1 : seen;
    }

    private double Drift() => _place - _yarn.Starts[0] + _yarn.PlannedStarts[0] - _planned;

    private void Cover(DriftFilter filter)
    {
        double off = Drift() - filter.PhaseMean * Stitch;
        off -= Math.Round(off / _piece.Period) * _piece.Period;
        if (Math.Abs(off) <= DriftFilter.Sd95 * filter.PhaseSd * Stitch) _covered++;
    }

    private double Chance() => _chances.Next(0) / 4294967296.0;
}
