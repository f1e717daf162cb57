using System.Collections.Immutable;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Workspace.Making.Beside;

namespace Dyepath.Workspace.Making.Handing;

/// <param name="Title">As the pattern heads the part.</param>
/// <param name="Worked">Rows finished.</param>
/// <param name="Rows">Rows that the part has.</param>
public sealed record PartWorked(string Title, int Worked, int Rows);

/// <summary>What a log says in a few figures. What was taken back is not counted.</summary>
/// <param name="Parts">Those with rows.</param>
/// <param name="Readings">How often she looked where the colours were.</param>
/// <param name="RipBacks">How often she went back to an earlier row.</param>
public sealed record LogSummary(ImmutableArray<PartWorked> Parts, int Readings, int RipBacks)
{
    /// <summary>Null where the piece cannot be laid out, with the reason.</summary>
    public static LogSummary? TryOf(MakingDocument making, out string why)
    {
        if (BesideView.TryOpen(making, out why) is not { } view)
            return null;
        var end = MakingState.Begin(view.Order, view.Own).Apply(making.Log);
        int readings = 0, ripBacks = 0;
        for (var state = end; state is { Before: { } before, Last: { } last }; state = before)
        {
            if (last.Phase is not null)
                readings++;
            if (last is { Kind: EntryKind.At, To: { } row } && (before.Row?.Row ?? before.Part.Rows) > row - 1)
                ripBacks++;
        }
        return new LogSummary(
        [
            .. view.Order.Parts.Zip(end.Progress).Where(p => p.First.Rows > 0)
                .Select(p => new PartWorked(
                    view.Say(p.First.Title), p.First.Steps.Take(p.Second.Step).OfType<RowStep>().Count(), p.First.Rows)),
        ], readings, ripBacks);
    }
}
