using System.Collections.Concurrent;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Dyepath.EndToEnd.Tests.Browser))]

namespace Dyepath.EndToEnd.Tests;

/// <summary>One Chromium for all tests; each test opens a window of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    public static string Program => Environment.GetEnvironmentVariable("DYEPATH_CHROMIUM") ?? Places.FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("There is no Chromium: install it, or name it in DYEPATH_CHROMIUM (./test installs Debian's).");

    private readonly ConcurrentBag<Desk> _desks = [];
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(Workspace.Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Program, Args = ["--no-sandbox"] });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>A desk that an earlier test has left, or a new one.</summary>
    public async Task<Desk> DeskAsync(SharedHost shared, int width = 1440, int height = 900)
    {
        if (!_desks.TryTake(out var desk))
            desk = await Desk.SetUpAsync(this, shared.Host);
        await desk.Page.SetViewportSizeAsync(width, height);
        return desk;
    }

    internal void TakeBack(Desk desk) => _desks.Add(desk);

    public Task<IBrowserContext> WithoutScriptAsync() => _browser!.NewContextAsync(new() { JavaScriptEnabled = false });

    /// <param name="workers">With a service worker, which fetches the whole program once more for itself: for what is to go on without a connection.</param>
    public async Task<IBrowserContext> WindowAsync(int width = 1440, int height = 900, bool workers = false)
    {
        var window = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ReducedMotion = ReducedMotion.Reduce,
            ServiceWorkers = workers ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
            AcceptDownloads = true,
        });
        window.SetDefaultTimeout(Workspace.Patience);
        return window;
    }
}
