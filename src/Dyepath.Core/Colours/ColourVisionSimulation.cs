using Dyepath.Core.Quantities;

namespace Dyepath.Core.Colours;

/// <summary>
/// What a colour looks like to a person whose colour vision differs, by three published models, all applied to linear
/// light. Every matrix row sums to 1, so greys stay as they are. Results may leave [0, 1].
/// </summary>
public static class ColourVisionSimulation
{
    /// <summary>
    /// Shifted or missing cones; severity 0 is normal vision, 1 a missing cone. Between the eleven published severities
    /// the matrices are interpolated linearly.
    /// Source: Machado, Oliveira, Fernandes 2009, "A physiologically-based model for simulation of color vision
    /// deficiency", the table of matrices.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Severity outside [0, 1], or not a number.</exception>
    public static LinearRgb Machado(LinearRgb light, ColourVision vision, double severity)
    {
        Guard.InRange(severity, 0, 1, "of full severity");
        var table = ColourVisionTables.Machado(vision);
        var place = severity * (table.Length - 1);
        var below = Math.Min((int)place, table.Length - 2);
        var share = place - below;
        var (low, high) = (table[below].Apply(light), table[below + 1].Apply(light));
        return new LinearRgb(
            low.Red + share * (high.Red - low.Red),
            low.Green + share * (high.Green - low.Green),
            low.Blue + share * (high.Blue - low.Blue));
    }

    /// <summary>
    /// A missing long or middle cone, by one projection.
    /// Source: Viénot, Brettel, Mollon 1999, "Digital video colourmaps for checking the legibility of displays by
    /// dichromats", recomputed for sRGB primaries.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Tritan, which one projection does not describe: use <see cref="Brettel"/>.</exception>
    public static LinearRgb Vienot(LinearRgb light, ColourVision vision) => vision switch
    {
        ColourVision.Protan => ColourVisionTables.VienotProtan.Apply(light),
        ColourVision.Deutan => ColourVisionTables.VienotDeutan.Apply(light),
        _ => throw new ArgumentOutOfRangeException(
            nameof(vision), vision, "Viénot 1999 describes Protan and Deutan only; Brettel 1997 describes all three."),
    };

    /// <summary>
    /// A missing cone, by two projections: which one depends on the side of the neutral plane that the colour lies on.
    /// Source: Brettel, Viénot, Mollon 1997, "Computerized simulation of color appearance for dichromats", recomputed
    /// for sRGB primaries.
    /// </summary>
    public static LinearRgb Brettel(LinearRgb light, ColourVision vision)
    {
        var (plane, first, second) = ColourVisionTables.Brettel(vision);
        return (plane.Red * light.Red + plane.Green * light.Green + plane.Blue * light.Blue >= 0 ? first : second).Apply(light);
    }
}
