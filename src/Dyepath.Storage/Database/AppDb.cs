using System.Diagnostics;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Sessions;
using Dyepath.Storage.Versions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dyepath.Storage.Database;

/// <summary>The tables, alike in both databases.</summary>
public abstract class AppDb(DbContextOptions options) : DbContext(options)
{
    /// <summary>Where waiting for a connection took this long already, another try would only lengthen the queue.</summary>
    private static readonly TimeSpan LongestTrying = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan[] Pauses = [TimeSpan.FromMilliseconds(50), TimeSpan.FromMilliseconds(200),
        TimeSpan.FromMilliseconds(600)];

    internal DbSet<ProjectRow> Projects => Set<ProjectRow>();

    internal DbSet<VersionRow> Versions => Set<VersionRow>();

    internal DbSet<MakingRow> Makings => Set<MakingRow>();

    internal DbSet<HandoverRow> Handovers => Set<HandoverRow>();

    internal DbSet<MakerLogRow> Logs => Set<MakerLogRow>();

    internal DbSet<SessionRow> Sessions => Set<SessionRow>();

    /// <summary>The store as messages name it.</summary>
    protected abstract string Where { get; }

    /// <summary>Whether to try again at once; a database that is a file waits by itself.</summary>
    protected virtual bool MayWorkInAMoment(Exception fault) => false;

    /// <summary>Brings the tables to this program's form, or makes them. Any number of hosts may do so at once.</summary>
    /// <exception cref="StoreNotReadyException">The store cannot be used as it is.</exception>
    public abstract Task PrepareAsync(CancellationToken cancel);

    /// <summary>Words where a newer program has changed the tables; null where this program knows them.</summary>
    internal async Task<string?> NewerFormAsync(CancellationToken cancel)
    {
        var known = Database.GetMigrations().ToArray();
        var newer = (await Database.GetAppliedMigrationsAsync(cancel)).Except(known).Order(StringComparer.Ordinal).LastOrDefault();
        return newer is null
            ? null
            : $"{Where} was brought to the form {newer} by a newer Dyepath; this program knows up to {known[^1]}. "
                + "Nothing was changed: start the newer program.";
    }

    /// <summary>
    /// Does work whose connection may break, once more if it breaks: a server that is restarted closes every connection, and the next
    /// one works. Only for work that may be done again.
    /// </summary>
    /// <param name="work">Gets whether it is done again, and so may find what it did itself before its connection broke.</param>
    /// <exception cref="StoreException">The store did not do it.</exception>
    internal async Task<T> AgainAsync<T>(Func<bool, Task<T>> work, CancellationToken cancel)
    {
        var begun = Stopwatch.GetTimestamp();
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return await work(attempt > 0);
            }
            catch (Exception e) when (!cancel.IsCancellationRequested && StoreFaults.Find(e) is { } fault)
            {
                ChangeTracker.Clear();
                if (attempt == Pauses.Length || !MayWorkInAMoment(e) || Stopwatch.GetElapsedTime(begun) > LongestTrying)
                    throw e as StoreException ?? new StoreException(fault, e);
                // Not all at the same moment.
                await Task.Delay(Pauses[attempt] * (0.5 + Random.Shared.NextDouble()), cancel);
            }
        }
    }

    /// <summary>Begins to read a state of the whole store that nobody's writing changes meanwhile.</summary>
    internal abstract Task<IDbContextTransaction> BeginSnapshotAsync(CancellationToken cancel);

    /// <summary>A turn to write in this process, until it is disposed of; null where the database needs none.</summary>
    internal virtual ValueTask<IDisposable?> TakeTurnAsync(CancellationToken cancel) => default;

    /// <summary>The project, kept from every other writer until the transaction ends.</summary>
    internal abstract IQueryable<ProjectRow> Locked(string id);

    /// <summary>Keeps the project from every other writer until the transaction ends.</summary>
    /// <returns>Whether there is such a project.</returns>
    internal async Task<bool> LockAsync(string id, CancellationToken cancel) =>
        await Locked(id).Select(p => p.Id).SingleOrDefaultAsync(cancel) is not null;

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<ProjectRow>(project =>
        {
            project.ToTable("projects");
            project.HasKey(p => p.Id);
            project.Property(p => p.Id).HasColumnName("id").HasMaxLength(36);
            project.Property(p => p.Name).HasColumnName("name");
            project.Property(p => p.Archived).HasColumnName("archived");
            project.Property(p => p.CreatedAt).HasColumnName("created_at");
            project.Property(p => p.Made).HasColumnName("made").HasMaxLength(32);
            project.Property(p => p.UpdatedAt).HasColumnName("updated_at");
            project.Property(p => p.Etag).HasColumnName("etag").HasMaxLength(40);
            project.Property(p => p.LastVersion).HasColumnName("last_version");
            project.Property(p => p.Swatch).HasColumnName("swatch");
            project.Property(p => p.Document).HasColumnName("document");
            project.HasIndex(p => new { p.Archived, p.UpdatedAt }).HasDatabaseName("projects_by_shelf");
        });
        modelBuilder.Entity<VersionRow>(version =>
        {
            version.ToTable("versions");
            version.HasKey(v => new { v.ProjectId, v.Number });
            version.Property(v => v.ProjectId).HasColumnName("project_id").HasMaxLength(36);
            version.Property(v => v.Number).HasColumnName("number");
            version.Property(v => v.SavedAt).HasColumnName("saved_at");
            version.Property(v => v.Kept).HasColumnName("kept");
            version.Property(v => v.Edition).HasColumnName("edition");
            version.Property(v => v.Bytes).HasColumnName("bytes");
            version.Property(v => v.Document).HasColumnName("document");
            version.HasOne<ProjectRow>().WithMany().HasForeignKey(v => v.ProjectId).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<MakingRow>(making =>
        {
            making.ToTable("makings");
            making.HasKey(m => m.Id);
            making.Property(m => m.Id).HasColumnName("id").HasMaxLength(36);
            making.Property(m => m.Title).HasColumnName("title");
            making.Property(m => m.Size).HasColumnName("size");
            making.Property(m => m.ProjectId).HasColumnName("project_id").HasMaxLength(36);
            making.Property(m => m.Entries).HasColumnName("entries");
            making.Property(m => m.UpdatedAt).HasColumnName("updated_at");
            making.Property(m => m.Made).HasColumnName("made").HasMaxLength(32);
            making.Property(m => m.Etag).HasColumnName("etag").HasMaxLength(40);
            making.Property(m => m.Document).HasColumnName("document");
            making.HasIndex(m => m.UpdatedAt).HasDatabaseName("makings_by_change");
        });
        modelBuilder.Entity<HandoverRow>(handover =>
        {
            handover.ToTable("handovers");
            handover.HasKey(h => h.Id);
            handover.Property(h => h.Id).HasColumnName("id").HasMaxLength(36);
            handover.Property(h => h.ProjectId).HasColumnName("project_id").HasMaxLength(36);
            handover.Property(h => h.Size).HasColumnName("size");
            handover.Property(h => h.CreatedAt).HasColumnName("created_at");
            handover.Property(h => h.KeyHash).HasColumnName("key_hash").HasMaxLength(64);
            handover.Property(h => h.Document).HasColumnName("document");
            handover.HasIndex(h => h.KeyHash).IsUnique().HasDatabaseName("handovers_by_key");
            handover.HasIndex(h => new { h.ProjectId, h.CreatedAt }).HasDatabaseName("handovers_by_project");
            handover.HasOne<ProjectRow>().WithMany().HasForeignKey(h => h.ProjectId).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<MakerLogRow>(log =>
        {
            log.ToTable("maker_logs");
            log.HasKey(l => l.Id);
            log.Property(l => l.Id).HasColumnName("id").HasMaxLength(36);
            log.Property(l => l.ProjectId).HasColumnName("project_id").HasMaxLength(36);
            log.Property(l => l.HandoverId).HasColumnName("handover_id").HasMaxLength(36);
            log.Property(l => l.MakingId).HasColumnName("making_id").HasMaxLength(36);
            log.Property(l => l.Size).HasColumnName("size");
            log.Property(l => l.ReceivedAt).HasColumnName("received_at");
            log.Property(l => l.Entries).HasColumnName("entries");
            log.Property(l => l.Bytes).HasColumnName("bytes");
            log.Property(l => l.Document).HasColumnName("document");
            log.HasIndex(l => new { l.HandoverId, l.MakingId }).IsUnique().HasDatabaseName("maker_logs_by_handover");
            log.HasIndex(l => new { l.ProjectId, l.ReceivedAt }).HasDatabaseName("maker_logs_by_project");
            log.HasOne<ProjectRow>().WithMany().HasForeignKey(l => l.ProjectId).OnDelete(DeleteBehavior.Cascade);
            log.HasOne<HandoverRow>().WithMany().HasForeignKey(l => l.HandoverId).OnDelete(DeleteBehavior.SetNull);
        });
        modelBuilder.Entity<SessionRow>(session =>
        {
            session.ToTable("sessions");
            session.HasKey(s => s.Id);
            session.Property(s => s.Id).HasColumnName("id").HasMaxLength(36);
            session.Property(s => s.KeyHash).HasColumnName("key_hash").HasMaxLength(64);
            session.Property(s => s.TokenMark).HasColumnName("token_mark").HasMaxLength(64);
            session.Property(s => s.Device).HasColumnName("device").HasMaxLength(60);
            session.Property(s => s.SignedInAt).HasColumnName("signed_in_at");
            session.Property(s => s.SeenAt).HasColumnName("seen_at");
            session.HasIndex(s => s.KeyHash).IsUnique().HasDatabaseName("sessions_by_key");
        });
        // The text comes last in its table: SQLite reads the columns before it without the pages that hold it.
        foreach (var table in modelBuilder.Model.GetEntityTypes())
        {
            var place = 0;
            foreach (var property in table.GetProperties().OrderBy(p => p.ClrType == typeof(byte[])))
                property.SetColumnOrder(place++);
        }
    }
}
