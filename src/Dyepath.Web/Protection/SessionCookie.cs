using Dyepath.Storage.Sessions;

namespace Dyepath.Web.Protection;

/// <summary>The cookie that holds the key of a device's session.</summary>
internal static class SessionCookie
{
    /// <summary>The key that a browser sent; null where it sent none.</summary>
    public static string? Read(HttpRequest request) => request.Cookies[Name(request)];

    /// <summary>Lasts as long as the session may at most.</summary>
    public static void Give(HttpContext context, string key, DateTimeOffset signedInAt) =>
        context.Response.Cookies.Append(Name(context.Request), key, Options(context.Request, signedInAt + SessionStore.Longest));

    /// <summary>The browser forgets the key.</summary>
    public static void TakeBack(HttpContext context) =>
        context.Response.Cookies.Delete(Name(context.Request), Options(context.Request, null));

    /// <summary>The prefix binds the cookie to this very host, but browsers take it over https only.</summary>
    private static string Name(HttpRequest request) => request.IsHttps ? "__Host-dyepath" : "dyepath";

    private static CookieOptions Options(HttpRequest request, DateTimeOffset? until) => new()
    {
        HttpOnly = true,
        Secure = request.IsHttps,
        SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict,
        Path = "/",
        Expires = until,
    };
}
