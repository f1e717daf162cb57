using Dyepath.Contracts;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Makings;

/// <summary>Copies of the pieces under way, by which two devices follow the same piece.</summary>
internal static class MakingEndpoints
{
    private const string Json = "application/json";
    private const string ProblemJson = "application/problem+json";

    private static readonly IResult NoMaking = Problems.Of(
        StatusCodes.Status404NotFound, "There is no such making.",
        "It may have been deleted elsewhere; the device on which it is made has it still.");

    private static readonly IResult ConditionIsMissing = Problems.Of(
        StatusCodes.Status428PreconditionRequired, "The making does not say which text it continues.",
        "Send the ETag that came with that text as If-Match, or If-None-Match: * where there is none yet.");

    private static readonly IResult Full = Problems.Of(
        StatusCodes.Status507InsufficientStorage, $"There are {MakingStore.Most} makings already.",
        "Delete finished ones; until then this one is kept on the device alone.");

    /// <summary>The list, each text, saving and deleting.</summary>
    public static void MapMakings(this WebApplication app)
    {
        var makings = app.MapGroup($"/{ApiPaths.Makings}").WithTags("makings");
        makings.MapGet("", ListAsync)
            .WithName("makings").WithSummary("The pieces under way, newest change first; where there are more, Link names the next part.")
            .Produces<MakingSummary[]>().Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson);
        makings.MapGet("/{id}", ReadAsync)
            .WithName("making").WithSummary("A making, byte for byte as it was stored.")
            .Produces<object>(StatusCodes.Status200OK, Json).Produces(StatusCodes.Status304NotModified)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status422UnprocessableEntity, ProblemJson);
        makings.MapPut("/{id}", SaveAsync)
            .WithName("saveMaking")
            .WithSummary("Stores a new making with If-None-Match: *, or replaces one if it is still the one whose ETag is sent as If-Match.")
            .Accepts<object>(Json).Produces<MakingSummary>().Produces<MakingSummary>(StatusCodes.Status201Created)
            .Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status412PreconditionFailed, ProblemJson)
            .Produces<Problem>(StatusCodes.Status428PreconditionRequired, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
        makings.MapDelete("/{id}", async (string id, MakingStore store, CancellationToken stop) =>
            await store.DeleteAsync(id, stop) ? TypedResults.NoContent() : NoMaking)
            .WithName("deleteMaking").WithSummary("Deletes the host's copy for ever.")
            .Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
    }

    private static async Task<IResult> ListAsync(HttpContext context, MakingStore store, CancellationToken stop) =>
        Paging.Read(context.Request) is { } after
            ? Paging.Answer(context, await store.ListAsync(after, stop), ApiPaths.Makings)
            : Paging.NoSuchPlace;

    private static async Task<IResult> ReadAsync(string id, HttpResponse response, MakingStore store, CancellationToken stop)
    {
        switch (await store.ReadAsync(id, stop))
        {
            case TextReading.Sound sound:
                response.Headers[ApiPaths.MadeHeader] = sound.Made;
                return TypedResults.Bytes(sound.Document, Json, entityTag: new EntityTagHeaderValue(sound.Etag));
            case TextReading.Damaged damaged:
                return DamagedText.OfMaking(damaged);
            default:
                return NoMaking;
        }
    }

    /// <param name="project">The project that the piece was begun from; stored with a new making only.</param>
    private static async Task<IResult> SaveAsync(
        string id, HttpContext context, MakingStore store, CancellationToken stop, string? project = null)
    {
        if (!DocumentId.IsValid(id))
            return DocumentId.Refusal("making");
        if (project is not null && !DocumentId.IsValid(project))
            return DocumentId.Refusal("project");
        var isNew = Preconditions.IsNew(context.Request);
        var seen = Preconditions.Seen(context.Request);
        if (!isNew && seen is null)
            return ConditionIsMissing;
        var (_, text, refusal) = await MakingBody.ReadAsync(context.Request, stop);
        if (text is null)
            return refusal!;
        var outcome = isNew ? await store.CreateAsync(id, project, text, stop) : await store.SaveAsync(id, seen!, text, stop);
        switch (outcome)
        {
            case MakingOutcome.Created { Making: var making }:
                Preconditions.TellEtag(context, making.Etag);
                return TypedResults.Created($"/{ApiPaths.Making(id)}", making);
            case MakingOutcome.Saved { Making: var making }:
                Preconditions.TellEtag(context, making.Etag);
                return TypedResults.Ok(making);
            case MakingOutcome.Stale { Stored: var stored }:
                Preconditions.TellEtag(context, stored.Etag);
                return Problems.Stored(
                    StatusCodes.Status412PreconditionFailed, "The piece was worked on elsewhere meanwhile.",
                    "Nothing was overwritten. Read the stored making, put both logs together, then send it again.",
                    stored.Etag, stored.UpdatedAt);
            case MakingOutcome.Full:
                return Full;
            default:
                return NoMaking;
        }
    }
}
