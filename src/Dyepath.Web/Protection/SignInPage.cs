using System.Text.Encodings.Web;

namespace Dyepath.Web.Protection;

/// <summary>Pages that need nothing of the client but its styles: they work before and without it.</summary>
internal static class SignInPage
{
    /// <summary>No script but the two files that these pages name, no style but files, forms to ourselves only.</summary>
    public const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; connect-src 'none'; "
        + "object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>A whole page around what it is to say; <paramref name="main"/> is HTML.</summary>
    public static IResult Of(HttpContext context, string title, string main, int status = StatusCodes.Status200OK)
    {
        // Without a referrer a browser would send a form with "null" as its Origin.
        context.Response.Headers["Referrer-Policy"] = "same-origin";
        return Results.Content(Html(title, main), "text/html; charset=utf-8", statusCode: status);
    }

    /// <summary>Text as HTML shows it.</summary>
    public static string Encode(string text) => HtmlEncoder.Default.Encode(text);

    /// <summary>What went wrong.</summary>
    public static string Fault(string? words) => words is null ? "" : $"""<p class="said fault" role="alert">{Encode(words)}</p>""";

    private static string Html(string title, string main) => $"""
        <!doctype html>
        <html lang="en">
        <head>
          <meta charset="utf-8">
          <meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
          <title>{Encode(title)} – Dyepath</title>
          <link rel="stylesheet" href="/css/app.css">
          <link rel="stylesheet" href="/css/sign-in.css">
          <link rel="icon" href="/icon.svg" type="image/svg+xml">
          <script src="/js/theme.js"></script>
        </head>
        <body>
          <header class="topbar"><a class="wordmark" href="/">Dyepath</a></header>
          <main class="sign-in">
            <h1>{Encode(title)}</h1>
            {main}
          </main>
        </body>
        </html>
        """;
}
