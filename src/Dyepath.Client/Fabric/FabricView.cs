using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Client.Fabric;

/// <summary>The canvas on which a scene is panned, zoomed and read stitch by stitch, all by the browser alone.</summary>
internal static partial class FabricView
{
    private const string Module = "dyepath/fabric";

    private static Task? _module;

    public static Task LoadAsync() => _module ??= JSHost.ImportAsync(Module, "../js/fabric.js");

    /// <param name="stitches">As <see cref="FabricScene.Stitches"/> has them.</param>
    /// <param name="cloth">As yarn; else as plain cells with symbols.</param>
    public static void Show(string id, FabricScene scene, byte[] stitches, bool cloth) => Show(id, scene.ToJson(), stitches, cloth);

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

    /// <summary>Whether this device last showed plain cells.</summary>
    [JSImport("isPlain", Module)]
    public static partial bool IsPlain();

    /// <summary>Shows a canvas as cloth or plain, and has the device remember it.</summary>
    [JSImport("dress", Module)]
    public static partial void Dress(string id, bool cloth);

    [JSImport("show", Module)]
    private static partial void Show(string id, string scene, [JSMarshalAs<JSType.MemoryView>] Span<byte> stitches, bool cloth);
}
