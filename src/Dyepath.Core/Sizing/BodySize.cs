using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Sizing;

/// <summary>
/// A measure as its chart prints it. Charts round centimetres and inches separately, so the two forms differ by up to
/// half a centimetre: both are kept for printing, and computing uses the centimetres.
/// </summary>
/// <param name="Measure">What was measured.</param>
/// <param name="InCentimetres">As printed or typed in centimetres, or converted exactly.</param>
/// <param name="InInches">As printed or typed in inches, or converted exactly.</param>
/// <param name="Source">Where the figures come from; not always the chart's own.</param>
public sealed record BodyMeasurement(BodyMeasure Measure, BodyRange InCentimetres, BodyRange InInches, Citation Source)
{
    /// <summary>The form that computing uses: the centimetres.</summary>
    public BodyRange Range => InCentimetres;
}

/// <summary>One size of a chart.</summary>
/// <param name="Name">As the chart prints it.</param>
/// <param name="Measurements">At most one for each measure.</param>
public sealed record BodySize(string Name, ImmutableArray<BodyMeasurement> Measurements)
{
    /// <summary>Finds a measure, or says in words that this size has none. Nothing is interpolated from other sizes or charts.</summary>
    public bool TryGet(
        BodyMeasure measure, [NotNullWhen(true)] out BodyMeasurement? found, [NotNullWhen(false)] out string? notInChart)
    {
        found = Measurements.FirstOrDefault(measurement => measurement.Measure == measure);
        notInChart = found is null
            ? $"Size {Name} has no {BodyMeasures.Words(measure)} in this chart: choose a chart that has it, or enter your own."
            : null;
        return found is not null;
    }
}
