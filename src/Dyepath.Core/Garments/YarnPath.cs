using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Garments;

/// <summary>
/// A steady piece continued beyond its edges: the place along the yarn of any stitch of any row, and of those that would
/// stand there if the fabric went on. Stitches are counted from an edge, so that alternating counts need no columns.
/// </summary>
/// <param name="Units">Pooling units of a row: one number, or two that alternate; halves in linen stitch; in micro-units.</param>
/// <param name="Turn">Yarn of a turn or join in micro-units.</param>
/// <param name="Start">Place of the first stitch in micro-units.</param>
public sealed record YarnPath(bool Turned, ImmutableArray<long> Units, long Turn, long Start)
{
    /// <exception cref="ArgumentException">No row count, or more than two.</exception>
    public static YarnPath Of(Working working, IReadOnlyList<int> rowStitches, int stitchesPerUnit, double turnCost, double start)
    {
        ArgumentNullException.ThrowIfNull(rowStitches);
        if (rowStitches.Count is not (1 or 2))
            throw new ArgumentException("A steady piece has one count or two that alternate.", nameof(rowStitches));
        return new YarnPath(
            working is Working.Turned or Working.RoundsTurned,
            [.. rowStitches.Select(n => n * (ColourRing.Unit / stitchesPerUnit))],
            working == Working.Spiral ? 0 : ColourRing.ToMicro(turnCost),
            ColourRing.ToMicro(start));
    }

    /// <summary>Yarn of a row without its turn.</summary>
    public long UnitsIn(int row) => Units[(int)Foundation.FloorMod(row, Units.Length)];

    /// <summary>Where a row begins; rows before the first are allowed.</summary>
    public long RowStart(int row)
    {
        if (Units.Length == 1)
            return Start + row * (Units[0] + Turn);
        var pairs = (row - (row & 1)) / 2;
        return Start + pairs * (Units[0] + Units[1] + 2 * Turn) + (row & 1) * (Units[0] + Turn);
    }

    /// <summary>Yarn from the first stitch to the last stitch's end, the turns between rows included, none after the last.</summary>
    public long Yarn(int rows) => RowStart(rows) - Turn - Start;

    public bool RunsBackwards(int row) => Turned && Foundation.FloorMod(row, 2) == 1;

    /// <summary>Place of the stitch <paramref name="index"/> units (in micro-units) from the right-hand edge; negative beyond it.</summary>
    public long FromRight(int row, long index) =>
        RunsBackwards(row) ? RowStart(row) + UnitsIn(row) - ColourRing.Unit - index : RowStart(row) + index;

    /// <summary>Place of the stitch <paramref name="index"/> units (in micro-units) from the left-hand edge; negative beyond it.</summary>
    public long FromLeft(int row, long index) => FromRight(row, UnitsIn(row) - ColourRing.Unit - index);
}
