using System.Globalization;
using Dyepath.Contracts;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>
/// Counts wrong secrets by where they came from: after ten in a minute from an address none from there is looked at. Of IPv6,
/// where one household has as many addresses as it likes, the network counts (/64), and what a provider gives one customer
/// (/48) has a limit of its own.
/// </summary>
internal sealed class FailureLimit(TimeProvider clock)
{
    private const int OfAddress = 10;

    private const int OfWideNetwork = 40;

    /// <summary>
    /// Beyond so many networks in a minute further ones are not remembered; <see cref="SlowLane"/> is what holds them up then.
    /// </summary>
    public const int MostRemembered = 20_000;

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();

    private readonly Dictionary<Network, int> _counts = [];

    private long _begun = clock.GetTimestamp();

    /// <summary>Addresses and networks that wrong ones came from lately; at most about <see cref="MostRemembered"/>.</summary>
    public int Remembered
    {
        get
        {
            lock (_lock)
                return _counts.Count;
        }
    }

    /// <summary>None from where the request comes from is looked at any more.</summary>
    public bool IsReached(HttpContext context)
    {
        var (near, wide) = Networks(context);
        lock (_lock)
        {
            Turn();
            return _counts.GetValueOrDefault(near) >= OfAddress
                || (wide is { } network && _counts.GetValueOrDefault(network) >= OfWideNetwork);
        }
    }

    /// <summary>A wrong one came from where the request comes from.</summary>
    public void Count(HttpContext context)
    {
        var (near, wide) = Networks(context);
        lock (_lock)
        {
            Turn();
            Add(near);
            if (wide is { } network)
                Add(network);
        }
    }

    /// <param name="what">Of what there were too many.</param>
    public Problem Refusal(HttpContext context, string what)
    {
        TimeSpan left;
        lock (_lock)
            left = Window - clock.GetElapsedTime(_begun);
        context.Response.Headers[HeaderNames.RetryAfter] = Math.Clamp((int)left.TotalSeconds + 1, 1, 60)
            .ToString(CultureInfo.InvariantCulture);
        return new($"Too many wrong {what} came from here.", "Wait a minute, then try again.", StatusCodes.Status429TooManyRequests);
    }

    private static (Network Near, Network? Wide) Networks(HttpContext context)
    {
        var near = Network.Of(context, 64);
        return (near, near.IsWide ? Network.Of(context, 48) : null);
    }

    private void Add(Network network)
    {
        if (_counts.TryGetValue(network, out var count))
            _counts[network] = count + 1;
        else if (_counts.Count < MostRemembered)
            _counts.Add(network, 1);
    }

    private void Turn()
    {
        if (clock.GetElapsedTime(_begun) < Window)
            return;
        _counts.Clear();
        _begun = clock.GetTimestamp();
    }
}
