using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>The workspace stays open and answers, whatever working out its document takes or comes to.</summary>
public sealed class NeverStallsTests(Browser browser, SharedHost shared)
{
    /// <summary>A second runtime that fails at plans, as one would on a fault of ours.</summary>
    private const string FailingAtPlans = """
        self.onmessage = ({ data: { job } }) => {
          self.postMessage({ open: true });
          if (job) self.postMessage({ fault: `Nothing could be done about ${job}.` });
        };
        """;

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ADocumentWhosePlanFailsIsOpenedReadUndoneAndOpenedAgain()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        await page.BeginAsync("Open the demo tunic");
        await page.SavedAsync();
        await page.GoAsync("garment");
        // From here on every new runtime fails; the one that is open is stopped by a page of its own.
        await window.RouteAsync("**/js/worker.js", route => route.FulfillAsync(new() { ContentType = "text/javascript", Body = FailingAtPlans }));
        for (var opening = 0; opening < 2; opening++)
        {
            await page.ReloadAsync();
            await page.GetByText("The design could not be worked out just now. Your document is kept as you wrote it.").WaitForAsync();
            Assert.Equal("Tideline", await page.Locator(".project-title").TextContentAsync());
        }
        Assert.Empty(await EveryPageTests.Faults(page, "plan-failed"));
        var box = page.Locator("#at-garment-belowWaist");
        Assert.Equal("28 cm", await box.InputValueAsync());
        await box.FillAsync("31");
        await page.SavedAsync();
        var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save the document as a file" }).ClickAsync());
        Assert.Contains("31 cm", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo the last change" }).ClickAsync();
        await Assertions.Expect(box).ToHaveValueAsync("28 cm");
        await page.SavedAsync();
        await window.UnrouteAllAsync();
        await page.ReloadAsync();
        await page.PlannedAsync();
        await page.Locator(".garment .figures").First.WaitForAsync();
        Assert.Empty(await page.Locator(".trouble").AllAsync());
        Assert.False(await page.Locator("#blazor-error-ui").IsVisibleAsync());
    }

    [Fact]
    [Trait(Extent.Trait, Extent.Whole)]
    public async Task WithoutASecondRuntimeThePageWorksItOutItself()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        await window.AddInitScriptAsync("window.Worker = class { constructor() { throw new DOMException('blocked', 'SecurityError'); } };");
        var page = await window.OpenShelfAsync(host);
        await page.BeginAsync("Open the demo tunic");
        await page.Locator(".garment .figures").First.WaitForAsync();
        await page.GoAsync("pattern");
        await page.FrameLocator("#booklet-frame").GetByRole(AriaRole.Heading, new() { Name = "Tideline" }).First.WaitForAsync();
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task AnExtremeDocumentIsOpenWhileItIsWorkedOutAndItsPlanIsStopped()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        await page.ImportAsync("extreme.json", Extreme.Document());
        await page.Locator("nav.steps a[href$='/garment']").ClickAsync();
        var box = page.Locator("#at-garment-belowWaist");
        await box.FillAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();
        await page.GetByText(new Regex("^Stopped: .*You can go on writing")).WaitForAsync();
        Assert.Empty(await EveryPageTests.Faults(page, "plan-stopped"));
        await box.FillAsync("21");
        Assert.Equal("21", await box.InputValueAsync());
        await page.SavedAsync();
    }
}
