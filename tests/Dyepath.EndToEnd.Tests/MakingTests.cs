using System.Text.RegularExpressions;
using Dyepath.Core.Making.Log;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>Beside the hook, at the size of a phone.</summary>
public sealed partial class MakingTests(Browser browser, SharedHost shared)
{
    [Fact]
    public async Task AWholeSmallPieceIsMadeByTapsAndByKeys()
    {
        await using var desk = await browser.DeskAsync(shared, Phone.Wide, Phone.High);
        var page = desk.Page;
        var id = await shared.Host.BeginAsync(Pieces.Mat);
        await page.AtFirstRowAsync(shared.Host, id);
        Assert.Matches("Row 1 ", await page.HeadingAsync());

        // The front half by taps, each row's end looked at; a slip of the thumb taken back.
        for (var row = 1; row < 9; row++)
        {
            Assert.Equal(row, Pieces.Row(await page.TitleAsync()));
            await page.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "on the count" }));
        }
        // A thumb that taps twice finishes one row.
        await page.WaitForTimeoutAsync(320);
        await page.MovesAsync(() => page.Locator(".make-done").DblClickAsync());
        await page.WaitForTimeoutAsync(320);
        Assert.Equal(10, Pieces.Row(await page.TitleAsync()));
        await page.MovesAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Take back", Exact = true }).ClickAsync());
        Assert.Equal(9, Pieces.Row(await page.TitleAsync()));

        // The rest by keys, as a pedal sends them, through making up and the border to the end.
        string[] keys = ["PageDown", " ", "Enter"];
        var presses = 0;
        while (!(await page.TitleAsync()).StartsWith("Everything is done", StringComparison.Ordinal))
        {
            Assert.True(++presses < 100, await page.TitleAsync());
            await page.PressAsync(keys[presses % 3]);
        }
        await page.SavedAsync();
        var log = await shared.Host.LogAsync(id);
        // Eighteen rows, two rounds of the border, and the one that was taken back.
        Assert.Equal((18 + 2 + 1, 1, 8), (log.Count(e => e.Kind == EntryKind.Row), log.Count(e => e.Kind == EntryKind.Back), log.Count(e => e.Phase == 0)));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WithoutAConnectionItGoesOnAndIsBroughtTogetherAfterwards()
    {
        await using var phone = await Phone.OpenAloneAsync(browser, Pieces.Tunic, workers: true);
        var page = await phone.Window.NewPageAsync();
        await page.OpenPieceAsync(phone.Host, phone.Id);
        await page.WorkerReadyAsync();
        await page.FirstRowAsync();
        await page.SavedAsync();

        await phone.Window.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.Locator(".make-done").WaitForAsync();
        for (var row = 1; row <= 5; row++)
            await page.PressAsync("PageDown");
        Assert.Equal(6, Pieces.Row(await page.TitleAsync()));
        await page.ReloadAsync();
        await page.Locator(".make-done").WaitForAsync();
        Assert.Equal(6, Pieces.Row(await page.TitleAsync()));

        await phone.Window.SetOfflineAsync(false);
        await page.SavedAsync();
        Assert.Equal(5, (await phone.Host.LogAsync(phone.Id)).Count(e => e.Kind == EntryKind.Row));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task AHostThatWasStoppedGetsTheTapsWhenItIsBack()
    {
        await using var phone = await Phone.OpenAloneAsync(browser, Pieces.Tunic);
        var page = await phone.AtFirstRowAsync();
        await page.SavedAsync();
        phone.Host.Kill();
        await page.PressAsync("PageDown");
        // Shown for a moment alone, so that it is looked for at every frame.
        await page.WaitForFunctionAsync("() => document.querySelector('.save')?.textContent.trim() === 'On this device, sending…'");
        await page.SavedAsync("On this device, waiting for the host");
        Assert.Empty(await page.CutAsync(".make-top .save, .make-top .save > span"));
        await phone.Host.StartAsync();
        await page.SavedAsync();
        Assert.Equal(1, (await phone.Host.LogAsync(phone.Id)).Count(e => e.Kind == EntryKind.Row));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WhileNobodyActsNothingRuns()
    {
        await using var phone = await Phone.OpenAsync(browser, shared, Pieces.Tunic);
        // Whatever would wake the processor by itself is counted.
        await phone.Window.AddInitScriptAsync("""
            globalThis.woken = 0;
            for (const name of ['setTimeout', 'setInterval', 'requestAnimationFrame']) {
              const asked = globalThis[name];
              globalThis[name] = (work, ...rest) => asked.call(globalThis, (...given) => { woken++; return work(...given); }, ...rest);
            }
            """);
        var page = await phone.AtFirstRowAsync();
        await page.PressAsync("PageDown");
        await page.SavedAsync();
        await page.WaitForTimeoutAsync(2_000);
        var asked = 0;
        page.Request += (_, _) => asked++;
        await page.EvaluateAsync("woken = 0");
        await page.WaitForTimeoutAsync(6_000);
        Assert.Equal((0, 0, 0), (await page.EvaluateAsync<int>("woken"), await page.EvaluateAsync<int>("document.getAnimations().length"), asked));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task TwoDevicesFollowOnePieceAndAConflictIsShown()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        var id = await host.BeginAsync(Pieces.Tunic);
        await using var phoneWindow = await browser.WindowAsync(Phone.Wide, Phone.High);
        await using var tabletWindow = await browser.WindowAsync(820, 1180);
        var phone = await phoneWindow.NewPageAsync();
        await phone.OpenPieceAsync(host, id);
        await phone.FirstRowAsync();
        await phone.PressAsync("PageDown");
        await phone.SavedAsync();

        var tablet = await tabletWindow.NewPageAsync();
        await tablet.OpenPieceAsync(host, id);
        Assert.Equal(2, Pieces.Row(await tablet.TitleAsync()));
        await tablet.PressAsync("PageDown");
        await tablet.PressAsync("PageDown");
        await tablet.SavedAsync();

        // The phone, which has not heard of it, goes on from its own place.
        await phone.PressAsync("PageDown");
        await phone.GetByRole(AriaRole.Heading, new() { Name = "This piece went on in two places" }).WaitForAsync();
        await Assertions.Expect(phone.Locator(".make-two > div").First).ToContainTextAsync("Row 3");
        await Assertions.Expect(phone.Locator(".make-two > div").Last).ToContainTextAsync("Row 4");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Go on from there" }).ClickAsync();
        await phone.Locator(".make-done").WaitForAsync();
        Assert.Equal(4, Pieces.Row(await phone.TitleAsync()));
    }

    [Fact]
    public async Task ALostPlaceIsFoundByTheRowsFirstColours()
    {
        await using var desk = await browser.DeskAsync(shared, Phone.Wide, Phone.High);
        var page = desk.Page;
        var id = await shared.Host.BeginAsync(Pieces.Tunic);
        await page.AtFirstRowAsync(shared.Host, id);
        for (var row = 1; row < 12; row++)
            await page.PressAsync("PageDown");
        var runs = await page.Locator(".make-runs li").AllInnerTextsAsync();

        // Four rows on, she rips back to row 12 and looks at its beginning.
        for (var row = 12; row < 16; row++)
            await page.PressAsync("PageDown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Where am I?" }).ClickAsync();
        foreach (var run in runs.Take(4))
        {
            var (count, name) = (int.Parse(Number().Match(run).Value, null), Name().Match(run).Groups[1].Value.Trim());
            for (var stitch = 0; stitch < count; stitch++)
                await page.Locator(".make-colours").GetByRole(AriaRole.Button, new() { Name = name }).ClickAsync();
        }
        await page.Locator(".make-found").GetByRole(AriaRole.Button, new() { Name = "Row 12", Exact = true }).ClickAsync();
        await page.Locator(".make-done").WaitForAsync();
        Assert.Equal(12, Pieces.Row(await page.TitleAsync()));
        Assert.Equal(runs, await page.Locator(".make-runs li").AllInnerTextsAsync());
        await page.PressAsync("Backspace");
        Assert.Equal(16, Pieces.Row(await page.TitleAsync()));
    }

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task RunByRunItSpeaksBuzzesAndStaysAwake()
    {
        await using var phone = await Phone.OpenAsync(browser, shared, Pieces.Tunic);
        await phone.Window.AddInitScriptAsync("""
            globalThis.did = { said: [], buzzed: [], awake: 0, timers: 0 };
            Object.defineProperty(globalThis, 'speechSynthesis', { value: { cancel() {}, getVoices: () => [{ name: 'Shore', lang: 'en-GB' }], speak: u => did.said.push([u.text, u.rate]) } });
            globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
            Navigator.prototype.vibrate = ms => { did.buzzed.push(ms); return true; };
            Object.defineProperty(Navigator.prototype, 'wakeLock', { value: { request: async () => { did.awake++; return { addEventListener() {}, release: async () => { did.awake--; } }; } } });
            """);
        var page = await phone.AtFirstRowAsync();
        Assert.Equal(1, await page.EvaluateAsync<int>("did.awake"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Settings" }).ClickAsync();
        await page.GetByLabel("one colour of it").CheckAsync();
        await page.GetByLabel("Say what comes next").CheckAsync();
        await page.GetByLabel("Voice").SelectOptionAsync("Shore");
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the work" }).ClickAsync();

        var runs = await page.Locator(".make-runs li").CountAsync();
        await page.EvaluateAsync("did.said.length = did.buzzed.length = 0");
        for (var run = 0; run < runs; run++)
        {
            await page.Keyboard.PressAsync(run == 1 ? "l" : run == 2 ? "e" : " ");
            if (run + 1 < runs)
                await Assertions.Expect(page.Locator(".make-runs .past")).ToHaveCountAsync(run + 1);
        }
        await page.TrueAsync("() => document.title.includes('Row 2 ')");
        Assert.Equal(2, Pieces.Row(await page.TitleAsync()));
        var said = await page.EvaluateAsync<string[]>("did.said.map(s => s[0])");
        Assert.Equal(runs, said.Length);
        Assert.Matches("^This deep water is on the count; .* [0-9]+ [a-z ]+$", said[0]);
        Assert.Matches("^Row 2 ", said[^1]);
        var buzzed = await page.EvaluateAsync<int[]>("did.buzzed");
        Assert.Equal(runs, buzzed.Length);
        Assert.True(buzzed[^1] > buzzed[0]);

        // What is far from all that is known is to be counted again; it is so.
        await page.GetByRole(AriaRole.Button, new() { Name = "Colours", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "3 early" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "It is so" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the work" }).WaitForAsync();
        await page.SavedAsync();
        Assert.Equal(3, (await phone.Host.LogAsync(phone.Id))[^1].Phase);
        Assert.Equal([0, -1, 1], (await phone.Host.LogAsync(phone.Id)).Where(e => e.Kind == EntryKind.Run).Take(3).Select(e => e.Phase ?? 9));

        await page.GetByTitle("Leave this piece").ClickAsync();
        await page.TrueAsync("() => did.awake === 0");
    }

    [Fact]
    [Trait(Extent.Trait, Extent.Whole)]
    public async Task TheMakersOwnYarnComesFirst()
    {
        await using var phone = await Phone.OpenAsync(browser, shared, Pieces.Tunic);
        var page = await phone.Window.NewPageAsync();
        await page.GotoAsync(phone.Address);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your yarn first" }).WaitForAsync();
        int[] counts = [5, 5, 4, 4, 4, 4, 5, 5, 4, 4];
        for (var i = 0; i < counts.Length; i++)
            await page.Locator(".make-count input").Nth(i).FillAsync($"{counts[i]}");
        await page.GetByText("Go up a hook size").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin as worked out for my yarn" }).ClickAsync();
        await page.Locator(".make-done").WaitForAsync();
        await page.FirstRowAsync();
        await page.ReloadAsync();
        await page.Locator(".make-done").WaitForAsync();
        // Four of foam now, where the pattern has three.
        Assert.Contains(await page.Locator(".make-runs li").AllInnerTextsAsync(), run => Regex.IsMatch(run, "^4\\s*F\\s*foam"));
        Assert.Equal(1, Pieces.Row(await page.TitleAsync()));
    }

    [Fact]
    public async Task NothingOfItBreaksAnAccessibilityRule()
    {
        await using var phone = await Phone.OpenAsync(browser, shared, Pieces.Tunic);
        var page = await phone.Window.NewPageAsync();
        await page.GotoAsync(phone.Address);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your yarn first" }).WaitForAsync();
        var found = await EveryPageTests.Faults(page, "make-yarn");
        await page.OpenPieceAsync(phone.Host, phone.Id);
        found.AddRange(await EveryPageTests.Faults(page, "make-step"));
        await page.FirstRowAsync();
        for (var row = 1; row < 14; row++)
            await page.MovesAsync(() => page.Keyboard.PressAsync(row % 3 == 0 ? "l" : "o"));
        found.AddRange(await EveryPageTests.Faults(page, "make-row"));
        await page.GetByRole(AriaRole.Button, new() { Name = "other" }).ClickAsync();
        found.AddRange(await EveryPageTests.Faults(page, "make-other"));
        foreach (var panel in (string[])["where", "colours", "pieces", "settings"])
        {
            await page.Locator($"#make-to-{panel}").ClickAsync();
            await page.Locator(".make-heading").WaitForAsync();
            found.AddRange(await EveryPageTests.Faults(page, $"make-{panel}"));
        }
        await page.GetByLabel("one colour of it").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the work" }).ClickAsync();
        await page.Locator(".make-now").WaitForAsync();
        found.AddRange(await EveryPageTests.Faults(page, "make-run"));
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Fact]
    public async Task AScreenReaderHearsTheRow()
    {
        await using var desk = await browser.DeskAsync(shared, Phone.Wide, Phone.High);
        var page = desk.Page;
        var id = await shared.Host.BeginAsync(Pieces.Tunic);
        await page.AtFirstRowAsync(shared.Host, id);
        await Assertions.Expect(page.Locator("main [role=status]").First).ToHaveTextAsync("Front: Row 1 (RS) of 86");
        await page.GetByRole(AriaRole.List, new() { Name = "The row in the order of work" }).WaitForAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img).First).ToHaveAccessibleNameAsync(new Regex("in the order of work: 5 deep water, 4 shallows, 3 foam"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("deep water, on the count|kelp, on the count|on the count") }).First.WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Row done" }).WaitForAsync();
    }

    [GeneratedRegex(@"^\d+")]
    private static partial Regex Number();

    [GeneratedRegex(@"^\d+\s*\S+\s+(.*)$", RegexOptions.Singleline)]
    private static partial Regex Name();
}
