using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Projects;

namespace Dyepath.Core.Tests.Limits;

/// <summary>Charts that are too many to be printed together are not drawn, and it is said what to leave out.</summary>
public sealed class BookletSizeTests
{
    /// <summary>Forty sizes of fine fabric, each with charts of its own: together too many, one size alone not.</summary>
    private static readonly Plan Large = Fine(HeavyProjects.Of("charts").Planned());

    [Fact]
    public void All_sizes_together_are_too_large_and_one_alone_is_not()
    {
        var all = Large.Project.Edition with { Size = null };
        var reason = BookletSize.TooLarge(Large, all)!;
        Assert.Equal(("edition.size", FindingLevel.Fault), (reason.Place, reason.Level));
        Assert.Contains("Print one size alone", reason.Text, StringComparison.Ordinal);
        Assert.Null(BookletSize.TooLarge(Large, all with { Size = Large.Sizes[0].Name }));
        Assert.Null(BookletSize.TooLarge(TestProjects.Tideline.Planned(), all));
    }

    [Fact]
    public void The_pattern_of_all_sizes_says_so_and_holds_no_charts()
    {
        var booklet = PatternWriter.Write(Large with { Project = Large.Project with { Edition = Large.Project.Edition with { Size = null } } }, TestContext.Current.CancellationToken);
        Assert.Empty(Charts(booklet));
        var said = Assert.Single(booklet.Sections.Single(s => s.Id == "charts").Blocks.OfType<Caution>());
        Assert.Contains("can be printed together", new Wording(booklet, booklet.Edition).Text(said.Text), StringComparison.Ordinal);
    }

    [Fact]
    public void The_pattern_of_one_size_holds_its_charts_alone()
    {
        var size = Large.Sizes[3].Name;
        var booklet = PatternWriter.Write(Large with { Project = Large.Project with { Edition = Large.Project.Edition with { Size = size } } }, TestContext.Current.CancellationToken);
        var cells = Charts(booklet).Sum(c => (long)c.Cells.Length);
        Assert.InRange(cells, 1, BookletSize.MostChartStitches);
        Assert.Equal(Large.Sizes[3].Pieces.Count(p => p.Pooled), Charts(booklet.For(booklet.Edition)).Count());
    }

    /// <summary>The same plan with every piece of a count of its own, as a yarn without a whole sequence makes them.</summary>
    private static Plan Fine(Plan plan) => plan with
    {
        Sizes =
        [
            .. plan.Sizes.Select((size, i) => size with
            {
                Pieces = [.. size.Pieces.Select((piece, p) => Counted(piece, Late(4 * i + p)))],
            }),
        ],
    };

    /// <summary>Counts without a factor of the sequence's, so that their fabrics come again as late as may be.</summary>
    private static int Late(int n) => 300 + 30 * (n / 8) + new[] { 1, 7, 11, 13, 17, 19, 23, 29 }[n % 8];

    private static PiecePlan Counted(PiecePlan piece, int stitches) => piece with { Stitches = stitches, RowStitches = [stitches], Rows = 200 };

    private static IEnumerable<ColourChart> Charts(Booklet booklet) => booklet.Sections.SelectMany(s => s.Blocks)
        .SelectMany(b => b is ForSizes some ? some.Blocks : [b]).OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>();
}
