using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>The whole way without a pointer.</summary>
public sealed class KeyboardTests(Browser browser, SharedHost shared)
{
    [Fact]
    public async Task ADesignerReachesChangesAndUndoesByKeysAlone()
    {
        await using var desk = await browser.DeskAsync(shared);
        var page = desk.Page;
        await Reach(page, "New project");
        await page.Keyboard.PressAsync("Enter");
        await page.AtAsync(new Regex("/yarn$"));
        await page.PlannedAsync();
        await Reach(page, "Look round with a sample yarn");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#garment-fabric").WaitForAsync();
        // A new page begins at its heading; the steps lie before it.
        await Reach(page, "Garment", "Shift+Tab");
        await page.Keyboard.PressAsync("Enter");
        await page.AtAsync(new Regex("/garment$"));
        await Reach(page, Workspace.Title);
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("By keys");
        await page.SavedAsync();
        await page.Keyboard.PressAsync("Control+z");
        await page.TrueAsync("() => document.querySelector('#at-title').value !== 'By keys'");
    }

    /// <summary>Moves until the element of that name has the focus.</summary>
    private static async Task Reach(IPage page, string name, string key = "Tab")
    {
        for (var i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync(key);
            var focused = await page.EvaluateAsync<string>(
                "() => { const e = document.activeElement; return (e?.labels?.[0]?.textContent ?? e?.textContent ?? '').trim(); }");
            if (focused == name || focused.StartsWith(name, StringComparison.Ordinal))
                return;
        }
        Assert.Fail($"Sixty presses of {key} do not reach {name}.");
    }
}
