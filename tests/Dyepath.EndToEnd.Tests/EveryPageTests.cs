using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>Every page at phone and desktop width, light and dark: no accessibility rule broken, nothing wider than the screen.</summary>
public sealed class EveryPageTests(Browser browser)
{
    public static TheoryData<int, int, ColorScheme> Screens => new()
    {
        { 1440, 900, ColorScheme.Light }, { 1440, 900, ColorScheme.Dark }, { 390, 844, ColorScheme.Light }, { 390, 844, ColorScheme.Dark },
    };

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task NoAccessibilityRuleIsBrokenAndNothingOverflows(int width, int height, ColorScheme scheme)
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync(width, height, scheme);
        var page = await window.OpenShelfAsync(host);
        var found = await Faults(page, "shelf", scheme);
        await page.BeginAsync("Open the demo tunic");
        foreach (var step in Workspace.Steps)
        {
            await page.GoAsync(step);
            found.AddRange(await Faults(page, step, scheme));
        }
        await page.SavedAsync();
        var address = await page.MakeAddressAsync();
        found.AddRange(await Faults(page, "make-address", scheme));
        var tester = await window.NewPageAsync();
        await tester.GotoAsync(address);
        await tester.GetByRole(AriaRole.Heading, new() { Name = "What you need" }).WaitForAsync(new() { Timeout = Workspace.Patience });
        found.AddRange(await Faults(tester, "handed", scheme));
        await tester.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await tester.AtAsync(Workspace.PieceAddress());
        await tester.GotoAsync($"{host.Address}make/from");
        await tester.GetByText("This address has no key.").WaitForAsync(new() { Timeout = Workspace.Patience });
        found.AddRange(await Faults(tester, "handed-without-key", scheme));
        await tester.GotoAsync(host.Address.ToString());
        await tester.GetByRole(AriaRole.Heading, new() { Name = "Being made" }).WaitForAsync(new() { Timeout = Workspace.Patience });
        found.AddRange(await Faults(tester, "shelf-being-made", scheme));
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    internal static async Task<List<string>> Faults(IPage page, string name, ColorScheme scheme)
    {
        await page.WaitForTimeoutAsync(300);
        // The booklet's frame runs no script, so that no rule can be tried inside; its page has its own tests.
        var result = await page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations], Iframes = false });
        var found = result.Violations
            .Select(v => $"{name}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html[..Math.Min(160, n.Html.Length)]))}").ToList();
        var wider = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth");
        if (wider > 0)
            found.Add($"{name}: {wider} pixels wider than the screen");
        var folder = Directory.CreateDirectory(Path.Combine(PublishedHost.Root, "out", "screens")).FullName;
        var width = page.ViewportSize!.Width;
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{width}-{scheme}.png".ToLowerInvariant()), FullPage = true });
        return found;
    }
}
