using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>What the page says, to be read or to be heard.</summary>
public static class BesideWords
{
    /// <summary>Said when a row, run or step comes up.</summary>
    public static string Spoken(BesideView view, MakingState state, bool byRuns)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(state);
        if (state.IsPartDone)
            return view.Where(state);
        if (state.Row is not { } row)
            return $"{view.StepName(state.Part, state.Here.Step)}. {view.Say(state.Step!.Text)}";
        var notes = string.Concat(row.Notes.Select(note => $" {view.Say(note)}"));
        if (state.Runs.IsEmpty)
            return $"{view.Say(row.Label)}.{notes}";
        // What she was just told; in mid-row what was said at its beginning is not said again.
        var told = state.Drift is { } drift && drift.Given == drift.Worked ? Told(view, state) : "";
        if (byRuns)
            return state.Here.Run == 0
                ? $"{view.Say(row.Label)}.{notes}{told} {RowWords.Say([state.Runs[0]], view.Names)}"
                : $"{told} {RowWords.Say([state.Runs[state.Here.Run]], view.Names)}".TrimStart();
        if (state.Here.Run > 0 && told.Length > 0)
            return told.TrimStart();
        return $"{view.Say(row.Label)}.{notes}{told} {RowWords.Say(state.Runs.Take(3), view.Names)}. Ends {RowWords.Say(state.Runs.TakeLast(1), view.Names)}.";
    }

    private static string Told(BesideView view, MakingState state)
    {
        string?[] said =
        [
            AdviceWords.Say(state, view.Names), ShouldRead(view, state), Lapsed(state), Noted(view, state),
            LookAgain(view, state) is { } look ? $"{look}." : null,
        ];
        return string.Concat(said.Where(s => s is not null).Select(s => $" {s}"));
    }

    /// <summary>Where a second look pays; missing where it does not.</summary>
    public static string? LookAgain(BesideView view, MakingState state)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(state);
        return AdviceWords.Look(state) is { } run
            ? $"Look again where this {view.Names[state.Runs[run].Section]} begins, after {state.Runs.Take(run).Sum(r => r.Units)} {view.Unit.Many}" : null;
    }

    /// <summary>What the first row to be worked anew should read; missing where none is to be ripped.</summary>
    public static string? ShouldRead(BesideView view, MakingState state)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(state);
        return AdviceWords.RipTo(state) is { } row ? $"{RowName(state, row)} should read: {Runs(RowRuns.Of(state.Part.Fabric!, row), view)}." : null;
    }

    /// <summary>That rows which she was advised to rip are kept, since she went on; missing where that is not so.</summary>
    public static string? Lapsed(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Drift?.Lapsed is { } row && AdviceWords.RipTo(state) is null
            ? $"You worked on, so {RowName(state, row).ToLowerInvariant()} stays as it is." : null;
    }

    /// <summary>What she told last, where the row itself does not show it.</summary>
    public static string? Noted(BesideView view, MakingState state)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(state);
        return state.Here.Stopped > 0 ? Stopped(view, state) : state.Last?.Kind switch
        {
            EntryKind.Ball => "The new ball is noted; the colours are taken to go on where they were.",
            EntryKind.Knot => $"The knot is noted: the colours may lie anywhere now. Look at the {state.Part.RowWord}'s end.",
            EntryKind.Join => "Cut and joined is noted; the colours are taken to lie as planned here.",
            EntryKind.Hook => $"The {(state.Last.To < 0 ? "smaller" : "larger")} hook is noted.",
            _ => null,
        };
    }

    private static string Stopped(BesideView view, MakingState state)
    {
        var (stopped, left) = (state.Here.Stopped, state.Here.Stopped);
        var (one, many) = view.Unit;
        var after = $"You stopped after {stopped} {(stopped == 1 ? one : many)} of this {state.Part.RowWord}";
        foreach (var run in state.Runs)
        {
            if (left < run.Units)
                return left == 0 ? $"{after}: {view.Names[run.Section]} begins." : $"{after}: {left} of the {run.Units} of {view.Names[run.Section]} are worked.";
            left -= run.Units;
        }
        return $"{after}.";
    }

    /// <summary>Rows of this sitting, and whether the hands should rest; missing before the first row.</summary>
    public static string? Sat(Sitting sitting, string row)
    {
        ArgumentNullException.ThrowIfNull(sitting);
        if (sitting.Rows == 0)
            return null;
        var rows = $"This sitting: {sitting.Rows} {row}{(sitting.Rows == 1 ? "" : "s")}";
        var held = sitting.Known == 0 ? "" : sitting.Known < sitting.Rows
            ? $"; of the {sitting.Known} whose colours you looked after, {sitting.Held} {(sitting.Held == 1 ? "is" : "are")} in their colours"
            : sitting.Rows == 1 ? sitting.Held == 1 ? ", in its colours" : ", not in its colours"
            : $", {sitting.Held} of them in {(sitting.Held == 1 ? "its" : "their")} colours";
        return $"{rows}{held}.";
    }

    /// <summary>That the last tap is kept nowhere, why, and what to do.</summary>
    /// <param name="why">A sentence.</param>
    /// <param name="counts">The tap is shown, and tried again.</param>
    public static string NotKept(string why, bool counts) => counts
        ? $"Your last tap stands on this page alone. {why} Leave the page open: it is tried again with your next tap."
        : $"Your last tap was not counted. {why}";

    /// <summary>Such as <c>a touch tighter</c>.</summary>
    public static string Grade(GradeStrip strip, bool looser)
    {
        ArgumentNullException.ThrowIfNull(strip);
        return TensionGrades.Say(looser ? strip.Level : -strip.Level)!;
    }

    /// <summary>What a grade comes to on a strip of her own yarn.</summary>
    public static string Strip(GradeStrip strip, BesideView view, bool looser)
    {
        ArgumentNullException.ThrowIfNull(strip);
        ArgumentNullException.ThrowIfNull(view);
        var (colour, word) = (view.Names[strip.Section], Grade(strip, looser));
        var sequence = strip.Sequence == 1 ? "the first sequence" : $"sequence {strip.Sequence}";
        return $"“{Core.Booklets.Wording.Capital(word)}”: on a strip worked so from its first stitch, {colour} in {sequence} ends one {view.Unit.One} {(looser ? "sooner" : "later")} than by your natural hands.";
    }

    /// <summary>Such as <c>40 minutes</c>.</summary>
    public static string Minutes(TimeSpan time) => time.TotalMinutes < 60 ? $"{time.TotalMinutes:0} minutes"
        : time.TotalMinutes < 90 ? "an hour" : $"{Math.Round(time.TotalHours):0} hours";

    private static string RowName(MakingState state, int row) => $"{(state.Part.InRounds ? "Round" : "Row")} {row + 1}";

    /// <summary>How far colours are off, as it is known.</summary>
    public static string Drift(DriftTrack drift, (string One, string Many) unit)
    {
        ArgumentNullException.ThrowIfNull(drift);
        var phase = drift.Filter.Off;
        if (DriftFilter.Sd95 * drift.Filter.PhaseSd >= drift.Filter.Model.Period / 2)
            return "Where the colours lie is not known before you look.";
        var give = Halves(DriftFilter.Sd95 * drift.Filter.PhaseSd);
        var off = Halves(Math.Abs(phase));
        // Not what she saw last, which stands above it.
        var where = off == 0 ? "By now colours should be on the count" : $"By now colours should come about {Amount(off, unit)} {(phase > 0 ? "early" : "late")}";
        return give == 0 ? $"{where}." : $"{where}, give or take {Amount(give, unit)}.";
    }

    /// <summary>What the hands do when they are left alone.</summary>
    public static string Hands(DriftTrack drift, double sequence)
    {
        ArgumentNullException.ThrowIfNull(drift);
        var filter = drift.Filter;
        if (Math.Abs(filter.BiasMean) < filter.BiasSd)
            return "Whether your hands work looser or tighter than the pattern by themselves cannot be told yet: what is asked above is for these colours only.";
        // In a maker's measure: after how many sequences colours are a stitch off.
        var sequences = Math.Max(1, Math.Round(1 / (Math.Abs(filter.BiasMean) * sequence)));
        return $"Over all your rows, your natural hands work {(filter.BiasMean > 0 ? "looser" : "tighter")} than the pattern, by a stitch in {sequences:0} {(sequences == 1 ? "sequence" : "sequences")}; what is asked above counts with that.";
    }

    /// <summary>The count and the colour that a row ends with, such as <c>4 sand</c>.</summary>
    public static string End(RowEnd end, BesideView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return $"{end.Count} {view.Names[end.Colour]}";
    }

    /// <summary>Counts and colours one after another.</summary>
    public static string Runs(IEnumerable<ColourRun> runs, BesideView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return RowWords.Say(runs, view.Names);
    }

    private static double Halves(double stitches) => Math.Round(stitches * 2, MidpointRounding.AwayFromZero) / 2;

    private static string Amount(double halves, (string One, string Many) unit) => halves switch
    {
        0.5 => $"half a {unit.One}",
        1 => $"one {unit.One}",
        _ when halves == Math.Floor(halves) => $"{halves:0} {unit.Many}",
        _ => $"{Math.Floor(halves):0}½ {unit.Many}",
    };
}
