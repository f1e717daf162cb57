using System.Collections.Immutable;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Making.Work;

/// <summary>
/// Where a maker is: what her log leads to, entry by entry. Immutable; every state refers to the one before, so that every tap can be
/// undone. An entry that does not apply to the state before it, as in a log of another piece, changes nothing.
/// </summary>
public sealed class MakingState
{
    /// <summary>
    /// Standard deviation of the gain before the first row: hands differ by 0.15, and what people take “a little” for by more.
    /// </summary>
    private const double WordsSpread = 0.3;

    private readonly DriftModel _hands;
    private ImmutableArray<ColourRun>? _runs;

    private MakingState(
        MakingOrder order, DriftModel hands, int part, ImmutableArray<PartProgress> progress, MakingState? before, Entry? last) =>
        (Order, _hands, PartIndex, Progress, Before, Last) = (order, hands, part, progress, before, last);

    /// <summary>What is made.</summary>
    public MakingOrder Order { get; }

    /// <summary>Which part is at hand, from 0.</summary>
    public int PartIndex { get; }

    /// <summary>Of every part, in the order of <see cref="MakingOrder.Parts"/>.</summary>
    public ImmutableArray<PartProgress> Progress { get; }

    /// <summary>What taking back the last entry leads to; missing at the very beginning.</summary>
    public MakingState? Before { get; }

    /// <summary>The entry that led here.</summary>
    public Entry? Last { get; }

    /// <summary>The part at hand.</summary>
    public MakingPart Part => Order.Parts[PartIndex];

    /// <summary>How far the part at hand has come.</summary>
    public PartProgress Here => Progress[PartIndex];

    /// <summary>What is to be done; missing when the part is finished.</summary>
    public MakingStep? Step => Here.Step < Part.Steps.Length ? Part.Steps[Here.Step] : null;

    /// <summary>The row to be worked; missing where the next step is none, or the part is finished.</summary>
    public RowStep? Row => Step as RowStep;

    /// <summary>Missing where the part has no colours to hold.</summary>
    public DriftTrack? Drift => Here.Drift;

    /// <summary>No step of the part at hand is left.</summary>
    public bool IsPartDone => Step is null;

    /// <summary>No step of any part is left.</summary>
    public bool IsDone => Progress.Zip(Order.Parts).All(p => p.First.Step >= p.Second.Steps.Length);

    /// <summary>A row of this part is at hand, or one that is begun goes on after the step at hand.</summary>
    public bool HasRowAhead => Part.Steps.Skip(Here.Step).Any(step => step is RowStep);

    /// <summary>The row just ended, from 0, where she stands between two rows; missing elsewhere.</summary>
    public int? RowEnded => Here is { Step: > 0, Run: 0 } && Part.Steps[Here.Step - 1] is RowStep ended ? ended.Row : null;

    /// <summary>Runs of the row at hand in the order of work; empty where it has one colour.</summary>
    public ImmutableArray<ColourRun> Runs => _runs ??= Row is { } row && Part.Fabric is { } fabric ? RowRuns.Of(fabric, row.Row) : [];

    /// <param name="own">What the maker counted in her own yarn.</param>
    public static MakingState Begin(MakingOrder order, OwnYarn? own = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        var hands = Hands(order.Plan, own);
        return new MakingState(order, hands, 0, [.. order.Parts.Select(part => new PartProgress(0, 0, Track(part, hands)))], null, null);
    }

    /// <summary>The whole log, one entry after another.</summary>
    public MakingState Apply(IEnumerable<Entry> log) => log.Aggregate(this, (state, entry) => state.Apply(entry));

    /// <summary>What one more entry leads to; the same state where it does not apply.</summary>
    public MakingState Apply(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Kind switch
        {
            EntryKind.Back => Before ?? this,
            EntryKind.Part => entry.To is { } to && to >= 1 && to <= Order.Parts.Length && to - 1 != PartIndex ? GoOn(entry, to - 1) : this,
            _ => (entry.Said is { } said && Drift is { } drift ? Expecting(drift, said) : this).Led(entry) is { } here
                ? new(Order, _hands, PartIndex, Progress.SetItem(PartIndex, here), this, entry) : this,
        };
    }

    /// <summary>The entry with what she is told in answer, as it goes into the log.</summary>
    public Entry Answered(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Kind is not (EntryKind.Back or EntryKind.Part) && Apply(entry).Drift?.Advice is { } advice && advice != Drift!.Advice
            ? entry with { Said = SaidAdvice.Of(advice) } : entry;
    }

    /// <summary>As it is; what comes next was answered so.</summary>
    private MakingState Expecting(DriftTrack drift, Said said)
    {
        var here = Here with { Drift = drift.Expecting((filter, place) => SaidAdvice.Read(said, filter, place)) };
        return new(Order, _hands, PartIndex, Progress.SetItem(PartIndex, here), Before, Last);
    }

    /// <summary>How far the part has come by an entry; missing where it does not apply.</summary>
    private PartProgress? Led(Entry entry) => entry.Kind switch
    {
        EntryKind.Step when Step is not null && Row is null => Here with { Step = Here.Step + 1, Run = 0 },
        EntryKind.Row when Row is { } row => EndRow(row, entry.Phase),
        EntryKind.Run when Row is { } row => EndRun(row, entry.Phase),
        EntryKind.Read when entry.Phase is { } phase && Drift is { } drift =>
            Here with { Drift = RowEnded is { } ended ? ReadRowEnd(drift, ended, phase, null) : drift.Read(phase) },
        EntryKind.At when entry.To is { } to && to >= 1 && to <= Part.Rows => GoTo(to - 1),
        EntryKind.Edge when Drift is not null && entry.To is -1 or 1 => Here with { Drift = Drift!.Shift(entry.To.Value) },
        EntryKind.Turn when Drift is not null && entry.To is -1 or 1 =>
            Here with { Drift = Drift!.Shift(entry.To.Value * MakerRemedies.TurnGives, MakerRemedies.TurnError) },
        EntryKind.Join => Drift is null ? null : Here with { Drift = Drift.Join() },
        EntryKind.Ball => Drift is null ? null : Here with { Drift = Drift.JoinBall() },
        EntryKind.Knot => Drift is null ? null : Here with { Drift = Drift.MeetKnot() },
        EntryKind.Look when entry is { Phase: { } phase, To: { } to } && Row is { } row && to > Here.Run && to < Runs.Length =>
            LookAt(row, to, phase),
        EntryKind.Hook when Drift is not null && entry.To is -1 or 1 => Here with { Drift = Drift!.ChangeHook(entry.To.Value) },
        EntryKind.Stop when entry.To is { } to && to >= 1 && Row is { } row && to < StitchesOf(row) => Here with { Stopped = to },
        _ => null,
    };

    /// <summary>Whether a reading is so far from what is expected that it should be taken twice.</summary>
    /// <param name="run">For <see cref="EntryKind.Look"/>: how many runs of the row are worked.</param>
    public bool AsksForRecount(EntryKind did, int phase, int run = 0) => Drift is { } drift && Row is { } row && did switch
    {
        EntryKind.Row => drift.WorkTo(RowEnd(row.Row)).Filter.AsksForRecount(phase),
        EntryKind.Run => drift.WorkTo(RunEnd(row.Row, Here.Run + 1)).Filter.AsksForRecount(phase),
        EntryKind.Look => drift.WorkTo(RunEnd(row.Row, run)).Filter.AsksForRecount(phase),
        _ => drift.Filter.AsksForRecount(phase),
    };

    /// <summary>The latest state at the beginning of a row of this part; null where there was none.</summary>
    /// <param name="row">From 0.</param>
    public MakingState? AtRow(int row)
    {
        for (var state = this; state is not null; state = state.Before)
        {
            if (state.PartIndex == PartIndex && state.Row?.Row == row && state.Here.Run == 0)
                return state;
        }
        return null;
    }

    /// <summary>Of a row; of one whose colours are not planned, no less than any has.</summary>
    private int StitchesOf(RowStep row) => Part.Planned?.RowStitches[row.Row] ?? Entry.Numbers.Largest + 1;

    /// <param name="section">The colour that she was asked of; missing, the one that the row looks to end in.</param>
    private PartProgress EndRow(RowStep row, int? phase, int? section = null)
    {
        var drift = Drift?.WorkTo(RowEnd(row.Row));
        if (drift is not null && phase is { } read)
            drift = ReadRowEnd(drift, row.Row, read, section ?? Making.Drift.RowEnd.Looks(drift.Piece, row.Row, read).Colour);
        else
            drift = drift?.GoOn();
        return new PartProgress(Here.Step + 1, 0, drift);
    }

    private PartProgress EndRun(RowStep row, int? phase)
    {
        int? section = Runs.IsEmpty ? null : Runs[Here.Run].Section;
        if (Here.Run + 1 >= Runs.Length)
            return EndRow(row, phase, section);
        var drift = Drift?.WorkTo(RunEnd(row.Row, Here.Run + 1));
        if (drift is not null && phase is { } read)
            drift = drift.Read(read, section: section);
        return new PartProgress(Here.Step, Here.Run + 1, drift);
    }

    private PartProgress LookAt(RowStep row, int run, int phase) =>
        new(Here.Step, run, Drift?.WorkTo(RunEnd(row.Row, run)).Read(phase, section: Runs[run].Section));

    private DriftTrack ReadRowEnd(DriftTrack drift, int row, int phase, int? section) =>
        drift.Read(phase, MakerRemedies.AtRowEnd(drift, Part, row, begun => AtRow(begun)?.Drift?.Filter.PhaseMean), section);

    private PartProgress GoTo(int row)
    {
        var drift = Drift;
        if (drift is not null && Part.Planned is { } planned)
        {
            var stitches = planned.StitchesBefore(row);
            drift = stitches >= drift.Worked
                ? drift.WorkTo(stitches)
                : drift.RipBackTo(AtRow(row)?.Drift ?? DriftTrack.Begin(planned, drift.Filter.Model).WorkTo(stitches));
        }
        return new PartProgress(Part.StepOf(row), 0, drift);
    }

    /// <summary>A part that is begun takes over what was learnt of the hands.</summary>
    private MakingState GoOn(Entry entry, int part)
    {
        var progress = Progress;
        if (progress[part] is { Step: 0, Drift: not null } && Learnt() is { } hands)
            progress = progress.SetItem(part, new PartProgress(0, 0, Track(Order.Parts[part], hands)));
        return new MakingState(Order, _hands, part, progress, this, entry);
    }

    private DriftModel? Learnt() => Drift is { Worked: > 0 } drift
        ? new DriftModel(drift.Filter.Spread, _hands.Memory)
        {
            Bias = Math.Clamp(drift.Filter.BiasMean, -0.5, 0.5),
            BiasSpread = Math.Min(drift.Filter.BiasSd, 0.5),
            Gain = Math.Clamp(drift.Filter.GainMean, 0, 2),
            GainSpread = Math.Min(drift.Filter.GainSd, 1),
        }
        : null;

    private int RowEnd(int row) => Part.Planned!.StitchesBefore(row + 1);

    private int RunEnd(int row, int runs) =>
        Math.Min(RowEnd(row), Part.Planned!.StitchesBefore(row) + Runs.Take(runs).Sum(run => run.Units));

    private static DriftTrack? Track(MakingPart part, DriftModel hands) => part.Planned is { } planned
        ? DriftTrack.Begin(planned, hands.On(planned, HandsPrior.Default.Dye))
        : null;

    private static DriftModel Hands(Plan plan, OwnYarn? own)
    {
        var hands = HandsPrior.For(plan.Project.Fabric.Hands);
        var model = new DriftModel(Math.Max(hands.Spread, 0.0001), hands.Memory) { GainSpread = WordsSpread };
        return own is null
            ? model with { BiasSpread = 0.02 / Math.Sqrt(3) }
            : model with { Bias = Math.Clamp(own.Bias, -0.5, 0.5), BiasSpread = Math.Min(0.5, own.BiasSd) };
    }
}
