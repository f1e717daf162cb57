namespace Dyepath.Core.Motifs;

/// <summary>Where one motif ends and the next begins. Every threshold is of what is seen, in centimetres on the fabric.</summary>
public sealed record MotifOptions
{
    /// <summary>
    /// Standard deviation of the Gaussian blur that stands for looking from a distance, in stitch widths, 1.5 to 20; the same
    /// distance on the fabric counts upwards.
    /// </summary>
    public double BlurStitches { get; init; } = 2.5;

    /// <summary>Columns: lines that drift over the whole piece by less than this share of the visible period, 0 to 0.5.</summary>
    public double ColumnsDrift { get; init; } = 0.25;

    /// <summary>Argyle: diamonds at most this many times as tall as wide (a round's slant: rise over run), 1 to 100.</summary>
    public double TallestArgyle { get; init; } = 2;

    /// <summary>Argyle: diamonds at least this many times as tall as wide, 0.01 to 1.</summary>
    public double FlattestArgyle { get; init; } = 0.5;

    /// <summary>
    /// Scattered: so flat that the blur up the fabric leaves less than this share of a column's contrast, 1e-6 to 0.5. At
    /// 0.01, 2.5 stitches and a gauge of 14 by 16, a line must take 6 rows or more to come back to its column.
    /// </summary>
    public double ScatteredBelow { get; init; } = 0.01;

    /// <summary>How far repeats of one colour stretch may differ and still be one, in units, 0 to 1,000.</summary>
    public double PeriodTolerance { get; init; }

    /// <summary>
    /// β: how far unturned rounds travel sideways by themselves, in units a round, positive as a positive lean, −5 to 5.
    /// Measured by the maker; single crochet rounds are known to travel (common practice).
    /// </summary>
    public double SidewaysTravel { get; init; }
}
