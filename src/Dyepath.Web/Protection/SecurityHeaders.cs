using System.Net;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>What browsers and caches are told to refuse on our pages' behalf.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    /// <summary>
    /// Compiled WebAssembly needs its own permission. Blazor writes style attributes, and the booklet in its frame has a style
    /// sheet inside. No script but our own files.
    /// </summary>
    private const string ContentPolicy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
        + "worker-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    private const string Permissions =
        "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), payment=(), "
        + "usb=(), screen-wake-lock=(self)";

    private const string AYear = "max-age=31536000";

    /// <summary>Adds the headers to whatever is answered.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        // Found now, as the fallback to a page forgets it; set late, because an answer that is begun anew after a fault loses what was
        // set before.
        var isOwnFile = context.GetEndpoint()?.Metadata.GetMetadata<OwnFile>() is not null;
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            var isSignIn = context.Request.Path.StartsWithSegments(SignIn.Path, StringComparison.OrdinalIgnoreCase);
            headers[HeaderNames.ContentSecurityPolicy] = isSignIn ? SignInPage.ContentPolicy : ContentPolicy;
            headers[HeaderNames.XContentTypeOptions] = "nosniff";
            headers.TryAdd("Referrer-Policy", "no-referrer");
            headers["Permissions-Policy"] = Permissions;
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            if (!isOwnFile || context.Response.StatusCode >= 400)
                headers[HeaderNames.CacheControl] = "no-store";
            if (context.Request.IsHttps && HasName(context.Request.Host.Host))
                headers[HeaderNames.StrictTransportSecurity] = AYear;
            return Task.CompletedTask;
        });
        return next(context);
    }

    /// <summary>
    /// Only a name is told to come by https from now on: addresses cannot be (RFC 6797, 8.1.1), and localhost is every program's.
    /// </summary>
    private static bool HasName(string host) =>
        !IPAddress.TryParse(host.Trim('[', ']'), out _)
        && !host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        && !host.EndsWith(".localhost", StringComparison.OrdinalIgnoreCase);
}

/// <summary>
/// Marks an endpoint that serves the program's own files, which are the same for everybody and say themselves how long they are
/// good for. All else is kept by no cache, documents too: who has one asks with its ETag whether it is still the one, and the
/// device keeps what it needs in its own store, which can be cleared.
/// </summary>
internal sealed class OwnFile;
