using Dyepath.Core.Quantities;

namespace Dyepath.Core.Swatches;

/// <summary>Stitches and rows over a measured length.</summary>
/// <param name="Stitches">Over <paramref name="Over"/>, quarters allowed; over 0, at most 400.</param>
/// <param name="Rows">Over <paramref name="Over"/>, quarters allowed; over 0, at most 400.</param>
public sealed record Gauge(double Stitches, double Rows, Length Over)
{
    public Length StitchWidth => Over / Stitches;

    public Length RowHeight => Over / Rows;
}
