using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>
/// A window at the shelf of the shared host in which one test works after another: to open the program anew costs more than most of them do.
/// For tests that change nothing about the window itself and do not look at what it keeps.
/// </summary>
public sealed class Desk : IAsyncDisposable
{
    private readonly Browser _browser;
    private readonly PublishedHost _host;
    private readonly IBrowserContext _window;

    private Desk(Browser browser, PublishedHost host, IBrowserContext window, IPage page) =>
        (_browser, _host, _window, Page) = (browser, host, window, page);

    public IPage Page { get; }

    internal static async Task<Desk> SetUpAsync(Browser browser, PublishedHost host)
    {
        var window = await browser.WindowAsync();
        return new Desk(browser, host, window, await window.OpenShelfAsync(host));
    }

    /// <summary>Leaves it at the shelf for the next test, or, where it does not come back there, closes it.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            await Page.ToAsync(_host.Address);
            await Page.GetByRole(AriaRole.Heading, new() { Name = "Your projects" }).WaitForAsync(new() { Timeout = 10_000 });
            _browser.TakeBack(this);
        }
        catch (Exception fault) when (fault is PlaywrightException or TimeoutException)
        {
            await _window.DisposeAsync();
        }
    }
}
