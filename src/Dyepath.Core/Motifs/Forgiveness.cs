using Dyepath.Core.Quantities;

namespace Dyepath.Core.Motifs;

/// <summary>
/// How far the yarn per stitch may change, the whole piece through, before the motif becomes another: relative changes, so
/// that yarn per stitch λ(1 + ε) keeps the motif for every ε between them. A turn is taken to change with the stitches.
/// </summary>
/// <param name="Tighter">Negative, −1 at least.</param>
/// <param name="Looser">Positive, <see cref="MotifWindow.MostLooser"/> at most.</param>
public readonly record struct Forgiveness(double Tighter, double Looser)
{
    /// <summary>The smaller of the two, as a magnitude.</summary>
    public double Least => Math.Min(-Tighter, Looser);

    /// <summary>
    /// The lean that a changed yarn per stitch leaves, not wrapped: lean + (N + τ − lean)·ε/(1 + ε), since the period becomes
    /// P/(1 + ε) while the row stays. Derived in docs/mathematics.md.
    /// </summary>
    /// <param name="rowUnits">N + τ, the mean where counts alternate, in units.</param>
    /// <param name="lean">Units per row.</param>
    /// <param name="change">ε over −1, positive for looser.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or a change of −1 or less.</exception>
    public static double LeanAfter(double rowUnits, double lean, double change)
    {
        Guard.InRange(rowUnits, 0, 1e6, "units");
        Guard.InRange(lean, -1e6, 1e6, "units per row");
        Guard.InRange(change, -1 + 1e-9, 1e6, "of the yarn per stitch");
        return lean + (rowUnits - lean) * change / (1 + change);
    }
}
