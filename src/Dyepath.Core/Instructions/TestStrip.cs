using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Instructions;

/// <summary>The first rows of any piece as a test: what the last of them begins and ends with, and what to do where it does not.</summary>
internal static class TestStrip
{
    /// <summary>Three rows of each direction.</summary>
    private const int Rows = 6;

    public static IEnumerable<Block> Write(PatternContext context)
    {
        var rows = context.Plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled)
            .Min(p => Math.Min(Rows, p.Shape?.Parts[0].Rows ?? p.Rows));
        yield return new Subheading(Phrase.Plain("Test strip"));
        yield return new Paragraph((context.Pieces.Count(p => p.First.Pooled) == 1, context.InRounds) switch
        {
            (true, true) => Phrase.Of($"Begin the piece and stop after {rows} rounds. It is right if round {rows} begins and ends so:"),
            (true, false) => Phrase.Of($"Begin the piece and stop after {rows} rows. It is right if row {rows} begins and ends so:"),
            (false, true) => Phrase.Of($"Begin any piece and stop after {rows} rounds. It is right if round {rows} begins and ends so:"),
            _ => Phrase.Of($"Begin any piece and stop after {rows} rows. It is right if row {rows} begins and ends so:"),
        });
        var strips = context.Charts.SelectMany(chart => chart.Uses.GroupBy(u => u.Row)
            .Select(uses => (Ends: EndsOf(context, chart, uses.Key - 2 + rows), Uses: uses)));
        foreach (var alike in strips.GroupBy(s => s.Ends, s => s.Uses))
        {
            var (first, last) = alike.Key;
            foreach (var (pieces, sizes) in ChartVariant.By(alike.SelectMany(uses => uses)))
            {
                yield return new ForSizes(sizes,
                [
                    new Bullets([Phrase.Of(
                        $"{pieces}{new InAllSizes(Phrase.Of($"{ChartVariant.SizesOf(context.Plan, sizes)}"))}: begins with {first.Units} of {context.Colour(first.Section)}, ends with {last.Units} of {context.Colour(last.Section)}.")]),
                ]);
            }
        }
        yield return new Paragraph(Phrase.Plain((context.Project.Fabric.Keeping == ColourKeeping.Counted, context.InRounds) switch
        {
            (true, true) => "If it does not, find the first round that disagrees with its table: a colour there was given a stitch too many or too few. If you must strain to keep the numbers, change the hook: a larger one where the colours run on, a smaller one where they end too soon.",
            (true, false) => "If it does not, find the first row that disagrees with its table: a colour there was given a stitch too many or too few. If you must strain to keep the numbers, change the hook: a larger one where the colours run on, a smaller one where they end too soon.",
            _ => "If the colours come later than that, you work tighter than the plan: take a larger hook, or work looser. If they come earlier, take a smaller one, or work tighter.",
        }));
    }

    /// <summary>What a row of a chart begins and ends with.</summary>
    private static (ColourRun First, ColourRun Last) EndsOf(PatternContext context, ChartVariant chart, int row)
    {
        var runs = RowRuns.Of(chart.Piece.Shape?.Parts[0].Fabric ?? PieceFabric.Of(context.Plan, chart.Piece, row + 1), row);
        return (runs[0], runs[^1]);
    }
}
