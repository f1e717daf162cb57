using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>The pattern's document with a reader's yarn, gauge and hook in the place of the designer's.</summary>
internal sealed class OwnDocument
{
    /// <summary>Stitches, or pairs, that yarn per stitch is written down for.</summary>
    private const int Unravelled = 40;

    private readonly Plan _plan;
    private readonly OwnMaterials _own;

    /// <param name="plan">Of the whole pattern.</param>
    public OwnDocument(Plan plan, OwnMaterials own)
    {
        (_plan, _own) = (plan, own);
        var response = HookResponse.For(plan.Project.Fabric);
        (Wider, Taller) = own.Gauge is { } gauge ? (gauge.StitchWidth / plan.StitchWidth, gauge.RowHeight / plan.RowHeight) : (1, 1);
        YarnPerStitch = own.YarnPerStitch
            ?? PatternsYarnPerStitch * Math.Pow(Wider, Follows(response.YarnPower, response.WidthPower));
    }

    /// <summary>Her stitch over the pattern's.</summary>
    public double Wider { get; }

    /// <summary>Her row over the pattern's.</summary>
    public double Taller { get; }

    /// <summary>As she measured it, or else supposed from her gauge.</summary>
    public Length YarnPerStitch { get; }

    /// <summary>At the tension of the designer's swatch.</summary>
    public Length PatternsYarnPerStitch => _plan.Sequence.Measured.YarnPerStitch.PerUnit;

    /// <summary>Whether the yarn of her stitch was measured, or her gauge at least, which it follows.</summary>
    public bool KnowsStitch => _own.YarnPerStitch is not null || KnowsGauge;

    /// <summary>She measured a swatch.</summary>
    public bool KnowsGauge => _own.Gauge is not null;

    /// <summary>The yarn of her stitch follows from her gauge alone.</summary>
    public bool IsSupposed => _own.YarnPerStitch is null;

    /// <summary>Neither her stitches nor her balls are other than the pattern's.</summary>
    public bool IsPatternsFabric => Wider == 1 && Taller == 1 && YarnPerStitch == PatternsYarnPerStitch && _own.Ball is null;

    /// <summary>How the width of a stitch follows the yarn that it takes, as a power.</summary>
    public static (double Width, double Height) WithTension(HookResponse response) =>
        (Follows(response.WidthPower, response.YarnPower), Follows(response.HeightPower, response.YarnPower));

    private static double Follows(double power, double other) => other > 0 ? power / other : 1;

    /// <summary>
    /// Her own document: counts, beginnings and rows are free, targets are the pattern's. What is written in it is what she said, so that
    /// what it cannot say is her fault to mend.
    /// </summary>
    /// <param name="size">The pattern's document of her size.</param>
    public Project Free(Project size)
    {
        var project = Dressed(size, _own.Yarn.Sections, _own.Yarn.Repeats);
        return project with
        {
            Fabric = project.Fabric with { SectionStitches = Whole(project) },
            Garment = size.Garment with { Starts = ImmutableSortedDictionary<string, int>.Empty },
            Sizes = Alternative.Unpinned(size).Sizes,
        };
    }

    /// <summary>
    /// Whole units for each of her sections that come to her whole sequence, to the nearest unit, with the least change in any of them;
    /// null where the nearest ones do so by themselves, where colours fall as they fall, and where nothing is known.
    /// </summary>
    private static ImmutableArray<int>? Whole(Project own)
    {
        if (own.Fabric.Keeping == ColourKeeping.Free || !MeasuredYarn.TryMeasure(own.Yarn, own.Fabric, out var measured, out _))
            return null;
        var natural = measured.Natural.Sections.Select(s => s.Value).ToArray();
        var (whole, all) = (measured.Natural.Nearest().ToArray(), (int)Math.Round(natural.Sum(), MidpointRounding.AwayFromZero));
        if (whole.Sum() == all || all < whole.Length)
            return null;
        while (whole.Sum() != all)
        {
            var step = Math.Sign(all - whole.Sum());
            var at = Enumerable.Range(0, whole.Length).Where(i => whole[i] + step >= 1)
                .MinBy(i => Math.Abs(natural[i] / (whole[i] + step) - 1));
            whole[at] += step;
        }
        return [.. whole];
    }

    /// <summary>The pattern's document of her size in her yarn, with the stitches of each colour that the pattern counts on.</summary>
    /// <param name="match">How her sections take the pattern's places.</param>
    /// <param name="fabric">Hers, with the hook and at the tension that it is worked with.</param>
    public Project AsWritten(Project size, SequenceMatch match, FabricChoice fabric)
    {
        var project = Dressed(
            size, match.InPatternsOrder(_own.Yarn.Sections), [.. _own.Yarn.Repeats.Select(match.InPatternsOrder)]);
        return project with
        {
            Fabric = fabric with
            {
                SectionStitches = fabric.Keeping == ColourKeeping.Counted ? [.. match.Stitches.Select(n => (int)Math.Round(n))] : null,
            },
        };
    }

    /// <summary>Her fabric with the hook that she measured with, at natural tension.</summary>
    public FabricChoice Fabric
    {
        get
        {
            var fabric = _plan.Project.Fabric;
            var swatch = Scaled(fabric.Swatch) with { HookMillimetres = _own.HookMillimetres ?? fabric.Swatch.HookMillimetres };
            var stitches = Unravelled * fabric.Stitch.StitchesPerUnit;
            if (_own.Gauge is not null || _own.YarnPerStitch is not null || swatch.YarnUsed.IsEmpty)
                swatch = swatch with { YarnUsed = [new YarnUsed(stitches, YarnPerStitch * Unravelled)] };
            // What another hook did to the designer's stitches, it does to hers, from the hook that is hers.
            var other = fabric.OtherSwatch is { } second && second.HookMillimetres != swatch.HookMillimetres ? Scaled(second) : null;
            return fabric with
            {
                Swatch = swatch,
                OtherSwatch = other,
                SectionStitches = null,
                Edging = fabric.Edging is { } edging ? Scaled(edging) : null,
            };
        }
    }

    private Project Dressed(Project size, ImmutableArray<YarnSection> sections, ImmutableArray<ImmutableArray<int>> repeats)
    {
        var yarn = _plan.Project.Yarn;
        var ball = _own.Ball is { } metres ? new Ball(metres, yarn.Ball.Mass * (metres / yarn.Ball.Length)) : yarn.Ball;
        var project = size with
        {
            Yarn = new Yarn(
                _own.Yarn.Name, _own.Yarn.Name == yarn.Name ? yarn.Fibre : "", yarn.Category, ball, sections,
                repeats.IsEmpty ? [] : [new CountedBall(CountedBall.MakersOwn, repeats)]),
            Fabric = Fabric,
        };
        return OwnColours.Of(_plan.Project, project);
    }

    private Swatch Scaled(Swatch swatch) => swatch with
    {
        Worked = Scaled(swatch.Worked),
        Blocked = swatch.Blocked is { } blocked ? Scaled(blocked) : null,
        Hung = swatch.Hung is { } hung ? Scaled(hung) : null,
        YarnUsed =
        [
            .. swatch.YarnUsed.Select(u => u with
            {
                Length = u.Length * (YarnPerStitch / PatternsYarnPerStitch), Mass = u.Mass * (YarnPerStitch / PatternsYarnPerStitch),
            }),
        ],
    };

    private Gauge Scaled(Gauge gauge) => Wider == 1 && Taller == 1 ? gauge
        : gauge with { Stitches = gauge.Stitches / Wider, Rows = gauge.Rows / Taller };
}
