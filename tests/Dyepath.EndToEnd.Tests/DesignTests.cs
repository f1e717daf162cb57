using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>From an empty project to a booklet, as a designer goes.</summary>
public sealed class DesignTests(Browser browser, SharedHost shared)
{
    [Fact]
    public async Task ANewProjectBecomesABooklet()
    {
        await using var desk = await browser.DeskAsync(shared);
        var page = desk.Page;
        List<string> errors = [];
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                errors.Add(message.Text);
        };
        page.PageError += (_, error) => errors.Add(error);
        await page.BeginAsync("New project");
        foreach (var step in Workspace.Steps)
            await page.GoAsync(step);
        await page.GoAsync("garment");
        await page.GetByLabel(Workspace.Title).FillAsync("Shorewalk");
        await page.GetByLabel(Workspace.Title).BlurAsync();
        await page.SavedAsync();
        await page.GoAsync("pattern");
        var download = await page.RunAndWaitForDownloadAsync(
            () => page.GetByRole(AriaRole.Button, new() { Name = "PDF" }).First.ClickAsync());
        Assert.Equal("shorewalk-us.pdf", download.SuggestedFilename);
        var bytes = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(bytes, 0, 5));
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the pattern" }).ClickAsync();
        await page.GetByText("Nothing disagrees.").WaitForAsync();
        Assert.Empty(errors);
    }

    [Fact]
    public async Task AChangeAnswersInEverySizeAndIsUndoneByKeys()
    {
        await using var desk = await browser.DeskAsync(shared);
        var page = desk.Page;
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        Assert.Equal("2.5px", await page.Locator(".drawing path.opening").First.EvaluateAsync<string>("path => getComputedStyle(path).strokeWidth"));
        var measures = page.GetByRole(AriaRole.Region, new() { Name = "Finished measures by size" });
        var before = await measures.InnerTextAsync();
        await page.GetByLabel("Hangs below the waist").FillAsync("40");
        await page.TrueAsync(
            "before => document.querySelector('[aria-label=\"Finished measures by size\"]')?.innerText !== before", before);
        Assert.Equal("40 cm", await BelowWaist(shared.Host, page, id));
        await page.Keyboard.PressAsync("Control+z");
        await page.TrueAsync(
            "before => document.querySelector('[aria-label=\"Finished measures by size\"]')?.innerText === before", before);
        await page.Keyboard.PressAsync("Control+Shift+z");
        await page.TrueAsync(
            "before => document.querySelector('[aria-label=\"Finished measures by size\"]')?.innerText !== before", before);
    }

    private static async Task<string> BelowWaist(PublishedHost host, IPage page, string id)
    {
        await page.SavedAsync();
        return JsonNode.Parse(await host.StoredAsync(id))!["garment"]!["belowWaist"]!.GetValue<string>();
    }
}
