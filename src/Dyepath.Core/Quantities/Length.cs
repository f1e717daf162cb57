namespace Dyepath.Core.Quantities;

/// <summary>
/// A length, positive or negative, held in whole nanometres: centimetres to seven decimals and inches
/// (25.4 mm, by definition) are both exact. <c>default</c> is zero.
/// </summary>
public readonly record struct Length : IComparable<Length>
{
    private const double NanometresPerMetre = 1e9;
    private const double NanometresPerCentimetre = 1e7;
    private const double NanometresPerInch = 25_400_000;

    /// <summary>Largest magnitude a factory accepts, 1,000 km.</summary>
    private const double LargestMetres = 1e6;

    private readonly long _nanometres;

    private Length(long nanometres) => _nanometres = nanometres;

    /// <summary>No length, the same as <c>default</c>.</summary>
    public static Length Zero => default;

    internal long Nanometres => _nanometres;

    internal static Length FromNanometres(long nanometres) => new(nanometres);

    /// <summary>Rounded to the nearest nanometre, ties away from zero; at most 1,000 km either way.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or beyond 1,000 km.</exception>
    public static Length FromMetres(double metres) =>
        Rounded(Guard.InRange(metres, -LargestMetres, LargestMetres, "m") * NanometresPerMetre);

    /// <inheritdoc cref="FromMetres"/>
    public static Length FromCentimetres(double centimetres) =>
        Rounded(Guard.InRange(centimetres, -LargestMetres * 100, LargestMetres * 100, "cm") * NanometresPerCentimetre);

    /// <inheritdoc cref="FromMetres"/>
    public static Length FromMillimetres(double millimetres) =>
        Rounded(Guard.InRange(millimetres, -LargestMetres * 1000, LargestMetres * 1000, "mm") * 1e6);

    /// <inheritdoc cref="FromMetres"/>
    public static Length FromInches(double inches) =>
        Rounded(Guard.InRange(inches, -LargestMetres * 39, LargestMetres * 39, "in") * NanometresPerInch);

    /// <summary>Of 1,000 mm.</summary>
    public double Metres => _nanometres / NanometresPerMetre;

    /// <summary>Of 10 mm.</summary>
    public double Centimetres => _nanometres / NanometresPerCentimetre;

    /// <summary>Of a million nanometres.</summary>
    public double Millimetres => _nanometres / 1e6;

    /// <summary>Of 25.4 mm.</summary>
    public double Inches => _nanometres / NanometresPerInch;

    /// <summary>Exact.</summary>
    /// <exception cref="OverflowException">Beyond what whole nanometres in 64 bits hold.</exception>
    public static Length operator +(Length a, Length b) => new(checked(a._nanometres + b._nanometres));

    /// <summary>Exact; negative where the second is longer.</summary>
    /// <exception cref="OverflowException">Beyond what whole nanometres in 64 bits hold.</exception>
    public static Length operator -(Length a, Length b) => new(checked(a._nanometres - b._nanometres));

    /// <summary>As long the other way.</summary>
    public static Length operator -(Length a) => new(-a._nanometres);

    /// <summary>Rounded to the nearest nanometre.</summary>
    public static Length operator *(Length a, double factor) => Rounded(a._nanometres * factor);

    /// <inheritdoc cref="op_Multiply(Length, double)"/>
    public static Length operator *(double factor, Length a) => a * factor;

    /// <inheritdoc cref="op_Multiply(Length, double)"/>
    public static Length operator /(Length a, double divisor) => Rounded(a._nanometres / divisor);

    /// <summary>How many times <paramref name="b"/> goes into <paramref name="a"/>.</summary>
    public static double operator /(Length a, Length b) => (double)a._nanometres / b._nanometres;

    /// <summary>Shorter, the sign counted: −2 cm is less than 1 cm.</summary>
    public static bool operator <(Length a, Length b) => a._nanometres < b._nanometres;

    /// <summary>Longer, the sign counted.</summary>
    public static bool operator >(Length a, Length b) => a._nanometres > b._nanometres;

    /// <summary>Shorter or equal to the nanometre.</summary>
    public static bool operator <=(Length a, Length b) => a._nanometres <= b._nanometres;

    /// <summary>Longer or equal to the nanometre.</summary>
    public static bool operator >=(Length a, Length b) => a._nanometres >= b._nanometres;

    /// <summary>The longer of two.</summary>
    public static Length Max(Length a, Length b) => a >= b ? a : b;

    /// <summary>The shorter of two; a negative length is shorter than any other.</summary>
    public static Length Min(Length a, Length b) => a <= b ? a : b;

    /// <summary>As long, and never below zero.</summary>
    public static Length Abs(Length a) => a < Zero ? -a : a;

    /// <summary>Below 0 where this one is shorter, above 0 where it is longer.</summary>
    public int CompareTo(Length other) => _nanometres.CompareTo(other._nanometres);

    public override string ToString() => FormattableString.Invariant($"{Centimetres:0.###} cm");

    private static Length Rounded(double nanometres) =>
        new(checked((long)Math.Round(nanometres, MidpointRounding.AwayFromZero)));
}
