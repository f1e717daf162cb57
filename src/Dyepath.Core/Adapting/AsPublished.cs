using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
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

/// <summary>Why a size cannot be worked as it is published, from what stands first in the way to what stands last.</summary>
internal enum MisfitKind
{
    /// <summary>Number or order of the colours.</summary>
    Order,

    /// <summary>The stitches that all colours take together.</summary>
    Sequence,

    /// <summary>The stitches that a colour takes of them.</summary>
    Share,

    /// <summary>Her hands would have to depart so far from themselves that the picture is lost.</summary>
    Hands,

    /// <summary>Its finished measures.</summary>
    Size,
}

/// <summary>What stands in the way with the hook that comes nearest.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Section">Of <see cref="MisfitKind.Share"/>, in the pattern's order.</param>
/// <param name="Match">How her colours would take the pattern's places; missing where they cannot.</param>
/// <param name="Sequence">Units that her sequence takes with that hook.</param>
internal sealed record Misfit(MisfitKind Kind, int Section = 0, SequenceMatch? Match = null, double Sequence = 0)
{
    /// <summary>In millimetres; 0 where no hook was tried.</summary>
    public double Hook { get; init; }

    /// <summary>Of <see cref="MisfitKind.Size"/>, what comes out off the pattern's own; missing where a body does not get in.</summary>
    public (GarmentMeasure Measure, Length Made)? Off { get; init; }
}

/// <summary>Whether, and with which hook, a size can be worked as it is published.</summary>
/// <param name="plan">Of the whole pattern.</param>
/// <param name="size">The reader's.</param>
/// <param name="one">The size as a document of its own.</param>
internal sealed class AsPublished(Plan plan, SizePlan size, OneSize one)
{
    /// <summary>How the size is worked with the reader's own hook, or else another in reach; or what stands in the way.</summary>
    /// <param name="document">With her materials.</param>
    /// <param name="measured">Her yarn with her own hook.</param>
    /// <param name="sections">Hers, in her order.</param>
    /// <param name="reach">How far another hook may depart from her own, in millimetres; 0: no other.</param>
    public (PublishedWork? Work, Misfit? Misfit) Find(
        OwnDocument document, MeasuredYarn measured, ImmutableArray<YarnSection> sections, double reach)
    {
        var own = measured.Fabric.Swatch.HookMillimetres;
        if (SequenceMatch.OfOrder(plan, sections, Natural(measured)) is not { } order)
            return (null, new Misfit(MisfitKind.Order));
        var hooks = HookSizes.All.Select(h => h.Diameter.Millimetres).Append(own).Distinct()
            .Where(h => Swatch.Hooks.Holds(h) && Math.Abs(h - own) <= reach && CanBeWorked(measured, h));
        var tried = hooks.Select(hook => measured.AtHook(hook)).OrderBy(m => m.Fabric.Swatch.HookMillimetres == own ? 0 : 1)
            .ThenBy(m => Math.Abs(order.Longer(Natural(m))));
        Misfit? nearest = null;
        foreach (var hooked in tried)
        {
            var (work, misfit) = Worked(document, hooked, order, sections);
            if (work is not null)
                return (work, null);
            if (nearest is null || misfit!.Kind > nearest.Kind)
                nearest = misfit! with { Hook = hooked.Fabric.Swatch.HookMillimetres };
        }
        return (null, nearest);
    }

    private static bool CanBeWorked(MeasuredYarn measured, double hook) =>
        measured.Natural.Total.Value / HookResponse.For(measured.Fabric).YarnFactor(hook) <= ColourRing.LongestSequence / 2.0;

    private static ImmutableArray<double> Natural(MeasuredYarn measured) => [.. measured.Natural.Sections.Select(s => s.Value)];

    private (PublishedWork? Work, Misfit? Misfit) Worked(
        OwnDocument document, MeasuredYarn measured, SequenceMatch order, ImmutableArray<YarnSection> sections)
    {
        var natural = Natural(measured);
        if (SequenceMatch.Find(plan, sections, natural) is not { } match)
        {
            return (null, Math.Abs(order.Departure(natural)) <= AdaptLimits.Held && order.Strayed(natural) is { } section
                ? new Misfit(MisfitKind.Share, section, order, natural.Sum()) : new Misfit(MisfitKind.Sequence, 0, order, natural.Sum()));
        }
        var departure = match.Departure(natural);
        if (!IsKept(departure))
            return (null, new Misfit(MisfitKind.Hands, 0, match, natural.Sum()));
        var fabric = AtTension(document, measured.Fabric, match, natural);
        var worked = one.AsWritten(project => document.AsWritten(project, match, fabric)) ?? Renamed(document, match, measured.Fabric);
        if (worked is null || !IsOfSize(worked.Sizes[0]))
            return (null, new Misfit(MisfitKind.Size, 0, match, natural.Sum()) { Off = worked is null ? null : Off(worked.Sizes[0]) });
        return (new PublishedWork(worked, fabric.Swatch.HookMillimetres, natural.Sum(), match, departure), null);
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
        if (!document.IsPatternsFabric || fabric.Swatch.HookMillimetres != hook
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
                    >= Math.Min(AdaptLimits.WellMade, MadeWell.ChanceAt(held, plan.Sequence.Measured.Hands, 0) - AdaptLimits.LostMakers)));
    }

    /// <summary>Finished measures are the pattern's, and what a body gets into it gets into still.</summary>
    private bool IsOfSize(SizePlan worked) => Off(worked) is null && OwnFit.IsWorn(size, worked);

    /// <summary>What comes out farthest off the pattern's own measures; null where all are as the pattern has them.</summary>
    private (GarmentMeasure Measure, Length Made)? Off(SizePlan worked)
    {
        var off = worked.Finished.Select(f => (f.Key, f.Value)).MaxBy(By);
        return By(off) > AdaptLimits.SameSize ? off : null;

        Length By((GarmentMeasure Measure, Length Made) f) => Length.Abs(f.Made - size.Finished.GetValueOrDefault(f.Measure));
    }
}

/// <summary>What a reader's piece has to keep of the pattern's.</summary>
internal static class OwnFit
{
    /// <summary>Every part that a body gets into as the pattern has it, it gets into still.</summary>
    public static bool IsWorn(SizePlan pattern, SizePlan own) =>
        own.Worn.All(fit => fit.Holds || pattern.Worn.Any(p => p.Part == fit.Part && !p.Holds));

    /// <summary>
    /// What is farther off from what it asks for than is let off, and farther than in the pattern; null where nothing is.
    /// </summary>
    public static FitError? Beyond(SizePlan? pattern, SizePlan own, Length letOff) => own.Target
        .Select(t => new FitError(own.Name, t.Key, own.Finished[t.Key] - t.Value))
        .Where(e => e.Off > letOff && !(pattern is not null && pattern.Target.TryGetValue(e.Measure, out var asked)
            && Length.Abs(pattern.Finished[e.Measure] - asked) >= e.Off))
        .MaxBy(e => e.Off);

    /// <summary>
    /// Whether its colours draw something that is seen, and whole at least once, in every piece; what the pattern's own piece lacks is not
    /// asked for.
    /// </summary>
    /// <param name="pattern">The plan and the size that it is held against; missing where there is none.</param>
    public static bool IsReadable(Plan own, SizePlan size, (Plan Plan, SizePlan Size)? pattern)
    {
        return size.Pieces.Where(p => p.Pooled).All(piece =>
        {
            var lacks = Lacks(own, piece);
            return lacks.IsEmpty || pattern is { } held && held.Size.Find(piece.Id) is { Pooled: true } published
                && lacks.Except(Lacks(held.Plan, published)).IsEmpty;
        });

        static ImmutableHashSet<MotifFinding> Lacks(Plan plan, PiecePlan piece)
        {
            var reading = PieceMotif.Read(plan, piece);
            var lacks = reading.Findings.Where(f => f != MotifFinding.Uneven).ToImmutableHashSet();
            // A band is longer than its row.
            lacks = piece.Motif == MotifKind.Bands ? lacks.Remove(MotifFinding.TooNarrow)
                : PlanFindings.IsNarrow(SharedFabric.Of(plan), piece) ? lacks.Add(MotifFinding.TooNarrow) : lacks;
            return reading.RelativeClarity < AdaptLimits.Readable ? lacks.Add(MotifFinding.OneColour) : lacks;
        }
    }

    /// <summary>
    /// The share of makers of whom the piece that is hardest to hold comes out well, were its yarn counted to the end: whole stitches ask
    /// every maker alike to depart from her own tension.
    /// </summary>
    public static double Makers(Plan own, SizePlan size)
    {
        var (shared, measured) = (SharedFabric.Of(own), own.Sequence.Measured);
        var departure = own.Project.Fabric.Keeping == ColourKeeping.Free ? 0
            : own.Sequence.Ring.SequenceUnits / measured.Natural.Total.Value - 1;
        return size.Pieces.Min(p => MadeWell.Held(shared, p) is { } held ? MadeWell.Served(held, measured.Hands, 0, departure) : 1);
    }
}
