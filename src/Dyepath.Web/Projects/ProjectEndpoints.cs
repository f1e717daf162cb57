using Dyepath.Contracts;
using Dyepath.Storage.Projects;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Projects;

/// <summary>The shelf, the archive, and the documents themselves.</summary>
internal static class ProjectEndpoints
{
    private const string Json = "application/json";
    private const string ProblemJson = "application/problem+json";

    public static void MapProjects(this WebApplication app)
    {
        var projects = app.MapGroup($"/{ApiPaths.Projects}").WithTags("projects");
        projects.MapGet("", async (ProjectStore store, CancellationToken stop, bool archived = false) =>
            TypedResults.Ok(await store.ListAsync(archived, stop)))
            .WithName("list").WithSummary("The shelf, or the archive, newest change first.");
        projects.MapGet("/{id}", ReadAsync)
            .WithName("read").WithSummary("A project's document, byte for byte as it was stored.")
            .Produces<object>(StatusCodes.Status200OK, Json).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        projects.MapPost("", CreateAsync)
            .WithName("create").WithSummary("Stores a new document, under an id of the client's choosing if it names one.")
            .Accepts<object>(Json).Produces<ProjectSummary>(StatusCodes.Status201Created)
            .Produces<Problem>(StatusCodes.Status409Conflict, ProblemJson);
        projects.MapPut("/{id}", SaveAsync)
            .WithName("save").WithSummary("Replaces a document if it is still the one whose ETag is sent as If-Match.")
            .Accepts<object>(Json).Produces<ProjectSummary>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status412PreconditionFailed, ProblemJson)
            .Produces<Problem>(StatusCodes.Status428PreconditionRequired, ProblemJson);
        projects.MapPost("/{id}/copy", CopyAsync)
            .WithName("copy").WithSummary("A new project with the same text; its title says that it is a copy.")
            .Produces<ProjectSummary>(StatusCodes.Status201Created).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        projects.MapPost("/{id}/archive", (string id, ProjectStore store, CancellationToken stop) => ArchiveAsync(id, true, store, stop))
            .WithName("archive").WithSummary("Takes a project off the shelf.")
            .Produces<ProjectSummary>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        projects.MapPost("/{id}/restore", (string id, ProjectStore store, CancellationToken stop) => ArchiveAsync(id, false, store, stop))
            .WithName("restore").WithSummary("Puts a project back on the shelf.")
            .Produces<ProjectSummary>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        projects.MapDelete("/{id}", DeleteAsync)
            .WithName("delete").WithSummary("Deletes a project and its versions for ever; only from the archive.")
            .Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status409Conflict, ProblemJson);
    }

    private static async Task<IResult> ReadAsync(string id, HttpResponse response, ProjectStore store, CancellationToken stop)
    {
        if (await store.ReadAsync(id, stop) is not var (document, etag))
            return Problems.NoProject;
        response.Headers[HeaderNames.CacheControl] = "no-cache";
        return TypedResults.Bytes(document, Json, entityTag: new EntityTagHeaderValue(etag));
    }

    private static async Task<IResult> CreateAsync(
        HttpContext context, ProjectStore store, DraftMaker drafts, CancellationToken stop, string? id = null)
    {
        if (id is not null && !DocumentId.IsValid(id))
            return DocumentId.Refusal("project");
        var (text, refusal) = await DocumentBody.ReadAsync(context.Request, stop);
        return text is null ? refusal! : await AddAsync(context, id ?? DocumentId.New(), text, store, drafts, stop);
    }

    private static async Task<IResult> SaveAsync(string id, HttpContext context, ProjectSaving saving, CancellationToken stop)
    {
        var (text, refusal) = await DocumentBody.ReadAsync(context.Request, stop);
        return text is null ? refusal! : await saving.SaveAsync(context, id, text, keep: false);
    }

    private static async Task<IResult> CopyAsync(
        string id, HttpContext context, ProjectStore store, DraftMaker drafts, CancellationToken stop)
    {
        if (await store.ReadAsync(id, stop) is not var (document, _))
            return Problems.NoProject;
        var copy = DocumentText.Read(document).Text!.Copy();
        return await AddAsync(context, DocumentId.New(), copy, store, drafts, stop);
    }

    private static async Task<IResult> AddAsync(
        HttpContext context, string id, DocumentText text, ProjectStore store, DraftMaker drafts, CancellationToken stop)
    {
        var outcome = await store.CreateAsync(id, drafts.Make(text, stop), stop);
        if (outcome is ChangeOutcome.Stale { Stored: var taken })
        {
            context.Response.Headers[HeaderNames.ETag] = taken.Etag;
            return Problems.Stored(
                StatusCodes.Status409Conflict, "There is a project with this id already.",
                "It may be the one that you sent before: compare its ETag.", taken.Etag, taken.UpdatedAt);
        }
        var project = ((ChangeOutcome.Done)outcome).Project;
        context.Response.Headers[HeaderNames.ETag] = project.Etag;
        return TypedResults.Created($"/{ApiPaths.Project(id)}", project);
    }

    private static async Task<IResult> ArchiveAsync(string id, bool archived, ProjectStore store, CancellationToken stop) =>
        await store.ArchiveAsync(id, archived, stop) is { } project ? TypedResults.Ok(project) : Problems.NoProject;

    private static async Task<IResult> DeleteAsync(string id, ProjectStore store, CancellationToken stop) =>
        await store.DeleteAsync(id, stop) switch
        {
            DeleteOutcome.Deleted => TypedResults.NoContent(),
            DeleteOutcome.Missing => Problems.NoProject,
            _ => Problems.Of(
                StatusCodes.Status409Conflict, "The project is still on the shelf.",
                "Move it to the archive first; from there it can be deleted for ever."),
        };
}
