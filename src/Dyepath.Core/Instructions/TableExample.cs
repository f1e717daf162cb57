using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>How a table of row starts is read, by the first two rows of the first chart.</summary>
internal static class TableExample
{
    public static IEnumerable<Block> Write(PatternContext context)
    {
        var chart = context.Charts[0];
        var fabric = chart.Piece.Shape?.Parts[0].Fabric ?? PieceFabric.Of(context.Plan, chart.Piece, 2);
        if (fabric.Rows < 2 || RowRuns.Of(fabric, 0) is not [var first, var second, .., var last])
            yield break;
        var word = context.RowWord;
        yield return new ForSizes(chart.Sizes,
        [
            new Subheading(Phrase.Plain($"How to read the {word} starts")),
            new Paragraph(Phrase.Of(
                $"For instance chart {chart.Number}, {word} 1: it begins with {Units(context, first)} and {Units(context, second)}, the colours go on whole in their order, and the {word} ends with {Units(context, last)}.{Next(context, fabric, last)} The charts show every {context.UnitWord(one: true)} between. Where what you have worked differs from the table, the {word} before it went wrong, or this one did: look there.")),
        ]);
    }

    /// <summary>The colour that the row's end parts, where the next row has the rest of it.</summary>
    private static Phrase Next(PatternContext context, Fabric fabric, ColourRun last)
    {
        var next = RowRuns.Of(fabric, 1)[0];
        return next.Section == last.Section && next.Units + last.Units == context.Plan.Sequence.UnitsIn(next.Section)
            ? Phrase.Of($" {Wording.Capital(context.RowWord)} 2 begins with the rest of that colour: {Units(context, next)}, {MaterialsSection.Number(next.Units + last.Units)} with the {Number(context, last.Units)} before the {(fabric.Path.IsTurned ? "turn" : "join")}.")
            : Phrase.Empty;
    }

    private static string Number(PatternContext context, int units) => units == 1 ? "one" : $"{units} {context.UnitWord()}";

    private static Phrase Units(PatternContext context, ColourRun run) =>
        Phrase.Of($"{run.Units} {context.UnitWord(one: run.Units == 1)} of {context.Colour(run.Section)}");
}
