using Dyepath.Storage.Database;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Dyepath.Web.Health;

/// <summary>For whoever watches over the host: it runs, and its store answers.</summary>
internal static class HealthEndpoints
{
    public static void AddHealth(this IServiceCollection services) => services.AddHealthChecks().AddCheck<StoreAnswers>("store");

    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready");
    }

    private sealed class StoreAnswers(AppDb db) : IHealthCheck
    {
        public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
            await db.Database.CanConnectAsync(cancellationToken)
                ? HealthCheckResult.Healthy()
                : HealthCheckResult.Unhealthy("The store does not answer.");
    }
}
