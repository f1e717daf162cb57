using System.Diagnostics;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A Chromium that is this test's own, with a folder that outlives it, so that it can be killed and opened again.</summary>
internal sealed class OwnChromium : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(Workspace.Patience);

    private readonly string _folder = Directory.CreateTempSubdirectory("dyepath-chromium-").FullName;
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private Process? _process;

    /// <summary>Opens it, with all that it had kept.</summary>
    public async Task<IPage> OpenAsync(int width, int height)
    {
        var port = Path.Combine(_folder, "DevToolsActivePort");
        File.Delete(port);
        _process = Process.Start(new ProcessStartInfo(Browser.Program,
        [
            "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-session-crashed-bubble", "--remote-debugging-port=0",
            $"--user-data-dir={_folder}", $"--window-size={width},{height}", "about:blank",
        ])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        _ = _process.StandardError.ReadToEndAsync();
        _ = _process.StandardOutput.ReadToEndAsync();
        var until = DateTime.UtcNow + Patience;
        string[] lines;
        while (!File.Exists(port) || (lines = await File.ReadAllLinesAsync(port)).Length < 2)
        {
            Assert.True(DateTime.UtcNow < until, "Chromium did not open.");
            await Task.Delay(20);
        }
        _playwright ??= await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.ConnectOverCDPAsync($"http://127.0.0.1:{lines[0]}");
        _browser.Contexts[0].SetDefaultTimeout(Workspace.Patience);
        var page = _browser.Contexts[0].Pages is [var first, ..] ? first : await _browser.Contexts[0].NewPageAsync();
        await page.SetViewportSizeAsync(width, height);
        return page;
    }

    /// <summary>As when the battery is empty: every process of it, at once.</summary>
    public async Task KillAsync()
    {
        _process!.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        _process = null;
        // A lock of the killed one would be asked about.
        foreach (var left in Directory.GetFiles(_folder, "Singleton*"))
            File.Delete(left);
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _playwright?.Dispose();
        for (var tries = 0; Directory.Exists(_folder) && tries < 20; tries++)
        {
            try
            {
                Directory.Delete(_folder, recursive: true);
            }
            catch (IOException)
            {
                await Task.Delay(100);
            }
        }
    }
}
