using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>Everything a designer has said about one pattern: the content of one project document.</summary>
/// <param name="Title">The garment's name, as the designer writes it.</param>
/// <param name="Designer">The name printed as the author's.</param>
/// <param name="Yarn">The variegated yarn.</param>
/// <param name="Fabric">Stitch, swatches and how colours are kept.</param>
/// <param name="Garment">What is made.</param>
/// <param name="Sizes">Which sizes the pattern is written for.</param>
/// <param name="Edition">Terms, units and hand that the pattern is printed in first.</param>
public sealed record Project(
    string Title,
    string Designer,
    Yarn Yarn,
    FabricChoice Fabric,
    GarmentSpec Garment,
    SizeSelection Sizes,
    Edition Edition)
{
    /// <summary>A solid yarn beside the variegated one; missing where there is none.</summary>
    public CompanionYarn? Companion { get; init; }

    /// <summary>The designer's own words by place (<see cref="WordPlaces"/>); kept when numbers change.</summary>
    public required ImmutableSortedDictionary<string, string> Words { get; init; }

    /// <summary>At most <see cref="Photo.Most"/>, each printed after the words of its place.</summary>
    public required ImmutableArray<Photo> Photos { get; init; }

    /// <summary>Version of the document's schema that this program writes.</summary>
    public const int SchemaVersion = 1;
}
