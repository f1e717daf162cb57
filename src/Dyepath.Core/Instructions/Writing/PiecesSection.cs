using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>How each piece is begun and worked.</summary>
internal static class PiecesSection
{
    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("pieces"));
        foreach (var piece in context.Pieces)
        {
            blocks.Add(new Subheading(Phrase.Plain(Heading(piece.First))));
            blocks.Add(new Paragraph(Yarn(context, piece)));
            if (piece.First.Pooled)
                blocks.AddRange(Beginning(context, piece));
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
        var chart = ColoursSection.ChartLetters(context, piece);
        return Phrase.Of(
            $"In {context.Project.Yarn.Name}, {hook} hook. Chart {new WordChoice(chart)}: the first stitch is {new WordChoice(piece.Each(p => FirstStitch(context, p)))}.");
    }

    /// <summary>The section of the first stitch and which of its units it is.</summary>
    private static string FirstStitch(PatternContext context, PiecePlan piece)
    {
        var before = context.Plan.Ring.Sections.Take(piece.StartSection).Sum(ColourRing.ToUnits);
        var into = (int)Math.Floor(piece.Start - before + 1e-6) + 1;
        var (name, symbol) = (context.Key[piece.StartSection].Name, context.Key[piece.StartSection].Symbol);
        return into == 1 ? $"the first of {name} ({symbol})" : $"number {into} of {name} ({symbol})";
    }

    private static IEnumerable<Block> Beginning(PatternContext context, SizedPiece piece)
    {
        if (piece.First.Foundation.Companion)
        {
            yield return new Paragraph(Phrase.Plain(
                "Make the foundation chain in the companion yarn; change to the variegated yarn, cut at that place of the sequence, for the first row."));
            yield break;
        }
        yield return new Paragraph(Phrase.Of(
            $"So that the first row begins there, begin the chain where {new WordChoice(piece.Each(p => Name(context, p.Foundation.ColourSection)))} begins and make {piece.Each(p => p.Foundation.MoreChains)} extra chains before the ones below are counted; leave the extra ones hanging, and undo or sew them in later. Or waste none: make the slip knot {new WordChoice(piece.Each(p => MaterialsSection.Number(Math.Round((context.Plan.YarnPerUnit * p.Foundation.KnotInto).Centimetres))))} cm after {new WordChoice(piece.Each(p => Name(context, p.Foundation.KnotSection)))} begins."));
    }

    private static string Name(PatternContext context, int section) => $"{context.Key[section].Name} ({context.Key[section].Symbol})";

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
