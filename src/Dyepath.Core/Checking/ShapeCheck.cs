using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>
/// A shaped piece walked row by row: that every row can be worked where it stands, that the yarn lies where the plan says, and that
/// the motif breaks where the plan says, and nowhere else.
/// </summary>
internal static class ShapeCheck
{
    /// <summary>Stitches from the rightmost column of all rows to the leftmost.</summary>
    public static int Width(PiecePlan piece)
    {
        var (first, last) = (int.MaxValue, int.MinValue);
        foreach (var part in piece.Shape!.Parts)
        {
            for (var row = 0; row < part.Rows; row++)
                (first, last) = (Math.Min(first, part.Outline.At(row).First), Math.Max(last, part.Outline.At(row).Last));
        }
        return last - first + 1;
    }

    public static void Shape(Plan plan, PiecePlan piece, PlainFabric fabric, Disagreements notes)
    {
        var (ring, turn) = (plan.Sequence.Ring, ColourRing.ToMicro(piece.TurnCost));
        var period = fabric.Period is { } units ? ColourRing.ToMicro(units) : 1;
        var taken = new Dictionary<(int Row, int Column), long>();
        long place = 0;
        var (top, off) = (0, false);
        foreach (var part in piece.Shape!.Parts)
        {
            var at = notes.At(PartNames.Of(part));
            (int First, int Last)? below = part.Below is { } index ? Last(piece.Shape.Parts[index]) : null;
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                var run = part.Outline.At(row - part.FirstRow);
                var forwards = row % 2 == 0;
                if (row > part.FirstRow || part.Continues)
                    place += turn;
                else
                    // Its own place in a piece that is never cut: so many rows below it, and so many stitches before it.
                    place = ColourRing.ToMicro(piece.Start) + row * (piece.Stitches * ColourRing.Unit + turn)
                        + (forwards ? run.First : piece.Stitches - 1 - run.Last) * ColourRing.Unit;
                if (below is { } before)
                    Stands(before, (run.First, run.Last), forwards, row == part.FirstRow && !part.Continues, row, at);
                var apart = false;
                for (var order = 0; order < run.Units; order++, place += ColourRing.Unit)
                {
                    var column = forwards ? run.First + order : run.Last - order;
                    if (!taken.TryAdd((row, column), place))
                        at.Say($"row {row + 1}", $"Stitch {column + 1} is worked twice.");
                    var uncut = ColourRing.ToMicro(piece.Start) + row * (piece.Stitches * ColourRing.Unit + turn)
                        + (forwards ? column : piece.Stitches - 1 - column) * ColourRing.Unit;
                    apart |= (place - uncut) % period != 0;
                    var planned = part.Path.SpanAt(row - part.FirstRow, column).From;
                    // A turning chain that counts begins its stitch a turn earlier.
                    var chain = order == 0 && plan.Project.Fabric.ChainCountsAsStitch ? turn : 0;
                    if ((planned + chain - place) % ring.Total != 0)
                    {
                        at.Say($"row {row + 1}", FormattableString.Invariant(
                            $"Stitch {column + 1} lies {ColourRing.ToUnits((planned + chain - place) % ring.Total):0.##} stitches of yarn off where a walk along the rows comes to."));
                        return;
                    }
                }
                if (apart && piece.Shape.Bias == 0
                    && !piece.Shape.Breaks.Any(b => b.Part == part.Index && b.Row <= row || b.Part == part.Below && part.Continues))
                    at.Say($"row {row + 1}", "The motif is broken here, and the plan does not say so.");
                if (piece.Shape.Bias > 0
                    && (run.First, run.Last) != ((row + 1) / 2 * piece.Shape.Bias, piece.Stitches - 1 + row / 2 * piece.Shape.Bias))
                    at.Say($"row {row + 1}", $"It does not lie {piece.Shape.Bias} stitches further on than the row two below.");
                off |= apart;
                below = (run.First, run.Last);
            }
            top = Math.Max(top, part.FirstRow + part.Rows);
        }
        notes.Same("rows", piece.Rows, top);
        if (plan.Construction.GroupOf(piece.Id).Gores is not null)
            Strips(piece, taken, period, notes);
        if (!off && !piece.Shape.Breaks.IsEmpty)
            notes.Say("breaks", "The plan says that the motif is broken, and it is nowhere.");
    }

    /// <summary>
    /// Every stitch of a gored piece that is worked into one that waited: how many rows are missing below it, and how far its colours lie
    /// off those that would follow there.
    /// </summary>
    private static void Strips(PiecePlan piece, Dictionary<(int Row, int Column), long> taken, long period, Disagreements notes)
    {
        var twoRows = 2 * (piece.Stitches * ColourRing.Unit + ColourRing.ToMicro(piece.TurnCost));
        var told = 0;
        foreach (var ((row, column), place) in taken)
        {
            if (row == 0 || taken.ContainsKey((row - 1, column)))
                continue;
            var below = row - 1;
            while (below > 0 && !taken.ContainsKey((below, column)))
                below--;
            if (!taken.TryGetValue((below - 1, column), out var before))
            {
                notes.Say($"row {row + 1}", $"Nothing waits below stitch {column + 1}.");
                continue;
            }
            var strip = piece.Shape!.Strips.FirstOrDefault(s => s.Row == row && column <= s.Column && column > s.Column - s.Units);
            var jump = place - before - twoRows;
            if (strip is null || strip.Skipped != row - below - 1 || (jump - (long)Math.Round(strip.Jump * ColourRing.Unit)) % period != 0)
                notes.Say($"row {row + 1}", $"The colours jump at stitch {column + 1}, otherwise than the plan says.");
            told++;
        }
        notes.Same("gores, stitches that wait", piece.Shape!.Strips.Sum(s => s.Units), told);
    }

    private static (int First, int Last) Last(ShapedPart part) =>
        part.Outline.At(part.Rows - 1) is var run ? (run.First, run.Last) : default;

    /// <summary>A row begins where the one below ended, or where yarn is joined on to it, and meets it.</summary>
    private static void Stands(
        (int First, int Last) below, (int First, int Last) row, bool forwards, bool joined, int number, Disagreements notes)
    {
        var (begin, edge) = forwards ? (row.First, below.First) : (row.Last, below.Last);
        if (joined ? begin < below.First || begin > below.Last : begin != edge)
            notes.Say($"row {number + 1}", $"It begins at stitch {begin + 1}, and the row below ended at stitch {edge + 1}.");
        if (row.First > below.Last || row.Last < below.First)
            notes.Say($"row {number + 1}", "It stands on no stitch of the row below.");
    }
}
