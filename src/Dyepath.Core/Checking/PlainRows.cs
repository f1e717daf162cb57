using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Checking;

/// <summary>A piece followed along the yarn from row to row, in pooling units; beyond its edges and rows as if it went on.</summary>
internal sealed class PlainRows
{
    private readonly PiecePlan _piece;
    private readonly int _perUnit;
    private readonly List<double> _begins;

    public PlainRows(PiecePlan piece, int perUnit)
    {
        (_piece, _perUnit, _begins) = (piece, perUnit, [piece.Start]);
        for (var row = 0; row <= piece.Rows; row++)
            _begins.Add(_begins[row] + Width(row) + piece.TurnCost);
    }

    public int Rows => _piece.Rows;

    public double Width(int row)
    {
        var kinds = _piece.RowStitches.Length;
        return (double)_piece.RowStitches[((row % kinds) + kinds) % kinds] / _perUnit;
    }

    /// <summary>Where the unit begins that lies so many units in from an edge; negative beyond it.</summary>
    public double At(int row, bool right, double inwards)
    {
        var fromRight = right ? inwards : Width(row) - 1 - inwards;
        // The row before the first would have run back to where that begins.
        var begin = row < 0 ? _begins[0] - Width(row) - _piece.TurnCost : _begins[row];
        return RunsBack(row) ? begin + Width(row) - 1 - fromRight : begin + fromRight;
    }

    private bool RunsBack(int row) => _piece.Working is Working.Turned or Working.RoundsTurned && row % 2 != 0;
}
