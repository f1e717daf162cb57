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
        // Nothing is there of a yarn that might be taken for hers, on no page.
        foreach (var step in Workspace.Steps)
        {
            await page.GoAsync(step);
            await page.GetByText("Put in the colours of your yarn, in the order in which they come off the ball.").First.WaitForAsync();
        }
        await page.GoAsync("yarn");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put in the first colour" }).ClickAsync();
        foreach (var (at, name) in new[] { "deep teal", "coral", "old gold", "plum", "pale sea green" }.Index())
        {
            if (at > 0)
                await page.GetByRole(AriaRole.Button, new() { Name = "Add a section" }).ClickAsync();
            // The new section's name has the focus, and what is typed takes the place of what stands there.
            await page.TrueAsync("id => document.activeElement.id === id", $"at-yarn-sections-{at}-name");
            await page.Keyboard.TypeAsync(name);
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Count the first ball" }).ClickAsync();
        foreach (var count in "4354343544")
        {
            await page.Keyboard.PressAsync($"{count}");
            await page.Keyboard.PressAsync("Enter");
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Done for now" }).ClickAsync();
        await page.GetByLabel("Yarn in one ball").FillAsync("220");
        await page.GetByLabel("Weight of one ball").FillAsync("100");
        await page.GetByRole(AriaRole.Link, new() { Name = "Next: Swatch" }).ClickAsync();
        await page.GetByLabel("Hook", new() { Exact = true }).FillAsync("5");
        await page.GetByLabel("Stitches of swatch, off the hook").FillAsync("14,5");
        await page.GetByLabel("Rows of swatch, off the hook").FillAsync("16 1/2");
        await page.Locator("#garment-fabric").WaitForAsync();
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
