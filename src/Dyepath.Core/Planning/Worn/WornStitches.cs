using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>
/// How every stitch of a piece lies as it is worn, and where within it the planned yarn changes colour; places as in
/// <see cref="WornPiece.Cells"/>.
/// </summary>
public sealed class WornStitches
{
    /// <summary>A whole stitch in the numbers of <see cref="Changes"/>.</summary>
    public const byte WholeStitch = byte.MaxValue;

    private readonly byte[] _forms;
    private readonly byte[] _others;
    private readonly byte[] _changes;

    private WornStitches(WornPiece worn)
    {
        _forms = new byte[worn.Cells.Length];
        _others = new byte[worn.Cells.Length];
        _changes = new byte[worn.Cells.Length];
        var turned = worn.Piece.Working is Working.Turned or Working.RoundsTurned;
        var changes = worn.Fabrics.IsEmpty ? [] : ColourChanges(worn.Fabrics[0].Fabric.Ring);
        for (var y = 0; y < worn.Rows; y++)
        {
            for (var x = 0; x < worn.Columns; x++)
            {
                var at = y * worn.Columns + x;
                var cell = worn.Cells[at];
                if (cell == WornPiece.Plain)
                    _forms[at] = (byte)Seen(worn.Piece, turned && (worn.At(x, y).Row & 1) == 1);
                else if (cell != WornPiece.Empty)
                    Read(worn, worn.At(x, y), at, changes);
            }
        }
    }

    /// <summary>A <see cref="StitchForm"/> of each stitch.</summary>
    public ReadOnlySpan<byte> Forms => _forms;

    /// <summary>The other section that each stitch's yarn shows, where its colour changes within it.</summary>
    public ReadOnlySpan<byte> Others => _others;

    /// <summary>
    /// Where along the stitch's yarn the colour changes, 1 to <see cref="WholeStitch"/>; 0 where it does not, or more than once.
    /// </summary>
    public ReadOnlySpan<byte> Changes => _changes;

    /// <summary>Reads a piece as planned; of one with other colours than planned only <see cref="Forms"/> are its own.</summary>
    public static WornStitches Of(WornPiece worn)
    {
        ArgumentNullException.ThrowIfNull(worn);
        return new WornStitches(worn);
    }

    private static StitchForm Seen(PiecePlan piece, bool backwards) => backwards == piece.WrongSideOut ? StitchForm.Front : StitchForm.Back;

    private void Read(WornPiece worn, (int Row, int Stitch) place, int at, (long Place, byte Before, byte After)[] changes)
    {
        var (unit, part) = worn.InRow(place.Row, place.Stitch);
        if (worn.FabricOf(place.Row, unit) is not var (firstRow, fabric, own))
            return;
        var (path, row) = (fabric.Path, place.Row - firstRow);
        var backwards = path.RunsBackwards(row);
        var form = Seen(worn.Piece, backwards);
        // The right-hand one of a pair is the single crochet, in rows of both ways.
        if (part == 1)
            form |= StitchForm.Chain;
        if (path.TurningChainCounts && own == (backwards ? path.Cells(row) - 1 : 0))
            form |= StitchForm.TurningChain;
        var span = path.SpanAt(row, path.FirstColumns[row] + own);
        if (ChangeIn(changes, fabric.Ring.Total, span) is var (share, before, after))
        {
            // Of a pair, the stitch that lies first the way it is worked takes the first half of its yarn.
            var parts = path.StitchesPerUnit;
            share = share * parts - (backwards ? parts - 1 - part : part);
            var shown = fabric.Ring.Colours[worn.Cells[at]];
            if (shown == fabric.Ring.Colours[before] ? share < 1 : shown == fabric.Ring.Colours[after] && share > 0)
            {
                var first = shown != fabric.Ring.Colours[before];
                form |= first ? StitchForm.OtherFirst : 0;
                _others[at] = first ? before : after;
                _changes[at] = (byte)Math.Clamp(Math.Round(share * WholeStitch), 1, WholeStitch);
            }
        }
        _forms[at] = (byte)form;
    }

    /// <summary>Where along the sequence its colour changes, in micro-units, and the sections before and after.</summary>
    private static (long Place, byte Before, byte After)[] ColourChanges(ColourRing ring)
    {
        var changes = new List<(long, byte, byte)>();
        var place = 0L;
        for (var section = 0; section < ring.Sections.Length; section++)
        {
            var before = (section + ring.Sections.Length - 1) % ring.Sections.Length;
            if (ring.Colours[before] != ring.Colours[section])
                changes.Add((place, (byte)before, (byte)section));
            place += ring.Sections[section];
        }
        return [.. changes];
    }

    /// <summary>The one change within a stretch, as a share of it; null for none and for several.</summary>
    private static (double Share, byte Before, byte After)? ChangeIn(
        (long Place, byte Before, byte After)[] changes, long total, YarnSpan span)
    {
        (double, byte, byte)? found = null;
        var from = ColourRing.Modulo(span.From, total);
        foreach (var (place, before, after) in changes)
        {
            var distance = place > from ? place - from : place - from + total;
            if (distance >= span.Length)
                continue;
            if (found is not null || distance + total < span.Length)
                return null;
            found = ((double)distance / span.Length, before, after);
        }
        return found;
    }
}
