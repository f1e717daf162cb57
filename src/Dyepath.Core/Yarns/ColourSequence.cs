using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Yarns;

/// <summary>A section's colour as charts and words name it.</summary>
/// <param name="Symbol">One or two characters that stand for the colour where hue cannot; equal colours share theirs.</param>
public sealed record SequenceColour(string Name, Srgb Colour, string Symbol)
{
    /// <summary>
    /// The colours of a yarn, one a section, in the order of its sections. Symbols are given out in the order in which the colours come
    /// off the ball, and are the same wherever the yarn is shown.
    /// </summary>
    /// <param name="sections">At most 64.</param>
    /// <param name="fromOtherEnd">See <see cref="Yarn.FromOtherEnd"/>.</param>
    public static ImmutableArray<SequenceColour> Of(ImmutableArray<YarnSection> sections, bool fromOtherEnd)
    {
        var distinct = (fromOtherEnd ? sections.Reverse() : sections).DistinctBy(section => section.Colour).ToImmutableArray();
        var symbols = ColourSymbols.For([.. distinct.Select(section => section.Name)]);
        var symbolOf = distinct.Zip(symbols).ToDictionary(d => d.First.Colour, d => d.Second);
        return [.. sections.Select(section => new SequenceColour(section.Name, section.Colour, symbolOf[section.Colour]))];
    }

    /// <summary>The colours of a yarn, one a section, in the order in which they come off the ball.</summary>
    public static ImmutableArray<SequenceColour> AsWorked(Yarn yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        var colours = Of(yarn.Sections, yarn.FromOtherEnd);
        return yarn.FromOtherEnd ? [.. colours.Reverse()] : colours;
    }
}

/// <summary>
/// A yarn's colours as they are worked: in the order in which they come off the ball, whichever end it is pulled from, with all that was
/// measured of them. Sections are numbered so everywhere but in the document, which lists them as the usual end has them.
/// </summary>
public sealed record ColourSequence
{
    private readonly bool _fromOtherEnd;

    private ColourSequence(Yarn yarn, MeasuredYarn measured)
    {
        _fromOtherEnd = yarn.FromOtherEnd;
        Measured = measured;
        Ring = measured.Ring;
        Colours = SequenceColour.AsWorked(yarn);
        // The same yarn, shared out over as many stitches as the maker makes it take.
        YarnPerUnit = measured.YarnPerStitch.PerUnit * (measured.Natural.Total.Value / Ring.SequenceUnits);
    }

    /// <summary>Name, colour and symbol of each section of the ring.</summary>
    public ImmutableArray<SequenceColour> Colours { get; }

    public ColourRing Ring { get; }

    /// <summary>Yarn of one pooling unit.</summary>
    public Length YarnPerUnit { get; init; }

    /// <summary>What yarn and swatch say together.</summary>
    public MeasuredYarn Measured { get; }

    public static ColourSequence Of(Yarn yarn, MeasuredYarn measured)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        ArgumentNullException.ThrowIfNull(measured);
        return new ColourSequence(yarn, measured);
    }

    /// <summary>Pooling units of a section.</summary>
    public double UnitsIn(int section) => ColourRing.ToUnits(Ring.Sections[section]);

    /// <summary>Pooling units from the sequence's beginning to a section's.</summary>
    public double UnitsBefore(int section) => ColourRing.ToUnits(Ring.BeginningOf(section));

    /// <summary>What counted work asks of the hands, section by section.</summary>
    public ImmutableArray<SectionTension> Tension(TensionLimits? limits = null) => AsWorked(Measured.Tension(limits));

    /// <summary>What is said section by section in the order of the document, in the order of work; and the other way round.</summary>
    public ImmutableArray<T> AsWorked<T>(ImmutableArray<T> sections) => _fromOtherEnd ? [.. sections.Reverse()] : sections;
}
