using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Instructions;

/// <summary>What a sighted person sees in the picture of a garment.</summary>
public static class GarmentSentence
{
    /// <summary>What is less of a piece than this is not told of.</summary>
    private const double LeastSeen = 0.1;

    /// <summary>What it is, its finished measures, its colours, what they make, and its first pooled piece.</summary>
    public static string Of(Plan plan, SizePlan size)
    {
        var piece = size.Pieces.FirstOrDefault(p => p.Pooled) ?? size.Pieces[0];
        var colours = Wording.Capital(string.Join(", ", plan.Project.Yarn.Sections.Select(s => s.Name)));
        return $"{GarmentWords.Of(plan.Project.Garment.Shape).Called}, {Measures(plan, size)}, size {size.Name}. {colours} make {Motifs(plan, size)}; {Stitches(piece)} stitches by {piece.Rows} rows in the {piece.Name}.";
    }

    /// <summary>Of a shaped piece from its shortest row to its longest.</summary>
    private static string Stitches(PiecePlan piece)
    {
        if (piece.Shape is not { } shape)
            return FormattableString.Invariant($"{piece.Stitches}");
        return shape.ShortestRow == shape.WidestRow ? FormattableString.Invariant($"{shape.WidestRow}")
            : FormattableString.Invariant($"{shape.ShortestRow} to {shape.WidestRow}");
    }

    /// <summary>Its finished measures, such as <c>104 cm round and 60 cm long</c>.</summary>
    public static string Measures(Plan plan, SizePlan size)
    {
        var measures = GarmentWords.Of(plan.Project.Garment.Shape).Measures
            .Where(m => size.Finished.ContainsKey(m.Measure))
            .Select(m => string.Format(
                CultureInfo.InvariantCulture, m.Words, Wording.Say(size.Finished[m.Measure], plan.Project.Edition.Units))).ToArray();
        return string.Join(", ", measures.Skip(2).Prepend(string.Join(" and ", measures.Take(2))));
    }

    /// <summary>Such as <c>argyle diamonds</c>, or each with the pieces that make it where they differ.</summary>
    private static string Motifs(Plan plan, SizePlan size)
    {
        var seen = size.Pieces.Where(p => p.Pooled).SelectMany(p => PieceMotif.Seen(plan, p).Where(s => s.Share >= LeastSeen)
            .Select((s, i) => (s.Kind, Where: i == 0 ? p.Name : $"parts of the {p.Name}"))).GroupBy(s => s.Kind, s => s.Where).ToArray();
        return seen.Length == 0 ? MotifWords.Of(plan.Project.Garment.Motif)
            : seen is [var one] ? MotifWords.Of(one.Key)
            : Wording.List(seen.Select(s => $"{MotifWords.Of(s.Key)} ({Wording.List(s)})"));
    }
}
