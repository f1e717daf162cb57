using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

/// <summary>
/// The rows of a shaped piece as the words make them, laid out column by column, against the plan's outline; and where its parts are joined
/// on, against the yarn of a piece that was never cut.
/// </summary>
internal static class ShapeComparison
{
    public static void Compare(Plan plan, PiecePlan planned, ReadPiece said, string place, List<(string Place, string Text)> notes)
    {
        if (planned.Shape is not { } shape)
        {
            notes.Add((place, "the text shapes a piece that is a rectangle in the plan"));
            return;
        }
        var rows = Lay(said);
        foreach (var part in shape.Parts)
        {
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                var run = part.Outline.At(row - part.FirstRow);
                if (!rows.TryGetValue((part.Index, row), out var made))
                    notes.Add((place, $"the text has no row {row + 1} of the {PartNames.Of(part)}"));
                else if (made != (run.First, run.Last))
                    notes.Add((place, $"row {row + 1} of the {PartNames.Of(part)} is worked over stitches {made.First + 1} to {made.Last + 1} in the text, {run.First + 1} to {run.Last + 1} in the plan"));
            }
        }
        if (rows.Count != shape.Parts.Sum(p => p.Rows))
            notes.Add((place, $"the text has {rows.Count} rows, the plan {shape.Parts.Sum(p => p.Rows)}"));
        Openings(plan, planned, said, rows, place, notes);
        foreach (var row in said.Shaped.Where(r => r.Part < shape.Parts.Length && !r.Repeats))
        {
            var at = row.Left > 0 || row.Chains > 0 || row.Standing > 0 ? LastStitch(plan, planned, row.Part, row.Row - 1) : null;
            if (row.Last != at)
                notes.Add((place, $"row {row.Row} ends at {row.Last ?? "no place"} in the text; its yarn comes to {at ?? "one that need not be said"} there"));
        }
        foreach (var join in said.Joined)
        {
            if (!rows.TryGetValue((join.Part, join.On), out var first))
                continue;
            var at = Place(plan, planned, join.On, join.RightSide ? first.First : first.Last);
            if (join.First != at)
                notes.Add((place, $"a part is joined on above row {join.On} at {join.First} in the text; an uncut piece has {at} there"));
        }
    }

    /// <summary>
    /// Every row that stops short or goes on says of which opening: worked up, of the one in the middle where it parts the piece, and of
    /// the one at the end where it stands at the outside; worked sideways, of the one in the middle between full rows, and of the one at
    /// the end before the first or after the last of them; of a gored piece, that it shapes a gore.
    /// </summary>
    private static void Openings(
        Plan plan, PiecePlan planned, ReadPiece said, Dictionary<(int Part, int Row), (int First, int Last)> rows, string place,
        List<(string Place, string Text)> notes)
    {
        if (plan.Construction.GroupOf(planned.Id).Gores is not null)
        {
            foreach (var row in said.Shaped.Where(r => r.Here != (r.Left > 0 ? "This shapes a gore." : "")))
                notes.Add((place, $"row {row.Row} {(row.Left > 0 ? "stops short for a gore" : "does not stop short")}, and says “{row.Here}”"));
            return;
        }
        var designs = plan.Construction.GroupOf(planned.Id).Openings.Where(o => o.Cut is not null).ToArray();
        if (designs.Count(o => o.At == OpeningAt.Middle) != 1 || designs.Count(o => o.At == OpeningAt.End) != 1)
            return;
        var (middle, end) = (PlaceNames.Of(designs.First(o => o.At == OpeningAt.Middle).Id),
            PlaceNames.Of(designs.First(o => o.At == OpeningAt.End).Id));
        var full = rows.Count == 0 ? 0 : rows.Values.Max(r => r.Last);
        // Rows that reach the shoulder, of a piece worked sideways.
        var reach = rows.Where(r => r.Value.Last == full).Select(r => r.Key.Row + 1).ToArray();
        foreach (var row in said.Shaped)
        {
            if (row is { Left: 0, Chains: 0 })
            {
                if (row.Here.Length > 0)
                    notes.Add((place, $"row {row.Row} is not shaped, and says “{row.Here}”"));
                continue;
            }
            var opening = plan.Direction == Direction.Sideways
                ? reach.Any(r => r < row.Row) && reach.Any(r => r > row.Row || (row.Chains > 0 && r == row.Row)) ? middle : end
                : row.Part > 0 && Inner(row) ? middle : end;
            if (!row.Here.Contains($"the {opening} ", StringComparison.Ordinal) && !row.Here.EndsWith($"the {opening}.", StringComparison.Ordinal))
                notes.Add((place, $"row {row.Row} is shaped for the {opening}, and says “{row.Here}”"));
            else if (row.Here.StartsWith("Here", StringComparison.Ordinal) && row.Here.Contains($"the {opening} begins", StringComparison.Ordinal) != row.Left > 0)
                notes.Add((place, $"row {row.Row} begins or ends otherwise than it says: “{row.Here}”"));
        }
        foreach (var join in said.Joined.Where(j => j.Over > 0 && j.Here != (j.Beside is null ? j.Here : middle)))
            notes.Add((place, $"what is left above row {join.On} is the {middle}, and the text says “{join.Here}”"));

        // Of two sides on one row, the end that looks at the other.
        bool Inner(ReadRow row)
        {
            var (first, last) = rows[(row.Part, row.Row - 1)];
            var others = rows.Where(r => r.Key.Row == row.Row - 1 && r.Key.Part > 0 && r.Key.Part != row.Part).Select(r => r.Value)
                .ToArray();
            return others.Length > 0 && (row.Row % 2 == 1 ? others.Any(o => o.First > last) : others.Any(o => o.Last < first));
        }
    }

    /// <summary>First and last column of every row, counted from the right-hand edge of the first row; odd rows run from there.</summary>
    private static Dictionary<(int Part, int Row), (int First, int Last)> Lay(ReadPiece said)
    {
        var rows = new Dictionary<(int, int), (int First, int Last)>();
        (int First, int Last) before = (0, -1);
        foreach (var row in said.Shaped)
        {
            var forwards = row.Row % 2 == 1;
            if (rows.Count == 0)
                before = (0, row.Stitches - 1);
            else if (said.Joined.FirstOrDefault(j => j.Part == row.Part && j.On + 1 == row.Row) is { } join)
                before = From(rows, join, forwards);
            before = forwards
                ? (before.First, before.Last - row.Left + row.Chains + row.Standing)
                : (before.First + row.Left - row.Chains - row.Standing, before.Last);
            rows[(row.Part, row.Row - 1)] = before;
        }
        return rows;
    }

    /// <summary>The stretch of the row below on which a part may stand.</summary>
    private static (int First, int Last) From(Dictionary<(int Part, int Row), (int First, int Last)> rows, ReadJoin join, bool forwards)
    {
        (int First, int Last) below = rows.Where(r => r.Key.Row == join.On - 1 && r.Key.Part < join.Part).Select(r => r.Value)
            .LastOrDefault((First: 0, Last: -1));
        var sides = rows.Where(r => r.Key.Row == join.On && r.Key.Part < join.Part && join.Beside is not null).Select(r => r.Value)
            .ToArray();
        return forwards
            ? (sides.Select(s => s.Last + 1).Append(below.First).Max() + join.Over, below.Last)
            : (below.First, sides.Select(s => s.First - 1).Append(below.Last).Min() - join.Over);
    }

    /// <summary>The colour and stitch at which a row ends, followed from where its yarn was last joined.</summary>
    private static string? LastStitch(Plan plan, PiecePlan piece, int index, int row)
    {
        var parts = piece.Shape!.Parts;
        var first = index;
        while (parts[first].Continues)
            first--;
        var turn = ColourRing.ToMicro(piece.TurnCost);
        var (begin, joined) = (parts[first].FirstRow, parts[first].Outline.At(0));
        var at = ColourRing.ToMicro(piece.Start) + begin * (piece.Stitches * ColourRing.Unit + turn)
            + (begin % 2 == 0 ? joined.First : piece.Stitches - 1 - joined.Last) * ColourRing.Unit;
        for (var one = first; one <= index; one++)
        {
            for (var done = parts[one].FirstRow; done <= Math.Min(row, parts[one].FirstRow + parts[one].Rows - 1); done++)
                at += parts[one].Outline.At(done - parts[one].FirstRow).Units * ColourRing.Unit + turn;
        }
        // Back over the turn and half of the stitch.
        return Said(plan, at - turn - ColourRing.Unit / 2 - 1);
    }

    /// <summary>The colour and stitch that a piece without cuts has at a column, followed row by row.</summary>
    private static string Place(Plan plan, PiecePlan piece, int row, int column)
    {
        var at = ColourRing.ToMicro(piece.Start);
        for (var before = 0; before < row; before++)
            at += piece.Stitches * ColourRing.Unit + ColourRing.ToMicro(piece.TurnCost);
        return Said(plan, at + (row % 2 == 0 ? column : piece.Stitches - 1 - column) * ColourRing.Unit);
    }

    private static string Said(Plan plan, long at)
    {
        var ring = plan.Sequence.Ring;
        at = (at % ring.Total + ring.Total) % ring.Total;
        var section = 0;
        while (at >= ring.Sections[section])
            at -= ring.Sections[section++];
        return FormattableString.Invariant($"{plan.Sequence.Colours[section].Symbol}{at / ColourRing.Unit + 1}");
    }
}
