using Dyepath.Core.Swatches;

namespace Dyepath.Core.Yarns;

/// <summary>Counts gathered by section, with the sum of squares about each section's usual count kept up to date.</summary>
internal sealed class CountGroups
{
    /// <summary>Squares beyond this add nothing more, so that one odd count does not pass for a slip.</summary>
    private const double LargestSquare = 16;

    private readonly int[] _counts;
    private readonly HandsPrior _hands;
    private readonly SortedDictionary<int, int>[] _groups;
    private readonly double[] _misfits;

    /// <param name="shift">Places by which every count's section lies behind its place in the record.</param>
    public CountGroups(int[] counts, int sections, int shift, HandsPrior hands)
    {
        _counts = counts;
        _hands = hands;
        _groups = [.. Enumerable.Range(0, sections).Select(_ => new SortedDictionary<int, int>())];
        _misfits = new double[sections];
        for (var n = 0; n < counts.Length; n++)
        {
            var group = _groups[Section(n, shift)];
            group[counts[n]] = group.GetValueOrDefault(counts[n]) + 1;
        }
        for (var j = 0; j < sections; j++)
            _misfits[j] = MisfitOf(_groups[j]);
    }

    public double Misfit => _misfits.Sum();

    public void Add(int place, int shift) => Change(place, shift, 1);

    public void Remove(int place, int shift) => Change(place, shift, -1);

    /// <summary>Variance of one count, in stitches squared: its two rounded ends, the dye, the hands.</summary>
    public static double Variance(double stitches, HandsPrior hands) =>
        1.0 / 6 + stitches * stitches * hands.Dye * hands.Dye + hands.WanderVariance(stitches);

    private void Change(int place, int shift, int by)
    {
        var section = Section(place, shift);
        var group = _groups[section];
        var count = _counts[place];
        var left = group.GetValueOrDefault(count) + by;
        if (left == 0)
            group.Remove(count);
        else
            group[count] = left;
        _misfits[section] = MisfitOf(group);
    }

    private int Section(int place, int shift) => (place + shift + _groups.Length) % _groups.Length;

    private double MisfitOf(SortedDictionary<int, int> group)
    {
        if (group.Count == 0)
            return 0;
        var before = group.Values.Sum() / 2;
        double median = 0;
        foreach (var (count, times) in group)
        {
            median = count;
            before -= times;
            if (before < 0)
                break;
        }
        // The median alone would jump by a stitch where a section takes half a stitch more than a whole number.
        var variance = Variance(median, _hands);
        double sum = 0, kept = 0;
        foreach (var (count, times) in group)
        {
            if ((count - median) * (count - median) <= LargestSquare * variance)
            {
                sum += (double)count * times;
                kept += times;
            }
        }
        var centre = sum / kept;
        var squares = 0.0;
        foreach (var (count, times) in group)
            squares += times * Math.Min((count - centre) * (count - centre) / variance, LargestSquare);
        return squares;
    }
}
