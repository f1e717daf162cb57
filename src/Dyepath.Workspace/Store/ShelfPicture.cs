using Dyepath.Contracts;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Store;

internal static class ShelfPicture
{
    /// <summary>What stands for a project on the shelf while the host has not seen it.</summary>
    public static SwatchPicture? Of(Plan plan) => ProjectPicture.Of(plan, SwatchPicture.MostStitches, SwatchPicture.MostRows) is { } corner
        ? new SwatchPicture([.. corner.Colours.Select(c => c.ToString())], corner.Columns, corner.Rows, corner.Cells)
        : null;
}
