using Dyepath.Contracts;
using Dyepath.Core.Projects;
using Dyepath.Storage.Projects;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Demo;

/// <summary>The project that ships with Dyepath.</summary>
internal static class DemoEndpoints
{
    public static void MapDemo(this WebApplication app) =>
        app.MapGet($"/{ApiPaths.Demo}", () => Results.Bytes(DemoProject.Utf8.ToArray(), "application/json"))
            .WithName("demo").WithSummary("The demo's document.").WithTags("demo")
            .Produces<object>(StatusCodes.Status200OK, "application/json");

    /// <summary>Lays the demo on an empty shelf, so that there is something to look at.</summary>
    public static async Task SeedDemoAsync(this IServiceProvider services)
    {
        var store = services.GetRequiredService<ProjectStore>();
        if (!await store.IsEmptyAsync(CancellationToken.None))
            return;
        var text = DocumentText.Read(DemoProject.Utf8.ToArray()).Text!;
        var draft = services.GetRequiredService<DraftMaker>().Make(text, CancellationToken.None);
        await store.CreateAsync(Guid.CreateVersion7().ToString(), draft, CancellationToken.None);
    }
}
