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
        var word = context.RowWord;
        var rows = context.Plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled).Min(p => Math.Min(Rows, p.Rows));
        yield return new Subheading(Phrase.Plain("Test strip"));
        yield return new Paragraph(Phrase.Plain(
            $"Begin any piece and stop after {rows} {word}s. It is right if {word} {rows} begins and ends so:"));
        foreach (var chart in context.Charts)
        {
            foreach (var start in chart.Uses.GroupBy(u => u.Row))
            {
                var runs = RowRuns.Of(PieceFabric.Of(context.Plan, chart.Piece, start.Key - 1 + rows), start.Key - 2 + rows);
                var (first, last) = (runs[0], runs[^1]);
                yield return new ForSizes([.. start.Select(u => u.Size).Distinct()],
                [
                    new Bullets([Phrase.Of(
                        $"chart {chart.Number} from {word} {start.Key}: begins with {first.Units} of {context.Colour(first.Section)}, ends with {last.Units} of {context.Colour(last.Section)}.")]),
                ]);
            }
        }
        yield return new Paragraph(Phrase.Plain(context.Project.Fabric.Keeping == ColourKeeping.Counted
            ? $"If it does not, find the first {word} that disagrees with its table: a colour there was given a stitch too many or too few. If you must strain to keep the numbers, change the hook: a larger one where the colours run on, a smaller one where they end too soon."
            : "If the colours come later than that, you work tighter than the plan: take a larger hook, or work looser. If they come earlier, take a smaller one, or work tighter."));
    }
}
