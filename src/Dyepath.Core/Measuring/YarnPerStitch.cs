using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>How yarn per stitch was come by, in the order in which one is preferred to the next.</summary>
public enum YarnPerStitchSource
{
    /// <summary>Rows unravelled and measured, in the same relaxed centimetres as the sections.</summary>
    Unravelled,

    /// <summary>The sequence's measured length over its counted stitches.</summary>
    SequenceLength,

    /// <summary>Weighed, by the label's metres per gram.</summary>
    Weighed,

    /// <summary>Not measured: supposed from the stitch's width.</summary>
    Supposed,
}

/// <summary>Yarn that one pooling unit takes, with its error and where it comes from.</summary>
/// <param name="Centimetres">For one pooling unit: one stitch, or the two of a linen unit.</param>
/// <param name="Source">Which of the ways is used.</param>
/// <param name="Ways">Every way that the measurements offer, by order of preference; the first is used.</param>
/// <param name="Disagreements">Ways that contradict the one used.</param>
public sealed record YarnPerStitch(
    Estimate Centimetres,
    YarnPerStitchSource Source,
    ImmutableArray<(YarnPerStitchSource Source, Estimate Centimetres)> Ways,
    ImmutableArray<MeasuringFinding> Disagreements)
{
    /// <summary>Yarn of one stitch; beyond, a unit was mistaken.</summary>
    public static Bounds OfStitch { get; } = new(0.2, 300, "cm");

    /// <summary>
    /// One single crochet over its width: a five-inch square of worsted at 13 stitches and 14 rows to four inches took 785.5 in
    /// (one hobbyist's measurement; derived: 9.0 widths).
    /// </summary>
    private const double WidthsInSingleCrochet = 9.0;

    /// <summary>That measurement's likely error for another yarn and hand; a second hobbyist's contradicts it by 16 %.</summary>
    private const double SupposedError = 0.25;

    /// <summary>Two ways contradict each other when chance explains their distance less than once in a hundred.</summary>
    private const double Confidence = 0.99;

    /// <summary>Yarn of one pooling unit as a length, for buying.</summary>
    public Length PerUnit => Length.FromCentimetres(Centimetres.Value);

    /// <param name="sequence">Counted C, in pooling units; null when nothing was counted.</param>
    /// <param name="sequenceLength">Measured L in centimetres; null when not every section was measured.</param>
    public static YarnPerStitch Find(
        Yarn yarn,
        FabricStitch stitch,
        Swatch swatch,
        HandsPrior hands,
        Estimate? sequence,
        Estimate? sequenceLength,
        MeasuringErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        ArgumentNullException.ThrowIfNull(stitch);
        ArgumentNullException.ThrowIfNull(swatch);
        ArgumentNullException.ThrowIfNull(hands);
        errors ??= MeasuringErrors.Default;
        var ways = ImmutableArray.CreateBuilder<(YarnPerStitchSource Source, Estimate Centimetres)>();
        if (Unravelled(swatch.YarnUsed, hands, errors) is { } unravelled)
            ways.Add((YarnPerStitchSource.Unravelled, unravelled.Scaled(stitch.StitchesPerUnit)));
        if (sequence is { Value: > 0 } c && sequenceLength is { Value: > 0 } l)
            ways.Add((YarnPerStitchSource.SequenceLength, l / c));
        if (Weighed(swatch.YarnUsed, yarn.Ball, hands, errors) is { } weighed)
            ways.Add((YarnPerStitchSource.Weighed, weighed.Scaled(stitch.StitchesPerUnit)));
        if (ways.Count == 0)
        {
            var supposed = WidthsInSingleCrochet * stitch.YarnInSingleCrochet * stitch.StitchesPerUnit
                * swatch.Worked.StitchWidth.Centimetres;
            ways.Add((YarnPerStitchSource.Supposed, new Estimate(supposed, SupposedError * supposed)));
        }
        var used = ways[0];
        return new YarnPerStitch(used.Centimetres, used.Source, ways.ToImmutable(), [.. ways
            .Skip(1)
            .Where(w => Estimate.Apart(w.Centimetres, used.Centimetres) > Normal.TwoSided(Confidence))
            .Select(w => Disagreement(used, w, stitch))]);
    }

    private static MeasuringFinding Disagreement(
        (YarnPerStitchSource Source, Estimate Centimetres) used,
        (YarnPerStitchSource Source, Estimate Centimetres) other,
        FabricStitch stitch) =>
        new(FindingKind.YarnPerStitchDisagrees, "fabric.swatch.yarnUsed", string.Create(CultureInfo.InvariantCulture,
            $"{Named(used.Source)} gives {used.Centimetres.Value:0.00} cm of yarn "
            + $"{(stitch.StitchesPerUnit == 1 ? "a stitch" : "a pair of stitches")}, {Named(other.Source)} "
            + $"{other.Centimetres.Value:0.00} cm. The first is used; measure again whichever is in doubt."));

    private static string Named(YarnPerStitchSource source) => source switch
    {
        YarnPerStitchSource.Unravelled => "The unravelled yarn",
        YarnPerStitchSource.SequenceLength => "the sequence's length over its counted stitches",
        YarnPerStitchSource.Weighed => "the weighed yarn",
        _ => "the stitch's width",
    };

    private static Estimate? Unravelled(ImmutableArray<YarnUsed> used, HandsPrior hands, MeasuringErrors errors)
    {
        var measured = used.Where(u => u.Length is not null).ToArray();
        var stitches = measured.Sum(u => u.Stitches);
        var length = measured.Sum(u => u.Length!.Value.Centimetres);
        if (stitches == 0 || length <= 0)
            return null;
        var reading = MeasuringErrors.Uniform(errors.LengthReading.Centimetres) * Math.Sqrt(measured.Length) / length;
        return Relative(length / stitches, reading, errors.Stretch, Wander(measured, stitches, hands));
    }

    private static Estimate? Weighed(ImmutableArray<YarnUsed> used, Ball ball, HandsPrior hands, MeasuringErrors errors)
    {
        var measured = used.Where(u => u.Mass is not null).ToArray();
        var stitches = measured.Sum(u => u.Stitches);
        var mass = measured.Sum(u => u.Mass!.Value.Grams);
        if (stitches == 0 || mass <= 0 || ball.Mass.Grams <= 0 || ball.Length.Centimetres <= 0)
            return null;
        var reading = MeasuringErrors.Uniform(errors.MassReading.Grams) * Math.Sqrt(measured.Length) / mass;
        return Relative(
            mass * ball.Length.Centimetres / ball.Mass.Grams / stitches, reading, errors.Label, Wander(measured, stitches, hands));
    }

    /// <summary>
    /// Relative error that comes of the stitches measured being a sample of the hands' work; pieces taken for independent.
    /// </summary>
    private static double Wander(YarnUsed[] pieces, int stitches, HandsPrior hands) =>
        Math.Sqrt(pieces.Sum(p => hands.WanderVariance(p.Stitches))) / stitches;

    private static Estimate Relative(double value, params ReadOnlySpan<double> errors) =>
        new(value, value * Math.Sqrt(Cholesky.Dot(errors, errors)));
}
