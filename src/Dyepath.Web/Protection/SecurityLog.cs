using System.Net;

namespace Dyepath.Web.Protection;

/// <summary>Who came in and who did not: by address, never with what was given.</summary>
internal sealed partial class SecurityLog(ILogger<SecurityLog> logger)
{
    /// <summary>A device has given the token.</summary>
    public void SignedIn(HttpContext context, string device) =>
        SignedIn(context.Connection.RemoteIpAddress, device, context.TraceIdentifier);

    /// <summary>A device, or every one, was signed out by hand.</summary>
    public void SignedOut(HttpContext context, string what) => SignedOut(context.Connection.RemoteIpAddress, what, context.TraceIdentifier);

    /// <summary>A token was wrong, or was not looked at.</summary>
    public void Refused(HttpContext context, AccessToken.Verdict why) =>
        Refused(context.Connection.RemoteIpAddress, why, context.TraceIdentifier);

    [LoggerMessage(Level = LogLevel.Information, Message = "{Device} signed in from {Address}, request {RequestId}")]
    private partial void SignedIn(IPAddress? address, string device, string requestId);

    [LoggerMessage(Level = LogLevel.Information, Message = "From {Address} {What} signed out, request {RequestId}")]
    private partial void SignedOut(IPAddress? address, string what, string requestId);

    [LoggerMessage(Level = LogLevel.Warning, Message = "A token from {Address} was refused ({Why}), request {RequestId}")]
    private partial void Refused(IPAddress? address, AccessToken.Verdict why, string requestId);
}
