using Dyepath.Core.Garments;

namespace Dyepath.Core.Planning;

/// <summary>Rows of one copy of a piece that are worked in one go, without cutting the yarn.</summary>
/// <param name="Piece">Which piece of the garment.</param>
/// <param name="Copy">From 1; missing where only one is made.</param>
/// <param name="Side">
/// Where the yarn is joined on above another part, which of the parts on it this is, from 0; missing for what begins with the foundation.
/// </param>
public sealed record PieceRun(PieceId Piece, int? Copy = null, int? Side = null)
{
    /// <summary>As pattern and JSON name it, such as <c>sleeve 2</c> or <c>front, second side</c>.</summary>
    public string Name => FormattableString.Invariant(
        $"{PlaceNames.Of(Piece)}{(Copy is { } copy ? $" {copy}" : "")}{(Side is { } side ? $", {PartNames.Side(side)}" : "")}");
}
