using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>How each piece is begun and worked.</summary>
internal static class PiecesSection
{
    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("pieces"));
        if (context.Pieces.Any(p => p.First.Pooled))
            blocks.AddRange(Beginnings.Explained(context));
        for (var i = 0; i < context.Pieces.Length; i++)
        {
            var piece = context.Pieces[i];
            if (NeedsOwnRows(context, piece))
            {
                blocks.AddRange(SizeBySize(context, piece));
                continue;
            }
            blocks.Add(new Subheading(Heading(piece.First)));
            blocks.Add(new Paragraph(Yarn(context, piece)));
            if (piece.First.Pooled)
                blocks.Add(Beginnings.Of(context, piece));
            if (context.Pieces.Take(i).FirstOrDefault(before => WorkedAlike(before, piece)) is { } same)
            {
                blocks.Add(new Steps(
                [
                    new Instruction(
                        Phrase.Plain("Foundation and rows"),
                        piece.First.Openings.IsEmpty ? Phrase.Of($"As the {same.Name}.") : Phrase.Of($"As the {same.Name}, marks included.")),
                ]));
                continue;
            }
            blocks.AddRange(Rows(context, piece));
            blocks.AddRange(Cuff(context, piece));
            blocks.AddRange(Bands(context, piece));
            blocks.AddRange(Marks(context, piece));
        }
        return new Section("pieces", Phrase.Plain("Pieces"), blocks.ToImmutable());
    }

    private static IEnumerable<Block> Rows(PatternContext context, SizedPiece piece) => piece.First.Taper is not null
        ? new TaperRowInstructions(context, piece).Blocks()
        : piece.First.Shape is not null
        ? new ShapedRowInstructions(context, piece).Blocks()
        : [new RowInstructions(context.Project.Fabric.Stitch, context.Project.Fabric.ChainCountsAsStitch, piece).Write()];

    /// <summary>
    /// Rows of one count and rows of two in turn are worked by different words, and so is linen stitch of odd and of even counts; a shaped
    /// piece or a triangle has its own steps in every size, and one that is marked at one edge only changes its edges where it is turned
    /// over.
    /// </summary>
    private static bool NeedsOwnRows(PatternContext context, SizedPiece piece) =>
        piece.First.Shape is not null || piece.First.Taper is not null || (piece.First.Openings.Any(o => o.Side is not null)
            && piece.BySize.Select(p => p.WrongSideOut).Distinct().Count() > 1)
        || piece.BySize.Select(p => p.RowStitches.Length).Distinct().Count() > 1
        || (context.Project.Fabric.Stitch.StitchesPerUnit == 2 && !context.InRounds
            && piece.BySize.Select(p => p.Stitches % 2).Distinct().Count() > 1);

    private static IEnumerable<Block> SizeBySize(PatternContext context, SizedPiece piece)
    {
        for (var size = 0; size < context.Plan.Sizes.Length; size++)
        {
            var own = piece.Only(size);
            var name = context.Plan.Sizes[size].Name;
            yield return new ForSizes([name],
            [
                new Subheading(Phrase.Of($"{Heading(piece.First)}{new InAllSizes(Phrase.Of($", size {new Name(name)}"))}")),
                new Paragraph(Yarn(context, own)),
                .. own.First.Pooled ? ImmutableArray.Create<Block>(Beginnings.Of(context, own)) : [],
                .. Rows(context, own),
                .. Cuff(context, own),
                .. Bands(context, own),
                .. Marks(context, own),
            ]);
        }
    }

    private static Phrase Heading(PiecePlan piece)
    {
        var name = Phrase.Plain(Wording.Capital(piece.Name));
        return piece.Copies == 1 ? name : Phrase.Of($"{name} (make {piece.Copies})");
    }

    /// <summary>Whether the same words serve both, whatever colour each begins with.</summary>
    private static bool WorkedAlike(SizedPiece one, SizedPiece other) => one.BySize.Zip(other.BySize).All(pair =>
        pair.First.Working == pair.Second.Working
        && pair.First.RowStitches.SequenceEqual(pair.Second.RowStitches)
        && pair.First.Rows == pair.Second.Rows
        && pair.First.FoundationChains == pair.Second.FoundationChains
        && pair.First.Foundation.Companion == pair.Second.Foundation.Companion
        && pair.First.SideBandRows == pair.Second.SideBandRows
        && (pair.First.WrongSideOut == pair.Second.WrongSideOut || pair.First.Openings.All(o => o.Side is null))
        && pair.First.Shape is null && pair.Second.Shape is null
        && pair.First.Openings.SequenceEqual(pair.Second.Openings));

    private static Phrase Yarn(PatternContext context, SizedPiece piece)
    {
        var hook = context.Project.Fabric.Swatch.HookMillimetres;
        return piece.First.Pooled
            ? Phrase.Of($"In {new Name(context.Project.Yarn.Name)}, {hook} mm hook.")
            : Phrase.Of($"Plain, in {context.Companion}, {hook} mm hook.");
    }

    private static IEnumerable<Block> Cuff(PatternContext context, SizedPiece piece)
    {
        if (piece.First.Id == PieceId.Sleeve)
            yield return new Steps([new Instruction(Phrase.Plain("Cuff"), Phrase.Plain(context.Plan.Direction == Direction.Up ? "the foundation chain." : "the edge where odd-numbered rows begin."))]);
    }

    public static IEnumerable<Block> Bands(PatternContext context, SizedPiece piece)
    {
        if (piece.BySize.All(p => p.SideBandRows == 0))
            yield break;
        var (sc, count) = (new Term("sc"), piece.Each(p => p.SideBand?.Stitches ?? 0));
        var pickUp = context.Plan.Direction == Direction.Up
            ? Phrase.Of($"pick up and {sc} {count} stitches evenly along the row ends")
            : Phrase.Of($"pick up and {sc} {count} stitches evenly along the stitches");
        var opening = piece.BySize.Any(p => p.SideBand?.Below is not null)
            ? Phrase.Of($" Mark its last row after stitch {piece.Each(p => p.SideBand?.Below ?? 0)}, counted from the hem: the band's own mark for the opening.")
            : Phrase.Empty;
        yield return new Steps(
        [
            new Instruction(Phrase.Plain("Side bands"), Phrase.Of(
                $"In {context.Companion}, along each side edge: {pickUp}, then work {sc} back and forth until the band has {piece.Each(p => p.SideBandRows)} rows (0: no band).") + opening),
        ]);
    }

    private static IEnumerable<Block> Marks(PatternContext context, SizedPiece piece)
    {
        if (!piece.First.Marks.IsEmpty)
            yield return new Steps(MarkSteps(context, piece));
    }

    /// <summary>One instruction for each of the piece's marks, in their order.</summary>
    public static ImmutableArray<Instruction> MarkSteps(PatternContext context, SizedPiece piece)
    {
        var up = context.Plan.Direction == Direction.Up;
        var top = up ? "the last row" : "the top edge, where odd-numbered rows end";
        var sides = up ? "both side edges"
            : piece.First.Id == PieceId.Sleeve ? "the first row and the last row, counted from the cuff edge, where odd-numbered rows begin"
            : "the first row and the last row, counted from the hem edge, where odd-numbered rows begin";
        return [.. piece.First.Marks.Select((mark, i) =>
        {
            var position = piece.Each(p => p.Marks[i].Position);
            var nth = mark.AlongStitches ? Phrase.Of($"stitch {position}") : Phrase.Of($"row {position}");
            return new Instruction(Phrase.Plain("Mark"), mark.Opening.Id switch
            {
                OpeningId.Neck when mark.Opening.Side is { } side =>
                    Phrase.Of($"{nth} at {top}, counted from {Edge(Worked(side).Mirrored())}: the neck opening begins here and goes on to the front edge."),
                OpeningId.Armhole when mark.Opening.Side is { } side => up
                    ? Phrase.Of($"{nth} of {Edge(Worked(side))}: the armhole begins here. The seam ends before it.")
                    : Phrase.Of($"{nth} of {Edge(Worked(side))}, counted from the hem edge, where odd-numbered rows begin: the armhole begins here. The seam ends before it."),
                OpeningId.Neck => mark.Begins
                    ? Phrase.Of($"{nth} at {top}: neck opening begins here.")
                    : Phrase.Of($"{nth} at {top}: neck opening ends here."),
                OpeningId.Armhole => Phrase.Of($"{nth} of {sides}: armholes begin here. The seams end before it."),
                OpeningId.LegOpening => Phrase.Of($"{nth} of {sides}: leg openings begin here. The seams end before it."),
                OpeningId.Tab => mark.Begins
                    ? Phrase.Of($"{nth} of {sides}: side tabs begin here.")
                    : Phrase.Of($"{nth} of {sides}: side tabs end here."),
                OpeningId.Vent => Phrase.Of($"{nth} of {sides}: from here up the sides are sewn, below they stay open as vents."),
                OpeningId.SleeveJoin when piece.First.Id == PieceId.Sleeve =>
                    Phrase.Of($"{nth} of {sides}: from here up the sleeve is sewn to the body."),
                OpeningId.SleeveJoin => Phrase.Of($"{nth} of {sides}: from here up the sleeves are sewn on."),
                _ => throw new InvalidOperationException($"No words for the opening {mark.Opening.Id}."),
            });
        })];

        PieceSide Worked(PieceSide side) => piece.First.WrongSideOut ? side.Mirrored() : side;

        string Edge(PieceSide side) => (side, context.Plan.Direction) switch
        {
            (PieceSide.Left, Direction.Up) => "the edge where odd-numbered rows end",
            (_, Direction.Up) => "the edge where odd-numbered rows begin",
            (PieceSide.Left, _) => "the first row",
            _ => "the last row",
        };
    }
}
