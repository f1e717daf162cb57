using Dyepath.Contracts;
using Dyepath.Storage;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Watch;
using Dyepath.Web.Protection;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Dyepath.Web.Health;

/// <summary>For whoever watches over the host: that it runs, that its store answers, and what has to be seen to.</summary>
internal static class HealthEndpoints
{
    /// <summary>A watcher asks every few seconds, and must be answered when the store is not.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);

    /// <summary>A disk with less is as good as full: a save, its log and what the database does meanwhile need room.</summary>
    private const long LeastFree = 50_000_000;

    /// <summary><c>/health/live</c> and <c>/health/ready</c>.</summary>
    public static void MapHealth(this WebApplication app)
    {
        app.MapGet("/health/live", () => "Healthy").ExcludeFromDescription();
        app.MapGet("/health/ready", ReadyAsync).ExcludeFromDescription();
    }

    private static async Task<JsonHttpResult<Readiness>> ReadyAsync(
        StoreInspector inspector, StoreWatch watch, StoreTroubles words, DatabaseChoice database, CancellationToken stop)
    {
        var troubles = new List<Trouble>();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        try
        {
            if (await inspector.FindNewerAsync(patience.Token) is { } newer)
                troubles.Add(new Trouble("newer", "A newer Dyepath uses the store.", newer));
            await inspector.LookAsync(patience.Token);
        }
        catch (Exception e) when (!stop.IsCancellationRequested && (e is OperationCanceledException || StoreFaults.Find(e) is not null))
        {
            troubles.Add(words.Of(StoreFaults.Find(e) ?? StoreFault.Away).Words);
        }
        // A store that cannot be read, or that this program may misread, is no store to send anybody to; a full one can be read still.
        var isReady = troubles.Count == 0;
        if (watch.IsFull || HasNoRoom(database))
            troubles.Add(words.Of(StoreFault.DiskFull).Words);
        foreach (var damaged in watch.Damaged)
        {
            troubles.Add(new Trouble(
                "damaged", $"The stored text of “{damaged.Name}” is damaged.",
                $"Open the project {damaged.Id} and restore the version that is named there."));
        }
        return TypedResults.Json(
            new Readiness(isReady, troubles), ContractsJson.Default.Readiness,
            statusCode: isReady ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }

    /// <summary>Where the store is a file, its disk is ours to look at.</summary>
    private static bool HasNoRoom(DatabaseChoice database) =>
        database.Connection is null && new DriveInfo(database.Folder).AvailableFreeSpace < LeastFree;
}
