using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>Two sizes, one after the other in a chart, of which the later has the smaller minimum or maximum.</summary>
/// <param name="Measure">The measure that falls.</param>
/// <param name="Earlier">The size with the larger value.</param>
/// <param name="Later">The next size that has the measure.</param>
public sealed record ChartDecrease(BodyMeasure Measure, BodySize Earlier, BodySize Later);

/// <summary>Body sizes, smallest first, from a standard or from the designer; both kinds are this one type.</summary>
public sealed class SizeChart
{
    /// <summary>Most sizes that a chart may have.</summary>
    public const int MostSizes = 40;

    /// <exception cref="ArgumentException">
    /// No size, more than <see cref="MostSizes"/>, two of one name, or a size with one measure twice.
    /// </exception>
    public SizeChart(string id, string title, Wearers wearer, Citation source, ImmutableArray<BodySize> sizes)
    {
        Guard.InRange(sizes.Length, 1, MostSizes, "sizes");
        if (sizes.DistinctBy(size => size.Name).Count() != sizes.Length)
            throw new ArgumentException("sizes must have different names.", nameof(sizes));
        if (sizes.FirstOrDefault(size => size.Measurements.DistinctBy(m => m.Measure).Count() != size.Measurements.Length) is { } twice)
            throw new ArgumentException($"size {twice.Name} must have each measure once.", nameof(sizes));
        (Id, Title, Wearer, Source, Sizes) = (id, title, wearer, source, sizes);
        Measures = [.. sizes.SelectMany(size => size.Measurements).Select(measurement => measurement.Measure).Distinct().Order()];
    }

    /// <summary>As a document names it, such as <c>women</c>.</summary>
    public string Id { get; }

    /// <summary>As the pattern and the screens print it.</summary>
    public string Title { get; }

    /// <summary>Whom the chart is for, one of the four; the safety rules depend on it.</summary>
    public Wearers Wearer { get; }

    /// <summary>Of the chart as a whole; each measurement has its own.</summary>
    public Citation Source { get; }

    /// <summary>Smallest first, 1 to <see cref="MostSizes"/>.</summary>
    public ImmutableArray<BodySize> Sizes { get; }

    internal bool IsForMen => Id == "men" || Id.EndsWith("-men", StringComparison.Ordinal);

    /// <summary>Every measure that at least one size has.</summary>
    public ImmutableArray<BodyMeasure> Measures { get; }

    /// <summary>Looks for the size's name, small and capital letters told apart.</summary>
    public bool TryFind(string sizeName, [NotNullWhen(true)] out BodySize? size)
    {
        size = Sizes.FirstOrDefault(candidate => candidate.Name == sizeName);
        return size is not null;
    }

    /// <summary>Whether every size has the measure, so that a garment that depends on it can be graded through the chart.</summary>
    public bool HasInEverySize(BodyMeasure measure) => Sizes.All(size => size.TryGet(measure, out _, out _));

    /// <summary>
    /// Chooses the size for a body. Inside a band, that band; where bands share an edge or overlap, the larger of them
    /// (the smaller under <see cref="GapRule.SmallerBand"/>). In a gap, by <paramref name="rule"/>. Below or above the
    /// whole chart, its smallest or largest band, with the misfit. Larger means a band that lies higher, in any order of the
    /// chart.
    /// </summary>
    /// <returns>False when no size has the measure; <paramref name="notInChart"/> says so.</returns>
    public bool TrySizeFor(
        BodyMeasure measure, Length value, GapRule rule,
        [NotNullWhen(true)] out SizeChoice? choice, [NotNullWhen(false)] out string? notInChart)
    {
        choice = null;
        notInChart = null;
        var bands = new List<(BodySize Size, BodyRange Range)>();
        var skipped = ImmutableArray.CreateBuilder<string>();
        foreach (var size in Sizes)
        {
            if (size.TryGet(measure, out var found, out _))
                bands.Add((size, found.Range));
            else
                skipped.Add(size.Name);
        }
        if (bands.Count == 0)
        {
            notInChart = $"The chart {Id} has no {BodyMeasures.Words(measure)}: choose by another measure, or enter your own chart.";
            return false;
        }

        bands.Sort((a, b) => a.Range.Middle.CompareTo(b.Range.Middle));
        var inside = bands.Where(band => band.Range.Contains(value)).ToList();
        var below = bands.Where(band => band.Range.Maximum < value).ToList();
        var above = bands.Where(band => band.Range.Minimum > value).ToList();
        var (chosen, place) = (inside, below, above) switch
        {
            ({ Count: > 0 }, _, _) => (rule == GapRule.SmallerBand ? inside[0] : inside[^1], BandPlace.Inside),
            (_, [], _) => (above[0], BandPlace.BelowChart),
            (_, _, []) => (below[^1], BandPlace.AboveChart),
            _ => (InGap(below.MaxBy(band => band.Range.Maximum), above.MinBy(band => band.Range.Minimum), value, rule), BandPlace.InGap),
        };
        choice = new SizeChoice(chosen.Size, place, chosen.Range.Misfit(value), skipped.ToImmutable());
        return true;
    }

    /// <summary>
    /// Every place where a measure falls from one size to the next that has it. A designer may mean it, so it is a
    /// matter for a warning.
    /// </summary>
    public ImmutableArray<ChartDecrease> Decreases()
    {
        var found = ImmutableArray.CreateBuilder<ChartDecrease>();
        foreach (var measure in Measures)
        {
            BodySize? earlier = null;
            var before = default(BodyRange);
            foreach (var size in Sizes)
            {
                if (!size.TryGet(measure, out var measurement, out _))
                    continue;
                if (earlier is not null && (measurement.Range.Minimum < before.Minimum || measurement.Range.Maximum < before.Maximum))
                    found.Add(new ChartDecrease(measure, earlier, size));
                (earlier, before) = (size, measurement.Range);
            }
        }
        return found.ToImmutable();
    }

    private static (BodySize Size, BodyRange Range) InGap(
        (BodySize Size, BodyRange Range) lower, (BodySize Size, BodyRange Range) upper, Length value, GapRule rule) => rule switch
        {
            GapRule.LargerBand => upper,
            GapRule.SmallerBand => lower,
            GapRule.NearestBand => value - lower.Range.Maximum < upper.Range.Minimum - value ? lower : upper,
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "rule must be NearestBand, LargerBand or SmallerBand."),
        };
}
