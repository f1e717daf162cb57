using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>Where the key of a handed-over piece is to be seen once the address with it was opened: nowhere.</summary>
public sealed class KeyInAddressTests(Browser browser)
{
    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task TheKeyLeavesTheAddressBeforeTheProgramEvenBegins()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var designer = await browser.WindowAsync();
        var desk = await designer.OpenShelfAsync(host);
        await desk.BeginAsync("Open the demo tunic");
        await desk.GoAsync("make");
        await desk.SavedAsync();
        var address = await desk.MakeAddressAsync();
        var key = address.Split('#')[1];

        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        var sent = new List<string>();
        page.Request += (_, request) => sent.Add($"{request.Url} {request.Headers.GetValueOrDefault("referer")}");
        var holds = new TaskCompletionSource();
        await page.RouteAsync("**/_framework/**", async route =>
        {
            await holds.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Commit });
        await page.AtAsync(new Regex("/make/from$"));
        // Loaded anew before the program has taken it, the piece opens still.
        await page.ReloadAsync(new() { WaitUntil = WaitUntilState.Commit });
        holds.SetResult();
        await page.GetByRole(AriaRole.Heading, new() { Name = "What you need" }).WaitForAsync();

        const string seen = "() => JSON.stringify([location.href, document.URL, document.referrer, history.state, { ...sessionStorage }, { ...localStorage }, document.documentElement.outerHTML])";
        Assert.DoesNotContain(key, await page.EvaluateAsync<string>(seen), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "Dyepath" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync();
        await page.EvaluateAsync("() => history.back()");
        Assert.Equal($"{host.Address}make/from", await page.AtAsync(new Regex("/make/from")));
        Assert.DoesNotContain(sent, line => line.Contains(key, StringComparison.Ordinal));

        // Put into the open window, it leaves the address too.
        await page.EvaluateAsync("hash => { location.hash = hash; }", key);
        await page.AtAsync(new Regex("/make/from$"));
        await page.GetByRole(AriaRole.Heading, new() { Name = "What you need" }).WaitForAsync();
        Assert.DoesNotContain(key, await page.EvaluateAsync<string>(seen), StringComparison.Ordinal);
    }
}
