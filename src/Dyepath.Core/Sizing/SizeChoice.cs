using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>Which size serves a body that lies in the gap between two, or on their common edge.</summary>
public enum GapRule
{
    /// <summary>The size whose band is nearer; where both are equally near, the larger. The default.</summary>
    NearestBand,

    /// <summary>The size whose band lies higher.</summary>
    LargerBand,

    /// <summary>The size whose band lies lower.</summary>
    SmallerBand,
}

/// <summary>Where the body lies.</summary>
public enum BandPlace
{
    /// <summary>Within the chosen size's band, ends included.</summary>
    Inside,

    /// <summary>Between two bands.</summary>
    InGap,

    /// <summary>Smaller than every band.</summary>
    BelowChart,

    /// <summary>Larger than every band.</summary>
    AboveChart,
}

/// <summary>
/// The size that serves a body. <paramref name="Misfit"/> is how far the body lies outside that size's band: positive
/// when the body is larger, zero inside. <paramref name="Skipped"/> names sizes that could not be considered because
/// the chart has no such measure for them.
/// </summary>
/// <param name="Size">Whose pattern to follow.</param>
/// <param name="Place">In relation to the chart's bands.</param>
/// <param name="Misfit">Signed; zero inside the band.</param>
/// <param name="Skipped">Names of sizes, in the chart's order; mostly empty.</param>
public sealed record SizeChoice(BodySize Size, BandPlace Place, Length Misfit, ImmutableArray<string> Skipped);
