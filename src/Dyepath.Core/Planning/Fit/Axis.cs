using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>One dimension of a piece: counted in stitches or in rows, each count of one length.</summary>
/// <param name="AlongStitches">Counted in stitches, or else in rows.</param>
/// <param name="Step">Length of one stitch's width, or one row's height, at the garment's gauge.</param>
/// <param name="Hidden">Stitches or rows that a seam takes from one edge.</param>
internal readonly record struct Axis(bool AlongStitches, Length Step, int Hidden)
{
    /// <summary>Finished length: what <paramref name="edges"/> sewn edges hide taken off.</summary>
    public Length Of(double count, int edges) => Step * (count - edges * Hidden);

    /// <summary>The count whose finished length is nearest to the target, ties to more, at least one visible.</summary>
    /// <param name="multiple">1, or 2 for even counts.</param>
    public int Nearest(Length target, int edges, int multiple = 1)
    {
        var hidden = edges * Hidden;
        var count = (int)Math.Round((target / Step + hidden) / multiple, MidpointRounding.AwayFromZero) * multiple;
        return Math.Max(count, (hidden + multiple) / multiple * multiple);
    }

    /// <summary>The same, odd where <paramref name="like"/> is odd and even where it is even, so that it can be centred on it.</summary>
    public int NearestLike(Length target, int edges, int like)
    {
        var parity = Math.Abs(like % 2);
        return Math.Max(parity == 0 ? 2 : 1,
            (int)Math.Round((target / Step + edges * Hidden - parity) / 2, MidpointRounding.AwayFromZero) * 2 + parity);
    }
}
