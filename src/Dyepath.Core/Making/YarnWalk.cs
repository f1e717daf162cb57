using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making;

/// <summary>
/// Where each lane's yarn is within its sections, as stitches take it up. A stitch has the colour that covers most of its yarn, ties to
/// the one met first, as <see cref="RingReader"/> has it of even yarn. With dye variation every occurrence of a section has its own
/// length. All places are whole micro-stitches of yarn from the piece's first stitch, real yarn in <see cref="Starts"/> and
/// <see cref="Ends"/>, planned yarn in <see cref="PlannedStarts"/>.
/// </summary>
internal sealed class YarnWalk(MergedRing ring, double dyeVariation, int lanes)
{
    // Whole numbers, exact up to 9·10¹⁵.
    private readonly double[] _lengths = [.. ring.Stretches.Select(s => (double)s.Micro)];
    private readonly int[] _colours = [.. ring.Stretches.Select(s => s.Colour)];
    private readonly int[] _sections = new int[lanes];
    private readonly long[] _occurrences = new long[lanes];
    private readonly TrialSeed[] _seeds = new TrialSeed[lanes];

    /// <summary>Where the section that each lane is in begins on the real yarn.</summary>
    public double[] Starts { get; } = new double[lanes];

    /// <summary>Where it ends. A place exactly there belongs to the section still.</summary>
    public double[] Ends { get; } = new double[lanes];

    /// <summary>Where it would begin if every occurrence had its planned length.</summary>
    public double[] PlannedStarts { get; } = new double[lanes];

    public int[] Colours { get; } = new int[lanes];

    /// <summary>Sections begun since the piece's first stitch.</summary>
    public long Occurrence(int lane) => _occurrences[lane];

    /// <summary>Puts the piece's first stitch at <paramref name="start"/> of the ring, in [0, one sequence).</summary>
    public void Begin(int lane, double start, TrialSeed seed)
    {
        int section = 0;
        double before = 0;
        while (before + _lengths[section] <= start) before += _lengths[section++];
        _seeds[lane] = seed;
        _occurrences[lane] = 0;
        Starts[lane] = PlannedStarts[lane] = before - start;
        Enter(lane, section);
    }

    /// <summary>
    /// Takes up the yarn from <paramref name="from"/>, where the last stitch ended, to <paramref name="to"/> (not before it).
    /// </summary>
    /// <returns>The stitch's colour.</returns>
    public int Work(int lane, double from, double to)
    {
        int colour = Colours[lane];
        if (to <= Ends[lane]) return colour;
        double first = Ends[lane] - from;
        Advance(lane);
        if (to > Ends[lane]) return WorkMany(lane, colour, first, to);
        return to - Starts[lane] > first ? Colours[lane] : colour;
    }

    /// <summary>The general case: several sections in one stitch, perhaps a colour more than once.</summary>
    private int WorkMany(int lane, int firstColour, double first, double to)
    {
        Span<double> covered = stackalloc double[ColourRing.MostSections];
        covered.Clear();
        Span<int> met = stackalloc int[ColourRing.MostSections];
        int colours = 0;
        Cover(firstColour, first, covered, met, ref colours);
        for (; ; Advance(lane))
        {
            Cover(Colours[lane], Math.Min(to, Ends[lane]) - Starts[lane], covered, met, ref colours);
            if (to <= Ends[lane]) break;
        }
        int best = firstColour;
        foreach (int colour in met[..colours])
        {
            if (covered[colour] > covered[best]) best = colour;
        }
        return best;
    }

    private static void Cover(int colour, double yarn, Span<double> covered, Span<int> met, ref int colours)
    {
        if (!met[..colours].Contains(colour)) met[colours++] = colour;
        covered[colour] += yarn;
    }

    /// <summary>Goes on or back to the section that holds <paramref name="place"/>: a turn may take yarn or give it back.</summary>
    public void Turn(int lane, double place)
    {
        while (place > Ends[lane]) Advance(lane);
        while (place < Starts[lane])
        {
            int before = (_sections[lane] + _lengths.Length - 1) % _lengths.Length;
            _occurrences[lane]--;
            Starts[lane] -= Length(lane, before);
            PlannedStarts[lane] -= _lengths[before];
            Enter(lane, before);
        }
    }

    private void Advance(int lane)
    {
        int section = _sections[lane];
        _occurrences[lane]++;
        Starts[lane] = Ends[lane];
        PlannedStarts[lane] += _lengths[section];
        Enter(lane, section + 1 == _lengths.Length ? 0 : section + 1);
    }

    private void Enter(int lane, int section)
    {
        _sections[lane] = section;
        Colours[lane] = _colours[section];
        Ends[lane] = Starts[lane] + Length(lane, section);
    }

    /// <summary>In whole micro-stitches, so that going on and back by it is exact. Never below nothing.</summary>
    private double Length(int lane, int section)
    {
        double planned = _lengths[section];
        if (dyeVariation == 0) return planned;
        double factor = 1 + dyeVariation * _seeds[lane].Dye(_occurrences[lane]);
        return factor > 0 ? Math.Round(planned * factor) : 0;
    }
}
