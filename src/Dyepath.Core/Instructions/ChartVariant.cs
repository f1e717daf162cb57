using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>A piece of some size that follows a chart, and the chart row that is its row 1.</summary>
internal sealed record ChartUse(string Size, PieceId Piece, int Row);

/// <summary>
/// One chart and the pieces that follow it. A piece whose yarn begins where the chart's does in a later row shows the same rows from
/// there on, so it shares the chart and begins at that row.
/// </summary>
/// <param name="Number">From 1.</param>
/// <param name="Piece">The tallest piece that begins at chart row 1.</param>
internal sealed record ChartVariant(Plan Plan, int Number, PiecePlan Piece, ImmutableArray<ChartUse> Uses)
{
    /// <summary>What it takes to hold one size's pieces against one chart.</summary>
    private const int StepsOfSize = 20_000;

    public Phrase Stitches => Piece.RowStitches.Length == 2
        ? Phrase.Of($"{Piece.RowStitches[0]} and {Piece.RowStitches[1]} stitches in turn")
        : Piece.Shape is not { } shape ? Phrase.Of($"{Piece.Stitches} stitches")
        : shape.ShortestRow == shape.WidestRow ? Phrase.Of($"{shape.WidestRow} stitches")
        : Phrase.Of($"{shape.ShortestRow} to {shape.WidestRow} stitches, shaped");

    public ImmutableArray<string> Sizes => [.. Uses.Select(u => u.Size).Distinct()];

    /// <summary>Rows that are drawn: all, or until they come again.</summary>
    public int DrawnRows
    {
        get
        {
            if (Piece.Shape is not null)
                return Piece.Rows;
            var path = PieceFabric.PathOf(Plan, Piece);
            return Math.Min(path.Rows, RowRuns.Repeat(path, Plan.Sequence.Ring) ?? path.Rows);
        }
    }

    /// <summary>Stitches that are drawn.</summary>
    public long Cells => (long)DrawnRows * (Piece.Shape is { } shape ? shape.LastColumn - shape.FirstColumn + 1 : Piece.RowStitches.Max());

    /// <summary>Which pieces of which sizes, such as <c>front and back, all sizes; sleeve in XS, S</c>.</summary>
    public Phrase UsedBy => Phrase.Join("; ", By(Uses).Select(by => by.Pieces + SizesOf(Plan, by.Sizes)));

    /// <summary>Pieces of the same sizes together, such as <c>front and back</c>.</summary>
    public static IEnumerable<(Phrase Pieces, ImmutableArray<string> Sizes)> By(IEnumerable<ChartUse> uses) =>
        uses.GroupBy(u => u.Piece).GroupBy(piece => string.Join(", ", piece.Select(u => u.Size)))
            .Select(g => (
                Phrase.Together(g.Select(p => Phrase.Plain(PlaceNames.Of(p.Key)))),
                g.First().Select(u => u.Size).ToImmutableArray()));

    /// <summary>What stands behind the pieces, such as <c>, all sizes</c> or <c> in XS, S</c>; nothing where there is one size.</summary>
    public static Phrase SizesOf(Plan plan, ImmutableArray<string> sizes) =>
        plan.Sizes.Length == 1 ? Phrase.Empty
        : sizes.Length == plan.Sizes.Length ? Phrase.Plain(", all sizes")
        : Phrase.Of($" in {Phrase.Join(", ", sizes.Select(Phrase.Named))}");

    public static ImmutableArray<ChartVariant> All(PatternContext context)
    {
        var charts = new List<ChartVariant>();
        foreach (var size in context.Plan.Sizes)
        {
            context.Effort.Spend(StepsOfSize * (1 + charts.Count));
            foreach (var piece in size.Pieces.Where(p => p.Pooled))
            {
                var at = charts.FindIndex(c => FirstRow(c.Plan, c.Piece, piece) is not null);
                if (at < 0)
                {
                    charts.Add(new ChartVariant(context.Plan, charts.Count + 1, piece, [new ChartUse(size.Name, piece.Id, 1)]));
                    continue;
                }
                var chart = charts[at];
                var row = FirstRow(chart.Plan, chart.Piece, piece)!.Value;
                charts[at] = chart with
                {
                    Uses = chart.Uses.Add(new ChartUse(size.Name, piece.Id, row)),
                    Piece = piece.Rows > chart.Piece.Rows
                        ? piece with { Start = chart.Piece.Start, StartSection = chart.Piece.StartSection } : chart.Piece,
                };
            }
        }
        return [.. charts];
    }

    /// <summary>The chart that a piece follows, and the chart row that is its row 1.</summary>
    public static (int Chart, int Row) Place(ImmutableArray<ChartVariant> charts, string size, PieceId piece)
    {
        var chart = charts.Single(c => c.Uses.Any(u => u.Size == size && u.Piece == piece));
        return (chart.Number, chart.Uses.Single(u => u.Size == size && u.Piece == piece).Row);
    }

    private static IEnumerable<(int FirstRow, int Rows, OutlineRun Run)> OutlinesOf(ShapedPiece shape) =>
        shape.Parts.SelectMany(p => p.Outline.Runs.Select(run => (p.FirstRow, p.Rows, run)));

    /// <summary>The chart row that shows a piece's first row; null where the chart has none.</summary>
    private static int? FirstRow(Plan plan, PiecePlan chart, PiecePlan piece)
    {
        if (chart.Working != piece.Working || chart.TurnCost != piece.TurnCost || !chart.RowStitches.SequenceEqual(piece.RowStitches))
            return null;
        if (chart.Shape is not null || piece.Shape is not null)
            return chart.Shape is { } one && piece.Shape is { } other && chart.Start == piece.Start
                && OutlinesOf(one).SequenceEqual(OutlinesOf(other)) ? 1 : null;
        var ahead = ColourRing.ToMicro(piece.Start) - ColourRing.ToMicro(chart.Start);
        if (ahead % plan.Sequence.Ring.Total == 0)
            return 1;
        var path = PieceFabric.PathOf(plan, chart);
        if (path.Advance is not { } advance || RowRuns.Repeat(path, plan.Sequence.Ring) is not { } repeat)
            return null;
        for (var row = advance.Rows; row < repeat; row += advance.Rows)
        {
            if ((row / advance.Rows * advance.Micro - ahead) % plan.Sequence.Ring.Total == 0)
                return row + 1;
        }
        return null;
    }
}
