using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Edgings;

/// <summary>Size of an edging's single crochet, and so how many lie flat along stitches and along row ends.</summary>
/// <param name="StitchWidth">Of a single crochet of the edging.</param>
/// <param name="RowHeight">Of a row of single crochet of the edging.</param>
/// <param name="IsMeasured">From a swatch of its own, or else from the fabric's.</param>
public readonly record struct EdgingGauge(Length StitchWidth, Length RowHeight, bool IsMeasured)
{
    /// <summary>
    /// Width of an edging's stitch over the fabric's, where nothing was measured. Edgings are worked firmer than the fabric; 0.85 is what
    /// the trade's own numbers imply (1 a row in single crochet, 3 in 2 rows in half double, 2 a row in double, against row heights of
    /// 0.9, 1.3 and 1.65 stitch widths; common practice). In linen stitch it is taken of one stitch, not of the pair: a single crochet
    /// and a chain lie side by side, each as wide as a single crochet of the same hook.
    /// </summary>
    public const double UsualWidth = 0.85;

    /// <param name="gauge">The fabric's, in the state that the garment is sized by.</param>
    /// <param name="usualHeight">Height of a single crochet row of this yarn, where none was measured.</param>
    public static EdgingGauge For(FabricChoice fabric, Gauge gauge, Length usualHeight)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        ArgumentNullException.ThrowIfNull(gauge);
        return fabric.Edging is { } own
            ? new EdgingGauge(own.StitchWidth, own.RowHeight, true)
            : new EdgingGauge(gauge.StitchWidth * UsualWidth, usualHeight, false);
    }

    /// <summary>
    /// Stitches that a stitch of the fabric takes so that the edge lies flat. Where the edging was not measured it is one, as the trade
    /// picks up; a measured one gives as many in a centimetre as <see cref="AlongRowEnds"/>.
    /// </summary>
    public double AlongStitches(Length stitchWidth) => IsMeasured ? stitchWidth / StitchWidth : 1;

    /// <summary>Stitches that a row end takes so that the edge lies flat: row height over the width of an edging stitch.</summary>
    public double AlongRowEnds(Length rowHeight) => rowHeight / StitchWidth;

    /// <summary>Both, for a fabric.</summary>
    public FlatRatios Flat(Gauge fabric)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        return new FlatRatios(AlongStitches(fabric.StitchWidth), AlongRowEnds(fabric.RowHeight));
    }
}

/// <summary>Stitches that a place of the edge takes so that it lies flat.</summary>
/// <param name="Stitches">Along stitches.</param>
/// <param name="RowEnds">Along row ends.</param>
public readonly record struct FlatRatios(double Stitches, double RowEnds)
{
    /// <summary>Stitches that a place takes, by what the edge runs along.</summary>
    public double Along(bool rowEnds) => rowEnds ? RowEnds : Stitches;
}
