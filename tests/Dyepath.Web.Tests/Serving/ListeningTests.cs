using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Serving;

/// <summary>The program as a process: nothing but its own options makes it listen anywhere.</summary>
public sealed class ListeningTests(Hosts hosts) : IDisposable
{
    private static readonly string[] Addresses =
    [
        "ASPNETCORE_URLS", "DOTNET_URLS", "URLS", "Kestrel__Endpoints__Plain__Url", "ASPNETCORE_Kestrel__Endpoints__Own__Url",
        "DOTNET_Kestrel__Endpoints__Net__Url",
    ];

    private static readonly string[] Ports = ["HTTP_PORTS", "ASPNETCORE_HTTP_PORTS", "DOTNET_HTTP_PORTS"];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("dyepath-listening-");

    private readonly List<TcpListener> _taken = [];

    public void Dispose()
    {
        foreach (var listener in _taken)
            listener.Dispose();
        _folder.Delete(recursive: true);
    }

    [Fact]
    public async Task The_environment_opens_no_further_listener()
    {
        await CheckAsync(start =>
        {
            foreach (var name in Addresses)
                start.Environment[name] = $"http://127.0.0.1:{TakenPort()}";
            foreach (var name in Ports)
                start.Environment[name] = $"{TakenPort()}";
        });
    }

    [Fact]
    public async Task Settings_files_open_no_further_listener_beside_the_program_or_where_it_was_started()
    {
        var program = Path.Combine(_folder.FullName, "program");
        using (var copy = Process.Start("cp", ["-al", AppContext.BaseDirectory, program]))
            await copy.WaitForExitAsync(TestContext.Current.CancellationToken);
        var here = _folder.CreateSubdirectory("here").FullName;
        foreach (var (folder, file) in new[] { (program, "appsettings.json"), (program, "appsettings.Development.json"), (here, "appsettings.json") })
        {
            File.Delete(Path.Combine(folder, file));
            await File.WriteAllTextAsync(Path.Combine(folder, file), $$"""
                { "urls": "http://127.0.0.1:{{TakenPort()}}", "Kestrel": { "Endpoints": { "{{file}}": { "Url": "http://127.0.0.1:{{TakenPort()}}" } } } }
                """);
        }
        await CheckAsync(start =>
        {
            start.Arguments = start.Arguments.Replace(AppContext.BaseDirectory, program + "/", StringComparison.Ordinal);
            start.WorkingDirectory = here;
            start.Environment["ASPNETCORE_ENVIRONMENT"] = "Development";
        });
    }

    [Theory]
    [InlineData("--urls http://127.0.0.1:1")]
    [InlineData("--http_ports 1")]
    [InlineData("--Kestrel:Endpoints:Plain:Url http://127.0.0.1:1")]
    [InlineData("--Kestrel:Endpoints:Plain:Url=http://127.0.0.1:1")]
    public async Task What_the_command_line_does_not_know_it_refuses(string option)
    {
        var (code, _, errors) = await RunningProgram.RunAsync($"serve --port 0 --data {_folder.FullName} {option}");
        Assert.Equal(2, code);
        Assert.Contains(option.Split(' ', '=')[0], errors, StringComparison.Ordinal);
    }

    private async Task CheckAsync(Action<ProcessStartInfo> with)
    {
        var folder = await hosts.BegunFolderAsync();
        await using var program = await RunningProgram.StartAsync($"--data {folder}", with);
        Assert.Equal("localhost", program.Client.BaseAddress!.Host.Replace("127.0.0.1", "localhost", StringComparison.Ordinal));
        using var answer = await program.Client.GetAsync(ApiPaths.Projects);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    /// <summary>A port that nobody else gets while the test runs: a program that tried to listen on it would not start.</summary>
    private int TakenPort()
    {
        var listener = new TcpListener(IPAddress.Loopback, 0);
        _taken.Add(listener);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
