using System.Collections.Immutable;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Measuring;

/// <summary>
/// The least-squares design of a block of so many repeats, whitened: it depends on how many repeats there are and not on what was counted
/// in them, so all blocks of one length share it.
/// </summary>
internal sealed class BlockDesign
{
    private readonly Cholesky _factor;
    private readonly double[] _offset;
    private readonly double _offsetSquare;
    private readonly double[][] _columns;
    private readonly double[] _normal;

    public BlockDesign(CountCovariance covariance, int sections, int repeats, Effort? effort)
    {
        var size = repeats * sections + 1;
        effort?.Spend((long)size * size * size / 60);
        _factor = Cholesky.Factor(covariance.Matrix(repeats), size);
        _offset = new double[size];
        Array.Fill(_offset, 1);
        _factor.SolveLower(_offset);
        _offsetSquare = Cholesky.Dot(_offset, _offset);
        _columns = new double[sections][];
        _normal = new double[sections * sections];
        for (var a = 0; a < sections; a++)
        {
            effort?.Spend((long)size * size / 20);
            _columns[a] = Whitened(n => (n - 1) % sections == a ? 1 : 0);
            for (var b = 0; b <= a; b++)
                _normal[a * sections + b] = Cholesky.Dot(_columns[a], _columns[b]);
        }
    }

    /// <summary>Logarithm of the determinant of a block's covariance once its unknown beginning is taken out.</summary>
    public double LogDeterminant => _factor.LogDeterminant + Math.Log(_offsetSquare);

    /// <summary>Adds what one block says to the normal equations (the lower half) and their right-hand side.</summary>
    /// <returns>The block's own sum of squares.</returns>
    public double Add(ImmutableArray<int>[] block, double[] normal, double[] right, Effort? effort)
    {
        var sections = _columns.Length;
        effort?.Spend((long)_factor.Size * (_factor.Size + 2 * sections) / 10);
        var counts = Whitened(n => block[(n - 1) / sections][(n - 1) % sections]);
        for (var a = 0; a < sections; a++)
        {
            right[a] += Cholesky.Dot(_columns[a], counts);
            for (var b = 0; b <= a; b++)
                normal[a * sections + b] += _normal[a * sections + b];
        }
        return Cholesky.Dot(counts, counts);
    }

    /// <summary>Running totals of the steps, whitened, and rid of the block's unknown beginning.</summary>
    private double[] Whitened(Func<int, double> step)
    {
        var column = new double[_factor.Size];
        for (var n = 1; n < column.Length; n++)
            column[n] = column[n - 1] + step(n);
        _factor.SolveLower(column);
        var share = Cholesky.Dot(column, _offset) / _offsetSquare;
        for (var n = 0; n < column.Length; n++)
            column[n] -= share * _offset[n];
        return column;
    }
}
