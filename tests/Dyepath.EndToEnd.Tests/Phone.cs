using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A host with one piece begun, and a window of a phone's size to make it in.</summary>
internal sealed class Phone : IAsyncDisposable
{
    public const int Wide = 390, High = 844;

    private Phone(PublishedHost host, IBrowserContext window, string id) => (Host, Window, Id) = (host, window, id);

    public PublishedHost Host { get; }

    public IBrowserContext Window { get; }

    public string Id { get; }

    public string Address => new Uri(Host.Address, $"make/{Id}").ToString();

    public static async Task<Phone> OpenAsync(Browser browser, string making, int width = Wide, int height = High, ColorScheme scheme = ColorScheme.Light)
    {
        var host = new PublishedHost();
        await host.StartAsync();
        return new Phone(host, await browser.WindowAsync(width, height, scheme), await host.BeginAsync(making));
    }

    /// <summary>The piece with its first row at hand, its yarn not counted.</summary>
    public async Task<IPage> AtFirstRowAsync()
    {
        var page = await Window.NewPageAsync();
        await page.OpenPieceAsync(Host, Id);
        await page.FirstRowAsync();
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Window.DisposeAsync();
        await Host.DisposeAsync();
    }
}
