using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Sizing;

/// <summary>Measures that a chart lacks: near what other sources print, and enough for every garment.</summary>
public sealed class DerivedMeasureTests
{
    public static TheoryData<string, string> ChartsAndGarments => [.. Extent.Half(from chart in SizeCharts.All
        from kind in Repertoire.All.Where(k => k.IsToBody) select (chart.Id, kind.Name))];

    /// <summary>ASTM D5585-11e1 prints shoulders and heads of women; the survey's lines are within two of its residual deviations.</summary>
    [Theory]
    [InlineData(BodyMeasure.Shoulders, 2 * 3.7)]
    [InlineData(BodyMeasure.Head, 2 * 1.9)]
    public void Shoulders_and_heads_of_women_agree_with_a_printed_standard(BodyMeasure measure, double within)
    {
        Assert.True(SizeCharts.TryFind("astm-d5585-straight", out var printed));
        Assert.True(SizeCharts.TryFind("women", out var women));
        foreach (var size in printed.Sizes)
        {
            Assert.True(size.TryGet(BodyMeasure.Bust, out var bust, out _));
            Assert.True(size.TryGet(measure, out var own, out _));
            var derived = DerivedMeasures.Find(women, size with { Measurements = [bust] }, measure);
            Assert.NotNull(derived);
            Assert.Equal(own.Range.Middle.Centimetres, derived.Length.Centimetres, within);
        }
    }

    /// <summary>A size that the chart does give comes back from its neighbours within half of a step.</summary>
    [Fact]
    public void A_measure_between_two_sizes_lies_between_theirs()
    {
        Assert.True(SizeCharts.TryFind("women", out var women));
        Assert.True(SizeCharts.TryFind("en13402-3-women", out var letters));
        foreach (var size in letters.Sizes)
        {
            var arm = DerivedMeasures.Find(letters, size, BodyMeasure.UpperArm);
            Assert.NotNull(arm);
            Assert.InRange(arm.Length.Centimetres, 20, 60);
            Assert.Contains("women", arm.Rule, StringComparison.Ordinal);
        }
        Assert.Null(DerivedMeasures.Find(women, new BodySize("bare", []), BodyMeasure.Hip));
    }

    /// <summary>Every shipped chart makes every garment that is made to the body, and no starter is one that nobody gets into.</summary>
    [Theory]
    [MemberData(nameof(ChartsAndGarments))]
    public void Every_chart_makes_every_garment(string chart, string garment)
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        // A baby's head is nearly as wide as its body: a pullover with a slit neck needs room.
        if (chart == "baby" && starter.Garment.Shape is BoxyTop top)
            starter = starter with { Garment = starter.Garment with { Shape = top with { BustEase = new Ease("loose", "newer", null) } } };
        var project = starter with { Sizes = new SizeSelection(chart, [], [], null, [], []) };
        var result = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);
        Assert.True(result.HasPlan, string.Join("\n", result.Reasons.Select(r => r.Text)));
        // A child's vest has its neck in steps of half a repeat, which may fall short of a head: the plan then warns.
        if (garment == "vest" && SizeCharts.TryFind(chart, out var own) && own.Wearer != Wearers.Adult)
            return;
        Assert.All(result.Plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }
}
