using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Instructions;

/// <summary>How the rows of a plain triangle are worked in one size: which of them decrease, and at which end.</summary>
internal sealed class TaperRowInstructions
{
    private static readonly Term Sc = new("sc");

    private readonly PatternContext _context;
    private readonly PiecePlan _piece;
    private readonly Taper _taper;

    /// <param name="piece">Of one size.</param>
    public TaperRowInstructions(PatternContext context, SizedPiece piece)
    {
        (_context, _piece) = (context, piece.First);
        _taper = _piece.Taper ?? throw new ArgumentException($"The {piece.Name} has no slope.", nameof(piece));
    }

    /// <summary>What it is for, and its rows: each way of working one is told once, with the numbers of those worked so.</summary>
    public IEnumerable<Block> Blocks()
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        steps.Add(Foundation());
        steps.Add(Of(0));
        var rows = Enumerable.Range(1, _taper.Rows - 1).ToArray();
        var decreasing = rows.Where(row => _taper.Decreases(row) > 0).GroupBy(_taper.Decreases).OrderBy(g => g.Key).ToArray();
        var listed = string.Join("; ", decreasing.Select(g => $"{(g.Key == 1 ? "decrease" : "decrease by two")} in {(g.Count() == 1 ? "row" : "rows")} {Wording.List([.. g.Select(row => Number(row + 1))])}"));
        var plain = decreasing.Sum(g => g.Count()) < rows.Length ? "; work the others plain" : "";
        steps.Add(new(Phrase.Plain($"Rows 2 to {Number(_taper.Rows)}"), Phrase.Plain($"{Wording.Capital(listed)}{plain}.")));
        if (plain.Length > 0)
            steps.Add(new(Phrase.Plain("Plain row"), Phrase.Of($"{Work(0, false)}, turn.")));
        foreach (var alike in decreasing)
        {
            foreach (var row in alike.DistinctBy(row => row % 2).OrderBy(row => row % 2))
                steps.Add(new(
                    Phrase.Plain($"Decrease{(alike.Key == 1 ? "" : " by two")} in {(row % 2 == 0 ? "odd" : "even")}-numbered rows"),
                    Phrase.Of($"{Work(alike.Key, _taper.IsAtEnd(row))}, turn.")));
        }
        // Of rows alike the first, which decreases: one number, one row.
        var middle = decreasing.SelectMany(g => g).Order().First(row => 2 * row >= _taper.Rows || _taper.At(row) <= 2);
        var left = _taper.At(middle);
        steps.Add(new(Phrase.Plain("Count"), Phrase.Plain(
            $"{Number(left)} {(left == 1 ? "st" : "sts")} in row {Number(middle + 1)}, 1 st in row {Number(_taper.Rows)}.")));
        steps.Add(new(Phrase.Plain("Then"), Phrase.Plain($"Fasten off after row {Number(_taper.Rows)}.")));
        return [new Paragraph(Purpose()), new Steps(steps.ToImmutable())];
    }

    /// <summary>Where it goes, how large it is, and which of its edges is which.</summary>
    public Phrase Purpose()
    {
        var fills = _context.Construction.GroupOf(_piece.Id).Fills!;
        // Seen from outside, the wearer's left is at the right.
        var corner = _taper.Slope == PieceSide.Left ? "left" : "right";
        var edge = _taper.Slope == PieceSide.Left ? "end" : "begin";
        return Phrase.Of(
            $"A triangle for the lower corner of the {PlaceNames.Of(fills.Into)} {PlaceNames.Of(fills.Opening)} at the wearer's {corner}, in rows of {Sc} from its lower edge up to a tip of one stitch. Rows become shorter where odd-numbered rows {edge}: that is its slanted edge; the opposite edge stays upright. It is {_piece.Width} wide and {_piece.Height} tall before it is sewn in; if yours is not, change the hook for it. Both its sides look alike: the outside is the one with which its upright edge meets the {PlaceNames.Of(fills.Opening)}'s.");
    }

    public Instruction Foundation() => new(Phrase.Plain("Foundation"), Phrase.Plain($"Ch {Number(_piece.FoundationChains)}."));

    /// <param name="row">From 0.</param>
    public Instruction Of(int row)
    {
        var (stitches, less) = (_taper.At(row), _taper.Decreases(row));
        var work = row == 0 ? Phrase.Of($"{new Term("Sc")} in 2nd ch from hook and in each ch to end")
            : less > 0 && stitches == 1 ? Phrase.Of($"Ch 1, {Together(less)}")
            : Work(less, _taper.IsAtEnd(row));
        return new(
            Phrase.Plain($"Row {Number(row + 1)} ({(row % 2 == 0 ? "RS" : "WS")})"),
            Phrase.Of($"{work}, turn. {Number(stitches)} {(stitches == 1 ? "st" : "sts")}."));
    }

    private static Phrase Work(int less, bool atEnd) => (less, atEnd) switch
    {
        (0, _) => Phrase.Of($"Ch 1, {Sc} in each st to end"),
        (_, true) => Phrase.Of($"Ch 1, {Sc} in each st to last {Number(less + 1)} sts, {Together(less)}"),
        _ => Phrase.Of($"Ch 1, {Together(less)}, {Sc} in each st to end"),
    };

    private static Term Together(int less) => new($"sc{Number(less + 1)}tog");

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
