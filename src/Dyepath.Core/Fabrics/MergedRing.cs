using System.Collections.Immutable;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>A stretch of one colour once equal neighbours are merged.</summary>
/// <param name="Colour">As in <see cref="ColourRing.Colours"/>.</param>
/// <param name="Micro">In micro-units.</param>
public readonly record struct ColourStretch(int Colour, long Micro);

/// <summary>A colour sequence as the eye sees it: neighbours of one colour are one stretch, round the ring too.</summary>
/// <param name="Stretches">In the order in which the yarn runs.</param>
/// <param name="Origin">Where the first stretch begins, in micro-units from the sequence's start; 0 or negative.</param>
public sealed record MergedRing(ImmutableArray<ColourStretch> Stretches, long Origin)
{
    /// <summary>The whole sequence, in micro-units.</summary>
    public long Total { get; } = Stretches.Sum(s => s.Micro);

    /// <summary>Whether every colour has one stretch, so that a colour says where in the sequence it is.</summary>
    internal bool IsDistinct { get; } = Stretches.DistinctBy(s => s.Colour).Count() == Stretches.Length;

    /// <summary>Merges neighbours of one colour, the last section and the first too where they are alike.</summary>
    public static MergedRing Of(ColourRing ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var merged = new List<ColourStretch>();
        for (var i = 0; i < ring.Sections.Length; i++)
        {
            if (merged.Count > 0 && merged[^1].Colour == ring.Colours[i])
                merged[^1] = merged[^1] with { Micro = merged[^1].Micro + ring.Sections[i] };
            else
                merged.Add(new ColourStretch(ring.Colours[i], ring.Sections[i]));
        }
        if (merged.Count == 1 || merged[0].Colour != merged[^1].Colour)
            return new MergedRing([.. merged], 0);
        var over = merged[^1].Micro;
        merged[0] = merged[0] with { Micro = merged[0].Micro + over };
        return new MergedRing([.. merged[..^1]], -over);
    }
}
