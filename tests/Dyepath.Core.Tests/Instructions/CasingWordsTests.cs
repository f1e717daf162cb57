using System.Text.RegularExpressions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What runs in a casing is among the materials, and holds the edge in to its own length.</summary>
public sealed class CasingWordsTests
{
    private static Plan Skirt => Of("skirt").With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Waist, EdgingLibrary.ElasticCasing, null)] }).Planned();

    /// <summary>2.5 cm of the elastic are overlap; the elastic is nine tenths of the waist.</summary>
    [Fact]
    public void A_casing_at_rest_is_as_wide_as_its_elastic_sewn_together()
    {
        foreach (var size in Skirt.Sizes)
        {
            var waist = Assert.Single(size.Edgings);
            Assert.Equal(0.9 * size.Body["waist"].Centimetres, waist.RelaxedWidth.Centimetres, 1e-6);
            Assert.Equal(0.9 * size.Body["waist"].Centimetres + 2.5, waist.Elastic!.Value.Centimetres, 1e-6);
        }
    }

    /// <summary>An elastic that is longer than the edge does not widen it.</summary>
    [Fact]
    public void An_elastic_never_holds_an_edge_out()
    {
        var waist = Skirt.Sizes[0].Edgings[0];
        Assert.Equal(waist.Edge, (waist with { Elastic = 2 * waist.Edge }).RelaxedWidth);
    }

    [Fact]
    public void The_waist_and_its_elastic_are_told_and_proved()
    {
        var plan = Skirt;
        var text = Text(plan);
        Assert.Contains(" To fit waist, cm / in ", text, StringComparison.Ordinal);
        Assert.Matches(@" - Elastic for the waist, [0-9]+ mm wide, [^;]* in long; a safety pin or bodkin to draw it through; sewing thread\. ", text);
        Assert.Empty(PatternCheck.Text(plan, Write(plan)));
        foreach (var (before, after) in new[] { (@"(waist, )[0-9]+( mm wide)", "${1}7$2"), (@"(mm wide, )[0-9]", "${1}1"), ("(To fit waist, cm / in +)[0-9]", "${1}1"), ("bodkin to draw", "needle to draw") })
            Assert.NotEmpty(PatternCheck.Text(plan, Regex.Replace(Write(plan), before, after)));
    }

    private static string Write(Plan plan) => Booklets.TextBooklet.Write(Core.Instructions.PatternWriter.Write(plan), plan.Project.Edition);

    [Fact]
    public void A_cord_is_as_long_as_its_edge_and_forty_centimetres()
    {
        var plan = Tideline.With(g => g with { Edgings = [new(EdgingPlace.Hem, "drawstring", null)] }).Planned();
        Assert.Matches(@" - Cord for the hem, chained from [^,]+, [^;]+ long; a safety pin or bodkin to thread it\. ", Text(plan));
        Assert.Empty(PatternCheck.Text(plan, Write(plan)));
    }

    /// <summary>The widest sold that is 2 mm narrower than the casing.</summary>
    [Theory]
    [InlineData(11.2, 8)]
    [InlineData(12, 10)]
    [InlineData(22, 20)]
    [InlineData(4, null)]
    public void An_elastic_runs_freely_in_its_casing(double depth, int? width) =>
        Assert.Equal(width, Edging.ElasticMillimetres(Length.FromMillimetres(depth)));

    /// <summary>A hole of two stitches gives by a quarter.</summary>
    [Theory]
    [InlineData(4.25, 10)]
    [InlineData(5.5, 13)]
    [InlineData(8, 20)]
    [InlineData(1, 6)]
    public void A_button_passes_a_hole_of_two_stitches(double stitch, int across) =>
        Assert.Equal(across, ButtonBand.Diameter(Length.FromMillimetres(stitch)));
}
