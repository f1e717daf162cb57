using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>What a designer does in the workspace, by the names she sees.</summary>
internal static partial class Workspace
{
    /// <summary>In milliseconds: as long as a loaded machine may take to start the program anew, or its service worker to fetch all of it.</summary>
    public const float Patience = 120_000;

    /// <summary>Label of the title's box.</summary>
    public const string Title = "Title of the pattern";

    public static readonly string[] Steps = ["yarn", "swatch", "garment", "fit", "fabric", "pattern", "make"];

    public static async Task<IPage> OpenShelfAsync(this IBrowserContext window, PublishedHost host)
    {
        var page = await window.NewPageAsync();
        await page.GotoAsync(host.Address.ToString());
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync(new() { Timeout = Patience });
        return page;
    }

    /// <returns>The project's id.</returns>
    public static async Task<string> BeginAsync(this IPage page, string button)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
        var address = await page.AtAsync(ProjectAddress());
        await page.PlannedAsync();
        return ProjectAddress().Match(address).Groups[1].Value;
    }

    /// <summary>Opens a step of a project in a tab of its own.</summary>
    public static async Task<IPage> OpenProjectAsync(this IBrowserContext window, PublishedHost host, string id, string step = "garment")
    {
        var page = await window.NewPageAsync();
        await page.GotoAsync($"{host.Address}p/{id}/{step}");
        await page.PlannedAsync();
        return page;
    }

    /// <summary>Brings a document in on the shelf, and waits until it is open; what follows from it may come later.</summary>
    public static async Task ImportAsync(this IPage page, string name, string document)
    {
        await page.Locator("input[type=file]").First.SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(document) });
        await page.AtAsync(ProjectAddress());
        await page.Locator("main h1").WaitForAsync();
    }

    /// <summary>The text that the host has of a project.</summary>
    public static async Task<string> StoredAsync(this PublishedHost host, string id)
    {
        using var http = new HttpClient { BaseAddress = host.Address };
        return await http.GetStringAsync(new Uri($"api/projects/{id}", UriKind.Relative));
    }

    /// <summary>Goes to an address inside the open program, or, where the page has none of that host, loads it.</summary>
    public static async Task ToAsync(this IPage page, Uri address)
    {
        var moved = await page.EvaluateAsync<bool>(
            "address => location.origin === new URL(address).origin && !!globalThis.Blazor && (Blazor.navigateTo(address), true)", address.ToString());
        if (!moved)
            await page.GotoAsync(address.ToString());
    }

    /// <summary>Waits until the page's own address is one of these; asked of the page, as a move inside it can be missed by who listens for it while it works.</summary>
    /// <returns>The address.</returns>
    public static async Task<string> AtAsync(this IPage page, Regex address) => await (await page.TrueAsync(
        "address => new RegExp(address).test(location.href) && location.href", address.ToString())).JsonValueAsync<string>();

    /// <summary>The page's own address, asked of the page for the same reason.</summary>
    public static Task<string> AddressAsync(this IPage page) => page.EvaluateAsync<string>("() => location.href");

    /// <summary>Waits until the service worker keeps the program.</summary>
    public static Task WorkerReadyAsync(this IPage page) => page.TrueAsync(
        "() => navigator.serviceWorker.ready.then(() => true)");

    /// <summary>
    /// Waits until the page answers true, over reloads too. Asked twenty times a second: asked at every frame, as is usual, the page would draw all
    /// of them.
    /// </summary>
    public static Task<IJSHandle> TrueAsync(this IPage page, string question, object? about = null, float patience = Patience) =>
        page.WaitForFunctionAsync(question, about, new() { Timeout = patience, PollingInterval = 50 });

    /// <summary>Asks the page until what it promises is true. (Playwright's own waiting takes the promise itself for the answer.)</summary>
    public static async Task UntilAsync(this IPage page, string question, object? about = null)
    {
        for (var until = DateTime.UtcNow.AddMilliseconds(Patience); !await page.EvaluateAsync<bool>(question, about); await Task.Delay(50))
            Assert.True(DateTime.UtcNow < until, $"After {Patience / 1_000} s the page still answers false to: {question}");
    }

    public static async Task GoAsync(this IPage page, string step)
    {
        await page.Locator($"nav.steps a[href$='/{step}']").ClickAsync();
        await page.Locator("main h1").WaitForAsync();
        await page.PlannedAsync();
    }

    /// <summary>Waits until what follows from the last change is in view.</summary>
    public static async Task PlannedAsync(this IPage page, float patience = Patience)
    {
        await page.Locator(".draft-head .state").WaitForAsync(new() { State = WaitForSelectorState.Attached, Timeout = patience });
        await page.TrueAsync("() => !document.querySelector('.draft-head .state')?.textContent.includes('Working')", patience: patience);
    }

    public static Task SavedAsync(this IPage page, string words = "Saved") =>
        page.TrueAsync("words => document.querySelector('.save')?.textContent.trim() === words", words);

    /// <summary>Of these elements, the words of which something is not in view.</summary>
    public static Task<string[]> CutAsync(this IPage page, string selector) => page.EvaluateAsync<string[]>(
        "selector => [...document.querySelectorAll(selector)].filter(e => e.scrollWidth > e.clientWidth || e.scrollHeight > e.clientHeight || e.getBoundingClientRect().right > innerWidth).map(e => e.textContent.trim())",
        selector);

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
    public static partial Regex ProjectAddress();
}
