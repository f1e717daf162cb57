using System.Net;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Protection;

/// <summary>
/// The names that this host goes by. A page elsewhere can let its own name point here (DNS rebinding), and a browser would
/// then take our answers for that page's; so a request under any other name is not answered. An address instead of a name
/// cannot be made to point elsewhere: the one that the request reached is right.
/// </summary>
internal sealed class HostNames
{
    private readonly HashSet<string> _names;

    /// <summary>Those of the settings and localhost; where others can reach the host, the computer's own too.</summary>
    public HostNames(HostSettings settings)
    {
        Names = settings.IsLocal
            ? ["localhost", .. settings.Names]
            : ["localhost", Environment.MachineName, $"{Environment.MachineName}.local", .. settings.Names];
        _names = new HashSet<string>(Names, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Without ports.</summary>
    public IReadOnlyList<string> Names { get; }

    private bool Has(HostString host, IPAddress? reached)
    {
        if (!IPAddress.TryParse(host.Host, out var address))
            return _names.Contains(host.Host);
        if (reached is { IsIPv4MappedToIPv6: true })
            reached = reached.MapToIPv4();
        return address.Equals(reached);
    }

    /// <summary>Refuses a request under any other name.</summary>
    internal sealed class Check(RequestDelegate next, HostNames names)
    {
        /// <summary>Lets it through, or refuses it.</summary>
        public Task InvokeAsync(HttpContext context) =>
            names.Has(context.Request.Host, context.Connection.LocalIpAddress)
                ? next(context)
                : Problems.Of(
                    StatusCodes.Status421MisdirectedRequest, "This host does not go by that name.",
                    "Open it as localhost or by its address, or start it with --name and this name.").ExecuteAsync(context);
    }
}
