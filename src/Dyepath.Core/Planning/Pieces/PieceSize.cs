using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;

namespace Dyepath.Core.Planning;

/// <summary>How large a piece may be that is worked stitch by stitch.</summary>
internal static class PieceSize
{
    /// <summary>Null where it can be worked.</summary>
    /// <param name="stitches">Missing where no count serves, so that only the rows are known.</param>
    public static Finding? Fault(string size, string piece, int? stitches, int rows) =>
        stitches > FabricPath.MostStitches || rows > FabricPath.MostRows
            ? new Finding(FindingLevel.Fault, "garment", FormattableString.Invariant(
                $"Size {size}: the {piece} comes to {(stitches is { } count ? $"{count} stitches and " : "")}{rows} rows; {FabricPath.MostStitches} stitches and {FabricPath.MostRows} rows are the most. Check the gauge, or make it smaller."))
            : null;
}
