using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Pattern;

namespace Dyepath.Client.Pattern;

/// <summary>The frame that shows the booklet (wwwroot/js/booklet.js).</summary>
internal static partial class BookletView
{
    public const string Module = "dyepath/booklet";
    public const string FrameId = "booklet-frame";

    /// <summary>Shows it, or renews what has changed in it and leaves the rest where it is.</summary>
    public static Task ShowAsync(string html) => OperatingSystem.IsBrowser() ? Show(FrameId, html) : Task.CompletedTask;

    /// <param name="section">Its id; empty, the cover.</param>
    /// <returns>Whether the booklet has such a section.</returns>
    public static bool GoTo(string section) => OperatingSystem.IsBrowser() && Go(FrameId, section);

    [JSImport("show", Module)]
    private static partial Task Show(string id, string html);

    [JSImport("go", Module)]
    private static partial bool Go(string id, string section);
}

/// <summary>Drawings as pixels, made by the browser (wwwroot/js/photo.js).</summary>
internal sealed partial class Raster : IRaster
{
    public async Task<byte[]?> PngAsync(string svg, int width, int height) =>
        OperatingSystem.IsBrowser() && await Png(svg, width, height) is { Length: > 0 } text ? Convert.FromBase64String(text) : null;

    [JSImport("png", PhotoIntake.Module)]
    private static partial Task<string?> Png(string svg, int width, int height);
}

/// <summary>Pictures from the reader's device (wwwroot/js/photo.js).</summary>
internal static partial class PhotoIntake
{
    public const string Module = "dyepath/photo";

    /// <returns>A JPEG as base64; empty where the browser cannot open what was chosen; null where nothing was.</returns>
    [JSImport("take", Module)]
    public static partial Task<string?> Take(string id, int mostPixels, int mostBytes);
}
