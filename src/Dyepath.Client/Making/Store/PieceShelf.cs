using System.Text;
using Dyepath.Client.Store;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Making.Store;

/// <param name="ProjectId">The project that it was begun from; missing where it came from nobody's shelf.</param>
/// <param name="BegunAt">Missing where only the host has it.</param>
/// <param name="WorkedAt">When it was last worked on.</param>
/// <param name="Entries">Length of its log.</param>
/// <param name="Key">Of the handover that it was begun from.</param>
public sealed record PieceEntry(
    string Id, string? ProjectId, string Title, string Size, DateTimeOffset? BegunAt, DateTimeOffset WorkedAt, int Entries, string? Key, bool IsHere);

/// <summary>Everything that can be done to pieces under way without opening them, on the host and on this device.</summary>
public sealed class PieceShelf(MakingHost host, IMakingShelf device, MakingKeeper keeper)
{
    /// <summary>Only this device was asked: there is no host, or no connection.</summary>
    public bool Away { get; private set; }

    /// <summary>The latest worked on first.</summary>
    public async Task<IReadOnlyList<PieceEntry>> ListAsync()
    {
        var answer = await host.ListAsync();
        Away = answer.Reply != ServerReply.Done;
        var here = (await HereAsync()).ToDictionary(h => h.Id);
        var there = (answer.Value ?? []).ToDictionary(s => s.Id);
        return
        [
            .. here.Values.Select(h => new PieceEntry(
                    h.Id, h.ProjectId ?? there.GetValueOrDefault(h.Id)?.ProjectId, h.Title, h.Size, h.BegunAt, h.UpdatedAt,
                    Math.Max(h.Entries, there.GetValueOrDefault(h.Id)?.Entries ?? 0), h.Key, true))
                .Concat(there.Values.Where(s => !here.ContainsKey(s.Id))
                    .Select(s => new PieceEntry(s.Id, s.ProjectId, s.Title, s.Size, null, s.UpdatedAt, s.Entries, null, false)))
                .OrderByDescending(p => p.WorkedAt),
        ];
    }

    /// <summary>Puts a new piece on this device; where the device keeps nothing, on the host.</summary>
    /// <param name="key">Of the handover that it is begun from: such a piece goes nowhere else.</param>
    /// <returns>Its id; or why there is none, in words.</returns>
    public async Task<(string? Id, string? Why)> BeginAsync(MakingDocument making, string? projectId = null, string? key = null)
    {
        var id = Guid.NewGuid().ToString();
        try
        {
            await device.CreateAsync(KeptMaking.Of(id, making, DateTimeOffset.UtcNow, projectId, key));
            return (id, null);
        }
        catch (IOException fault)
        {
            return key is null && (await host.PutAsync(id, projectId, null, MakingWriter.WriteUtf8(making))).Reply == ServerReply.Done
                ? (id, null)
                : (null, Keeper.NotKept(fault));
        }
    }

    /// <summary>The piece on this device that was begun from this key; null where there is none.</summary>
    public async Task<string?> BegunFromAsync(string key) =>
        (await HereAsync()).Where(h => h.Key == key).OrderByDescending(h => h.UpdatedAt).FirstOrDefault()?.Id;

    /// <summary>The document with its log, the latest that can be reached; null with nothing.</summary>
    public async Task<MakingDocument?> ReadAsync(string id)
    {
        try
        {
            if (await device.GetAsync(id) is { } kept)
                return kept.Read();
        }
        catch (IOException)
        {
            // The host may have it.
        }
        return (await host.GetAsync(id)).Value is { } stored ? MakingReader.Read(Encoding.UTF8.GetBytes(stored.Text)).Making : null;
    }

    /// <summary>Takes a piece from this device and from the host, for ever.</summary>
    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> PutAwayAsync(PieceEntry piece)
    {
        if (piece.Key is null)
        {
            var answer = await host.DeleteAsync(piece.Id);
            var wasSent = !piece.IsHere || (await HereAsync()).Any(h => h.Id == piece.Id && h.Etag is not null);
            if (answer.Reply == ServerReply.Away && wasSent)
                return "The host has a copy and cannot be reached just now: try again once you are connected.";
            if (answer.Reply is not (ServerReply.Done or ServerReply.Missing or ServerReply.Away))
                return answer.Reply == ServerReply.SignIn ? "The host asks for its access token first." : answer.Why;
        }
        await keeper.ForgetAsync(piece.Id);
        try
        {
            await device.RemoveAsync(piece.Id);
            return null;
        }
        catch (IOException fault)
        {
            return Keeper.NotKept(fault);
        }
    }

    private async Task<MakingHeader[]> HereAsync()
    {
        try
        {
            return await device.ListAsync();
        }
        catch (IOException)
        {
            // A private window may have no store of its own; the host's pieces are still to be had.
            return [];
        }
    }
}
