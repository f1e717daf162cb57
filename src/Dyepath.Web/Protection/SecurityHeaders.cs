using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>What browsers are told to refuse on our pages' behalf.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    /// <summary>Compiled WebAssembly needs its own permission; Blazor writes style attributes. No script but our own files.</summary>
    private const string ContentPolicy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
        + "worker-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    private const string Permissions =
        "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), payment=(), "
        + "usb=(), screen-wake-lock=(self)";

    public Task InvokeAsync(HttpContext context)
    {
        // Late, because an answer that is begun anew after a fault loses what was set before.
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            headers[HeaderNames.ContentSecurityPolicy] = ContentPolicy;
            headers[HeaderNames.XContentTypeOptions] = "nosniff";
            headers.TryAdd("Referrer-Policy", "no-referrer");
            headers["Permissions-Policy"] = Permissions;
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            return Task.CompletedTask;
        });
        return next(context);
    }
}
