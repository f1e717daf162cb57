using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>
/// A yarn's colours as they are worked: in the order in which they come off the ball, whichever end it is pulled from, with all that was
/// measured of them. Sections are numbered so everywhere but in the document, which lists them as the usual end has them.
/// </summary>
public sealed record ColourSequence
{
    private readonly bool _fromOtherEnd;

    private ColourSequence(Yarn yarn, MeasuredYarn measured, ImmutableArray<string> taken)
    {
        _fromOtherEnd = yarn.FromOtherEnd;
        Measured = measured;
        Ring = measured.Ring;
        Colours = SequenceColour.AsWorked(yarn, taken);
        // The same yarn, shared out over as many stitches as the maker makes it take.
        var natural = measured.Natural;
        YarnPerUnit = measured.YarnPerStitch.PerUnit * (natural.Total.Value / Ring.SequenceUnits);
        Dyed = AsWorked([.. natural.Sections.Select(s => s.Value * Ring.SequenceUnits / natural.Total.Value)]);
    }

    /// <summary>Name, colour and symbol of each section of the ring.</summary>
    public ImmutableArray<SequenceColour> Colours { get; private init; }

    /// <summary>The same sequence with other names and symbols.</summary>
    /// <param name="colours">As many as there are.</param>
    internal ColourSequence Called(ImmutableArray<SequenceColour> colours) => this with { Colours = colours };

    /// <summary>Units of each section, in the order of work.</summary>
    public ColourRing Ring { get; }

    /// <summary>
    /// How long each section is dyed, in units of the mean yarn per unit; their sum is the sequence's. Worked, a section takes the units of
    /// <see cref="Ring"/>, whose yarn is then more or less than the mean.
    /// </summary>
    public ImmutableArray<double> Dyed { get; }

    /// <summary>Yarn of one pooling unit.</summary>
    public Length YarnPerUnit { get; init; }

    /// <summary>What yarn and swatch say together.</summary>
    public MeasuredYarn Measured { get; }

    /// <param name="taken">What is no symbol of a colour: the names of the pattern's sizes.</param>
    public static ColourSequence Of(Yarn yarn, MeasuredYarn measured, ImmutableArray<string> taken)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        ArgumentNullException.ThrowIfNull(measured);
        return new ColourSequence(yarn, measured, taken);
    }

    /// <summary>Pooling units of a section.</summary>
    public double UnitsIn(int section) => ColourRing.ToUnits(Ring.Sections[section]);

    /// <summary>Pooling units from the sequence's beginning to a section's.</summary>
    public double UnitsBefore(int section) => ColourRing.ToUnits(Ring.BeginningOf(section));

    /// <summary>Which unit of its section one that begins there is, from 1.</summary>
    /// <param name="start">In pooling units from the sequence's beginning.</param>
    public int NthUnit(int section, double start) => Nth(start - UnitsBefore(section));

    /// <summary>The unit, from 1, that begins so many units into its section; to a millionth, which is what a document says.</summary>
    public static int Nth(double into) => (int)Math.Floor(into + 1e-6) + 1;

    /// <summary>What counted work asks of the hands, section by section.</summary>
    public ImmutableArray<SectionTension> Tension(TensionLimits? limits = null) => AsWorked(Measured.Tension(limits));

    /// <summary>What is said section by section in the order of the document, in the order of work; and the other way round.</summary>
    public ImmutableArray<T> AsWorked<T>(ImmutableArray<T> sections) => _fromOtherEnd ? [.. sections.Reverse()] : sections;
}
