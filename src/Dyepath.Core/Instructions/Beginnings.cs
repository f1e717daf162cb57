using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Instructions;

/// <summary>Where in the colour sequence a piece begins in every size, and the two ways to get there.</summary>
internal static class Beginnings
{
    public static IEnumerable<Block> Explained(PatternContext context)
    {
        yield return new Paragraph(Phrase.Of(
            $"{(context.InRounds ? "Round" : "Row")} 1 of a piece begins at its own place of the colour sequence, said as a colour's symbol and the number of the {context.UnitWord(one: true)}: {context.Key[0].Symbol}1 is the first {context.UnitWord(one: true)} of {context.Colour(0)}, {context.Key[0].Symbol}2 the second."));
        if (context.Pieces.Where(p => p.First.Pooled).All(p => p.First.Foundation.Companion))
        {
            yield return new Paragraph(Phrase.Of(
                $"Make the foundation chain in {context.CompanionName}. Cut the variegated yarn {BeforeSection.Tail} before the place named, draw it up at that place through the loop on the hook, and begin {context.RowWord} 1 with it; cut the other yarn as far on."));
            yield break;
        }
        yield return new Paragraph(Phrase.Plain("The foundation chain takes yarn too, so it begins earlier in the sequence. Choose one way:"));
        yield return new Bullets(
        [
            Phrase.Of($"{new Strong(Phrase.Plain("Easy"))}: put the slip knot where the colour named begins and make the extra chains first, then the foundation. Nothing is worked into the extra chains; undo them before you {(context.Construction.Joins.Any(j => j.Sewn) ? "sew" : "weave ends in")}."),
            Phrase.Of($"{new Strong(Phrase.Plain("No waste"))}: put the slip knot the length named after that colour begins; no extra chains."),
        ]);
        yield return new Paragraph(Phrase.Plain($"Either way {context.RowWord} 1 should come out at its own place. If it is off by a stitch or two, draw the chain up or loosen it."));
    }

    public static Steps Of(PatternContext context, SizedPiece piece)
    {
        var charts = context.Charts;
        var places = piece.SizeNames.Select(size => ChartVariant.Place(charts, size, piece.First.Id)).ToArray();
        var chart = new Count(new([.. places.Select(p => p.Chart)]));
        var row = new Count(new([.. places.Select(p => p.Row)]));
        var word = piece.First.Working == Working.Turned ? "row" : "round";
        return new Steps([new Instruction(Phrase.Plain("Chart"), Phrase.Of($"{chart}; {word} 1 is chart {word} {row}.")), .. Outside(piece), .. Starts(context, piece)]);
    }

    /// <summary>Which side will be seen, of a piece that is turned over in some size.</summary>
    private static IEnumerable<Instruction> Outside(SizedPiece piece)
    {
        if (piece.BySize.Any(p => p.WrongSideOut))
            yield return new Instruction(Phrase.Plain("Outside"), Phrase.Of($"the side that faces you in {Each(piece, p => p.WrongSideOut ? "even" : "odd")}-numbered rows, once it is sewn."));
    }

    /// <summary>What is said besides the chart, for who sees the rows.</summary>
    public static ImmutableArray<Instruction> Starts(PatternContext context, SizedPiece piece)
    {
        var word = piece.First.Working == Working.Turned ? "row" : "round";
        var items = ImmutableArray.CreateBuilder<Instruction>();
        items.Add(new Instruction(
            Phrase.Plain($"{Wording.Capital(word)} 1 begins"), Phrase.Of($"at {Each(piece, p => FirstStitch(context, p))}.")));
        if (!piece.First.Foundation.Companion)
        {
            var colour = Each(piece, p => context.Key[p.Foundation.ColourSection].Symbol);
            items.Add(new Instruction(Phrase.Plain("Easy"), Phrase.Of(
                $"slip knot at the beginning of {colour}; extra chains: {piece.Each(p => p.Foundation.MoreChains)}.")));
            items.Add(new Instruction(Phrase.Plain("No waste"), Phrase.Of(
                $"slip knot {piece.Each(p => context.Plan.Sequence.YarnPerUnit * p.Foundation.KnotInto)} after the beginning of {Each(piece, p => context.Key[p.Foundation.KnotSection].Symbol)}.")));
        }
        return items.ToImmutable();
    }

    /// <summary>
    /// The same as one thing to do, for one size: of the two ways one is chosen, and where the first row begins is said beside them.
    /// </summary>
    public static Instruction Start(PatternContext context, SizedPiece piece)
    {
        var starts = Starts(context, piece);
        var word = piece.First.Working == Working.Turned ? "row" : "round";
        var place = Phrase.Of(
            $"{word} 1 begins at {FirstStitch(context, piece.First)}, {context.UnitWord(one: true)} {NthUnit(context, piece.First)} of {context.Colour(piece.First.StartSection)}.");
        var ways = starts.RemoveAt(0);
        var unworked = Phrase.Plain(piece.First.Foundation is { Companion: false, MoreChains: > 0 }
            ? "Extra chains come before the foundation: they use up yarn until the colours lie right, nothing is worked into them, and they are undone before sewing. "
            : "");
        return new Instruction(Phrase.Plain("Begin"), ways.IsEmpty
            ? EdgingsSection.Sentence(place)
            : Phrase.Of($"Choose one way. {ways.Select(way => Phrase.Of($"{way.Label}: {way.Text} ")).Aggregate((one, other) => one + other)}{unworked}Either way {place}"));
    }

    private static WordChoice Each(SizedPiece piece, Func<PiecePlan, string> word) => new(piece.Each(word));

    /// <summary>Symbol of the section of the first stitch, and which of its units it is.</summary>
    private static string FirstStitch(PatternContext context, PiecePlan piece) =>
        context.Key[piece.StartSection].Symbol + NthUnit(context, piece).ToString(CultureInfo.InvariantCulture);

    private static int NthUnit(PatternContext context, PiecePlan piece) => context.Plan.Sequence.NthUnit(piece.StartSection, piece.Start);
}
