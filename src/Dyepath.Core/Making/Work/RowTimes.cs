using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Pricing;

namespace Dyepath.Core.Making.Work;

/// <summary>How long the rows of pieces took, by the times of a making log.</summary>
public static class RowTimes
{
    /// <summary>
    /// One a row that was finished after something else was: the first row of a sitting has the time since the last one in it. What was
    /// taken back is left out, and edgings, whose stitches differ, are too.
    /// </summary>
    public static ImmutableArray<RowTime> Of(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var states = new Stack<MakingState>();
        for (var at = state; at is not null; at = at.Before)
            states.Push(at);
        var rows = ImmutableArray.CreateBuilder<RowTime>();
        DateTimeOffset? began = null;
        var before = states.Pop();
        foreach (var after in states)
        {
            var entry = after.Last!;
            if (before.PartIndex == after.PartIndex && after.Here.Step == before.Here.Step + 1
                && entry.Kind is EntryKind.Row or EntryKind.Run or EntryKind.Step)
            {
                if (began is { } from && before.Row is { } row && Work(state.Order.Plan, before.Part, row.Row) is { } work)
                    rows.Add(new RowTime(work, entry.At - from));
                began = entry.At;
            }
            else if (entry.Kind is EntryKind.At or EntryKind.Part)
                began = entry.At;
            before = after;
        }
        return rows.ToImmutable();
    }

    /// <summary>In single crochet of equal time; missing where the part is no piece.</summary>
    private static double? Work(Plan plan, MakingPart part, int row)
    {
        if (part.Piece is not { } piece)
            return null;
        var turns = piece.Working != Working.Spiral;
        if (piece.Taper is { } taper)
            return Workload.OfRow(taper.At(row), FabricStitch.SingleCrochet, turns);
        var path = part.Fabric?.Path ?? PieceFabric.PathOf(plan, piece);
        return Workload.OfRow(path.RowStitches[row], plan.Project.Fabric.Stitch, turns);
    }
}
