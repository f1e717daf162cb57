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
}
