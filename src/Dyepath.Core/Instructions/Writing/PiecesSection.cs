using System.Collections.Immutable;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>How each piece is begun and worked.</summary>
internal static class PiecesSection
{
    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("pieces"));
        if (context.Pieces.Any(p => p.First.Pooled))
            blocks.AddRange(BeginningsTable.Write(context));
        foreach (var piece in context.Pieces)
        {
            blocks.Add(new Subheading(Phrase.Plain(Heading(piece.First))));
            blocks.Add(new Paragraph(Yarn(context, piece)));
            blocks.Add(new RowInstructions(
                context.Project.Fabric.Stitch, PieceFabric.CountsAsStitch(context.Project.Fabric), piece).Write());
            blocks.AddRange(Bands(context, piece));
            blocks.AddRange(Marks(piece));
        }
        return new Section("pieces", Phrase.Plain("Pieces"), blocks.ToImmutable(), NewPage: true);
    }

    private static string Heading(PiecePlan piece)
    {
        var name = char.ToUpperInvariant(piece.Name[0]) + piece.Name[1..];
        return piece.Copies == 1 ? name : $"{name} (make {piece.Copies})";
    }

    private static Phrase Yarn(PatternContext context, SizedPiece piece)
    {
        var hook = MaterialsSection.Millimetres(context.Project.Fabric.Swatch.HookMillimetres);
        if (!piece.First.Pooled)
            return Phrase.Of($"Plain, in {context.Project.Companion?.Name ?? "the companion yarn"}, {hook} hook.");
        return Phrase.Of($"In {context.Project.Yarn.Name}, {hook} hook, begun as the table says.");
    }

    private static IEnumerable<Block> Bands(PatternContext context, SizedPiece piece)
    {
        if (piece.BySize.All(p => p.SideBandRows == 0))
            yield break;
        yield return new Paragraph(Phrase.Of(
            $"Side bands: along each long side, in {context.Project.Companion?.Name ?? "the companion yarn"}, work {piece.Each(p => p.SideBandRows)} plain rows."));
    }

    private static IEnumerable<Block> Marks(SizedPiece piece)
    {
        var marks = piece.First.Marks;
        if (marks.IsEmpty)
            yield break;
        yield return new Bullets([.. marks.Select((mark, i) => mark.AlongStitches
            ? Phrase.Of($"Mark stitch {piece.Each(p => p.Marks[i].Position)}: {mark.What}.")
            : Phrase.Of($"Mark row {piece.Each(p => p.Marks[i].Position)}: {mark.What}."))]);
    }
}
