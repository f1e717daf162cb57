using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Projects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>A motif that cannot be seen is warned of, and none that can, by what the fabric page shows of each piece.</summary>
public sealed class FaintMotifTests(ITestOutputHelper output)
{
    [Fact]
    public void It_is_warned_of_where_a_piece_shows_less_than_a_tenth_of_what_the_yarn_can()
    {
        var (faint, clear) = (0, 0);
        // In part, every second one.
        for (var seed = 1; seed <= 400; seed += Extent.Of(2, 1))
        {
            if (DesignGen.Of(seed).Tried().Plan is not { } plan)
                continue;
            var least = plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled && p.Shape is null && p.Motif == plan.Project.Garment.Motif)
                .Select(p => PieceMotif.Read(plan, p).RelativeClarity).DefaultIfEmpty(1).Min();
            var warned = plan.Findings.Where(f => f.Text.StartsWith("The motif will hardly be seen", StringComparison.Ordinal)).ToArray();
            if (least < PlanFindings.FaintMotif)
            {
                faint++;
                Assert.Equal(FindingLevel.Warning, Assert.Single(warned).Level);
                Assert.Contains($" {Math.Max(1, 100 * least):0} %", warned[0].Text, StringComparison.Ordinal);
            }
            else if (plan.Sizes.SelectMany(s => s.Pieces).All(p => p.Shape is null))
            {
                clear++;
                Assert.Empty(warned);
            }
        }
        output.WriteLine($"{faint} faint, {clear} clear");
        Assert.True(faint > 0 && clear > 20, $"{faint} faint, {clear} clear");
    }
}
