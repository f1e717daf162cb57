using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>
/// How a table of row starts is read, by two rows of the first chart: the first with three runs of colour or more, and the one after it.
/// </summary>
internal static class TableExample
{
    public static IEnumerable<Block> Write(PatternContext context)
    {
        var chart = context.Charts[0];
        var fabric = chart.Piece.Shape?.Parts[0].Fabric ?? PieceFabric.Of(context.Plan, chart.Piece, 2);
        var row = 0;
        while (row < fabric.Rows - 1 && RowRuns.Of(fabric, row).Length < 3)
            row++;
        if (row >= fabric.Rows - 1 || RowRuns.Of(fabric, row) is not [var first, var second, .., var last])
            yield break;
        var (begin, then, end) = (Units(context, first), Units(context, second), Units(context, last));
        var next = Next(context, fabric, row, last);
        yield return new ForSizes(chart.Sizes,
        [
            new Subheading(Phrase.Plain(context.InRounds ? "How to read the round starts" : "How to read the row starts")),
            new Paragraph(context.InRounds
                ? Phrase.Of($"For instance chart {chart.Number}, round {row + 1}: it begins with {begin} and {then}, the colours go on whole in their order, and the round ends with {end}.{next} The charts show every {context.UnitWord(one: true)} between. Where what you have worked differs from the table, the round before it went wrong, or this one did: look there.")
                : Phrase.Of($"For instance chart {chart.Number}, row {row + 1}: it begins with {begin} and {then}, the colours go on whole in their order, and the row ends with {end}.{next} The charts show every {context.UnitWord(one: true)} between. Where what you have worked differs from the table, the row before it went wrong, or this one did: look there.")),
        ]);
    }

    /// <summary>The colour that the row's end parts, where the next row has the rest of it.</summary>
    private static Phrase Next(PatternContext context, Fabric fabric, int row, ColourRun last)
    {
        var next = RowRuns.Of(fabric, row + 1)[0];
        var all = next.Units + last.Units;
        if (next.Section != last.Section || all != context.Plan.Sequence.UnitsIn(next.Section))
            return Phrase.Empty;
        var with = (fabric.Path.IsTurned, last.Units) switch
        {
            (true, 1) => Phrase.Of($"{all} with the one before the turn"),
            (true, _) => Phrase.Of($"{all} with the {last.Units} {context.UnitWord()} before the turn"),
            (false, 1) => Phrase.Of($"{all} with the one before the join"),
            _ => Phrase.Of($"{all} with the {last.Units} {context.UnitWord()} before the join"),
        };
        return context.InRounds
            ? Phrase.Of($" Round {row + 2} begins with the rest of that colour: {Units(context, next)}, {with}.")
            : Phrase.Of($" Row {row + 2} begins with the rest of that colour: {Units(context, next)}, {with}.");
    }

    private static Phrase Units(PatternContext context, ColourRun run) =>
        Phrase.Of($"{run.Units} {context.UnitWord(one: run.Units == 1)} of {context.Colour(run.Section)}");
}
