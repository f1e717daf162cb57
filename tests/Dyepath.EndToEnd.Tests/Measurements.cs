using System.Globalization;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>
/// Figures for docs/performance.md, printed and never asserted. Run them by themselves on a quiet machine:
/// <c>dotnet run -c Release --project tests/Dyepath.EndToEnd.Tests -- -explicit only -showLiveOutput</c>.
/// </summary>
public sealed class Measurements(Browser browser)
{
    private const string FromInputToPicture = """
        async () => {
          const box = document.querySelector('#at-garment-belowWaist');
          const value = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
          const table = () => document.querySelector('[aria-label="Finished measures by size"]').innerText;
          const times = [];
          for (let i = 0; i < 40; i++) {
            const before = table();
            const from = performance.now();
            const shown = new Promise(resolve => {
              const watch = new MutationObserver(() => {
                if (document.querySelector('.draft-head .state').textContent.includes('Working') || table() === before) return;
                watch.disconnect();
                // The frame after the change is the one that shows it.
                requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - from), 0));
              });
              watch.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
            });
            value.call(box, i % 2 ? '26' : '40');
            box.dispatchEvent(new Event('input', { bubbles: true }));
            times.push(await shown);
            await new Promise(r => setTimeout(r, 120));
          }
          return times;
        }
        """;

    [Fact(Explicit = true)]
    public async Task Opening_and_answering()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        for (var run = 0; run < 3; run++)
        {
            await using var window = await browser.WindowAsync();
            var page = await window.NewPageAsync();
            var session = await window.NewCDPSessionAsync(page);
            await session.SendAsync("Network.enable");
            double bytes = 0;
            var requests = 0;
            session.Event("Network.loadingFinished").OnEvent += (_, finished) =>
            {
                bytes += finished!.Value.GetProperty("encodedDataLength").GetDouble();
                requests++;
            };
            var cold = await Opening(page, () => page.GotoAsync(host.Address.ToString()));
            await page.WaitForTimeoutAsync(1000);
            Say($"opened cold in {cold:0} ms, {bytes / 1e6:0.00} MB in {requests} requests");
            Say($"opened warm in {await Opening(page, () => page.ReloadAsync()):0} ms");
        }
        await using var desk = await browser.WindowAsync();
        var project = await desk.OpenShelfAsync(host);
        await project.BeginAsync("Open the demo tunic");
        await project.GoAsync("garment");
        foreach (var round in (string[])["first forty changes", "next forty"])
        {
            var times = (await project.EvaluateAsync<double[]>(FromInputToPicture)).Order().ToArray();
            Say($"from input to picture, nine sizes, {round}: median {times[20]:0} ms, 95th percentile {times[37]:0} ms, worst {times[39]:0} ms");
        }
        await project.GoAsync("pattern");
        for (var run = 0; run < 3; run++)
        {
            var watch = System.Diagnostics.Stopwatch.StartNew();
            await project.RunAndWaitForDownloadAsync(
                () => project.GetByRole(AriaRole.Button, new() { Name = "PDF" }).First.ClickAsync());
            Say($"PDF of nine sizes in {watch.ElapsedMilliseconds} ms");
        }
    }

    /// <summary>From the key, or the finger, to the frame that shows the next row, with the tap on the disk by then.</summary>
    private const string FromTapToPicture = """
        async key => {
          const times = [];
          for (let i = 0; i < 60; i++) {
            const before = document.title;
            const from = performance.now();
            const shown = new Promise(resolve => {
              const watch = new MutationObserver(() => {
                if (document.title === before) return;
                watch.disconnect();
                requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - from), 0));
              });
              watch.observe(document, { subtree: true, childList: true, characterData: true });
            });
            if (key) document.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
            else document.querySelector('.make-three .on').click();
            times.push(await shown);
            await new Promise(r => setTimeout(r, 150));
            if (i % 20 === 19) for (let b = 0; b < 20; b++) { document.dispatchEvent(new KeyboardEvent('keydown', { key: 'Backspace', bubbles: true })); await new Promise(r => setTimeout(r, 120)); }
          }
          return times;
        }
        """;

    [Fact(Explicit = true)]
    public async Task Tapping_beside_the_hook()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        var id = await host.BeginAsync(Pieces.Tunic);
        await using var window = await browser.WindowAsync(390, 844);
        var page = await window.NewPageAsync();
        await page.OpenPieceAsync(host, id);
        await page.FirstRowAsync();
        foreach (var (key, how) in ((string? Key, string How)[])[("PageDown", "a key, a row"), (null, "a tap, a row and how it ended"), ("PageDown", "a key, a row, once more")])
        {
            var times = (await page.EvaluateAsync<double[]>(FromTapToPicture, key)).Order().ToArray();
            Say($"from tap to picture, {how}: median {times[30]:0} ms, 95th percentile {times[56]:0} ms, worst {times[59]:0} ms");
        }
    }

    [Fact(Explicit = true)]
    public async Task Stalls_while_an_extreme_document_is_opened_and_edited()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        foreach (var slower in (int[])[1, 4])
        {
            foreach (var (name, document) in ((string, string?)[])[("the demo", null), ("an extreme document", Extreme.Document())])
            {
                await using var window = await browser.WindowAsync();
                var page = await window.OpenShelfAsync(host);
                if (document is null)
                    await page.BeginAsync("Open the demo tunic");
                else
                    await page.ImportAsync("extreme.json", document);
                await page.SavedAsync();
                var session = await window.NewCDPSessionAsync(page);
                await session.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = slower });
                var tasks = new PageTasks(session);
                await tasks.BeginAsync();
                var watch = System.Diagnostics.Stopwatch.StartNew();
                await page.ReloadAsync();
                await page.Locator("main h1").WaitForAsync(new() { Timeout = 120_000 });
                var (fields, starting) = (watch.ElapsedMilliseconds, await tasks.TakeAsync());
                await page.PlannedAsync(300_000);
                var (planned, planning) = (watch.ElapsedMilliseconds, await tasks.TakeAsync());
                Say($"{name}, processor {slower} times slower: fields after {fields} ms (longest task, the runtime's start among them, {starting:0} ms of the processor), plan after {planned} ms: longest task {planning:0} ms");
                foreach (var step in Workspace.Steps)
                {
                    await page.Locator($"nav.steps a[href$='/{step}']").ClickAsync();
                    await page.Locator("main h1").WaitForAsync();
                    await page.WaitForTimeoutAsync(slower * 1500);
                    Say($"  {step}: longest task {await tasks.TakeAsync():0} ms");
                }
                await page.Locator("nav.steps a[href$='/garment']").ClickAsync();
                await page.WaitForTimeoutAsync(1000);
                await tasks.TakeAsync();
                for (var i = 0; i < 8; i++)
                {
                    await page.Locator("#at-garment-belowWaist").FillAsync($"{20 + i}");
                    await page.WaitForTimeoutAsync(200);
                }
                await page.PlannedAsync(300_000);
                Say($"  eight changes, one every 200 ms: longest task {await tasks.TakeAsync():0} ms");
            }
        }
    }

    private static async Task<double> Opening(IPage page, Func<Task> open)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        await open();
        await page.Locator(".shelf li").First.WaitForAsync();
        return watch.Elapsed.TotalMilliseconds;
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
