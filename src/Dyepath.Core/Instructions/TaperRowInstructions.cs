using System.Collections.Immutable;
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
        var listed = EdgingsSection.Sentence(Phrase.Join("; ", decreasing.Select(g => Decreasing(g.Key == 1, [.. g]))));
        var plain = decreasing.Sum(g => g.Count()) < rows.Length;
        steps.Add(new(
            Phrase.Of($"Rows 2 to {_taper.Rows}"), plain ? Phrase.Of($"{listed}; work the others plain.") : Phrase.Of($"{listed}.")));
        if (plain)
            steps.Add(new(Phrase.Plain("Plain row"), Phrase.Of($"{Work(0, false)}, turn.")));
        foreach (var alike in decreasing)
        {
            foreach (var row in alike.DistinctBy(row => row % 2).OrderBy(row => row % 2))
                steps.Add(new(
                    (alike.Key, row % 2) switch
                    {
                        (1, 0) => Phrase.Plain("Decrease in odd-numbered rows"),
                        (1, _) => Phrase.Plain("Decrease in even-numbered rows"),
                        (_, 0) => Phrase.Plain("Decrease by two in odd-numbered rows"),
                        _ => Phrase.Plain("Decrease by two in even-numbered rows"),
                    },
                    Phrase.Of($"{Work(alike.Key, _taper.IsAtEnd(row))}, turn.")));
        }
        // Of rows alike the first, which decreases: one number, one row.
        var middle = decreasing.SelectMany(g => g).Order().First(row => 2 * row >= _taper.Rows || _taper.At(row) <= 2);
        steps.Add(new(Phrase.Plain("Count"), Phrase.Of(
            $"{RowInstructions.Sts(_taper.At(middle))} in row {middle + 1}, 1 st in row {_taper.Rows}.")));
        steps.Add(new(Phrase.Plain("Then"), Phrase.Of($"Fasten off after row {_taper.Rows}.")));
        return [new Paragraph(Purpose()), new Steps(steps.ToImmutable())];
    }

    /// <param name="rows">From 0.</param>
    private static Phrase Decreasing(bool byOne, ImmutableArray<int> rows)
    {
        var list = Phrase.List(rows.Select(row => Phrase.Of($"{row + 1}")));
        return (byOne, rows.Length) switch
        {
            (true, 1) => Phrase.Of($"decrease in row {list}"),
            (true, _) => Phrase.Of($"decrease in rows {list}"),
            (_, 1) => Phrase.Of($"decrease by two in row {list}"),
            _ => Phrase.Of($"decrease by two in rows {list}"),
        };
    }

    /// <summary>Where it goes, how large it is, and which of its edges is which.</summary>
    public Phrase Purpose()
    {
        var fills = _context.Construction.GroupOf(_piece.Id).Fills!;
        var (into, opening) = (PlaceNames.Of(fills.Into), PlaceNames.Of(fills.Opening));
        // Seen from outside, the wearer's left is at the right.
        var left = _taper.Slope == PieceSide.Left;
        return Phrase.Join(" ",
        [
            left
                ? Phrase.Of($"A triangle for the lower corner of the {into} {opening} at the wearer's left, in rows of {Sc} from its lower edge up to a tip of one stitch.")
                : Phrase.Of($"A triangle for the lower corner of the {into} {opening} at the wearer's right, in rows of {Sc} from its lower edge up to a tip of one stitch."),
            left
                ? Phrase.Plain("Rows become shorter where odd-numbered rows end: that is its slanted edge; the opposite edge stays upright.")
                : Phrase.Plain("Rows become shorter where odd-numbered rows begin: that is its slanted edge; the opposite edge stays upright."),
            Phrase.Of($"It is {_piece.Width} wide and {_piece.Height} tall before it is sewn in; if yours is not, change the hook for it."),
            Phrase.Of($"Both its sides look alike: the outside is the one with which its upright edge meets the {opening}'s."),
        ]);
    }

    public Instruction Foundation() => new(Phrase.Plain("Foundation"), Phrase.Of($"Ch {_piece.FoundationChains}."));

    /// <param name="row">From 0.</param>
    public Instruction Of(int row)
    {
        var (stitches, less) = (_taper.At(row), _taper.Decreases(row));
        var work = row == 0 ? Phrase.Of($"{new Term("Sc")} in 2nd ch from hook and in each ch to end")
            : less > 0 && stitches == 1 ? Phrase.Of($"Ch 1, {Together(less)}")
            : Work(less, _taper.IsAtEnd(row));
        return new(
            RowInstructions.RowLabel(row + 1, row % 2 == 0), Phrase.Of($"{work}, turn. {RowInstructions.Sts(stitches)}."));
    }

    private static Phrase Work(int less, bool atEnd) => (less, atEnd) switch
    {
        (0, _) => Phrase.Of($"Ch 1, {Sc} in each st to end"),
        (_, true) => Phrase.Of($"Ch 1, {Sc} in each st to last {less + 1} sts, {Together(less)}"),
        _ => Phrase.Of($"Ch 1, {Together(less)}, {Sc} in each st to end"),
    };

    private static Term Together(int less) => new($"sc{less + 1}tog");
}
