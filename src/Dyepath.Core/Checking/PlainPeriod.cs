using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>After how much yarn the colours come again, found by trying.</summary>
internal static class PlainPeriod
{
    /// <summary>
    /// The shortest part of the sequence, in units, that the whole repeats: tried from the shortest on, stretch by stretch of one colour.
    /// Null for one colour.
    /// </summary>
    public static double? Of(ColourRing ring)
    {
        if (ring.Colours.Distinct().Count() == 1)
            return null;
        for (var parts = ring.Sections.Length; parts > 1; parts--)
        {
            if (ring.Total % parts == 0 && IsRepeated(ring, ring.Total / parts))
                return (double)(ring.Total / parts) / ColourRing.Unit;
        }
        return (double)ring.Total / ColourRing.Unit;
    }

    private static bool IsRepeated(ColourRing ring, long part)
    {
        var ends = ring.Sections.Aggregate(new List<long> { 0 }, (sums, section) => [.. sums, sums[^1] + section]);
        var cuts = ends.Concat(ends.Select(e => (e + part) % ring.Total)).Distinct().Order().ToArray();
        return cuts.Zip(cuts.Skip(1)).All(stretch => ColourAt(stretch.First) == ColourAt((stretch.First - part + ring.Total) % ring.Total));

        int ColourAt(long place) => ring.Colours[ends.FindLastIndex(e => e <= place) is var at && at == ring.Sections.Length ? 0 : at];
    }
}
