using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Making.Work;

/// <summary>The page's advice: one sentence, and the places of the row that it speaks of.</summary>
public static class AdviceWords
{
    /// <summary>Missing where nothing is advised: before the first look, and in one colour.</summary>
    /// <param name="names">By section.</param>
    public static string? Say(MakingState state, ImmutableArray<string> names)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state is not { Drift: { Advice: { } advice } drift, HasRowAhead: true }) return null;
        var pairs = state.Part.Fabric!.Path.StitchesPerUnit == 2;
        var at = drift.Piece.RowOf(drift.Given);
        return DriftWords.Say(advice, new DriftTerms(
            drift.Answered is { } seen ? (seen.Section is { } section ? names[section] : null, seen.Phase) : null,
            pairs ? "pair" : "stitch", pairs ? "pairs" : "stitches", state.Part.RowWord, drift.Piece.RowStitches[at],
            state.Order.Plan.Sequence.YarnPerUnit.Centimetres)
        {
            Was = drift.Was,
            MidRow = drift.Given > drift.Piece.StitchesBefore(at),
        });
    }

    /// <summary>The run of the row at hand, from 0, up to which the advised stretch goes; missing where it goes to none.</summary>
    public static int? Mark(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Drift is { Advice: { Kind: DriftAdviceKind.Correct, ToRowEnd: false } advice } drift
            ? RunAt(state, drift.Given + advice.Stitches) : null;
    }

    /// <summary>The run, from 0, at whose beginning a second look pays; missing where none does, or she is past it.</summary>
    public static int? Look(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Drift is { Advice: { LookAfter: { } after, Kind: not DriftAdviceKind.RipBack } } drift
            && RunAt(state, drift.Given + after) is { } run && run > state.Here.Run ? run : null;
    }

    /// <summary>The row, from 0, to whose beginning she is advised to rip back, while that stands; missing where none is.</summary>
    public static int? RipTo(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Drift?.Advice is { Kind: DriftAdviceKind.RipBack, RipTo: { } row } ? row : null;
    }

    private static int? RunAt(MakingState state, int worked)
    {
        if (state.Row is not { } row) return null;
        var begins = state.Drift!.Piece.StitchesBefore(row.Row);
        for (var run = 0; run < state.Runs.Length; run++)
        {
            if (begins == worked) return run;
            begins += state.Runs[run].Units;
        }
        return null;
    }
}
