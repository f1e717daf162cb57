using Dyepath.Core.Booklets;

namespace Dyepath.Drawing.Tests;

/// <summary>A booklet with one photo: markers of a grey JPEG (ITU-T T.81, annex B) without a picture behind them.</summary>
internal static class SamplePhoto
{
    public const int Width = 60;
    public const int Height = 40;
    public const string Alternative = "The tunic <laid> flat & \"pinned\".";

    public static JpegPicture Jpeg { get; } = Read(
    [
        0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 1, 0, 72, 0, 72, 0, 0, 0xff, 0xc0, 0, 11, 8, 0, Height, 0, Width, 1, 1, 0x11, 0,
        0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0, 0, 0xff, 0xd9,
    ]);

    public static Booklet Booklet { get; } = With(Jpeg);

    public static Booklet With(JpegPicture picture) => new(
        "With a photo", "", ["M"], SampleBooklet.Everyone, [new Section("notes", Phrase.Plain("Notes"), [new Photo("notes", Alternative, picture)])]);

    private static JpegPicture Read(byte[] file) =>
        JpegPicture.TryRead(Convert.ToBase64String(file), out var picture, out var next) ? picture : throw new InvalidOperationException(next);
}
