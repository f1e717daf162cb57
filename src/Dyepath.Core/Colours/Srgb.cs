using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Dyepath.Core.Colours;

/// <summary>An opaque sRGB colour (IEC 61966-2-1) of three gamma-encoded bytes. <c>default</c> is black.</summary>
/// <param name="Red">Gamma-encoded, 0 to 255.</param>
/// <param name="Green">Gamma-encoded, 0 to 255.</param>
/// <param name="Blue">Gamma-encoded, 0 to 255.</param>
public readonly record struct Srgb(byte Red, byte Green, byte Blue)
{
    /// <summary><c>#000000</c>.</summary>
    public static Srgb Black => default;

    /// <summary><c>#ffffff</c>.</summary>
    public static Srgb White => new(255, 255, 255);

    /// <summary>Reads <c>#rrggbb</c>, or <c>#rgb</c> where each digit stands for two; either case, no blanks.</summary>
    /// <exception cref="FormatException">Any other text; the message quotes it.</exception>
    public static Srgb Parse(string text) => TryParse(text, out var colour)
        ? colour
        : throw new FormatException($"\"{text}\" is not a colour: write # and six hexadecimal digits, such as #2a9d8f, or # and three.");

    /// <inheritdoc cref="Parse"/>
    public static bool TryParse([NotNullWhen(true)] string? text, out Srgb colour)
    {
        colour = default;
        if (text is not { Length: 4 or 7 } || text[0] != '#'
            || !int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
            return false;
        colour = text.Length == 7
            ? new Srgb((byte)(value >> 16), (byte)(value >> 8), (byte)value)
            : new Srgb((byte)((value >> 8) * 17), (byte)((value >> 4 & 15) * 17), (byte)((value & 15) * 17));
        return true;
    }

    /// <summary>By the transfer function of IEC 61966-2-1.</summary>
    public LinearRgb ToLinear() => new(SrgbTransfer.ToLinear(Red), SrgbTransfer.ToLinear(Green), SrgbTransfer.ToLinear(Blue));

    /// <summary>CIELAB under D65.</summary>
    public Lab ToLab() => ToLinear().ToXyz().ToLab();

    /// <summary><c>#rrggbb</c> in lower case.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");
}
