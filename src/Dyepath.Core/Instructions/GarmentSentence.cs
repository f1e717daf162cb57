using Dyepath.Core.Booklets;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>What a sighted person sees in the picture of a garment.</summary>
public static class GarmentSentence
{
    /// <summary>What is less of a piece than this is not told of.</summary>
    private const double LeastSeen = 0.1;

    /// <summary>What it is, its finished measures, its colours, what they make, and its first pooled piece.</summary>
    public static string Of(Plan plan, SizePlan size, Language language = Language.English) => Say(plan, size, Said(plan, size), language);

    /// <summary>The same of what is drawn from behind.</summary>
    public static string FromBehind(Plan plan, SizePlan size, Language language = Language.English) =>
        Say(plan, size, Behind(plan, size), language);

    /// <summary>Its finished measures, such as <c>104 cm round and 60 cm long</c>.</summary>
    public static string Measures(Plan plan, SizePlan size) => Say(plan, size, Measured(plan, size), Language.English);

    internal static Phrase Behind(Plan plan, SizePlan size) => Phrase.Of($"Seen from behind: {Said(plan, size)}");

    internal static Phrase Said(Plan plan, SizePlan size)
    {
        var piece = size.Pieces.FirstOrDefault(p => p.Pooled) ?? size.Pieces[0];
        var colours = Phrase.Named(Wording.Capital(string.Join(", ", plan.Project.Yarn.Sections.Select(s => s.Name))));
        return Phrase.Of(
            $"{GarmentWords.Of(plan.Project.Garment.Shape).Called}, {Measured(plan, size)}, size {Phrase.Named(size.Name)}. {colours} make {Motifs(plan, size)}; {Stitches(piece)} stitches by {piece.Rows} rows in the {piece.Name}.");
    }

    /// <summary>In the first of the edition's units.</summary>
    private static string Say(Plan plan, SizePlan size, Phrase phrase, Language language)
    {
        var edition = plan.Project.Edition;
        var units = Wording.InchesFirst(edition.Units) ? Units.Inches : Units.Centimetres;
        return new Wording([size.Name], edition with { Size = null, Units = units, Language = language }).Text(phrase);
    }

    /// <summary>Of a shaped piece from its shortest row to its longest.</summary>
    private static Phrase Stitches(PiecePlan piece) => piece.Shape is not { } shape ? Phrase.Of($"{piece.Stitches}")
        : shape.ShortestRow == shape.WidestRow ? Phrase.Of($"{shape.WidestRow}")
        : Phrase.Of($"{shape.ShortestRow} to {shape.WidestRow}");

    private static Phrase Measured(Plan plan, SizePlan size)
    {
        var measures = GarmentWords.Of(plan.Project.Garment.Shape).Measures
            .Where(m => size.Finished.ContainsKey(m.Measure)).Select(m => Measured(m.Words, size.Finished[m.Measure])).ToArray();
        return Phrase.Join(", ", measures.Skip(2).Prepend(Phrase.List(measures.Take(2))));
    }

    private static Phrase Measured(string words, Length length)
    {
        var parts = words.Split("{0}");
        return new([new Words(parts[0]), new Measure(new([length])), new Words(parts[1])]);
    }

    /// <summary>Such as <c>argyle diamonds</c>, or each with the pieces that make it where they differ.</summary>
    private static Phrase Motifs(Plan plan, SizePlan size)
    {
        var seen = size.Pieces.Where(p => p.Pooled).SelectMany(p => PieceMotif.Seen(plan, p).Where(s => s.Share >= LeastSeen)
            .Select((s, i) => (s.Kind, Where: i == 0 ? Phrase.Plain(p.Name) : Phrase.Of($"parts of the {p.Name}"))))
            .GroupBy(s => s.Kind, s => s.Where).ToArray();
        return seen.Length == 0 ? Phrase.Plain(MotifWords.Of(plan.Project.Garment.Motif))
            : seen is [var one] ? Phrase.Plain(MotifWords.Of(one.Key))
            : Phrase.List(seen.Select(s => Phrase.Of($"{MotifWords.Of(s.Key)} ({Phrase.List(s)})")));
    }
}
