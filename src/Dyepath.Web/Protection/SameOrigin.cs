using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>
/// Changes come from our own pages only. Browsers say where a request comes from in Sec-Fetch-Site and, with every change, in
/// Origin; one that says neither is refused too.
/// </summary>
internal sealed class SameOrigin(RequestDelegate next)
{
    /// <summary>Lets it through, or refuses it.</summary>
    public Task InvokeAsync(HttpContext context) => IsHarmless(context.Request) || IsOurs(context.Request)
        ? next(context)
        : Problems.Of(
            StatusCodes.Status403Forbidden, "Changes are taken from Dyepath's own pages only.",
            "A program that is no browser says so by sending this host's own address as Origin.").ExecuteAsync(context);

    private static bool IsHarmless(HttpRequest request) => HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);

    private static bool IsOurs(HttpRequest request)
    {
        var (site, origin) = (request.Headers["Sec-Fetch-Site"], request.Headers[HeaderNames.Origin]);
        return (site.Count, origin.Count) switch
        {
            (0, 0) => false,
            (_, 0) => site == "same-origin",
            (0, _) => IsOurs(origin, request),
            _ => site == "same-origin" && IsOurs(origin, request),
        };
    }

    /// <summary>Same name and port; and https if we were reached so. (Behind a proxy the page may have https and we not.)</summary>
    private static bool IsOurs(string? origin, HttpRequest request)
    {
        if (!Uri.TryCreate(origin, UriKind.Absolute, out var page) || page.Scheme is not ("http" or "https"))
            return false;
        if (request.IsHttps && page.Scheme != "https")
            return false;
        var port = request.Host.Port ?? (page.Scheme == "https" ? 443 : 80);
        return string.Equals(page.IdnHost, request.Host.Host.Trim('[', ']'), StringComparison.OrdinalIgnoreCase) && page.Port == port;
    }
}
