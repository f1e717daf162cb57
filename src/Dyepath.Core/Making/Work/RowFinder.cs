using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Work;

/// <summary>A row that begins as the maker's does.</summary>
/// <param name="Row">From 0.</param>
/// <param name="Off">Stitches by which the runs that she gave differ, together; 0 where none does.</param>
public readonly record struct RowMatchFound(int Row, int Off);

/// <summary>Finds the rows that begin with given runs: a lost place found by looking at the work.</summary>
public static class RowFinder
{
    /// <summary>Most runs that can be looked for.</summary>
    public const int MostRuns = 40;

    /// <summary>
    /// Rows whose first runs have these colours in this order and these counts, or where no row has, counts that are at most a stitch
    /// off each; the nearest counts first, then the first rows.
    /// </summary>
    /// <param name="begins">In the order of work, 1 to 40; sections of equal colour are one.</param>
    /// <param name="lastIsOpen">The last run may go on: it is at least so long.</param>
    public static ImmutableArray<RowMatchFound> Find(Fabric fabric, ImmutableArray<ColourRun> begins, bool lastIsOpen = false)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        Guard.InRange(begins.Length, 1, MostRuns, "runs", nameof(begins));
        var near = ImmutableArray.CreateBuilder<RowMatchFound>();
        for (var row = 0; row < fabric.Rows; row++)
        {
            if (Off(fabric, RowRuns.Of(fabric, row), begins, lastIsOpen) is { } off)
                near.Add(new RowMatchFound(row, off));
        }
        var best = near.Any(match => match.Off == 0) ? near.Where(match => match.Off == 0) : near;
        return [.. best.OrderBy(match => match.Off).ThenBy(match => match.Row)];
    }

    private static int? Off(Fabric fabric, ImmutableArray<ColourRun> row, ImmutableArray<ColourRun> begins, bool lastIsOpen)
    {
        if (row.Length < begins.Length)
            return null;
        var together = 0;
        for (var i = 0; i < begins.Length; i++)
        {
            var more = row[i].Units - begins[i].Units;
            var off = lastIsOpen && i == begins.Length - 1 ? Math.Max(0, -more) : Math.Abs(more);
            if (off > 1 || fabric.Ring.Colours[row[i].Section] != fabric.Ring.Colours[begins[i].Section])
                return null;
            together += off;
        }
        return together;
    }
}
