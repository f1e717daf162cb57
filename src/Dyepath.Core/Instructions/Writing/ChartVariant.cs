using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>
/// One chart and the pieces that follow it. A piece whose yarn begins where the chart's does in a later row shows the same rows from
/// there on, so it shares the chart and begins at that row.
/// </summary>
/// <param name="Number">From 1.</param>
/// <param name="Piece">The tallest piece that begins at chart row 1.</param>
internal sealed record ChartVariant(int Number, PiecePlan Piece, ImmutableArray<string> Uses)
{
    public string Stitches => Piece.RowStitches.Length == 2
        ? $"{Piece.RowStitches[0]} and {Piece.RowStitches[1]} stitches in turn ({string.Join(", ", Uses)})"
        : $"{Piece.Stitches} stitches ({string.Join(", ", Uses)})";

    public static ImmutableArray<ChartVariant> All(PatternContext context)
    {
        var charts = new List<(PiecePlan Piece, List<string> Uses)>();
        foreach (var size in context.Plan.Sizes)
        {
            foreach (var piece in size.Pieces.Where(p => p.Pooled))
            {
                var at = charts.FindIndex(c => FirstRow(context.Plan, c.Piece, piece) is not null);
                if (at < 0)
                    charts.Add((piece, [$"{size.Name} {piece.Name}"]));
                else
                {
                    charts[at].Uses.Add($"{size.Name} {piece.Name}");
                    if (piece.Rows > charts[at].Piece.Rows)
                        charts[at] = (piece with { Start = charts[at].Piece.Start }, charts[at].Uses);
                }
            }
        }
        return [.. charts.Select((c, i) => new ChartVariant(i + 1, c.Piece, [.. c.Uses]) { Plan = context.Plan })];
    }

    /// <summary>Chart and row for a piece, such as <c>2</c> or <c>2 from row 5</c>.</summary>
    public static string Place(ImmutableArray<ChartVariant> charts, PiecePlan piece)
    {
        foreach (var chart in charts)
        {
            if (FirstRow(chart.Plan, chart.Piece, piece) is { } row)
                return row == 1 ? $"{chart.Number}" : $"{chart.Number} from row {row}";
        }
        throw new InvalidOperationException("Every pooled piece has a chart.");
    }

    public required Plan Plan { get; init; }

    /// <summary>The chart row that shows a piece's first row; null where the chart has none.</summary>
    private static int? FirstRow(Plan plan, PiecePlan chart, PiecePlan piece)
    {
        if (chart.Working != piece.Working || chart.TurnCost != piece.TurnCost || !chart.RowStitches.SequenceEqual(piece.RowStitches))
            return null;
        var ahead = ColourRing.ToMicro(piece.Start) - ColourRing.ToMicro(chart.Start);
        if (ahead % plan.Ring.Total == 0)
            return 1;
        var fabric = PieceFabric.Of(plan, chart);
        if (fabric.Path.Advance is not { } advance || RowRuns.Repeat(fabric) is not { } repeat)
            return null;
        for (var row = advance.Rows; row < repeat; row += advance.Rows)
        {
            if ((row / advance.Rows * advance.Micro - ahead) % plan.Ring.Total == 0)
                return row + 1;
        }
        return null;
    }
}
