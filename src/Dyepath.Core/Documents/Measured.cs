using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Documents;

/// <summary>The quantities of the document with their units and ranges.</summary>
internal static class Measured
{
    private static readonly QuantityUnit Centimetre = new("cm", 1, 1e-7m, true);
    private static readonly QuantityUnit Millimetre = new("mm", 0.1m, 1e-6m, false);
    private static readonly QuantityUnit Metre = new("m", 100, 1e-9m, false);
    private static readonly QuantityUnit Inch = new("in", 2.54m, 0.125m, true, Fractions: true);
    private static readonly QuantityUnit Yard = new("yd", 91.44m, 1, false);

    private static readonly QuantityKind<Length> Lengths = new(
        "length", "a length", Length.FromCentimetres, l => l.Centimetres, [Centimetre, Inch, Millimetre, Metre, Yard]);

    private static readonly QuantityKind<Length> YarnLengths = new(
        "yarnLength",
        "a length of yarn",
        Length.FromCentimetres,
        l => l.Centimetres,
        [Metre with { Written = true }, Yard with { Written = true }, Centimetre with { Written = false }, Inch with { Written = false }]);

    private static readonly QuantityKind<Mass> Masses = new(
        "mass", "a mass", Mass.FromGrams, m => m.Grams,
        [new("g", 1, 1e-6m, true), new("oz", 28.349523125m, 0.125m, true), new("kg", 1000, 0, false)]);

    private static readonly QuantityKind<double> Millimetres = new("hookSize", "a hook size", n => n, n => n, [new("mm", 1, 0, true)]);

    private static readonly QuantityKind<double> Stitches = new(
        "stitches", "a number of stitches", n => n, n => n,
        [new("stitches", 1, 0, true), new("stitch", 1, 0, false), new("sts", 1, 0, false), new("st", 1, 0, false)]);

    private static readonly QuantityKind<double> Shares = new("share", "a share", n => n, n => n, [new("%", 0.01m, 0, true)]);

    private static readonly QuantityKind<double> SquareCentimetres = new(
        "area", "an area", n => n, n => n, [new("cm²", 1, 0, true), new("cm2", 1, 0, false)]);

    /// <summary>Of the body or the garment.</summary>
    public static Shape<Length> Body { get; } = new QuantityShape<Length>(Lengths, "41 cm", 0.5m, 1_000);

    /// <summary>Added to the body; may be negative.</summary>
    public static Shape<Length> Ease { get; } = new QuantityShape<Length>(Lengths, "8 cm", -100, 100);

    /// <summary>From one size to the next, or taken off; may be zero.</summary>
    public static Shape<Length> Step { get; } = new QuantityShape<Length>(Lengths, "1 cm", 0, 100);

    /// <summary>Along the yarn within one sequence.</summary>
    public static Shape<Length> Section { get; } = new QuantityShape<Length>(Lengths, "31.5 cm", 0.1m, 10_000);

    /// <summary>Spread or blend of a section.</summary>
    public static Shape<Length> AlongSection { get; } = new QuantityShape<Length>(Lengths, "1.5 cm", 0, 10_000);

    /// <summary>Unravelled from a swatch.</summary>
    public static Shape<Length> Unravelled { get; } = new QuantityShape<Length>(Lengths, "252 cm", 0.1m, 100_000);

    public static Shape<Length> GaugeLength { get; } = new QuantityShape<Length>(Lengths, "10 cm", 1, 100);

    public static Shape<Length> BallLength { get; } = new QuantityShape<Length>(YarnLengths, "230 m", 100, 2_000_000);

    /// <summary>Any, of a reader's own.</summary>
    public static Shape<Length> Yarn { get; } = new QuantityShape<Length>(Lengths, "6.4 cm", 0, 2_000_000);

    public static Shape<Mass> Weight { get; } = new QuantityShape<Mass>(Masses, "100 g", 0.01m, 10_000);

    public static Shape<double> Hook { get; } = new QuantityShape<double>(Millimetres, "5.5 mm", Swatch.Hooks);

    /// <summary>Yarn of a turn.</summary>
    public static Shape<double> TurnCost { get; } = new QuantityShape<double>(Stitches, "0.45 stitches", PathOptions.TurnCosts);

    public static Shape<double> Memory { get; } = new QuantityShape<double>(Stitches, "50 stitches", HandsPrior.Memories);

    public static Shape<double> Spread { get; } = new QuantityShape<double>(Shares, "1 %", HandsPrior.Spreads);

    /// <summary>Of a body measure.</summary>
    public static Shape<double> Share { get; } = new QuantityShape<double>(Shares, "90 %", 0.01m, 1.5m);

    public static Shape<double> Forgiveness { get; } = new QuantityShape<double>(SquareCentimetres, "4 cm²", GradingChoice.Weights);
}
