using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Drawing.Tests;

/// <summary>A booklet whose every word tries to be something else, or to be too long.</summary>
internal static class HostileBooklet
{
    public const string Attack = "<script>alert(1)</script> & \"quoted\" 'single' \ud800 \u0000\u001b\u202Etxet\u202C ]]> --> \u200F漢字 🧶 ";

    public static Booklet Booklet { get; } = Make();

    private static Booklet Make()
    {
        var words = Phrase.Plain(Attack);
        var wide = Phrase.Plain(new string('W', 400));
        var chart = SampleBooklet.Turned(10, 4) with { Key = [.. SampleBooklet.Key.Select(c => new SequenceColour(Attack, c.Colour, "<&"))] };
        return new Booklet(
            Attack + new string('T', 300),
            Attack,
            [Attack, "B"],
            SampleBooklet.Everyone,
            [
                new Section("\"><script>", words,
                [
                    new Subheading(words), new Paragraph(words), new Paragraph(wide), new OwnWords("notes", Attack + "\n\n" + Attack),
                    new Caution(words), new Bullets([words, wide]),
                    new Steps([new Instruction(words, wide), new Instruction(wide, words), new Instruction(Phrase.Empty, Phrase.Empty)]),
                    new Table(
                        words, [words, words, words],
                        [
                            [wide, words, words], [words, words, wide],
                            [Phrase.Plain(string.Concat(Enumerable.Repeat("tall cell ", 3000))), words, words],
                        ],
                        PerSizeColumns: true),
                    new Figure(chart, words, words),
                    new Figure(new YarnRuler([new SequenceColour(Attack, new Srgb(1, 2, 3), Attack)], [0.001]), words, words),
                    new Figure(new YarnRuler(chart.Key, [100000, 1, 1, 1]), words, words),
                    new Figure(
                        new SymbolChart([new PlacedSymbol(StitchSymbol.Chain, 0, 0)], [new PlacedLabel(Attack, 500, 500)]), words, words),
                    new Figure(
                        new Schematic(
                            [
                                new SchematicPiece(
                                    words, [new(0, 0), new(0.1, 0), new(0.1, 500)],
                                    [new Dimension(new(0, 0), new(0.1, 0), 1, wide), new Dimension(new(0, 0), new(0, 0), 1, words)],
                                    [new SchematicMark(new(0, 0), new(0.1, 0), words)], new(0, 0)),
                            ]),
                        words, words),
                ]),
                new Section("\"><script>", Phrase.Of($"{new Strong(wide)} {Length.FromCentimetres(3)}"), []),
            ]);
    }
}
