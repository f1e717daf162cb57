using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>Everything a designer has said about one pattern: the content of one project document.</summary>
/// <param name="Words">The designer's own words by place (<see cref="WordPlaces"/>); kept when numbers change.</param>
/// <param name="Photos">At most <see cref="Photo.Most"/>, each printed after the words of its place.</param>
public sealed record Project(
    string Title,
    string Designer,
    Yarn Yarn,
    CompanionYarn? Companion,
    FabricChoice Fabric,
    GarmentSpec Garment,
    SizeSelection Sizes,
    Edition Edition,
    ImmutableSortedDictionary<string, string> Words,
    ImmutableArray<Photo> Photos)
{
    /// <summary>Version of the document's schema that this program writes.</summary>
    public const int SchemaVersion = 1;
}
