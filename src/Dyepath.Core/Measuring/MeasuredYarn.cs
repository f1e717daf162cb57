using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>One ball's own sequence.</summary>
/// <param name="Name">What the designer calls the ball.</param>
/// <param name="Estimate">From this ball's counts alone.</param>
public sealed record MeasuredBall(string Name, SequenceEstimate Estimate);

/// <summary>
/// All that a yarn's measurements and a fabric's swatch say together. Counts come section by section in the order in which
/// the yarn lists them, in pooling units, whichever end the ball was pulled from.
/// </summary>
public sealed class MeasuredYarn
{
    private readonly Yarn _yarn;
    private readonly SectionDoubt _doubt;

    private MeasuredYarn(
        Yarn yarn,
        FabricChoice fabric,
        HandsPrior hands,
        SectionDoubt doubt,
        SequenceInUnits natural,
        YarnPerStitch yarnPerStitch,
        ImmutableArray<MeasuringFinding> findings)
    {
        _yarn = yarn;
        Fabric = fabric;
        _doubt = doubt;
        Hands = hands;
        Natural = natural;
        YarnPerStitch = yarnPerStitch;
        Findings = findings;
        Stitches = fabric.SectionStitches ?? natural.Nearest();
        Ring = RingOf(fabric.Keeping);
    }

    /// <summary>The fabric that the measurements belong to, with its swatch.</summary>
    public FabricChoice Fabric { get; }

    /// <summary>What the errors of all estimates are conditional on.</summary>
    public HandsPrior Hands { get; }

    /// <summary>The sequence at natural tension.</summary>
    public SequenceInUnits Natural { get; }

    /// <summary>Whole pooling units for each section, in the order of the yarn's sections: as intended, else the nearest.</summary>
    public ImmutableArray<int> Stitches { get; }

    /// <summary>
    /// The sequence that the fabric is worked with: whole in counted work, natural in free work; backwards when the ball is pulled
    /// from its other end.
    /// </summary>
    public ColourRing Ring { get; }

    /// <summary>At the swatch's tension, and where it comes from.</summary>
    public YarnPerStitch YarnPerStitch { get; }

    /// <summary>Each ball that was counted, by itself.</summary>
    public ImmutableArray<MeasuredBall> Balls { get; private init; } = [];

    /// <summary>What the measurements show beside their numbers.</summary>
    public ImmutableArray<MeasuringFinding> Findings { get; }

    /// <summary>The ring that either way of keeping colours would give.</summary>
    public ColourRing RingOf(ColourKeeping keeping)
    {
        var units = keeping == ColourKeeping.Counted
            ? Stitches.Select(n => (double)n).ToArray()
            : [.. Natural.Sections.Select(s => s.Value)];
        var ring = ColourRing.FromUnits(units, [.. _yarn.Sections.Select(s => s.Colour)]);
        return _yarn.FromOtherEnd ? ring.Reversed() : ring;
    }

    /// <summary>What counted work asks of the hands, section by section, in the order of the yarn's sections.</summary>
    public ImmutableArray<SectionTension> Tension(TensionLimits? limits = null) =>
        HandTension.Of([.. _yarn.Sections.Select(s => s.Name)], Natural.Sections, Stitches, limits);

    /// <summary>Which hook brings the sections nearer to whole stitches.</summary>
    /// <param name="hooks">Sizes to choose from, mm.</param>
    /// <inheritdoc cref="HookAdvisor.Advise" path="/param"/>
    /// <inheritdoc cref="HookAdvisor.Advise" path="/exception"/>
    public HookAdvice AdviseHook(IReadOnlyList<double> hooks, double reachMillimetres = 1) => HookAdvisor.Advise(
        [.. Natural.Sections.Select(s => s.Value)], Fabric.Swatch, HookResponse.For(Fabric), hooks, reachMillimetres);

    /// <summary>
    /// All of it with another hook: sequence, yarn per stitch, gauges and so size change together, and whole stitches are
    /// chosen anew. Nothing has been counted with that hook, so its sequence carries the doubt about how yarn follows the hook.
    /// </summary>
    /// <param name="hookMillimetres">0.5 to 50.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// Hook outside its range, or one so small that the sequence exceeds 4,096 units.
    /// </exception>
    public MeasuredYarn AtHook(double hookMillimetres)
    {
        if (hookMillimetres == Fabric.Swatch.HookMillimetres)
            return this;
        var response = HookResponse.For(Fabric);
        var factor = response.YarnFactorEstimate(hookMillimetres);
        var natural = Natural with
        {
            Sections = [.. Natural.Sections.Select(s => s / factor)],
            Total = Natural.Total / factor,
            Counted = null,
        };
        var yarn = YarnPerStitch with
        {
            Centimetres = YarnPerStitch.Centimetres * factor,
            Ways = [.. YarnPerStitch.Ways.Select(w => (w.Source, w.Centimetres * factor))],
        };
        var fabric = Fabric with { Swatch = response.At(hookMillimetres), OtherSwatch = null, SectionStitches = null };
        return new MeasuredYarn(_yarn, fabric, Hands, _doubt, natural, yarn, Findings);
    }

    /// <summary>
    /// Standard error of C, in units, that this many repeats of such a sequence leave; see <see cref="CountingPlan.SequenceVariance"/>.
    /// </summary>
    /// <param name="repeats">1 or more.</param>
    public double SequenceErrorAfter(int repeats) =>
        Math.Sqrt(CountingPlan.SequenceVariance([.. Natural.Sections.Select(s => s.Value)], _doubt.Dye, Hands, repeats,
            _doubt.MeanBoundary));

    /// <inheritdoc cref="CountingPlan.ForFreeWork"/>
    public FreeCounting CountingForFreeWork(double crossing, double tolerance = 0.5, double confidence = 0.95) =>
        CountingPlan.ForFreeWork(
            [.. Natural.Sections.Select(s => s.Value)], _doubt.Dye, Hands, Natural.Counted, crossing, tolerance, confidence);

    /// <summary>Whether each section's whole number is right; empty when nothing was counted.</summary>
    public ImmutableArray<SectionCounting> CountingForCountedWork(double confidence = 0.95) =>
        Natural.Counted is { } counted ? CountingPlan.ForCountedWork(counted, _doubt.Dye, Stitches, confidence, boundary:
            _doubt.MeanBoundary) : [];

    /// <summary>
    /// Counted stitches are the authority for C, all balls together; where nothing was counted, measured lengths over yarn per
    /// stitch; where nothing was measured, the whole stitches that the pattern intends.
    /// </summary>
    /// <param name="measured">The measurements taken together, where the result is true.</param>
    /// <param name="reasons">Why there is no sequence, where the result is false.</param>
    /// <param name="decisions">To record what was estimated, or to be answered from.</param>
    public static bool TryMeasure(
        Yarn yarn,
        FabricChoice fabric,
        [NotNullWhen(true)] out MeasuredYarn? measured,
        out ImmutableArray<MeasuringFinding> reasons,
        MeasuringErrors? errors = null,
        Effort? effort = null,
        Decisions? decisions = null)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        ArgumentNullException.ThrowIfNull(fabric);
        var hands = HandsPrior.For(fabric.Hands);
        errors ??= MeasuringErrors.Default;
        measured = null;
        effort?.Begin(EffortPart.Counted);
        var findings = ImmutableArray.CreateBuilder<MeasuringFinding>();
        var units = fabric.Stitch.StitchesPerUnit == 1 ? "stitches" : "pairs";
        var doubt = Doubt(yarn, fabric, hands, errors);
        var (runs, ofRuns) = decisions.Runs(() => Runs(yarn, hands, doubt, effort));
        findings.AddRange(ofRuns);
        var supposed = hands;
        if (runs.Length > 0)
            hands = decisions.Hands(hands, () => HandsFit.Widened(runs, supposed, doubt, effort));
        var counted = runs.Length > 0 ? decisions.Estimate(hands, () => SequenceEstimator.Estimate(runs, hands, doubt, effort)) : null;
        var lengths = Lengths(yarn, errors);
        var total = lengths is { } all ? TotalLength(all, yarn, errors) : (Estimate?)null;
        var yarnPerStitch = YarnPerStitch.Find(yarn, fabric.Stitch, fabric.Swatch, hands, counted?.Sequence, total, errors);

        if (Sequence(counted, lengths, total, yarnPerStitch, fabric) is not { } natural)
        {
            findings.Add(new(FindingKind.NothingMeasured, "yarn.counted",
                "Neither counts nor lengths: count the stitches of each colour over two or three repeats, "
                + "or measure every section's length."));
            reasons = findings.ToImmutable();
            return false;
        }
        if (Unworkable(yarn, fabric, natural, yarnPerStitch) is { } unworkable)
        {
            findings.Add(unworkable);
            reasons = findings.ToImmutable();
            return false;
        }
        var planned = (fabric.SectionStitches ?? natural.Nearest()).Sum();
        if (Math.Max(natural.Total.Value, planned) is > ColourRing.LongestSequence and var longest)
        {
            findings.Add(new(FindingKind.SequenceTooLong, "yarn.sections", string.Create(CultureInfo.InvariantCulture,
                $"The sequence comes to {longest:0} {units}; at most {ColourRing.LongestSequence} can be "
                + $"planned. Check the lengths and the yarn per stitch ({yarnPerStitch.Centimetres.Value:0.00} cm).")));
            reasons = findings.ToImmutable();
            return false;
        }

        if (counted is not null)
        {
            findings.AddRange(decisions.Findings(() => SequenceFindings.Balls(yarn, runs, counted, doubt, units, effort)));
            findings.AddRange(decisions.Findings(() => SequenceFindings.Drifts(yarn, runs, counted, doubt, units, effort)));
            findings.AddRange(decisions.Findings(() => SequenceFindings.OddRepeats(yarn, runs, counted, doubt, units)));
            findings.AddRange(SequenceFindings.Hands(counted));
            findings.AddRange(SequenceFindings.Symmetries(
                yarn, [.. natural.Sections.Select(s => s.Value)], counted.CovarianceMatrix));
            if (lengths is { } beside)
                findings.AddRange(SequenceFindings.Lengths(yarn, counted, beside));
        }
        else if (lengths is { } alone)
        {
            findings.AddRange(SequenceFindings.Symmetries(yarn, [.. alone.Select(l => l.Value)], Diagonal(alone)));
        }
        findings.AddRange(yarnPerStitch.Disagreements);
        if (yarnPerStitch.Source == YarnPerStitchSource.Supposed)
        {
            findings.Add(new(FindingKind.YarnPerStitchSupposed, "fabric.swatch.yarnUsed", string.Create(CultureInfo.InvariantCulture,
                $"Yarn per stitch is only supposed from the stitch's width, {yarnPerStitch.Centimetres.Value:0.0} cm, a "
                + $"quarter more or less: unravel a row of the swatch and measure it.")));
        }
        reasons = [];
        measured = new MeasuredYarn(
            yarn, fabric, hands, doubt, natural, yarnPerStitch, findings.ToImmutable())
        {
            Balls = Ballwise(yarn, runs, hands, doubt, effort, decisions),
        };
        return true;
    }

    /// <summary>Numbers that are each allowed and together mean nothing: a unit was mistaken somewhere.</summary>
    private static MeasuringFinding? Unworkable(Yarn yarn, FabricChoice fabric, SequenceInUnits natural, YarnPerStitch yarnPerStitch)
    {
        var each = yarnPerStitch.Centimetres.Value / fabric.Stitch.StitchesPerUnit;
        if (!YarnPerStitch.OfStitch.Holds(each))
        {
            return new(FindingKind.YarnPerStitchBeyondBelief, "yarn.sections", string.Create(CultureInfo.InvariantCulture,
                $"A stitch comes to {each:0.###} cm of yarn; {YarnPerStitch.OfStitch.Smallest} to {YarnPerStitch.OfStitch.Largest} cm can be "
                + $"worked. Check the lengths, the counted stitches and the swatch."));
        }
        for (var j = 0; j < natural.Sections.Length; j++)
        {
            if (natural.Sections[j].Value < ColourRing.ShortestSection)
            {
                return new(FindingKind.SectionTooShort, $"yarn.sections[{j}].length",
                    $"{yarn.Sections[j].Name} takes less than a hundredth of a stitch. Check its length and the yarn per stitch, or leave the colour out.");
            }
        }
        return null;
    }

    private static SequenceInUnits? Sequence(
        SequenceEstimate? counted,
        ImmutableArray<Estimate>? lengths,
        Estimate? total,
        YarnPerStitch yarnPerStitch,
        FabricChoice fabric)
    {
        if (counted is not null)
        {
            var sections = counted.Sections
                .Select(s => s with { Value = Math.Max(s.Value, SequenceInUnits.ShortestSection) }).ToImmutableArray();
            return new(sections, counted.Sequence with { Value = sections.Sum(s => s.Value) }, SequenceSource.Counts, counted);
        }
        if (lengths is { } all && total is { } whole)
        {
            var yarn = yarnPerStitch.Centimetres;
            return new([.. all.Select(l => l / yarn)], whole / yarn, SequenceSource.Lengths, null);
        }
        if (fabric.SectionStitches is { } intended)
        {
            // All that an intention says of a natural length is that it rounds to it.
            var half = MeasuringErrors.Uniform(0.5);
            return new(
                [.. intended.Select(n => new Estimate(n, half))],
                new Estimate(intended.Sum(), half * Math.Sqrt(intended.Length)), SequenceSource.Intended, null);
        }
        return null;
    }

    private static (ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings) Runs(
        Yarn yarn, HandsPrior hands, SectionDoubt doubt, Effort? effort)
    {
        var findings = ImmutableArray.CreateBuilder<MeasuringFinding>();
        var runs = ImmutableArray.CreateBuilder<CountedRun>();
        for (var ball = 0; ball < yarn.Counted.Length; ball++)
        {
            var read = CountRecord.Read(yarn, ball, hands, effort, doubt.MeanBoundary);
            runs.AddRange(read.Runs);
            findings.AddRange(read.Findings);
        }
        return (runs.ToImmutable(), findings.ToImmutable());
    }

    private static ImmutableArray<MeasuredBall> Ballwise(
        Yarn yarn, ImmutableArray<CountedRun> runs, HandsPrior hands, SectionDoubt doubt, Effort? effort, Decisions? decisions) =>
        [.. runs.GroupBy(r => r.Ball).Select(
            g => new MeasuredBall(
                yarn.Counted[g.Key].Name, decisions.Estimate(hands, () => SequenceEstimator.Estimate([.. g], hands, doubt, effort))))];

    /// <summary>Each section's own spread where it was measured, else the prior's; and where its blend leaves its end open.</summary>
    private static SectionDoubt Doubt(Yarn yarn, FabricChoice fabric, HandsPrior hands, MeasuringErrors errors)
    {
        var dye = Dye(yarn, hands);
        if (yarn.Sections.All(s => s.Blend is null))
            return SectionDoubt.Of(dye);
        var unit = YarnPerStitch.Find(yarn, fabric.Stitch, fabric.Swatch, hands, null, null, errors).Centimetres.Value;
        return new(dye, [.. yarn.Sections.Select(s => SectionDoubt.OfBlend((s.Blend?.Centimetres ?? 0) / unit))]);
    }

    private static ImmutableArray<double> Dye(Yarn yarn, HandsPrior hands) =>
        [.. yarn.Sections.Select(s => s is { Length: { } length, Spread: { } spread } && length > Length.Zero
            ? Math.Clamp(spread / length, 0, 1)
            : hands.Dye)];

    private static ImmutableArray<Estimate>? Lengths(Yarn yarn, MeasuringErrors errors)
    {
        if (yarn.Sections.Any(s => s.Length is not { } length || length <= Length.Zero))
            return null;
        var reading = MeasuringErrors.Uniform(errors.LengthReading.Centimetres);
        return [.. yarn.Sections.Select(s =>
        {
            var length = s.Length!.Value.Centimetres;
            var spread = s.Spread?.Centimetres ?? 0;
            return new Estimate(length, Math.Sqrt(reading * reading + spread * spread + Square(length * errors.Stretch)));
        })];
    }

    /// <summary>Stretch and crimp go the same way in every section, readings do not.</summary>
    private static Estimate TotalLength(ImmutableArray<Estimate> lengths, Yarn yarn, MeasuringErrors errors)
    {
        var total = lengths.Sum(l => l.Value);
        var reading = MeasuringErrors.Uniform(errors.LengthReading.Centimetres);
        var own = lengths.Length * reading * reading + yarn.Sections.Sum(s => Square(s.Spread?.Centimetres ?? 0));
        return new Estimate(total, Math.Sqrt(own + Square(total * errors.Stretch)));
    }

    private static double[] Diagonal(ImmutableArray<Estimate> estimates)
    {
        var matrix = new double[estimates.Length * estimates.Length];
        for (var j = 0; j < estimates.Length; j++)
            matrix[j * estimates.Length + j] = Square(estimates[j].StandardError);
        return matrix;
    }

    private static double Square(double x) => x * x;
}
