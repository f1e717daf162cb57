using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Fit;

namespace Dyepath.Client.Fit;

/// <summary>The window through which a ruler is seen.</summary>
internal static partial class RulerWindow
{
    private const string Module = "dyepath/fit";

    private static Task<JSObject>? _loading;

    public static Task Load() => _loading ??= JSHost.ImportAsync(Module, "../js/fit.js");

    /// <param name="told">The width, now and whenever it has become another.</param>
    [JSImport("watch", Module)]
    public static partial void Watch(string id, [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> told);

    [JSImport("scrolled", Module)]
    public static partial double Scrolled(string id);

    [JSImport("scroll", Module)]
    public static partial void Scroll(string id, double left);
}
