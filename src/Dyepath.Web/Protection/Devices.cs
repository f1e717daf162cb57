using Dyepath.Contracts;
using Dyepath.Storage.Sessions;

namespace Dyepath.Web.Protection;

/// <summary>The page of signed-in devices, each of which can be signed out.</summary>
internal static class Devices
{
    private const string Path = $"/{ApiPaths.Devices}";

    private const string Everywhere = "everywhere";

    private const string Clear = "clear";

    /// <summary>The page, and the forms on it.</summary>
    public static void MapDevices(this WebApplication app)
    {
        app.MapGet(Path, async (HttpContext context, AccessToken token, SessionStore sessions) =>
            Page(context, await sessions.ListAsync(token.Mark, context.RequestAborted))).ExcludeFromDescription();
        app.MapPost(Path, EndAsync).ExcludeFromDescription().WithMetadata(new TakesForm());
    }

    private static async Task<IResult> EndAsync(HttpContext context, AccessToken token, SessionStore sessions, SecurityLog log)
    {
        var own = context.Features.Get<Session>()?.Id;
        if (await BoundedForm.ReadAsync(context) is not { } form || form["end"] is not [{ Length: > 0 } end])
            return Page(context, await sessions.ListAsync(token.Mark, context.RequestAborted), "Say which device to sign out, with one of the buttons.", StatusCodes.Status400BadRequest);
        if (end == Clear)
        {
            // Cookies and all that the browser keeps for this host; it does so over https and on localhost only.
            context.Response.Headers["Clear-Site-Data"] = "\"cache\", \"cookies\", \"storage\"";
            await SignIn.LeaveAsync(context, token, sessions, log);
            return SignInPage.Of(context, SignIn.OutTitle, Cleared);
        }
        if (end == own)
        {
            await SignIn.LeaveAsync(context, token, sessions, log);
            return SignIn.SeeOut(context);
        }
        if (end == Everywhere)
        {
            await sessions.EndAllAsync(context.RequestAborted);
            log.SignedOut(context, "every device");
            SessionCookie.TakeBack(context);
            return SignIn.SeeOut(context);
        }
        // Gone already is as good as ended now.
        if (DocumentId.IsValid(end) && await sessions.EndAsync(end, context.RequestAborted))
            log.SignedOut(context, "another device");
        return SignIn.SeeOther(context, Path);
    }

    private static IResult Page(
        HttpContext context, IReadOnlyList<Session> sessions, string? fault = null, int status = StatusCodes.Status200OK)
    {
        var own = context.Features.Get<Session>()?.Id;
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        return SignInPage.Of(
            context, "Signed-in devices",
            $"""
            {SignInPage.Fault(fault)}
            <p class="lead">Every browser that was given this host's access token. Sign out what you do not know or no longer use.</p>
            <form method="post" action="{Path}">
              <ul class="devices">
            {string.Concat(sessions.Select(session => Item(session, session.Id == own, now)))}
              </ul>
              {(sessions.Count == 0 ? "<p>No browser is signed in.</p>" : "")}
              <h2>All at once</h2>
              <p><button name="end" value="{Everywhere}">Sign out everywhere</button></p>
              <p class="hint">This device too. Programs that send the token itself go on; to stop them, start the host with another token.</p>
              {(own is null ? "" : ClearPart)}
            </form>
            <p class="back"><a href="/">Back to your projects</a></p>
            """,
            status);
    }

    private static string Item(Session session, bool isOwn, DateTimeOffset now)
    {
        var name = SignInPage.Encode(session.Device);
        var (seen, signedIn) = (Seen(now - session.SeenAt), Ago(now - session.SignedInAt));
        return $"""
                <li>
                  <div><strong>{name}</strong>{(isOwn ? " <span class=\"this\">this device</span>" : "")}
                  <span class="when">Last seen {seen}, signed in {signedIn}</span></div>
                  <button name="end" value="{SignInPage.Encode(session.Id)}">Sign out<span class="unseen"> {name}, last seen {seen}{(isOwn ? ", this device" : "")}</span></button>
                </li>

            """;
    }

    private const string ClearPart = $"""
        <h2>On a device that is not yours</h2>
              <p><button name="end" value="{Clear}">Sign out and clear this device</button></p>
              <p class="hint">Takes away all that this browser keeps for Dyepath, projects and pieces for working without a connection. What it
              has not sent to the host yet is lost.</p>
        """;

    private const string Cleared = $"""
        <p>This browser was told to clear all that it kept for Dyepath.</p>
        <p><a class="button" href="{SignIn.Path}">Sign in again</a></p>
        """;

    private static string Seen(TimeSpan ago) => ago < SessionStore.SeenEvery ? "within the last hour" : Ago(ago);

    /// <summary>So long ago, which is the same wherever the reader is.</summary>
    private static string Ago(TimeSpan ago) =>
        ago < TimeSpan.FromMinutes(2) ? "just now"
        : ago < TimeSpan.FromHours(1) ? FormattableString.Invariant($"{(int)ago.TotalMinutes} minutes ago")
        : ago < TimeSpan.FromHours(2) ? "an hour ago"
        : ago < TimeSpan.FromDays(1) ? FormattableString.Invariant($"{(int)ago.TotalHours} hours ago")
        : ago < TimeSpan.FromDays(2) ? "a day ago"
        : FormattableString.Invariant($"{(int)ago.TotalDays} days ago");
}
