using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A host with a piece begun, and a window of a phone's size to make it in.</summary>
internal sealed class Phone : IAsyncDisposable
{
    public const int Wide = 390, High = 844;

    private readonly bool _ownsHost;

    private Phone(PublishedHost host, bool ownsHost, IBrowserContext window, string id) => (Host, _ownsHost, Window, Id) = (host, ownsHost, window, id);

    public PublishedHost Host { get; }

    public IBrowserContext Window { get; }

    public string Id { get; }

    public string Address => new Uri(Host.Address, $"make/{Id}").ToString();

    public static async Task<Phone> OpenAsync(Browser browser, SharedHost shared, string making) =>
        new(shared.Host, false, await browser.WindowAsync(Wide, High), await shared.Host.BeginAsync(making));

    /// <summary>On a host of its own, which may be stopped.</summary>
    public static async Task<Phone> OpenAloneAsync(Browser browser, string making, bool workers = false)
    {
        var host = new PublishedHost();
        try
        {
            await host.StartAsync();
            return new Phone(host, true, await browser.WindowAsync(Wide, High, workers), await host.BeginAsync(making));
        }
        catch
        {
            await host.DisposeAsync();
            throw;
        }
    }

    /// <summary>The piece with its first row at hand, its yarn not counted.</summary>
    public async Task<IPage> AtFirstRowAsync()
    {
        var page = await Window.NewPageAsync();
        await page.AtFirstRowAsync(Host, Id);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Window.DisposeAsync();
        if (_ownsHost)
            await Host.DisposeAsync();
    }
}
