namespace Dyepath.Core.Measuring;

/// <summary>Quantiles of a sample.</summary>
internal static class Quantile
{
    /// <summary>
    /// Definition 7 of Hyndman and Fan, "Sample quantiles in statistical packages", The American Statistician 50, 1996:
    /// linear between the order statistics around (n − 1)p.
    /// </summary>
    /// <param name="ordered">Smallest first, at least one.</param>
    /// <param name="p">In [0, 1].</param>
    public static double Of(ReadOnlySpan<double> ordered, double p)
    {
        double place = (ordered.Length - 1) * p;
        int below = (int)place;
        return below + 1 == ordered.Length
            ? ordered[below]
            : ordered[below] + (place - below) * (ordered[below + 1] - ordered[below]);
    }
}
