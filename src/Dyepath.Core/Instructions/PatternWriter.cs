using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>Writes the pattern: the instruction tree of a plan, with every number read from the plan.</summary>
public static class PatternWriter
{
    /// <exception cref="ArgumentException">The plan has no size, or its sizes have different pieces.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Booklet Write(Plan plan, CancellationToken cancel = default) => Write(plan, new Effort(cancel: cancel));

    internal static Booklet Write(Plan plan, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(plan);
        effort.Begin(EffortPart.Pattern);
        if (plan.Sizes.IsEmpty)
            throw new ArgumentException("A plan has at least one size.", nameof(plan));
        var context = new PatternContext(plan, effort);
        var sections = ImmutableArray.CreateBuilder<Section>();
        if (context.Own("introduction").ToImmutableArray() is { IsEmpty: false } introduction)
            sections.Add(new Section("introduction", Phrase.Plain("About"), introduction.CastArray<Block>()));
        sections.Add(SizesSection.Write(context));
        sections.Add(MaterialsSection.Materials(context));
        sections.Add(MaterialsSection.Gauge(context));
        ImmutableArray<Section?> work =
        [
            BeforeSection.Write(context),
            NotesSection.Write(context),
            ColoursSection.Write(context),
            PiecesSection.Write(context),
            MakingUpSection.Write(context),
            EdgingsSection.Write(context),
            MakingUpSection.AfterEdgings(context),
        ];
        sections.AddRange(AbbreviationsSection.Write(context, work.OfType<Section>()));
        sections.AddRange(work.OfType<Section>());
        sections.Add(CareSection.Write(context));
        sections.Add(ChartsSection.Write(context));
        return new Booklet(
            plan.Project.Title, plan.Project.Designer, [.. plan.Sizes.Select(s => s.Name)], plan.Project.Edition, sections.ToImmutable())
        {
            Cover = CoverOfPlan.Of(context),
        };
    }

    /// <summary>The pieces of one size to scale, each dimension in words where it lies.</summary>
    /// <param name="size">Index of the size.</param>
    public static Figure Schematic(Plan plan, int size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return SchematicFigure.InWords(new PatternContext(plan), size);
    }
}
