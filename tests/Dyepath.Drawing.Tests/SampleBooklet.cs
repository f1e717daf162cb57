using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Drawing.Tests;

/// <summary>A booklet written by hand, with every kind of block and picture.</summary>
internal static class SampleBooklet
{
    public static ImmutableArray<string> Sizes { get; } = ["XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"];

    public static ImmutableArray<SequenceColour> Key { get; } =
    [
        new("Wet sand", new Srgb(0xc9, 0xa8, 0x7c), "A"),
        new("Sea glass", new Srgb(0x6f, 0xa8, 0x9a), "B"),
        new("Foam", new Srgb(0xf1, 0xee, 0xe4), "C"),
        new("Deep water", new Srgb(0x1e, 0x3f, 0x5a), "D"),
    ];

    public static Edition Everyone { get; } = new(Terms.Us, Units.CentimetresThenInches, Hand.Right);

    public static ImmutableArray<TextSpan> Say(Phrase phrase) => new Wording(Booklet, Everyone).Say(phrase);

    public static Func<Phrase, ImmutableArray<TextSpan>> Saying(Booklet booklet, Edition edition) => new Wording(booklet, edition).Say;

    public static Booklet Booklet { get; } = new(
        "Tideline",
        "An unnamed designer",
        Sizes,
        Everyone,
        [
            new Section("introduction", Phrase.Plain("Before you begin"),
            [
                new OwnWords(
                    "introduction", "A boxy tunic in the colours of the shore.\nThe yarn draws the picture; your hands keep it in step."),
                new Paragraph(
                    Phrase.Of(
                        $"Work {Per(n => 61 + 6 * n)} stitches a row. {new Strong(Phrase.Of($"Count every row"))} until the picture "
                            + $"stands, then every other row. Ease: {Wide(n => 10)} in every size.")),
                new Caution(
                    Phrase.Plain(
                        "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift.")),
            ]),
            new Section("materials", Phrase.Plain("Materials"),
            [
                new Bullets(
                    [
                        Phrase.Of($"Hook of 4 mm, or the size that gives the {new Term("gauge")}."),
                        Phrase.Plain("Locking stitch markers, tapestry needle, tape measure."),
                        Phrase.Of($"Yarn: {Per(n => 5 + n / 2)} balls."),
                    ]),
                new Figure(
                    new YarnRuler(Key, [5, 4, 6, 7]), Phrase.Plain("The colour sequence, in stitches."),
                    Phrase.Plain(
                        "In the order in which the yarn runs: 5 of Wet sand (A), 4 of Sea glass (B), 6 of Foam (C), 7 of Deep water (D).")),
            ]),
            new Section("sizes", Phrase.Plain("Sizes and finished measurements"),
            [
                new Table(
                    Phrase.Plain("Finished measurements after washing."),
                    [Phrase.Of($"Size, {new UnitNames()}"), .. Sizes.Select(Phrase.Plain)],
                [
                    Row("Bust, finished", n => 92 + 9.5 * n), Row("Length", n => 58 + 1.2 * n), Row("Armhole depth", n => 17.5 + 0.9 * n),
                    Row("Neck width", n => 24 + 0.3 * n),
                ], PerSizeColumns: true),
                new Figure(
                    Schematic, Phrase.Plain("The pieces of size M to scale, before seams and edgings."),
                    Phrase.Plain("Two rectangles, front and sleeve. Arrows show which way the rows grow; heavy lines mark the openings.")),
            ]),
            new Section("front", Phrase.Plain("Front and back"),
            [
                new Subheading(Phrase.Plain("Foundation")),
                new Steps(
                [
                    new Instruction(
                        Phrase.Plain("Foundation"),
                        Phrase.Of(
                            $"Begin with the first stitch of {new ColourName(0, "Wet sand", "A")}. {new Term("ch")} "
                                + $"{Per(n => 62 + 6 * n)}.")),
                    new Instruction(
                        Phrase.Plain("Row 1 (RS)"),
                        Phrase.Of(
                            $"{new Term("sc")} in the 2nd {new Term("ch")} from the hook and in each across, turn: "
                                + $"{Per(n => 61 + 6 * n)} {new Term("sc")}.")),
                    new Instruction(Phrase.Plain("Row 2 (WS)"), Phrase.Of($"{new Term("ch")} 1, {new Term("sc")} in each across, turn.")),
                    new Instruction(
                        Phrase.Plain("Rows 3–24"),
                        Phrase.Of($"Repeat row 2. At {Wide(n => 58 + 1.2 * n)} fasten off at the {new Side(true)} edge.")),
                ]),
                new Figure(
                    Turned(67, 24), Phrase.Plain("Colour chart for 67 stitches."),
                    Phrase.Plain("Diamonds of four colours that lean half a stitch a row.")),
            ], NewPage: true),
            new Section("edging", Phrase.Plain("Edging"),
            [
                new Paragraph(Phrase.Of($"Pick up 3 in every 4 row ends, 2 extra at each corner.")),
                new Figure(
                    Edging, Phrase.Plain("Shells and picots along the hem."),
                    Phrase.Plain(
                        "A row of chains, a row of single crochet, then shells of five double crochet between slip stitches, and a "
                            + "picot.")),
            ]),
            new Section("large", Phrase.Plain("Colour chart, 119 stitches"),
            [
                new Figure(Turned(119, 72), Phrase.Plain("Colour chart for 119 stitches."), Phrase.Plain("Diamonds of four colours.")),
            ]),
        ]);

    public static SymbolChart Edging => new(
        [
            .. Enumerable.Range(0, 14).Select(i => new PlacedSymbol(StitchSymbol.Chain, i, 0)),
            .. Enumerable.Range(0, 13).Select(i => new PlacedSymbol(StitchSymbol.SingleCrochet, i, 0.6)),
            new PlacedSymbol(StitchSymbol.SlipStitch, 0, 1.5), new PlacedSymbol(StitchSymbol.Shell, 3, 1.5),
            new PlacedSymbol(StitchSymbol.SlipStitch, 6, 1.5),
            new PlacedSymbol(StitchSymbol.Shell, 9, 1.5), new PlacedSymbol(StitchSymbol.SlipStitch, 12, 1.5),
            new PlacedSymbol(StitchSymbol.Picot, 6, 2),
            new PlacedSymbol(StitchSymbol.HalfDoubleCrochet, -1, 1.5), new PlacedSymbol(StitchSymbol.DoubleCrochet, 13.5, 1.5, 10),
            new PlacedSymbol(StitchSymbol.TrebleCrochet, 14.5, 1.5), new PlacedSymbol(StitchSymbol.ReverseSingleCrochet, -2, 1.5),
        ],
        [new PlacedLabel("1", 13.4, 0.7), new PlacedLabel("2", -3, 1.6)]);

    public static Schematic Schematic => new(
    [
        new SchematicPiece(Phrase.Plain("front"), [new(0, 0), new(52, 0), new(52, 60), new(0, 60)],
            [
                new Dimension(new(0, 60), new(52, 60), -4, Phrase.Plain("a")), new Dimension(new(0, 0), new(0, 60), -4, Phrase.Plain("b")),
                new Dimension(new(13, 0), new(39, 0), 3, Phrase.Of($"c {Length.FromCentimetres(26)}")),
            ],
            [
                new SchematicMark(new(13, 0), new(39, 0), Phrase.Plain("neck")),
                new SchematicMark(new(0, 0), new(0, 20), Phrase.Plain("armhole")),
                new SchematicMark(new(52, 0), new(52, 20), Phrase.Plain("armhole")),
            ],
            new(0, -1)),
        new SchematicPiece(Phrase.Plain("sleeve"), [new(0, 0), new(40, 0), new(40, 30), new(0, 30)],
            [
                new Dimension(new(0, 30), new(40, 30), -4, Phrase.Of($"d {Wide(n => 36 + 2 * n)}")),
                new Dimension(new(0, 0), new(0, 30), -4, Phrase.Plain("e")),
            ],
            [],
            new(-1, 0)),
    ]);

    /// <summary>Single crochet turned, no turn cost, sequence 5, 4, 6, 7 (22 stitches).</summary>
    public static ColourChart Turned(int stitches, int rows, Working working = Working.Turned)
    {
        byte[] sequence =
        [
            .. Enumerable.Repeat((byte)0, 5), .. Enumerable.Repeat((byte)1, 4), .. Enumerable.Repeat((byte)2, 6),
            .. Enumerable.Repeat((byte)3, 7),
        ];
        var cells = ImmutableArray.CreateBuilder<byte>(stitches * rows);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < stitches; column++)
            {
                var backwards = working is Working.Turned or Working.RoundsTurned && row % 2 == 1;
                cells.Add(sequence[(row * stitches + (backwards ? stitches - 1 - column : column)) % sequence.Length]);
            }
        }
        return new ColourChart(
            Key, working, stitches, rows, cells.ToImmutable(), Length.FromCentimetres(10 / 14.0), Length.FromCentimetres(10 / 16.0))
        {
            RowUnits = [.. Enumerable.Repeat(stitches, rows)],
            RowOffsets = [.. Enumerable.Repeat(0, rows)],
            FirstRow = 1,
        };
    }

    private static PerSize<int> Per(Func<int, int> value) => new([.. Sizes.Select((_, n) => value(n))]);

    private static PerSize<Length> Wide(Func<int, double> centimetres) =>
        new([.. Sizes.Select((_, n) => Length.FromCentimetres(centimetres(n)))]);

    private static ImmutableArray<Phrase> Row(string name, Func<int, double> centimetres) =>
        [Phrase.Plain(name), .. Sizes.Select((_, n) => new Phrase([new Bare(new Measure(new([Length.FromCentimetres(centimetres(n))])))]))];
}
