using Dyepath.Contracts;
using Dyepath.Core.Projects;
using Dyepath.Storage;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Web.Client;
using Dyepath.Web.Demo;
using Dyepath.Web.Handovers;
using Dyepath.Web.Health;
using Dyepath.Web.Makings;
using Dyepath.Web.Projects;
using Dyepath.Web.Protection;
using Dyepath.Web.Versions;
using Microsoft.Extensions.FileProviders;

namespace Dyepath.Web.Serving;

/// <summary>The host: a list of its features.</summary>
internal static class DyepathHost
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>More than a document may have: what is a little too large is read, so that the answer arrives and says so.</summary>
    private const long MostBytesRead = 4 * ProjectReader.MostBytes;

    /// <exception cref="BadSettingException">The settings cannot be followed.</exception>
    /// <param name="clock">Missing: the system's.</param>
    /// <param name="client">Missing: the one that this program came with.</param>
    public static WebApplication Build(HostSettings settings, TimeProvider? clock = null, IFileProvider? client = null)
    {
        settings.Check();
        // Empty, so that no environment variable and no settings file makes it listen or trust beyond its own options.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(DyepathHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        if (client is null)
            builder.WebHost.UseStaticWebAssets();
        else
            builder.Environment.WebRootFileProvider = client;
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestLineSize = 4_096;
            kestrel.Limits.MaxRequestHeadersTotalSize = 16_384;
            kestrel.Limits.MaxRequestBodySize = MostBytesRead;
            kestrel.Bind(settings);
        });
        builder.Logging.AddLogs();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = Patience);
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.TypeInfoResolverChain.Insert(0, ContractsJson.Default));
        builder.Services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
        builder.Services.AddRouting();
        builder.Services.AddSingleton(clock ?? TimeProvider.System);
        builder.Services.AddStorage(settings.Database, Stores.Forms);
        builder.Services.AddProtection(settings);
        builder.Services.AddScoped<ProjectSaving>().AddSingleton<HandedKeys>().AddSingleton(_ => new PieceMaker());
        builder.Services.AddSingleton(settings).AddSingleton<Releases>();
        builder.Services.AddOpenApi();

        var app = builder.Build();
        app.UseRequestLog();
        app.UseProtection(settings);
        app.MapSignIn(settings);
        app.MapProjects();
        app.MapVersions();
        app.MapEditions();
        app.MapMakings();
        app.MapHandovers();
        app.MapHanded();
        app.MapDemo();
        app.MapHealth();
        app.MapOpenApi();
        app.MapClient();
        return app;
    }

    /// <summary>Listens once the store is ready.</summary>
    /// <exception cref="StoreNotReadyException">It cannot be used as it is.</exception>
    public static async Task StartAsync(WebApplication app)
    {
        await using (var scope = app.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<AppDb>().PrepareAsync(CancellationToken.None);
            await scope.ServiceProvider.EndOtherSessionsAsync();
            await scope.ServiceProvider.SeedDemoAsync();
        }
        app.Services.GetRequiredService<Releases>().Keep();
        await app.StartAsync();
    }
}
