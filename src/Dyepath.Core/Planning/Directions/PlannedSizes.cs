using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What all sizes have so far, while they are planned in one direction.</summary>
internal sealed class PlannedSizes
{
    private readonly Layout _layout;

    public PlannedSizes(Layout layout, int sizes)
    {
        _layout = layout;
        Counts = [.. Enumerable.Range(0, sizes).Select(_ => new GroupCounts[layout.Construction.Groups.Length])];
        Wanted = [.. Counts.Select(_ => new Dictionary<GarmentMeasure, Length>())];
        Finished = [.. Counts.Select(_ => new Dictionary<GarmentMeasure, Length>())];
    }

    private PlannedSizes(PlannedSizes of)
    {
        _layout = of._layout;
        Counts = [.. of.Counts.Select(c => c.ToArray())];
        Wanted = [.. of.Wanted.Select(w => new Dictionary<GarmentMeasure, Length>(w))];
        Finished = [.. of.Finished.Select(f => new Dictionary<GarmentMeasure, Length>(f))];
    }

    /// <summary>By size, then by group.</summary>
    public GroupCounts[][] Counts { get; }

    /// <summary>By size: what a measure is to be.</summary>
    public Dictionary<GarmentMeasure, Length>[] Wanted { get; }

    /// <summary>By size: what a measure comes to.</summary>
    public Dictionary<GarmentMeasure, Length>[] Finished { get; }

    /// <summary>To try something without a change of these.</summary>
    public PlannedSizes Copy() => new(this);

    /// <summary>Gives an opening of a size's group its stitches or rows.</summary>
    public void Open(int size, int at, OpeningDesign opening, int count)
    {
        var counts = Counts[size][at];
        Counts[size][at] = counts with { Openings = counts.Openings.SetItem(opening.Id, count) };
        Finished[size][opening.Measure] = _layout.Measure(counts.Group, opening, count);
    }
}
