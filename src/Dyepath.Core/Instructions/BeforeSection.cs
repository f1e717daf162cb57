using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>What has to be right before the first stitch of a piece: the yarn's way, its count, the markers, joins and tails.</summary>
internal static class BeforeSection
{
    public const string Title = "Before you begin";

    /// <summary>Sequences that are counted: of one alone a stitch more or less says little.</summary>
    public const int Counted = 2;

    /// <summary>Left to be woven in where a yarn is cut (common practice).</summary>
    public static Length Tail { get; } = Length.FromCentimetres(15);

    /// <summary>
    /// A count that is off by this share is still held by the hands, colour by colour; further off it asks more of every stitch than they
    /// keep up (an assumption without a source, near to half of what makers correct at most).
    /// </summary>
    private const double HeldByHands = 0.035;

    public static Section Write(PatternContext context)
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        if (OtherWay(context) is { } otherWay)
            Add("Way of the yarn", Phrase.Of(
                $"The colours come off the ball as {Order(context.Key.Select(k => k.Symbol))} and so on. If yours come as {Order(otherWay)} and so on, work from the ball's other end."));
        var (least, most) = Counts(context);
        Add("Count", Phrase.Of(
            $"In the middle of the swatch, along its rows, count the {context.UnitWord()} that {Counted} whole sequences of the colours take: {least} to {most}. Where there are more, each {context.UnitWord(one: true)} takes too little yarn: take a larger hook. Where there are fewer: a smaller one."));
        Add("Which comes first", Phrase.Of(
            $"The picture hangs on this count, the size on the {new Term("gauge")}. Where one hook does not give both, keep the count, and make the size whose measurements your {new Term("gauge")} gives."));
        Add("Markers", Phrase.Of($"{context.Plan.Sizes.Max(Markers)} at a time: {What(context)}."));
        Add("Joins", Phrase.Of(
            $"Where a ball ends, and at a knot, cut both ends at the same place of the colours and leave {Tail} of each beyond it. Work the last stitch of the old end until only its last loop is to be drawn through, and draw the new end through: the next stitch goes on at the place of the colours where the old end stopped."));
        Add("Tails", Phrase.Of(
            $"Leave {Tail} wherever you begin, cut or join, to weave in at the end.{(context.Construction.Joins.Any(j => j.Sewn) ? " Seams are sewn with lengths of their own." : "")}"));
        return new Section("before", Phrase.Plain(Title), [new Steps(steps.ToImmutable())]);

        void Add(string label, Phrase text) => steps.Add(new Instruction(Phrase.Plain(label), text));
    }

    /// <summary>Stitches of two sequences, least and most, with which the picture can be held.</summary>
    private static (int Least, int Most) Counts(PatternContext context)
    {
        var planned = Counted * context.Plan.Sequence.Ring.SequenceUnits;
        var off = Math.Max(1, HeldByHands * planned);
        return ((int)Math.Round(planned - off), (int)Math.Round(planned + off));
    }

    /// <summary>The colours from the ball's other end, from the same colour on; missing where they come alike from both.</summary>
    private static string[]? OtherWay(PatternContext context)
    {
        string[] order = [.. context.Key.Select(k => k.Symbol)];
        string[] back = [order[0], .. order.Skip(1).Reverse()];
        var alike = Enumerable.Range(0, order.Length).Any(by => back.Select((_, i) => back[(i + by) % back.Length]).SequenceEqual(order));
        return alike ? null : back;
    }

    private static Phrase Order(IEnumerable<string> symbols) => Phrase.Named(string.Join(", ", symbols));

    /// <summary>As many as are in the work at once: those of every piece stay until it is sewn; edgings come after that.</summary>
    internal static int Markers(SizePlan size) => 1 + Math.Max(
        size.Pieces.Sum(p => p.Copies * p.Marks.Sum(m => m.Places)) + (size.Pieces.Any(p => p.Shape is { CompanionChains: > 0 }) ? 1 : 0),
        size.Edgings.Select(e => e.Corners.Outer + e.Corners.Inner).DefaultIfEmpty(0).Max());

    private static Phrase What(PatternContext context)
    {
        string[] kinds =
        [
            context.InRounds ? "one for the round at hand" : "one for the row at hand",
            .. context.Plan.Sizes.Any(s => s.Pieces.Any(p => !p.Marks.IsEmpty)) ? ["one for each place that is to be marked"] : Array.Empty<string>(),
            .. context.HasChains ? ["one to hold the row's loop while a chain is made"] : Array.Empty<string>(),
            .. context.Plan.Sizes.Any(s => s.Edgings.Any(e => e.PerRound != 0)) ? ["one for each corner of an edging"] : Array.Empty<string>(),
        ];
        return Phrase.List(kinds.Select(Phrase.Plain));
    }
}
