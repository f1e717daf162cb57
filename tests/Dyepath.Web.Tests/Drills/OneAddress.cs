using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace Dyepath.Web.Tests.Drills;

/// <summary>One address before several hosts, as a studio's proxy is: each new connection goes to the next host that takes it.</summary>
internal sealed class OneAddress : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly ConcurrentDictionary<int, int> _ports = new();
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _accepting;
    private int _turn;

    public OneAddress()
    {
        _listener.Start();
        Address = new Uri($"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}/");
        _accepting = AcceptAsync();
    }

    public Uri Address { get; }

    public void Put(int host, Uri address) => _ports[host] = address.Port;

    public void Take(int host) => _ports.TryRemove(host, out _);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Stop();
        await _accepting;
        _stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                var client = await _listener.AcceptTcpClientAsync(_stop.Token);
                _ = ForwardAsync(client);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // Nobody asks any more.
        }
    }

    private async Task ForwardAsync(TcpClient client)
    {
        using (client)
        {
            if (await ConnectAsync() is not { } host)
                return;
            using (host)
            {
                try
                {
                    await using var near = client.GetStream();
                    await using var far = host.GetStream();
                    // Whichever side ends, the other is told by an end too.
                    await Task.WhenAny(near.CopyToAsync(far, _stop.Token), far.CopyToAsync(near, _stop.Token));
                }
                catch (Exception e) when (e is IOException or OperationCanceledException or InvalidOperationException)
                {
                    // A side died.
                }
            }
        }
    }

    private async Task<TcpClient?> ConnectAsync()
    {
        var ports = _ports.OrderBy(host => host.Key).Select(host => host.Value).ToArray();
        var first = Interlocked.Increment(ref _turn);
        for (var i = 0; i < ports.Length; i++)
        {
            var host = new TcpClient();
            try
            {
                await host.ConnectAsync(IPAddress.Loopback, ports[(first + i) % ports.Length], _stop.Token);
                return host;
            }
            catch (Exception e) when (e is SocketException or OperationCanceledException)
            {
                host.Dispose();
            }
        }
        return null;
    }
}
