using System.Collections.Immutable;
using Dyepath.Core.Colours;

namespace Dyepath.Workspace.Fabric;

/// <param name="Name">As the page's choice has it.</param>
/// <param name="Words">As the page shows it.</param>
/// <param name="Metres">Missing: as near as the screen shows it, or <paramref name="Stitches"/> wide whatever the distance.</param>
/// <param name="Stitches">Full width of the blur, in stitches.</param>
public sealed record Distance(string Name, string Words, double? Metres = null, double? Stitches = null)
{
    /// <summary>Full width at half height of what a good eye makes of a point, in minutes of arc (commonly given; no source).</summary>
    private const double MinutesOfArc = 2;

    /// <summary>The nearest first; half shut eyes last.</summary>
    public static ImmutableArray<Distance> All { get; } =
    [
        new("near", "From near"),
        new("room", "From across the room, 6 m", Metres: 6),
        new("street", "From across the street, 20 m", Metres: 20),
        new("squint", "With eyes half shut, as clarity is reckoned", Stitches: new Core.Motifs.MotifOptions().BlurStitches),
    ];

    /// <summary>Standard deviation of the blur on the fabric, in centimetres; 0 for none.</summary>
    public double Blur(double stitchWidth) => Metres is { } metres
        ? 100 * metres * MinutesOfArc / 60 * Math.PI / 180 / (2 * Math.Sqrt(2 * Math.Log(2)))
        : (Stitches ?? 0) * stitchWidth;
}

/// <summary>Whose eyes look: a change of the palette alone.</summary>
/// <param name="Name">As the page's choice has it.</param>
/// <param name="Words">As the page shows it.</param>
/// <param name="Seen">What a colour becomes; missing: it stays as it is.</param>
public sealed record Eyes(string Name, string Words, Func<Srgb, Srgb>? Seen = null)
{
    /// <summary>Eyes that see all colours first.</summary>
    public static ImmutableArray<Eyes> All { get; } =
    [
        new("all", "Eyes that see all colours"),
        new("protan", "Eyes without red cones", c => Without(c, ColourVision.Protan)),
        new("deutan", "Eyes without green cones", c => Without(c, ColourVision.Deutan)),
        new("tritan", "Eyes without blue cones", c => Without(c, ColourVision.Tritan)),
        new("grey", "In grey, as a photograph", Grey),
    ];

    private static Srgb Without(Srgb colour, ColourVision vision) => ColourVisionSimulation.Brettel(colour.ToLinear(), vision).ToSrgb();

    /// <summary>The grey of the same light: the byte whose luminance lies nearest.</summary>
    private static Srgb Grey(Srgb colour)
    {
        var light = Contrast.RelativeLuminance(colour);
        var level = (byte)Enumerable.Range(0, 256).MinBy(b => Math.Abs(new Srgb((byte)b, (byte)b, (byte)b).ToLinear().Red - light));
        return new Srgb(level, level, level);
    }
}
