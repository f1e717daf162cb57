using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>Every page: no accessibility rule broken, nothing wider than the screen.</summary>
public sealed class EveryPageTests(Browser browser)
{
    /// <summary>Letters are there, nothing moves any more, and two frames have been shown since.</summary>
    private const string Settled = """
        async () => {
          await document.fonts.ready;
          await Promise.allSettled(document.getAnimations().filter(a => a.effect.getComputedTiming().endTime < Infinity).map(a => a.finished));
          for (let frames = 0; frames < 2; frames++) await new Promise(requestAnimationFrame);
        }
        """;

    /// <summary>What says that it is hidden and takes up room none the less; what is folded away is opened first.</summary>
    private const string HiddenYetSeen = """
        () => {
          for (const folded of document.querySelectorAll('details:not([name])')) folded.open = true;
          return [...document.querySelectorAll('[hidden]')].filter(e => e.getClientRects().length > 0).map(e => e.outerHTML.slice(0, 120));
        }
        """;

    private static readonly (int Width, int Height, ColorScheme Scheme)[] Screens =
    [
        (390, 844, ColorScheme.Light), (1440, 900, ColorScheme.Dark), (1440, 900, ColorScheme.Light), (390, 844, ColorScheme.Dark),
    ];

    [Fact]
    public async Task NoAccessibilityRuleIsBrokenAndNothingOverflows()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        var found = await Faults(page, "shelf");
        await page.BeginAsync("New project");
        found.AddRange(await Faults(page, "yarn-empty"));
        await page.GoAsync("fit");
        found.AddRange(await Faults(page, "fit-empty"));
        await page.ToAsync(host.Address);
        await page.BeginAsync("Open the demo tunic");
        foreach (var step in Workspace.Steps)
        {
            await page.GoAsync(step);
            found.AddRange(await Faults(page, step));
        }
        await page.SavedAsync();
        var address = await page.MakeAddressAsync();
        found.AddRange(await Faults(page, "make-address"));
        var tester = await window.NewPageAsync();
        await tester.GotoAsync(address);
        await tester.GetByRole(AriaRole.Heading, new() { Name = "What you need" }).WaitForAsync();
        found.AddRange(await Faults(tester, "handed"));
        await tester.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await tester.AtAsync(Workspace.PieceAddress());
        await tester.ToAsync(new Uri(host.Address, "make/from"));
        await tester.GetByText("This address has no key.").WaitForAsync();
        found.AddRange(await Faults(tester, "handed-without-key"));
        await tester.ToAsync(host.Address);
        await tester.GetByRole(AriaRole.Heading, new() { Name = "Being made" }).WaitForAsync();
        found.AddRange(await Faults(tester, "shelf-being-made"));
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    /// <summary>Looks at a page as it stands at a phone's width or, as a whole, on both widths in both colour schemes, with a picture of each left in <c>out/screens</c>.</summary>
    internal static async Task<List<string>> Faults(IPage page, string name)
    {
        List<string> found = [];
        var (width, height) = (page.ViewportSize!.Width, page.ViewportSize.Height);
        foreach (var screen in Screens.Take(Extent.Of(part: 1, whole: 4)))
            found.AddRange(await Faults(page, name, screen.Width, screen.Height, screen.Scheme));
        await page.SetViewportSizeAsync(width, height);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        return found;
    }

    private static async Task<List<string>> Faults(IPage page, string name, int width, int height, ColorScheme scheme)
    {
        await page.SetViewportSizeAsync(width, height);
        await page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await page.EvaluateAsync(Settled);
        // The booklet's frame runs no script, so that no rule can be tried inside; its page has its own tests.
        var result = await page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations], Iframes = false });
        var screen = $"{name}-{width}-{scheme}".ToLowerInvariant();
        var found = result.Violations
            .Select(v => $"{screen}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html[..Math.Min(160, n.Html.Length)]))}").ToList();
        var wider = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth");
        if (wider > 0)
            found.Add($"{screen}: {wider} pixels wider than the screen");
        found.AddRange((await page.EvaluateAsync<string[]>(HiddenYetSeen)).Select(seen => $"{screen}: hidden, and yet seen: {seen}"));
        if (Extent.IsWhole)
        {
            var folder = Directory.CreateDirectory(Path.Combine(PublishedHost.Root, "out", "screens")).FullName;
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{screen}.png"), FullPage = true });
        }
        return found;
    }
}
