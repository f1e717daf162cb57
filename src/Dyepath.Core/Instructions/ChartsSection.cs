using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Instructions;

/// <summary>A table of row starts and a colour chart for every stitch count and start.</summary>
internal static class ChartsSection
{
    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var turned = context.Pieces.First(p => p.First.Pooled).First.Working is Working.Turned or Working.RoundsTurned;
        var over = context.HasTurnedOver ? " The right side is the side that faces you in odd-numbered rows; of a piece that is turned over it comes to lie inside, as stands beside its chart." : "";
        blocks.Add(new Paragraph((turned, context.InRounds) switch
        {
            (true, true) => Phrase.Of($"Charts show the right side, round 1 at the bottom. Read right-side rounds from {new Side(true)} to {new Side(false)}, wrong-side rounds from {new Side(false)} to {new Side(true)}; the arrows show where each begins.{over}"),
            (true, false) => Phrase.Of($"Charts show the right side, row 1 at the bottom. Read right-side rows from {new Side(true)} to {new Side(false)}, wrong-side rows from {new Side(false)} to {new Side(true)}; the arrows show where each begins.{over}"),
            _ => Phrase.Of($"Charts show the right side, round 1 at the bottom. Read every round from {new Side(true)} to {new Side(false)}."),
        }));
        blocks.AddRange(TableExample.Write(context));
        var drawn = BookletSize.Drawn(context);
        if (BookletSize.TooLarge(context, context.Project.Edition) is { } tooLarge)
            blocks.Add(new Caution(Phrase.Plain(tooLarge.Text)));
        foreach (var chart in context.Charts)
        {
            context.Effort.Spend(1_000 + chart.Cells);
            blocks.Add(new ForSizes(chart.Sizes,
            [
                new Subheading(Phrase.Of($"Chart {chart.Number}: {chart.Stitches}{new InAllSizes(Phrase.Of($" ({chart.UsedBy})"))}")),
                .. Outside(context, chart),
                .. ColourShift.With(context, chart),
                RowStarts(context, chart),
                .. drawn(chart) ? ImmutableArray.Create<Block>(Chart(context, chart)) : [],
            ]));
        }
        return new Section("charts", Phrase.Plain("Charts and row starts"), blocks.ToImmutable(), NewPage: true);
    }

    /// <summary>
    /// Pieces that are worn with the chart's other side outside: beside the chart, which shows the side that is then inside.
    /// </summary>
    private static IEnumerable<Block> Outside(PatternContext context, ChartVariant chart)
    {
        var turned = chart.Uses.Where(u => context.Plan.Sizes.First(s => s.Name == u.Size)[u.Piece].WrongSideOut);
        foreach (var (pieces, sizes) in ChartVariant.By(turned))
        {
            yield return new ForSizes(sizes,
            [
                new Paragraph(Phrase.Of(
                    $"Turned over{new InAllSizes(Phrase.Of($"{ChartVariant.SizesOf(context.Plan, sizes)}"))}: {pieces}. What this chart and this table call the right side is inside there; seen from outside, the colours lie as this chart in a mirror.")),
            ]);
        }
    }

    /// <summary>Rows that are worked without cutting the yarn, and then those of each part that is joined on.</summary>
    private static Table ShapedRowStarts(PatternContext context, ChartVariant variant)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        foreach (var stretch in PieceFabric.Stretches(context.Plan, variant.Piece))
        {
            var fabric = Fabric.Work(context.Plan.Sequence.Ring, stretch.Path);
            for (var row = 0; row < fabric.Rows; row++)
            {
                var stitches = fabric.Path.RowStitches[row];
                rows.Add(
                [
                    .. Starts(context, fabric, row, stretch.FirstRow + row, stretch.Index == 0 ? null : PartNames.Of(stretch.Parts[0])),
                    row > 0 && fabric.Path.RowStitches[row - 1] != stitches ? new([new Strong(Phrase.Of($"now {stitches}"))]) : Phrase.Of($"{stitches}"),
                ]);
            }
        }
        return new Table(
            Phrase.Of($"Row starts of chart {variant.Number}, in the order of work, by the symbols of the key. The last column says how many stitches the row has; “now” marks where that changes."),
            [Phrase.Plain("Row"), Phrase.Plain("begins with"), Phrase.Plain("then"), Phrase.Plain("ends with"), Phrase.Plain("stitches")],
            rows.ToImmutable(),
            PerSizeColumns: false)
        {
            Ticks = 1,
        };
    }

    /// <summary>Boxes that a row has room for.</summary>
    private const int MostTicks = 4;

    /// <param name="number">Of the row in the piece, from 0.</param>
    /// <param name="part">Of a shaped piece; null where it is the first.</param>
    private static ImmutableArray<Phrase> Starts(PatternContext context, Fabric fabric, int row, int number, string? part = null)
    {
        var runs = RowRuns.Of(fabric, row);
        var label = !fabric.Path.IsTurned ? Phrase.Of($"{number + 1}")
            : number % 2 == 0 ? Phrase.Of($"{number + 1} (RS)") : Phrase.Of($"{number + 1} (WS)");
        return
        [
            part is null ? label : Phrase.Of($"{label}, {part}"),
            Run(context, runs[0]),
            // No stitch is told twice.
            runs.Length > 2 ? Run(context, runs[1]) : Phrase.Plain("–"),
            runs.Length > 1 ? Run(context, runs[^1]) : Phrase.Plain("–"),
        ];
    }

    private static Table RowStarts(PatternContext context, ChartVariant variant)
    {
        if (variant.Piece.Shape is not null)
            return ShapedRowStarts(context, variant);
        var path = PieceFabric.PathOf(context.Plan, variant.Piece);
        var inRows = variant.Piece.Working == Working.Turned;
        var shown = variant.DrawnRows;
        var fabric = PieceFabric.Of(context.Plan, variant.Piece, shown);
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>(shown);
        for (var row = 0; row < shown; row++)
            rows.Add(Starts(context, fabric, row, row));
        var again = shown == path.Rows ? Phrase.Empty
            : inRows ? Phrase.Of($" After row {shown} they begin again as row 1.") : Phrase.Of($" After round {shown} they begin again as round 1.");
        return new Table(
            inRows
                ? Phrase.Of($"Row starts of chart {variant.Number}, in the order of work, by the symbols of the key.{again}")
                : Phrase.Of($"Round starts of chart {variant.Number}, in the order of work, by the symbols of the key.{again}"),
            [Phrase.Plain(inRows ? "Row" : "Round"), Phrase.Plain("begins with"), Phrase.Plain("then"), Phrase.Plain("ends with")],
            rows.ToImmutable(),
            PerSizeColumns: false)
        {
            Ticks = Math.Min(MostTicks, (path.Rows + shown - 1) / shown),
        };
    }

    private static Phrase Run(PatternContext context, ColourRun run) => Phrase.Of($"{run.Units} {Phrase.Named(context.Key[run.Section].Symbol)}");

    /// <summary>A piece makes its motif, or where some of its rows make something else, each is said with its rows.</summary>
    private static Phrase Pictures(PatternContext context, PiecePlan piece)
    {
        var seen = new List<(MotifKind Kind, int Row)>();
        var shifts = ColourShift.Of(piece)
            .Select(s => (s.Part, s.First, s.Last, Kind: s.IsSeen ? s.Picture(context, piece) : null)).ToArray();
        foreach (var part in piece.Shape!.Parts)
        {
            var kind = piece.Motif;
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                // The first two rows are as the third one will be.
                var at = Math.Max(row, 2);
                kind = shifts.FirstOrDefault(s => s.Part == part && s.First <= at && s.Last >= at).Kind ?? kind;
                seen.Add((kind, row + 1));
            }
        }
        if (seen.All(s => s.Kind == piece.Motif))
            return Phrase.Of($"the colours make {Made(context, piece)}");
        var pictures = seen.GroupBy(s => s.Kind).Select(g => Phrase.Of($"{MotifWords.Of(g.Key)} in {RowsOf(g.Select(s => s.Row))}"));
        return Phrase.Of($"the picture: {Phrase.Join(", ", pictures)}");
    }

    /// <summary>What is seen of its motif where the piece is narrower than that.</summary>
    private static Phrase Made(PatternContext context, PiecePlan piece) => PlanFindings.IsNarrow(SharedFabric.Of(context.Plan), piece)
        ? Phrase.Of($"slanting parts of {MotifWords.Of(piece.Motif)}, which are wider than the piece") : Phrase.Plain(MotifWords.Of(piece.Motif));

    /// <summary>Such as <c>rows 1 to 14 and 40 to 52</c>.</summary>
    private static Phrase RowsOf(IEnumerable<int> rows)
    {
        var runs = new List<(int First, int Last)>();
        foreach (var row in rows.Distinct().Order())
        {
            if (runs.Count > 0 && runs[^1].Last == row - 1)
                runs[^1] = (runs[^1].First, row);
            else
                runs.Add((row, row));
        }
        var said = Phrase.Together(runs.Select(r => r.First == r.Last ? Phrase.Of($"{r.First}") : Phrase.Of($"{r.First} to {r.Last}")));
        return runs is [var one] && one.First == one.Last ? Phrase.Of($"row {said}") : Phrase.Of($"rows {said}");
    }

    /// <summary>Every row from its rightmost stitch to its leftmost; what is not worked between parts is blank.</summary>
    private static Figure ShapedChart(PatternContext context, ChartVariant variant, ShapedPiece shape)
    {
        var rows = Enumerable.Range(0, shape.Rows).Select(row => shape.Parts.Where(p => row >= p.FirstRow && row < p.FirstRow + p.Rows)
            .Select(p => (Part: p, Run: p.Outline.At(row - p.FirstRow))).OrderBy(p => p.Run.First).ToArray()).ToArray();
        var cells = ImmutableArray.CreateBuilder<byte>();
        for (var row = 0; row < rows.Length; row++)
        {
            var column = rows[row][0].Run.First;
            foreach (var (part, run) in rows[row])
            {
                for (; column < run.First; column++)
                    cells.Add(ColourChart.Blank);
                cells.AddRange(part.Fabric.Row(row - part.FirstRow));
                column = run.Last + 1;
            }
        }
        var columns = shape.LastColumn - shape.FirstColumn + 1;
        return new Figure(
            new ColourChart(
                context.Key,
                variant.Piece.Working,
                columns,
                rows.Length,
                cells.ToImmutable(),
                context.Plan.StitchWidth,
                context.Plan.RowHeight)
            {
                RowUnits = [.. rows.Select(r => r[^1].Run.Last - r[0].Run.First + 1)],
                RowOffsets = [.. rows.Select(r => 2 * (r[0].Run.First - shape.FirstColumn))],
                FirstRow = 1,
                Sideways = context.Plan.Direction == Direction.Sideways,
                Gored = !shape.Strips.IsEmpty,
            },
            Phrase.Of($"Chart {variant.Number}, rows 1 to {rows.Length}."),
            Phrase.Of($"{columns} {context.UnitWord()} wide and {rows.Length} rows tall; {Pictures(context, variant.Piece)}. Where rows stop short nothing is drawn. The table before it says the same in words."));
    }

    private static Figure Chart(PatternContext context, ChartVariant variant)
    {
        if (variant.Piece.Shape is { } shape)
            return ShapedChart(context, variant, shape);
        var rows = variant.DrawnRows;
        var fabric = PieceFabric.Of(context.Plan, variant.Piece, rows);
        var inRows = variant.Piece.Working == Working.Turned;
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
                context.Plan.StitchWidth * path.StitchesPerUnit,
                context.Plan.RowHeight)
            {
                RowUnits = [.. Enumerable.Range(0, rows).Select(path.Cells)],
                RowOffsets = [.. Enumerable.Range(0, rows).Select(r => 2 * path.FirstColumns[r] + path.DrawnHalfUnitsLeft(r))],
                FirstRow = 1,
                Repeats = repeats,
                Sideways = context.Plan.Direction == Direction.Sideways,
            },
            (inRows, repeats) switch
            {
                (true, true) => Phrase.Of($"Chart {variant.Number}, rows 1 to {rows}, then again from row 1."),
                (true, false) => Phrase.Of($"Chart {variant.Number}, rows 1 to {rows}."),
                (false, true) => Phrase.Of($"Chart {variant.Number}, rounds 1 to {rows}, then again from round 1."),
                _ => Phrase.Of($"Chart {variant.Number}, rounds 1 to {rows}."),
            },
            inRows
                ? Phrase.Of($"{columns} {context.UnitWord()} wide and {rows} rows tall; the colours make {Made(context, variant.Piece)}. The table before it says the same in words.")
                : Phrase.Of($"{columns} {context.UnitWord()} wide and {rows} rounds tall; the colours make {Made(context, variant.Piece)}. The table before it says the same in words."));
    }
}
