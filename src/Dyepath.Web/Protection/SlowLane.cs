using Dyepath.Contracts;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>
/// While wrong tokens come from everywhere, tokens are looked at one after another, ten in a second, whoever sends them. It
/// shuts nobody out for good: every place that gets free goes to whoever comes next, each network has one place at most, who
/// is signed in does not come here, and this computer itself need not wait.
/// </summary>
internal sealed class SlowLane(TimeProvider clock)
{
    /// <summary>From here on tokens wait.</summary>
    public const int WrongInAMinute = 100;

    /// <summary>Tokens that wait at once.</summary>
    public const int Places = 64;

    private static readonly TimeSpan Pace = TimeSpan.FromMilliseconds(100);

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();

    private readonly HashSet<Network> _waiting = [];

    private readonly long _start = clock.GetTimestamp();

    private long _begun = clock.GetTimestamp();

    private int _wrong;

    private bool _wasSlow;

    /// <summary>When the next token is looked at, since <see cref="_start"/>.</summary>
    private TimeSpan _next;

    /// <summary>A wrong token came, from wherever.</summary>
    public void Count()
    {
        lock (_lock)
        {
            Turn();
            _wrong++;
        }
    }

    /// <returns>Whether the token may be looked at now; not where all places are taken.</returns>
    public async ValueTask<bool> PassAsync(HttpContext context)
    {
        if (Network.IsThisComputer(context))
            return true;
        var from = Network.Of(context, 64);
        TimeSpan wait;
        lock (_lock)
        {
            Turn();
            if (_wrong < WrongInAMinute && !_wasSlow)
                return true;
            if (_waiting.Count >= Places || !_waiting.Add(from))
                return false;
            var now = clock.GetElapsedTime(_start);
            _next = (_next > now ? _next : now) + Pace;
            wait = _next - now;
        }
        try
        {
            await Task.Delay(wait, clock, context.RequestAborted);
            return true;
        }
        finally
        {
            lock (_lock)
                _waiting.Remove(from);
        }
    }

    /// <summary>Says that too many wait, and when to try again.</summary>
    public static Problem Refusal(HttpContext context)
    {
        context.Response.Headers[HeaderNames.RetryAfter] = "5";
        return new(
            "Many wrong tokens are coming in just now.",
            "Try again in a few seconds; on the computer itself, under localhost, there is no waiting.",
            StatusCodes.Status429TooManyRequests);
    }

    private void Turn()
    {
        var elapsed = clock.GetElapsedTime(_begun);
        if (elapsed < Window)
            return;
        // Slow for a minute after the last bad one too.
        _wasSlow = _wrong >= WrongInAMinute && elapsed < 2 * Window;
        (_wrong, _begun) = (0, clock.GetTimestamp());
    }
}
