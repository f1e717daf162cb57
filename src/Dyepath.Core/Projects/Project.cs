using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>Everything a designer has said about one pattern: the content of one project document.</summary>
public sealed record Project(
    string Title,
    string Designer,
    Yarn Yarn,
    FabricChoice Fabric,
    GarmentSpec Garment,
    SizeSelection Sizes,
    Edition Edition)
{
    public CompanionYarn? Companion { get; init; }

    /// <summary>The designer's own words by place (<see cref="WordPlaces"/>); kept when numbers change.</summary>
    public required ImmutableSortedDictionary<string, string> Words { get; init; }

    /// <summary>At most <see cref="Photo.Most"/>, each printed after the words of its place.</summary>
    public required ImmutableArray<Photo> Photos { get; init; }

    /// <summary>Version of the document's schema that this program writes.</summary>
    public const int SchemaVersion = 1;
}
