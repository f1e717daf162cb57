using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Edgings;

/// <summary>A stretch of edge between two corners.</summary>
/// <param name="Id">Which one; <see cref="EdgeWords"/> has what the maker finds it by.</param>
/// <param name="RowEnds">True along row ends, false along stitches.</param>
/// <param name="Places">Row ends or stitches on it; at least 1.</param>
public sealed record EdgeStretch(StretchId Id, bool RowEnds, int Places)
{
    /// <summary>What a place takes so that it lies flat, and its length, where it is a row of an edging; missing: the fabric's.</summary>
    public (double Flat, Length Each)? Own { get; init; }

    /// <summary>Its places are stitches and row ends by turns.</summary>
    public bool Stepped { get; init; }

    /// <summary>How the edge turns where this stretch begins, if rounds must widen or narrow there; missing: they need not.</summary>
    public EdgeCorner? Corner { get; init; }
}

/// <summary>Where an edge turns; a round that goes by lies flat only if it widens or narrows there.</summary>
public enum EdgeCorner
{
    /// <summary>Round a corner of the fabric.</summary>
    Outer,

    /// <summary>Back from a corner that goes into the fabric.</summary>
    Inner,
}

/// <summary>
/// <paramref name="Stitches"/> in every <paramref name="Places"/> row ends or stitches, as long as whole groups last, then
/// <paramref name="RestStitches"/> in the <paramref name="RestPlaces"/> that are left; along steps they are one group, evenly spread.
/// </summary>
/// <param name="Stretch">The edge that it is for.</param>
/// <param name="Stitches">To pick up in each group.</param>
/// <param name="Places">Row ends or stitches of the edge in each group; at least 1.</param>
/// <param name="RestPlaces">What is left after whole groups; fewer than a group.</param>
/// <param name="RestStitches">To pick up in what is left.</param>
public sealed record StretchRule(EdgeStretch Stretch, int Stitches, int Places, int RestPlaces, int RestStitches)
{
    /// <summary>Whole groups along the stretch.</summary>
    public int Groups => (Stretch.Places - RestPlaces) / Places;

    /// <summary>Stitches to pick up along the stretch.</summary>
    public int Total => Groups * Stitches + RestStitches;
}

/// <summary>How many stitches to pick up along an edge, and how a person spreads them; said by <see cref="PickUpWords"/>.</summary>
/// <param name="Total">
/// Stitches in all: a whole number of the edging's repeats, and its plus where the edge is open, once its rounds have widened at corners.
/// </param>
/// <param name="Stretches">In the order in which the edge is worked.</param>
/// <param name="Corners">How many corners can take extra stitches.</param>
/// <param name="Extra">Stitches beyond the stretches' own, at the corners or evenly spaced; negative: left out.</param>
public sealed record PickUp(int Total, ImmutableArray<StretchRule> Stretches, int Corners, int Extra)
{
    /// <summary>Of <see cref="Extra"/>, those at each corner; the edging's own, or one more or fewer where that leaves whole repeats.</summary>
    public int AtEachCorner { get; init; }

    /// <summary>Of <see cref="Extra"/>, those evenly spaced along the edge; negative: left out.</summary>
    public int Along => Extra - Corners * AtEachCorner;

    private const int MostPlacesInGroup = 4;
    private const int MostStitchesPerPlace = 5;

    /// <summary>Stitches that a row end or a stitch of the edge can take.</summary>
    public static Bounds Ratios { get; } = new(1e-6, MostStitchesPerPlace, "stitches a row end or stitch");

    /// <summary>
    /// The simple ratio nearest to <paramref name="ratio"/> by quotient, at most 4 places to a group; ties to fewer
    /// places.
    /// </summary>
    /// <param name="ratio">Within <see cref="Ratios"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Ratio out of range.</exception>
    public static (int Stitches, int Places) SimpleRatio(double ratio)
    {
        Ratios.Check(ratio);
        var best = (Stitches: 1, Places: 1);
        var nearest = double.PositiveInfinity;
        for (var places = 1; places <= MostPlacesInGroup; places++)
        {
            for (var stitches = 1; stitches <= places * MostStitchesPerPlace; stitches++)
            {
                var miss = Math.Abs(Math.Log(stitches / (places * ratio)));
                if (miss < nearest - 1e-12)
                    (nearest, best) = (miss, (stitches, places));
            }
        }
        return best;
    }

    /// <summary>Plans the pick-up for one edge.</summary>
    /// <param name="stretches">In the order in which the edge is worked; at least one.</param>
    /// <param name="flat">From <see cref="EdgingGauge.Flat"/>; a ratio is said as the nearest <see cref="SimpleRatio"/>, so that between 0.87 and 1.11
    /// it is one for one.</param>
    /// <param name="corners">Corners between the stretches that can take extra stitches.</param>
    /// <param name="perCorner">Stitches that every corner takes beyond the stretches, so that it lies flat.</param>
    /// <param name="closed">The edge is a round, so that the edging's plus is not needed.</param>
    /// <param name="later">What the last round has more, since the rounds widen at corners: its repeats are whole.</param>
    /// <exception cref="ArgumentException">No stretch, or one without places.</exception>
    public static PickUp Plan(
        Edging edging, IReadOnlyList<EdgeStretch> stretches, FlatRatios flat, int corners, int perCorner = 0, bool closed = true,
        int later = 0)
    {
        ArgumentNullException.ThrowIfNull(edging);
        ArgumentNullException.ThrowIfNull(stretches);
        if (stretches.Count == 0 || stretches.Any(s => s.Places < 1))
            throw new ArgumentException("An edge has at least one stretch, each with at least one place.", nameof(stretches));
        var rules = stretches.Select(s => Spread(s, (s.Own?.Flat ?? flat.Along(s.RowEnds)) * edging.Draw)).ToImmutableArray();
        var own = rules.Sum(r => r.Total);
        var total = NearestRepeat(own + corners * perCorner + later, edging.Multiple, closed ? 0 : edging.Plus) - later;
        var extra = total - own;
        return new PickUp(total, rules, corners, extra)
        {
            AtEachCorner = corners == 0 ? 0 : extra % corners == 0 ? extra / corners : perCorner,
        };
    }

    /// <summary>Length of the edge, from the size of the fabric's stitches.</summary>
    public Length EdgeLength(Gauge fabric)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        return Stretches.Aggregate(Length.Zero, (sum, rule) => sum + rule.Stretch.Places * Each(rule.Stretch));

        Length Each(EdgeStretch stretch) => stretch.Own?.Each ?? (stretch.RowEnds ? fabric.RowHeight : fabric.StitchWidth);
    }

    /// <summary>Nearest whole number of repeats, at least one, and <paramref name="plus"/>; ties to more.</summary>
    public static int NearestRepeat(int wanted, int multiple, int plus) =>
        Math.Max(1, (int)Math.Round((double)(wanted - plus) / multiple, MidpointRounding.AwayFromZero)) * multiple + plus;

    /// <summary>
    /// Where the extra stitches go that are not at corners: evenly among all the places, from 1, half a gap from either
    /// end.
    /// </summary>
    public ImmutableArray<int> ExtraPlaces()
    {
        var places = Stretches.Sum(s => s.Stretch.Places);
        var extra = Math.Abs(Along);
        return [.. Enumerable.Range(0, extra).Select(i => (int)((2L * i + 1) * places / (2L * extra)) + 1)];
    }

    private static StretchRule Spread(EdgeStretch stretch, double ratio)
    {
        // Stitches and row ends of a slope differ in length: no group of places is like the next.
        if (stretch.Stepped)
        {
            var all = Math.Max(1, (int)Math.Round(stretch.Places * ratio, MidpointRounding.AwayFromZero));
            return new StretchRule(stretch, all, stretch.Places, 0, 0);
        }
        var (stitches, places) = SimpleRatio(ratio);
        var rest = stretch.Places % places;
        return new StretchRule(
            stretch, stitches, places, rest, (int)Math.Round((double)rest * stitches / places, MidpointRounding.AwayFromZero));
    }
}
