using System.Runtime.InteropServices.JavaScript;
using Dyepath.Core.Booklets;
using Dyepath.Workspace.Draft;

namespace Dyepath.Client.Draft;

/// <summary>Fabric painted by the browser from bytes; no element per stitch.</summary>
internal static partial class Canvas
{
    public const string Module = "dyepath/canvas";

    /// <param name="id">Of the canvas element.</param>
    /// <param name="view">Left, top, width and height in the drawing's units.</param>
    /// <param name="patches">Seven numbers each: left, top, width, height, columns, rows, quarter turns clockwise.</param>
    /// <param name="palette">0xRRGGBB by section; the last one is the companion yarn's.</param>
    public static void Paint(string id, double[] view, IReadOnlyList<Patch> patches, int[] palette)
    {
        var numbers = new double[7 * patches.Count];
        var cells = new byte[patches.Sum(p => p.Cells.Length)];
        var at = 0;
        for (var i = 0; i < patches.Count; i++)
        {
            var patch = patches[i];
            double[] said = [patch.X, patch.Y, patch.Width, patch.Height, patch.Columns, patch.Rows, patch.Turns];
            said.CopyTo(numbers, 7 * i);
            patch.Cells.CopyTo(cells, at);
            at += patch.Cells.Length;
        }
        Paint(id, view, numbers, cells, palette);
    }

    [JSImport("paint", Module)]
    private static partial void Paint(
        string id, double[] view, double[] patches, [JSMarshalAs<JSType.MemoryView>] Span<byte> cells, int[] palette);

    [JSImport("forget", Module)]
    public static partial void Forget(string id);
}
