using System.Diagnostics;

namespace Dyepath.EndToEnd.Tests;

/// <summary>The published host as its own process, on a free port and a store of its own.</summary>
public sealed class PublishedHost : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(Workspace.Patience);

    private readonly string _data = Directory.CreateTempSubdirectory("dyepath-end-to-end-").FullName;
    private Process? _process;
    private int _port;

    public Uri Address { get; private set; } = null!;

    /// <summary>From where it runs.</summary>
    public string Program { get; init; } = Published;

    /// <summary>The program's files that it keeps for pages of earlier versions.</summary>
    public string Releases => Path.Combine(_data, "releases");

    /// <summary>Folder that <c>./test</c> publishes to.</summary>
    public static string Root { get; } = FindRoot();

    public static string Published => Path.Combine(Root, "out", "published");

    /// <param name="token">That browsers are asked for; missing, none.</param>
    public async Task StartAsync(string? token = null)
    {
        var program = Path.Combine(Program, "dyepath-web.dll");
        Assert.True(File.Exists(program), "Publish first: dotnet publish -c Release src/Dyepath.Web -o out/published (./test does).");
        _process = Process.Start(new ProcessStartInfo("dotnet", [program, "serve", "--port", $"{_port}", "--data", _data])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Program,
            Environment = { ["DYEPATH_ACCESS_TOKEN"] = token },
        })!;
        _ = _process.StandardError.ReadToEndAsync();
        using var stop = new CancellationTokenSource(Patience);
        while (await _process.StandardOutput.ReadLineAsync(stop.Token) is { } line)
        {
            if (line.StartsWith("Dyepath is at ", StringComparison.Ordinal))
            {
                // By number: a browser keeps what belongs to 127.0.0.1 apart from what belongs to localhost.
                _port = new Uri(line["Dyepath is at ".Length..].Trim()).Port;
                Address = new Uri($"http://127.0.0.1:{_port}/");
                _ = _process.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return;
            }
        }
        Assert.Fail($"The host ended with exit code {_process.ExitCode} before it listened.");
    }

    /// <summary>As when the power fails.</summary>
    public void Kill()
    {
        _process!.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    /// <summary>As when its disk is replaced.</summary>
    public void LoseEverything()
    {
        Directory.Delete(_data, recursive: true);
        Directory.CreateDirectory(_data);
    }

    public ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false })
            Kill();
        _process?.Dispose();
        Directory.Delete(_data, recursive: true);
        return ValueTask.CompletedTask;
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Dyepath.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("These tests run inside the repository.");
        return folder.FullName;
    }
}
