using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>The unit that a body measure was typed in.</summary>
public enum ChartUnit
{
    /// <summary>Of 10 mm.</summary>
    Centimetre,

    /// <summary>Of 25.4 mm.</summary>
    Inch,
}

/// <summary>A measure as the designer typed it; minimum and maximum are equal for a single value.</summary>
/// <param name="Measure">What was measured.</param>
/// <param name="Minimum">In <paramref name="Unit"/>.</param>
/// <param name="Maximum">In <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit typed.</param>
public sealed record OwnMeasure(BodyMeasure Measure, double Minimum, double Maximum, ChartUnit Unit);

/// <summary>A size as the designer typed it, with whatever mistakes it has.</summary>
/// <param name="Name">As typed; may be empty.</param>
/// <param name="Measures">In any order; may name one twice.</param>
public sealed record EnteredSize(string Name, ImmutableArray<OwnMeasure> Measures);

/// <summary>
/// Something about a chart, located in it (<c>sizes[2].upperArm</c>). A fault prevents the chart, a warning does not.
/// </summary>
/// <param name="Place">Such as <c>sizes[2].upperArm</c>, sizes counted from 0.</param>
/// <param name="Message">What is the matter, as a sentence.</param>
/// <param name="IsFault">It prevents the chart.</param>
public sealed record ChartRemark(string Place, string Message, bool IsFault);

/// <summary>The designer's own chart, read from figures that may hold any mistake.</summary>
public static class OwnSizeChart
{
    /// <summary>
    /// Builds the chart, or says everything that prevents it. Falling series and measures that only some sizes have are
    /// warnings and come with the chart. The form not typed in is the exact conversion.
    /// </summary>
    public static bool TryBuild(
        string id, string title, Wearers wearer, ImmutableArray<EnteredSize> sizes,
        [NotNullWhen(true)] out SizeChart? chart, out ImmutableArray<ChartRemark> remarks)
    {
        chart = null;
        remarks = [.. Faults(sizes)];
        if (!remarks.IsEmpty)
            return false;
        var source = new Citation(Provenance.Designer, "the designer's own chart");
        chart = new SizeChart(
            id, title, wearer, source,
            [.. sizes.Select(size => new BodySize(size.Name, [.. size.Measures.Select(measure => Measurement(measure, source))]))]);
        remarks = [.. Warnings(chart)];
        return true;
    }

    private static IEnumerable<ChartRemark> Faults(ImmutableArray<EnteredSize> sizes)
    {
        if (sizes.Length is 0 or > SizeChart.MostSizes)
            yield return Fault("sizes", $"has {sizes.Length} sizes: give 1 to {SizeChart.MostSizes}.");
        var names = new HashSet<string>();
        for (var i = 0; i < sizes.Length; i++)
        {
            var (size, place) = (sizes[i], $"sizes[{i}]");
            if (string.IsNullOrWhiteSpace(size.Name))
                yield return Fault($"{place}.name", "is blank: name the size, such as M.");
            else if (!names.Add(size.Name))
                yield return Fault($"{place}.name", $"\"{size.Name}\" is there already: give each size its own name.");
            if (size.Measures.IsEmpty)
                yield return Fault(place, "has no measure: give at least one, such as bust.");
            var measures = new HashSet<BodyMeasure>();
            foreach (var measure in size.Measures)
            {
                if (MeasureFault(measure, measures) is { } message)
                    yield return Fault($"{place}.{BodyMeasures.Key(measure.Measure)}", message);
            }
        }
    }

    private static string? MeasureFault(OwnMeasure measure, HashSet<BodyMeasure> seen)
    {
        var (unit, largest) = measure.Unit == ChartUnit.Centimetre
            ? ("cm", BodyRange.LargestCentimetres)
            : ("in", Length.FromCentimetres(BodyRange.LargestCentimetres).Inches);
        if (!Enum.IsDefined(measure.Measure))
            return "is no body measure: use one of the names in the documentation.";
        if (!seen.Add(measure.Measure))
            return "is there twice: keep one.";
        foreach (var value in (double[])[measure.Minimum, measure.Maximum])
        {
            if (!(value >= 0.1 && value <= largest))
                return FormattableString.Invariant($"is {value} {unit}: give 0.1 to {Math.Floor(largest)} {unit}.");
        }
        return measure.Minimum > measure.Maximum
            ? FormattableString.Invariant($"runs from {measure.Minimum} to {measure.Maximum} {unit}: put the smaller first.")
            : null;
    }

    private static IEnumerable<ChartRemark> Warnings(SizeChart chart)
    {
        foreach (var (measure, earlier, later) in chart.Decreases())
        {
            yield return new ChartRemark(
                $"sizes[{chart.Sizes.IndexOf(later)}].{BodyMeasures.Key(measure)}",
                $"{later.Name} has a smaller {BodyMeasures.Words(measure)} than {earlier.Name} before it: "
                + "check both, or leave them if you mean it.",
                IsFault: false);
        }
        foreach (var measure in chart.Measures)
        {
            for (var i = 0; i < chart.Sizes.Length; i++)
            {
                if (!chart.Sizes[i].TryGet(measure, out _, out _))
                {
                    yield return new ChartRemark(
                        $"sizes[{i}].{BodyMeasures.Key(measure)}",
                        "is missing though other sizes have it: "
                        + $"{chart.Sizes[i].Name} cannot be graded where a garment needs the {BodyMeasures.Words(measure)}.",
                        IsFault: false);
                }
            }
        }
    }

    private static BodyMeasurement Measurement(OwnMeasure measure, Citation source)
    {
        var range = measure.Unit == ChartUnit.Centimetre
            ? BodyRange.Between(Length.FromCentimetres(measure.Minimum), Length.FromCentimetres(measure.Maximum))
            : BodyRange.Between(Length.FromInches(measure.Minimum), Length.FromInches(measure.Maximum));
        return new BodyMeasurement(measure.Measure, range, range, source);
    }

    private static ChartRemark Fault(string place, string message) => new(place, message, IsFault: true);
}
