using Dyepath.Contracts;
using Dyepath.Storage.Sessions;
using Dyepath.Web.Serving;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>The page where a browser gives the access token, typed or carried behind the # of a link, and where it signs out.</summary>
internal static class SignIn
{
    /// <summary>From the host's root.</summary>
    public const string Path = $"/{ApiPaths.SignIn}";

    /// <summary>Of the page that says that it is done.</summary>
    public const string OutTitle = "You are signed out";

    private const string OutPath = $"/{ApiPaths.SignOut}";

    private const string ScriptPath = $"{Path}.js";

    private const string Script = """
        const given = new URLSearchParams(location.hash.slice(1)).get('token');
        if (given) {
          history.replaceState(null, '', location.pathname);
          document.querySelector('input').value = given;
          document.querySelector('form').submit();
        }
        """;

    private const string SignedOut = $"""
        <p>Nobody gets in from this device until the token is given again. What it keeps of your projects, to work without a connection,
        is still on it: clear this site's data in the browser where that is not wanted.</p>
        <p><a class="button" href="{Path}">Sign in again</a></p>
        """;

    /// <summary>The pages, their script, and whether this browser is signed in.</summary>
    public static void MapSignIn(this WebApplication app, HostSettings settings)
    {
        if (settings.MakeCertificate)
        {
            var certificate = MadeCertificate.Of(settings);
            app.MapGet(MadeCertificate.Path, () => Results.File(certificate.Authority, "application/x-x509-ca-cert", "dyepath.crt"))
                .AllowAnonymous().ExcludeFromDescription();
        }
        app.MapGet($"/{ApiPaths.Session}", (HttpContext context) => TypedResults.Ok(new DeviceSession(context.Features.Get<Session>() is not null)))
            .WithName("session").WithSummary("Whether this browser is signed in, and so can be signed out.").WithTags("session");
        if (settings.AccessToken is null)
            return;
        app.MapGet(Path, (HttpContext context) => Page(context, StatusCodes.Status200OK, null)).AllowAnonymous().ExcludeFromDescription();
        app.MapGet(ScriptPath, () => Results.Text(Script, "text/javascript")).AllowAnonymous().ExcludeFromDescription();
        app.MapPost(Path, TakeAsync).AllowAnonymous().ExcludeFromDescription().WithMetadata(new TakesForm());
        app.MapGet(OutPath, (HttpContext context) => SignInPage.Of(context, OutTitle, SignedOut))
            .AllowAnonymous().ExcludeFromDescription();
        app.MapPost(OutPath, async (HttpContext context, AccessToken token, SessionStore sessions, SecurityLog log) =>
        {
            await LeaveAsync(context, token, sessions, log);
            return SeeOut(context);
        }).AllowAnonymous().ExcludeFromDescription().WithMetadata(new TakesForm());
        app.MapDevices();
    }

    /// <summary>Whether a person waits for a page.</summary>
    public static bool IsPage(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    /// <summary>Leads a browser to another page, which it asks for by GET.</summary>
    public static IResult SeeOther(HttpContext context, string path)
    {
        context.Response.Headers[HeaderNames.Location] = path;
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    /// <summary>Leads to the page that says that this browser is signed out.</summary>
    public static IResult SeeOut(HttpContext context) => SeeOther(context, OutPath);

    /// <summary>Ends this browser's session, if it has one, and takes the cookie back.</summary>
    public static async Task LeaveAsync(HttpContext context, AccessToken token, SessionStore sessions, SecurityLog log)
    {
        await EndOwnAsync(context, token, sessions);
        log.SignedOut(context, "a device");
        SessionCookie.TakeBack(context);
    }

    private static async Task<IResult> TakeAsync(HttpContext context, AccessToken token, SessionStore sessions, SecurityLog log)
    {
        if (await BoundedForm.ReadAsync(context) is not { } form || form["token"] is not [{ Length: > 0 } given])
            return Page(context, StatusCodes.Status400BadRequest, $"Type the token into this page; it has at most {BoundedForm.LongestField} letters.");
        var verdict = await token.JudgeAsync(given.Trim(), context);
        if (verdict == AccessToken.Verdict.Right)
        {
            // Whoever may know the key of the earlier session has nothing of the new one.
            await EndOwnAsync(context, token, sessions);
            var (session, key) = await sessions.BeginAsync(
                token.Mark, DeviceName.Of(context.Request.Headers.UserAgent.ToString()), context.RequestAborted);
            SessionCookie.Give(context, key, session.SignedInAt);
            log.SignedIn(context, session.Device);
            return SeeOther(context, "/");
        }
        log.Refused(context, verdict);
        if (verdict == AccessToken.Verdict.Wrong)
            return Page(context, StatusCodes.Status401Unauthorized, "That is not this host's token.");
        var why = token.Refusal(verdict, context);
        return Page(context, StatusCodes.Status429TooManyRequests, $"{why.Title} {why.Detail}");
    }

    private static async Task EndOwnAsync(HttpContext context, AccessToken token, SessionStore sessions)
    {
        if (SessionCookie.Read(context.Request) is { } key
            && await sessions.OpenAsync(key, token.Mark, context.RequestAborted) is { } session)
            await sessions.EndAsync(session.Id, context.RequestAborted);
    }

    private static IResult Page(HttpContext context, int status, string? fault) => SignInPage.Of(
        context, "Sign in",
        $"""
        {SignInPage.Fault(fault)}
        <form method="post" action="{Path}">
          <label for="token">The access token with which this host was started</label>
          <input id="token" name="token" type="password" autocomplete="current-password" maxlength="{BoundedForm.LongestField}" required autofocus>
          <button class="first">Sign in</button>
        </form>
        <script src="{ScriptPath}"></script>
        """,
        status);
}
