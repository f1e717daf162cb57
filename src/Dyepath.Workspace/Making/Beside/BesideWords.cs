using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Drift;
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
        if (byRuns)
            return state.Here.Run == 0
                ? $"{view.Say(row.Label)}.{notes} {RowWords.Say([state.Runs[0]], view.Names)}"
                : RowWords.Say([state.Runs[state.Here.Run]], view.Names);
        return $"{view.Say(row.Label)}.{notes} {RowWords.Say(state.Runs.Take(3), view.Names)}. Ends {RowWords.Say(state.Runs.TakeLast(1), view.Names)}.";
    }

    /// <summary>How far colours are off, as it is known.</summary>
    public static string Drift(DriftTrack drift, (string One, string Many) unit)
    {
        ArgumentNullException.ThrowIfNull(drift);
        var phase = drift.Filter.Off;
        var give = Halves(DriftFilter.Sd95 * drift.Filter.PhaseSd);
        var off = Halves(Math.Abs(phase));
        var where = off == 0 ? "Colours are on the count" : $"Colours come about {Amount(off, unit)} {(phase > 0 ? "early" : "late")}";
        return give == 0 ? $"{where}." : $"{where}, give or take {Amount(give, unit)}.";
    }

    /// <summary>What the hands do when they are left alone.</summary>
    public static string Hands(DriftTrack drift, double sequence)
    {
        ArgumentNullException.ThrowIfNull(drift);
        var filter = drift.Filter;
        if (Math.Abs(filter.BiasMean) < filter.BiasSd)
            return "Your hands keep the pattern's tension, as far as can be told.";
        // In a maker's measure: after how many sequences colours are a stitch off.
        var sequences = Math.Max(1, Math.Round(1 / (Math.Abs(filter.BiasMean) * sequence)));
        return $"Left alone, your hands work {(filter.BiasMean > 0 ? "looser" : "tighter")} than the pattern: a stitch in {sequences:0} {(sequences == 1 ? "sequence" : "sequences")}.";
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
