using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Making.Order;

/// <summary>
/// Everything that is done to make one size, in the order of the pattern and in its words: what the pattern says once and asks to be
/// repeated stands here as often as it is done.
/// </summary>
public sealed class MakingOrder
{
    private static readonly Phrase FirstRound = Phrase.Plain("Round 1");
    private static readonly Phrase FurtherRound = Phrase.Plain("Every further round");
    private static readonly Phrase LastRound = Phrase.Plain("Last round");

    private MakingOrder(Plan plan, SizePlan size, ImmutableArray<MakingPart> parts) => (Plan, Size, Parts) = (plan, size, parts);

    public Plan Plan { get; }

    public SizePlan Size { get; }

    public ImmutableArray<MakingPart> Parts { get; }

    /// <param name="size">Name of one of the plan's sizes.</param>
    /// <exception cref="ArgumentException">The plan has no such size.</exception>
    public static MakingOrder Of(Plan plan, string size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var at = plan.Sizes.Select(s => s.Name).ToImmutableArray().IndexOf(size);
        if (at < 0)
            throw new ArgumentException($"The plan has no size {size}, only {string.Join(", ", plan.Sizes.Select(s => s.Name))}.", nameof(size));
        // The instructions of this size alone: no number is then a list of sizes.
        var context = new PatternContext(plan with { Sizes = [plan.Sizes[at]] });
        var parts = ImmutableArray.CreateBuilder<MakingPart>();
        foreach (var piece in context.Pieces)
        {
            for (var copy = 1; copy <= piece.First.Copies; copy++)
                parts.Add(Piece(context, piece, copy));
        }
        parts.Add(new MakingPart(Phrase.Plain("Making up"), [.. Instructions(MakingUpSection.Write(context).Blocks)], 0));
        for (var edging = 0; edging < plan.Sizes[at].Edgings.Length; edging++)
        {
            for (var copy = 1; copy <= plan.Sizes[at].Edgings[edging].Copies; copy++)
                parts.Add(Edging(context, edging, copy));
        }
        return new MakingOrder(plan, plan.Sizes[at], parts.ToImmutable());
    }

    private static MakingPart Piece(PatternContext context, SizedPiece piece, int copy)
    {
        var plan = piece.First;
        var rows = new RowInstructions(context.Project.Fabric.Stitch, context.Project.Fabric.ChainCountsAsStitch, piece);
        var marks = plan.Marks.Zip(PiecesSection.MarkSteps(context, piece), (mark, said) => (Mark: mark, Said: said)).ToArray();
        var steps = ImmutableArray.CreateBuilder<MakingStep>();
        if (plan.Pooled)
            steps.AddRange(Beginnings.Starts(context, piece).Select(Step));
        steps.Add(Step(rows.Foundation()));
        for (var row = 0; row < plan.Rows; row++)
        {
            // A mark on a row is made when the row is, not when the piece is finished.
            var notes = marks.Where(m => !m.Mark.AlongStitches && m.Mark.Position == row + 1)
                .Select(m => Phrase.Of($"{m.Said.Label}: {m.Said.Text}"));
            notes = notes.Concat(JoinsIn(context, plan, copy, row + 1));
            if (row + 1 == plan.Rows)
                notes = notes.Append(Phrase.Plain("Then fasten off."));
            var instruction = rows.Of(row);
            steps.Add(new RowStep(row, instruction.Label, instruction.Text, [.. notes]));
        }
        steps.AddRange(Instructions(PiecesSection.Bands(context, piece)));
        steps.AddRange(marks.Where(m => m.Mark.AlongStitches).Select(m => Step(m.Said)));
        return new MakingPart(Numbered(Phrase.Plain(Capital(plan.Name)), copy, plan.Copies), steps.ToImmutable(), plan.Rows)
        {
            Piece = plan,
            Fabric = plan.Pooled ? PieceFabric.Of(context.Plan, plan) : null,
            Planned = plan.Pooled ? PlannedPiece.Of(context.Plan, plan) : null,
        };
    }

    /// <summary>Where balls end as planned.</summary>
    private static IEnumerable<Phrase> JoinsIn(PatternContext context, PiecePlan piece, int copy, int row)
    {
        var name = piece.Copies == 1 ? piece.Name : $"{piece.Name} {copy}";
        return context.Plan.Sizes[0].Yarn.Joins.Where(join => join.Piece == name && join.Row == row).Select(join => Phrase.Of(
            $"About here ball {join.Ball} ends: join the next one at the same place of the colours."));
    }

    private static MakingPart Edging(PatternContext context, int at, int copy)
    {
        var plan = context.Plan.Sizes[0].Edgings[at];
        if (!EdgingLibrary.TryFind(plan.Edging, out var edging))
            throw new InvalidOperationException($"The plan names an edging that does not ship: {plan.Edging}.");
        var steps = ImmutableArray.CreateBuilder<MakingStep>();
        steps.AddRange(EdgingsSection.Starts(context, at).Select(Step));
        steps.Add(new MakingStep(Phrase.Plain("Spread"), Phrase.Plain(PickUpWords.Text(plan.Spread))));
        var inRounds = edging.Steps.All(step => step.Label == FirstRound || step.Label == FurtherRound || step.Label == LastRound);
        steps.AddRange(inRounds ? Enumerable.Range(0, plan.Rounds).Select(round => Round(edging, round, plan.Rounds)) : edging.Steps.Select(step => new MakingStep(step.Label, EdgingsSection.Sentence(step.Text))));
        return new MakingPart(
            Numbered(Phrase.Of($"{PlaceWords.Of(plan.Where)}: {edging.Name}"), copy, plan.Copies), steps.ToImmutable(), inRounds ? plan.Rounds : 0);
    }

    private static RowStep Round(Edging edging, int round, int rounds)
    {
        var label = round == 0 ? FirstRound : round == rounds - 1 && edging.Steps.Any(s => s.Label == LastRound) ? LastRound : FurtherRound;
        // Where nothing is said of the rounds between, they are worked as the first one was.
        var told = edging.Steps.FirstOrDefault(s => s.Label == label) ?? edging.Steps[0];
        return new RowStep(round, Phrase.Plain($"Round {round + 1}"), EdgingsSection.Sentence(told.Text), []);
    }

    private static IEnumerable<MakingStep> Instructions(IEnumerable<Block> blocks) => blocks.SelectMany(block => block switch
    {
        Steps steps => steps.Items.Select(Step),
        Paragraph paragraph => [new MakingStep(Phrase.Plain("First"), paragraph.Text)],
        ForSizes some => Instructions(some.Blocks),
        _ => [],
    });

    private static MakingStep Step(Instruction instruction) => new(instruction.Label, instruction.Text);

    private static Phrase Numbered(Phrase title, int copy, int copies) => copies == 1 ? title : Phrase.Of($"{title}, {copy} of {copies}");

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
