using System.Globalization;
using Dyepath.Contracts;
using Dyepath.Storage.Versions;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Versions;

/// <summary>The texts that a project had before.</summary>
internal static class VersionEndpoints
{
    private const string ProblemJson = "application/problem+json";

    private static readonly IResult NoVersion = Problems.Of(
        StatusCodes.Status404NotFound, "There is no such version.",
        "Older versions are thinned out as time goes by; look at the list again.");

    /// <summary>The list, each text, and bringing one back.</summary>
    public static void MapVersions(this WebApplication app)
    {
        var versions = app.MapGroup($"/{ApiPaths.Versions("{id}")}").WithTags("versions");
        versions.MapGet("", ListAsync)
            .WithName("versions").WithSummary("Earlier texts, newest first; where there are more, Link names the next part.")
            .Produces<VersionSummary[]>().Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        versions.MapGet("/{number:int}", async (string id, int number, VersionStore store, CancellationToken stop) =>
            await store.ReadAsync(id, number, stop) is { } text
                ? (IResult)TypedResults.Bytes(text, "application/json")
                : NoVersion)
            .WithName("version").WithSummary("An earlier text, byte for byte.")
            .Produces<object>(StatusCodes.Status200OK, "application/json").Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        versions.MapPost("/{number:int}/restore", RestoreAsync)
            .WithName("restoreVersion").WithSummary("Makes an earlier text the present one; the present one becomes a version.")
            .Produces<ProjectSummary>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status412PreconditionFailed, ProblemJson);
    }

    private static async Task<IResult> ListAsync(
        string id, HttpContext context, VersionStore store, CancellationToken stop, int after = int.MaxValue)
    {
        if (await store.ListAsync(id, after, stop) is not var (versions, next))
            return Problems.NoProject;
        if (next is { } number)
            Paging.Tell(context, ApiPaths.Versions(id), number.ToString(CultureInfo.InvariantCulture));
        return TypedResults.Ok(versions);
    }

    private static async Task<IResult> RestoreAsync(
        string id, int number, HttpContext context, VersionStore store, ProjectSaving saving, CancellationToken stop)
    {
        if (await store.ReadAsync(id, number, stop) is not { } found)
            return NoVersion;
        // The store gives nothing back that is no document.
        return await saving.SaveAsync(context, id, DocumentText.Read(found).Text!, keep: true);
    }
}
