using Dyepath.Contracts;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Projects;
using Microsoft.AspNetCore.Mvc;

namespace Dyepath.Web.Handovers;

/// <summary>The designer's side of a handover: giving a piece to testers, and what they have sent.</summary>
internal static class HandoverEndpoints
{
    private const string Json = "application/json";
    private const string ProblemJson = "application/problem+json";

    /// <summary>A size's name, and the JSON around it.</summary>
    private const int MostBytesAsked = 1_000;

    private static readonly IResult NoHandover = Problems.Of(
        StatusCodes.Status404NotFound, "There is no such handover.", "It may have been revoked already; look at the list again.");

    private static readonly IResult NoLog = Problems.Of(
        StatusCodes.Status404NotFound, "There is no such log.", "It may have been deleted already; look at the list again.");

    private static readonly IResult Full = Problems.Of(
        StatusCodes.Status507InsufficientStorage, $"The project was handed over {HandoverStore.MostOfProject} times already.",
        "Revoke handovers that nobody needs any more; their logs stay. One handover serves every tester of a size.");

    /// <summary>Handovers of a project, and their logs.</summary>
    public static void MapHandovers(this WebApplication app)
    {
        var handovers = app.MapGroup($"/{ApiPaths.Handovers("{id}")}").WithTags("handovers");
        handovers.MapGet("", async (string id, HandoverStore store, CancellationToken stop) =>
            await store.ListAsync(id, stop) is { } list ? (IResult)TypedResults.Ok(list) : Problems.NoProject)
            .WithName("handovers").WithSummary("The project's handovers that stand, newest first.")
            .Produces<HandoverSummary[]>().Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        handovers.MapPost("", CreateAsync).WithMetadata(new RequestSizeLimitAttribute(MostBytesAsked))
            .WithName("handOver").WithSummary("Hands the project over as it is, in one size; its key is told this once.")
            .Produces<Handover>(StatusCodes.Status201Created).Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status503ServiceUnavailable, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
        handovers.MapDelete("/{handover}", async (string id, string handover, HandoverStore store, CancellationToken stop) =>
            await store.RevokeAsync(id, handover, stop) ? TypedResults.NoContent() : NoHandover)
            .WithName("revoke").WithSummary("Ends a handover: its key opens nothing any more. Its logs stay with the project.")
            .Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);

        var logs = app.MapGroup($"/{ApiPaths.Logs("{id}")}").WithTags("handovers");
        logs.MapGet("", ListLogsAsync)
            .WithName("logs").WithSummary("What makers have sent, newest first; where there is more, Link names the next part.")
            .Produces<ReceivedLog[]>().Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        logs.MapGet("/{log}", async (string id, string log, MakerLogStore store, CancellationToken stop) =>
            await store.ReadAsync(id, log, stop) is { } document ? (IResult)TypedResults.Bytes(document, Json) : NoLog)
            .WithName("log").WithSummary("A maker's making, byte for byte as she sent it.")
            .Produces<object>(StatusCodes.Status200OK, Json).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
        logs.MapDelete("/{log}", async (string id, string log, MakerLogStore store, CancellationToken stop) =>
            await store.DeleteAsync(id, log, stop) ? TypedResults.NoContent() : NoLog)
            .WithName("deleteLog").WithSummary("Deletes a maker's log for ever; she may send it again.")
            .Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
    }

    private static async Task<IResult> ListLogsAsync(string id, HttpContext context, MakerLogStore store, CancellationToken stop)
    {
        if (Paging.Read(context.Request) is not { } after)
            return Paging.NoSuchPlace;
        return await store.ListAsync(id, after, stop) is { } page ? Paging.Answer(context, page, ApiPaths.Logs(id)) : Problems.NoProject;
    }

    private static async Task<IResult> CreateAsync(
        string id, NewHandover asked, HttpContext context, ProjectStore projects, HandoverStore store, PieceMaker pieces,
        CancellationToken stop)
    {
        var reading = await projects.ReadAsync(id, stop);
        if (reading is TextReading.Damaged damaged)
            return DamagedText.OfProject(damaged);
        if (reading is not TextReading.Sound { Document: var document })
            return Problems.NoProject;
        var (piece, refusal) = await pieces.MakeAsync(document, asked.Size, context, stop);
        if (piece is null)
            return refusal!;
        return await store.CreateAsync(id, piece, stop) switch
        {
            HandoverOutcome.Done { Handover: var handover } =>
                TypedResults.Created($"/{ApiPaths.Handover(id, handover.Id)}", handover),
            HandoverOutcome.Full => Full,
            _ => Problems.NoProject,
        };
    }
}
