using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Instructions;

/// <summary>Where in the colour sequence a piece begins in every size, and the two ways to get there.</summary>
internal static class Beginnings
{
    public static IEnumerable<Block> Explained(PatternContext context)
    {
        var (symbol, colour) = (new Name(context.Key[0].Symbol), context.Colour(0));
        var place = InPairs(context)
            ? Phrase.Of($"a colour's symbol and the number of the pair: {symbol}1 is the first pair of {colour}, {symbol}2 the second")
            : Phrase.Of($"a colour's symbol and the number of the stitch: {symbol}1 is the first stitch of {colour}, {symbol}2 the second");
        yield return new Paragraph(context.InRounds
            ? Phrase.Of($"Round 1 of a piece begins at its own place of the colour sequence, said as {place}.")
            : Phrase.Of($"Row 1 of a piece begins at its own place of the colour sequence, said as {place}."));
        if (context.Pieces.Where(p => p.First.Pooled).All(p => p.First.Foundation.Companion))
        {
            yield return new Paragraph(Phrase.Join(" ",
            [
                Phrase.Of($"Make the foundation chain in {context.Companion}."),
                context.InRounds
                    ? Phrase.Of($"Cut the variegated yarn {BeforeSection.Tail} before the place named, draw it up at that place through the loop on the hook, and begin round 1 with it; cut the other yarn as far on.")
                    : Phrase.Of($"Cut the variegated yarn {BeforeSection.Tail} before the place named, draw it up at that place through the loop on the hook, and begin row 1 with it; cut the other yarn as far on."),
            ]));
            yield break;
        }
        yield return new Paragraph(Phrase.Plain("The foundation chain takes yarn too, so it begins earlier in the sequence. Choose one way:"));
        var undo = Phrase.Plain(context.Construction.Joins.Any(j => j.Sewn)
            ? "Nothing is worked into the extra chains; undo them before you sew."
            : "Nothing is worked into the extra chains; undo them before you weave ends in.");
        yield return new Bullets(
        [
            Phrase.Of($"{new Strong(Phrase.Plain("Easy"))}: put the slip knot where the colour named begins and make the extra chains first, then the foundation. {undo}"),
            Phrase.Of($"{new Strong(Phrase.Plain("No waste"))}: put the slip knot the length named after that colour begins; no extra chains."),
        ]);
        yield return new Paragraph(Phrase.Join(" ",
        [
            Phrase.Plain(context.InRounds
                ? "Either way round 1 should come out at its own place." : "Either way row 1 should come out at its own place."),
            Phrase.Plain("If it is off by a stitch or two, draw the chain up or loosen it."),
        ]));
    }

    public static Steps Of(PatternContext context, SizedPiece piece)
    {
        var charts = context.Charts;
        var places = piece.SizeNames.Select(size => ChartVariant.Place(charts, size, piece.First.Id)).ToArray();
        var chart = new Count(new([.. places.Select(p => p.Chart)]));
        var row = new Count(new([.. places.Select(p => p.Row)]));
        var place = InRows(piece) ? Phrase.Of($"{chart}; row 1 is chart row {row}.") : Phrase.Of($"{chart}; round 1 is chart round {row}.");
        return new Steps([new Instruction(Phrase.Plain("Chart"), place), .. Outside(piece), .. Starts(context, piece)]);
    }

    private static bool InRows(SizedPiece piece) => piece.First.Working == Working.Turned;

    private static bool InPairs(PatternContext context) => context.Project.Fabric.Stitch.StitchesPerUnit > 1;

    /// <summary>Which side will be seen, of a piece that is turned over in some size.</summary>
    private static IEnumerable<Instruction> Outside(SizedPiece piece)
    {
        if (piece.BySize.Any(p => p.WrongSideOut))
            yield return new Instruction(Phrase.Plain("Outside"), Phrase.Of($"the side that faces you in {new PhraseChoice(piece.Each(p => Phrase.Plain(p.WrongSideOut ? "even" : "odd")))}-numbered rows, once it is sewn."));
    }

    /// <summary>What is said besides the chart, for who sees the rows.</summary>
    public static ImmutableArray<Instruction> Starts(PatternContext context, SizedPiece piece)
    {
        var items = ImmutableArray.CreateBuilder<Instruction>();
        items.Add(new Instruction(
            Phrase.Plain(InRows(piece) ? "Row 1 begins" : "Round 1 begins"), Phrase.Of($"at {Each(piece, p => FirstStitch(context, p))}.")));
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
        var place = Place(context, piece.First.StartSection, NthUnit(context, piece.First));
        var ways = Starts(context, piece).RemoveAt(0);
        if (ways.IsEmpty)
        {
            return new Instruction(
                Phrase.Plain("Begin"), InRows(piece) ? Phrase.Of($"Row 1 begins at {place}.") : Phrase.Of($"Round 1 begins at {place}."));
        }
        var said = ImmutableArray.CreateBuilder<Phrase>();
        said.Add(Phrase.Plain("Choose one way."));
        said.AddRange(ways.Select(way => Phrase.Of($"{way.Label}: {way.Text}")));
        if (piece.First.Foundation.MoreChains > 0)
            said.Add(Phrase.Plain("Extra chains come before the foundation: they use up yarn until the colours lie right, nothing is worked into them, and they are undone before sewing."));
        said.Add(InRows(piece) ? Phrase.Of($"Either way row 1 begins at {place}.") : Phrase.Of($"Either way round 1 begins at {place}."));
        return new Instruction(Phrase.Plain("Begin"), Phrase.Join(" ", said));
    }

    /// <summary>Such as <c>A2, stitch 2 of sand (A)</c>.</summary>
    public static Phrase Place(PatternContext context, int section, int nth) =>
        Phrase.Of($"{new Name(context.Key[section].Symbol)}{nth}, {Unit(context, section, nth)}");

    /// <summary>Such as <c>stitch 2 of sand (A)</c>.</summary>
    public static Phrase Unit(PatternContext context, int section, int nth) => InPairs(context)
        ? Phrase.Of($"pair {nth} of {context.Colour(section)}")
        : Phrase.Of($"stitch {nth} of {context.Colour(section)}");

    private static WordChoice Each(SizedPiece piece, Func<PiecePlan, string> word) => new(piece.Each(word));

    /// <summary>Symbol of the section of the first stitch, and which of its units it is.</summary>
    private static string FirstStitch(PatternContext context, PiecePlan piece) =>
        $"{context.Key[piece.StartSection].Symbol}{NthUnit(context, piece)}";

    private static int NthUnit(PatternContext context, PiecePlan piece) => context.Plan.Sequence.NthUnit(piece.StartSection, piece.Start);
}
