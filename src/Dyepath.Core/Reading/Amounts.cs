using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Reading;

/// <summary>Printed amounts against the plan's exact ones: a printed amount is right where the exact one rounds to it.</summary>
internal static class Amounts
{
    /// <summary>Whether words such as <c>27.5 cm / 10¾ in</c>, or numbers whose units stand elsewhere, say a length.</summary>
    /// <param name="units">For bare numbers, such as <c>cm / in</c>.</param>
    public static bool Says(string words, Length exact, string? units = null)
    {
        var said = words.Split(" / ");
        var names = units?.Split(" / ");
        for (var i = 0; i < said.Length; i++)
        {
            var parts = names is null ? said[i].Split(' ') : [said[i], names[Math.Min(i, names.Length - 1)]];
            if (parts.Length != 2 || !SizeLists.TryNumber(parts[0], out var number))
                return false;
            var small = Math.Abs(exact.Centimetres) < 2.5;
            var (value, half) = parts[1] == "cm" ? (exact.Centimetres, small ? 0.05 : 0.25) : (exact.Inches, small ? 1 / 16.0 : 1 / 8.0);
            if (Math.Abs(number - value) > half + 1e-6)
                return false;
        }
        return names is null || said.Length == names.Length;
    }

    /// <summary>Whether a number printed with at most two decimals says an exact one.</summary>
    public static bool SaysRounded(double said, double exact) => Math.Abs(said - exact) <= 0.005 + 1e-9;

    /// <summary>Whether numbers say amounts in one unit or two, each at most its slack over the exact amount.</summary>
    public static bool SaysRoundedUp(string words, ReadOnlySpan<double> exact, ReadOnlySpan<double> slack)
    {
        var said = words.Split(" / ");
        if (said.Length != exact.Length)
            return false;
        for (var i = 0; i < said.Length; i++)
        {
            if (!SizeLists.TryNumber(said[i], out var number) || Math.Abs(number - exact[i] - slack[i] / 2) > slack[i] / 2 + 0.051)
                return false;
        }
        return true;
    }
}

/// <summary>A plan's colours as the pattern prints them.</summary>
internal static class ColourNames
{
    /// <summary>Such as <c>sand (S)</c>, in the order in which the yarn runs.</summary>
    public static ImmutableArray<string> Of(Plan plan) =>
        [.. plan.Sequence.Colours.Select(colour => TextBooklet.Spaced($"{colour.Name} ({colour.Symbol})"))];
}
