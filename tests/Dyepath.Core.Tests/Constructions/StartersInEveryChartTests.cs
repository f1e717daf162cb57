using Dyepath.Bench;
using Dyepath.Core.Constructions;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>
/// A garment begun in any chart is planned, whatever its neck, for all sizes or for one; in part, one form of neck each in turn, all sizes
/// together. Which of them are warned of, and in which words: <c>bench/Dyepath.Bench starters</c>.
/// </summary>
public sealed class StartersInEveryChartTests
{
    public static TheoryData<string, string?> KindsAndCharts => [.. Extent.Half(Starter.All.Select(s => (s.Kind.Name, s.Chart)).Distinct())];

    /// <summary>
    /// Nothing is missing in the document: how near sizes come to their targets, and whether they can be put on, is all that is warned of, and that a piece shows less than the whole motif.
    /// </summary>
    [Theory]
    [MemberData(nameof(KindsAndCharts))]
    public void It_is_planned_and_warned_of_its_fit_alone(string name, string? chart)
    {
        var kind = Repertoire.All.First(k => k.Name == name);
        Starter[] necks = [.. Starter.Of(kind, chart)];
        var turn = SizeCharts.All.ToList().FindIndex(c => c.Id == chart) + Repertoire.All.IndexOf(kind) + 1;
        foreach (var starter in Extent.IsWhole ? necks : [necks[turn % necks.Length]])
        {
            foreach (var sizes in Extent.IsWhole ? starter.Choices : [[]])
            {
                var result = GarmentPlanner.Plan(starter.Project(sizes), TestContext.Current.CancellationToken);
                var what = $"{starter.Name} in {chart}, {(sizes is [var size] ? size : "all sizes")}";
                Assert.True(result.HasPlan, $"{what}: {string.Join(" ", result.Reasons.Select(r => r.Text))}");
                // For all sizes nothing is warned of, but that colours take longer to come round than a baby's pieces are wide, and that a
                // vest or a cardigan, whose armholes or fronts leave few rows whole, may lose its motif in a size.
                if (sizes is [] && chart != "baby")
                {
                    Assert.DoesNotContain(
                        result.Plan!.Findings, f => f.Level != FindingLevel.Note
                            && !(name is "vest" or "cardigan" && f.Text.StartsWith("The motif gives way", StringComparison.Ordinal)));
                }
                Assert.All(
                    (result.Plan?.Findings ?? []).Where(f => f.Level != FindingLevel.Note),
                    f => Assert.True(
                        f.Place is "garment.neckWidth" or "garment.letOff" || f.Place.StartsWith("garment.grading", StringComparison.Ordinal)
                            || f.Place.StartsWith("garment.edgings", StringComparison.Ordinal)
                            // A baby's sleeve is not as wide as a yarn's colours take to come round.
                            || f.Text.Contains("is narrower than one repeat of the colours", StringComparison.Ordinal),
                        $"{what}: {f.Place}: {f.Text}"));
            }
        }
    }

    /// <summary>
    /// Sizes 00 and 0 of the chart are 1.6 cm apart round the body; two panels that grow by two rows each, of 16 to 10 cm, by 2.5: that
    /// both have one width is no fault that anything could mend.
    /// </summary>
    [Fact]
    public void Sizes_nearer_than_rows_come_are_alike_without_alarm()
    {
        var starter = Starter.Of(Repertoire.All.First(k => k.Name == "pullover"), "astm-d5585-straight").First(s => s.Neck == "square");
        var plan = GarmentPlanner.Plan(starter.Project(), TestContext.Current.CancellationToken).Plan!;
        var said = Assert.Single(plan.Findings, f => f.Text.Contains("00 and 0 both have", StringComparison.Ordinal));
        Assert.Equal(FindingLevel.Note, said.Level);
        Assert.EndsWith(": a piece grows by 2 rows at a time, which makes 2.5 cm in all.", said.Text, StringComparison.Ordinal);
    }
}
