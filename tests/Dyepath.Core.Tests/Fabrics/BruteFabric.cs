using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Tests.Fabrics;

/// <summary>
/// A fabric worked the slow way, micro-unit interval by micro-unit interval, from the definition alone. Shares no code
/// with the fabric it checks.
/// </summary>
internal sealed class BruteFabric(long[] sections, int[] colours)
{
    public const long Unit = 1_000_000;

    private readonly long _total = sections.Sum();
    private readonly Dictionary<(long, long), (int, bool)> _shown = [];

    /// <summary>The grid of whole-unit stitches, constant or changing N, columns from the right.</summary>
    public (int Section, bool Two)[][] Work(Working working, int[] stitches, long turn, long start, int[]? firstColumns = null)
    {
        var rows = new (int, bool)[stitches.Length][];
        var at = start;
        for (var r = 0; r < rows.Length; r++)
        {
            var o = firstColumns?[r] ?? 0;
            rows[r] = new (int, bool)[stitches[r]];
            for (var c = o; c < o + stitches[r]; c++)
            {
                var backwards = r % 2 == 1 && (working is Working.Turned or Working.RoundsTurned);
                var y = backwards ? at + (stitches[r] - 1 - (c - o)) * Unit : at + (c - o) * Unit;
                rows[r][c - o] = Show(y, Unit);
            }
            at += stitches[r] * Unit + turn;
        }
        return rows;
    }

    public (int Section, bool Two) Show(long from, long length)
    {
        var within = ((from % _total) + _total) % _total;
        if (!_shown.TryGetValue((within, length), out var shown))
            _shown.Add((within, length), shown = Cover(within, length));
        return shown;
    }

    private (int Section, bool Two) Cover(long from, long length)
    {
        var cover = new long[sections.Length];
        var met = new List<int>();
        for (var start = 0L; start < from + length; start += _total)
        {
            var begin = start;
            for (var s = 0; s < sections.Length; s++)
            {
                var over = Math.Min(begin + sections[s], from + length) - Math.Max(begin, from);
                if (over > 0)
                {
                    cover[s] += over;
                    met.Add(s);
                }
                begin += sections[s];
            }
        }
        var byColour = met.Select(s => colours[s]).Distinct()
            .ToDictionary(k => k, k => Enumerable.Range(0, sections.Length).Where(s => colours[s] == k).Sum(s => cover[s]));
        var most = byColour.Values.Max();
        var colour = colours[met.First(s => byColour[colours[s]] == most)];
        var mine = met.Where(s => colours[s] == colour).ToList();
        var best = mine.Max(s => cover[s]);
        return (mine.First(s => cover[s] == best), most * 4 < 3 * length);
    }
}
