using System.Buffers.Binary;
using System.Text;

namespace Dyepath.Drawing.Typography;

/// <summary>What layout needs of a TrueType file: which characters it has and how wide they are.</summary>
/// <remarks>Reads <c>head</c>, <c>hhea</c>, <c>hmtx</c> and the Unicode subtable of <c>cmap</c> in format 4 (OpenType 1.9).</remarks>
internal sealed class FontFile
{
    private readonly Dictionary<int, double> _advances = [];

    private FontFile(byte[] bytes)
    {
        Bytes = bytes;
        ReadOnlySpan<byte> font = bytes;
        var unitsPerEm = (double)U16(font, Table(font, "head") + 18);
        var header = Table(font, "hhea");
        var metricCount = U16(font, header + 34);
        var metrics = Table(font, "hmtx");
        foreach (var (character, glyph) in Characters(font))
            _advances[character] = U16(font, metrics + 4 * Math.Min(glyph, metricCount - 1)) / unitsPerEm;
    }

    public byte[] Bytes { get; }

    public static FontFile Embedded(string name)
    {
        using var stream = typeof(FontFile).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"Font {name} is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new FontFile(bytes);
    }

    public bool Has(Rune character) => _advances.ContainsKey(character.Value);

    /// <summary>Width over the em; 0 for a character that the font lacks.</summary>
    public double Advance(Rune character) => _advances.GetValueOrDefault(character.Value);

    private static List<(int Character, int Glyph)> Characters(ReadOnlySpan<byte> font)
    {
        var cmap = Table(font, "cmap");
        for (var i = 0; i < U16(font, cmap + 2); i++)
        {
            var record = cmap + 4 + 8 * i;
            var subtable = cmap + (int)BinaryPrimitives.ReadUInt32BigEndian(font[(record + 4)..]);
            var isUnicode = U16(font, record) == 0 || (U16(font, record) == 3 && U16(font, record + 2) == 1);
            if (isUnicode && U16(font, subtable) == 4)
                return SegmentedCharacters(font, subtable);
        }
        throw new InvalidDataException("The font has no Unicode cmap of format 4.");
    }

    private static List<(int Character, int Glyph)> SegmentedCharacters(ReadOnlySpan<byte> font, int subtable)
    {
        var found = new List<(int, int)>();
        var doubled = U16(font, subtable + 6);
        var ends = subtable + 14;
        var starts = ends + doubled + 2;
        var deltas = starts + doubled;
        var offsets = deltas + doubled;
        for (var s = 0; s < doubled; s += 2)
        {
            var offset = U16(font, offsets + s);
            for (var character = U16(font, starts + s); character <= U16(font, ends + s) && character != 0xFFFF; character++)
            {
                var glyph = offset == 0 ? character : U16(font, offsets + s + offset + 2 * (character - U16(font, starts + s)));
                if (glyph != 0)
                    glyph = (glyph + U16(font, deltas + s)) & 0xFFFF;
                if (glyph != 0)
                    found.Add((character, glyph));
            }
        }
        return found;
    }

    private static int Table(ReadOnlySpan<byte> font, string tag)
    {
        for (var i = 0; i < U16(font, 4); i++)
        {
            var record = font.Slice(12 + 16 * i, 16);
            if (Encoding.ASCII.GetString(record[..4]) == tag)
                return (int)BinaryPrimitives.ReadUInt32BigEndian(record[8..]);
        }
        throw new InvalidDataException($"The font has no table {tag}.");
    }

    private static int U16(ReadOnlySpan<byte> font, int at) => BinaryPrimitives.ReadUInt16BigEndian(font[at..]);
}
