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

    private string RowWord => _round ? "Round" : "Row";

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
        return new Instruction(Phrase.Of($"{RowWord} {row + 1}{Face(row + 1)}"), text);
    }

    public Instruction Foundation() => new(
        Phrase.Plain("Foundation"),
        _round
            ? Phrase.Of($"Ch {_piece.Each(p => p.FoundationChains)}. Without twisting the chain, join with {SlipStitch} in its first ch to form a ring.")
            : Phrase.Of($"Ch {_piece.Each(p => p.FoundationChains)}."));

    /// <summary>The first row of a rectangle, into the foundation.</summary>
    public Phrase FirstRow() => Phrase.Of($"{Capital(_stitch.Abbreviation)} in {FirstChain()} and in each ch to end");

    /// <summary>A row that is worked to its end.</summary>
    public Phrase EachRow() => Phrase.Of($"{Turn()}{EachStitch(new Term(_stitch.Abbreviation))}");

    /// <summary>A row that stops short.</summary>
    public Phrase LeavingRow(int left)
    {
        var (st, last) = (new Term(_stitch.Abbreviation), left == 1 ? Phrase.Plain("last st") : Phrase.Plain(FormattableString.Invariant($"last {left} sts")));
        var these = left == 1 ? "leave it unworked" : "leave these unworked";
        return _chainCounts
            ? Phrase.Of($"{Turn()}{Skip} first st, {st} in each st to {last} ({(left == 1 ? "the turning ch" : "the turning ch counts as one")}), {these}")
            : Phrase.Of($"{Turn()}{st} in each st to {last}, {these}");
    }

    /// <summary>A row that stops short by as many stitches as stand elsewhere under N.</summary>
    public Phrase LeavingSomeRow()
    {
        var st = new Term(_stitch.Abbreviation);
        return _chainCounts
            ? Phrase.Of($"{Turn()}{Skip} first st, {st} in each st to last N sts (the turning ch counts as one), leave these unworked")
            : Phrase.Of($"{Turn()}{st} in each st to last N sts, leave these unworked");
    }

    /// <summary>A row that goes on over as many stitches as stand elsewhere under N.</summary>
    public Phrase OverSomeRow() =>
        Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in each of the next N sts left unworked{(_chainCounts ? " (a turning ch counts as one)" : "")}");

    /// <summary>A row that goes on over chains that wait at its end.</summary>
    public Phrase OverChainsRow(int chains) => chains == 1
        ? Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in the first ch")
        : Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in each of the {chains} ch");

    /// <summary>A row that goes on over stitches that shorter rows left.</summary>
    /// <param name="chain">A turning chain is among them.</param>
    public Phrase OverStandingRow(int standing, bool chain)
    {
        var what = standing == 1 ? "the next st" : FormattableString.Invariant($"each of the next {standing} sts");
        var counts = chain && _chainCounts ? " (a turning ch counts as one)" : "";
        return Phrase.Of($"{EachRow()}, then {new Term(_stitch.Abbreviation)} in {what} left unworked{counts}");
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
        steps.Add(Row(1, Phrase.Of($"{Capital(_stitch.Abbreviation)} in {FirstChain()} and in each ch to end"), Stitches));
        steps.Add(Row(2, _chainCounts
            ? Phrase.Of($"{Turn()}{st} in first st, {st} in each st to end, the last in the top of the turning ch")
            : Phrase.Of($"{Turn()}2 {st} in first st, {st} in each st to end"), wider));
        steps.Add(Row(3, _chainCounts
            ? Phrase.Of($"{Turn()}{Skip} first st, {st} in each st to the turning ch, which is left unworked")
            : Phrase.Of($"{Turn()}{st} in each st to last st, which is left unworked"), Stitches));
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
        steps.Add(Row(2, Phrase.Of($"{Turn()}{Sc} in first {Sc}, {Sc} in next ch-1 space, *ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space; rep from * to last {Sc}, {Sc} in last {Sc}"), Stitches));
        steps.Add(Row(3, Phrase.Of($"{Turn()}{Sc} in first {Sc}, *ch 1, {Skip} next {Sc}, {Sc} in next ch-1 space; rep from * to last 2 {Sc}, ch 1, {Skip} next {Sc}, {Sc} in last {Sc}"), Stitches));
        steps.Add(Repeat(2));
    }

    private void AddRounds(ImmutableArray<Instruction>.Builder steps)
    {
        var st = new Term(_stitch.Abbreviation);
        var close = Close();
        var spiral = _piece.First.Working == Working.Spiral;
        steps.Add(Row(1, spiral
            ? Phrase.Of($"{Capital(_stitch.Abbreviation)} in each ch around{close}")
            : Phrase.Of($"{Lift("ch")}{st} in each ch around{close}"), Stitches));
        steps.Add(Row(2, spiral
            ? Phrase.Of($"{Capital(_stitch.Abbreviation)} in each st around, moving the marker up")
            : Phrase.Of($"{Lift("st")}{st} in each st around{close}"), Stitches));
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
            steps.Add(Row(1, Phrase.Of($"*{Sc} in next ch, ch 1, {Skip} next ch; rep from * to last ch, {Sc} in last ch{Close()}"), Stitches));
            steps.Add(Row(2, Phrase.Of($"*{pair}; rep from * to last {Sc}, ch 1, {Skip} next {Sc}, moving the marker up"), Stitches));
            steps.Add(Row(3, Phrase.Of($"{new Term("Sc")} in first ch-1 space, *{pair}; rep from * around, moving the marker up"), Stitches));
            steps.Add(Repeat(2));
            return;
        }
        var plain = Phrase.Of($"*{Sc} in next ch-1 space, ch 1, {Skip} next {Sc}; rep from * around{Close()}");
        steps.Add(Row(1, Phrase.Of($"Ch 1, *{Sc} in next ch, ch 1, {Skip} next ch; rep from * around{Close()}"), Stitches));
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

    private Phrase Close() => _piece.First.Working switch
    {
        Working.Spiral => Phrase.Plain(", do not join; mark the first st"),
        Working.RoundsTurned => Phrase.Of($", join with {SlipStitch} {Joining()}, turn"),
        _ => Phrase.Of($", join with {SlipStitch} {Joining()}"),
    };

    /// <summary>The chain that begins a joined round; where it is the first stitch, it stands in the place of one.</summary>
    private Phrase Lift(string below) => _chainCounts ? Phrase.Of($"{Chains()}, {Skip} first {below}, ") : Phrase.Of($"{Chains()}, ");

    private string Joining() => _chainCounts ? "in top of beginning ch" : "in first st";

    private Phrase FirstChain()
    {
        var nth = _stitch.FirstStitchInChain;
        var ordinal = nth switch { 2 => "2nd", 3 => "3rd", _ => $"{nth}th" };
        if (_stitch.TurningChains == 1 && !_chainCounts)
            return Phrase.Of($"{ordinal} ch from hook");
        return _chainCounts
            ? Phrase.Of($"{ordinal} ch from hook (the {nth - 1} {Skipped} ch {(nth == 2 ? "counts" : "count")} as the first st)")
            : Phrase.Of($"{ordinal} ch from hook (the {nth - 1} {Skipped} ch do not count as a st)");
    }

    private Phrase Chains() => _stitch.TurningChains == 1 && !_chainCounts
        ? Phrase.Plain("Ch 1")
        : Phrase.Of($"Ch {_stitch.TurningChains} ({(_chainCounts ? "counts as the first st" : "does not count as a st")})");

    private Phrase Turn() => Phrase.Of($"{Chains()}, ");

    private Phrase EachStitch(Term st) => _chainCounts
        ? Phrase.Of($"{Skip} first st, {st} in each st to end, the last in the top of the turning ch")
        : Phrase.Of($"{st} in each st to end");

    private Instruction Row(int number, Phrase work, PerSize<int> stitches) => new(
        Phrase.Of($"{RowWord} {number}{Face(number)}"),
        Phrase.Of($"{work}{(_turned && !_round ? ", turn" : "")}. {stitches} sts."));

    /// <param name="told">From row 2 on: one row that is repeated, or two that are worked in turn.</param>
    private Instruction Repeat(int told)
    {
        var (from, row) = (2 + told, RowWord.ToLowerInvariant());
        // Nothing is left to repeat.
        if (Rows.Values.All(rows => rows < from))
            return new Instruction(Phrase.Plain("Then"), Phrase.Of($"Fasten off after {row} {Rows}."));
        return new Instruction(
            Rows.IsSame && Rows.Values[0] == from ? Phrase.Plain(FormattableString.Invariant($"{RowWord} {from}")) : Phrase.Of($"{RowWord}s {from} to {Rows}"),
            told == 2
                ? Phrase.Plain($"As {row}s 2 and 3 in turn, then fasten off.")
                : Phrase.Of($"As {row} 2, {Stitches} sts each, then fasten off."));
    }

    private string Face(int number) => !_turned ? "" : number % 2 == 1 ? " (RS)" : " (WS)";

    private static Term Capital(string abbreviation) => new(Wording.Capital(abbreviation));
}
