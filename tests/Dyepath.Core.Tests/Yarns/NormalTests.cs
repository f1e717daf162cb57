using CsCheck;
using Dyepath.Core.Measuring;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using Normal = Dyepath.Core.Measuring.Normal;

namespace Dyepath.Core.Tests.Yarns;

public class NormalTests
{
    [Fact]
    public void Probabilities_and_quantiles_agree_with_a_numerics_library()
    {
        for (var x = -7.5; x <= 7.5; x += 0.25)
            Assert.Equal(MathNet.Numerics.Distributions.Normal.CDF(0, 1, x), Normal.Below(x), 1e-14);
        foreach (var p in (double[])[0.5, 0.9, 0.95, 0.975, 0.995, 0.99995])
            Assert.Equal(MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, p), Normal.Quantile(p), 1e-9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(20)]
    [InlineData(300)]
    public void Chi_square_tails_are_right_within_a_tenth_around_one_per_cent(int degrees)
    {
        foreach (var p in (double[])[0.05, 0.01, 0.002])
        {
            var x = ChiSquared.InvCDF(degrees, 1 - p);
            Assert.InRange(Normal.ChiSquareAbove(x, degrees) / p, 0.9, 1.1);
        }
    }

    [Fact]
    public void Factored_systems_agree_with_a_numerics_library() =>
        Gen.Select(Gen.Int[1, 9], Gen.Double[-1, 1].Array[90]).Holds(
            (size, values) =>
            {
                var root = Matrix<double>.Build.Dense(size, size, values[..(size * size)]);
                var matrix = root * root.Transpose() + Matrix<double>.Build.DenseIdentity(size) * 0.1;
                var right = Vector<double>.Build.Dense(size, i => values[81 + i]);
                var factor = Cholesky.Factor(matrix.ToRowMajorArray(), size);
                var solution = right.ToArray();
                factor.Solve(solution);

                var expected = matrix.Solve(right);
                for (var i = 0; i < size; i++)
                    Assert.Equal(expected[i], solution[i], 1e-9);
                Assert.Equal(right * expected, factor.QuadraticForm(right.ToArray()), 1e-9);
                Assert.True((Matrix<double>.Build.Dense(size, size, factor.Inverse()) - matrix.Inverse()).L2Norm() < 1e-8);
            },
            seed: 59, cases: 200);

    [Fact]
    public void A_matrix_that_is_not_positive_definite_is_refused() =>
        Assert.Throws<ArithmeticException>(() => Cholesky.Factor([1, 2, 2, 1], 2));

    [Fact]
    public void Intervals_follow_the_confidence_asked()
    {
        var (low, high) = new Estimate(22, 0.1).Interval();

        Assert.Equal(21.804, low, 3);
        Assert.Equal(22.196, high, 3);
        Assert.Equal(0.95, new Estimate(22, 0.1).ProbabilityWithin(low, high), 9);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(22, 0.1).Interval(1));
    }
}
