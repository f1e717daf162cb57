using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>What the page says of where a text is, and where it is: each way in which a device, a host or another tab fails.</summary>
public sealed partial class WhereItIsTests(Browser browser, SharedHost shared)
{
    private static readonly string[] Quiet = ["Saved", "Saving…", "On this device, sending…", "Saved on this device, waiting for the host"];

    private const string CopiesOf = """
        () => new Promise(done => {
          const request = indexedDB.open('dyepath');
          request.onsuccess = () => {
            const all = request.result.transaction('projects').objectStore('projects').getAll();
            all.onsuccess = () => { request.result.close(); done(all.result.map(copy => copy.name)); };
          };
        })
        """;

    private const string Refusing = """
        () => {
          const put = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (...all) {
            if (globalThis.refuses) throw new DOMException('The disk is full.', 'QuotaExceededError');
            return put.apply(this, all);
          };
        }
        """;

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task AStoreThatIsClearedWhileThePageIsOpenIsWrittenAgain()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync(workers: true);
        var (page, id) = await OpenGarmentAsync(host, window);
        host.Kill();
        await page.EvaluateAsync("() => new Promise((done, no) => { const r = indexedDB.deleteDatabase('dyepath'); r.onsuccess = done; r.onerror = no; })");
        await page.GetByLabel(Workspace.Title).FillAsync("After the clearing");
        await page.SavedAsync("Saved on this device, waiting for the host");
        Assert.Contains("After the clearing", await page.EvaluateAsync<string[]>(CopiesOf));
        await page.ReloadAsync();
        await page.PlannedAsync();
        Assert.Equal("After the clearing", await page.GetByLabel(Workspace.Title).InputValueAsync());
        await host.StartAsync();
        await page.ReloadAsync();
        await page.SavedAsync();
        Assert.Contains("\"After the clearing\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task OnAPhoneItIsReadWhole()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync(Phone.Wide, Phone.High);
        var (page, _) = await OpenGarmentAsync(host, window);
        host.Kill();
        await page.GetByLabel(Workspace.Title).FillAsync("A tunic in two lengths");
        await page.SavedAsync("Saved on this device, waiting for the host");
        Assert.Empty(await page.CutAsync(".topbar .save, .topbar .save > span"));
    }

    [Fact]
    public async Task ADeviceThatRefusesIsSaidAndTheHostTakesIt()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var (page, id) = await OpenGarmentAsync(host, window);
        await page.EvaluateAsync(Refusing);
        await page.EvaluateAsync("() => { globalThis.refuses = true; }");
        host.Kill();
        await page.GetByLabel(Workspace.Title).FillAsync("Nowhere yet");
        await page.TrueAsync("() => document.querySelector('.save')?.textContent.includes('Not saved')");
        Assert.Contains("it is full", await page.Locator(".save").InnerTextAsync(), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save it as a file" }).WaitForAsync();
        Assert.True(await page.EvaluateAsync<bool>("() => { const leaving = new Event('beforeunload', { cancelable: true }); dispatchEvent(leaving); return leaving.defaultPrevented; }"));
        await host.StartAsync();
        await page.GetByLabel(Workspace.Title).FillAsync("On the host alone");
        await page.SavedAsync();
        Assert.Contains("\"On the host alone\"", await host.StoredAsync(id), StringComparison.Ordinal);
        Assert.False(await page.EvaluateAsync<bool>("() => { const leaving = new Event('beforeunload', { cancelable: true }); dispatchEvent(leaving); return leaving.defaultPrevented; }"));
        await page.EvaluateAsync("() => { globalThis.refuses = false; }");
        await page.GetByLabel(Workspace.Title).FillAsync("On both");
        await page.SavedAsync();
        Assert.Contains("On both", await page.EvaluateAsync<string[]>(CopiesOf));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task TwoTabsThatEditAtOnceKeepBothAndSheChoosesEvenAfterAReload()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var (first, id) = await OpenGarmentAsync(host, window);
        var second = await window.OpenProjectAsync(host, id);
        host.Kill();
        // Neither hears of the other before both have written.
        foreach (var tab in new[] { first, second })
            await tab.EvaluateAsync("() => { BroadcastChannel.prototype.postMessage = () => { }; }");
        await first.GetByLabel(Workspace.Title).FillAsync("From the first");
        await first.SavedAsync("Saved on this device, waiting for the host");
        await second.GetByLabel(Workspace.Title).FillAsync("From the second");
        var asked = await Asked(first, second);
        await asked.GetByLabel(Workspace.Title).FillAsync("Typed in the conflict");
        await asked.TrueAsync("() => document.querySelector('.save')?.textContent.includes('yours is saved on this device')");
        Assert.Contains("Typed in the conflict", await asked.EvaluateAsync<string[]>(CopiesOf));
        await first.CloseAsync();
        await second.CloseAsync();
        await host.StartAsync();
        var page = await window.NewPageAsync();
        await page.GotoAsync($"{host.Address}p/{id}/garment");
        await page.Locator(".conflict").WaitForAsync();
        var shown = await page.GetByLabel(Workspace.Title).InputValueAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep both, the one shown as a copy" }).ClickAsync();
        await page.SavedAsync();
        await page.GotoAsync($"{host.Address}p/{id}/garment");
        await page.SavedAsync();
        var other = await page.GetByLabel(Workspace.Title).InputValueAsync();
        Assert.NotEqual(shown, other);
        Assert.Contains("Typed in the conflict", new[] { shown, other });
        Assert.Contains(new[] { shown, other }, text => text.StartsWith("From the", StringComparison.Ordinal));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task GoingOnWithTheOtherTakesWhatItHasBecomeAndEndsItInBothTabs()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var (first, second) = await OpenTwiceAsync(host, window);
        await WriteOverAsync(first, second, "slow river moss", "dune");
        await first.Locator(".conflict").WaitForAsync();
        await second.GetByLabel(Workspace.Title).FillAsync("dune two 1");
        await first.TrueAsync("() => document.querySelector('.conflict-other')?.textContent.includes('dune two 1')");
        Assert.Equal("Yours: title is “slow river moss”.", await first.Locator(".conflict-mine").InnerTextAsync());
        await first.GetByRole(AriaRole.Button, new() { Name = "Go on with the other" }).ClickAsync();
        foreach (var page in new[] { first, second })
        {
            await page.Locator(".conflict").WaitForAsync(new() { State = WaitForSelectorState.Detached });
            await page.SavedAsync();
            Assert.Equal("dune two 1", await page.GetByLabel(Workspace.Title).InputValueAsync());
        }
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task HersStaysHersOverAReload()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync(workers: true);
        var (first, second) = await OpenTwiceAsync(host, window);
        host.Kill();
        await WriteOverAsync(first, second, "A-rose", "B-clay");
        await first.Locator(".conflict").WaitForAsync();
        await second.GetByLabel(Workspace.Title).FillAsync("B-clay, later");
        await first.TrueAsync("() => document.querySelector('.conflict-other')?.textContent.includes('B-clay, later')");
        await first.ReloadAsync();
        await first.Locator(".conflict").WaitForAsync();
        Assert.Equal("Yours: title is “A-rose”.", await first.Locator(".conflict-mine").InnerTextAsync());
        Assert.Equal("The other: title is “B-clay, later”.", await first.Locator(".conflict-other").InnerTextAsync());
        Assert.Equal("A-rose", await first.GetByLabel(Workspace.Title).InputValueAsync());
    }

    private static async Task<(IPage First, IPage Second)> OpenTwiceAsync(PublishedHost host, IBrowserContext window)
    {
        var (first, id) = await OpenGarmentAsync(host, window);
        return (first, await window.OpenProjectAsync(host, id));
    }

    /// <summary>The second tab writes into the title in the moment in which the first one's appears there.</summary>
    private static async Task WriteOverAsync(IPage first, IPage second, string one, string other)
    {
        var written = second.EvaluateAsync("""
            ([one, other]) => new Promise(done => {
              const title = document.querySelector('#at-title');
              const look = () => {
                if (title.value !== one) { setTimeout(look, 2); return; }
                title.value = other;
                title.dispatchEvent(new Event('input', { bubbles: true }));
                done();
              };
              look();
            })
            """, new[] { one, other });
        await first.GetByLabel(Workspace.Title).FillAsync(one);
        await written;
        await second.Locator(".conflict").WaitForAsync();
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task AnErrorOfTheHostIsTriedAgainByItself()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var (page, id) = await OpenGarmentAsync(host, window);
        var failed = 0;
        await page.RouteAsync(ProjectApi(), async route =>
        {
            if (route.Request.Method == "PUT" && failed++ < 2)
                await route.FulfillAsync(new() { Status = 500, ContentType = "text/plain", Body = "no" });
            else
                await route.ContinueAsync();
        });
        await page.GetByLabel(Workspace.Title).FillAsync("Sent again");
        await page.SavedAsync("Saved on this device, waiting for the host");
        await page.SavedAsync();
        Assert.True(failed > 2);
        Assert.Contains("\"Sent again\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task AHostThatLostItsDatabaseHidesNothingAndGetsItBack()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var (page, id) = await OpenGarmentAsync(host, window);
        await page.GetByLabel(Workspace.Title).FillAsync("The only copy");
        await page.SavedAsync();
        await page.UntilAsync(CopyIsSent, "The only copy");
        host.Kill();
        host.LoseEverything();
        await page.CloseAsync();
        await host.StartAsync();
        page = await window.OpenShelfAsync(host);
        await page.GetByRole(AriaRole.Link, new() { Name = "The only copy", Exact = true }).WaitForAsync();
        await page.GetByText("The host no longer has this project").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it back on the host" }).ClickAsync();
        await page.GetByText("The host no longer has this project").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Contains("\"The only copy\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WithoutAnyStoreOfItsOwnTheBrowserWorksWithTheHostAlone()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        await window.AddInitScriptAsync("Object.defineProperty(window, 'indexedDB', { value: undefined })");
        var page = await window.OpenShelfAsync(host);
        await page.GetByText("This browser keeps nothing on this device").WaitForAsync();
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        await page.GetByLabel(Workspace.Title).FillAsync("On the host alone");
        await page.SavedAsync();
        await page.ReloadAsync();
        await page.PlannedAsync();
        Assert.Equal("On the host alone", await page.GetByLabel(Workspace.Title).InputValueAsync());
        Assert.Contains("\"On the host alone\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    /// <summary>The processor twelve times slower, the host answering in 0 to 2 s: no conflict, and everything is there.</summary>
    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public Task QuickEditsOnASlowMachineAreAllThere() => EditQuicklyAsync(edits: 40, seed: 1);

    /// <summary>For the figures in docs/reliability.md: run it by itself.</summary>
    [Fact(Explicit = true)]
    public Task TwoHundredQuickEditsOnASlowMachineAreAllThere() => EditQuicklyAsync(edits: 200, seed: 2);

    private async Task EditQuicklyAsync(int edits, int seed)
    {
        var random = new Random(seed);
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.SavedAsync();
        await page.RouteAsync(ProjectApi(), async route =>
        {
            await Task.Delay(random.Next(2_000));
            await route.ContinueAsync();
        });
        var slow = await window.NewCDPSessionAsync(page);
        await slow.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 12 });
        // Every state that the page shows is written down.
        await page.EvaluateAsync("""
            () => {
              globalThis.shown = new Set();
              new MutationObserver(() => { if (document.querySelector('.conflict')) globalThis.shown.add('conflict'); globalThis.shown.add(document.querySelector('.save')?.textContent.trim()); })
                .observe(document, { subtree: true, childList: true, characterData: true });
            }
            """);
        var name = page.Locator("#at-yarn-sections-0-name");
        for (var i = 1; i <= edits; i++)
            await name.FillAsync(string.Create(CultureInfo.InvariantCulture, $"shade {i}"));
        await slow.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 1 });
        await page.SavedAsync();
        var shown = await page.EvaluateAsync<string[]>("() => [...globalThis.shown]");
        Assert.DoesNotContain("conflict", shown);
        Assert.All(shown, s => Assert.Contains(s, Quiet));
        await page.ReloadAsync();
        await page.PlannedAsync();
        Assert.Equal($"shade {edits}", await name.InputValueAsync());
        Assert.Contains($"\"shade {edits}\"", await host.StoredAsync(id), StringComparison.Ordinal);
    }

    private const string CopyIsSent = """
        name => new Promise(done => {
          const request = indexedDB.open('dyepath');
          request.onsuccess = () => {
            const all = request.result.transaction('projects').objectStore('projects').getAll();
            all.onsuccess = () => { request.result.close(); done(all.result.some(copy => copy.name === name && copy.isSent)); };
          };
        })
        """;

    private static async Task<IPage> Asked(IPage first, IPage second)
    {
        for (var i = 0; i < 300; i++)
        {
            foreach (var page in new[] { second, first })
            {
                if (await page.Locator(".conflict").IsVisibleAsync())
                    return page;
            }
            await Task.Delay(100);
        }
        throw new InvalidOperationException("Neither tab asks.");
    }

    private static async Task<(IPage Page, string Id)> OpenGarmentAsync(PublishedHost host, IBrowserContext window)
    {
        var page = await window.OpenShelfAsync(host);
        var id = await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("garment");
        await page.SavedAsync();
        if (await page.EvaluateAsync<bool>("() => 'serviceWorker' in navigator && !!navigator.serviceWorker"))
            await page.EvaluateAsync("() => Promise.race([navigator.serviceWorker.ready.then(() => true), new Promise(done => setTimeout(done, 20000))])");
        return (page, id);
    }

    [GeneratedRegex("/api/projects/[0-9a-f-]+$")]
    private static partial Regex ProjectApi();
}
