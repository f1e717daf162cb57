using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Storage.Handovers;
using Dyepath.Web.Makings;
using Microsoft.AspNetCore.Mvc;

namespace Dyepath.Web.Handovers;

/// <summary>The maker's side of a handover: whoever has the key, and no access token.</summary>
internal static class HandedEndpoints
{
    private const string Json = "application/json";
    private const string ProblemJson = "application/problem+json";

    private static readonly IResult AnotherPiece = Problems.Of(
        StatusCodes.Status400BadRequest, "This is another piece than the one that was handed over.",
        "Its design or its size differs: send it under the address from which it was begun.");

    private static readonly IResult Full = Problems.Of(
        StatusCodes.Status507InsufficientStorage, "There is no room for more logs under this address.",
        $"It holds {MakerLogStore.MostOfHandover} logs or {MakerLogStore.MostBytesOfHandover / 1_000_000} MB; "
        + "ask the designer for a new one. Your device keeps everything meanwhile.");

    /// <summary>What a key opens, and the log that comes back.</summary>
    public static void MapHanded(this WebApplication app)
    {
        var handed = app.MapGroup($"/{ApiPaths.Handed}").WithTags("handed").AllowAnonymous();
        handed.MapGet("", ReadAsync)
            .WithName("handed").WithSummary($"The piece that the key in {ApiPaths.HandedKeyHeader} opens: a making with an empty log.")
            .Produces<object>(StatusCodes.Status200OK, Json).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status429TooManyRequests, ProblemJson);
        handed.MapPut("/logs/{makingId}", ReceiveAsync)
            .WithName("sendLog").WithSummary("Stores what the maker has done, or replaces what she sent of this piece before.")
            .Accepts<object>(Json).Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson)
            .Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status429TooManyRequests, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
    }

    private static async Task<IResult> ReadAsync(
        [FromHeader(Name = ApiPaths.HandedKeyHeader)] string? key, HttpContext context, HandoverStore store, HandedKeys keys,
        CancellationToken stop)
    {
        var (piece, refusal) = await keys.OpenAsync(key, context, store, stop);
        if (piece is null)
            return refusal!;
        return MakingReader.Read(piece.Document).IsGood ? TypedResults.Bytes(piece.Document, Json) : DamagedText.OfHandover;
    }

    private static async Task<IResult> ReceiveAsync(
        string makingId, [FromHeader(Name = ApiPaths.HandedKeyHeader)] string? key, HttpContext context, HandoverStore store,
        MakerLogStore logs, HandedKeys keys, CancellationToken stop)
    {
        // The key first: nothing is read for whoever has none.
        var (piece, refusal) = await keys.OpenAsync(key, context, store, stop);
        if (piece is null)
            return refusal!;
        if (!DocumentId.IsValid(makingId))
            return DocumentId.Refusal("making");
        var (making, text, fault) = await MakingBody.ReadAsync(context.Request, stop);
        if (text is null)
            return fault!;
        if (MakingReader.Read(piece.Document).Making is not { } begun)
            return DamagedText.OfHandover;
        if (!SamePiece.Is(begun, making!))
            return AnotherPiece;
        return await logs.ReceiveAsync(piece, makingId, text, stop) switch
        {
            ReceiveOutcome.Stored => TypedResults.NoContent(),
            ReceiveOutcome.Full => Full,
            _ => HandedKeys.OpensNothing,
        };
    }
}
