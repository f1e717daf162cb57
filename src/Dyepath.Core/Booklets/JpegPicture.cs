using System.Buffers.Binary;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Booklets;

/// <summary>
/// A photograph as the document keeps it: a small JPEG of grey or colour, without what a camera notes down beside the picture.
/// </summary>
/// <remarks>
/// Only the markers are read (ITU-T T.81, annex B; T.871 for JFIF), so that a damaged or hostile file, or one that not every program
/// draws alike, is told before it is printed. Camera
/// notes (Exif, XMP, IPTC) are refused: they may say where a picture was taken, and how it is to be turned, which not every program heeds.
/// </remarks>
public sealed record JpegPicture
{
    /// <summary>Largest file, in bytes.</summary>
    public const int MostBytes = 200_000;

    /// <summary>Longest side, in pixels.</summary>
    public const int MostPixels = 2_400;

    private const string Again = "Save the picture anew as a JPEG, or choose another one.";

    private JpegPicture(string base64, int bytes, int width, int height) =>
        (Base64, ByteCount, Width, Height) = (base64, bytes, width, height);

    /// <summary>The file as the document holds it.</summary>
    public string Base64 { get; }

    /// <summary>Size of the JPEG file, not of its base64 text.</summary>
    public int ByteCount { get; }

    /// <summary>Pixels, 1 to <see cref="MostPixels"/>.</summary>
    public int Width { get; }

    /// <inheritdoc cref="Width"/>
    public int Height { get; }

    /// <summary>The JPEG file, byte for byte.</summary>
    public byte[] ToBytes() => Convert.FromBase64String(Base64);

    /// <param name="next">Where it is not such a picture: what to do.</param>
    public static bool TryRead(string base64, [NotNullWhen(true)] out JpegPicture? picture, out string next)
    {
        ArgumentNullException.ThrowIfNull(base64);
        picture = null;
        if (Bytes(base64) is not { } bytes)
        {
            next = $"Write a JPEG of at most {MostBytes / 1_000} kB as base64, without spaces or line breaks.";
            return false;
        }
        next = Read(bytes, out var width, out var height);
        if (next.Length == 0)
            picture = new JpegPicture(base64, bytes.Length, width, height);
        return picture is not null;
    }

    private static byte[]? Bytes(string base64)
    {
        if (base64.Length % 4 != 0 || base64.Length > (MostBytes + 2) / 3 * 4)
            return null;
        var expected = base64.Length / 4 * 3 - (base64.EndsWith("==", StringComparison.Ordinal) ? 2 : base64.EndsWith('=') ? 1 : 0);
        var bytes = new byte[expected];
        // White space among the characters, which it would overlook, leaves fewer bytes than there is room for.
        return Convert.TryFromBase64String(base64, bytes, out var written) && written == expected && expected <= MostBytes ? bytes : null;
    }

    /// <returns>Empty where all is well, otherwise what to do.</returns>
    private static string Read(ReadOnlySpan<byte> bytes, out int width, out int height)
    {
        (width, height) = (0, 0);
        var components = 0;
        if (!bytes.StartsWith((ReadOnlySpan<byte>)[0xff, 0xd8]) || !bytes.EndsWith((ReadOnlySpan<byte>)[0xff, 0xd9]))
            return $"It is no whole JPEG. {Again}";
        for (var at = 2; at + 4 <= bytes.Length && bytes[at] == 0xff;)
        {
            var marker = bytes[at + 1];
            if (marker == 0xff)
            {
                at++;
                continue;
            }
            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
            if (marker is < 0xc0 or (>= 0xd0 and <= 0xd9) || length < 2 || at + 2 + length > bytes.Length)
                break;
            var segment = bytes.Slice(at + 4, length - 2);
            switch (marker)
            {
                case 0xe1 or 0xed:
                    return "It carries notes of the camera, perhaps the place too. Save it without them.";
                case not 0xe0 when at == 2:
                case 0xe0 when at == 2 && (segment.Length < 14 || !segment.StartsWith("JFIF\0"u8)):
                    return $"It is a rare kind of JPEG. {Again}";
                case 0xc0 or 0xc1 or 0xc2 when width == 0 && segment.Length >= 6:
                    components = segment[5];
                    if (segment[0] != 8 || components is not (1 or 3))
                        return "Save it in grey or in red, green and blue, 8 bits each.";
                    height = BinaryPrimitives.ReadUInt16BigEndian(segment[1..]);
                    width = BinaryPrimitives.ReadUInt16BigEndian(segment[3..]);
                    if (width is < 1 or > MostPixels || height is < 1 or > MostPixels)
                        return FormattableString.Invariant($"It is {width} by {height} pixels. Scale it to at most {MostPixels} a side.");
                    break;
                case 0xda when width == 0:
                    return $"Its dimensions are missing. {Again}";
                case 0xda when bytes.Length - at - 2 - length >= 4:
                    return length == 6 + 2 * components && segment[0] == components ? "" : $"It is a rare kind of JPEG. {Again}";
                case 0xc0 or 0xc1 or 0xc2 or 0xc3 or (>= 0xc5 and <= 0xc7) or (>= 0xc9 and <= 0xcb) or (>= 0xcd and <= 0xcf):
                    return $"It is a rare kind of JPEG. {Again}";
            }
            at += 2 + length;
        }
        return $"It is damaged. {Again}";
    }
}
