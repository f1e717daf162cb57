using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Store;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>Which texts a tab goes on keeping once nobody looks at them.</summary>
public sealed class KeptTextsTests : IDisposable
{
    private readonly ProjectDevice _device = new();
    private readonly ProjectHost _host = new();

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task What_is_kept_everywhere_and_not_in_view_is_let_go() => InPage(async () =>
    {
        var texts = Texts();
        var first = texts.Create("p1", Text("One"));
        Assert.Same(first, texts.Find("p1"));
        Assert.Same(first, texts.Open("p1"));
        await Until(() => first.State is { IsAtRest: true, IsSent: true });
        texts.InView = "p1";
        texts.Create("p2", Text("Two"));
        Assert.Same(first, texts.Find("p1"));
        texts.InView = "p2";
        var third = texts.Open("p3");
        Assert.Null(texts.Find("p1"));
        // What is nowhere is closed, and looked for anew when it is wanted again.
        await Until(() => third.State.Stage == Stage.Closed);
        Assert.NotSame(third, texts.Open("p3"));
    });

    [Fact]
    public Task What_has_still_to_be_sent_is_kept_until_it_is() => InPage(async () =>
    {
        var texts = Texts();
        _host.IsAway = true;
        var first = texts.Create("p1", Text("One"));
        await Until(() => first.State is { IsAtRest: true, IsHeld: true, Trouble: HostTrouble.Away });
        texts.Create("p2", Text("Two"));
        Assert.Same(first, texts.Find("p1"));
        // Put away for ever it is kept no longer, and hears of it.
        texts.Forget("p1");
        Assert.Equal((Stage.Closed, null), (first.State.Stage, texts.Find("p1")));
        texts.Forget("p9");
    });

    /// <summary>What happens to the connection is told to all, what another tab wrote to the text that it wrote.</summary>
    [Fact]
    public Task Other_tabs_are_heard_of_by_the_text_that_they_wrote() => InPage(async () =>
    {
        var tab = _device.Tab();
        var texts = Texts(tab);
        _host.IsAway = true;
        var (one, two) = (texts.Create("p1", Text("One")), texts.Create("p2", Text("Two")));
        await Until(() => one.State.Trouble == HostTrouble.Away && two.State.Trouble == HostTrouble.Away && one.State.IsHeld && two.State.IsHeld);
        _host.IsAway = false;
        tab.Online!();
        await Until(() => one.State.IsSent && two.State.IsSent);
        tab.Removed!("p1");
        Assert.Equal((Stage.Closed, Stage.Open), (one.State.Stage, two.State.Stage));
        tab.Wrote!("p9");
        await Until(() => two.State.IsAtRest);
        tab.Wrote("p2");
        Assert.True(two.State.IsLooking);
    });

    /// <summary>Whoever changes a text on hearing of it is heard once everyone has heard of the first change.</summary>
    [Fact]
    public Task What_is_told_while_something_is_told_waits_its_turn() => InPage(async () =>
    {
        _host.IsAway = true;
        var kept = Texts().Create("p1", Text("One"));
        await Until(() => kept.State is { IsAtRest: true, IsHeld: true });
        List<string> heard = [];
        kept.Changed += () =>
        {
            var first = kept.State.Mine!.Name == "Two";
            if (first && heard.Count == 0)
            {
                heard.Add("first of Two");
                kept.Tell(new Changed<ProjectText>(Text("Three")));
            }
            heard.Add(kept.State.Mine!.Name);
        };
        kept.Tell(new Changed<ProjectText>(Text("Two")));
        Assert.Equal(["first of Two", "Two", "Three"], heard);
        // What waits for a state is told of it once, and at once where it is so already.
        Assert.True(kept.UntilAsync(s => s.Mine!.Name == "Three").IsCompleted);
        var closed = kept.UntilAsync(s => s.Stage == Stage.Closed);
        Assert.False(closed.IsCompleted);
        kept.Tell(new PutAwayElsewhere<ProjectText>());
        await closed;
    });

    private static ProjectText Text(string title) => ProjectText.Of($$"""{ "title": "{{title}}" }""");

    private KeptTexts<ProjectText> Texts(ProjectDevice.ProjectTab? tab = null)
    {
        tab ??= _device.Tab();
        return new KeptTexts<ProjectText>(IDeviceShelf.Sort, new ProjectKeeping(), tab, new ServerShelf(_host.Client), tab, new HandClock());
    }
}
