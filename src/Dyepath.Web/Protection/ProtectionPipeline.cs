using Dyepath.Web.Serving;

namespace Dyepath.Web.Protection;

/// <summary>What every request passes, in this order. See docs/decisions/host-protection.md.</summary>
internal static class ProtectionPipeline
{
    public static void AddProtection(this IServiceCollection services, HostSettings settings)
    {
        services.AddSingleton<StoreTroubles>().AddExceptionHandler<Faults>();
        services.AddSingleton(new HostNames(settings));
        if (settings.AccessToken is { } token)
            services.AddSingleton(provider => new AccessToken(token, provider.GetRequiredService<TimeProvider>()));
    }

    public static void UseProtection(this WebApplication app, HostSettings settings)
    {
        app.UseMiddleware<SecurityHeaders>();
        app.UseExceptionHandler(_ => { });
        app.UseMiddleware<HostNames.Check>();
        app.UseMiddleware<SameOrigin>();
        if (settings.AccessToken is not null)
            app.UseMiddleware<AccessToken.Check>();
        app.UseMiddleware<JsonOnly>();
    }
}
