using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>All pieces of a garment lean alike, so that the body's lean decides which counts its sleeves may have.</summary>
public sealed class OneLeanTests
{
    /// <summary>No other count of the body, with the sleeves that lean as it does, has fewer measures more than an inch off.</summary>
    [Theory]
    [InlineData("en13402-3-men", "XXL")]
    [InlineData("youth", "12")]
    [InlineData("child", "2")]
    public void The_lean_is_that_with_which_sleeves_fit_too(string chart, string size)
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == "cardigan"));
        var project = starter with { Sizes = starter.Sizes with { Chart = chart, Sizes = [size], Base = null } };
        var plan = project.Planned();
        var fixedIn = project.With(g => g with { Direction = plan.Direction });
        var tried = 0;
        for (var count = 20; count <= 160; count++)
        {
            var other = (fixedIn with { Sizes = fixedIn.Sizes with { Overrides = [new(size, "panelStitches", null, count, "tried")] } }).Tried().Plan;
            if (other is null || other.Sizes[0].Pieces.Any(p => p.Pooled && p.Motif != project.Garment.Motif))
                continue;
            tried++;
            Assert.True(Poor(plan) <= Poor(other), $"{count} stitches: {Poor(other)} instead of {Poor(plan)}");
        }
        Assert.True(tried > 5, $"{tried}");
    }

    private static int Poor(Plan plan) => new[] { GarmentMeasure.Width, GarmentMeasure.Length, GarmentMeasure.SleeveWidth, GarmentMeasure.SleeveLength }
        .Count(m => Length.Abs(plan.Sizes[0].Finished[m] - plan.Sizes[0].Target[m]) > Length.FromInches(1));
}
