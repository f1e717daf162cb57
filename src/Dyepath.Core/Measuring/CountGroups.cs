using Dyepath.Core.Limits;

namespace Dyepath.Core.Measuring;

/// <summary>How far one count may be from the next one of the same section.</summary>
/// <param name="Boundary">As in <see cref="SectionDoubt"/>, of either end.</param>
internal readonly record struct CountDoubt(HandsPrior Hands, double Boundary)
{
    /// <summary>Variance of a count of about so many stitches, in stitches squared: its two rounded and unsure ends, the dye, the
    /// hands.</summary>
    public double Variance(double stitches) =>
        1.0 / 6 + 2 * Boundary + stitches * stitches * Hands.Dye * Hands.Dye + Hands.WanderVariance(stitches);
}

/// <summary>Counts gathered by section, with the sum of squares about each section's usual count kept up to date.</summary>
internal sealed class CountGroups
{
    /// <summary>Squares beyond this add nothing more, so that one odd count does not pass for a slip.</summary>
    private const double LargestSquare = 16;

    private readonly int[] _counts;
    private readonly CountDoubt _doubt;
    private readonly Effort? _effort;
    private readonly SortedCounts[] _groups;
    private readonly double[] _misfits;

    /// <param name="shift">Places by which every count's section lies behind its place in the record.</param>
    public CountGroups(int[] counts, int sections, int shift, CountDoubt doubt, Effort? effort)
    {
        _counts = counts;
        _doubt = doubt;
        _effort = effort;
        _groups = [.. Enumerable.Range(0, sections).Select(_ => new SortedCounts())];
        _misfits = new double[sections];
        for (var n = 0; n < counts.Length; n++)
            _groups[Section(n, shift)].Change(counts[n], 1);
        for (var j = 0; j < sections; j++)
            _misfits[j] = MisfitOf(_groups[j]);
    }

    public double Misfit => _misfits.Sum();

    public void Add(int place, int shift) => Change(place, shift, 1);

    public void Remove(int place, int shift) => Change(place, shift, -1);

    private void Change(int place, int shift, int by)
    {
        var section = Section(place, shift);
        var group = _groups[section];
        group.Change(_counts[place], by);
        _effort?.Spend(1 + group.Distinct / 4);
        _misfits[section] = MisfitOf(group);
    }

    private int Section(int place, int shift) => (place + shift + _groups.Length) % _groups.Length;

    private double MisfitOf(SortedCounts group)
    {
        var all = group.All;
        if (all.IsEmpty)
            return 0;
        var before = group.Total / 2;
        double median = 0;
        foreach (var (count, times) in all)
        {
            median = count;
            before -= times;
            if (before < 0)
                break;
        }
        // The median alone would jump by a stitch where a section takes half a stitch more than a whole number.
        var variance = _doubt.Variance(median);
        double sum = 0, kept = 0;
        foreach (var (count, times) in all)
        {
            if ((count - median) * (count - median) <= LargestSquare * variance)
            {
                sum += (double)count * times;
                kept += times;
            }
        }
        var centre = sum / kept;
        var squares = 0.0;
        foreach (var (count, times) in all)
            squares += times * Math.Min((count - centre) * (count - centre) / variance, LargestSquare);
        return squares;
    }
}

/// <summary>How often each count stands in a group, by count.</summary>
internal sealed class SortedCounts
{
    private (int Count, int Times)[] _all = new (int, int)[4];

    public int Distinct { get; private set; }

    public int Total { get; private set; }

    public ReadOnlySpan<(int Count, int Times)> All => _all.AsSpan(0, Distinct);

    public void Change(int count, int by)
    {
        Total += by;
        int low = 0, high = Distinct;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_all[middle].Count < count)
                low = middle + 1;
            else
                high = middle;
        }
        if (low < Distinct && _all[low].Count == count)
        {
            _all[low].Times += by;
            if (_all[low].Times == 0)
                Array.Copy(_all, low + 1, _all, low, --Distinct - low);
            return;
        }
        if (Distinct == _all.Length)
            Array.Resize(ref _all, 2 * Distinct);
        Array.Copy(_all, low, _all, low + 1, Distinct++ - low);
        _all[low] = (count, by);
    }
}
