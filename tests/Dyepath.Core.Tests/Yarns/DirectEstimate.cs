using System.Collections.Immutable;
using Dyepath.Core.Measuring;
using MathNet.Numerics.LinearAlgebra;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>
/// The same least squares written down once more: the unknown beginning as a column of its own, the wander summed
/// stitch by stitch, the algebra by a numerics library.
/// </summary>
internal static class DirectEstimate
{
    public static (Vector<double> Sections, Matrix<double> Covariance) Solve(
        ImmutableArray<ImmutableArray<int>> repeats,
        IReadOnlyList<double> sections,
        HandsPrior hands,
        double sequenceError,
        bool correlatedRounding)
    {
        var count = sections.Count;
        var size = repeats.Length * count + 1;
        var at = new double[size];
        var dye = new double[size];
        var total = Vector<double>.Build.Dense(size);
        var design = Matrix<double>.Build.Dense(size, count + 1);
        design[0, 0] = 1;
        for (var n = 1; n < size; n++)
        {
            var j = (n - 1) % count;
            at[n] = at[n - 1] + sections[j];
            dye[n] = dye[n - 1] + Math.Pow(sections[j] * hands.Dye, 2);
            total[n] = total[n - 1] + repeats[(n - 1) / count][j];
            design.SetRow(n, design.Row(n - 1));
            design[n, j + 1]++;
        }
        var covariance = Matrix<double>.Build.Dense(size, size, (a, b) =>
        {
            var value = (Wander(at[a], hands) + Wander(at[b], hands) - Wander(Math.Abs(at[a] - at[b]), hands)) / 2
                + dye[Math.Min(a, b)];
            if (a == b)
                return value + 1.0 / 12 + 1e-6;
            if (!correlatedRounding || (a - b) % count != 0)
                return value;
            var apart = Math.Abs(at[a] - at[b]);
            var blur = Wander(apart, hands) + Math.Abs(dye[a] - dye[b]) + Math.Pow((a - b) / count * sequenceError, 2);
            return value + Enumerable.Range(1, 100).Sum(h => Math.Cos(2 * Math.PI * h * apart)
                * Math.Exp(-2 * Math.Pow(Math.PI * h, 2) * blur) / (2 * Math.Pow(Math.PI * h, 2)));
        });
        var weights = covariance.Inverse();
        var inverse = (design.Transpose() * weights * design).Inverse();
        var solution = inverse * design.Transpose() * weights * total;
        return (solution.SubVector(1, count), inverse.SubMatrix(1, count, 1, count));
    }

    private static double Wander(double stitches, HandsPrior hands)
    {
        var rho = Math.Exp(-1 / hands.Memory);
        return hands.Spread * hands.Spread
            * (stitches * (1 + rho) / (1 - rho) - 2 * rho * (1 - Math.Pow(rho, stitches)) / Math.Pow(1 - rho, 2));
    }
}
