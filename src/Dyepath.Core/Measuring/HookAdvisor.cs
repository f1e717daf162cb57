using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>How well whole stitches suit one yarn per stitch.</summary>
/// <param name="YarnFactor">Yarn per stitch over the swatch's.</param>
/// <param name="Worst">Largest |change| that any section then asks of the hands.</param>
/// <param name="Stitches">Whole pooling units of each section.</param>
public sealed record HookFit(double YarnFactor, double Worst, ImmutableArray<int> Stitches)
{
    /// <summary>
    /// <see cref="Worst"/> over <see cref="YarnFactor"/>: the change that is as large, for what chance brings, at the swatch's stitch.
    /// </summary>
    public double WorstAtSwatchScale => Worst / YarnFactor;
}

/// <summary>A hook that can be bought.</summary>
/// <param name="Millimetres">Diameter.</param>
/// <param name="Fit">How near it brings the sections to whole stitches.</param>
/// <param name="IsOwn">It is the swatch's own.</param>
public sealed record HookOption(double Millimetres, HookFit Fit, bool IsOwn);

/// <summary>What the advisor found.</summary>
/// <param name="Now">With the swatch's own hook.</param>
/// <param name="Best">The best yarn per stitch in reach, whatever hook or hand would give it.</param>
/// <param name="Hooks">Every hook in reach, by size.</param>
/// <param name="Advised">The one to take: of those as good as the best to a hand's feeling, the nearest to the swatch's.</param>
/// <param name="Words">For the maker.</param>
public sealed record HookAdvice(HookFit Now, HookFit Best, ImmutableArray<HookOption> Hooks, HookOption Advised, string Words);

/// <summary>
/// Finds the yarn per stitch at which all sections come nearest to whole stitches. More stitches a section round with less
/// change of tension for any yarn: the largest change expected by chance is in proportion to yarn per stitch, and an open
/// search would end at the smallest hook. So the reach is given, as far up as down; hooks are compared by their
/// largest change over their yarn per stitch, which lets a smaller hook win only by what it gains beyond chance; and hooks
/// within a hand's feeling of the best count as equal, the nearest to the swatch's own being taken.
/// </summary>
public static class HookAdvisor
{
    /// <summary>Two fits closer than this feel the same to the hands: one stitch's yarn in a hundred.</summary>
    public const double EquallyGood = 0.01;

    /// <summary>Yarn per stitch beyond these shares of the swatch's is another fabric, not another hook.</summary>
    private const double SmallestFactor = 0.25;

    private const double LargestFactor = 4;

    /// <param name="hooks">Sizes to choose from, mm, each 0.5 to 50; those out of reach are left out.</param>
    /// <param name="natural">Units that each section takes with the swatch's hook, each 0.01 to 4,096, 1 to 64 sections.</param>
    /// <param name="reachMillimetres">How far the hook may depart from the swatch's, up or down, 0 to 5.</param>
    /// <exception cref="ArgumentException">No section, or too many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public static HookAdvice Advise(
        IReadOnlyList<double> natural, Swatch swatch, HookResponse response, IReadOnlyList<double> hooks, double reachMillimetres = 1)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        ArgumentNullException.ThrowIfNull(response);
        ArgumentNullException.ThrowIfNull(hooks);
        Check(natural);
        Guard.InRange(reachMillimetres, 0, 5, "mm");
        var own = swatch.HookMillimetres;
        var least = Math.Max(Swatch.Hooks.Smallest, own - reachMillimetres);
        var most = Math.Min(Swatch.Hooks.Largest, own + reachMillimetres);
        var options = hooks.Append(own).Select(h => Swatch.Hooks.Check(h, nameof(hooks))).Distinct().Order()
            .Where(h => h >= least && h <= most && (h == own || CanBeWorked(natural, response.YarnFactor(h))))
            .Select(h => new HookOption(h, Fit(natural, response.YarnFactor(h)), h == own)).ToImmutableArray();
        var ends = (response.YarnFactor(least), response.YarnFactor(most));
        var best = Best(
            natural,
            Math.Clamp(Math.Min(ends.Item1, ends.Item2), SmallestFactor, 1),
            Math.Clamp(Math.Max(ends.Item1, ends.Item2), 1, LargestFactor));
        var now = options.Single(o => o.Millimetres == own);
        var limit = options.Min(o => o.Fit.WorstAtSwatchScale) + EquallyGood;
        var advised = options.Where(o => o.Fit.WorstAtSwatchScale <= limit).MinBy(o => Math.Abs(o.Millimetres - own))!;
        return new HookAdvice(now.Fit, best, options, advised, Words(now, advised, best));
    }

    /// <summary>Whether it is another hook and not another fabric, and the sequence stays one that can be worked.</summary>
    private static bool CanBeWorked(IReadOnlyList<double> natural, double factor) =>
        factor is >= SmallestFactor and <= LargestFactor
        && natural.Sum() / factor + natural.Count <= ColourRing.LongestSequence && natural.Min() / factor >= ColourRing.ShortestSection;

    /// <summary>The nearest whole stitches at one yarn per stitch, and the largest change that they ask for.</summary>
    /// <param name="natural">Units of each section at the swatch's yarn per stitch.</param>
    /// <param name="yarnFactor">Yarn per stitch over the swatch's, ¼ to 4.</param>
    /// <inheritdoc cref="Advise" path="/exception"/>
    public static HookFit Fit(IReadOnlyList<double> natural, double yarnFactor)
    {
        Check(natural);
        Guard.InRange(yarnFactor, SmallestFactor, LargestFactor, "of the swatch's yarn per stitch");
        var stitches = natural.Select(c => NearestWhole(c / yarnFactor)).ToImmutableArray();
        return new HookFit(yarnFactor, natural.Zip(stitches, (c, n) => Math.Abs(c / (yarnFactor * n) - 1)).Max(), stitches);
    }

    /// <summary>
    /// The exact least of the largest |change| over an interval of yarn per stitch. With y its inverse, a section changes by c·y/n − 1,
    /// straight in y while n stays; between the y at which some n changes, the best y balances the largest and the
    /// smallest c/n, at 2/(largest + smallest).
    /// </summary>
    /// <param name="least">Smallest yarn per stitch over the swatch's, ¼ or more.</param>
    /// <param name="most">Largest, at least <paramref name="least"/> and at most 4.</param>
    /// <inheritdoc cref="Advise" path="/exception"/>
    public static HookFit Best(IReadOnlyList<double> natural, double least, double most)
    {
        Check(natural);
        Guard.InRange(least, SmallestFactor, LargestFactor, "of the swatch's yarn per stitch");
        Guard.InRange(most, least, LargestFactor, "of the swatch's yarn per stitch");
        var low = 1 / most;
        var high = 1 / least;
        var cuts = new SortedSet<double> { low, high };
        foreach (var c in natural)
        {
            // Up to this y, n stitches suit better than n + 1.
            for (var n = NearestWhole(c * low); Boundary(n) / c < high; n++)
                cuts.Add(Math.Max(low, Boundary(n) / c));
        }
        var best = Fit(natural, 1 / low);
        var from = low;
        foreach (var to in cuts)
        {
            var middle = (from + to) / 2;
            var ratios = natural.Select(c => c / NearestWhole(c * middle)).ToArray();
            var y = Math.Clamp(2 / (ratios.Max() + ratios.Min()), from, to);
            var fit = Fit(natural, 1 / y);
            if (fit.Worst < best.Worst - 1e-12
                || (fit.Worst <= best.Worst + 1e-12 && Math.Abs(Math.Log(fit.YarnFactor)) < Math.Abs(Math.Log(best.YarnFactor))))
            {
                best = fit;
            }
            from = to;
        }
        return best;
    }

    /// <summary>The whole number whose relative change is the least, 1 or more.</summary>
    internal static int NearestWhole(double units)
    {
        var n = Math.Max(1, (int)units);
        return units > Boundary(n) ? n + 1 : n;
    }

    /// <summary>Where n and n + 1 stitches ask for the same |change|: their harmonic mean.</summary>
    private static double Boundary(int n) => 2.0 * n * (n + 1) / (2 * n + 1);

    private static void Check(IReadOnlyList<double> natural)
    {
        ArgumentNullException.ThrowIfNull(natural);
        if (natural.Count is 0 or > ColourRing.MostSections)
            throw new ArgumentException($"A sequence has 1 to {ColourRing.MostSections} sections, not {natural.Count}.", nameof(natural));
        foreach (var units in natural)
            Guard.InRange(units, ColourRing.ShortestSection, ColourRing.LongestSequence, "stitches", nameof(natural));
    }

    /// <summary>What rounds to nothing, to a tenth of a percent, is not said in figures.</summary>
    private const double Nothing = 0.0005;

    private static string Words(HookOption now, HookOption advised, HookFit best)
    {
        if (advised.Millimetres != now.Millimetres)
            return Other(now, advised);
        if (now.Fit.Worst < Nothing)
            return string.Create(CultureInfo.InvariantCulture, $"The {now.Millimetres:0.##} mm hook suits this yarn: every colour comes out whole by itself.");
        var keep = string.Create(CultureInfo.InvariantCulture,
            $"The {now.Millimetres:0.##} mm hook suits this yarn: no colour asks for more than {now.Fit.Worst * 100:0.0} % "
            + $"tighter or looser, and no hook at hand does clearly better.");
        return now.Fit.Worst - best.Worst < EquallyGood ? keep
            : string.Create(CultureInfo.InvariantCulture,
                $"{keep} The best yarn per stitch in reach, {best.YarnFactor * 100:0} % of the swatch's, would bring that to {best.Worst * 100:0.0} %.");
    }

    private static string Other(HookOption now, HookOption advised) =>
        string.Create(CultureInfo.InvariantCulture,
            $"Try a {advised.Millimetres:0.##} mm hook: no colour then asks for more than {advised.Fit.Worst * 100:0.0} "
            + $"% tighter or looser, against {now.Fit.Worst * 100:0.0} % with {now.Millimetres:0.##} mm. Swatch with it "
            + $"first: gauge, size and sequence change with the hook.");
}
