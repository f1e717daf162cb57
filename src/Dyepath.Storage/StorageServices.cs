using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Sessions;
using Dyepath.Storage.Versions;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Dyepath.Storage;

/// <summary>Where the store lies.</summary>
/// <param name="Folder">What the host keeps beside the store lies here too.</param>
/// <param name="Connection">A PostgreSQL connection string; missing, the store is a file in the folder.</param>
/// <param name="Limits">Missing: the usual ones.</param>
public sealed record DatabaseChoice(string Folder, string? Connection = null, StoreLimits? Limits = null)
{
    /// <summary>The store, where it is a file.</summary>
    public string File => Path.Combine(Folder, "dyepath.db");
}

/// <summary>Puts the store together.</summary>
public static class StorageServices
{
    /// <summary>Adds the stores; the caller has made the folder.</summary>
    public static IServiceCollection AddStorage(this IServiceCollection services, DatabaseChoice choice, StoredForms forms)
    {
        ArgumentNullException.ThrowIfNull(choice);
        if (choice.Connection is { } connection)
            services.AddDbContextPool<AppDb, PostgresDb>(options => PostgresDb.Configure(options, connection));
        else
            services.AddDbContextPool<AppDb, SqliteDb>(options => SqliteDb.Configure(options, choice.File));
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(choice).AddSingleton(forms).AddSingleton(choice.Limits ?? new StoreLimits()).AddSingleton<StoreUse>()
            .AddSingleton<StoreWatch>();
        return services.AddScoped<ProjectStore>().AddScoped<VersionStore>().AddScoped<EditionStore>().AddScoped<BackupStore>()
            .AddScoped<StoreInspector>().AddScoped<MakingStore>().AddScoped<HandoverStore>()
            .AddScoped<MakerLogStore>().AddScoped<SessionStore>();
    }
}
