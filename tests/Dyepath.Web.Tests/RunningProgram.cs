using System.Diagnostics;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Runtime.InteropServices;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests;

/// <summary>dyepath-web as a process of its own.</summary>
internal sealed partial class RunningProgram : IAsyncDisposable
{
    private const int InterruptSignal = 2;

    /// <summary>Longer than any machine takes: it only keeps a program that hangs from holding the run up for ever.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    private readonly Process _process;

    private readonly Task<string> _errors;

    private bool _ended;

    private RunningProgram(Process process, Uri address, Task<string> errors)
    {
        (_process, _errors) = (process, errors);
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = address };
        Client.DefaultRequestHeaders.Add("Origin", address.GetLeftPart(UriPartial.Authority));
    }

    public HttpClient Client { get; }

    /// <param name="connection">Missing: a file in the folder.</param>
    public static Task<RunningProgram> StartAsync(string folder, string? connection = null) =>
        StartAsync($"--data {folder}{(connection is null ? "" : $" --database {connection}")}", start => { });

    /// <param name="with">What else the process is started with: its environment, its working folder, the program itself.</param>
    public static async Task<RunningProgram> StartAsync(string options, Action<ProcessStartInfo> with)
    {
        var process = Begin($"serve --port 0 {options}", with);
        var errors = process.StandardError.ReadToEndAsync();
        const string said = "Dyepath is at ";
        using var patience = new CancellationTokenSource(Patience);
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (line.StartsWith(said, StringComparison.Ordinal))
                return new RunningProgram(process, new Uri(line[said.Length..]), errors);
        }
        throw new InvalidOperationException(await errors);
    }

    public static async Task<(int Code, string Output, string Errors)> RunAsync(string arguments)
    {
        using var process = Begin(arguments);
        using var patience = new CancellationTokenSource(Patience);
        var errors = process.StandardError.ReadToEndAsync(patience.Token);
        var output = await process.StandardOutput.ReadToEndAsync(patience.Token);
        await process.WaitForExitAsync(patience.Token);
        return (process.ExitCode, output, await errors);
    }

    public async Task<ProjectSummary> CreateAsync(string text)
    {
        using var answer = await Client.PostAsync(ApiPaths.Projects, RunningHost.Json(text));
        return (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.ProjectSummary))!;
    }

    public async Task<HttpResponseMessage> SaveAsync(string id, string seen, string text)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, ApiPaths.Project(id)) { Content = RunningHost.Json(text) };
        request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(seen));
        return await Client.SendAsync(request);
    }

    public void Kill() => _process.Kill();

    /// <summary>What it wrote to standard error until it ended; ends it where it runs still.</summary>
    public async Task<string> LogAsync()
    {
        if (!_process.HasExited)
            await InterruptAsync();
        return await _errors;
    }

    /// <summary>As Ctrl-C does; returns the exit code.</summary>
    public async Task<int> InterruptAsync()
    {
        Assert.Equal(0, Signal(_process.Id, InterruptSignal));
        using var patience = new CancellationTokenSource(Patience);
        await _process.WaitForExitAsync(patience.Token);
        return _process.ExitCode;
    }

    /// <summary>Also where it is gone already: a test that fails while it is replaced is to tell why.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_ended)
            return;
        _ended = true;
        Client.Dispose();
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    private static Process Begin(string arguments, Action<ProcessStartInfo>? with = null)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            Arguments = $"\"{Path.Combine(AppContext.BaseDirectory, "dyepath-web.dll")}\" {arguments}",
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // It lives for seconds: measuring its code in order to compile it better only costs.
        start.Environment["DOTNET_TieredPGO"] = "0";
        with?.Invoke(start);
        return Process.Start(start)!;
    }

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Signal(int process, int signal);
}
