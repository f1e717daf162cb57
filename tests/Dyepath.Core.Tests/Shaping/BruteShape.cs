using Dyepath.Core.Shaping;
using Dyepath.Core.Tests.Fabrics;

namespace Dyepath.Core.Tests.Shaping;

/// <summary>Rows worked one after another without a cut: the first stitch's place, and the first and last column of each row.</summary>
internal sealed record BrutePart(int FirstRow, bool FromLeft, long Start, (int First, int Last)[] Rows);

/// <summary>
/// Shaped rows walked stitch by stitch from the definition: a row takes its stitches, then the turn its yarn; slip stitches back over the
/// row just worked take theirs. Shares no code with the shaping that it checks.
/// </summary>
internal sealed class BruteShape(int[] ring, long turn, long slip = 0)
{
    public const long Unit = BruteFabric.Unit;

    private readonly BruteFabric _shown = new([.. ring.Select(n => n * Unit)], [.. Enumerable.Range(0, ring.Length)]);

    /// <summary>The colour at each row and column.</summary>
    public Dictionary<(int Row, int Column), int> Walk(params BrutePart[] parts)
    {
        var cells = new Dictionary<(int, int), int>();
        foreach (var part in parts)
            Work(part, cells);
        return cells;
    }

    /// <summary>Where the yarn is after a part's last turn.</summary>
    public long EndOf(BrutePart part) => Work(part, []);

    private long Work(BrutePart part, Dictionary<(int, int), int> cells)
    {
        var at = part.Start;
        var fromLeft = part.FromLeft;
        for (var i = 0; i < part.Rows.Length; i++)
        {
            var (first, last) = part.Rows[i];
            if (i > 0)
                at += slip * Math.Max(fromLeft ? part.Rows[i - 1].Last - last : first - part.Rows[i - 1].First, 0);
            for (var n = 0; n <= last - first; n++)
            {
                cells.Add((part.FirstRow + i, fromLeft ? last - n : first + n), _shown.Show(at, Unit).Section);
                at += Unit;
            }
            at += turn;
            fromLeft = !fromLeft;
        }
        return at;
    }

    /// <summary>
    /// The panel of so many rows that is never shaped, with columns beyond it on both sides as if its rows went on there.
    /// </summary>
    public Func<int, int, int> Uncut(int units, long start = 0) => (row, column) =>
    {
        // Row pairs of one length: even rows run leftwards from the pair's beginning, odd ones back from its middle.
        var pair = start + row / 2 * 2 * (units * Unit + turn);
        return _shown.Show(row % 2 == 0 ? pair + column * Unit : pair + units * Unit + turn + (units - 1 - column) * Unit, Unit).Section;
    };

    public static BrutePart Whole(Outline outline, long start = 0) => new(0, false, start, Columns(outline));

    public static (int First, int Last)[] Columns(Outline outline) =>
        [.. Enumerable.Range(0, outline.Rows).Select(r => (outline.At(r).First, outline.At(r).Last))];
}
