using System.Globalization;

namespace Dyepath.Core.Colours;

/// <summary>A colour in sRGB (IEC 61966-2-1), eight bits a channel, gamma-encoded. <c>default</c> is black.</summary>
public readonly record struct Srgb(byte R, byte G, byte B)
{
    /// <summary>Reads <c>#rrggbb</c> or <c>#rgb</c>, either case; false for anything else.</summary>
    public static bool TryParse(string? text, out Srgb colour)
    {
        colour = default;
        if (text is not { Length: 4 or 7 } || text[0] != '#')
            return false;
        var digits = text.Length == 7 ? text[1..] : string.Concat(text[1..].Select(d => new string(d, 2)));
        if (!uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
            return false;
        colour = new Srgb((byte)(value >> 16), (byte)(value >> 8), (byte)value);
        return true;
    }

    /// <summary><c>#rrggbb</c> in lower case.</summary>
    public override string ToString() => FormattableString.Invariant($"#{R:x2}{G:x2}{B:x2}");
}
