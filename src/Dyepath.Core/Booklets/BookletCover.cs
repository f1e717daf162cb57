using System.Collections.Immutable;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Booklets;

/// <summary>What stands on the front of a booklet below its title: the designer's photo and words, or else the garment as worn.</summary>
/// <param name="Colours">By section of the sequence as it is worked.</param>
/// <param name="Companion">Of cells in the companion yarn.</param>
/// <param name="Edging">Of edgings.</param>
/// <param name="Worn">By size; drawn when they are asked for.</param>
/// <param name="Sample">Index of the size that is shown where all sizes are printed.</param>
public sealed record BookletCover(
    ImmutableArray<Srgb> Colours, Srgb Companion, Srgb Edging, ImmutableArray<Lazy<WornViews>> Worn, int Sample)
{
    /// <summary>The designer's words for the cover, then her photos for it.</summary>
    public ImmutableArray<Block> Own { get; init; } = [];
}

/// <summary>A garment of one size as worn.</summary>
/// <param name="Front">Seen from the front.</param>
/// <param name="Behind">Seen from behind; missing where there is nothing else to see.</param>
public sealed record WornViews(GarmentDrawing Front, GarmentDrawing? Behind);
