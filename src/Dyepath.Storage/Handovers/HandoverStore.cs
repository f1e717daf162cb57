using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Handovers;

/// <param name="Id">Of the handover.</param>
/// <param name="ProjectId">The project that it was made from.</param>
/// <param name="Document">The piece as it was handed over.</param>
public sealed record HandedPiece(string Id, string ProjectId, byte[] Document);

/// <summary>
/// Pieces handed over, each to whoever has its key. Every change of a handover or its logs locks the project first: what
/// deletes the project locks in that order too.
/// </summary>
public sealed class HandoverStore(AppDb db, TimeProvider clock, StoreUse use, StoreWatch watch)
{
    /// <summary>Handovers of a project that stand at once.</summary>
    public const int MostOfProject = 50;

    /// <summary>Newest first; null where there is no such project.</summary>
    public Task<IReadOnlyList<HandoverSummary>?> ListAsync(string projectId, CancellationToken stop) =>
        db.AgainAsync<IReadOnlyList<HandoverSummary>?>(
            async _ =>
            {
                var handovers = await db.Handovers.Where(h => h.ProjectId == projectId).OrderByDescending(h => h.CreatedAt)
                    .ThenBy(h => h.Id)
                    .Select(h => new HandoverSummary(h.Id, h.Size, h.CreatedAt, db.Logs.Count(l => l.HandoverId == h.Id)))
                    .ToListAsync(stop);
                return handovers.Count > 0 || await db.Projects.AnyAsync(p => p.Id == projectId, stop) ? handovers : null;
            },
            stop);

    /// <param name="piece">A making with an empty log.</param>
    public Task<HandoverOutcome> CreateAsync(string projectId, MakingText piece, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var key = SecretKey.New();
        var id = Guid.CreateVersion7().ToString();
        return watch.WriteAsync<HandoverOutcome>(
            db,
            async again =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                await using var transaction = await db.Database.BeginTransactionAsync(stop);
                if (!await db.LockAsync(projectId, stop))
                    return new HandoverOutcome.Missing();
                // An earlier try, whose answer was lost, may have made it.
                if (again && await db.Handovers.SingleOrDefaultAsync(h => h.Id == id, stop) is { } made)
                    return new HandoverOutcome.Done(new(made.Id, made.Size, made.CreatedAt, key));
                if (await db.Handovers.CountAsync(h => h.ProjectId == projectId, stop) >= MostOfProject)
                    return new HandoverOutcome.Full();
                await use.TakeBytesAsync(db, piece.Document.Length, stop);
                var row = new HandoverRow
                {
                    Id = id,
                    ProjectId = projectId,
                    Size = piece.Size,
                    CreatedAt = clock.GetStoredNow(),
                    KeyHash = SecretKey.Hash(key),
                    Document = piece.Document,
                };
                db.Handovers.Add(row);
                await db.SaveChangesAsync(stop);
                await transaction.CommitAsync(stop);
                return new HandoverOutcome.Done(new(row.Id, row.Size, row.CreatedAt, key));
            },
            stop);
    }

    /// <summary>Nobody gets in with its key any more; its logs stay with the project.</summary>
    /// <returns>Whether there was such a handover.</returns>
    public Task<bool> RevokeAsync(string projectId, string id, CancellationToken stop) => watch.WriteAsync(
        db,
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            var revoked = await db.LockAsync(projectId, stop)
                && await db.Handovers.Where(h => h.ProjectId == projectId && h.Id == id).ExecuteDeleteAsync(stop) == 1;
            await transaction.CommitAsync(stop);
            return revoked || again;
        },
        stop);

    /// <summary>What the key opens; null where it opens nothing, or nothing any more.</summary>
    public Task<HandedPiece?> OpenAsync(string key, CancellationToken stop)
    {
        var hash = SecretKey.Hash(key);
        return db.AgainAsync(
            _ => db.Handovers.Where(h => h.KeyHash == hash).Select(h => new HandedPiece(h.Id, h.ProjectId, h.Document))
                .SingleOrDefaultAsync(stop),
            stop);
    }
}
