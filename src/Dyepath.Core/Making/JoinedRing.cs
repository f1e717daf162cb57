using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making;

/// <summary>
/// A colour sequence as the maker sees it: neighbours of one colour joined (round the ring too), lengths in whole
/// micro-stitches, held as doubles that are exact up to 9·10¹⁵. Ties between two sections are then ties and not
/// accidents of rounding.
/// </summary>
internal sealed class JoinedRing
{
    public const double Stitch = ColourRing.Unit;

    private JoinedRing(double[] lengths, int[] colours, double origin)
    {
        Lengths = lengths;
        Colours = colours;
        Origin = origin;
        Sequence = lengths.Sum();
        Period = ShortestPeriod();
    }

    public double[] Lengths { get; }

    public int[] Colours { get; }

    public int Count => Lengths.Length;

    /// <summary>Where the first joined section begins, in the given sequence.</summary>
    public double Origin { get; }

    /// <summary>The whole sequence.</summary>
    public double Sequence { get; }

    /// <summary>The shortest shift that puts every colour onto itself: phases that differ by it look alike.</summary>
    public double Period { get; }

    /// <summary>
    /// Whether a stitch of at most two stitches' yarn has a colour exactly when its middle lies in that colour's one section. The
    /// section that holds the middle either reaches one of the stitch's ends, and so covers half of it, or lies within it; then it
    /// is at least one stitch long, half of the most that a stitch takes, and again nothing covers more. A middle on a boundary is
    /// a tie, and the earlier section's.
    /// </summary>
    public bool MiddleDecides => Lengths.Min() >= Stitch && Colours.Distinct().Count() == Count;

    public static JoinedRing Join(ColourRing ring)
    {
        var colours = ring.Colours;
        int count = ring.Sections.Length;
        int first = 0;
        double origin = 0;
        while (first < count && colours[first] == colours[(first + count - 1) % count])
            origin += ring.Sections[first++];
        // One colour all round: begin where it was given.
        if (first == count) (first, origin) = (0, 0);

        var lengths = new List<double>();
        var joined = new List<int>();
        for (int i = 0; i < count; i++)
        {
            int section = (first + i) % count;
            if (joined.Count > 0 && joined[^1] == colours[section]) lengths[^1] += ring.Sections[section];
            else
            {
                lengths.Add(ring.Sections[section]);
                joined.Add(colours[section]);
            }
        }
        return new JoinedRing([.. lengths], [.. joined], origin);
    }

    /// <summary>Rounded to the nearest whole micro-stitch, ties to even.</summary>
    public static double Micro(double stitches) => Math.Round(stitches * Stitch);

    private double ShortestPeriod()
    {
        for (int shift = 1; shift < Count; shift++)
        {
            if (Count % shift == 0 && Enumerable.Range(0, Count).All(
                j => Lengths[j] == Lengths[(j + shift) % Count] && Colours[j] == Colours[(j + shift) % Count]))
                return Lengths.Take(shift).Sum();
        }
        return Sequence;
    }
}
