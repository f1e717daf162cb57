namespace Dyepath.Core.Measuring;

/// <summary>The lower factor of a positive definite matrix, row by row.</summary>
internal sealed class Cholesky
{
    private readonly double[] _lower;

    private Cholesky(double[] lower, int size)
    {
        _lower = lower;
        Size = size;
    }

    public int Size { get; }

    /// <param name="matrix">Symmetric, row by row; only its lower half is read, and it is overwritten.</param>
    /// <exception cref="ArithmeticException">Not positive definite.</exception>
    public static Cholesky Factor(double[] matrix, int size)
    {
        for (var i = 0; i < size; i++)
        {
            var row = matrix.AsSpan(i * size, size);
            for (var j = 0; j <= i; j++)
            {
                var other = matrix.AsSpan(j * size, size);
                var sum = row[j];
                for (var k = 0; k < j; k++)
                    sum -= row[k] * other[k];
                if (j < i)
                    row[j] = sum / other[j];
                else if (sum > 0)
                    row[i] = Math.Sqrt(sum);
                else
                    throw new ArithmeticException("The matrix is not positive definite.");
            }
        }
        return new Cholesky(matrix, size);
    }

    /// <summary>Natural logarithm of the determinant of the factored matrix.</summary>
    public double LogDeterminant => Enumerable.Range(0, Size).Sum(i => 2 * Math.Log(_lower[i * Size + i]));

    /// <summary>Replaces b by L⁻¹b.</summary>
    public void SolveLower(Span<double> b)
    {
        for (var i = 0; i < Size; i++)
        {
            var row = _lower.AsSpan(i * Size, i);
            var sum = b[i];
            for (var k = 0; k < i; k++)
                sum -= row[k] * b[k];
            b[i] = sum / _lower[i * Size + i];
        }
    }

    /// <summary>Replaces b by (LLᵀ)⁻¹b.</summary>
    public void Solve(Span<double> b)
    {
        SolveLower(b);
        for (var i = Size - 1; i >= 0; i--)
        {
            b[i] /= _lower[i * Size + i];
            for (var k = 0; k < i; k++)
                b[k] -= _lower[i * Size + k] * b[i];
        }
    }

    /// <summary>The inverse of the factored matrix, row by row.</summary>
    public double[] Inverse()
    {
        var inverse = new double[Size * Size];
        for (var i = 0; i < Size; i++)
        {
            inverse[i * Size + i] = 1;
            Solve(inverse.AsSpan(i * Size, Size));
        }
        return inverse;
    }

    /// <summary>bᵀ(LLᵀ)⁻¹b.</summary>
    public double QuadraticForm(ReadOnlySpan<double> b)
    {
        var white = b.ToArray();
        SolveLower(white);
        return Dot(white, white);
    }

    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
