using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Blocking, seams and edgings.</summary>
internal static class MakingUpSection
{
    public static Section MakingUp(PatternContext context)
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        Add("Wash and dry every piece flat to the measurements of the drawing; let it dry fully.");
        var top = context.Project.Garment.Shape is BoxyTop;
        if (top)
        {
            if (context.Pieces.FirstOrDefault(p => p.First.WrongSideOut) is { } turned)
                Add($"Turn the {turned.Name} over, so that the side its odd-numbered rows show faces in: its colours then mirror the front's at every seam. Back and forth work looks alike on both sides.");
            Add("Shoulders: lay front and back together, wrong sides out. Sew from each outer edge towards the middle, up to the marks of the neck opening; both ends of the opening take the most strain, so sew them twice.");
            if (context.Pieces.Any(p => p.Name.StartsWith("sleeve", StringComparison.Ordinal)))
                Add("Sleeves: sew the top edge of each sleeve between the armhole marks, its middle at the shoulder seam.");
            Add("Sides: sew from the hem up to the armhole marks, row to row, then the sleeves' undersides.");
        }
        Add("Weave in the ends, following their own colours.");
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.Add(new Steps(steps.ToImmutable()));
        if (context.Plan.Sizes.All(s => s.Seams.Length > 0))
            blocks.Add(SeamTable(context));
        blocks.AddRange(context.Own("makingUp"));
        return new Section("making-up", Phrase.Plain("Making up"), blocks.ToImmutable());

        void Add(string text) => steps.Add(new Instruction(Phrase.Plain($"{steps.Count + 1}"), Phrase.Plain(text)));
    }

    /// <summary>How far the colours jump across each seam, so that a maker knows what to expect.</summary>
    private static Table SeamTable(PatternContext context)
    {
        var seams = context.Plan.Sizes[0].Seams;
        return new Table(
            Phrase.Plain("How many stitches of yarn the colours jump at each seam, on average (0: they run on)."),
            [Phrase.Plain("Seam"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
            [.. seams.Select((seam, i) => ImmutableArray.CreateRange(
                [Phrase.Plain(seam.Where), .. context.Plan.Sizes.Select(s => Phrase.Plain(MaterialsSection.Number(Math.Round(s.Seams[i].PhaseJump, 1))))]))],
            PerSizeColumns: true);
    }

    public static Section? Edgings(PatternContext context)
    {
        var plans = context.Plan.Sizes[0].Edgings;
        if (plans.IsEmpty)
            return null;
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var shown = new HashSet<string>();
        for (var i = 0; i < plans.Length; i++)
        {
            var at = i;
            var plan = plans[at];
            if (!EdgingLibrary.TryFind(plan.Edging, out var edging))
                throw new InvalidOperationException($"The plan names an edging that does not ship: {plan.Edging}.");
            blocks.Add(new Subheading(Phrase.Of($"{PlaceWords.Of(plan.Where)}{(plan.Copies == 1 ? "" : $" (work {plan.Copies})")}: {edging.Name}")));
            blocks.Add(new Paragraph(Phrase.Of(
                $"{context.Each(s => s.Edgings[at].PickUp)} stitches, {context.Each(s => s.Edgings[at].Rounds)} rounds, about {context.Each(s => s.Edgings[at].Depth)} deep. Pick up evenly:")));
            blocks.Add(PickUpRules(context, at));
            if (shown.Add(plan.Edging))
            {
                blocks.Add(new Steps(edging.Steps));
                blocks.Add(new Figure(edging.Chart, Phrase.Of($"{edging.Name}, by the standard symbols."), Phrase.Of($"The stitches of the {edging.Name} as drawn in charts; the steps above say the same in words.")));
            }
            else
            {
                blocks.Add(new Paragraph(Phrase.Plain("Worked as above.")));
            }
        }
        return new Section("edgings", Phrase.Plain("Edgings"), blocks.ToImmutable());
    }

    private static Bullets PickUpRules(PatternContext context, int at)
    {
        var rules = context.Plan.Sizes.GroupBy(s => s.Edgings[at].Rule).ToArray();
        return new Bullets([.. rules.Select(group => rules.Length == 1
            ? Phrase.Plain(group.Key)
            : Phrase.Of($"{new Strong(Phrase.Plain(string.Join(", ", group.Select(s => s.Name))))}: {group.Key}"))]);
    }
}
