using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>
/// What one size allows for one body measure, ends included; a single value is a range of no width. <c>default</c> is
/// zero to zero, which no chart holds.
/// </summary>
public readonly record struct BodyRange
{
    /// <summary>The largest body measure accepted, 300 cm.</summary>
    public const double LargestCentimetres = 300;

    private BodyRange(Length minimum, Length maximum) => (Minimum, Maximum) = (minimum, maximum);

    /// <exception cref="ArgumentOutOfRangeException">A minimum of zero or less, a maximum below it or over 300 cm.</exception>
    public static BodyRange Between(Length minimum, Length maximum)
    {
        if (minimum <= Length.Zero)
            throw new ArgumentOutOfRangeException(nameof(minimum), minimum, "minimum must be above 0 cm.");
        Guard.InRange(maximum.Centimetres, minimum.Centimetres, LargestCentimetres, "cm", nameof(maximum));
        return new BodyRange(minimum, maximum);
    }

    /// <summary>Included; more than zero, except in <c>default</c>.</summary>
    public Length Minimum { get; }

    /// <summary>Included; equal to the minimum where the chart prints one value.</summary>
    public Length Maximum { get; }

    /// <summary>Halfway between the ends.</summary>
    public Length Middle => (Minimum + Maximum) / 2;

    /// <summary>Within the range, ends included.</summary>
    public bool Contains(Length value) => value >= Minimum && value <= Maximum;

    /// <summary>How far <paramref name="value"/> lies outside: negative below, zero inside, positive above.</summary>
    public Length Misfit(Length value) =>
        value < Minimum ? value - Minimum : value > Maximum ? value - Maximum : Length.Zero;

    public override string ToString() =>
        Minimum == Maximum ? Minimum.ToString() : FormattableString.Invariant($"{Minimum.Centimetres:0.###}–{Maximum}");
}
