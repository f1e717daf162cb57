using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Dyepath.Core.Making.Log;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>What a maker does beside the hook, by the names she sees.</summary>
internal static partial class Pieces
{
    /// <summary>The demo's tunic in one size.</summary>
    public static string Tunic => Making(_ => { }, "M");

    /// <summary>A mat of a few rows with a border, in the demo's yarn.</summary>
    public static string Mat => Making(
        project =>
        {
            project["title"] = "Shoreline mat";
            project["garment"] = JsonNode.Parse(
                """{ "shape": "wrap", "width": "30 cm", "length": "14 cm", "edgings": [{ "where": "border", "edging": "sc", "rounds": 2 }] }""");
            project.Remove("sizes");
            project.Remove("words");
        },
        "One size");

    private static string Making(Action<JsonObject> change, string size)
    {
        var project = JsonNode.Parse(File.ReadAllText(Path.Combine(PublishedHost.Root, "demo", "tideline.json")))!.AsObject();
        project.Remove("$schema");
        change(project);
        return new JsonObject { ["makingVersion"] = 1, ["project"] = project, ["size"] = size }.ToJsonString();
    }

    /// <summary>Puts a piece on the host, as another device would.</summary>
    /// <returns>Its id.</returns>
    public static async Task<string> BeginAsync(this PublishedHost host, string making)
    {
        var id = Guid.NewGuid().ToString();
        using var http = new HttpClient { BaseAddress = host.Address };
        using var request = new HttpRequestMessage(HttpMethod.Put, $"api/makings/{id}") { Content = Json(making) };
        request.Headers.Add("Origin", host.Address.GetLeftPart(UriPartial.Authority));
        request.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Any);
        using var answer = await http.SendAsync(request);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return id;
    }

    /// <summary>The log that the host has.</summary>
    public static async Task<IReadOnlyList<Entry>> LogAsync(this PublishedHost host, string id)
    {
        using var http = new HttpClient { BaseAddress = host.Address };
        return MakingReader.Read(await http.GetByteArrayAsync(new Uri($"api/makings/{id}", UriKind.Relative))).Making!.Log;
    }

    /// <summary>Opens a piece, and goes on without counting where that is asked.</summary>
    public static async Task OpenPieceAsync(this IPage page, PublishedHost host, string id)
    {
        await page.ToAsync(new Uri(host.Address, $"make/{id}"));
        await page.Locator(".make h1").WaitForAsync();
        var unmeasured = page.GetByRole(AriaRole.Button, new() { Name = "Go on without counting" });
        if (await unmeasured.IsVisibleAsync())
            await unmeasured.ClickAsync();
        await page.Locator(".make-done").WaitForAsync();
    }

    public static Task<string> HeadingAsync(this IPage page) => page.Locator(".make h1").InnerTextAsync();

    /// <summary>Does something, and waits until the page has another place.</summary>
    public static async Task MovesAsync(this IPage page, Func<Task> act)
    {
        var before = await page.TitleAsync();
        await act();
        await page.TrueAsync("before => document.title !== before", before);
    }

    /// <summary>The great button; two taps are further apart than those of a double tap.</summary>
    public static Task TapAsync(this IPage page) => page.TapAsync(page.Locator(".make-done"));

    /// <summary>Any button that finishes.</summary>
    public static async Task TapAsync(this IPage page, ILocator button)
    {
        await page.WaitForTimeoutAsync(320);
        await page.MovesAsync(() => button.ClickAsync());
    }

    public static Task PressAsync(this IPage page, string key) => page.MovesAsync(() => page.Keyboard.PressAsync(key));

    /// <summary>The piece with its first row at hand, its yarn not counted.</summary>
    public static async Task AtFirstRowAsync(this IPage page, PublishedHost host, string id)
    {
        await page.OpenPieceAsync(host, id);
        await page.FirstRowAsync();
    }

    /// <summary>To the first row of the piece.</summary>
    public static async Task FirstRowAsync(this IPage page)
    {
        while (Row(await page.TitleAsync()) is null)
            await page.TapAsync();
    }

    /// <summary>The number of the row in a page's title.</summary>
    public static int? Row(string title) => RowOf().Match(title) is { Success: true } row ? int.Parse(row.Groups[1].Value, null) : null;

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    [GeneratedRegex(@"(?:Row|Round) (\d+)(?: \((?:RS|WS)\))? of")]
    private static partial Regex RowOf();
}
