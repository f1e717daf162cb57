using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>Each section's colour as a point whose distances are contrasts.</summary>
public sealed class Palette
{
    private Palette(ImmutableArray<ImmutableArray<double>> points) => Points = points;

    /// <summary>One point a section, all of as many coordinates.</summary>
    internal ImmutableArray<ImmutableArray<double>> Points { get; }

    /// <summary>Every two different colours equally far apart, where no palette is given.</summary>
    public static Palette Distinct(ColourRing ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var count = ring.Sections.Length;
        return new Palette([.. Enumerable.Range(0, count)
            .Select(i => Enumerable.Range(0, count).Select(k => k == ring.Colours[i] ? 1.0 : 0.0).ToImmutableArray())]);
    }

    /// <param name="colours">CIELAB of each section: L 0 to 100, a and b −200 to 200.</param>
    /// <exception cref="ArgumentException">Not one colour a section.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate outside its range.</exception>
    public static Palette FromLab(ColourRing ring, IReadOnlyList<(double L, double A, double B)> colours)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(colours);
        if (colours.Count != ring.Sections.Length)
            throw new ArgumentException($"{ring.Sections.Length} sections need as many colours, not {colours.Count}.", nameof(colours));
        return new Palette([.. colours.Select(c => ImmutableArray.Create(
            Guard.InRange(c.L, 0, 100, "CIELAB", nameof(colours)),
            Guard.InRange(c.A, -200, 200, "CIELAB", nameof(colours)),
            Guard.InRange(c.B, -200, 200, "CIELAB", nameof(colours))))]);
    }
}
