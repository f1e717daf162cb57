using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>Works a piece by many makers of one world under one policy. The same seed gives every policy the same makers.</summary>
public static class MakerSimulation
{
    /// <param name="piece">What is made.</param>
    /// <param name="world">Who makes it.</param>
    /// <param name="policy">How they check and correct.</param>
    /// <param name="makers">In [2, 100,000].</param>
    /// <param name="seed">Trials draw the same hands as <see cref="TensionSimulation"/>'s of the same seed.</param>
    public static MakerFigures Run(PlannedPiece piece, MakerWorld world, MakerPolicy policy, int makers, ulong seed = 1)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(world);
        ArgumentNullException.ThrowIfNull(policy);
        Guard.InRange(makers, 2, 100_000, "makers");
        double[] shares = new double[makers], ripped = new double[makers], recounts = new double[makers], covered = new double[makers];
        for (int maker = 0; maker < makers; maker++)
        {
            var trial = new MakerTrial(piece, world, policy, seed, maker);
            trial.Work();
            shares[maker] = (double)trial.Right / piece.Stitches;
            (ripped[maker], recounts[maker]) = (trial.RipBacks, trial.Recounts);
            covered[maker] = trial.Coverage;
        }
        bool advised = policy.Steering == Steering.Advice && policy.Check != CheckHabit.Never;
        return new MakerFigures(
            Figure.Median(shares), Figure.Mean(ripped), advised ? Figure.Mean(covered) : null, Figure.Mean(recounts), shares);
    }
}
