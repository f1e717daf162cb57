using System.Collections.Immutable;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>
/// Where the tapped sections depart from their sequence, each departure by its name; and the stretches between, which are free of them.
/// </summary>
internal static class TapBreaks
{
    /// <summary>Of all tests on one record together: so often an honest record is blamed.</summary>
    private const double Significance = 0.002;

    /// <summary>The logarithm of how seldom a knot lies between two given sections.</summary>
    private const double RareCut = 9;

    /// <summary>Where no section is missing between them, both sides of a knot are shorter than usual by so many standard
    /// deviations.</summary>
    private const double CutByMore = 2;

    /// <param name="Kind">What it is.</param>
    /// <param name="At">Index of the section that it is seen at.</param>
    public readonly record struct Break(TapRemarkKind Kind, int At);

    public static (ImmutableArray<Break> Breaks, List<List<TappedSection>> Stretches) Of(
        TapCycle cycle, ImmutableArray<TappedSection> sections, HandsPrior hands)
    {
        var doubt = new CountDoubt(hands, TapAlignment.Misreads);
        var odd = Odd(cycle, sections, doubt);
        var breaks = ImmutableArray.CreateBuilder<Break>();
        var isLost = new bool[sections.Length];
        for (var i = 1; i < sections.Length; i++)
        {
            switch (sections[i].Step)
            {
                case SectionStep.Flip:
                    breaks.Add(new(TapRemarkKind.ReversedBall, i));
                    isLost[i - 1] = isLost[i] = true;
                    break;
                case SectionStep.Jump:
                case SectionStep.Skip when CutRatherThanWhole(cycle, sections, i, doubt) > 1:
                case SectionStep.Next when CutRatherThanWhole(cycle, sections, i, doubt) > RareCut:
                    breaks.Add(new(TapRemarkKind.Knot, i));
                    isLost[i - 1] = isLost[i] = true;
                    break;
                case SectionStep.Skip:
                    breaks.Add(new(TapRemarkKind.SkippedSection, i));
                    break;
            }
        }
        var limit = Limit(sections.Length);
        for (var i = 1; i + 1 < sections.Length; i++)
        {
            if (odd[i] == 0 || isLost[i])
                continue;
            isLost[i] = true;
            // What one section has too many and the next too few are stitches misread at their boundary.
            if (IsMoved(i - 1) || IsMoved(i + 1))
                continue;
            var usual = cycle.Lengths[sections[i].Section];
            var isDouble = usual >= 2 && Math.Abs(sections[i].Taps - 2 * usual) <= 4 * Math.Sqrt(doubt.Variance(usual)) + 0.5;
            breaks.Add(new(isDouble ? TapRemarkKind.DoubledSection : TapRemarkKind.Miscount, i));

            bool IsMoved(int other)
            {
                var (own, next) = (cycle.Lengths[sections[i].Section], cycle.Lengths[sections[other].Section]);
                var beside = sections[other].Taps - next;
                return TapCycleSearch.IsWhole(sections, other) && beside * odd[i] < 0 && Math.Abs(beside) > 1
                    && Math.Abs(beside + odd[i]) - 0.5 <= limit * Math.Sqrt(doubt.Variance(own + next));
            }
        }
        return ([.. breaks.OrderBy(b => b.At)], Stretches(sections, isLost));
    }

    /// <summary>
    /// How much likelier, as a logarithm, two neighbours are cut anywhere than whole; 0 or less where either is longer than usual, or
    /// cut anyway.
    /// </summary>
    private static double CutRatherThanWhole(TapCycle cycle, ImmutableArray<TappedSection> sections, int i, CountDoubt doubt)
    {
        if (i < 2 || i + 1 >= sections.Length || TapCycleSearch.IsBreak(sections[i - 1].Step) || TapCycleSearch.IsBreak(sections[i +
            1].Step))
            return 0;
        var sum = 0.0;
        foreach (var section in new[] { sections[i - 1], sections[i] })
        {
            var usual = cycle.Lengths[section.Section];
            var variance = doubt.Variance(usual);
            var apart = section.Taps - usual;
            var deviations = apart / Math.Sqrt(variance);
            if (deviations > 1.5 || (sections[i].Step == SectionStep.Next && deviations > -CutByMore))
                return 0;
            sum += apart * apart / (2 * variance) + Math.Log(2 * Math.PI * variance) / 2 - Math.Log(usual);
        }
        return sum;
    }

    /// <summary>For each section how far its taps are from the others' of its kind, in taps; 0 where chance explains it, or nothing
    /// can be said.</summary>
    private static double[] Odd(TapCycle cycle, ImmutableArray<TappedSection> sections, CountDoubt doubt)
    {
        var odd = new double[sections.Length];
        var times = new int[cycle.Count];
        for (var i = 0; i < sections.Length; i++)
            times[sections[i].Section] += TapCycleSearch.IsWhole(sections, i) ? 1 : 0;
        var limit = Limit(sections.Length);
        for (var i = 1; i + 1 < sections.Length; i++)
        {
            var j = sections[i].Section;
            if (times[j] < 3)
                continue;
            var apart = sections[i].Taps - cycle.Lengths[j];
            var deviation = Math.Sqrt(doubt.Variance(cycle.Lengths[j]) * (1 + 1.5 / times[j]));
            // A count is a whole number: half a stitch on either side is rounding, not oddity.
            if (Math.Abs(apart) - 0.5 > limit * deviation)
                odd[i] = apart;
        }
        return odd;
    }

    private static double Limit(int tests) => Normal.TwoSided(1 - Significance / Math.Max(1, tests));

    private static List<List<TappedSection>> Stretches(ImmutableArray<TappedSection> sections, bool[] isLost)
    {
        var stretches = new List<List<TappedSection>> { new() };
        for (var i = 1; i + 1 < sections.Length; i++)
        {
            if (isLost[i] || sections[i].Step != SectionStep.Next)
                stretches.Add([]);
            if (!isLost[i])
                stretches[^1].Add(sections[i]);
        }
        foreach (var stretch in stretches)
        {
            if (stretch.Count > 0 && stretch[0].IsBackwards)
                stretch.Reverse();
        }
        stretches.RemoveAll(stretch => stretch.Count == 0);
        return stretches;
    }
}
