using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>A count of stitches that makes the motif on one panel.</summary>
/// <param name="Stitches">1 to 1,000.</param>
/// <param name="Measure">Finished width of the panel with that count, above 0 and at most 1 km.</param>
/// <param name="Penalty">What the count costs for not forgiving, in [0, 1e8] units of the loss.</param>
public readonly record struct PanelCount(int Stitches, Length Measure, double Penalty = 0);

/// <summary>How far a garment of two panels may leave "the same count back and front", and at what cost.</summary>
public sealed record ExpansionRule
{
    /// <summary>Width of one band stitch (or row, where the band is worked along the edge), above 0 where bands are allowed.</summary>
    public Length BandStitch { get; init; }

    /// <summary>The widest plain band on each side of each panel, in band stitches, up to 100; 0 for none.</summary>
    public int MostBandStitches { get; init; }

    /// <summary>Cost of having bands at all, in [0, 1e8] units of the loss.</summary>
    public double CostOfBands { get; init; }

    /// <summary>Further cost of each band stitch, in [0, 1e6] units of the loss.</summary>
    public double CostPerBandStitch { get; init; }

    /// <summary>The most by which front and back may differ, in stitches, up to 100; 0 for equal counts only.</summary>
    public int MostDifference { get; init; }

    /// <summary>Cost of unequal front and back at all, in [0, 1e8] units of the loss.</summary>
    public double CostOfDifference { get; init; }

    /// <summary>Further cost of each stitch of difference, in [0, 1e6] units of the loss.</summary>
    public double CostPerStitchOfDifference { get; init; }

    /// <summary>Total measures outside this window are left out.</summary>
    public Length Narrowest { get; init; } = Length.Zero;

    /// <inheritdoc cref="Narrowest"/>
    public Length Widest { get; init; } = Length.FromMetres(1000);

    /// <summary>
    /// Totals in the same step of this length count as the same measure, and only the cheapest stays; zero
    /// keeps every measure that differs at all.
    /// </summary>
    public Length Resolution { get; init; } = Length.FromMillimetres(1);
}

/// <summary>A way to make both panels, and what it costs beyond equal counts without bands.</summary>
/// <param name="FrontStitches">Never fewer than the back's: the front goes over the bust.</param>
/// <param name="BackStitches">Stitches of the back's pooled part.</param>
/// <param name="BandStitches">Plain stitches on each side of each panel; four bands in all.</param>
/// <param name="Measure">Front, back and four bands together.</param>
/// <param name="MotifPenalty">Mean of the two panels' penalties, so that equal counts cost what one does.</param>
/// <param name="BandCost">Extra cost of the bands.</param>
/// <param name="DifferenceCost">Extra cost of unequal panels.</param>
public readonly record struct ExpandedCount(
    int FrontStitches,
    int BackStitches,
    int BandStitches,
    Length Measure,
    double MotifPenalty,
    double BandCost,
    double DifferenceCost)
{
    public double Penalty => MotifPenalty + BandCost + DifferenceCost;

    public CountCandidate ToCandidate() => new(Measure, Penalty);
}

/// <summary>
/// Widens the choice where motif counts leave gaps of several centimetres: plain bands up the sides of the
/// panels, and a front wider than the back.
/// </summary>
public static class CandidateExpansion
{
    /// <summary>
    /// All allowed combinations by measure, without those dominated: another in the same
    /// <see cref="ExpansionRule.Resolution"/> step costs less, or as much with a smaller difference, then
    /// narrower bands, then a smaller measure.
    /// </summary>
    /// <param name="panels">Up to 1,000 counts, each once, in any order.</param>
    /// <param name="rule">What is allowed, and its costs.</param>
    /// <exception cref="ArgumentException">A number outside its stated range, or a count given twice; names the element.</exception>
    public static ImmutableArray<ExpandedCount> Build(ImmutableArray<PanelCount> panels, ExpansionRule rule)
    {
        Check(panels, rule);
        PanelCount[] sorted = [.. panels.OrderBy(p => p.Stitches)];
        Dictionary<long, ExpandedCount> cheapest = [];
        for (int back = 0; back < sorted.Length; back++)
        {
            for (int front = back; front < sorted.Length && sorted[front].Stitches - sorted[back].Stitches <= rule.MostDifference; front++)
            {
                for (int band = 0; band <= rule.MostBandStitches; band++)
                {
                    ExpandedCount made = Make(sorted[front], sorted[back], band, rule);
                    if (made.Measure < rule.Narrowest || made.Measure > rule.Widest)
                        continue;
                    long step = StepOf(made.Measure, rule.Resolution);
                    if (!cheapest.TryGetValue(step, out ExpandedCount held) || Preference(made).CompareTo(Preference(held)) < 0)
                        cheapest[step] = made;
                }
            }
        }

        return [.. cheapest.Values.OrderBy(count => count.Measure)];
    }

    private static ExpandedCount Make(PanelCount front, PanelCount back, int band, ExpansionRule rule)
    {
        int difference = front.Stitches - back.Stitches;
        return new ExpandedCount(
            front.Stitches,
            back.Stitches,
            band,
            front.Measure + back.Measure + 4 * band * rule.BandStitch,
            (front.Penalty + back.Penalty) / 2,
            band == 0 ? 0 : rule.CostOfBands + band * rule.CostPerBandStitch,
            difference == 0 ? 0 : rule.CostOfDifference + difference * rule.CostPerStitchOfDifference);
    }

    private static (double Penalty, int Difference, int Band, Length Measure) Preference(ExpandedCount count) =>
        (count.Penalty, count.FrontStitches - count.BackStitches, count.BandStitches, count.Measure);

    /// <summary>Without a resolution the nanometre, the unit of <see cref="Length"/>, so that only equal measures meet.</summary>
    private static long StepOf(Length measure, Length resolution) => resolution == Length.Zero
        ? (long)Math.Round(measure.Metres * 1e9)
        : (long)Math.Floor(measure / resolution);

    private static void Check(ImmutableArray<PanelCount> panels, ExpansionRule rule)
    {
        if (panels.IsDefault)
            throw new ArgumentNullException(nameof(panels));
        ArgumentNullException.ThrowIfNull(rule);
        Guard.InRange(panels.Length, 0, 1000, "panels", nameof(panels));
        for (int i = 0; i < panels.Length; i++)
        {
            Guard.InRange(panels[i].Stitches, 1, 1000, "stitches", $"{nameof(panels)}[{i}].{nameof(PanelCount.Stitches)}");
            Guard.InRange(panels[i].Measure.Centimetres, 1e-7, 1e5, "cm", $"{nameof(panels)}[{i}].{nameof(PanelCount.Measure)}");
            Guard.InRange(panels[i].Penalty, 0, 1e8, "units of loss", $"{nameof(panels)}[{i}].{nameof(PanelCount.Penalty)}");
        }

        int[] twice = [.. panels.GroupBy(p => p.Stitches).Where(g => g.Count() > 1).Select(g => g.Key)];
        if (twice.Length > 0)
            throw new ArgumentException($"{twice[0]} stitches are given twice.", nameof(panels));
        Guard.InRange(rule.MostBandStitches, 0, 100, "stitches");
        Guard.InRange(rule.MostDifference, 0, 100, "stitches");
        Guard.InRange(rule.BandStitch.Centimetres, rule.MostBandStitches > 0 ? 1e-7 : 0, 100, "cm");
        Guard.InRange(rule.CostOfBands, 0, 1e8, "units of loss");
        Guard.InRange(rule.CostPerBandStitch, 0, 1e6, "units of loss");
        Guard.InRange(rule.CostOfDifference, 0, 1e8, "units of loss");
        Guard.InRange(rule.CostPerStitchOfDifference, 0, 1e6, "units of loss");
        Guard.InRange(rule.Resolution.Centimetres, 0, 100, "cm");
    }
}
