using Dyepath.Workspace.Swatch;

namespace Dyepath.Workspace.Tests.Swatch;

public class SwatchEditsTests
{
    [Fact]
    public void The_first_whole_number_that_is_said_writes_what_the_others_take()
    {
        var document = Documents.Demo();
        document.Set("fabric.sectionStitches", null);

        SwatchEdits.Stitches(document, [5, 4, 3, 5, 4], 2, 4);

        Assert.Equal("[5,4,4,5,4]", document.Node("fabric.sectionStitches")!.ToJsonString());
    }

    [Fact]
    public void Free_work_drops_the_whole_stitches()
    {
        var document = Documents.Demo();

        SwatchEdits.Keep(document, "free");

        Assert.False(document.Has("fabric.sectionStitches"));
        Assert.Equal("free", document.Typed("fabric.keeping"));
    }

    [Fact]
    public void A_gauge_without_figures_goes()
    {
        var document = Documents.Demo();
        document.Set("fabric.swatch.hung.stitches", null);
        SwatchEdits.DropEmpty(document, "fabric.swatch.hung", "stitches", "rows");
        Assert.True(document.Has("fabric.swatch.hung"));

        document.Set("fabric.swatch.hung.rows", null);
        SwatchEdits.DropEmpty(document, "fabric.swatch.hung", "stitches", "rows");
        Assert.False(document.Has("fabric.swatch.hung"));
    }

    [Theory]
    [InlineData("5.5 mm", "US I-9, old UK 5. The millimetres govern.")]
    [InlineData("5.6 mm", "The nearest usual size is 5.5 mm (US I-9, old UK 5).")]
    [InlineData("7 mm", "old UK 2. The millimetres govern.")]
    [InlineData("thick", null)]
    public void A_hook_is_called_what_its_label_may_say(string typed, string? words) => Assert.Equal(words, HookWords.Of(typed));
}
