namespace Dyepath.Workspace.Tests.Pattern;

/// <summary>A grey JPEG of markers without a picture: enough for who reads the markers.</summary>
internal static class SmallJpeg
{
    public static string Base64(int bytes) => Convert.ToBase64String(
    [
        0xff, 0xd8, 0xff, 0xe0, 0, 16, .. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xff, 0xc0, 0, 11, 8, 0, 40, 0, 60, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, .. new byte[bytes - 45], 0xff, 0xd9,
    ]);
}
