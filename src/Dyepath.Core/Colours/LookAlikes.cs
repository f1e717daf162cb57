using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Colours;

/// <summary>By which eyes, or on which print, two colours are compared.</summary>
public enum Viewing
{
    /// <summary>Eyes with all three kinds of cones.</summary>
    Normal,

    /// <summary>Eyes without long-wave cones.</summary>
    Protan,

    /// <summary>Eyes without middle-wave cones.</summary>
    Deutan,

    /// <summary>Eyes without short-wave cones.</summary>
    Tritan,

    /// <summary>A black-and-white print, or eyes that see no hue: lightness alone.</summary>
    Grey,
}

/// <summary>
/// Two colours that may be taken for each other; <paramref name="Adjacent"/> where they meet along the yarn,
/// <paramref name="Difference"/> in CIEDE2000.
/// </summary>
/// <param name="First">The one that comes first in the ring.</param>
/// <param name="Second">The one that comes later in the ring.</param>
/// <param name="Viewing">To whom, or on which print, they look alike.</param>
/// <param name="Adjacent">One of them follows the other in the ring.</param>
/// <param name="Difference">As seen so, below the limit.</param>
public sealed record LookAlike(NamedColour First, NamedColour Second, Viewing Viewing, bool Adjacent, double Difference);

/// <summary>
/// The least CIEDE2000 difference at which two colours count as distinct. A smooth patch shows a difference of about 1;
/// the defaults, 6 where the colours meet along the yarn and 8 where they do not, allow for fibre, shadow between
/// stitches and having to remember a colour that is not beside the other. They are assumptions without a source.
/// </summary>
public sealed record LookAlikeLimits
{
    /// <summary>6 for colours that meet along the yarn, 8 for others.</summary>
    public static LookAlikeLimits Default { get; } = new(6, 8);

    /// <exception cref="ArgumentOutOfRangeException">A limit outside [0, 100], or not a number.</exception>
    public LookAlikeLimits(double adjacent, double apart)
    {
        Adjacent = Guard.InRange(adjacent, 0, 100, "ΔE2000");
        Apart = Guard.InRange(apart, 0, 100, "ΔE2000");
    }

    /// <summary>In CIEDE2000, for colours that meet along the yarn.</summary>
    public double Adjacent { get; }

    /// <summary>In CIEDE2000, for colours that do not meet.</summary>
    public double Apart { get; }
}

/// <summary>Which colours of a yarn may be taken for each other.</summary>
public static class LookAlikes
{
    private static readonly ImmutableArray<Viewing> Others = [Viewing.Protan, Viewing.Deutan, Viewing.Tritan, Viewing.Grey];

    /// <summary>
    /// Names the pairs of a colour ring (its last entry meets its first) that fall below the limits. Entries equal in
    /// name and colour are one colour and not compared. A pair is named once: under <see cref="Viewing.Normal"/> when
    /// it is confused with normal vision, since it is then confused with any, otherwise under each other viewing that does.
    /// Colour-deficient eyes are Brettel 1997 with a cone missing, the strictest case. Sorted by viewing, then the most alike first, then
    /// by place in the ring.
    /// </summary>
    public static ImmutableArray<LookAlike> Find(ImmutableArray<NamedColour> ring, LookAlikeLimits limits)
    {
        var colours = ring.Distinct().ToImmutableArray();
        var neighbours = Neighbours(ring);
        var found = ImmutableArray.CreateBuilder<LookAlike>();
        for (var i = 0; i < colours.Length; i++)
        {
            for (var j = i + 1; j < colours.Length; j++)
            {
                var (first, second) = (colours[i], colours[j]);
                var adjacent = neighbours.Contains((first, second)) || neighbours.Contains((second, first));
                AddPair(found, first, second, adjacent, adjacent ? limits.Adjacent : limits.Apart);
            }
        }
        return [.. found.OrderBy(alike => alike.Viewing).ThenBy(alike => alike.Difference)];
    }

    /// <summary>CIEDE2000 as these eyes, or this print, see the two colours.</summary>
    public static double Difference(Srgb first, Srgb second, Viewing viewing) =>
        ColourDifference.DeltaE2000(Seen(first, viewing), Seen(second, viewing));

    private static void AddPair(
        ImmutableArray<LookAlike>.Builder found, NamedColour first, NamedColour second, bool adjacent, double limit)
    {
        var normal = Difference(first.Colour, second.Colour, Viewing.Normal);
        if (normal < limit)
        {
            found.Add(new LookAlike(first, second, Viewing.Normal, adjacent, normal));
            return;
        }
        foreach (var viewing in Others)
        {
            var difference = Difference(first.Colour, second.Colour, viewing);
            if (difference < limit)
                found.Add(new LookAlike(first, second, viewing, adjacent, difference));
        }
    }

    private static HashSet<(NamedColour, NamedColour)> Neighbours(ImmutableArray<NamedColour> ring) =>
        [.. ring.Select((colour, place) => (colour, ring[(place + 1) % ring.Length]))];

    private static Lab Seen(Srgb colour, Viewing viewing)
    {
        var light = colour.ToLinear();
        return viewing switch
        {
            Viewing.Normal => colour.ToLab(),
            Viewing.Protan => ColourVisionSimulation.Brettel(light, ColourVision.Protan).Clipped().ToXyz().ToLab(),
            Viewing.Deutan => ColourVisionSimulation.Brettel(light, ColourVision.Deutan).Clipped().ToXyz().ToLab(),
            Viewing.Tritan => ColourVisionSimulation.Brettel(light, ColourVision.Tritan).Clipped().ToXyz().ToLab(),
            Viewing.Grey => new Lab(colour.ToLab().Lightness, 0, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(viewing), viewing, "viewing must be one of the named viewings."),
        };
    }
}
