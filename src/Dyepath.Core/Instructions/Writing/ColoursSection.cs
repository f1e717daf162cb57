using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>How the colours fall: what each row begins and ends with, a test strip, and a chart for every stitch count and start.</summary>
internal static class ColoursSection
{
    /// <summary>Rows of the strip that shows whether the colours come right: three of each direction.</summary>
    private const int StripRows = 6;

    /// <summary>Longest table of row starts; the motif has come round, or nearly, by then.</summary>
    private const int MostTableRows = 60;

    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(Keeping(context));
        var charts = ChartVariant.All(context);
        if (charts.Length > 1)
            blocks.Add(WhichChart(context, charts));
        foreach (var variant in charts)
        {
            blocks.Add(new Subheading(Phrase.Plain($"Chart {variant.Number}: {variant.Stitches}")));
            blocks.Add(Strip(context, variant));
            blocks.Add(RowStarts(context, variant));
            blocks.Add(Chart(context, variant));
        }
        return new Section("colours", Phrase.Plain("Colours, row by row"), blocks.ToImmutable(), NewPage: true);
    }

    private static IEnumerable<Block> Keeping(PatternContext context)
    {
        var plan = context.Plan;
        if (plan.Project.Fabric.Keeping == ColourKeeping.Counted)
        {
            yield return new Paragraph(Phrase.Plain(
                "Work each colour over exactly this many stitches, every time it comes. Where a colour would run on, work a little looser; where it would end too soon, a little tighter."));
            yield return new Bullets([.. plan.Ring.Sections.Select((length, i) =>
                Phrase.Of($"{context.Colour(i)}: {MaterialsSection.Number(ColourRing.ToUnits(length))} {UnitWord(context)}"))]);
        }
        else
        {
            yield return new Paragraph(Phrase.Plain(
                "Work evenly and let the colours fall as they come; the tables show where they should fall. Check often: no hands are even enough for long."));
        }
        var pooled = context.Pieces.First(p => p.First.Pooled).First;
        yield return new Paragraph(Shift(context, pooled));
    }

    /// <summary>What the eye follows: where a colour begins against the row two below, or the round below.</summary>
    private static Phrase Shift(PatternContext context, PiecePlan piece)
    {
        var turned = piece.Working is Working.Turned or Working.RoundsTurned;
        var shift = turned ? 2 * piece.Lean : piece.Lean;
        var below = turned ? "two rows below" : "in the round below";
        if (shift == 0)
            return Phrase.Of($"Each colour begins exactly above itself {below}.");
        var by = MaterialsSection.Number(Math.Abs(shift));
        var many = Math.Abs(shift) == 1 ? UnitWord(context, one: true) : UnitWord(context);
        return Phrase.Of($"As you work along, each colour begins {by} {many} {(shift > 0 ? "earlier" : "later")} than it did {below}.");
    }

    private static Table WhichChart(PatternContext context, ImmutableArray<ChartVariant> charts) => new(
        Phrase.Plain("Which chart to follow, and the chart row that is the piece's row 1."),
        [Phrase.Plain("Piece"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
        [.. context.Pieces.Where(p => p.First.Pooled).Select(piece => ImmutableArray.CreateRange(
            [Phrase.Plain(piece.Name), .. piece.BySize.Select(p => Phrase.Plain(ChartVariant.Place(charts, p)))]))],
        PerSizeColumns: true);

    private static Paragraph Strip(PatternContext context, ChartVariant variant)
    {
        var rows = Math.Min(StripRows, variant.Piece.Rows);
        var fabric = PieceFabric.Of(context.Plan, variant.Piece, rows);
        var runs = RowRuns.Of(fabric, rows - 1);
        var (first, last) = (runs[0], runs[^1]);
        return new Paragraph(Phrase.Of(
            $"Test strip: work {rows} rows from chart row 1. If row {rows} begins with {first.Units} of {context.Colour(first.Section)} and ends with {last.Units} of {context.Colour(last.Section)}, go on. If {context.Colour(first.Section)} comes later than that, you work tighter than the plan: go up a hook size, or work looser. If it comes earlier, do the opposite."));
    }

    private static Table RowStarts(PatternContext context, ChartVariant variant)
    {
        var fabric = PieceFabric.Of(context.Plan, variant.Piece);
        var shown = Math.Min(fabric.Rows, Math.Min(MostTableRows, RowRuns.Repeat(fabric) ?? fabric.Rows));
        var turned = fabric.Path.IsTurned;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>(shown);
        for (var row = 0; row < shown; row++)
        {
            var runs = RowRuns.Of(fabric, row);
            var face = turned ? row % 2 == 0 ? " (RS)" : " (WS)" : "";
            rows.Add(
            [
                Phrase.Plain($"{row + 1}{face}"),
                Run(context, runs[0]),
                runs.Length > 1 ? Run(context, runs[1]) : Phrase.Empty,
                Run(context, runs[^1]),
            ]);
        }
        var again = shown < fabric.Rows && RowRuns.Repeat(fabric) == shown
            ? $" After row {shown} the rows begin again as row 1."
            : shown < fabric.Rows ? $" The chart goes on to row {fabric.Rows}." : "";
        return new Table(
            Phrase.Plain($"Row starts, chart {variant.Number}: how many of which colour, in the order of work.{again}"),
            [Phrase.Plain("Row"), Phrase.Plain("begins with"), Phrase.Plain("then"), Phrase.Plain("ends with")],
            rows.ToImmutable(),
            PerSizeColumns: false);
    }

    private static Phrase Run(PatternContext context, ColourRun run) => Phrase.Of($"{run.Units} {context.Colour(run.Section)}");

    private static Figure Chart(PatternContext context, ChartVariant variant)
    {
        var fabric = PieceFabric.Of(context.Plan, variant.Piece);
        var rows = Math.Min(fabric.Rows, RowRuns.Repeat(fabric) ?? fabric.Rows);
        var path = fabric.Path;
        var columns = Enumerable.Range(0, rows).Max(r => path.FirstColumns[r] + path.Cells(r));
        var cells = fabric.Cells[..Enumerable.Range(0, rows).Sum(path.Cells)].ToImmutableArray();
        var unit = context.Plan.StitchWidth * path.StitchesPerUnit;
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
                unit,
                context.Plan.RowHeight),
            Phrase.Plain($"Chart {variant.Number}, rows 1 to {rows}{(rows < fabric.Rows ? ", then again from row 1" : "")}."),
            Phrase.Of($"{columns} {UnitWord(context)} wide and {rows} rows tall; the colours make {MotifWords.Of(variant.Piece.Motif)}. The table of row starts says the same in words."));
    }

    private static string UnitWord(PatternContext context, bool one = false) =>
        (context.Project.Fabric.Stitch.StitchesPerUnit, one) switch
        {
            (1, true) => "stitch",
            (1, false) => "stitches",
            (_, true) => "pair of stitches",
            _ => "pairs of stitches",
        };
}
