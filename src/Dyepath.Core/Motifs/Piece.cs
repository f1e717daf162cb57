using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>What reading a motif needs of a piece with steady rows.</summary>
/// <param name="Advance">Yarn from one row to the next worked the same way.</param>
/// <param name="Rows">Rows of the piece.</param>
/// <param name="RowYarn">Yarn of the shortest row, in micro-units.</param>
/// <param name="Mirror">
/// Twice the sum of the yarn positions of column 0 in the first row and, taken back to it, in the backward rows, in micro-units.
/// </param>
internal readonly record struct Piece(RowAdvance Advance, int Rows, long RowYarn, long Mirror)
{
    /// <summary>Needs the path's first two rows only; <paramref name="rows"/> says how many the piece has.</summary>
    public static Piece Of(FabricPath path, RowAdvance advance, int rows)
    {
        var second = Math.Min(1, path.Rows - 1);
        var secondStart = path.RowStart(0) + path.RowYarn(0) + path.Turns[0];
        var forwards = path.RowStart(0) - path.FirstColumns[0] * ColourRing.Unit;
        var backwards = secondStart + path.RowYarn(second) - ColourRing.Unit + path.FirstColumns[second] * ColourRing.Unit;
        var shortest = path.RowStitches.Min() * (ColourRing.Unit / path.StitchesPerUnit);
        return new Piece(advance, rows, shortest, 2 * (forwards + backwards) - 2 * advance.Micro / advance.Rows);
    }
}
