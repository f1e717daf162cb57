using Dyepath.Core.Reading;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>Rows written by hand, with the counts that a maker gets from them.</summary>
public class RowCounterTests
{
    [Theory]
    [InlineData("Sc in 2nd ch from hook and in each ch to end, turn", 58, 57)]
    [InlineData("Ch 1, sc in each st to end, turn", 57, 57)]
    [InlineData("Ch 1, 2 sc in first st, sc in each st to end, turn", 57, 58)]
    [InlineData("Ch 1, sc in each st to last st, which is left unworked, turn", 58, 57)]
    [InlineData("Dc in 4th ch from hook (the 3 skipped ch count as the first st) and in each ch to end, turn", 59, 57)]
    [InlineData("Ch 3 (counts as the first st), skip first st, dc in each st to end, the last in the top of the turning ch, turn", 57, 57)]
    [InlineData("Ch 3 (counts as the first st), dc in first st, dc in each st to end, the last in the top of the turning ch, turn", 57, 58)]
    [InlineData("Ch 3 (counts as the first st), skip first st, dc in each st to the turning ch, which is left unworked, turn", 58, 57)]
    [InlineData("Hdc in 3rd ch from hook (the 2 skipped ch do not count as a st) and in each ch to end, turn", 59, 57)]
    [InlineData("Ch 2 (does not count as a st), hdc in each st to end, turn", 57, 57)]
    [InlineData("Sc in 2nd ch from hook, *ch 1, skip next ch, sc in next ch; rep from * to end, turn", 58, 57)]
    [InlineData("Sc in 2nd ch from hook, *ch 1, skip next ch, sc in next ch; rep from * to last ch, sc in last ch, turn", 57, 56)]
    [InlineData(
        "Ch 1, sc in first sc, sc in next ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * to last sc, sc in last sc, "
            + "turn",
        57, 57)]
    [InlineData(
        "Ch 1, sc in first sc, *ch 1, skip next sc, sc in next ch-1 space; rep from * to last 2 sc, ch 1, skip next sc, sc in last sc, "
            + "turn",
        57, 57)]
    [InlineData("Ch 1, sc in each ch around, join with sl st in first st", 88, 88)]
    [InlineData("Ch 1, *sc in next ch, ch 1, skip next ch; rep from * around, join with sl st in first st", 88, 88)]
    [InlineData(
        "Ch 2 (counts as a ch-1 space), skip first sc, sc in next ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * around, "
            + "join with sl st in first ch",
        88, 88)]
    [InlineData("Ch 1, *sc in next ch-1 space, ch 1, skip next sc; rep from * around, join with sl st in first st, turn", 88, 88)]
    [InlineData("*Sc in next ch, ch 1, skip next ch; rep from * to last ch, sc in last ch, do not join; mark the first st", 87, 87)]
    [InlineData(
        "*ch 1, skip next sc, sc in next ch-1 space; rep from * to last sc, ch 1, skip next sc, moving the marker up", 87, 87)]
    [InlineData("Sc in first ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * around, moving the marker up", 87, 87)]
    [InlineData("Dc in 2nd ch from hook and in each ch to end, turn", 58, 57)]
    [InlineData("Ch 1, dc in first dc, *ch 1, miss next dc, dc in next ch-1 space; rep from * to last dc, dc in last dc, turn", 56, 56)]
    [InlineData("Ch 2 (does not count as a st), hdc in each st to last st, leave it unworked, turn", 57, 56)]
    [InlineData("Ch 3 (counts as the first st), skip first st, dc in each st to last st (the turning ch), leave it unworked, turn", 57, 56)]
    [InlineData("Ch 2 (does not count as a st), hdc in each st to end, then hdc in the first ch, turn", 57, 58)]
    [InlineData("Ch 2 (does not count as a st), hdc in each st to end, then hdc in each of the 3 ch, turn", 57, 60)]
    public void Words_make_the_stitches_that_a_maker_makes(string words, int below, int made) =>
        Assert.Equal((made, null), RowCounter.Follow(words, below));

    [Theory]
    [InlineData("Ch 1, sc in first st, turn", 10)]
    [InlineData("Ch 2 (does not count as a st), hdc in each st to last st, turn", 57)]
    [InlineData("Ch 1, sc in next 3 mountains, turn", 10)]
    [InlineData("Sc in 2nd ch from hook, *ch 1, skip next ch, sc in next ch; rep from * to end, turn", 57)]
    [InlineData("Ch 1, *sc in next ch, ch 1, skip next ch; rep from * around, join with sl st in first st", 87)]
    [InlineData("Sc in first ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * around, moving the marker up", 88)]
    public void Words_that_do_not_come_out_are_said_to_be_stuck(string words, int below)
    {
        var (stitches, stuck) = RowCounter.Follow(words, below);
        Assert.Null(stitches);
        Assert.NotNull(stuck);
    }
}
