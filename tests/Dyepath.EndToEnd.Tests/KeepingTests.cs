using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>Nothing is lost and nothing silently overwritten.</summary>
public sealed class KeepingTests(Browser browser, SharedHost shared)
{
    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WhatIsWrittenWhileTheHostIsDownReachesItWhenItIsBack()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        await page.SavedAsync();
        host.Kill();
        await page.GetByLabel(Workspace.Title).FillAsync("Ebb");
        await page.SavedAsync("Saved on this device, waiting for the host");
        await page.CloseAsync();
        await host.StartAsync();
        page = await window.OpenShelfAsync(host);
        await page.GotoAsync($"{host.Address}p/{id}/garment");
        await page.SavedAsync();
        Assert.Equal("Ebb", await page.GetByLabel(Workspace.Title).InputValueAsync());
        Assert.Contains("\"Ebb\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    [Fact]
    public async Task FromTheSecondVisitOnItWorksWithoutAConnection()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync(workers: true);
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.SavedAsync();
        await page.WorkerReadyAsync();
        host.Kill();
        await page.GotoAsync($"{host.Address}p/{id}/garment");
        await page.PlannedAsync();
        await page.GetByLabel(Workspace.Title).FillAsync("Slack water");
        await page.SavedAsync("Saved on this device, waiting for the host");
        // The longest words that stand there are read whole on a phone too.
        await page.SetViewportSizeAsync(Phone.Wide, Phone.High);
        Assert.Empty(await page.CutAsync(".topbar .save, .topbar .save > span"));
        await page.ReloadAsync();
        await page.PlannedAsync();
        Assert.Equal("Slack water", await page.GetByLabel(Workspace.Title).InputValueAsync());
        await host.StartAsync();
        await page.ReloadAsync();
        await page.SavedAsync();
        Assert.Contains("\"Slack water\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ATabThatIsClosedRightAfterTypingLosesNothing()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        await page.GetByLabel(Workspace.Title).FillAsync("Typed and gone");
        await page.TrueAsync("() => document.querySelector('.project-title')?.textContent === 'Typed and gone'");
        await page.WaitForTimeoutAsync(150);
        await page.CloseAsync();
        page = await window.OpenProjectAsync(host, id);
        Assert.Equal("Typed and gone", await page.GetByLabel(Workspace.Title).InputValueAsync());
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Theory]
    [InlineData("Go on with mine", "Mine", 0, Explicit = true)]
    [InlineData("Go on with the other", "Theirs", 0, Explicit = true)]
    [InlineData("Keep both, mine as a copy", "Theirs", 1)]
    public async Task TwoDevicesThatChangeTheSameProjectAreToldSoAndSheChooses(string choice, string left, int more)
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        await using var other = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        await page.SavedAsync();
        var count = await Count(host, page);
        var theirs = await other.OpenProjectAsync(host, id);
        await theirs.GetByLabel(Workspace.Title).FillAsync("Theirs");
        await theirs.SavedAsync();
        await page.GetByLabel(Workspace.Title).FillAsync("Mine");
        await page.GetByRole(AriaRole.Button, new() { Name = choice }).ClickAsync();
        await page.SavedAsync();
        Assert.Contains($"\"{left}\"", await host.StoredAsync(id), StringComparison.Ordinal);
        Assert.Equal(count + more, await Count(host, page));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ATabFollowsWhatAnotherTabOfThisBrowserWrites()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var first = await window.OpenShelfAsync(host);
        var id = await first.BeginAsync("Open the demo tunic");
        await first.GoAsync("garment");
        await first.SavedAsync();
        var second = await window.OpenProjectAsync(host, id);
        await second.GetByLabel(Workspace.Title).FillAsync("From the second tab");
        await second.SavedAsync();
        await first.TrueAsync("() => document.querySelector('#at-title').value === 'From the second tab'");
        await first.GetByLabel(Workspace.Title).FillAsync("And back");
        await first.SavedAsync();
        Assert.Contains("\"And back\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    private static async Task<int> Count(PublishedHost host, IPage page) =>
        (await (await page.APIRequest.GetAsync($"{host.Address}api/projects")).JsonAsync())!.Value.GetArrayLength();
}
