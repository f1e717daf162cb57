using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Store;

/// <param name="Id">Of the piece.</param>
/// <param name="ProjectId">The project that it was begun from; missing where it came from nobody's shelf.</param>
/// <param name="Title">The project's.</param>
/// <param name="Size">Name of the size that is made.</param>
/// <param name="WorkedAt">When it was last worked on.</param>
/// <param name="Entries">Length of its log.</param>
/// <param name="IsHere">This device has a copy.</param>
public sealed record PieceEntry(
    string Id, string? ProjectId, string Title, string Size, DateTimeOffset WorkedAt, int Entries, bool IsHere)
{
    /// <summary>Missing where only the host has it.</summary>
    public DateTimeOffset? BegunAt { get; init; }

    /// <summary>Of the handover that it was begun from.</summary>
    public string? Key { get; init; }
}

/// <summary>Everything that can be done to pieces under way without opening them, on the host and on this device.</summary>
public sealed class PieceShelf(MakingHost host, IMakingShelf device, MakingKeeper keeper, TimeProvider? clock = null)
{
    /// <summary>Only this device was asked: there is no host, or no connection.</summary>
    public bool Away { get; private set; }

    /// <summary>The latest worked on first.</summary>
    public async Task<IReadOnlyList<PieceEntry>> ListAsync()
    {
        var answer = await host.ListAsync();
        Away = answer.Reply != ServerReply.Done;
        var here = await HereAsync();
        var there = (answer.Value ?? []).ToDictionary(s => s.Id);
        return
        [
            .. here.Values.Select(h => new PieceEntry(
                    h.Id, h.ProjectId ?? there.GetValueOrDefault(h.Id)?.ProjectId, h.Title, h.Size, h.LastAt,
                    Math.Max(h.Entries, there.GetValueOrDefault(h.Id)?.Entries ?? 0), true)
                {
                    BegunAt = h.BegunAt,
                    Key = h.Key,
                })
                .Concat(there.Values.Where(s => !here.ContainsKey(s.Id))
                    .Select(s => new PieceEntry(s.Id, s.ProjectId, s.Title, s.Size, s.UpdatedAt, s.Entries, false)))
                .OrderByDescending(p => p.WorkedAt),
        ];
    }

    /// <summary>Puts a new piece on this device; where the device keeps nothing, on the host.</summary>
    /// <param name="key">Of the handover that it is begun from: such a piece goes nowhere else.</param>
    /// <returns>Its id; or why there is none, in words.</returns>
    public Task<(string? Id, string? Why)> BeginAsync(MakingDocument making, string? projectId = null, string? key = null) =>
        keeper.CreateAsync(Piece.Of(making, (clock ?? TimeProvider.System).GetUtcNow(), projectId, key));

    /// <summary>The piece on this device that was begun from this key; null where there is none.</summary>
    public async Task<string?> BegunFromAsync(string key) =>
        (await HereAsync()).Values.Where(h => h.Key == key).OrderByDescending(h => h.LastAt).FirstOrDefault()?.Id;

    /// <summary>The document with its log, the latest that can be reached; null with nothing.</summary>
    public async Task<MakingDocument?> ReadAsync(string id) => (await keeper.ReadAsync(id))?.Making;

    /// <summary>Takes a piece from this device and from the host, for ever.</summary>
    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> PutAwayAsync(PieceEntry piece)
    {
        if (piece.Key is null)
        {
            var answer = await host.DeleteAsync(piece.Id);
            var wasSent = !piece.IsHere || (await HereAsync()).GetValueOrDefault(piece.Id) is { Etag: not null };
            if (answer.WhyStillThere(wasSent) is { } why)
                return why;
        }
        keeper.Forget(piece.Id);
        try
        {
            await device.RemoveAsync(piece.Id);
            return null;
        }
        catch (IOException fault)
        {
            return $"This device did not put it away: {fault.Message}.";
        }
    }

    /// <summary>Of each piece the longest log.</summary>
    private async Task<IReadOnlyDictionary<string, PieceCopy>> HereAsync()
    {
        try
        {
            return (await device.ListAsync()).GroupBy(c => c.Id)
                .ToDictionary(c => c.Key, c => c.OrderByDescending(x => x.Entries).ThenByDescending(x => x.At).First());
        }
        catch (IOException)
        {
            // A private window may have no store of its own; the host's pieces are still to be had.
            return new Dictionary<string, PieceCopy>();
        }
    }
}
