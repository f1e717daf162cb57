using Dyepath.Contracts;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Storage.Projects;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Demo;

/// <summary>The project that ships with Dyepath.</summary>
internal static class DemoEndpoints
{
    /// <summary>The same on every host, so that of hosts which start together on an empty store one lays it there.</summary>
    private const string Id = "0198de30-0000-7000-8000-000000000001";

    /// <summary>The document, to be read.</summary>
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
        await store.CreateAsync(Id, new Draft(text.Utf8, text.Name, Picture()), CancellationToken.None);
    }

    /// <summary>What a client would send with it.</summary>
    private static SwatchPicture? Picture() =>
        GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan is { } plan
        && ProjectPicture.Of(plan, SwatchPicture.MostStitches, SwatchPicture.MostRows) is { } corner
            ? new SwatchPicture([.. corner.Colours.Select(colour => colour.ToString())], corner.Columns, corner.Rows, corner.Cells)
            : null;
}
