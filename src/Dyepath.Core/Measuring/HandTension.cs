using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>Whether a section worked tighter or looser than its neighbours shows in the fabric.</summary>
public enum TensionVerdict
{
    /// <summary>No eye finds it.</summary>
    Unseen,

    /// <summary>A practised eye may find it.</summary>
    MayShow,

    /// <summary>Anybody sees it.</summary>
    Shows,
}

/// <summary>From which relative change of yarn per stitch a section may show, and from which it does; 0 to 1.</summary>
/// <remarks>Common practice, no source.</remarks>
/// <param name="MayShow">Of the yarn per stitch; from here on it may show.</param>
/// <param name="Shows">Of the yarn per stitch; from here on it shows.</param>
public sealed record TensionLimits(double MayShow, double Shows)
{
    /// <summary>6 % and 8 %.</summary>
    public static TensionLimits Scattered { get; } = new(0.06, 0.08);

    /// <summary>Where the same section stacks in columns: 3 % and 4 %.</summary>
    public static TensionLimits Stacked { get; } = new(0.03, 0.04);
}

/// <summary>What counted work asks of the hands in one section.</summary>
/// <param name="Section">Index of the section.</param>
/// <param name="Stitches">Pooling units that the section is to take.</param>
/// <param name="Change">
/// Relative change of yarn per stitch: ℓ/(n·λ) − 1, which is natural units over intended units, less 1; positive is looser.
/// </param>
/// <param name="StandardError">Of <paramref name="Change"/>, from that of the section's natural units.</param>
/// <param name="Verdict">By the limits that were asked with.</param>
/// <param name="Words">For the maker.</param>
public sealed record SectionTension(
    int Section, int Stitches, double Change, double StandardError, TensionVerdict Verdict, string Words)
{
    /// <summary>
    /// So many stitches more or fewer than by itself, and that large a share of them, was set for another yarn: rounding to whole
    /// stitches alone never asks for both (assumptions without a source).
    /// </summary>
    public bool IsOfAnotherYarn => Math.Abs(Change) > 0.25 && Math.Abs(Change) * Stitches > 1.5;
}

/// <summary>Hand tension section by section, said as tighter or looser (in UK terms "tension" means gauge).</summary>
public static class HandTension
{
    /// <summary>Changes smaller than this are said as none: no hand feels a two-hundredth.</summary>
    private const double Felt = 0.005;

    /// <param name="names">One name a section.</param>
    /// <param name="natural">Units that each section takes at natural tension, over 0.</param>
    /// <param name="stitches">Units that each section is to take, 1 or more.</param>
    /// <exception cref="ArgumentException">Not as many names, natural and intended units.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public static ImmutableArray<SectionTension> Of(
        IReadOnlyList<string> names, IReadOnlyList<Estimate> natural, IReadOnlyList<int> stitches, TensionLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(natural);
        ArgumentNullException.ThrowIfNull(stitches);
        limits ??= TensionLimits.Scattered;
        if (names.Count != natural.Count || stitches.Count != natural.Count)
            throw new ArgumentException($"{natural.Count} sections need as many names and whole numbers.", nameof(stitches));
        return [.. stitches.Select((n, j) =>
        {
            Guard.InRange(n, 1, ColourRing.LongestSequence, "stitches", nameof(stitches));
            Guard.InRange(natural[j].Value, double.Epsilon, 1e6, "stitches", nameof(natural));
            var change = natural[j].Value / n - 1;
            var size = Math.Abs(change);
            var verdict = size >= limits.Shows ? TensionVerdict.Shows
                : size >= limits.MayShow ? TensionVerdict.MayShow
                : TensionVerdict.Unseen;
            return new SectionTension(j, n, change, natural[j].StandardError / n, verdict, Words(names[j], change, verdict));
        })];
    }

    private static string Words(string name, double change, TensionVerdict verdict)
    {
        if (Math.Abs(change) < Felt)
            return $"{name}: as your hands work.";
        var way = change > 0 ? "looser" : "tighter";
        var seen = verdict switch
        {
            TensionVerdict.Shows => "; it will show",
            TensionVerdict.MayShow => "; it may show",
            _ => "",
        };
        return FormattableString.Invariant($"{name}: {Math.Abs(change) * 100:0} % {way}{seen}.");
    }
}
