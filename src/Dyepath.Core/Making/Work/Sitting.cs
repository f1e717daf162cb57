using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;

namespace Dyepath.Core.Making.Work;

/// <summary>What came of this sitting, by the times of the log: taps less than an hour apart are of one.</summary>
/// <param name="Rows">Rows finished in it and not ripped or taken back.</param>
/// <param name="Held">Of those whose colours are known of, the ones that are believed to have kept three quarters of them.</param>
/// <param name="Known">Rows whose colours are known of, since she has looked at some end of a row.</param>
/// <param name="Hands">How long the hands have worked without a <see cref="Rest"/>, at the last tap.</param>
public sealed record Sitting(int Rows, int Held, int Known, TimeSpan Hands)
{
    /// <summary>A longer time without a tap ends a sitting.</summary>
    public static readonly TimeSpan Apart = TimeSpan.FromHours(1);

    /// <summary>A pause that rests the hands. A row takes less, as a rule; common practice, no source.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMinutes(15);

    /// <summary>Hands are to rest after so long: the booklet's caution, every 30 to 60 minutes.</summary>
    public static readonly TimeSpan Enough = TimeSpan.FromMinutes(30);

    /// <summary>The hands have earned a rest.</summary>
    public bool IsEnough => Hands >= Enough;

    /// <summary>The sitting that the last entry belongs to.</summary>
    public static Sitting Of(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Last is not { At: var last })
            return new Sitting(0, 0, 0, TimeSpan.Zero);
        var rows = new Dictionary<(int Part, int Row), bool?>();
        DateTimeOffset began = last, worked = last;
        var resting = false;
        for (var at = state; at is { Last: { } entry, Before: { } before }; at = before)
        {
            if (began - entry.At >= Apart)
                break;
            resting |= began - entry.At >= Rest;
            began = entry.At;
            if (!resting)
                worked = entry.At;
            if (before.PartIndex == at.PartIndex && before.Row is { } row && at.Here.Step == before.Here.Step + 1
                && row.Row < Ahead(state, at.PartIndex))
                rows.TryAdd((at.PartIndex, row.Row), Kept(before, at, row.Row));
        }
        return new Sitting(rows.Count, rows.Values.Count(kept => kept == true), rows.Values.Count(kept => kept is not null), last - worked);
    }

    /// <summary>The row that a part has come to: what lies from there on was ripped.</summary>
    private static int Ahead(MakingState state, int part) =>
        state.Order.Parts[part].Steps.Skip(state.Progress[part].Step).OfType<RowStep>().FirstOrDefault()?.Row ?? int.MaxValue;

    private static bool? Kept(MakingState begun, MakingState ended, int row) =>
        begun is { Part.Planned: { } planned, Drift.Filter: { } from } && ended.AtRow(row) is { Drift.Filter: var first }
            && ended.Drift is { Advice: not null, Filter: var to }
            ? RowMatch.Share(planned, row, (first ?? from).PhaseMean, to.PhaseMean) >= DriftForecast.KeptShare : null;
}
