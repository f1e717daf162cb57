using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>A table of row starts and a colour chart for every stitch count and start.</summary>
internal static class ChartsSection
{
    /// <summary>Longest table of row starts; the motif has come round, or nearly, by then.</summary>
    private const int MostTableRows = 60;

    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var turned = context.Pieces.First(p => p.First.Pooled).First.Working is Working.Turned or Working.RoundsTurned;
        blocks.Add(new Paragraph(turned
            ? Phrase.Of($"Charts show the right side, {context.RowWord} 1 at the bottom. Read right-side {context.RowWord}s from {new Side(true)} to {new Side(false)}, wrong-side {context.RowWord}s from {new Side(false)} to {new Side(true)}; the arrows show where each begins.")
            : Phrase.Of($"Charts show the right side, round 1 at the bottom. Read every round from {new Side(true)} to {new Side(false)}.")));
        var drawn = BookletSize.Drawn(context);
        if (BookletSize.TooLarge(context, context.Project.Edition) is { } tooLarge)
            blocks.Add(new Caution(Phrase.Plain(tooLarge.Text)));
        foreach (var chart in context.Charts)
        {
            context.Effort.Spend(drawn(chart) ? 1_000 + chart.Cells : 1_000);
            blocks.Add(new ForSizes(chart.Sizes,
            [
                new Subheading(Phrase.Of($"Chart {chart.Number}: {chart.Stitches}{new InAllSizes(Phrase.Plain($" ({chart.UsedBy})"))}")),
                RowStarts(context, chart),
                .. drawn(chart) ? ImmutableArray.Create<Block>(Chart(context, chart)) : [],
            ]));
        }
        return new Section("charts", Phrase.Plain("Charts and row starts"), blocks.ToImmutable(), NewPage: true);
    }

    private static Table RowStarts(PatternContext context, ChartVariant variant)
    {
        var path = PieceFabric.PathOf(context.Plan, variant.Piece);
        var repeat = RowRuns.Repeat(path, context.Plan.Sequence.Ring);
        var word = variant.Piece.Working == Working.Turned ? "row" : "round";
        var shown = Math.Min(path.Rows, Math.Min(MostTableRows, repeat ?? path.Rows));
        var fabric = PieceFabric.Of(context.Plan, variant.Piece, shown);
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>(shown);
        for (var row = 0; row < shown; row++)
        {
            var runs = RowRuns.Of(fabric, row);
            var face = fabric.Path.IsTurned ? row % 2 == 0 ? " (RS)" : " (WS)" : "";
            rows.Add(
            [
                Phrase.Plain($"{row + 1}{face}"),
                Run(context, runs[0]),
                runs.Length > 1 ? Run(context, runs[1]) : Phrase.Plain("–"),
                Run(context, runs[^1]),
            ]);
        }
        var again = shown < path.Rows && repeat == shown
            ? $" After {word} {shown} they begin again as {word} 1."
            : shown < path.Rows ? $" The chart goes on to {word} {path.Rows}." : "";
        return new Table(
            Phrase.Plain($"{char.ToUpperInvariant(word[0])}{word[1..]} starts of chart {variant.Number}, in the order of work, by the symbols of the key.{again}"),
            [Phrase.Plain($"{char.ToUpperInvariant(word[0])}{word[1..]}"), Phrase.Plain("begins with"), Phrase.Plain("then"), Phrase.Plain("ends with")],
            rows.ToImmutable(),
            PerSizeColumns: false);
    }

    private static Phrase Run(PatternContext context, ColourRun run) => Phrase.Plain($"{run.Units} {context.Key[run.Section].Symbol}");

    private static Figure Chart(PatternContext context, ChartVariant variant)
    {
        var rows = variant.DrawnRows;
        var fabric = PieceFabric.Of(context.Plan, variant.Piece, rows);
        var word = variant.Piece.Working == Working.Turned ? "row" : "round";
        var path = fabric.Path;
        var columns = Enumerable.Range(0, rows).Max(r => path.FirstColumns[r] + path.Cells(r));
        var cells = fabric.Cells.ToImmutableArray();
        var repeats = rows < variant.Piece.Rows;
        return new Figure(
            new ColourChart(
                context.Key,
                path.Working,
                columns,
                rows,
                cells,
                [.. Enumerable.Range(0, rows).Select(path.Cells)],
                [.. Enumerable.Range(0, rows).Select(r => 2 * path.FirstColumns[r] + path.DrawnHalfUnitsLeft(r))],
                1,
                context.Plan.StitchWidth * path.StitchesPerUnit,
                context.Plan.RowHeight)
            { Repeats = repeats },
            Phrase.Plain($"Chart {variant.Number}, {word}s 1 to {rows}{(repeats ? $", then again from {word} 1" : "")}."),
            Phrase.Of($"{columns} {context.UnitWord()} wide and {rows} {word}s tall; the colours make {MotifWords.Of(variant.Piece.Motif)}. The table before it says the same in words."));
    }
}
