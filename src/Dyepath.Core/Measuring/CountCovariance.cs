namespace Dyepath.Core.Measuring;

/// <summary>
/// Covariance of the cumulative boundaries counted along one run of repeats: the hands' wander, the dye's, the
/// rounding to whole stitches, and where the eye ends a colour (docs/mathematics.md, "Measuring").
/// </summary>
internal sealed class CountCovariance
{
    /// <summary>Terms of the rounding series; the rest is under 1/(200π²) = 0.0005 stitches squared.</summary>
    private const int RoundingTerms = 100;

    /// <summary>
    /// Keeps the matrix positive definite where steady hands and a whole sequence repeat their rounding exactly; the square
    /// of a thousandth of a stitch.
    /// </summary>
    private const double Nugget = 1e-6;

    private readonly double[] _sections;
    private readonly double[] _dyeVariance;
    private readonly SectionDoubt _doubt;
    private readonly HandsPrior _hands;
    private readonly double _sequence;
    private readonly double _sequenceError;

    /// <param name="sections">Stitches of each section.</param>
    /// <param name="sequenceError">Standard error of their sum, since the rounding's correlation depends on it.</param>
    public CountCovariance(ReadOnlySpan<double> sections, SectionDoubt doubt, HandsPrior hands, double sequenceError)
    {
        _sections = sections.ToArray();
        _dyeVariance = new double[sections.Length];
        for (var j = 0; j < sections.Length; j++)
            _dyeVariance[j] = sections[j] * sections[j] * doubt.Dye[j] * doubt.Dye[j];
        _doubt = doubt;
        _hands = hands;
        _sequence = _sections.Sum();
        _sequenceError = sequenceError;
    }

    /// <summary>The matrix for boundaries 0 … repeats × sections, row by row.</summary>
    public double[] Matrix(int repeats)
    {
        var sections = _sections.Length;
        var size = repeats * sections + 1;
        var positions = new double[size];
        var dye = new double[size];
        for (var n = 1; n < size; n++)
        {
            positions[n] = positions[n - 1] + _sections[(n - 1) % sections];
            dye[n] = dye[n - 1] + _dyeVariance[(n - 1) % sections];
        }
        var rounding = Enumerable.Range(0, repeats + 1).Select(Rounding).ToArray();
        var wander = positions.Select(_hands.WanderVariance).ToArray();
        var matrix = new double[size * size];
        for (var a = 0; a < size; a++)
        {
            for (var b = 0; b <= a; b++)
            {
                var walk = (wander[a] + wander[b] - _hands.WanderVariance(positions[a] - positions[b])) / 2 + dye[b];
                if ((a - b) % sections == 0)
                    walk += rounding[(a - b) / sections];
                if (a == b)
                    walk += Nugget + _doubt.Boundary[(a + sections - 1) % sections];
                matrix[a * size + b] = matrix[b * size + a] = walk;
            }
        }
        return matrix;
    }

    /// <summary>
    /// Covariance of the rounding of one section's boundary in two repeats so far apart. The rounding error is the sawtooth of
    /// the boundary's place within a stitch; its Fourier series, averaged over a normal difference, gives the sum. Boundaries of
    /// different sections are left uncorrelated: what relates them is the fraction of a stitch that a section
    /// takes, which is just what the counts do not show.
    /// </summary>
    public double Rounding(int repeatsApart)
    {
        if (repeatsApart == 0)
            return 1.0 / 12;
        var apart = repeatsApart * _sequence;
        var blur = _hands.WanderVariance(apart) + repeatsApart * _dyeVariance.Sum()
            + (double)repeatsApart * repeatsApart * _sequenceError * _sequenceError;
        var sum = 0.0;
        for (var h = 1; h <= RoundingTerms; h++)
        {
            var damping = Math.Exp(-2 * Math.PI * Math.PI * h * h * blur);
            if (damping < 1e-12)
                break;
            sum += Math.Cos(2 * Math.PI * h * apart) * damping / (2 * Math.PI * Math.PI * h * h);
        }
        return sum;
    }
}
