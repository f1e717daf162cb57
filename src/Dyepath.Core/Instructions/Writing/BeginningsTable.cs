using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Where in the colour sequence every piece of every size begins, and the two ways to get there.</summary>
internal static class BeginningsTable
{
    public static IEnumerable<Block> Write(PatternContext context)
    {
        var pieces = context.Pieces.Where(p => p.First.Pooled).ToArray();
        var companion = pieces.All(p => p.First.Foundation.Companion);
        yield return new Paragraph(Phrase.Of(
            $"The first row of a piece begins at a chosen place of the colour sequence: {Key(context, 0)}1 is the first stitch of {context.Colour(0)}, {Key(context, 0)}2 the second, and so on."));
        if (companion)
        {
            yield return new Paragraph(Phrase.Plain(
                "Make the foundation chain in the companion yarn, and cut the variegated yarn at that place to begin row 1."));
        }
        else
        {
            yield return new Bullets(
            [
                Phrase.Plain("The easy way: begin to chain where the colour named begins, make the extra chains first and then those of the foundation. Leave the extra ones hanging; undo them later or close them into the seam."),
                Phrase.Plain("Without waste: make the slip knot that far after the colour named begins."),
            ]);
        }
        var charts = ChartVariant.All(context);
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        foreach (var piece in pieces)
        {
            Row(Phrase.Plain($"{piece.Name}: chart"), piece, p => Phrase.Plain(ChartVariant.Place(charts, p)));
            Row(Phrase.Plain($"{piece.Name}: first stitch"), piece, p => Phrase.Plain(FirstStitch(context, p)));
            if (companion)
                continue;
            Row(Phrase.Plain($"{piece.Name}, easy way: colour, extra chains"), piece, p =>
                Phrase.Of($"{Key(context, p.Foundation.ColourSection)}, {p.Foundation.MoreChains}"));
            Row(Phrase.Of($"{piece.Name}, no waste: knot after, {new UnitNames()}"), piece, p => Phrase.Of(
                $"{Key(context, p.Foundation.KnotSection)}, {new Bare(new Measure(new([context.Plan.YarnPerUnit * p.Foundation.KnotInto])))}"));
        }
        yield return new Table(
            Phrase.Plain("Where each piece begins."),
            [Phrase.Plain("Size"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
            rows.ToImmutable(),
            PerSizeColumns: true);

        void Row(Phrase name, SizedPiece piece, Func<PiecePlan, Phrase> cell) => rows.Add([name, .. piece.BySize.Select(cell)]);
    }

    private static string Key(PatternContext context, int section) => context.Key[section].Symbol;

    /// <summary>Symbol of the section of the first stitch, and which of its units it is.</summary>
    private static string FirstStitch(PatternContext context, PiecePlan piece)
    {
        var before = context.Plan.Ring.Sections.Take(piece.StartSection).Sum(ColourRing.ToUnits);
        var nth = (int)Math.Floor(piece.Start - before + 1e-6) + 1;
        return Key(context, piece.StartSection) + nth.ToString(CultureInfo.InvariantCulture);
    }
}
