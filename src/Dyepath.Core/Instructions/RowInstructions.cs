using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>How the rows of a piece are worked, stitch by stitch, for every fabric stitch and way of working.</summary>
internal sealed class RowInstructions
{
    private static readonly Term Sc = new("sc");
    private static readonly Term Skip = new("skip");
    private static readonly Term Skipped = new("skipped");
    private static readonly Term SlipStitch = new("sl st");

    private readonly FabricStitch _stitch;
    private readonly bool _chainCounts;
    private readonly SizedPiece _piece;
    private readonly bool _turned;
    private readonly bool _round;

    public RowInstructions(FabricStitch stitch, bool chainCounts, SizedPiece piece)
    {
        _stitch = stitch;
        _chainCounts = chainCounts;
        _piece = piece;
        _turned = piece.First.Working is Working.Turned or Working.RoundsTurned;
        _round = piece.First.Working is not Working.Turned;
    }

    private PerSize<int> Stitches => _piece.Each(p => p.Stitches);

    private PerSize<int> Rows => _piece.Each(p => p.Rows);

    /// <summary>From the foundation chain to the last row.</summary>
    public Steps Write()
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        steps.Add(Foundation());
        if (_round && _stitch == FabricStitch.Linen)
            AddLinenRounds(steps);
        else if (_round)
            AddRounds(steps);
        else if (_stitch == FabricStitch.Linen)
            AddLinenRows(steps);
        else if (_piece.First.RowStitches.Length == 2)
            AddAlternatingRows(steps);
        else
            AddPlainRows(steps);
        return new Steps(steps.ToImmutable());
    }

    /// <summary>One row in full: where the pattern says to repeat rows, the one that it repeats.</summary>
    /// <param name="row">From 0.</param>
    public Instruction Of(int row)
    {
        // Foundation, the rows that are told, and the words that repeat the last of them.
        var told = Write().Items;
        var repeated = told.Length - 3;
        var text = told[row == 0 ? 1 : 2 + (row - 1) % repeated].Text;
        return new Instruction(Label(row + 1), text);
    }

    /// <summary>Such as <c>Row 1 (RS)</c>.</summary>
    /// <param name="number">From 1.</param>
    public static Phrase RowLabel(int number, bool right) => right ? Phrase.Of($"Row {number} (RS)") : Phrase.Of($"Row {number} (WS)");

    /// <summary>Such as <c>71 sts</c>.</summary>
    public static Phrase Sts(int stitches) => stitches == 1 ? Phrase.Plain("1 st") : Phrase.Of($"{stitches} sts");

    public Instruction Foundation() => new(
        Phrase.Plain("Foundation"),
        _round
            ? Phrase.Of($"Ch {_piece.Each(p => p.FoundationChains)}. Without twisting the chain, join with {SlipStitch} in its first ch to form a ring.")
            : Phrase.Of($"Ch {_piece.Each(p => p.FoundationChains)}."));

    /// <summary>The first row of a rectangle, into the foundation.</summary>
    public Phrase FirstRow() => Phrase.Of($"{Capital(_stitch.Abbreviation)} in {FirstChain()} and in each ch to end");

    /// <summary>A row that is worked to its end.</summary>
    public Phrase EachRow() => Turn() + EachStitch(new Term(_stitch.Abbreviation));

    /// <summary>A row that stops short.</summary>
    public Phrase LeavingRow(int left)
    {
        var st = new Term(_stitch.Abbreviation);
        return Turn() + (_chainCounts, left) switch
        {
            (true, 1) => Phrase.Of($"{Skip} first st, {st} in each st to last st (the turning ch), leave it unworked"),
            (true, _) => Phrase.Of($"{Skip} first st, {st} in each st to last {left} sts (the turning ch counts as one), leave these unworked"),
            (_, 1) => Phrase.Of($"{st} in each st to last st, leave it unworked"),
            _ => Phrase.Of($"{st} in each st to last {left} sts, leave these unworked"),
        };
    }

    /// <summary>A row that stops short by as many stitches as stand elsewhere under N.</summary>
    public Phrase LeavingSomeRow()
    {
        var st = new Term(_stitch.Abbreviation);
        return Turn() + (_chainCounts
            ? Phrase.Of($"{Skip} first st, {st} in each st to last N sts (the turning ch counts as one), leave these unworked")
            : Phrase.Of($"{st} in each st to last N sts, leave these unworked"));
    }

    /// <summary>A row that goes on over as many stitches as stand elsewhere under N.</summary>
    public Phrase OverSomeRow()
    {
        var st = new Term(_stitch.Abbreviation);
        return _chainCounts
            ? Phrase.Of($"{EachRow()}, then {st} in each of the next N sts left unworked (a turning ch counts as one)")
            : Phrase.Of($"{EachRow()}, then {st} in each of the next N sts left unworked");
    }

    /// <summary>A row that goes on over chains that wait at its end.</summary>
    public Phrase OverChainsRow(int chains) => chains == 1
        ? Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in the first ch")
        : Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in each of the {chains} ch");

    /// <summary>A row that goes on over stitches that shorter rows left.</summary>
    /// <param name="chain">A turning chain is among them.</param>
    public Phrase OverStandingRow(int standing, bool chain)
    {
        var (row, st) = (EachRow(), new Term(_stitch.Abbreviation));
        return (chain && _chainCounts, standing) switch
        {
            (true, 1) => Phrase.Of($"{row}, then {st} in the next st left unworked (a turning ch counts as one)"),
            (true, _) => Phrase.Of($"{row}, then {st} in each of the next {standing} sts left unworked (a turning ch counts as one)"),
            (_, 1) => Phrase.Of($"{row}, then {st} in the next st left unworked"),
            _ => Phrase.Of($"{row}, then {st} in each of the next {standing} sts left unworked"),
        };
    }

    private void AddPlainRows(ImmutableArray<Instruction>.Builder steps)
    {
        steps.Add(Row(1, FirstRow(), Stitches));
        steps.Add(Row(2, EachRow(), Stitches));
        steps.Add(Repeat(1));
    }

    /// <summary>N, then N + 1 with one more worked into the edge where the row begins, then N again.</summary>
    private void AddAlternatingRows(ImmutableArray<Instruction>.Builder steps)
    {
        var st = new Term(_stitch.Abbreviation);
        var wider = _piece.Each(p => p.RowStitches[1]);
        steps.Add(Row(1, FirstRow(), Stitches));
        steps.Add(Row(2, Turn() + (_chainCounts
            ? Phrase.Of($"{st} in first st, {st} in each st to end, the last in the top of the turning ch")
            : Phrase.Of($"2 {st} in first st, {st} in each st to end")), wider));
        steps.Add(Row(3, Turn() + (_chainCounts
            ? Phrase.Of($"{Skip} first st, {st} in each st to the turning ch, which is left unworked")
            : Phrase.Of($"{st} in each st to last st, which is left unworked")), Stitches));
        steps.Add(Repeat(2));
    }

    /// <summary>
    /// Even counts repeat one row, which begins with a space of two chains; odd counts alternate two rows, so that both edges are
    /// single crochet and every single crochet between them still lies over a chain space.
    /// </summary>
    private void AddLinenRows(ImmutableArray<Instruction>.Builder steps)
    {
        var counts = Stitches.Values;
        if (counts.All(n => n % 2 == 0))
        {
            steps.Add(Row(1, Phrase.Of($"{new Term("Sc")} in 4th ch from hook (the 3 {Skipped} ch count as a ch-1 space), *ch 1, {Skip} next ch, {Sc} in next ch; rep from * to end"), Stitches));
            steps.Add(Row(2, Phrase.Of($"Ch 2 (counts as a ch-1 space), {Skip} first {Sc}, {Sc} in next ch-1 space, *ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space; rep from * to end, the last {Sc} in the space of the turning ch"), Stitches));
            steps.Add(Repeat(1));
            return;
        }
        if (counts.Any(n => n % 2 == 0))
            throw new InvalidOperationException("A linen stitch pattern has even counts in all sizes or odd counts in all sizes.");
        steps.Add(Row(1, Phrase.Of($"{new Term("Sc")} in {FirstChain()}, *ch 1, {Skip} next ch, {Sc} in next ch; rep from * to end"), Stitches));
        steps.Add(Row(2, Turn() + Phrase.Of($"{Sc} in first {Sc}, {Sc} in next ch-1 space, *ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space; rep from * to last {Sc}, {Sc} in last {Sc}"), Stitches));
        steps.Add(Row(3, Turn() + Phrase.Of($"{Sc} in first {Sc}, *ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space; rep from * to last 2 {Sc}, ch 1, {Skip} next {Sc}, {Sc} in last {Sc}"), Stitches));
        steps.Add(Repeat(2));
    }

    private void AddRounds(ImmutableArray<Instruction>.Builder steps)
    {
        var st = new Term(_stitch.Abbreviation);
        var close = Close();
        var spiral = _piece.First.Working == Working.Spiral;
        steps.Add(Row(1, spiral
            ? Phrase.Of($"{Capital(_stitch.Abbreviation)} in each ch around, {close}")
            : Turn() + (_chainCounts
                ? Phrase.Of($"{Skip} first ch, {st} in each ch around, {close}")
                : Phrase.Of($"{st} in each ch around, {close}")), Stitches));
        steps.Add(Row(2, spiral
            ? Phrase.Of($"{Capital(_stitch.Abbreviation)} in each st around, moving the marker up")
            : Turn() + (_chainCounts
                ? Phrase.Of($"{Skip} first st, {st} in each st around, {close}")
                : Phrase.Of($"{st} in each st around, {close}")), Stitches));
        steps.Add(Repeat(1));
    }

    /// <summary>
    /// Turned rounds repeat one round, for the space beside the join comes first on the way back. Unturned, every other round begins
    /// with a space, so that the join stays where it is. A spiral's odd count brings single crochets over spaces by itself.
    /// </summary>
    private void AddLinenRounds(ImmutableArray<Instruction>.Builder steps)
    {
        var pair = Phrase.Of($"ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space");
        if (_piece.First.Working == Working.Spiral)
        {
            steps.Add(Row(1, Phrase.Of($"*{Sc} in next ch, ch 1, {Skip} next ch; rep from * to last ch, {Sc} in last ch, {Close()}"), Stitches));
            steps.Add(Row(2, Phrase.Of($"*{pair}; rep from * to last {Sc}, ch 1, {Skip} next {Sc}, moving the marker up"), Stitches));
            steps.Add(Row(3, Phrase.Of($"{new Term("Sc")} in first ch-1 space, *{pair}; rep from * around, moving the marker up"), Stitches));
            steps.Add(Repeat(2));
            return;
        }
        var plain = Phrase.Of($"*{Sc} in next ch-1 space, ch 1, {Skip} next {Sc}; rep from * around, {Close()}");
        steps.Add(Row(1, Phrase.Of($"Ch 1, *{Sc} in next ch, ch 1, {Skip} next ch; rep from * around, {Close()}"), Stitches));
        if (_turned)
        {
            steps.Add(Row(2, Phrase.Of($"Ch 1, {plain}"), Stitches));
            steps.Add(Repeat(1));
            return;
        }
        steps.Add(Row(2, Phrase.Of($"Ch 2 (counts as a ch-1 space), {Skip} first {Sc}, {Sc} in next ch-1 space, *{pair}; rep from * around, join with {SlipStitch} in first ch"), Stitches));
        steps.Add(Row(3, Phrase.Of($"Ch 1, {plain}"), Stitches));
        steps.Add(Repeat(2));
    }

    private Phrase Close()
    {
        if (_piece.First.Working == Working.Spiral)
            return Phrase.Plain("do not join; mark the first st");
        var join = _chainCounts ? Phrase.Of($"join with {SlipStitch} in top of beginning ch") : Phrase.Of($"join with {SlipStitch} in first st");
        return _turned ? Phrase.Of($"{join}, turn") : join;
    }

    private Phrase FirstChain()
    {
        var nth = _stitch.FirstStitchInChain;
        var chain = nth switch
        {
            2 => Phrase.Plain("2nd ch from hook"),
            3 => Phrase.Plain("3rd ch from hook"),
            _ => Phrase.Of($"{nth}th ch from hook"),
        };
        if (_stitch.TurningChains == 1 && !_chainCounts)
            return chain;
        return !_chainCounts ? Phrase.Of($"{chain} (the {nth - 1} {Skipped} ch do not count as a st)")
            : nth == 2 ? Phrase.Of($"{chain} (the 1 {Skipped} ch counts as the first st)")
            : Phrase.Of($"{chain} (the {nth - 1} {Skipped} ch count as the first st)");
    }

    /// <summary>The chain that begins a row or a joined round.</summary>
    private Phrase Turn() => _chainCounts ? Phrase.Of($"Ch {_stitch.TurningChains} (counts as the first st), ")
        : _stitch.TurningChains == 1 ? Phrase.Plain("Ch 1, ")
        : Phrase.Of($"Ch {_stitch.TurningChains} (does not count as a st), ");

    private Phrase EachStitch(Term st) => _chainCounts
        ? Phrase.Of($"{Skip} first st, {st} in each st to end, the last in the top of the turning ch")
        : Phrase.Of($"{st} in each st to end");

    private Instruction Row(int number, Phrase work, PerSize<int> stitches) => new(
        Label(number), _round ? Phrase.Of($"{work}. {stitches} sts.") : Phrase.Of($"{work}, turn. {stitches} sts."));

    /// <param name="told">From row 2 on: one row that is repeated, or two that are worked in turn.</param>
    private Instruction Repeat(int told)
    {
        var from = 2 + told;
        // Nothing is left to repeat.
        if (Rows.Values.All(rows => rows < from))
        {
            return new Instruction(
                Phrase.Plain("Then"), _round ? Phrase.Of($"Fasten off after round {Rows}.") : Phrase.Of($"Fasten off after row {Rows}."));
        }
        var one = Rows.IsSame && Rows.Values[0] == from;
        return _round
            ? new Instruction(
                one ? Phrase.Of($"Round {from}") : Phrase.Of($"Rounds {from} to {Rows}"),
                told == 2
                    ? Phrase.Plain("As rounds 2 and 3 in turn, then fasten off.")
                    : Phrase.Of($"As round 2, {Stitches} sts each, then fasten off."))
            : new Instruction(
                one ? Phrase.Of($"Row {from}") : Phrase.Of($"Rows {from} to {Rows}"),
                told == 2
                    ? Phrase.Plain("As rows 2 and 3 in turn, then fasten off.")
                    : Phrase.Of($"As row 2, {Stitches} sts each, then fasten off."));
    }

    private Phrase Label(int number) => !_round ? RowLabel(number, number % 2 == 1)
        : !_turned ? Phrase.Of($"Round {number}")
        : number % 2 == 1 ? Phrase.Of($"Round {number} (RS)")
        : Phrase.Of($"Round {number} (WS)");

    private static Term Capital(string abbreviation) => new(Wording.Capital(abbreviation));
}
