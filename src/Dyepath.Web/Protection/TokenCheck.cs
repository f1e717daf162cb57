using Dyepath.Storage.Sessions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>Lets a request through that has a session, or the access token as bearer; or that asks for what is open.</summary>
internal sealed class TokenCheck(RequestDelegate next, AccessToken token, SecurityLog log)
{
    private const string Bearer = "Bearer ";

    /// <summary>Lets it through, or refuses it.</summary>
    public async Task InvokeAsync(HttpContext context, SessionStore sessions)
    {
        if (IsOpen(context.GetEndpoint()))
        {
            await next(context);
            return;
        }
        if (SessionCookie.Read(context.Request) is { } key
            && await sessions.OpenAsync(key, token.Mark, context.RequestAborted) is { } session)
        {
            context.Features.Set(session);
            await next(context);
            return;
        }
        string? header = context.Request.Headers.Authorization;
        if (header?.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) != true)
        {
            await AskAsync(context);
            return;
        }
        var verdict = await token.JudgeAsync(header[Bearer.Length..], context);
        if (verdict == AccessToken.Verdict.Right)
        {
            await next(context);
            return;
        }
        log.Refused(context, verdict);
        if (verdict == AccessToken.Verdict.Wrong)
            await AskAsync(context);
        else
            await Problems.Of(token.Refusal(verdict, context)).ExecuteAsync(context);
    }

    /// <summary>
    /// What may be asked for without the token says so where it is mapped: how to give it, the program's own files, and what
    /// has a key of its own.
    /// </summary>
    private static bool IsOpen(Endpoint? endpoint) => endpoint?.Metadata.GetMetadata<IAllowAnonymous>() is not null;

    private static Task AskAsync(HttpContext context)
    {
        if (SignIn.IsPage(context.Request))
        {
            // A browser keeps what follows the # of the address, where a link may carry the token.
            context.Response.Redirect(SignIn.Path);
            return Task.CompletedTask;
        }
        context.Response.Headers[HeaderNames.WWWAuthenticate] = "Bearer";
        return Problems.Of(
            StatusCodes.Status401Unauthorized, "This host asks for its access token.",
            $"Sign in at {SignIn.Path}, or send the token as Bearer.")
            .ExecuteAsync(context);
    }
}
