using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Swatches;

/// <summary>Stitches and rows over a measured length.</summary>
/// <param name="Stitches">Over <paramref name="Over"/>, quarters allowed; within <see cref="Counts"/> where it was measured.</param>
/// <param name="Rows">Over <paramref name="Over"/>, quarters allowed; within <see cref="Counts"/> where it was measured.</param>
/// <param name="Over">More than zero; usually 10 cm or 4 in.</param>
public sealed record Gauge(double Stitches, double Rows, Length Over)
{
    /// <summary>Of stitches and of rows.</summary>
    public static Bounds Counts { get; } = new(0.25, 400, "stitches or rows");

    /// <summary>Of one stitch.</summary>
    public Length StitchWidth => Over / Stitches;

    /// <summary>Of one row.</summary>
    public Length RowHeight => Over / Rows;
}
