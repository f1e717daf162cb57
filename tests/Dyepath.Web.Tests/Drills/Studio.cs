using System.Diagnostics;

namespace Dyepath.Web.Tests.Drills;

/// <summary>Several hosts on one database behind one address, and designers who save all the time.</summary>
internal sealed class Studio : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("dyepath-drill-");
    private readonly OneAddress _address = new();
    private readonly string _connection;
    private readonly RunningProgram?[] _hosts;
    private readonly SteadyWriter[] _writers;
    private readonly CancellationTokenSource _stop = new();
    private readonly long _begun = Stopwatch.GetTimestamp();
    private Task _writing = Task.CompletedTask;

    private Studio(string connection, int hosts, int writers)
    {
        _connection = connection;
        _hosts = new RunningProgram?[hosts];
        _writers = [.. Enumerable.Range(0, writers).Select(i => new SteadyWriter(_address.Address, i))];
    }

    public int Hosts => _hosts.Length;

    private int Acknowledged => _writers.Sum(writer => writer.Acknowledged);

    public static async Task<Studio> OpenAsync(string connection, int hosts, int writers)
    {
        var studio = new Studio(connection, hosts, writers);
        await Task.WhenAll(Enumerable.Range(0, hosts).Select(studio.StartAsync));
        studio._writing = Task.WhenAll(studio._writers.Select(writer => Task.Run(() => writer.WriteAsync(studio._stop.Token))));
        return studio;
    }

    /// <summary>Kill -9, in the middle of whatever it does; then started again.</summary>
    public async Task KillAsync(int host)
    {
        _hosts[host]!.Kill();
        _address.Take(host);
        await _hosts[host]!.DisposeAsync();
        await StartAsync(host);
    }

    /// <summary>As one is replaced by a newer one: no new connections, asked to end, then the other started.</summary>
    public async Task UpgradeAsync(int host)
    {
        _address.Take(host);
        Assert.Equal(0, await _hosts[host]!.InterruptAsync());
        await _hosts[host]!.DisposeAsync();
        await StartAsync(host);
    }

    /// <summary>Until so many more saves were acknowledged.</summary>
    public async Task SavesAsync(int more)
    {
        var (until, begun) = (Acknowledged + more, Stopwatch.GetTimestamp());
        for (; Acknowledged < until && !_writing.IsCompleted; await Task.Delay(20))
            Assert.True(Stopwatch.GetElapsedTime(begun) < Patience, $"Of {more} more saves, {until - Acknowledged} were not acknowledged within {Patience.TotalSeconds} s.");
    }

    /// <summary>Ends the load and holds what is stored against what was acknowledged.</summary>
    /// <returns>Figures, in words.</returns>
    public async Task<string> CheckAsync()
    {
        await _stop.CancelAsync();
        await _writing;
        if (_writers.Any(writer => writer.Faults.Count > 0))
            Assert.Fail(string.Join('\n', _writers.SelectMany(writer => writer.Faults)) + await BrokenAsync());
        foreach (var writer in _writers)
            await writer.CheckAsync();
        return FormattableString.Invariant(
            $"{_writers.Length} writers, {_hosts.Length} hosts: {Acknowledged} saves acknowledged, {_writers.Sum(w => w.Again)} sent again, 0 lost, 0 answered by a fault, in {Stopwatch.GetElapsedTime(_begun).TotalSeconds:0} s.");
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        foreach (var host in _hosts)
        {
            if (host is not null)
                await host.DisposeAsync();
        }
        await _address.DisposeAsync();
        _stop.Dispose();
        _folder.Delete(recursive: true);
    }

    /// <summary>What the hosts say of requests that broke.</summary>
    private async Task<string> BrokenAsync()
    {
        var said = "";
        foreach (var host in _hosts)
        {
            host!.Kill();
            said += string.Concat((await host.LogAsync()).Split('\n').Where(line => line.Contains("broke", StringComparison.Ordinal)).Select(line => $"\n{line}"));
        }
        return said;
    }

    private async Task StartAsync(int host)
    {
        var started = await RunningProgram.StartAsync(_folder.FullName, _connection);
        _hosts[host] = started;
        _address.Put(host, started.Client.BaseAddress!);
    }
}
