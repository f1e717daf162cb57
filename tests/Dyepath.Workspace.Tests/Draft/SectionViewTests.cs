using Dyepath.Core.Colours;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Tests.Fabric;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>Sections as they are typed, and their colours as a canvas wants them.</summary>
public sealed class SectionViewTests
{
    [Fact]
    public void What_is_typed_is_shown_and_what_is_wrong_stands_by_its_place()
    {
        var document = Documents.Demo();
        document.Set("yarn.sections[1].name", "");
        document.Set("yarn.sections[2].colour", "sea");
        document.Set("yarn.sections[3].length", "long");
        var sections = SectionView.Read(document);
        Assert.Equal([0, 1, 2, 3, 4], sections.Select(s => s.Index));
        Assert.Equal("yarn.sections[4]", sections[4].Place);
        Assert.Equal(["deep water", "foam", "wet sand", "kelp"], sections.Where(s => s.Index != 1).Select(s => s.Name));
        Assert.NotEqual("", sections[1].Name);
        Assert.Equal(Srgb.Parse("#4c9aa0"), sections[1].Colour);
        // A grey of its own for each that has none yet, so that each has a symbol of its own.
        Assert.Equal(Srgb.Parse("#728080"), sections[2].Colour);
        document.Set("yarn.sections[4].colour", null);
        Assert.Equal(5, SectionView.Read(document).Select(s => s.Symbol).Distinct().Count());
        Assert.Equal((Length.FromCentimetres(31.8), Length.FromCentimetres(0.5)), (sections[0].Length!.Value, sections[0].Spread!.Value));
        Assert.Null(sections[3].Length);
        Assert.Null(sections[0].Blend);
    }

    /// <summary>A colour whose letter is a size of the pattern gets another: L would be read as the size.</summary>
    [Fact]
    public void Symbols_keep_off_the_sizes_chosen_and_the_designers_own()
    {
        var document = Documents.Demo();
        document.Set("yarn.sections[0].name", "lagoon");
        Assert.NotEqual("L", SectionView.Read(document)[0].Symbol);
        document.Set("sizes.names", System.Text.Json.Nodes.JsonNode.Parse("""["XS", "S"]"""));
        Assert.Equal("L", SectionView.Read(document)[0].Symbol);
        document.Set("sizes.own", System.Text.Json.Nodes.JsonNode.Parse("""[{ "name": "L", "measures": { "bust": "100 cm" } }]"""));
        document.Set("sizes.chart", null);
        document.Set("sizes.names", null);
        Assert.Contains("L", SectionView.Called(document));
        Assert.NotEqual("L", SectionView.Read(document)[0].Symbol);
    }

    /// <summary>One number a section in the order in which they are worked, 0xRRGGBB, and the companion's behind them.</summary>
    [Fact]
    public void A_palette_has_every_section_and_the_companion_behind_them()
    {
        var plan = Demo.Plan();
        Assert.Equal([0x17394d, 0x4c9aa0, 0xe9efe9, 0xb89468, 0x5c5a2c, 0x2b5468], YarnPalette.Of(plan));
        Assert.Equal([.. Enumerable.Repeat(0x000001, 6)], YarnPalette.Of(plan, _ => new Srgb(0, 0, 1)));
        Assert.Equal(
            [0x5c5a2c, 0xb89468, 0xe9efe9, 0x4c9aa0, 0x17394d], YarnPalette.Of(Demo.Plan(d => d.Set("yarn.fromOtherEnd", true))).Take(5));
        // Undyed yarn is of no colour of the sequence.
        var alone = YarnPalette.Of(plan.Project with { Companion = null });
        Assert.Equal(0xc9c4ba, alone[^1]);
    }
}
