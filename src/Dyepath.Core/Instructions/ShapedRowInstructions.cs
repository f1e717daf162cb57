using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>
/// How the rows of a shaped piece are worked in one size: where they stop short, what they go on over, and where parts are joined on.
/// </summary>
internal sealed class ShapedRowInstructions
{
    private static readonly ImmutableArray<Phrase> GoreHeadings =
    [
        Phrase.Plain("Gore"), Phrase.Plain("Row"), Phrase.Plain("N"), Phrase.Plain("Stitches"), Phrase.Plain("Ends at"), Phrase.Plain("Third row ends at"),
    ];

    private static readonly Phrase Planned = Phrase.Plain(" It is planned so: go on, and undo nothing.");

    private readonly PatternContext _context;
    private readonly RowInstructions _rows;
    private readonly ShapedPiece _shape;
    private readonly OpeningSteps _openings;
    private readonly PiecePlan _piece;
    private readonly ImmutableArray<ColourShift> _shifts;

    /// <param name="piece">Of one size.</param>
    public ShapedRowInstructions(PatternContext context, SizedPiece piece)
    {
        _context = context;
        _rows = new RowInstructions(context.Project.Fabric.Stitch, context.Project.Fabric.ChainCountsAsStitch, piece);
        _shape = piece.First.Shape ?? throw new ArgumentException($"The {piece.Name} is not shaped.", nameof(piece));
        _openings = new OpeningSteps(context, piece.First);
        _piece = piece.First;
        _shifts = ColourShift.Of(_piece);
    }

    /// <summary>From the foundation chain to the last row; rows that are worked alike are told once.</summary>
    public Steps Write()
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        steps.Add(Foundation());
        if (_shape.Bias > 0)
        {
            steps.AddRange(Biased(_shape.Parts[0]));
            return new Steps(steps.ToImmutable());
        }
        int? repeated = null;
        foreach (var part in _shape.Parts)
        {
            steps.AddRange(Beginning(part));
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows;)
            {
                steps.AddRange(Before(part, row));
                // One row between two that are shaped is told as it is.
                if (!IsPlain(part, row) || repeated is null || (row == part.FirstRow && !part.Continues) || IsAlone(part, row))
                {
                    var last = row + 1 == part.FirstRow + part.Rows;
                    var said = Of(part, row);
                    steps.Add(last && FastensOff(part) ? said with { Text = said.Text + Phrase.Plain(" Fasten off.") + _openings.Last } : said);
                    repeated ??= IsPlain(part, row) ? row : null;
                    row++;
                    continue;
                }
                var end = row + 1;
                while (end < part.FirstRow + part.Rows && IsPlain(part, end) && !Before(part, end).Any())
                    end++;
                var told = repeated.Value + 1;
                steps.Add(new Instruction(
                    row + 1 == end ? Phrase.Of($"Row {end}") : Phrase.Of($"Rows {row + 1} to {end}"),
                    end == part.FirstRow + part.Rows && FastensOff(part)
                        ? Phrase.Of($"As row {told}, {Sts(part, row)} each, then fasten off.") + _openings.Last
                        : Phrase.Of($"As row {told}, {Sts(part, row)} each.")));
                row = end;
            }
        }
        return new Steps(steps.ToImmutable());
    }

    /// <summary>A gore: a row that stops short, a row back over it, and a row that goes on over what was left.</summary>
    private sealed record Gore(int Row, int Left);

    /// <summary>Told by a table, where every row but those of gores is worked alike; else row by row.</summary>
    public IEnumerable<Block> Blocks()
    {
        if (Gores() is not { } gores)
            return [Write()];
        var part = _shape.Parts[0];
        return
        [
            new Steps(
            [
                Foundation(), Of(part, 0), Of(part, 1),
                new Instruction(
                    Phrase.Of($"Rows 3 to {part.Rows}"),
                    Phrase.Of($"As row 2, {Sts(part, 1)} each, but for the gores in the table, then fasten off.") + _openings.Last),
                new Instruction(Phrase.Plain("Gore, first row (RS)"), Phrase.Of($"{_rows.LeavingSomeRow()}, turn.")),
                new Instruction(Phrase.Plain("Gore, second row (WS)"), Phrase.Of($"{_rows.EachRow()}, turn.")),
                new Instruction(Phrase.Plain("Gore, third row (RS)"), Phrase.Of($"{_rows.OverSomeRow()}, turn. {Sts(part, 1)}.")),
            ]),
            new Table(
                Phrase.Plain("Gores: the first row of each, the stitches that it leaves unworked (N) and those that it has, and where the first and the third row end."),
                GoreHeadings,
                [
                    .. gores.Select((gore, i) => ImmutableArray.Create(
                        Phrase.Of($"{i + 1}"), Phrase.Of($"{gore.Row + 1}"),
                        Phrase.Of($"{gore.Left}"), Phrase.Of($"{Units(part, gore.Row)}"),
                        LastStitch(part, gore.Row), LastStitch(part, gore.Row + 2))),
                ],
                PerSizeColumns: false)
            {
                Ticks = 1,
            },
        ];
    }

    /// <summary>Null where there is none, or one of another make.</summary>
    private ImmutableArray<Gore>? Gores()
    {
        if (_shape.Bias > 0 || _shape.Strips.IsEmpty || _shape.Parts is not [var part] || part.Rows < 4 || !IsPlain(part, 1))
            return null;
        var gores = ImmutableArray.CreateBuilder<Gore>();
        for (var row = 2; row < part.Rows; row++)
        {
            if (Before(part, row).Any())
                return null;
            if (AtEnd(part, row) is not { } change)
                continue;
            if (change.Shorter <= 0 || row % 2 == 1 || row + 2 >= part.Rows
                || !IsPlain(part, row + 1) || Before(part, row + 1).Any() || Before(part, row + 2).Any()
                || AtEnd(part, row + 2) is not { OverStanding: true } over || over.Shorter != -change.Shorter)
                return null;
            gores.Add(new Gore(row, change.Shorter));
            row += 2;
        }
        return gores.Count == 0 ? null : gores.ToImmutable();
    }

    /// <summary>The chain, and which edge of the garment it is.</summary>
    public Instruction Foundation()
    {
        var chain = _rows.Foundation();
        return chain with { Text = chain.Text + _openings.Foundation };
    }

    /// <summary>What is done once a part's last row is worked.</summary>
    public Phrase Ending => Phrase.Plain("Then fasten off.") + _openings.Last;

    /// <summary>The first three rows, and then the second and the third in turn.</summary>
    private IEnumerable<Instruction> Biased(ShapedPart part)
    {
        for (var row = 0; row < Math.Min(3, part.Rows); row++)
        {
            foreach (var before in Before(part, row))
                yield return before;
            var said = Of(part, row);
            yield return row + 1 == part.Rows ? said with { Text = said.Text + Phrase.Plain(" Fasten off.") } : said;
        }
        if (part.Rows > 3)
        {
            yield return new Instruction(part.Rows == 4 ? Phrase.Plain("Row 4") : Phrase.Of($"Rows 4 to {part.Rows}"), Phrase.Of(
                $"As rows 2 and 3 in turn, {Units(part, 1)} and {Units(part, 2)} sts, each row 3 over a new chain: draw the loop of {_context.ChainYarn} up, {new Term("sl st")} in the first st of the row just worked, ch {_shape.Bias}. Then fasten off both yarns."));
        }
    }

    /// <summary>One row in full.</summary>
    /// <param name="row">Of the piece, from 0.</param>
    public Instruction Of(ShapedPart part, int row)
    {
        var change = AtEnd(part, row);
        var work = row == 0 ? _rows.FirstRow()
            : change is { Shorter: > 0 } ? _rows.LeavingRow(change.Value.Shorter)
            : change is { OverStanding: true }
                ? _rows.OverStandingRow(-change.Value.Shorter, _shape.Strips.Any(s => s.Row == row && HasChain(part, s)))
            : change is { Shorter: < 0 } ? _rows.OverChainsRow(-change.Value.Shorter)
            : _rows.EachRow();
        var here = change is not { } shaped ? Phrase.Empty
            : shaped.Shorter > 0 && !_shape.Strips.IsEmpty ? Phrase.Plain(" This shapes a gore.")
            : _openings.At(part, row, shaped);
        return new Instruction(
            RowInstructions.RowLabel(row + 1, part.BeginningOf(row) == RowEdge.Right),
            change is null
                ? Phrase.Of($"{work}, turn. {Sts(part, row)}.")
                : Phrase.Of($"{work}, turn. {Sts(part, row)}, the last at {LastStitch(part, row)}.") + here);
    }

    /// <summary>Whether a row that began with one of the strip's stitches left it standing.</summary>
    private static bool HasChain(ShapedPart part, SkippedStrip strip)
    {
        var below = strip.Row - strip.Skipped - 1;
        var begins = part.BeginningOf(below) == strip.Edge ? part.BeginsAt(below) : part.EndsAt(below);
        return begins <= Math.Max(strip.Column, strip.Column + Inwards(strip))
            && begins >= Math.Min(strip.Column, strip.Column + Inwards(strip));
    }

    private static int Inwards(SkippedStrip strip) => (strip.Edge == RowEdge.Left ? -1 : 1) * (strip.Units - 1);

    /// <summary>
    /// Symbol of the colour of a row's last stitch, and which of the colour's stitches it is: the next row goes on from there.
    /// </summary>
    private Phrase LastStitch(ShapedPart part, int row)
    {
        // Just before its middle, so that a stitch of two colours is named by the one that covers most of it.
        var at = part.Path.SpanAt(row - part.FirstRow, part.EndsAt(row)).From + ColourRing.Unit / 2 - 1;
        var place = YarnPlace.Of(_shape.Panel.Ring, at);
        return Phrase.Of($"{new Name(_context.Key[place.Section].Symbol)}{(int)Math.Floor(place.UnitsInto) + 1}");
    }

    /// <summary>What is done before a part's first row; nothing before the piece's first.</summary>
    public IEnumerable<Instruction> Beginning(ShapedPart part)
    {
        if (part.Below is not { } below)
            yield break;
        var name = PartNames.Of(part);
        var label = Phrase.Plain(Wording.Capital(name));
        if (part.Continues)
        {
            yield return new Instruction(label, Phrase.Of($"Go on from row {part.FirstRow} without a cut."));
            yield break;
        }
        var step = _shape.Steps.First(s => s.Act == ShapingAct.Join && s.Part == part.Index);
        var (over, beside) = (step.Units, Phrase.Plain("at the edge"));
        // Counted from a side that is worked already, where one lies between.
        foreach (var other in _shape.Parts.Take(part.Index).Where(p => p.Below == below))
        {
            var run = other.Outline.At(0);
            var gap = part.From == RowEdge.Right ? step.Column - run.Last - 1 : run.First - step.Column - 1;
            if (gap >= 0 && gap < over)
                (over, beside) = (gap, Phrase.Of($"beside the {PartNames.Of(other)}"));
        }
        var right = part.From == RowEdge.Right;
        var at = step.Place!.Value;
        var place = Beginnings.Place(_context, at.Section, (int)Math.Floor(at.UnitsInto + 1e-6) + 1);
        var yarn = new Name(_context.Project.Yarn.Name);
        var join = over == 0
            ? Phrase.Of($"join {yarn} in the first st {beside}, at {place}")
            : Phrase.Of($"leave {RowInstructions.Sts(over)} unworked {beside} and join {yarn} in the next st, at {place}");
        var left = over == 0 ? Phrase.Empty : _openings.Between(part.FirstRow, right ? step.Column - 1 : step.Column + 1);
        yield return new Instruction(label, (right
            ? Phrase.Of($"Into row {part.FirstRow}, with the right side of the piece facing: {join}; cut away what comes before it.")
            : Phrase.Of($"Into row {part.FirstRow}, with the wrong side of the piece facing: {join}; cut away what comes before it.")) + left);
    }

    /// <summary>What is done, or to be known, before a row.</summary>
    public IEnumerable<Instruction> Before(ShapedPart part, int row)
    {
        if (AtEnd(part, row) is { Shorter: < 0, OverStanding: false } grows)
        {
            var (yarn, slip) = (_context.ChainYarn, new Term("sl st"));
            if (_shape.Bias > 0)
            {
                yield return new Instruction(Phrase.Plain("Chain"), row == 2
                    ? Phrase.Of($"Join {yarn} with {slip} in the first st of row {row}, at the edge where row {row + 1} will end, ch {-grows.Shorter} and leave its loop on a marker.")
                    : Phrase.Of($"Draw the loop of {yarn} up, {slip} in the first st of row {row}, at the edge where row {row + 1} will end, ch {-grows.Shorter} and leave its loop on a marker."));
                yield break;
            }
            var chain = grows.Shorter == -1
                ? Phrase.Plain("ch 2 and fasten off; the row goes into the first of them only")
                : Phrase.Of($"ch {-grows.Shorter} and fasten off");
            yield return new Instruction(Phrase.Plain("Chain"), Phrase.Of(
                $"Join {yarn} with {slip} in the first st of row {row}, at the edge where row {row + 1} will end, {chain}; the loop of row {row} waits on a marker."));
        }
        if (BeginsOtherwise is { } picture && _shifts[0].Part == part && _shifts[0].First == row)
        {
            yield return new Instruction(Phrase.Plain("Motif"), Phrase.Of(
                $"up to row {_shifts[0].Last + 1} the picture: {MotifWords.Of(picture)}, not {MotifWords.Of(_piece.Motif)}.") + Planned);
        }
        if (_shifts.FirstOrDefault(s => s.Part == part && s.First == row) is { } shift && shift.Before(_shifts) is { } before
            && before.By(_context) != shift.By(_context))
        {
            var said = _shifts.First(s => s.Before(_shifts) is { } earlier && earlier.By(_context) != s.By(_context));
            // Said once, at the first change of the piece.
            var planned = said == shift && BeginsOtherwise is null ? Planned : Phrase.Empty;
            yield return new Instruction(Phrase.Plain("Motif"), Changed(shift, before) + planned);
        }
    }

    /// <summary>What its first rows show, where they are more than two and it is not what the piece is to show.</summary>
    private MotifKind? BeginsOtherwise => _shifts is [{ IsSeen: true } first, _, ..]
        && first.Picture(_context, _piece) is { } picture && picture != _piece.Motif ? picture : null;

    /// <summary>
    /// What the maker sees from a row on: colours that begin elsewhere against the row two below, and what they then make.
    /// </summary>
    private Phrase Changed(ColourShift shift, ColourShift before)
    {
        var begins = shift.AgainstTwoBelow(_context);
        var now = shift.Picture(_context, _piece);
        if (now is null && !shift.IsSeen)
        {
            return shift.Last == shift.First
                ? Phrase.Of($"in row {shift.First + 1} each colour begins {begins}: the picture is broken there.")
                : Phrase.Of($"in rows {shift.First + 1} and {shift.Last + 1} each colour begins {begins}: the picture is broken there.");
        }
        var seen = before;
        while (seen is { IsSeen: false })
            seen = seen.Before(_shifts);
        var then = seen is null ? _piece.Motif : seen.Picture(_context, _piece);
        var (from, earlier, motif) = (shift.First + 1, before.By(_context), MotifWords.Of(_piece.Motif));
        if (!shift.IsSeen || now == then || now is null)
            return Phrase.Of($"from row {from} on each colour begins {begins}; before that, {earlier}.");
        var picture = now != _piece.Motif ? Phrase.Of($"the picture there: {MotifWords.Of(now.Value)}, not {motif}")
            : then is null ? Phrase.Of($"the picture: {motif}")
            : Phrase.Of($"the picture: {motif} again");
        return Phrase.Of($"from row {from} on each colour begins {begins}; before that, {earlier}; {picture}.");
    }

    private bool FastensOff(ShapedPart part) => part.Index + 1 == _shape.Parts.Length || !_shape.Parts[part.Index + 1].Continues;

    private static bool IsAlone(ShapedPart part, int row) =>
        row > part.FirstRow && row + 1 < part.FirstRow + part.Rows && !IsPlain(part, row - 1) && !IsPlain(part, row + 1);

    private static bool IsPlain(ShapedPart part, int row) => row > 0 && AtEnd(part, row) is null;

    private static RowChange? AtEnd(ShapedPart part, int row)
    {
        foreach (var change in part.Changes.Where(c => c.Row == row))
        {
            if (change.AtBeginning)
                throw new InvalidOperationException($"No words for row {row}, which begins over slip stitches.");
            return change;
        }
        return null;
    }

    private static int Units(ShapedPart part, int row) => part.Outline.At(row - part.FirstRow).Units;

    private static Phrase Sts(ShapedPart part, int row) => RowInstructions.Sts(Units(part, row));
}
