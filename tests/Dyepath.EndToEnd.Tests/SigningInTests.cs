using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A host that asks for its token: in, who else is in, and out again.</summary>
public sealed class SigningInTests(Browser browser)
{
    private const string Token = "correct-horse-battery";

    [Fact]
    public async Task ItsPagesBreakNoAccessibilityRuleAndNothingOverflows()
    {
        await using var host = new PublishedHost();
        await host.StartAsync(Token);
        // For the list of devices: the host signs it in, whether it then runs the program or not.
        await using var other = await browser.WithoutScriptAsync();
        var elsewhere = await other.NewPageAsync();
        await elsewhere.GotoAsync(host.Address.ToString());
        await GiveAsync(elsewhere, Token);
        await elsewhere.GotoAsync($"{host.Address}sign-in/devices");
        await elsewhere.GetByText("this device", new() { Exact = true }).WaitForAsync();
        // The kept application opens without a host's leave, and says what it lacks.
        await using var window = await browser.WindowAsync(workers: true);
        var page = await window.NewPageAsync();
        var said = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Text.Contains("Content Security Policy", StringComparison.Ordinal))
                said.Add(message.Text);
        };
        await page.GotoAsync(host.Address.ToString());
        var found = await EveryPageTests.Faults(page, "sign-in");
        await GiveAsync(page, "quite-another-token");
        await page.GetByText("That is not this host's token.").WaitForAsync();
        found.AddRange(await EveryPageTests.Faults(page, "sign-in-wrong"));
        await SignInAsync(page, host);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).WaitForAsync();
        found.AddRange(await EveryPageTests.Faults(page, "shelf-signed-in"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Devices that are signed in" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Signed-in devices" }).WaitForAsync();
        found.AddRange(await EveryPageTests.Faults(page, "devices"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Back to your projects" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "You are signed out" }).WaitForAsync();
        found.AddRange(await EveryPageTests.Faults(page, "signed-out"));
        await AskedFirstAsync(page);
        await page.GotoAsync(host.Address.ToString());
        await page.GetByText("The host asks for its access token").WaitForAsync();
        Assert.Equal(0, await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).CountAsync());
        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.Empty(said);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task OnAHostWithoutATokenThereIsNothingToSignOutOf()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        await AskedFirstAsync(page);
        await page.GotoAsync(host.Address.ToString());
        await page.Locator(".archive-link").WaitForAsync();
        Assert.Equal(0, await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).CountAsync());
        Assert.Equal(0, await page.Locator("a.account").CountAsync());
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WithTheKeyboardAloneADeviceSignsInAnotherOutAndItselfOut()
    {
        await using var host = new PublishedHost();
        await host.StartAsync(Token);
        await using var other = await browser.WindowAsync();
        var there = await other.NewPageAsync();
        await SignInAsync(there, host);
        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        await page.GotoAsync(host.Address.ToString());
        await page.Keyboard.TypeAsync(Token);
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).WaitForAsync();
        await TabToAsync(page, "Devices that are signed in");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Signed-in devices" }).WaitForAsync();
        Assert.Equal(2, await page.Locator(".devices li").CountAsync());
        // This device was seen last and stands first.
        await TabToAsync(page, "Sign out Chrome on Linux, last seen within the last hour");
        await page.Keyboard.PressAsync("Enter");
        await page.TrueAsync("() => document.querySelectorAll('.devices li').length === 1");
        await there.ReloadAsync();
        await there.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).WaitForAsync();
        await TabToAsync(page, "Sign out everywhere");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "You are signed out" }).WaitForAsync();
        await TabToAsync(page, "Sign in again");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).WaitForAsync();
    }

    [Fact]
    public async Task ALinkCarriesTheTokenAndLosesItAtOnce()
    {
        await using var host = new PublishedHost();
        await host.StartAsync(Token);
        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        var sent = new List<string>();
        page.Request += (_, request) => sent.Add($"{request.Url} {request.Headers.GetValueOrDefault("referer")}");
        await page.GotoAsync($"{host.Address}sign-in#token={Token}");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync();
        await page.GoBackAsync();
        Assert.DoesNotContain(Token, await page.AddressAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain(sent, line => line.Contains(Token, StringComparison.Ordinal));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ThePagesWorkWithoutTheClientAndWithoutAnyScript()
    {
        await using var host = new PublishedHost();
        await host.StartAsync(Token);
        await using var window = await browser.WithoutScriptAsync();
        var page = await window.NewPageAsync();
        await page.GotoAsync(host.Address.ToString());
        await GiveAsync(page, Token);
        await page.GotoAsync($"{host.Address}sign-in/devices");
        await page.GetByText("this device", new() { Exact = true }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Sign out Chrome on Linux") }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "You are signed out" }).WaitForAsync();
        await page.GotoAsync($"{host.Address}sign-in/devices");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).WaitForAsync();
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task ADeviceThatIsNotOursKeepsNothing()
    {
        await using var host = new PublishedHost();
        await host.StartAsync(Token);
        await using var window = await browser.WindowAsync(workers: true);
        var page = await window.NewPageAsync();
        await SignInAsync(page, host);
        await page.BeginAsync("Open the demo tunic");
        await page.SavedAsync();
        const string kept = "async () => (await indexedDB.databases()).length + (await caches.keys()).length + localStorage.length";
        await page.EvaluateAsync("() => { localStorage.setItem('dyepath.theme', 'dark'); }");
        await page.WorkerReadyAsync();
        Assert.NotEqual(0, await page.EvaluateAsync<int>(kept));
        await page.GotoAsync($"{host.Address}sign-in/devices");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out and clear this device" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "You are signed out" }).WaitForAsync();
        await page.GetByText("told to clear all that it kept").WaitForAsync();
        Assert.Equal(0, await page.EvaluateAsync<int>(kept));
        Assert.Empty(await window.CookiesAsync());
    }

    private static Task SignInAsync(IPage page, PublishedHost host) => SignInAsync(page, host.Address);

    private static async Task SignInAsync(IPage page, Uri address)
    {
        await page.GotoAsync(address.ToString());
        await GiveAsync(page, Token);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync();
    }

    /// <summary>
    /// From now on the page hears of its projects only after the host has answered whether this browser is signed in: where they stand on the
    /// shelf, what follows from that answer stands there too.
    /// </summary>
    private static async Task AskedFirstAsync(IPage page)
    {
        var answered = new TaskCompletionSource();
        // As it begins: of a refusal the page never reads the rest.
        page.Response += (_, answer) =>
        {
            if (answer.Url.EndsWith("/api/session", StringComparison.Ordinal))
                answered.TrySetResult();
        };
        await page.RouteAsync("**/api/projects", async route =>
        {
            await answered.Task;
            await route.ContinueAsync();
        });
    }

    private static async Task GiveAsync(IPage page, string token)
    {
        await page.GetByLabel("The access token with which this host was started").FillAsync(token);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
    }

    /// <summary>Presses Tab until the control that is so called has the focus, and sees that it shows.</summary>
    private static async Task TabToAsync(IPage page, string name)
    {
        for (var presses = 0; presses < 40; presses++)
        {
            await page.Keyboard.PressAsync("Tab");
            var called = await page.EvaluateAsync<string>("() => document.activeElement.textContent.trim().replace(/\\s+/g, ' ')");
            if (called != name)
                continue;
            Assert.NotEqual("0px", await page.EvaluateAsync<string>("() => getComputedStyle(document.activeElement).outlineWidth"));
            return;
        }
        Assert.Fail($"Tab does not come to “{name}”.");
    }
}
