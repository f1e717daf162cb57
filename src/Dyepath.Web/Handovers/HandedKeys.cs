using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Web.Protection;

namespace Dyepath.Web.Handovers;

/// <summary>What a key opens. Wrong ones are counted apart from wrong access tokens: a tester's slip locks no designer out.</summary>
internal sealed class HandedKeys(TimeProvider clock)
{
    /// <summary>The same whether the key was wrong or its handover was revoked.</summary>
    public static IResult OpensNothing { get; } = Problems.Of(
        StatusCodes.Status404NotFound, "This address opens nothing, or nothing any more.",
        "See whether it was copied whole; if it was, ask the designer who sent it for another.");

    private readonly FailureLimit _failures = new(clock);

    /// <summary>The piece, or the answer that says why there is none; a wrong key is counted.</summary>
    public async Task<(HandedPiece? Piece, IResult? Refusal)> OpenAsync(
        string? key, HttpContext context, HandoverStore store, CancellationToken stop)
    {
        if (_failures.IsReached(context))
            return (null, Problems.Of(_failures.Refusal(context, "keys")));
        if (key is not null && SecretKey.HasForm(key) && await store.OpenAsync(key, stop) is { } piece)
            return (piece, null);
        _failures.Count(context);
        return (null, OpensNothing);
    }
}
