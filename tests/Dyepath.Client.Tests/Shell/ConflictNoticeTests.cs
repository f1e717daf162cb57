using Bunit;
using Dyepath.Client.Shell;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Store;
using Dyepath.Workspace.Tests.Work;
using Microsoft.Extensions.DependencyInjection;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Client.Tests.Shell;

/// <summary>The question tells its two versions apart.</summary>
public sealed class ConflictNoticeTests : BunitContext
{
    private readonly ProjectDevice _device = new();
    private readonly ProjectHost _host = new() { IsAway = true };

    [Fact]
    public async Task BothVersionsAreSaidByWhatDiffers()
    {
        Keeper[] keepers = [];
        await InPage(async () =>
        {
            var pages = new[] { Page(), Page() };
            keepers = [.. pages.Select(p => p.Keeper)];
            var id = await keepers[0].CreateAsync("""{ "title": "One" }""");
            await keepers[1].OpenAsync(id);
            pages[0].Workbench.Set("title", "Slow river moss", "title");
            pages[1].Workbench.Set("title", "Dune two", "title");
            pages[1].Workbench.Set("story", "Sand", "story");
            await Until(() => keepers.All(k => k.State == SaveState.Conflict) && keepers[0].Differences.Count == 2);
        });
        Services.AddSingleton(keepers[0]);
        var notice = Render<ConflictNotice>();
        Assert.Equal("Yours: title is “Slow river moss”; story is empty.", notice.Find(".conflict-mine").TextContent);
        Assert.Equal("The other: title is “Dune two”; story is “Sand”.", notice.Find(".conflict-other").TextContent);
        Assert.Equal(["Go on with mine", "Go on with the other", "Keep both, mine as a copy"], notice.FindAll("button").Select(b => b.TextContent));
    }

    protected override void Dispose(bool disposing)
    {
        _host.Dispose();
        base.Dispose(disposing);
    }

    private (Workspace.Work.Workbench Workbench, Keeper Keeper) Page()
    {
        var (workbench, tab) = (Documents.Workbench(), _device.Tab());
        return (workbench, new Keeper(workbench, tab, new ServerShelf(_host.Client), tab, new HandClock()));
    }
}
