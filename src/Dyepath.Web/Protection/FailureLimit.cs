using System.Net;
using System.Threading.RateLimiting;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>Counts wrong secrets by the address that they came from: after ten in a minute none from there is looked at.</summary>
internal sealed class FailureLimit : IDisposable
{
    private const int FailuresInAMinute = 10;

    private readonly PartitionedRateLimiter<IPAddress> _failures = PartitionedRateLimiter.Create<IPAddress, IPAddress>(
        from => RateLimitPartition.GetFixedWindowLimiter(from, _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = FailuresInAMinute,
            Window = TimeSpan.FromMinutes(1),
        }));

    public bool IsReached(HttpContext context) => _failures.GetStatistics(From(context))?.CurrentAvailablePermits == 0;

    public void Count(HttpContext context) => _failures.AttemptAcquire(From(context)).Dispose();

    /// <param name="what">Of what there were too many.</param>
    public static IResult TooMany(HttpContext context, string what)
    {
        context.Response.Headers[HeaderNames.RetryAfter] = "60";
        return Problems.Of(StatusCodes.Status429TooManyRequests, $"Too many wrong {what} came from here.", "Wait a minute, then try again.");
    }

    public void Dispose() => _failures.Dispose();

    private static IPAddress From(HttpContext context) => context.Connection.RemoteIpAddress ?? IPAddress.None;
}
