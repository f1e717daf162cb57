using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>A size worked as it is published, in a reader's yarn.</summary>
/// <param name="Plan">Of that size alone, with her yarn, gauge and hook.</param>
/// <param name="Hook">In millimetres.</param>
/// <param name="Sequence">Units that her sequence takes with that hook.</param>
/// <param name="Match">How her colours take the pattern's places.</param>
/// <param name="Departure">Her yarn per stitch beyond the plan's with that hook, relative; positive: she works tighter than by herself.</param>
internal sealed record PublishedWork(Plan Plan, double Hook, double Sequence, SequenceMatch Match, double Departure);

/// <summary>Whether, and with which hook, a size can be worked as it is published.</summary>
/// <param name="plan">Of the whole pattern.</param>
/// <param name="size">The reader's.</param>
/// <param name="one">The size as a document of its own.</param>
internal sealed class AsPublished(Plan plan, SizePlan size, OneSize one)
{
    /// <summary>How the size is worked with the reader's own hook, or else another in reach; null where none serves.</summary>
    /// <param name="document">With her materials.</param>
    /// <param name="measured">Her yarn with her own hook.</param>
    /// <param name="sections">Hers, in her order.</param>
    /// <param name="reach">How far another hook may depart from her own, in millimetres; 0: no other.</param>
    public PublishedWork? Find(OwnDocument document, MeasuredYarn measured, ImmutableArray<YarnSection> sections, double reach)
    {
        var own = measured.Fabric.Swatch.HookMillimetres;
        var hooks = HookSizes.All.Select(h => h.Diameter.Millimetres).Append(own).Distinct()
            .Where(h => Swatch.Hooks.Holds(h) && Math.Abs(h - own) <= reach && CanBeWorked(measured, h));
        var matches = hooks.Select(hook => measured.AtHook(hook)).Select(m => (Measured: m, Natural: Natural(m)))
            .Select(m => (m.Measured, m.Natural, Match: SequenceMatch.Find(plan, sections, m.Natural))).Where(m => m.Match is not null)
            .OrderBy(m => m.Measured.Fabric.Swatch.HookMillimetres == own ? 0 : 1).ThenBy(m => Math.Abs(m.Match!.Longer(m.Natural)));
        return matches.Select(m => Worked(document, m.Measured, m.Match!, m.Natural)).FirstOrDefault(w => w is not null);
    }

    private static bool CanBeWorked(MeasuredYarn measured, double hook) =>
        measured.Natural.Total.Value / HookResponse.For(measured.Fabric).YarnFactor(hook) <= ColourRing.LongestSequence / 2.0;

    private static ImmutableArray<double> Natural(MeasuredYarn measured) => [.. measured.Natural.Sections.Select(s => s.Value)];

    private PublishedWork? Worked(OwnDocument document, MeasuredYarn measured, SequenceMatch match, ImmutableArray<double> natural)
    {
        var departure = 1 / (1 + match.Longer(natural)) - 1;
        if (!IsKept(departure))
            return null;
        var fabric = AtTension(document, measured.Fabric, match, natural);
        var worked = one.AsWritten(project => document.AsWritten(project, match, fabric)) ?? Renamed(document, match, measured.Fabric);
        return worked is not null && IsOfSize(worked.Sizes[0])
            ? new PublishedWork(worked, fabric.Swatch.HookMillimetres, natural.Sum(), match, departure) : null;
    }

    /// <summary>
    /// Whoever keeps the pattern's stitches against her own tension works larger or smaller stitches than in her swatch; what hands differ
    /// by anyway is not counted.
    /// </summary>
    private FabricChoice AtTension(OwnDocument document, FabricChoice fabric, SequenceMatch match, ImmutableArray<double> natural)
    {
        var designers = plan.Sequence.Measured.Natural.Total.Value * (match.Stitches.Sum() / plan.Sequence.Ring.SequenceUnits);
        var tension = natural.Sum() / designers;
        if (fabric.Keeping == ColourKeeping.Free || Math.Abs(tension - 1) <= AdaptLimits.Usual)
            return fabric;
        var (width, height) = OwnDocument.WithTension(HookResponse.For(document.Fabric));
        return fabric with { Swatch = Stretched(fabric.Swatch, Math.Pow(tension, width), Math.Pow(tension, height)) };
    }

    private static Swatch Stretched(Swatch swatch, double wider, double taller)
    {
        return swatch with
        {
            Worked = Of(swatch.Worked),
            Blocked = swatch.Blocked is { } blocked ? Of(blocked) : null,
            Hung = swatch.Hung is { } hung ? Of(hung) : null,
        };

        Gauge Of(Gauge gauge) => gauge with { Stitches = gauge.Stitches / wider, Rows = gauge.Rows / taller };
    }

    /// <summary>
    /// The published size itself under her colours' names, where no document of one size leads to it: only where nothing of her fabric
    /// is other than the pattern's.
    /// </summary>
    private Plan? Renamed(OwnDocument document, SequenceMatch match, FabricChoice fabric)
    {
        var hook = plan.Project.Fabric.Swatch.HookMillimetres;
        if (document.Wider != 1 || document.Taller != 1 || fabric.Swatch.HookMillimetres != hook
            || match.Stitches.Length != plan.Sequence.Ring.Sections.Length)
            return null;
        var project = document.AsWritten(one.Project, match, fabric);
        return plan with
        {
            Project = project,
            Sequence = plan.Sequence.Called(SequenceColour.AsWorked(project.Yarn, project.Sizes.Called)),
            Sizes = [size],
        };
    }

    /// <summary>Hands that depart so far from the plan by themselves keep the colours all the same.</summary>
    private bool IsKept(double departure)
    {
        var shared = SharedFabric.Of(plan);
        return size.Pieces.All(piece => MadeWell.Held(shared, piece) is not { } held
            || (plan.Project.Fabric.Keeping == ColourKeeping.Free
                ? piece.Forgives.Tighter <= departure && departure <= piece.Forgives.Looser
                : MadeWell.ChanceAt(held, plan.Sequence.Measured.Hands, departure)
                    >= Math.Min(AdaptLimits.WellMade, MadeWell.ChanceAt(held, plan.Sequence.Measured.Hands, 0))));
    }

    /// <summary>Finished measures are the pattern's, and what a body gets into it gets into still.</summary>
    private bool IsOfSize(SizePlan worked) =>
        size.Finished.All(f => worked.Finished.TryGetValue(f.Key, out var own) && Length.Abs(own - f.Value) <= AdaptLimits.SameSize)
        && OwnFit.IsWorn(size, worked);
}

/// <summary>What a reader's piece has to keep of the pattern's.</summary>
internal static class OwnFit
{
    /// <summary>Every part that a body gets into as the pattern has it, it gets into still.</summary>
    public static bool IsWorn(SizePlan pattern, SizePlan own) =>
        own.Worn.All(fit => fit.Holds || pattern.Worn.Any(p => p.Part == fit.Part && !p.Holds));

    /// <summary>What is farther off from what it asks for than is let off, and farther than in the pattern; null where nothing is.</summary>
    public static FitError? Beyond(SizePlan? pattern, SizePlan own, Length letOff) => own.Target
        .Select(t => new FitError(own.Name, t.Key, own.Finished[t.Key] - t.Value))
        .Where(e => e.Off > letOff && !(pattern is not null && pattern.Target.TryGetValue(e.Measure, out var asked)
            && Length.Abs(pattern.Finished[e.Measure] - asked) >= e.Off))
        .MaxBy(e => e.Off);

    /// <summary>Whether its colours draw something that is seen, in every piece in which the pattern's do.</summary>
    public static bool IsReadable(Plan own, SizePlan size) => size.Pieces.Where(p => p.Pooled).All(p =>
        PieceMotif.Read(own, p).RelativeClarity >= AdaptLimits.Readable && !PlanFindings.IsNarrow(SharedFabric.Of(own), p));

    /// <summary>The share of makers of whom the piece that is hardest to hold comes out well, were its yarn counted to the end.</summary>
    public static double Makers(Plan own, SizePlan size)
    {
        var shared = SharedFabric.Of(own);
        return size.Pieces.Min(p => MadeWell.Held(shared, p) is { } held ? MadeWell.Served(held, own.Sequence.Measured.Hands, 0) : 1);
    }
}
