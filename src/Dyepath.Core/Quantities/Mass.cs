namespace Dyepath.Core.Quantities;

/// <summary>A mass held in whole micrograms. <c>default</c> is zero.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    private const double MicrogramsPerGram = 1e6;

    /// <summary>The international avoirdupois ounce, 28.349523125 g by definition.</summary>
    private const double GramsPerOunce = 28.349523125;

    private readonly long _micrograms;

    private Mass(long micrograms) => _micrograms = micrograms;

    /// <summary>No mass, the same as <c>default</c>.</summary>
    public static Mass Zero => default;

    /// <summary>Rounded to the nearest microgram; at most 1,000 kg either way.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or beyond 1,000 kg.</exception>
    public static Mass FromGrams(double grams) =>
        Rounded(Guard.InRange(grams, -1e6, 1e6, "g") * MicrogramsPerGram);

    /// <inheritdoc cref="FromGrams"/>
    public static Mass FromOunces(double ounces) => FromGrams(ounces * GramsPerOunce);

    /// <summary>Of a million micrograms.</summary>
    public double Grams => _micrograms / MicrogramsPerGram;

    /// <summary>Avoirdupois, of 28.349523125 g.</summary>
    public double Ounces => Grams / GramsPerOunce;

    /// <summary>Exact.</summary>
    /// <exception cref="OverflowException">Beyond what whole micrograms in 64 bits hold.</exception>
    public static Mass operator +(Mass a, Mass b) => new(checked(a._micrograms + b._micrograms));

    /// <summary>Exact; negative where the second is heavier.</summary>
    /// <exception cref="OverflowException">Beyond what whole micrograms in 64 bits hold.</exception>
    public static Mass operator -(Mass a, Mass b) => new(checked(a._micrograms - b._micrograms));

    /// <summary>Rounded to the nearest microgram.</summary>
    public static Mass operator *(Mass a, double factor) => Rounded(a._micrograms * factor);

    /// <summary>How many times <paramref name="b"/> goes into <paramref name="a"/>.</summary>
    public static double operator /(Mass a, Mass b) => (double)a._micrograms / b._micrograms;

    /// <summary>Lighter.</summary>
    public static bool operator <(Mass a, Mass b) => a._micrograms < b._micrograms;

    /// <summary>Heavier.</summary>
    public static bool operator >(Mass a, Mass b) => a._micrograms > b._micrograms;

    /// <summary>Lighter or equal to the microgram.</summary>
    public static bool operator <=(Mass a, Mass b) => a._micrograms <= b._micrograms;

    /// <summary>Heavier or equal to the microgram.</summary>
    public static bool operator >=(Mass a, Mass b) => a._micrograms >= b._micrograms;

    /// <summary>Below 0 where this one is lighter, above 0 where it is heavier.</summary>
    public int CompareTo(Mass other) => _micrograms.CompareTo(other._micrograms);

    public override string ToString() => FormattableString.Invariant($"{Grams:0.###} g");

    private static Mass Rounded(double micrograms) =>
        new(checked((long)Math.Round(micrograms, MidpointRounding.AwayFromZero)));
}
