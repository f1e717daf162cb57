using System.Text;
using Bunit;
using Bunit.TestDoubles;
using Dyepath.Client.Draft;
using Dyepath.Client.Fabric;
using Dyepath.Client.Fit;
using Dyepath.Client.Garment;
using Dyepath.Client.Making.Handing;
using Dyepath.Client.Pattern;
using Dyepath.Client.Shell;
using Dyepath.Client.Swatch;
using Dyepath.Client.Yarn;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Fit;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Swatch;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Work;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Yarn;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Shell;

/// <summary>Whatever part of the workspace fails, the rest of it goes on.</summary>
public sealed class ProjectPageTests : BunitContext
{
    private readonly JobsInHand _jobs = new();
    private readonly Workbench _bench;

    public ProjectPageTests()
    {
        _bench = Documents.Workbench(_jobs);
        Services.AddWork(_bench, _jobs);
        Services.AddSingleton(new HostHere().Client());
        Services.AddSingleton<ServerShelf>();
        Services.AddSingleton<IDeviceShelf, NoShelf>();
        Services.AddSingleton<IDeviceEvents, NoEvents>();
        Services.AddSingleton<Keeper>();
        Services.AddCascadingValue(_ => (Func<Failing>)(() => Failing.Rendering));
        ComponentFactories.AddStub<ThemeSwitch>();
        ComponentFactories.AddStub<NewVersionNotice>();
        ComponentFactories.AddStub<GarmentDraft>("the garment");
        ComponentFactories.AddStub<GarmentStrip>();
    }

    [Theory]
    [InlineData("yarn")]
    [InlineData("swatch")]
    [InlineData("garment")]
    [InlineData("fit")]
    [InlineData("fabric")]
    [InlineData("pattern")]
    [InlineData("make")]
    public async Task AStepThatFailsLeavesTheRestStanding(string step)
    {
        Assert.Equal(TradeStep.All.Select(s => s.Address), ["yarn", "swatch", "garment", "fit", "fabric", "pattern", "make"]);
        ComponentFactories.Add(type => TradeStep.All.Any(s => s.Page == type), _ => new Throws());
        var page = await OpenAsync(step);
        Assert.Contains($"The step {TradeStep.All.Single(s => s.Address == step).Name} could not be shown just now.", page.Find("main .trouble").TextContent, StringComparison.Ordinal);
        Assert.Equal("Tideline", page.Find(".project-title").TextContent);
        Assert.Equal(7, page.FindAll(".steps a").Count);
        Assert.Contains("the garment", page.Find("#garment-body").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".save"));
        Assert.Contains("Save the document as a file", page.Find("main .trouble").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AGarmentThatFailsLeavesTheStepStanding()
    {
        ComponentFactories.Add(type => type == typeof(GarmentDraft) || type == typeof(GarmentStrip), _ => new Throws());
        ComponentFactories.AddStub<YarnPage>("the step");
        var page = await OpenAsync("yarn");
        Assert.Contains("The garment could not be shown", page.Find("#garment-body").TextContent, StringComparison.Ordinal);
        Assert.Contains("the step", page.Find("main").TextContent, StringComparison.Ordinal);
        Assert.Single(page.FindAll(".trouble"));
    }

    [Fact]
    public async Task FindingsThatFailLeaveTheStepStanding()
    {
        ComponentFactories.Add(type => type == typeof(FindingsList), _ => new Throws());
        ComponentFactories.AddStub<YarnPage>("the step");
        var page = await OpenAsync("yarn");
        Assert.Contains("the step", page.Find("main").TextContent, StringComparison.Ordinal);
        Assert.Single(page.FindAll(".trouble"));
    }

    /// <summary>A reload begins the list of changes anew, and the button tells why it is empty.</summary>
    [Fact]
    public async Task WhatCannotBeUndoneAfterALoadIsSaid()
    {
        ComponentFactories.AddStub<YarnPage>("the step");
        var page = await OpenAsync("yarn");
        var undo = page.Find(".pair button");
        Assert.True(undo.HasAttribute("disabled"));
        Assert.Equal("Nothing to undo: what was changed before the page was loaded cannot be taken back", undo.GetAttribute("title"));
        await page.InvokeAsync(() => _bench.Set("title", "Other", "title"));
        Assert.Equal("Undo: title", page.Find(".pair button").GetAttribute("title"));
    }

    [Fact]
    public async Task APlanThatFailsIsSaidAndEverythingCanStillBeWritten()
    {
        var page = await OpenAsync("garment", fail: true);
        var notice = page.Find("main .trouble");
        Assert.Contains("The design could not be worked out just now. Your document is kept as you wrote it.", notice.TextContent, StringComparison.Ordinal);
        Assert.Contains("Save the document as a file", notice.TextContent, StringComparison.Ordinal);
        await page.InvokeAsync(() => page.Find("#at-garment-belowWaist").InputAsync("31"));
        Assert.Equal("31 cm", _bench.Document!.Typed("garment.belowWaist"));
        await _jobs.AskedAsync(2);
        await page.InvokeAsync(() => _jobs.Finish(1));
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".trouble")));
        Assert.NotNull(_bench.Plan);
    }

    [Fact]
    public async Task WhatFailsUnwaitedForIsSaidToo()
    {
        ComponentFactories.AddStub<YarnPage>("the step");
        var page = await OpenAsync("yarn");
        Services.GetRequiredService<Faults>().Watch(() => Task.FromException(new InvalidOperationException("unheard")));
        page.WaitForAssertion(() => Assert.Contains("Something that this page was doing could not be done", page.Find("main .trouble").TextContent, StringComparison.Ordinal));
        page.FindAll("button").Single(b => b.TextContent == "All right").Click();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".trouble")));
    }

    /// <summary>Neither the device nor the host answers: what is waited for is said, and there is a way on.</summary>
    [Fact]
    public async Task WhatOpensSlowlySaysWhatItWaitsFor()
    {
        Services.AddSingleton<IDeviceShelf, SilentShelf>();
        var page = Render<ProjectPage>(p => p.Add(x => x.Id, "one").Add(x => x.Address, "yarn"));
        Assert.Equal("Opening the project…", page.Find("[role=status]").TextContent.Trim());
        page.WaitForAssertion(() => Assert.Contains("This device's store has not answered yet.", page.Find("[role=status]").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        Assert.Equal("/", page.Find("a.button").GetAttribute("href"));
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Try again").ClickAsync());
        Assert.True(Services.GetRequiredService<BunitNavigationManager>().History.First().Options.ForceLoad);
    }

    /// <summary>While the design is worked out, figures say that they are of the one before.</summary>
    [Fact]
    public async Task FiguresOfTheDesignBeforeAreMarked()
    {
        ComponentFactories.AddStub<YarnPage>("the step");
        var page = await OpenAsync("garment");
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("table")), TimeSpan.FromSeconds(30));
        Assert.Empty(page.FindAll("[aria-busy=true]"));
        await page.InvokeAsync(() => page.Find("#at-garment-belowWaist").InputAsync("31"));
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("table[aria-busy=true]")));
        page.WaitForAssertion(() => Assert.Contains("figures with a dashed edge are those before your last change", page.Find(".plan-state [role=status]").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        await _jobs.AskedAsync(2);
        await page.InvokeAsync(() => _jobs.Finish(1));
        page.WaitForAssertion(() => Assert.Empty(page.FindAll("[aria-busy=true]")), TimeSpan.FromSeconds(30));
    }

    /// <summary>Its database is blocked.</summary>
    private sealed class SilentShelf : IDeviceShelf
    {
        private static readonly Task<System.Collections.Immutable.ImmutableArray<Copy<ProjectText>>> Never =
            new TaskCompletionSource<System.Collections.Immutable.ImmutableArray<Copy<ProjectText>>>().Task;

        public Task<System.Collections.Immutable.ImmutableArray<Copy<ProjectText>>> ReadAsync(string id) => Never;

        public Task<DeviceWriting<ProjectText>> WriteAsync(string id, WriteDevice<ProjectText> write) => throw new IOException("It is blocked.");

        public Task<ProjectCopy[]> ListAsync() => Task.FromResult<ProjectCopy[]>([]);

        public Task RemoveAsync(string id) => Task.CompletedTask;

        public Task ArchiveAsync(string id, bool archived) => Task.CompletedTask;
    }

    private async Task<IRenderedComponent<ProjectPage>> OpenAsync(string step, bool fail = false)
    {
        var id = await Services.GetRequiredService<Keeper>().CreateAsync(Documents.Demo().Text);
        if (fail)
            _jobs.Fail(0);
        else
            _jobs.Finish(0);
        return Render<ProjectPage>(p => p.Add(page => page.Id, id).Add(page => page.Address, step));
    }
}
