using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>A motif over the rows of a piece, as far as hands must hold it.</summary>
/// <param name="RowUnits">Pooling units of a row, the turn apart; the mean where two counts alternate.</param>
/// <param name="Period">P in units.</param>
/// <param name="Lean">Units per row.</param>
/// <param name="DyePerUnit">Variance of the yarn's own sections per unit of yarn, in units squared for a dye variation of 1.</param>
internal readonly record struct HeldMotif(double RowUnits, int Rows, double Period, double Lean, double DyePerUnit);

/// <summary>
/// The chance that a piece comes out well: every motif of it within a quarter of its planned height, made by a maker who looks at the end
/// of every row and corrects by feel. Derived in docs/made-well.md; its tests hold it to makers simulated stitch by stitch.
/// </summary>
public static class MadeWell
{
    /// <summary>A maker's hands make this part of the correction that she means, on average.</summary>
    public const double Gain = 0.85;

    /// <summary>Standard deviation of <see cref="Gain"/> among makers.</summary>
    public const double GainSpread = 0.15;

    /// <summary>Makers' own mean departure from the planned yarn is uniform within ± this.</summary>
    public const double LargestBias = 0.02;

    /// <summary>The most that she tightens or loosens.</summary>
    public const double LargestCorrection = 0.06;

    /// <summary>Of that, the part that a departure may take for good; the rest is left for corrections.</summary>
    public const double HeldForGood = 0.75;

    /// <summary>Readings that are a stitch off.</summary>
    public const double Misreads = 0.03;

    /// <summary>A motif's height may depart from its plan by this part.</summary>
    public const double HeightTolerance = 0.25;

    /// <summary>A whole number of stitches is read: a variance of 1/12, and of the misreadings.</summary>
    private const double ReadingVariance = 1.0 / 12 + Misreads;

    private const int Bins = 48, Rounds = 8;

    private const double Reach = 4.5;

    /// <summary>Gauss and Legendre on [−1, 1], weights summing to 1; Gauss and Hermite for a standard normal.</summary>
    private static readonly (double At, double Weight)[] Uniform =
    [
        (-0.9061798459386640, 0.1184634425280945), (-0.5384693101056831, 0.2393143352496832), (0, 0.2844444444444444),
        (0.5384693101056831, 0.2393143352496832), (0.9061798459386640, 0.1184634425280945),
    ];

    private static readonly (double At, double Weight)[] Gauss =
        [(-1.7320508075688772, 1.0 / 6), (0, 2.0 / 3), (1.7320508075688772, 1.0 / 6)];

    /// <summary>
    /// Makers' spreads from stitch to stitch: half of them are steadier than this, and two of three within a factor of
    /// <see cref="SpreadFactor"/> of it (log-normal; assumptions without a source, around <see cref="HandsPrior.Default"/>).
    /// </summary>
    public const double MiddleSpread = 0.02;

    /// <inheritdoc cref="MiddleSpread"/>
    public const double SpreadFactor = 1.7;

    /// <summary>Gauss and Hermite for a standard normal, finer.</summary>
    private static readonly (double At, double Weight)[] FineGauss =
    [
        (-2.8569700138728056, 0.0112574113277207), (-1.3556261799742659, 0.2220759220056126), (0, 0.5333333333333333),
        (1.3556261799742659, 0.2220759220056126), (2.8569700138728056, 0.0112574113277207),
    ];

    /// <summary>
    /// The share of all makers, steady and unsteady, of whom a piece of a plan comes out well; missing where it is plain.
    /// </summary>
    /// <returns>In [0, 1].</returns>
    public static double? Served(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        var measured = plan.Sequence.Measured;
        return Held(SharedFabric.Of(plan), piece) is { } motif
            ? Served(motif, measured.Hands, ErrorOf(measured)) : null;
    }

    /// <summary>The least share of any piece of a size; missing where all are plain.</summary>
    /// <inheritdoc cref="Served(Plan, PiecePlan)"/>
    public static double? Served(Plan plan, SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return size.Pieces.Min(p => Served(plan, p));
    }

    /// <param name="hands">Of which memory and dye count.</param>
    /// <param name="departure">What all makers alike have to depart by from the planned yarn, a part of it.</param>
    internal static double Served(HeldMotif motif, HandsPrior hands, double sequenceError, double departure = 0) =>
        AllHands(hands).Sum(h => h.Share * Chance(motif, h.Hands, sequenceError, departure));

    /// <summary>Makers, steady and unsteady, and the share of each; of <paramref name="hands"/> memory and dye count.</summary>
    internal static IEnumerable<(HandsPrior Hands, double Share)> AllHands(HandsPrior hands) => FineGauss.Select(n =>
        (new HandsPrior(MiddleSpread * Math.Pow(SpreadFactor, n.At), hands.Memory, hands.Dye), n.Weight));

    /// <summary>What hands must hold in a piece; missing where it has no colours to hold.</summary>
    internal static HeldMotif? Held(SharedFabric shared, PiecePlan piece)
    {
        if (!piece.Pooled || shared.Period is not { } period)
            return null;
        var ring = shared.Ring;
        var sections = Enumerable.Range(0, ring.Sections.Length).Sum(i => shared.Sequence.UnitsIn(i) * shared.Sequence.UnitsIn(i));
        return new HeldMotif(
            piece.Shape?.WidestRow ?? piece.RowStitches.Average() / shared.Stitch.StitchesPerUnit, piece.Rows,
            Yarns.ColourRing.ToUnits(period.Micro), piece.Lean,
            sections / ring.SequenceUnits);
    }

    /// <summary>The chance of a motif in the yarn, and by the hands, of a project.</summary>
    internal static double Chance(HeldMotif motif, SharedFabric shared)
    {
        var measured = shared.Sequence.Measured;
        shared.Effort.Spend(20_000);
        return Chance(motif, measured.Hands, ErrorOf(measured));
    }

    /// <summary>Standard error of C, relative to it.</summary>
    internal static double ErrorOf(MeasuredYarn measured) => measured.Natural.Total.StandardError / measured.Natural.Total.Value;

    /// <param name="sequenceError">Standard error of C, relative to it.</param>
    /// <returns>In [0, 1].</returns>
    internal static double Chance(HeldMotif motif, HandsPrior hands, double sequenceError, double departure = 0) =>
        Math.Clamp(Biases(sequenceError).Sum(b => b.Share * ChanceAt(motif, hands, departure + b.Bias)), 0, 1);

    /// <summary>How far all rows may depart from the planned yarn, and the share of makers and yarns of each.</summary>
    internal static IEnumerable<(double Bias, double Share)> Biases(double sequenceError) =>
        from bias in Uniform
        from error in Gauss
        select (LargestBias * bias.At - sequenceError * error.At, bias.Weight * error.Weight);

    /// <summary>The chance where all rows depart from the planned yarn by the same part of it.</summary>
    internal static double ChanceAt(HeldMotif motif, HandsPrior hands, double bias)
    {
        var chance = 0.0;
        foreach (var (gain, ofGain) in Gauss)
            chance += ofGain * ChanceOf(motif, hands, bias, Gain + GainSpread * gain);
        return chance;
    }

    /// <summary>
    /// Drift over the rows of one motif that leaves its height within the tolerance, least and most, in units; and how many such motifs
    /// there are.
    /// </summary>
    internal static (double Least, double Most, double Rows, int Motifs) Spans(HeldMotif motif)
    {
        if (motif.Lean == 0)
            return (-motif.Period / 4, motif.Period / 4, motif.Rows, 1);
        var tall = motif.Period / Math.Abs(motif.Lean);
        var rows = Math.Min(tall, motif.Rows);
        // A height of P/(lean + drift per row): a quarter taller takes a fifth of the lean away, a quarter lower adds a third to it.
        var (away, more) = (1 - 1 / (1 + HeightTolerance), 1 / (1 - HeightTolerance) - 1);
        var travel = Math.Abs(motif.Lean) * rows;
        var motifs = Math.Max(1, (int)Math.Floor(motif.Rows / tall + 1e-9));
        return motif.Lean > 0 ? (-away * travel, more * travel, rows, motifs) : (-more * travel, away * travel, rows, motifs);
    }

    /// <summary>
    /// One maker: the phase at the ends of rows is normal, and what it gains from motif to motif has to stay within bounds.
    /// </summary>
    private static double ChanceOf(HeldMotif motif, HandsPrior hands, double bias, double gain)
    {
        var (least, most, rows, motifs) = Spans(motif);
        var (mean, variance, stays) = Steady(motif, hands, bias, gain);
        var sd = Math.Sqrt(variance);
        var carried = Math.Pow(stays, rows);
        Span<double> held = stackalloc double[Bins], own = stackalloc double[Bins], before = stackalloc double[Bins + 1];
        var (low, width) = (mean - Reach * sd, 2 * Reach * sd / Bins);
        Fill(held, mean * (1 - carried), sd * Math.Sqrt(1 - carried * carried), low, width, least, most);
        // What two ends of a motif share does not change its height.
        Fill(own, mean, sd * Math.Sqrt(1 - carried), low, width, double.NegativeInfinity, double.PositiveInfinity);
        for (var at = 1; at < motifs; at++)
        {
            before[0] = 0;
            for (var bin = 0; bin < Bins; bin++)
                before[bin + 1] = before[bin] + held[bin];
            for (var bin = 0; bin < Bins; bin++)
            {
                var middle = (bin + 0.5) * width;
                held[bin] = (Until(before, (middle - least) / width) - Until(before, (middle - most) / width)) * own[bin];
            }
        }
        var sum = 0.0;
        foreach (var share in held)
            sum += share;
        return sum;
    }

    /// <summary>
    /// Mean and variance of the phase at the ends of rows once the start is forgotten, and what is left of it from one row to the next. A
    /// correction that hands cannot make in full is taken as a smaller gain (Booton's equivalent gain of a limiter for a normal input,
    /// 1954).
    /// </summary>
    private static (double Mean, double Variance, double Stays) Steady(HeldMotif motif, HandsPrior hands, double bias, double gain)
    {
        var units = motif.RowUnits;
        var (limit, wanted) = (LargestCorrection * units, bias * units);
        var own = hands.WanderVariance(units);
        var next = (hands.WanderVariance(2 * units) - 2 * own) / 2;
        var fades = Math.Exp(-units / hands.Memory);
        own += hands.Dye * hands.Dye * motif.DyePerUnit * units;
        var (mean, variance, share) = (wanted / gain, own, 1.0);
        for (var round = 0; round < Rounds; round++)
        {
            var stays = Math.Clamp(1 - gain * share, -0.9, 0.999);
            variance = (own + gain * share * gain * share * ReadingVariance + 2 * stays * next / (1 - stays * fades)) / (1 - stays * stays);
            var sd = Math.Sqrt(variance + ReadingVariance);
            var (below, above) = ((-limit - mean) / sd, (limit - mean) / sd);
            var (ofBelow, ofAbove) = (Normal.Below(below), Normal.Below(above));
            share = Math.Max(0.02, ofAbove - ofBelow);
            var made = limit * (1 - ofAbove - ofBelow) + mean * (ofAbove - ofBelow) - sd * (Density(above) - Density(below));
            mean = Math.Clamp(mean + (wanted - gain * made) / (gain * share), -20 * limit, 20 * limit);
        }
        return (mean, variance, Math.Clamp(1 - gain * share, 0, 0.999));
    }

    /// <summary>The sum up to a place counted in bins, linear within one.</summary>
    private static double Until(ReadOnlySpan<double> before, double place)
    {
        if (place <= 0)
            return 0;
        if (place >= Bins)
            return before[Bins];
        var bin = (int)place;
        return before[bin] + (place - bin) * (before[bin + 1] - before[bin]);
    }

    /// <summary>A normal's shares of the bins, each cut off at the bounds.</summary>
    private static void Fill(Span<double> bins, double mean, double sd, double low, double width, double least, double most)
    {
        var reached = Below(low);
        for (var bin = 0; bin < Bins; bin++)
        {
            var next = Below(low + (bin + 1) * width);
            (bins[bin], reached) = (next - reached, next);
        }

        double Below(double place)
        {
            place = Math.Clamp(place, least, most);
            return sd > 0 ? Normal.Below((place - mean) / sd) : mean < place ? 1 : 0;
        }
    }

    private static double Density(double x) => Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
}
