using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>The page Fabric's picture: as cloth from near, plain on request, both in the plan's colours.</summary>
public sealed class ClothTests(Browser browser, SharedHost shared)
{
    /// <summary>
    /// The colour of the key that lies nearest to the mean of a few pixels about each point of a grid over the middle of the picture.
    /// </summary>
    private const string Sampled = """
        () => {
          const canvas = document.getElementById('fabric-board'), context = canvas.getContext('2d');
          const palette = [...document.querySelectorAll('.colour-key .swatch')].map(s => getComputedStyle(s).backgroundColor.match(/\d+/g).map(Number));
          const nearest = ([r, g, b]) => palette.map((p, i) => [Math.hypot(p[0] - r, p[1] - g, p[2] - b), i]).sort((a, b) => a[0] - b[0])[0][1];
          const found = [];
          for (let x = .2; x < .8; x += .02) {
            for (let y = .25; y < .75; y += .04) {
              const { data } = context.getImageData(x * canvas.width - 3, y * canvas.height - 3, 7, 7);
              found.push(nearest([0, 1, 2].map(k => data.filter((_, i) => i % 4 === k).reduce((a, b) => a + b) / 49)));
            }
          }
          return found;
        }
        """;

    [Fact]
    public async Task FromNearTheFabricIsYarnOfThePlansColoursAndPlainIsRemembered()
    {
        await using var desk = await browser.DeskAsync(shared);
        var page = desk.Page;
        await page.BeginAsync("Open the demo tunic");
        await page.GoAsync("fabric");
        var board = page.Locator("#fabric-board");
        await Assertions.Expect(board).ToHaveAttributeAsync("data-shows", new Regex("cells|cloth"));
        var drawn = page.Locator("#see-drawn");
        var nearer = page.GetByRole(AriaRole.Button, new() { Name = "Nearer" });
        for (var clicks = 0; clicks < 3; clicks++)
            await nearer.ClickAsync();
        await Assertions.Expect(board).ToHaveAttributeAsync("data-shows", "cloth");
        await Assertions.Expect(board).ToHaveAttributeAsync("aria-label", new Regex("Drawn as cloth"));
        var (cloth, tones) = (await page.EvaluateAsync<int[]>(Sampled), await Tones(page));
        await drawn.FocusAsync();
        await drawn.SelectOptionAsync("plain, with symbols");
        await Assertions.Expect(board).ToHaveAttributeAsync("data-shows", "cells");
        await Assertions.Expect(board).ToHaveAttributeAsync("aria-label", new Regex("Drawn plain, with symbols"));
        var (plain, flat) = (await page.EvaluateAsync<int[]>(Sampled), await Tones(page));
        // Yarn reaches over into its neighbours' places, but what is seen there is what the plan has.
        var alike = cloth.Zip(plain).Count(s => s.First == s.Second) / (double)plain.Length;
        Assert.InRange(alike, 0.7, 1);
        Assert.True(tones > 10 * flat, $"{tones} colours as cloth, {flat} plain");
        await page.GoAsync("garment");
        await page.GoAsync("fabric");
        await Assertions.Expect(drawn).ToHaveValueAsync("plain");
        await drawn.SelectOptionAsync("as cloth");
        for (var clicks = 0; clicks < 3; clicks++)
            await nearer.ClickAsync();
        await Assertions.Expect(board).ToHaveAttributeAsync("data-shows", "cloth");
    }

    /// <summary>How many different colours the middle of the picture has.</summary>
    private static Task<int> Tones(IPage page) => page.EvaluateAsync<int>("""
        () => {
          const canvas = document.getElementById('fabric-board');
          const { data } = canvas.getContext('2d').getImageData(canvas.width / 2 - 60, canvas.height / 2 - 60, 120, 120);
          return new Set(new Uint32Array(data.buffer)).size;
        }
        """);
}
