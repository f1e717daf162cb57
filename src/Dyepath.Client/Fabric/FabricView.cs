using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Client.Fabric;

/// <summary>The canvas on which a scene is panned, zoomed and read stitch by stitch, all by the browser alone.</summary>
internal static partial class FabricView
{
    private const string Module = "dyepath/fabric";

    private static Task? _module;

    public static Task LoadAsync() => _module ??= JSHost.ImportAsync(Module, "../js/fabric.js");

    public static void Show(string id, FabricScene scene, byte[] cells) => Show(id, scene.ToJson(), cells);

    /// <param name="picked">Told patch, column and line of a stitch, from the left and the top.</param>
    [JSImport("listen", Module)]
    public static partial void Listen(
        string id, [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number, JSType.Number>>] Action<int, int, int> picked);

    [JSImport("zoom", Module)]
    public static partial void Zoom(string id, double factor);

    [JSImport("fit", Module)]
    public static partial void Fit(string id);

    [JSImport("forget", Module)]
    public static partial void Forget(string id);

    [JSImport("show", Module)]
    private static partial void Show(string id, string scene, [JSMarshalAs<JSType.MemoryView>] Span<byte> cells);
}
