using Dyepath.Core.Constructions;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>A size table names the girth that a garment is made to: nobody chooses a skirt by her bust, or a hat.</summary>
public sealed class SizeTableTests
{
    [Theory]
    [InlineData("pullover", "women", "bust")]
    [InlineData("vest", "men", "chest")]
    [InlineData("tabard", "child", "chest")]
    [InlineData("skirt", "women", "hip")]
    [InlineData("hat", "women", "head")]
    [InlineData("headband", "women", "head")]
    public void To_fit_names_the_girth_that_goes_through(string garment, string chart, string girth)
    {
        var project = GarmentTrials.Of(garment) with { Sizes = new SizeSelection(chart, [], [], null, [], []) };
        var text = GarmentTrials.Text(GarmentTrials.Check(project));
        // A tabard's panels do not go all the way round.
        foreach (var row in garment == "tabard" ? [$"To fit {girth}, "] : new[] { $"To fit {girth}, ", $"Finished {girth}, ", $"Ease at the {girth}, " })
            Assert.Contains(row, text, StringComparison.Ordinal);
        foreach (var other in new[] { "bust", "chest", "hip" }.Where(o => o != girth))
            Assert.DoesNotContain($"To fit {other}", text, StringComparison.Ordinal);
    }

    /// <summary>Whose head has to pass the neck may choose by it.</summary>
    [Theory]
    [InlineData("pullover", "baby", true)]
    [InlineData("poncho", "women", true)]
    [InlineData("cardigan", "women", false)]
    [InlineData("skirt", "women", false)]
    public void The_head_is_named_where_it_has_to_pass(string garment, string chart, bool named)
    {
        var text = GarmentTrials.Text((GarmentTrials.Of(garment) with { Sizes = new SizeSelection(chart, [], [], null, [], []) }).Planned());
        Assert.Equal(named, text.Contains("To fit head, ", StringComparison.Ordinal));
    }
}
