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
            blocks.Add(new Subheading(Phrase.Plain(Heading(piece.First))));
            blocks.Add(new Paragraph(Yarn(context, piece)));
            if (piece.First.Pooled)
                blocks.Add(Beginnings.Of(context, piece));
            if (context.Pieces.Take(i).FirstOrDefault(before => WorkedAlike(before, piece)) is { } same)
            {
                var marks = piece.First.Openings.IsEmpty ? "" : ", marks included";
                blocks.Add(new Steps(
                [
                    new Instruction(Phrase.Plain("Foundation and rows"), Phrase.Plain($"As the {same.Name}{marks}.")),
                ]));
                continue;
            }
            blocks.Add(Rows(context, piece));
            blocks.AddRange(Bands(context, piece));
            blocks.AddRange(Marks(context, piece));
        }
        return new Section("pieces", Phrase.Plain("Pieces"), blocks.ToImmutable());
    }

    private static Steps Rows(PatternContext context, SizedPiece piece) =>
        new RowInstructions(context.Project.Fabric.Stitch, context.Project.Fabric.ChainCountsAsStitch, piece).Write();

    /// <summary>
    /// Rows of one count and rows of two in turn are worked by different words, and so is linen stitch of odd and of even counts.
    /// </summary>
    private static bool NeedsOwnRows(PatternContext context, SizedPiece piece) =>
        piece.BySize.Select(p => p.RowStitches.Length).Distinct().Count() > 1
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
                new Subheading(Phrase.Of($"{Heading(piece.First)}{new InAllSizes(Phrase.Plain($", size {name}"))}")),
                new Paragraph(Yarn(context, own)),
                .. own.First.Pooled ? ImmutableArray.Create<Block>(Beginnings.Of(context, own)) : [],
                Rows(context, own),
                .. Bands(context, own),
                .. Marks(context, own),
            ]);
        }
    }

    private static string Heading(PiecePlan piece)
    {
        var name = char.ToUpperInvariant(piece.Name[0]) + piece.Name[1..];
        return piece.Copies == 1 ? name : $"{name} (make {piece.Copies})";
    }

    /// <summary>Whether the same words serve both, whatever colour each begins with.</summary>
    private static bool WorkedAlike(SizedPiece one, SizedPiece other) => one.BySize.Zip(other.BySize).All(pair =>
        pair.First.Working == pair.Second.Working
        && pair.First.RowStitches.SequenceEqual(pair.Second.RowStitches)
        && pair.First.Rows == pair.Second.Rows
        && pair.First.FoundationChains == pair.Second.FoundationChains
        && pair.First.Foundation.Companion == pair.Second.Foundation.Companion
        && pair.First.SideBandRows == pair.Second.SideBandRows
        && pair.First.Openings.SequenceEqual(pair.Second.Openings));

    private static Phrase Yarn(PatternContext context, SizedPiece piece)
    {
        var hook = MaterialsSection.Millimetres(context.Project.Fabric.Swatch.HookMillimetres);
        return piece.First.Pooled
            ? Phrase.Of($"In {context.Project.Yarn.Name}, {hook} hook.")
            : Phrase.Of($"Plain, in {context.CompanionName}, {hook} hook.");
    }

    public static IEnumerable<Block> Bands(PatternContext context, SizedPiece piece)
    {
        if (piece.BySize.All(p => p.SideBandRows == 0))
            yield break;
        yield return new Steps(
        [
            new Instruction(Phrase.Plain("Side bands"), Phrase.Of(
                $"In {context.CompanionName}, along each side edge: pick up and {new Term("sc")} evenly along the row ends, then work {new Term("sc")} back and forth until the band has {piece.Each(p => p.SideBandRows)} rows (0: no band).")),
        ]);
    }

    private static IEnumerable<Block> Marks(PatternContext context, SizedPiece piece)
    {
        if (!piece.First.Openings.IsEmpty)
            yield return new Steps(MarkSteps(context, piece));
    }

    /// <summary>One instruction for each of the piece's marks, in their order.</summary>
    public static ImmutableArray<Instruction> MarkSteps(PatternContext context, SizedPiece piece)
    {
        var top = context.Plan.Direction == Direction.Up ? "last row" : "top edge, where odd-numbered rows end";
        var sides = context.Plan.Direction == Direction.Up ? "both side edges" : "the first row and the last row, counted from the hem edge, where odd-numbered rows begin";
        return [.. piece.First.Marks.Select((mark, i) =>
        {
            var position = piece.Each(p => p.Marks[i].Position);
            var what = mark.AlongStitches ? "stitch" : "row";
            return new Instruction(Phrase.Plain("Mark"), mark.Opening.Id switch
            {
                OpeningId.Neck => Phrase.Of($"{what} {position} at the {top}: neck opening {(mark.Begins ? "begins" : "ends")} here."),
                OpeningId.Armhole => Phrase.Of($"{what} {position} of {sides}: armholes begin here."),
                _ => throw new InvalidOperationException($"No words for the opening {mark.Opening.Id}."),
            });
        })];
    }
}
