using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Colours;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>What all pieces and sizes of a garment share: yarn, stitch, gauges, turn cost.</summary>
internal sealed class SharedFabric
{
    private SharedFabric(Project project, MeasuredYarn measured, Decisions? decisions, Effort effort)
    {
        (Project, Decisions, Effort) = (project, decisions, effort);
        Sequence = ColourSequence.Of(project.Yarn, measured, project.Sizes.Called);
        Period = ColourPeriod.Of(Ring);
        var fabric = project.Fabric;
        TurnCost = project.Garment.Working == Working.Spiral
            ? 0
            : fabric.TurnCost ?? (fabric.Keeping == ColourKeeping.Counted ? 0 : fabric.Stitch.NominalTurnCost);
        Palette = Palette.FromLab(Ring, [.. Sequence.Colours.Select(c => Lab(c.Colour))]);
        Findings = [.. measured.Findings];
    }

    public Project Project { get; }

    public ColourSequence Sequence { get; }

    /// <summary>Where what is searched for is recorded, or answered from; missing where it is only searched for.</summary>
    public Decisions? Decisions { get; private set; }

    /// <summary>What the work takes.</summary>
    public Effort Effort { get; private set; }

    public KnownShapes Shapes { get; private set; } = new();

    public ColourRing Ring => Sequence.Ring;

    /// <summary>Missing for one colour.</summary>
    public ColourPeriod? Period { get; }

    /// <summary>P in micro-units; one colour adjoins itself anywhere, which a period of one micro-unit says.</summary>
    public long PeriodMicro => Period?.Micro ?? 1;

    public Length YarnPerUnit => Sequence.YarnPerUnit;

    public bool TurningChainCounts => Project.Fabric.ChainCountsAsStitch;

    public double TurnCost { get; }

    public Palette Palette { get; }

    public ImmutableArray<Finding> Findings { get; }

    public FabricStitch Stitch => Project.Fabric.Stitch;

    /// <summary>Yarn of one single crochet of this yarn on this hook.</summary>
    public Length SingleCrochetYarn => YarnPerUnit / (Stitch.YarnInSingleCrochet * Stitch.StitchesPerUnit);

    public Length SingleCrochetHeight => Stitch.Id == FabricStitch.SingleCrochet.Id
        ? Size.RowHeight
        : Size.StitchWidth * FabricStitch.SingleCrochet.HeightOverWidth;

    private Gauge Size => GaugeFor(Direction.Up);

    /// <summary>Size of an edging's stitches, where the fabric's are as in a direction.</summary>
    public EdgingGauge EdgingGaugeFor(Direction direction) => EdgingGauge.For(Project.Fabric, GaugeFor(direction), SingleCrochetHeight);

    /// <summary>
    /// The gauge that sizes follow from: hung, else blocked, else worked. A swatch is hung with its rows across the pull, so the
    /// hung gauge does not apply to a garment that is worked sideways; that one uses the blocked gauge.
    /// </summary>
    public Gauge GaugeFor(Direction direction)
    {
        var swatch = Project.Fabric.Swatch;
        return direction == Direction.Up ? swatch.ForSize() : swatch.BeforeHanging();
    }

    /// <summary>Ends the plan: later searches are neither recorded with it nor counted against its effort.</summary>
    public void Decided() => (Decisions, Effort, Shapes) = (null, new Effort(), new KnownShapes());

    public Axis Stitches(Direction direction) => new(true, GaugeFor(direction).StitchWidth, Project.Garment.Seams.HiddenStitches);

    public Axis Rows(Direction direction) => new(false, GaugeFor(direction).RowHeight, Project.Garment.Seams.HiddenRows);

    public bool CompanionFor(CompanionUse use) => Project.Companion is { } companion && companion.Uses.Contains(use);

    /// <summary>
    /// The two hooks next below the swatch's and the two above, in hundredths of a millimetre, and how much wider each makes a stitch.
    /// </summary>
    public IEnumerable<(int Hook, double Factor)> HooksNear(Direction direction)
    {
        var (swatch, response) = (Project.Fabric.Swatch, HookResponse.For(Project.Fabric));
        var (names, measured) = (Project.Yarn.Sections.Select(s => s.Name).ToArray(), Sequence.Measured);
        var hooks = HookSizes.All.Select(h => h.Diameter.Millimetres).Where(Swatch.Hooks.Holds).ToArray();
        foreach (var hook in hooks.Where(h => h < swatch.HookMillimetres).TakeLast(2)
            .Concat(hooks.Where(h => h > swatch.HookMillimetres).Take(2)))
        {
            var (other, factor) = (response.At(hook), response.YarnFactorEstimate(hook));
            // Its counts ask of the hands what is seen.
            var tension = HandTension.Of(names, [.. measured.Natural.Sections.Select(s => s / factor)], measured.Stitches);
            if (tension.Any(t => t.Verdict == TensionVerdict.Shows))
                continue;
            var gauge = direction == Direction.Up ? other.ForSize() : other.BeforeHanging();
            yield return ((int)Math.Round(100 * hook), gauge.StitchWidth / GaugeFor(direction).StitchWidth);
        }
    }

    /// <summary>What the edging at a place adds to the edge; nothing where there is none.</summary>
    /// <param name="rounds">Of a size; missing: as wished.</param>
    public Length EdgingDepth(EdgingPlace place, int? rounds = null) =>
        EdgingAt(place) is { } choice && EdgingLibrary.TryFind(choice.Edging, out var edging)
            ? edging.Depth(rounds ?? choice.RoundsOf(edging).Wished, EdgingGaugeFor(Direction.Up).RowHeight)
            : Length.Zero;

    public EdgingChoice? EdgingAt(EdgingPlace place) => Project.Garment.Edgings.FirstOrDefault(e => e.Where == place);

    public FabricPath Path(Working working, ImmutableArray<int> rowStitches, int rows, double turnCost, double start = 0) =>
        FabricPath.Steady(working, rowStitches, rows, Project.Fabric.Path(turnCost, start));

    public FabricPath Path(PiecePlan piece) => PieceFabric.PathOf(Project.Fabric, piece);

    public CountOptions Counts(Direction direction, Working working, int from, int to, int rows) => new(GaugeFor(direction), from, to)
    {
        Motif = Project.Garment.Motif,
        Working = working,
        Rows = Math.Clamp(rows, 1, FabricPath.MostRows),
        Path = Project.Fabric.Path(TurnCost),
        Alternating = Project.Garment.Grading.AlternatingRows,
        HalfTurn = Project.Garment.Grading.HalfStitchTurn,
        Palette = Palette,
    };

    /// <summary>The same yarn, measured already, and the same stitch in another garment.</summary>
    public SharedFabric With(GarmentSpec garment) =>
        new(Project with { Garment = garment }, Sequence.Measured, null, Effort) { Shapes = Shapes };

    public static SharedFabric Of(Plan plan) => new(plan.Project, plan.Sequence.Measured, null, new Effort());

    public static bool TryCreate(
        Project project, Decisions? decisions, Effort effort, [NotNullWhen(true)] out SharedFabric? shared,
        out ImmutableArray<Finding> reasons)
    {
        shared = null;
        if (!MeasuredYarn.TryMeasure(project.Yarn, project.Fabric, out var measured, out var faults, effort: effort, decisions: decisions))
        {
            reasons = [.. faults];
            return false;
        }
        var made = new SharedFabric(project, measured, decisions, effort);
        var each = made.YarnPerUnit.Centimetres / made.Stitch.StitchesPerUnit;
        if (!YarnPerStitch.OfStitch.Holds(each))
        {
            reasons =
            [
                new Finding(FindingLevel.Fault, "fabric.sectionStitches", FormattableString.Invariant(
                    $"So many stitches leave {each:0.###} cm of yarn for each; {YarnPerStitch.OfStitch.Smallest} to {YarnPerStitch.OfStitch.Largest} cm can be worked. Check these numbers and what was measured of the yarn.")),
            ];
            return false;
        }
        shared = made;
        reasons = [];
        return true;
    }

    private static (double L, double A, double B) Lab(Srgb colour)
    {
        var lab = colour.ToLab();
        return (Math.Clamp(lab.Lightness, 0, 100), lab.A, lab.B);
    }
}
