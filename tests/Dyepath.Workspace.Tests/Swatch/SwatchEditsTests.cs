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

    /// <summary>One number of her hands is enough; what is put in beside it is nobody's number, and goes with hers.</summary>
    [Fact]
    public void One_number_of_her_hands_is_enough()
    {
        var document = Documents.Demo();
        document.Set("fabric.hands", null);
        Type("spread", "6 %");
        Assert.Equal(("6 %", "50 stitches"), (document.Typed("fabric.hands.spread"), document.Typed("fabric.hands.memory")));
        Type("memory", "30 stitches");
        Type("spread", null);
        Assert.Equal(("2 %", "30 stitches"), (document.Typed("fabric.hands.spread"), document.Typed("fabric.hands.memory")));
        Type("memory", null);
        Assert.False(document.Has("fabric.hands"));

        void Type(string field, string? value)
        {
            document.Set($"fabric.hands.{field}", value);
            SwatchEdits.Hands(document);
        }
    }
}
