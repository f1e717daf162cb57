using Dyepath.Contracts;
using Dyepath.Web.Serving;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>The page where a browser gives the access token: typed, or carried behind the # of a link.</summary>
internal static class SignIn
{
    public const string Path = $"/{ApiPaths.SignIn}";

    private const string ScriptPath = $"{Path}.js";

    private const string Script = """
        const given = new URLSearchParams(location.hash.slice(1)).get('token');
        if (given) {
          history.replaceState(null, '', location.pathname);
          document.querySelector('input').value = given;
          document.querySelector('form').submit();
        }
        """;

    public static void MapSignIn(this WebApplication app, HostSettings settings)
    {
        if (settings.MakeCertificate)
        {
            var certificate = MadeCertificate.Of(settings);
            app.MapGet(MadeCertificate.Path, () => Results.File(certificate.Authority, "application/x-x509-ca-cert", "dyepath.crt"))
                .AllowAnonymous().ExcludeFromDescription();
        }
        if (settings.AccessToken is null)
            return;
        app.MapGet(Path, (HttpContext context) => Page(context, StatusCodes.Status200OK, "")).AllowAnonymous().ExcludeFromDescription();
        app.MapGet(ScriptPath, () => Results.Text(Script, "text/javascript")).AllowAnonymous().ExcludeFromDescription();
        app.MapPost(Path, TakeAsync).AllowAnonymous().ExcludeFromDescription();
    }

    /// <summary>The only form that is taken.</summary>
    public static bool Takes(HttpRequest request) => request.Path == Path && request.HasFormContentType;

    /// <summary>Whether a person waits for a page.</summary>
    public static bool IsPage(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    private static async Task<IResult> TakeAsync(HttpContext context, AccessToken token)
    {
        if (!Takes(context.Request))
            return Page(context, StatusCodes.Status400BadRequest, "Type the token into this page.");
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        switch (token.Judge(form["token"].ToString().Trim(), context))
        {
            case AccessToken.Verdict.Right:
                token.GiveCookie(context);
                context.Response.Headers[HeaderNames.Location] = "/";
                return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
            case AccessToken.Verdict.TooManyWrong:
                return FailureLimit.TooMany(context, "tokens");
            default:
                return Page(context, StatusCodes.Status401Unauthorized, "That is not this host's token.");
        }
    }

    private static IResult Page(HttpContext context, int status, string message)
    {
        // Without a referrer a browser would send a form with "null" as its Origin.
        context.Response.Headers["Referrer-Policy"] = "same-origin";
        return Results.Content(Html(message), "text/html; charset=utf-8", statusCode: status);
    }

    private static string Html(string message) => $$"""
        <!doctype html>
        <html lang="en">
        <head>
          <meta charset="utf-8">
          <meta name="viewport" content="width=device-width">
          <title>Sign in to Dyepath</title>
          <style>
            body { font: 1rem/1.5 system-ui, sans-serif; max-width: 24rem; margin: 15vh auto; padding: 0 1rem; color-scheme: light dark }
            label, input, button { display: block; width: 100%; box-sizing: border-box; font: inherit; margin-bottom: 1rem }
            input, button { min-height: 3rem; padding: 0 .75rem }
          </style>
        </head>
        <body>
          <main>
            <h1>Dyepath</h1>
            <p role="alert">{{message}}</p>
            <form method="post" action="{{Path}}">
              <label for="token">The access token with which this host was started</label>
              <input id="token" name="token" type="password" autocomplete="current-password" required autofocus>
              <button>Sign in</button>
            </form>
          </main>
          <script src="{{ScriptPath}}"></script>
        </body>
        </html>
        """;
}
