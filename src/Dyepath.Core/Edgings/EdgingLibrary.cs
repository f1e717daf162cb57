using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Edgings;

/// <summary>
/// The edgings that ship. Multiples and stitches are the trade's common ones; depths follow the heights of the stitches
/// (half double 1.45, double 1.85 row heights of single crochet, from the published gauges) and yarn the one measured
/// strip (half double 1.48, double 1.92, chain 0.48 of a single crochet). Slip stitch 0.5 is from memory.
/// </summary>
public static class EdgingLibrary
{
    private const double Chain = FabricStitch.ChainInSingleCrochet;
    private const double SlipStitch = 0.5;
    private static readonly double Double = FabricStitch.DoubleCrochet.YarnInSingleCrochet;
    private static readonly double DoubleHeight = FabricStitch.DoubleCrochet.HeightOverWidth / FabricStitch.SingleCrochet.HeightOverWidth;

    private static Term Sc => new("sc");

    private static Term Dc => new("dc");

    private static Term SlSt => new("sl st");

    private static Term Skip => new("skip");

    public static ImmutableArray<Edging> All { get; } = [Band(), Reverse(), Picot(), Shell(), Rib()];

    /// <summary>Finds an edging by its id, letter case respected.</summary>
    public static bool TryFind(string id, [NotNullWhen(true)] out Edging? edging)
    {
        edging = All.FirstOrDefault(e => e.Id == id);
        return edging is not null;
    }

    private static Edging Band() => new(
        "sc", Phrase.Of($"plain {Sc} band"), 1, 0, 3, 1, 1, 1, 1, 1, false,
        [
            new(Phrase.Plain("Round 1"), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}.")),
            new(Phrase.Plain("Every further round"), Phrase.Of($"Ch 1, {Sc} in each {Sc} around; {SlSt} in the first {Sc}.")),
        ],
        Rows(Row(StitchSymbol.SingleCrochet, 0, 8), Row(StitchSymbol.SingleCrochet, 1, 8)));

    private static Edging Reverse() => new(
        "corded", Phrase.Of($"corded edge (reverse {Sc})"), 1, 0, 2, 1, 0.7, 1, 1.15, 1, false,
        [
            new(Phrase.Plain("Round 1"), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}.")),
            new(Phrase.Plain("Last round"),
                Phrase.Of($"Without turning, ch 1, reverse {Sc} in each {Sc} around, going back the way you came; {SlSt} in the first of them.")),
        ],
        Rows(Row(StitchSymbol.SingleCrochet, 0, 8), Row(StitchSymbol.ReverseSingleCrochet, 1, 8)));

    private static Edging Picot() => new(
        "picot", Phrase.Plain("picot edge"), 3, 0, 2, 1, 1.4, 1, 1 + (3 * Chain + SlipStitch) / 3, 1, true,
        [
            new(Phrase.Plain("Round 1"), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}.")),
            new(Phrase.Plain("Last round"),
                Phrase.Of($"Ch 1, * {Sc} in each of the next 3 {Sc}, ch 3, {SlSt} in the {Sc} just made; repeat from * around; {SlSt} in the first {Sc}.")),
        ],
        Rows(
            Row(StitchSymbol.SingleCrochet, 0, 6), Row(StitchSymbol.SingleCrochet, 1, 6),
            [new(StitchSymbol.Picot, 2, 2), new(StitchSymbol.Picot, 5, 2)]));

    private static Edging Shell() => new(
        "shell", Phrase.Plain("shell edge"), 6, 0, 2, 1, DoubleHeight, 1, (5 * Double + 1) / 6, 1, true,
        [
            new(Phrase.Plain("Round 1"), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}.")),
            new(Phrase.Plain("Last round"),
                Phrase.Of($"Ch 1, * {Sc} in the next {Sc}, {Skip} 2 {Sc}, 5 {Dc} in the next {Sc}, {Skip} 2 {Sc}; repeat from * around; {SlSt} in the first {Sc}.")),
        ],
        Rows(
            Row(StitchSymbol.SingleCrochet, 0, 12),
            [
                new(StitchSymbol.SingleCrochet, 0, 1), new(StitchSymbol.Shell, 3, 1),
                new(StitchSymbol.SingleCrochet, 6, 1), new(StitchSymbol.Shell, 9, 1),
            ]));

    private static Edging Rib() => new(
        "rib", Phrase.Of($"sideways rib ({Sc} in the back loop)"), 2, 0, 6, 1 / FabricStitch.SingleCrochet.HeightOverWidth, 1, 1.1, 1,
        0.75, false,
        [
            new(Phrase.Plain("Round 1"),
                Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}. Ch 1 for every further round, and 1 more.")),
            new(Phrase.Plain("Rib row 1"),
                Phrase.Of($"{Sc} in the 2nd ch and in each ch to the edge, {SlSt} in each of the next 2 {Sc} of round 1, turn.")),
            new(Phrase.Plain("Rib row 2"), Phrase.Of($"{Skip} the 2 {SlSt}, {Sc} in the back loop of each {Sc} to the end, ch 1, turn.")),
            new(Phrase.Plain("Rib row 3"),
                Phrase.Of($"{Sc} in the back loop of each {Sc} to the edge, {SlSt} in each of the next 2 {Sc} of round 1, turn. Repeat rib rows 2 and 3 around; sew the last row to the first.")),
        ],
        new SymbolChart(
            [
                .. Enumerable.Range(0, 8).Select(i => new PlacedSymbol(StitchSymbol.SingleCrochet, i, 0)),
                .. from x in Enumerable.Range(0, 8) from y in Enumerable.Range(1, 5) select new PlacedSymbol(
                    StitchSymbol.SingleCrochet, x, y, 90),
            ],
            [new PlacedLabel("back loop", 9, 3)]));

    private static SymbolChart Rows(params IEnumerable<PlacedSymbol>[] rows) =>
        new([.. rows.SelectMany(r => r)], [.. Enumerable.Range(0, 2).Select(r => new PlacedLabel($"{r + 1}", -1.5, r))]);

    private static IEnumerable<PlacedSymbol> Row(StitchSymbol symbol, int row, int stitches) =>
        Enumerable.Range(0, stitches).Select(i => new PlacedSymbol(symbol, i, row));
}
