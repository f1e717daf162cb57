using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Measuring;

/// <summary>What was done to a fabric before it was measured.</summary>
public enum GaugeState
{
    /// <summary>As it comes off the hook.</summary>
    Worked,

    /// <summary>Washed and dried.</summary>
    Blocked,

    /// <summary>After hanging.</summary>
    Hung,
}

/// <summary>The states of a swatch's gauge, which of them gives the size, and how the fabric changes between them.</summary>
public static class SwatchGauges
{
    /// <summary>The last state that was measured: a garment is worn hung, else washed.</summary>
    public static GaugeState StateForSize(this Swatch swatch)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        return swatch.Hung is not null ? GaugeState.Hung : swatch.Blocked is not null ? GaugeState.Blocked : GaugeState.Worked;
    }

    /// <summary>The gauge that finished measurements follow from: hung, else blocked, else as worked.</summary>
    public static Gauge ForSize(this Swatch swatch)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        return swatch.Hung ?? swatch.Blocked ?? swatch.Worked;
    }

    /// <summary>The gauge of a garment that hangs the other way than its swatch did: blocked, else as worked.</summary>
    public static Gauge BeforeHanging(this Swatch swatch)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        return swatch.Blocked ?? swatch.Worked;
    }

    /// <summary>Finished width over the width on the hook, for the same stitches.</summary>
    public static double WidthChange(this Swatch swatch) => swatch.ForSize().StitchWidth / swatch.Worked.StitchWidth;

    /// <summary>Finished height over the height on the hook, for the same rows.</summary>
    public static double HeightChange(this Swatch swatch) => swatch.ForSize().RowHeight / swatch.Worked.RowHeight;

    /// <summary>Width of one stitch in centimetres, with the error of reading its count.</summary>
    public static Estimate StitchWidthCentimetres(this Gauge gauge, MeasuringErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        return PerCount(gauge.StitchWidth, gauge.Stitches, errors);
    }

    /// <summary>Height of one row in centimetres, with the error of reading its count.</summary>
    public static Estimate RowHeightCentimetres(this Gauge gauge, MeasuringErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        return PerCount(gauge.RowHeight, gauge.Rows, errors);
    }

    private static Estimate PerCount(Length one, double count, MeasuringErrors? errors) => new(
        one.Centimetres,
        one.Centimetres * MeasuringErrors.Uniform((errors ?? MeasuringErrors.Default).GaugeReading) / count);
}
