using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Making.Order;

/// <summary>
/// Everything that is done to make one size, in the order of the pattern and in its words: what the pattern says once and asks to be
/// repeated stands here as often as it is done.
/// </summary>
public sealed class MakingOrder
{
    private MakingOrder(Plan plan, SizePlan size, ImmutableArray<MakingPart> parts) => (Plan, Size, Parts) = (plan, size, parts);

    /// <summary>Of all sizes.</summary>
    public Plan Plan { get; }

    /// <summary>The size that is made.</summary>
    public SizePlan Size { get; }

    /// <summary>In the order in which they are made.</summary>
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
            {
                parts.AddRange(piece.First switch
                {
                    { Taper: not null } => [Triangle(context, piece, copy)],
                    { Shape: not null } => Shaped(context, piece, copy),
                    _ => [Piece(context, piece, copy)],
                });
            }
        }
        parts.Add(new MakingPart(Phrase.Plain("Making up"), [.. Instructions(MakingUpSection.Write(context).Blocks)], 0));
        for (var edging = 0; edging < plan.Sizes[at].Edgings.Length; edging++)
        {
            for (var copy = 1; copy <= plan.Sizes[at].Edgings[edging].Copies; copy++)
                parts.Add(Edging(context, edging, copy));
        }
        if (MakingUpSection.AfterEdgings(context) is { } after)
            parts.Add(new MakingPart(after.Title, [.. Instructions(after.Blocks)], 0));
        return new MakingOrder(plan, plan.Sizes[at], parts.ToImmutable());
    }

    private static MakingPart Piece(PatternContext context, SizedPiece piece, int copy)
    {
        var plan = piece.First;
        var rows = new RowInstructions(context.Project.Fabric.Stitch, context.Project.Fabric.ChainCountsAsStitch, piece);
        var marks = plan.Marks.Zip(PiecesSection.MarkSteps(context, piece), (mark, said) => (Mark: mark, Said: said)).ToArray();
        var steps = ImmutableArray.CreateBuilder<MakingStep>();
        if (plan.Pooled)
            steps.Add(Step(Beginnings.Start(context, piece)));
        var foundation = Step(rows.Foundation());
        steps.Add(foundation with { Text = Phrase.Join(" ", JoinsIn(context, plan, copy, 0).Prepend(foundation.Text)) });
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
        return new MakingPart(Numbered(Phrase.Plain(Wording.Capital(plan.Name)), copy, plan.Copies), steps.ToImmutable(), plan.Rows)
        {
            Piece = plan,
            Fabric = plan.Pooled ? PieceFabric.Of(context.Plan, plan) : null,
            Planned = plan.Pooled ? PlannedPiece.Of(context.Plan, plan) : null,
        };
    }

    private static MakingPart Triangle(PatternContext context, SizedPiece piece, int copy)
    {
        var (plan, words) = (piece.First, new TaperRowInstructions(context, piece));
        var foundation = Step(words.Foundation());
        var steps = ImmutableArray.CreateBuilder<MakingStep>();
        steps.Add(foundation with { Text = Phrase.Of($"{words.Purpose()} {foundation.Text}") });
        for (var row = 0; row < plan.Rows; row++)
        {
            var instruction = words.Of(row);
            steps.Add(new RowStep(row, instruction.Label, instruction.Text, row + 1 == plan.Rows ? [Phrase.Plain("Then fasten off.")] : []));
        }
        return new MakingPart(Numbered(Phrase.Plain(Wording.Capital(plan.Name)), copy, plan.Copies), steps.ToImmutable(), plan.Rows)
        {
            Piece = plan,
        };
    }

    /// <summary>A shaped piece: what is worked without cutting the yarn is one part, what is joined on above it another.</summary>
    private static IEnumerable<MakingPart> Shaped(PatternContext context, SizedPiece piece, int copy)
    {
        var plan = piece.First;
        var words = new ShapedRowInstructions(context, piece);
        foreach (var stretch in PieceFabric.Stretches(context.Plan, plan))
        {
            var steps = ImmutableArray.CreateBuilder<MakingStep>();
            if (stretch.Index == 0)
            {
                steps.Add(Step(Beginnings.Start(context, piece)));
                steps.Add(Step(words.Foundation()));
            }
            var at = 0;
            foreach (var part in stretch.Parts)
            {
                steps.AddRange(words.Beginning(part).Select(Step));
                for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++, at++)
                {
                    steps.AddRange(words.Before(part, row).Select(Step));
                    var instruction = words.Of(part, row);
                    var notes = JoinsIn(context, plan, copy, row + 1, stretch);
                    if (at + 1 == stretch.Path.Rows)
                        notes = notes.Append(words.Ending);
                    steps.Add(new RowStep(at, instruction.Label, instruction.Text, [.. notes]));
                }
            }
            if (stretch.Index == 0)
                steps.AddRange(PiecesSection.MarkSteps(context, piece).Select(Step));
            var name = Phrase.Plain(Wording.Capital(plan.Name));
            var title = stretch.Index == 0 ? name : Phrase.Of($"{name}, {PartNames.Of(stretch.Parts[0])}");
            yield return new MakingPart(Numbered(title, copy, plan.Copies), steps.ToImmutable(), stretch.Path.Rows)
            {
                Piece = plan,
                Fabric = Fabric.Work(context.Plan.Sequence.Ring, stretch.Path),
                Planned = PlannedPiece.Of(context.Plan.Sequence.Ring, stretch.Path),
            };
        }
    }

    /// <summary>Where balls end as planned.</summary>
    private static IEnumerable<Phrase> JoinsIn(PatternContext context, PiecePlan piece, int copy, int row, PieceStretch? stretch = null)
    {
        int? nth = piece.Copies == 1 ? null : copy;
        var run = stretch?.In(piece.Id, nth) ?? new PieceRun(piece.Id, nth);
        return context.Plan.Sizes[0].Yarn.Joins.Where(join => join.Run == run && join.Row == row).Select(join =>
        {
            var (section, into) = join.ColourIn(context.Plan.Sequence);
            return Phrase.Of(
                $"About here ball {join.Ball} ends, in {Beginnings.Unit(context, section, ColourSequence.Nth(into))}: join the next one at the same place of the colours.");
        });
    }

    private static MakingPart Edging(PatternContext context, int at, int copy)
    {
        var plan = context.Plan.Sizes[0].Edgings[at];
        var edging = EdgingLibrary.Find(plan.Edging);
        var steps = ImmutableArray.CreateBuilder<MakingStep>();
        steps.AddRange(EdgingsSection.Starts(context, at).Select(Step));
        // One thing to do, a line for each stretch of the edge.
        steps.Add(new MakingStep(Phrase.Plain("Spread"), Phrase.Join("\n", PickUpWords.Lines(plan.Spread))));
        // Rows that stand across the edge are not as many as the rounds: they are told once.
        if (edging.Across)
            steps.AddRange(edging.Steps.Select(Sentence));
        else
        {
            var holes = new ButtonWords(context, at);
            var row = holes.HoleRow();
            steps.AddRange(Enumerable.Range(0, plan.Rounds).Select(round => Round(
                edging, round, row is not null && round + 1 == holes.Row.Values[0] ? row.Text : edging.StepOf(round, plan.Rounds).Text)));
        }
        steps.AddRange(EdgingsSection.Finishing(context, edging).Select(Sentence));
        return new MakingPart(
            Numbered(Phrase.Of($"{PlaceWords.Of(plan.Where)}: {edging.Name}"), copy, plan.Copies), steps.ToImmutable(), edging.Across ? 0 : plan.Rounds)
        {
            InRows = edging.InRows,
        };
    }

    private static RowStep Round(Edging edging, int round, Phrase text) => new(
        round, EdgingLabels.Numbered(round + 1, edging.InRows), EdgingsSection.Sentence(text), []);

    private static MakingStep Sentence(Instruction instruction) => new(instruction.Label, EdgingsSection.Sentence(instruction.Text));

    private static IEnumerable<MakingStep> Instructions(IEnumerable<Block> blocks) => blocks.SelectMany(block => block switch
    {
        Steps steps => steps.Items.Select(Step),
        Paragraph paragraph => [new MakingStep(Phrase.Plain("First"), paragraph.Text)],
        ForSizes some => Instructions(some.Blocks),
        _ => [],
    });

    private static MakingStep Step(Instruction instruction) => new(instruction.Label, instruction.Text);

    private static Phrase Numbered(Phrase title, int copy, int copies) => copies == 1 ? title : Phrase.Of($"{title}, {copy} of {copies}");
}
