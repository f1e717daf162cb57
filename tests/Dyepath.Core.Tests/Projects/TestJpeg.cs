using Dyepath.Core.Booklets;

namespace Dyepath.Core.Tests.Projects;

/// <summary>JPEG files written marker by marker (ITU-T T.81, annex B); grey, and with no more picture than their markers need.</summary>
internal static class TestJpeg
{
    public static byte[] Jfif { get; } = [0xff, 0xe0, 0, 16, .. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0];

    /// <param name="bytes">Length of the file; missing, as short as may be.</param>
    public static byte[] Of(int width, int height, byte frame = 0xc0, byte components = 1, byte precision = 8, int bytes = 0, byte[]? before = null)
    {
        byte[] head =
        [
            0xff, 0xd8, .. Jfif, .. before ?? [],
            0xff, frame, 0, (byte)(8 + 3 * components), precision, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width,
            components, .. Enumerable.Repeat<byte[]>([1, 0x11, 0], components).SelectMany(c => c),
            0xff, 0xda, 0, (byte)(6 + 2 * components), components, .. Enumerable.Repeat<byte[]>([1, 0], components).SelectMany(c => c), 0, 63, 0,
        ];
        return [.. head, .. new byte[Math.Max(2, bytes - head.Length - 2)], 0xff, 0xd9];
    }

    public static JpegPicture Read(byte[] file) => JpegPicture.TryRead(Convert.ToBase64String(file), out var picture, out var next)
        ? picture
        : throw new ArgumentException(next, nameof(file));
}
