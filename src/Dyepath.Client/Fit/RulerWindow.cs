using System.Runtime.InteropServices.JavaScript;

namespace Dyepath.Client.Fit;

/// <summary>The window through which a ruler is seen.</summary>
internal static partial class RulerWindow
{
    private const string Module = "dyepath/fit";

    private static Task<JSObject>? _loading;

    public static Task Load() => _loading ??= JSHost.ImportAsync(Module, "../js/fit.js");

    [JSImport("width", Module)]
    public static partial double Width(string id);

    [JSImport("scrolled", Module)]
    public static partial double Scrolled(string id);

    [JSImport("scroll", Module)]
    public static partial void Scroll(string id, double left);
}
