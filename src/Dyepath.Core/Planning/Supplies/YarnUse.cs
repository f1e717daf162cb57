using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What takes yarn in a size.</summary>
public enum YarnPurpose
{
    /// <summary>The stitches of a piece.</summary>
    Stitches,

    /// <summary>What turns and joins of rounds take between rows.</summary>
    Turning,

    /// <summary>The chains that a piece begins on.</summary>
    Foundation,

    /// <summary>Chains of companion yarn that rows are worked on over, with their ends.</summary>
    ChainsToWorkOver,

    /// <summary>Plain bands along a piece's sides.</summary>
    SideBands,

    /// <summary>Ends of a piece of companion yarn.</summary>
    Ends,

    /// <summary>Whatever is worked along a finished edge.</summary>
    Edging,

    /// <summary>Sewing up.</summary>
    Seams,

    /// <summary>What a maker works before she begins.</summary>
    Swatch,

    /// <summary>What is cut away to reach the same place of the colours again.</summary>
    RestartsAndJoins,
}

/// <summary>Yarn that one thing takes in a size, all copies of it.</summary>
/// <param name="Purpose">What takes it.</param>
/// <param name="Companion">Of the companion yarn, or else of the variegated one.</param>
/// <param name="Length">Of all copies.</param>
public sealed record YarnUse(YarnPurpose Purpose, bool Companion, Length Length)
{
    /// <summary>The piece that takes it; missing for what belongs to none.</summary>
    public PieceId? Piece { get; init; }

    /// <summary>The edging that takes it; missing for everything else.</summary>
    public EdgingPlace? Edging { get; init; }
}

/// <summary>Names of uses of yarn.</summary>
public static class YarnUseNames
{
    /// <summary>As JSON names it, such as <c>front: side bands</c>; never changed once it was written.</summary>
    public static string Of(YarnUse use)
    {
        ArgumentNullException.ThrowIfNull(use);
        var purpose = Of(use.Purpose);
        return use switch
        {
            { Piece: { } piece } => $"{PlaceNames.Of(piece)}: {purpose}",
            { Edging: { } place } => $"{purpose}: {place.ToString().ToLowerInvariant()}",
            _ => purpose,
        };
    }

    /// <summary>What takes it, within a sentence: the piece, or else what it is for.</summary>
    public static string Taker(YarnUse use)
    {
        ArgumentNullException.ThrowIfNull(use);
        return use.Piece is { } piece ? PlaceNames.Of(piece) : Of(use.Purpose);
    }

    private static string Of(YarnPurpose purpose) => purpose switch
    {
        YarnPurpose.Stitches => "stitches",
        YarnPurpose.Turning => "turning",
        YarnPurpose.Foundation => "foundation",
        YarnPurpose.ChainsToWorkOver => "chains to work on over",
        YarnPurpose.SideBands => "side bands",
        YarnPurpose.Ends => "ends",
        YarnPurpose.Edging => "edging",
        YarnPurpose.Seams => "seams",
        YarnPurpose.Swatch => "swatch",
        YarnPurpose.RestartsAndJoins => "restarts, joins and their ends",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, "No such use of yarn."),
    };
}
