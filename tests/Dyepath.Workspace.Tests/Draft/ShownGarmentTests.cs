using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>The garment on every page is drawn once for a plan and a size.</summary>
public sealed class ShownGarmentTests
{
    [Fact]
    public void It_is_drawn_anew_for_another_size_or_plan_and_for_nothing_else()
    {
        var (plan, other) = (Fabric.Demo.Plan(), Fabric.Demo.Plan(d => d.Set("edition.units", "in")));
        var shown = new ShownGarment();
        var front = shown.Front(plan, plan.Sizes[0]);
        Assert.Same(front, shown.Front(plan, plan.Sizes[0]));
        Assert.Same(shown.Behind(plan, plan.Sizes[0]), shown.Behind(plan, plan.Sizes[0]));
        Assert.Same(front, shown.Front(plan, plan.Sizes[0]));
        Assert.Contains("size S.", shown.Front(plan, plan.Sizes[1]).Sentence, StringComparison.Ordinal);
        Assert.Contains("size S.", shown.Behind(plan, plan.Sizes[1])!.Sentence, StringComparison.Ordinal);
        Assert.Contains("size XS.", shown.Front(plan, plan.Sizes[0]).Sentence, StringComparison.Ordinal);
        Assert.Contains(" in round", shown.Front(other, other.Sizes[0]).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pullover", GarmentMeasure.Width, "round the body")]
    [InlineData("hat", GarmentMeasure.Circumference, "round")]
    [InlineData("pullover", GarmentMeasure.SleeveWidth, "round the sleeve")]
    [InlineData("pullover", GarmentMeasure.Length, "length")]
    [InlineData("wrap", GarmentMeasure.Width, "width")]
    [InlineData("pullover", GarmentMeasure.ArmholeDepth, "armhole depth")]
    public void A_measure_is_called_as_a_maker_calls_it(string kind, GarmentMeasure measure, string words)
    {
        var shape = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind)).Garment.Shape;
        Assert.Equal(words, MeasureWords.Of(measure, shape));
    }
}
