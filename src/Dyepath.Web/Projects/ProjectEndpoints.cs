using Dyepath.Contracts;
using Dyepath.Storage.Projects;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Projects;

/// <summary>The shelf, the archive, and the documents themselves.</summary>
internal static class ProjectEndpoints
{
    private const string Json = "application/json";
    private const string ProblemJson = "application/problem+json";

    /// <summary>An earlier program stored any JSON.</summary>
    private static readonly IResult NotADocument = Problems.Of(
        StatusCodes.Status422UnprocessableEntity, "The stored text is no project.", "Go back to an earlier version of it, then copy that.");

    /// <summary>The list, each text, saving, copying, archiving and deleting.</summary>
    public static void MapProjects(this WebApplication app)
    {
        var projects = app.MapGroup($"/{ApiPaths.Projects}").WithTags("projects");
        projects.MapGet("", ListAsync)
            .WithName("list").WithSummary("The shelf, or the archive, newest change first; where there is more, Link names the next part.")
            .Produces<ProjectSummary[]>().Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson);
        projects.MapGet("/{id}", ReadAsync)
            .WithName("read").WithSummary("A project's document, byte for byte as it was stored.")
            .Produces<object>(StatusCodes.Status200OK, Json).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status422UnprocessableEntity, ProblemJson);
        projects.MapPost("", CreateAsync)
            .WithName("create").WithSummary("Stores a new document, under an id of the client's choosing if it names one.")
            .Accepts<object>(Json).Produces<ProjectSummary>(StatusCodes.Status201Created)
            .Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson).Produces<Problem>(StatusCodes.Status409Conflict, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
        projects.MapPut("/{id}", SaveAsync)
            .WithName("save").WithSummary("Replaces a document if it is still the one whose ETag is sent as If-Match.")
            .Accepts<object>(Json).Produces<ProjectSummary>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status412PreconditionFailed, ProblemJson)
            .Produces<Problem>(StatusCodes.Status428PreconditionRequired, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
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

    private static async Task<IResult> ListAsync(HttpContext context, ProjectStore store, CancellationToken stop, bool archived = false)
    {
        if (Paging.Read(context.Request) is not { } after)
            return Paging.NoSuchPlace;
        return Paging.Answer(context, await store.ListAsync(archived, after, stop), ApiPaths.Shelf(archived));
    }

    private static async Task<IResult> ReadAsync(string id, HttpResponse response, ProjectStore store, CancellationToken stop)
    {
        switch (await store.ReadAsync(id, stop))
        {
            case TextReading.Sound sound:
                response.Headers[ApiPaths.MadeHeader] = sound.Made;
                return TypedResults.Bytes(sound.Document, Json, entityTag: new EntityTagHeaderValue(sound.Etag));
            case TextReading.Damaged damaged:
                return DamagedText.OfProject(damaged);
            default:
                return Problems.NoProject;
        }
    }

    private static async Task<IResult> CreateAsync(HttpContext context, ProjectStore store, CancellationToken stop, string? id = null)
    {
        if (id is not null && !DocumentId.IsValid(id))
            return DocumentId.Refusal("project");
        var (picture, undrawable) = SentPicture.Read(context.Request);
        if (undrawable is not null)
            return undrawable;
        var (text, refusal) = await DocumentBody.ReadAsync(context.Request, stop);
        return text is null ? refusal! : await AddAsync(context, id ?? DocumentId.New(), new(text.Utf8, text.Name, picture), store, stop);
    }

    private static async Task<IResult> SaveAsync(string id, HttpContext context, ProjectSaving saving, CancellationToken stop)
    {
        var (text, refusal) = await DocumentBody.ReadAsync(context.Request, stop);
        return text is null ? refusal! : await saving.SaveAsync(context, id, text, keep: false);
    }

    private static async Task<IResult> CopyAsync(string id, HttpContext context, ProjectStore store, CancellationToken stop)
    {
        switch (await store.ReadAsync(id, stop))
        {
            case TextReading.Sound sound:
                if (DocumentText.Read(sound.Document) is not { Text: { } text })
                    return NotADocument;
                var copy = text.Copy();
                return await AddAsync(context, DocumentId.New(), new(copy.Utf8, copy.Name, sound.Swatch), store, stop);
            case TextReading.Damaged damaged:
                return DamagedText.OfProject(damaged);
            default:
                return Problems.NoProject;
        }
    }

    private static async Task<IResult> AddAsync(HttpContext context, string id, Draft draft, ProjectStore store, CancellationToken stop)
    {
        var outcome = await store.CreateAsync(id, draft, stop);
        if (outcome is ChangeOutcome.Stale { Stored: var taken })
        {
            Preconditions.TellEtag(context, taken.Etag);
            return Problems.Stored(
                StatusCodes.Status409Conflict, "There is a project with this id already.",
                "It may be the one that you sent before: compare its ETag.", taken.Etag, taken.UpdatedAt);
        }
        var project = ((ChangeOutcome.Done)outcome).Project;
        Preconditions.TellEtag(context, project.Etag);
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
