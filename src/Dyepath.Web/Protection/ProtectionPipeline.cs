using Dyepath.Storage.Sessions;
using Dyepath.Web.Serving;
using Microsoft.AspNetCore.HttpOverrides;

namespace Dyepath.Web.Protection;

/// <summary>What every request passes, in this order. See docs/decisions/host-protection.md.</summary>
internal static class ProtectionPipeline
{
    /// <summary>What the steps need.</summary>
    public static void AddProtection(this IServiceCollection services, HostSettings settings)
    {
        services.AddSingleton<StoreTroubles>().AddExceptionHandler<Faults>();
        services.AddSingleton(new HostNames(settings));
        services.AddSingleton<SecurityLog>();
        if (settings.AccessToken is { } token)
            services.AddSingleton(provider => new AccessToken(token, provider.GetRequiredService<TimeProvider>()));
    }

    /// <summary>The steps, before every feature.</summary>
    public static void UseProtection(this WebApplication app, HostSettings settings)
    {
        app.UseProxies(settings);
        app.UseMiddleware<SecurityHeaders>();
        app.UseExceptionHandler(_ => { });
        app.UseStatusCodePages(bare => Faults.Said(bare.HttpContext.Response.StatusCode).ExecuteAsync(bare.HttpContext));
        app.UseMiddleware<HostNames.Check>();
        app.UseMiddleware<SameOrigin>();
        app.UseMiddleware<Bounds>();
        if (settings.AccessToken is not null)
            app.UseMiddleware<TokenCheck>();
        app.UseMiddleware<JsonOnly>();
    }

    /// <summary>Another token than before ends every session.</summary>
    public static Task EndOtherSessionsAsync(this IServiceProvider services) => services.GetService<AccessToken>() is { } token
        ? services.GetRequiredService<SessionStore>().EndOfOtherTokensAsync(token.Mark, CancellationToken.None)
        : Task.CompletedTask;

    /// <summary>What a named proxy says of where a request comes from, and whether by https, is taken; nobody else's word is.</summary>
    private static void UseProxies(this WebApplication app, HostSettings settings)
    {
        if (settings.Proxies is not { Count: > 0 } proxies)
            return;
        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null,
        };
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (var proxy in proxies)
            options.KnownIPNetworks.Add(proxy);
        app.UseForwardedHeaders(options);
    }
}
