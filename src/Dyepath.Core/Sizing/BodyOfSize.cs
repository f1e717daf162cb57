using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>One size's body: the middle of each measure's range, so that no body in the range is further off than half of it.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Measures">By the measure's name in a document, such as <c>upperArm</c>.</param>
public sealed record BodyOfSize(string Name, ImmutableSortedDictionary<string, Length> Measures)
{
    /// <summary>The upper end of each measure's range, where it has one.</summary>
    public ImmutableSortedDictionary<string, Length> Largest { get; init; } = ImmutableSortedDictionary<string, Length>.Empty;

    /// <exception cref="KeyNotFoundException">The size's chart does not give this measure.</exception>
    public Length this[BodyMeasure measure] => Measures[BodyMeasures.Key(measure)];

    /// <summary>
    /// The least that a garment may measure round the bodies of this size: as much as the largest of them, or, where the ease asked for is
    /// less than the whole range, half of the range less than what is asked for.
    /// </summary>
    public Length Floor(BodyMeasure measure, Length ease)
    {
        var (middle, largest) = (this[measure], Largest.GetValueOrDefault(BodyMeasures.Key(measure), this[measure]));
        return Length.Min(largest, middle + ease - (largest - middle));
    }

    /// <summary>Whether the size's chart gives the measure, or a rule leads to it.</summary>
    public bool Has(BodyMeasure measure) => Measures.ContainsKey(BodyMeasures.Key(measure));
}
