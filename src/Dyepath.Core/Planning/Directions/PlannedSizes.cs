using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What all sizes have so far, while they are planned in one direction.</summary>
internal sealed class PlannedSizes(Layout layout, int sizes)
{
    /// <summary>By size, then by group.</summary>
    public GroupCounts[][] Counts { get; } =
        [.. Enumerable.Range(0, sizes).Select(_ => new GroupCounts[layout.Construction.Groups.Length])];

    /// <summary>By size: what a measure is to be.</summary>
    public Dictionary<GarmentMeasure, Length>[] Wanted { get; } = [.. Enumerable.Range(0, sizes).Select(_ => new Dictionary<GarmentMeasure, Length>())];

    /// <summary>By size: what a measure comes to.</summary>
    public Dictionary<GarmentMeasure, Length>[] Finished { get; } = [.. Enumerable.Range(0, sizes).Select(_ => new Dictionary<GarmentMeasure, Length>())];

    /// <summary>Gives an opening of a size's group its stitches or rows.</summary>
    public void Open(int size, int at, OpeningDesign opening, int count)
    {
        var counts = Counts[size][at];
        Counts[size][at] = counts with { Openings = counts.Openings.SetItem(opening.Id, count) };
        Finished[size][opening.Measure] = layout.Measure(counts.Group, opening, count);
    }
}
