using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>What a designer does in the workspace, by the names she sees.</summary>
internal static partial class Workspace
{
    public static readonly string[] Steps = ["yarn", "swatch", "garment", "fit", "fabric", "pattern", "make"];

    public static async Task<IPage> OpenShelfAsync(this IBrowserContext window, PublishedHost host)
    {
        var page = await window.NewPageAsync();
        await page.GotoAsync(host.Address.ToString());
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync(new() { Timeout = 60_000 });
        return page;
    }

    /// <returns>The project's id.</returns>
    public static async Task<string> BeginAsync(this IPage page, string button)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
        await page.AtAsync(ProjectAddress());
        await page.PlannedAsync();
        return ProjectAddress().Match(page.Url).Groups[1].Value;
    }

    /// <summary>Waits until the page's own address is one of these; asked of the page, as a move inside it can be missed by who listens for it while it works.</summary>
    public static Task AtAsync(this IPage page, Regex address) =>
        page.WaitForFunctionAsync("address => new RegExp(address).test(location.href)", address.ToString());

    public static async Task GoAsync(this IPage page, string step)
    {
        await page.Locator($"nav.steps a[href$='/{step}']").ClickAsync();
        await page.Locator("main h1").WaitForAsync();
        await page.PlannedAsync();
    }

    /// <summary>Waits until what follows from the last change is in view.</summary>
    public static async Task PlannedAsync(this IPage page, float patience = 30_000)
    {
        await page.Locator(".draft-head .state").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await page.WaitForFunctionAsync("() => !document.querySelector('.draft-head .state')?.textContent.includes('Working')", null, new() { Timeout = patience });
    }

    public static Task SavedAsync(this IPage page, string words = "Saved") =>
        page.WaitForFunctionAsync("words => document.querySelector('.save')?.textContent.trim() === words", words, new() { Timeout = 45_000 });

    /// <summary>Hands the offered size over.</summary>
    /// <returns>The address for the tester.</returns>
    public static async Task<string> MakeAddressAsync(this IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Make an address" }).ClickAsync();
        return await page.Locator("#address").InputValueAsync();
    }

    [GeneratedRegex("/make/([0-9a-f-]{36})$")]
    public static partial Regex PieceAddress();

    [GeneratedRegex("/p/([0-9a-f-]+)/yarn$")]
    private static partial Regex ProjectAddress();
}
