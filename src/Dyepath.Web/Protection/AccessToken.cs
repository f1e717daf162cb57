using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>
/// The one secret that opens this host. A program sends it as a bearer token; a browser gives it once and gets a cookie that
/// proves it for a month, on every host that has the same token.
/// </summary>
internal sealed class AccessToken(string token, TimeProvider clock) : IDisposable
{
    private const string Bearer = "Bearer ";

    private static readonly TimeSpan CookieAge = TimeSpan.FromDays(30);

    private readonly byte[] _key = SHA256.HashData(Encoding.UTF8.GetBytes(token));

    private readonly FailureLimit _failures = new();

    public enum Verdict
    {
        Right,
        Wrong,
        TooManyWrong,
    }

    public Verdict Judge(string given, HttpContext context)
    {
        if (_failures.IsReached(context))
            return Verdict.TooManyWrong;
        if (CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), _key))
            return Verdict.Right;
        _failures.Count(context);
        return Verdict.Wrong;
    }

    public void GiveCookie(HttpContext context)
    {
        var until = clock.GetUtcNow() + CookieAge;
        context.Response.Cookies.Append(CookieName(context.Request), $"{Stamp(until)}.{Seal(Stamp(until))}", new CookieOptions
        {
            HttpOnly = true,
            Secure = context.Request.IsHttps,
            SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict,
            Path = "/",
            Expires = until,
        });
    }

    public void Dispose() => _failures.Dispose();

    private bool HasCookie(HttpRequest request)
    {
        var parts = request.Cookies[CookieName(request)]?.Split('.');
        return parts is [var stamp, var seal]
            && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(seal), Encoding.UTF8.GetBytes(Seal(stamp)))
            && long.Parse(stamp, CultureInfo.InvariantCulture) > clock.GetUtcNow().ToUnixTimeSeconds();
    }

    private string Seal(string stamp) =>
        Base64Url.EncodeToString(HMACSHA256.HashData(_key, Encoding.UTF8.GetBytes($"cookie until {stamp}")));

    private static string Stamp(DateTimeOffset until) => until.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);

    /// <summary>The prefix binds the cookie to this very host, but browsers take it over https only.</summary>
    private static string CookieName(HttpRequest request) => request.IsHttps ? "__Host-dyepath" : "dyepath";

    internal sealed class Check(RequestDelegate next, AccessToken token)
    {
        public Task InvokeAsync(HttpContext context)
        {
            if (IsOpen(context.GetEndpoint()) || token.HasCookie(context.Request))
                return next(context);
            string? header = context.Request.Headers.Authorization;
            var verdict = header?.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) == true
                ? token.Judge(header[Bearer.Length..], context)
                : Verdict.Wrong;
            return verdict == Verdict.Right ? next(context) : Refuse(verdict, context);
        }

        /// <summary>
        /// What may be asked for without the token says so where it is mapped: how to give it, the program's own files, and what
        /// has a key of its own.
        /// </summary>
        private static bool IsOpen(Endpoint? endpoint) => endpoint?.Metadata.GetMetadata<IAllowAnonymous>() is not null;

        private static Task Refuse(Verdict verdict, HttpContext context)
        {
            if (verdict == Verdict.TooManyWrong)
                return FailureLimit.TooMany(context, "tokens").ExecuteAsync(context);
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
}
