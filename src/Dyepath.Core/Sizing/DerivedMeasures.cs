using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>A body measure that a chart does not give, by a stated rule.</summary>
/// <param name="Length">As the rule gives it, with nothing rounded.</param>
/// <param name="Rule">How it was found, as the end of a sentence such as <c>head is …</c>.</param>
public sealed record DerivedMeasure(Length Length, string Rule);

/// <summary>
/// Measures that a shipped chart lacks, from the bust: from the chart's own other sizes, else from the fuller chart for the same wearers at
/// the same bust, else from measured bodies. A measured value is better than a derived one, so that a plan has a note for each.
/// </summary>
public static class DerivedMeasures
{
    /// <summary>
    /// Straight lines over the chest girth, in centimetres, through the 1,986 women and 4,082 men of the ANSUR II survey (2012, open
    /// data): intercept, slope. Residual standard deviations: shoulders 3.7 and 3.4, head 1.9 and 1.5, back waist length 2.3 and 2.4 cm.
    /// </summary>
    private static readonly ImmutableDictionary<(BodyMeasure Measure, bool Men), (double At0, double Slope)> Survey =
        new Dictionary<(BodyMeasure, bool), (double, double)>
        {
            [(BodyMeasure.Shoulders, false)] = (59.11, 0.4616),
            [(BodyMeasure.Shoulders, true)] = (52.98, 0.6129),
            [(BodyMeasure.Head, false)] = (51.51, 0.0486),
            [(BodyMeasure.Head, true)] = (49.31, 0.0767),
            [(BodyMeasure.BackWaistLength, false)] = (28.33, 0.1501),
            [(BodyMeasure.BackWaistLength, true)] = (31.03, 0.1580),
        }.ToImmutableDictionary();

    /// <summary>
    /// Heads of children over their chest, in centimetres: up to 24 months medians of the WHO growth standards, girls and boys averaged
    /// (from memory), older ones from memory without a source.
    /// </summary>
    private static readonly ImmutableArray<(double Chest, double Head)> Children =
    [
        (40.5, 40), (43, 42.8), (45.5, 45.5), (48, 46.8), (50.5, 47.8), (53, 48.6), (58.5, 50.4), (63.5, 51.5), (67, 52.3), (71, 53),
        (76, 53.8), (80, 54.6), (82.5, 55.3),
    ];

    /// <summary>Shoulders of a child over its chest (common practice, no source).</summary>
    private const double ChildsShoulders = 1.09;

    /// <summary>Null where no rule leads to it: the size has no bust, or no chart of its wearers gives the measure.</summary>
    public static DerivedMeasure? Find(SizeChart chart, BodySize size, BodyMeasure measure)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(size);
        if (Of(size, BodyMeasure.Bust) is not { } bust)
            return null;
        if (Along(chart, measure, bust) is { } own)
            return new DerivedMeasure(own, "in line with the chart's other sizes");
        if (chart.Wearer != Wearers.Adult)
            return Child(measure, bust);
        var men = chart.IsForMen;
        if (Survey.TryGetValue((measure, men), out var line) && (measure != BodyMeasure.BackWaistLength || men))
        {
            return new DerivedMeasure(
                Length.FromCentimetres(line.At0 + line.Slope * bust), $"what {(men ? "men" : "women")} of that {(men ? "chest" : "bust")} measure on average (ANSUR II)");
        }
        return SizeCharts.TryFind(men ? "men" : "women", out var fuller) && fuller != chart && Along(fuller, measure, bust) is { } like
            ? new DerivedMeasure(like, $"that of the chart {fuller.Id} at the same {(men ? "chest" : "bust")}")
            : null;
    }

    private static DerivedMeasure? Child(BodyMeasure measure, double chest) => measure switch
    {
        BodyMeasure.Head => new DerivedMeasure(Length.FromCentimetres(OnLine(Children, chest)), "what children of that chest measure on average"),
        BodyMeasure.Shoulders => new DerivedMeasure(Length.FromCentimetres(ChildsShoulders * chest), "1.09 of the chest"),
        _ => null,
    };

    /// <summary>Between the chart's sizes, or in line with its first or last two.</summary>
    private static Length? Along(SizeChart chart, BodyMeasure measure, double bust)
    {
        var known = chart.Sizes
            .Select(s => (Bust: Of(s, BodyMeasure.Bust), Measure: Of(s, measure)))
            .Where(s => s is { Bust: not null, Measure: not null })
            .Select(s => (s.Bust!.Value, s.Measure!.Value)).ToImmutableArray();
        return known.Length < 2 ? null : Length.FromCentimetres(OnLine(known, bust));
    }

    private static double OnLine(ImmutableArray<(double X, double Y)> points, double x)
    {
        var after = 1;
        while (after < points.Length - 1 && points[after].X < x)
            after++;
        var (one, other) = (points[after - 1], points[after]);
        return one.Y + (other.Y - one.Y) * (x - one.X) / (other.X - one.X);
    }

    private static double? Of(BodySize size, BodyMeasure measure) =>
        size.Measurements.FirstOrDefault(m => m.Measure == measure)?.Range.Middle.Centimetres;
}
