using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>From the design to the hook, the designer's own or a tester's, and back.</summary>
public sealed class HandingTests(Browser browser)
{
    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ASizeBegunFromTheMakeStepStandsThereAndOnTheShelfAndOnTheHost()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("make");
        await page.GetByText("Nothing of this design is on the hook.").WaitForAsync();
        var step = await page.AddressAsync();
        await page.GetByLabel("Size to make").SelectOptionAsync("L");
        var id = await BegunAsync(page, "Begin this size");
        await page.SavedAsync();
        await page.GotoAsync(step);
        await page.GetByRole(AriaRole.Link, new() { Name = "Size L", Exact = true }).WaitForAsync();
        await page.GotoAsync(host.Address.ToString());
        Assert.EndsWith(id, await page.GetByRole(AriaRole.Link, new() { Name = "Tideline, size L" }).GetAttributeAsync("href"), StringComparison.Ordinal);
        // The host had it while it was open; a window of another device sees it there.
        await using var other = await browser.WindowAsync();
        var there = await other.OpenShelfAsync(host);
        await there.GetByText("Begun on another device").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put away… Tideline, size L" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it away for ever" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Being made" }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Equal(404, (await page.APIRequest.GetAsync($"{host.Address}api/makings/{id}")).Status);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ATesterOpensTheAddressBeginsAndGoesOnWithoutAConnectionUntilAndAfterItIsRevoked()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        await using var other = await browser.WindowAsync(workers: true);
        await using var third = await browser.WindowAsync();
        var designer = await window.OpenShelfAsync(host);
        var project = await designer.BeginAsync("Open the demo tunic");
        await designer.GoAsync("make");
        await designer.SavedAsync();
        await designer.GetByLabel("Size to hand over").SelectOptionAsync("L");
        var address = await designer.MakeAddressAsync();
        Assert.Matches("/make/from#[A-Za-z0-9_-]{43}$", address);
        await designer.GetByText("no log has come back yet").WaitForAsync();

        var tester = await other.NewPageAsync();
        var asked = new List<string>();
        tester.Request += (_, request) => asked.Add(request.Url);
        await tester.GotoAsync(address);
        await tester.GetByRole(AriaRole.Heading, new() { Name = "Tideline" }).WaitForAsync();
        Assert.Equal($"{host.Address}make/from", await tester.AddressAsync());
        await tester.GetByText("Ebbstone Light").First.WaitForAsync();
        await tester.GetByText("Buy all balls of one dye lot").WaitForAsync();
        var id = await BegunAsync(tester, "Begin");
        // It is nobody's but hers.
        Assert.Equal(404, (await tester.APIRequest.GetAsync($"{host.Address}api/makings/{id}")).Status);
        Assert.DoesNotContain(asked, url => url.Contains(address.Split('#')[1], StringComparison.Ordinal));

        // The same address goes on with the same piece.
        await tester.GotoAsync("about:blank");
        await tester.GotoAsync(address);
        await tester.AtAsync(new Regex($"/make/{id}$"));

        // Two rows are worked, and one is looked at; the log is sent when she says so.
        await tester.OpenPieceAsync(host, id);
        await tester.FirstRowAsync();
        await tester.PressAsync("o");
        await tester.PressAsync("PageDown");
        await tester.GetByRole(AriaRole.Button, new() { Name = "Pieces" }).ClickAsync();
        Assert.DoesNotContain(asked, url => url.Contains("/api/makings", StringComparison.Ordinal) || url.Contains("/logs/", StringComparison.Ordinal));
        await tester.GetByRole(AriaRole.Button, new() { Name = "Send it to the designer" }).ClickAsync();
        await tester.GetByText("Sent.", new() { Exact = true }).WaitForAsync();
        var key = address.Split('#')[1];
        await designer.ReloadAsync();
        await designer.GetByText("1 log has come back").WaitForAsync();
        await designer.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Look at it .size L") }).ClickAsync();
        await designer.GetByText("She looked where the colours were once, and ripped back never.").WaitForAsync();

        await designer.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Revoke… the address for size L") }).ClickAsync();
        await designer.GetByRole(AriaRole.Button, new() { Name = "Revoke the address" }).ClickAsync();
        await designer.GetByText("The address is revoked.").WaitForAsync();
        var late = await third.NewPageAsync();
        await late.GotoAsync(address);
        await late.GetByText("This address opens nothing, or nothing any more.").WaitForAsync();
        Assert.Equal(404, (await late.APIRequest.GetAsync($"{host.Address}api/handed", new() { Headers = [new("Dyepath-Key", key)] })).Status);

        await tester.WorkerReadyAsync();
        host.Kill();
        await tester.GotoAsync($"{host.Address}make/{id}");
        await tester.GetByText("Tideline").First.WaitForAsync();
        await tester.GotoAsync("about:blank");
        await tester.GotoAsync(address);
        await tester.AtAsync(new Regex($"/make/{id}$"));
        Assert.Empty(await tester.EvaluateAsync<string[]>(
            "async () => { const found = []; for (const name of await caches.keys()) for (const r of await (await caches.open(name)).keys()) if (new URL(r.url).pathname.startsWith('/api')) found.push(r.url); return found; }"));
        Assert.NotEmpty(project);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task APieceGoesToATesterAndBackAsAFile()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        await using var other = await browser.WindowAsync();
        var designer = await window.OpenShelfAsync(host);
        await designer.BeginAsync("Open the demo tunic");
        await designer.GoAsync("make");
        var handed = await (await designer.RunAndWaitForDownloadAsync(
            () => designer.GetByRole(AriaRole.Button, new() { Name = "Save a file for this size" }).ClickAsync())).PathAsync();

        var tester = await other.OpenShelfAsync(host);
        await tester.GetByLabel("Open a piece from a file").SetInputFilesAsync(handed);
        await tester.AtAsync(Workspace.PieceAddress());
        await tester.GetByRole(AriaRole.Button, new() { Name = "Go on without counting" }).ClickAsync();
        await tester.Locator(".make-done").WaitForAsync();
        for (var taps = 0; taps < 3; taps++)
            await tester.TapAsync();
        await tester.GotoAsync(host.Address.ToString());
        await tester.GetByText("3 entries").WaitForAsync();
        var back = await tester.RunAndWaitForDownloadAsync(
            () => tester.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Save as a file .Tideline") }).ClickAsync());
        Assert.Equal("tideline-m-making.json", back.SuggestedFilename);

        await designer.GetByLabel("Bring in a tester's file").SetInputFilesAsync(await back.PathAsync());
        await designer.GetByText("and ripped back never.").WaitForAsync();
        await designer.GetByLabel("Bring in a tester's file").SetInputFilesAsync(
            new FilePayload { Name = "other.json", MimeType = "application/json", Buffer = "{\"makingVersion\":1}"u8.ToArray() });
        await designer.GetByText("“other.json” is not the file of a piece").WaitForAsync();
    }

    private static async Task<string> BegunAsync(IPage page, string button)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
        return Workspace.PieceAddress().Match(await page.AtAsync(Workspace.PieceAddress())).Groups[1].Value;
    }
}
