using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Yarns;

/// <summary>
/// The colour sequence measured in pooling units (one stitch; in linen stitch one single crochet and chain 1), as a
/// ring of sections. Everything is held in whole micro-units, so that decimal lengths tie exactly where they should.
/// </summary>
public sealed class ColourRing
{
    /// <summary>Micro-units in one pooling unit.</summary>
    public const long Unit = 1_000_000;

    /// <summary>Most sections of a sequence.</summary>
    public const int MostSections = 64;

    /// <summary>Longest sequence, in pooling units.</summary>
    public const int LongestSequence = 4_096;

    /// <summary>
    /// Shortest section that can be worked, in pooling units: shorter ones would be walked over by the thousand in every stitch.
    /// </summary>
    public const double ShortestSection = 0.01;

    /// <summary>Whole units from the sequence's beginning at which a piece may begin.</summary>
    public static CountBounds Starts { get; } = new(0, LongestSequence - 1, "units");

    private ColourRing(ImmutableArray<long> sections, ImmutableArray<int> colours)
    {
        Sections = sections;
        Colours = colours;
        Total = sections.Sum();
    }

    /// <summary>Micro-units of each section, in the order in which the yarn runs.</summary>
    public ImmutableArray<long> Sections { get; }

    /// <summary>The colour of each section: sections of equal colour share a number, the first such section's index.</summary>
    public ImmutableArray<int> Colours { get; }

    /// <summary>C, the whole sequence in micro-units.</summary>
    public long Total { get; }

    /// <summary>C, the whole sequence in pooling units.</summary>
    public double SequenceUnits => ToUnits(Total);

    /// <summary>True when every section is a whole number of units.</summary>
    public bool IsWhole => Sections.All(s => s % Unit == 0);

    /// <param name="units">1 to 64 section lengths in pooling units, each over 0 and at most 4,096, rounded to micro-units.</param>
    /// <param name="colours">
    /// One key a section, equal keys for equal colours (1 to 64, as many as sections); omitted, every section is its own colour.
    /// </param>
    /// <exception cref="ArgumentException">No section, too many, or as many colours as sections are not given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A section outside its range, or a sequence over 4,096 units.</exception>
    public static ColourRing FromUnits<TColour>(IReadOnlyList<double> units, IReadOnlyList<TColour> colours)
        where TColour : notnull
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(colours);
        if (units.Count is 0 or > MostSections)
            throw new ArgumentException($"A sequence has 1 to {MostSections} sections, not {units.Count}.", nameof(units));
        if (colours.Count != units.Count)
            throw new ArgumentException($"{units.Count} sections need as many colours, not {colours.Count}.", nameof(colours));
        var sections = units.Select(u => ToMicro(Guard.InRange(u, 1.0 / Unit, LongestSequence, "stitches", nameof(units)))).ToImmutableArray();
        Guard.InRange(ToUnits(sections.Sum()), 1.0 / Unit, LongestSequence, "stitches", nameof(units));
        var first = new Dictionary<TColour, int>();
        var classes = ImmutableArray.CreateBuilder<int>(colours.Count);
        for (var i = 0; i < colours.Count; i++)
        {
            if (!first.TryGetValue(colours[i], out var at))
                first.Add(colours[i], at = i);
            classes.Add(at);
        }
        return new ColourRing(sections, classes.MoveToImmutable());
    }

    /// <inheritdoc cref="FromUnits{TColour}(IReadOnlyList{double}, IReadOnlyList{TColour})"/>
    public static ColourRing FromUnits(IReadOnlyList<double> units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return FromUnits(units, Enumerable.Range(0, units.Count).ToArray());
    }

    /// <summary>Micro-units, rounded to the nearest, ties away from zero.</summary>
    public static long ToMicro(double units) => checked((long)Math.Round(units * Unit, MidpointRounding.AwayFromZero));

    /// <summary>Pooling units of so many micro-units.</summary>
    public static double ToUnits(long micro) => (double)micro / Unit;

    /// <summary>The remainder in [0, <paramref name="modulus"/>), of negative values too.</summary>
    /// <param name="modulus">Over 0.</param>
    internal static long Modulo(long value, long modulus)
    {
        var rest = value % modulus;
        return rest < 0 ? rest + modulus : rest;
    }

    /// <summary>
    /// The section in which a place of the yarn lies, and how far into it, in micro-units; a boundary belongs to the later.
    /// </summary>
    /// <param name="place">Micro-units from the sequence's beginning, any value; taken modulo the sequence.</param>
    public (int Section, long Into) Locate(long place)
    {
        var into = Modulo(place, Total);
        var section = 0;
        while (into >= Sections[section])
            into -= Sections[section++];
        return (section, into);
    }

    /// <summary>Micro-units from the sequence's beginning to that of a section.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such section.</exception>
    public long BeginningOf(int section)
    {
        Guard.InRange(section, 0, Sections.Length - 1, "sections");
        var before = 0L;
        for (var i = 0; i < section; i++)
            before += Sections[i];
        return before;
    }

    /// <summary>The sequence as it runs when the ball is pulled from its other end; section order reversed.</summary>
    public ColourRing Reversed() => FromUnits(
        Sections.Reverse().Select(ToUnits).ToArray(), Colours.Reverse().ToArray());
}
