using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>Which size serves a body that lies in the gap between two, or on their common edge.</summary>
public enum GapRule
{
    /// <summary>The size whose band is nearer; where both are equally near, the larger. The default.</summary>
    NearestBand,

    LargerBand,

    SmallerBand,
}

/// <summary>Where the body lies.</summary>
public enum BandPlace
{
    Inside,
    InGap,
    BelowChart,
    AboveChart,
}

/// <summary>
/// The size that serves a body. <paramref name="Misfit"/> is how far the body lies outside that size's band: positive
/// when the body is larger, zero inside. <paramref name="Skipped"/> names sizes that could not be considered because
/// the chart has no such measure for them.
/// </summary>
public sealed record SizeChoice(BodySize Size, BandPlace Place, Length Misfit, ImmutableArray<string> Skipped);
