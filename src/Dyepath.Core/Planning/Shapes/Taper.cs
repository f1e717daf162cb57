using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>
/// A plain triangle of single crochet, worked from its bottom up: the first row is as wide as it is, the last one a stitch, and every row
/// between lies on the straight line from the one to the other to half a stitch (docs/mathematics.md).
/// </summary>
/// <param name="Stitches">Of the first row.</param>
/// <param name="Rows">Two or more.</param>
/// <param name="Slope">The left or the right side of the piece as worn, along which rows decrease.</param>
public sealed record Taper(int Stitches, int Rows, PieceSide Slope)
{
    /// <summary>A row leaves out at most so many: more stitches worked together pull the edge into steps.</summary>
    public const int MostInRow = 2;

    /// <summary>Whether the rows reach a single stitch without a row that leaves out more than <see cref="MostInRow"/>.</summary>
    public static bool Serves(int stitches, int rows) => stitches > 1 && rows > 2 && stitches - 1 <= MostInRow * (rows - 1);

    /// <summary>Stitches of a row: those of the line, halves rounded up.</summary>
    /// <param name="row">From 0.</param>
    public int At(int row)
    {
        Guard.InRange(row, 0, Rows - 1, "rows");
        var (all, left) = (Rows - 1, Rows - 1 - row);
        return 1 + (2 * (Stitches - 1) * left + all) / (2 * all);
    }

    /// <summary>Stitches that a row leaves out of the row below.</summary>
    /// <inheritdoc cref="At"/>
    public int Decreases(int row) => row == 0 ? 0 : At(row - 1) - At(row);

    /// <summary>Whether a row decreases where it ends, the outside of odd-numbered rows facing; else it does where it begins.</summary>
    /// <inheritdoc cref="At"/>
    public bool IsAtEnd(int row) => (row % 2 == 0) == (Slope == PieceSide.Left);
}
