using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A long session of taps and takings back, in which the browser is killed over and over.</summary>
public sealed class KilledTests
{
    /// <summary>Says every place that the page has shown.</summary>
    private const string SayingPlaces = """
        new MutationObserver(() => { if (document.title !== globalThis.saidPlace) console.info('place ' + (globalThis.saidPlace = document.title)); })
          .observe(document, { subtree: true, childList: true, characterData: true });
        """;

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public Task NothingThatWasShownIsLost() => KillAsync(times: 10, seed: 1);

    /// <summary>For the closing figures: run it by itself.</summary>
    [Fact(Explicit = true)]
    public Task NothingThatWasShownIsLostInALongSession() => KillAsync(times: 100, seed: 2);

    private static async Task KillAsync(int times, int seed)
    {
        var random = new Random(seed);
        await using var host = new PublishedHost();
        await host.StartAsync();
        var id = await host.BeginAsync(Pieces.Tunic);
        await using var chromium = new OwnChromium();
        var page = await OpenAsync(chromium, host, id);
        await page.FirstRowAsync();
        var (row, survived, taps, unshown) = (1, 0, 0, 0);
        for (var kill = 0; kill < times; kill++)
        {
            for (var i = random.Next(1, 9); i > 0; i--)
            {
                // Before the last row is reached, she takes back.
                var back = row > 1 && (row > 60 || random.Next(5) == 0);
                await page.PressAsync(back ? "Backspace" : "PageDown");
                row += back ? -1 : 1;
                taps++;
                Assert.Equal(row, Pieces.Row(await page.TitleAsync()));
            }
            // One tap more, and the end comes somewhere between the finger and the picture; one time in three, to the tab first.
            var shown = row;
            void Hear(object? sender, IConsoleMessage said) => shown = Pieces.Row(said.Text) ?? shown;
            page.Console += Hear;
            var tap = page.EvaluateAsync("() => document.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true }))");
            await Task.Delay(random.Next(0, 40));
            if (kill % 3 == 2)
            {
                await CrashAsync(page);
                await Task.Delay(100);
            }
            await chromium.KillAsync();
            await Task.WhenAny(tap, Task.Delay(2_000));
            taps++;
            page = await OpenAsync(chromium, host, id);
            var found = Pieces.Row(await page.TitleAsync());
            // It may not even have left the finger; but what was shown is there.
            Assert.True(found == row + 1 || (found == row && shown == row), $"Kill {kill}: row {row}, then {shown} shown, {found} found.");
            if (shown == row)
                unshown++;
            row = found!.Value;
            survived++;
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{survived} kills survived over {taps} taps; {unshown} came before the tap was shown.");
    }

    private static async Task CrashAsync(IPage page)
    {
        try
        {
            await page.GotoAsync("chrome://crash", new() { Timeout = 2_000 });
        }
        catch (PlaywrightException)
        {
            // A crashed tab answers nothing.
        }
        catch (TimeoutException)
        {
        }
    }

    private static async Task<IPage> OpenAsync(OwnChromium chromium, PublishedHost host, string id)
    {
        var page = await chromium.OpenAsync(390, 844);
        await page.AddInitScriptAsync(SayingPlaces);
        await page.OpenPieceAsync(host, id);
        return page;
    }
}
