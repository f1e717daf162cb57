using System.Collections.Immutable;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Measuring;

/// <summary>The normal equations of counted blocks; those of independent blocks add up.</summary>
/// <param name="Normal">Row by row, the lower half.</param>
/// <param name="Squares">Of the whitened counts.</param>
/// <param name="Observations">Counts that they come from.</param>
/// <param name="LogDeterminant">Of the blocks' covariances, the unknown beginnings taken out.</param>
internal sealed record NormalSums(double[] Normal, double[] Right, double Squares, int Observations, int Repeats, double LogDeterminant)
{
    public static NormalSums operator +(NormalSums a, NormalSums b) => new(
        [.. a.Normal.Zip(b.Normal, (x, y) => x + y)], [.. a.Right.Zip(b.Right, (x, y) => x + y)], a.Squares + b.Squares,
        a.Observations + b.Observations, a.Repeats + b.Repeats, a.LogDeterminant + b.LogDeterminant);

    /// <param name="designs">By the repeats of a block; filled as they are needed.</param>
    public static NormalSums Of(
        ImmutableArray<int>[][] blocks, int sections, CountCovariance covariance, Dictionary<int, BlockDesign> designs, Effort? effort)
    {
        var normal = new double[sections * sections];
        var right = new double[sections];
        double squares = 0, determinant = 0;
        foreach (var block in blocks)
        {
            if (!designs.TryGetValue(block.Length, out var design))
                designs.Add(block.Length, design = new BlockDesign(covariance, sections, block.Length, effort));
            squares += design.Add(block, normal, right, effort);
            determinant += design.LogDeterminant;
        }
        var repeats = blocks.Sum(block => block.Length);
        return new NormalSums(normal, right, squares, repeats * sections, repeats, determinant);
    }

    /// <summary>Restricted log likelihood of the counts, up to a constant: how well the covariance explains what they leave over.</summary>
    public double LogLikelihood()
    {
        var solution = (double[])Right.Clone();
        var inverse = Cholesky.Factor((double[])Normal.Clone(), Right.Length);
        inverse.Solve(solution);
        return -(LogDeterminant + inverse.LogDeterminant + Squares - Cholesky.Dot(solution, Right)) / 2;
    }

    public SequenceEstimate Solve(HandsPrior hands)
    {
        var solution = (double[])Right.Clone();
        var inverse = Cholesky.Factor((double[])Normal.Clone(), Right.Length);
        inverse.Solve(solution);
        return new SequenceEstimate(
            solution, inverse.Inverse(), Repeats, Math.Max(0, Squares - Cholesky.Dot(solution, Right)), Observations - Right.Length, hands);
    }
}
