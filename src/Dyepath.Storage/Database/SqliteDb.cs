using System.Collections.Concurrent;
using System.Data.Common;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Dyepath.Storage.Database;

/// <summary>One file on this computer.</summary>
public sealed class SqliteDb(DbContextOptions<SqliteDb> options) : AppDb(options)
{
    private static readonly DurableConnections Durable = new();

    private static readonly ConcurrentDictionary<string, SemaphoreSlim> Turns = new();

    protected override string Where => $"The store {DataFile}";

    private string DataFile => new SqliteConnectionStringBuilder(Database.GetConnectionString()).DataSource;

    /// <summary>For the store in a file.</summary>
    public static void Configure(DbContextOptionsBuilder options, string file)
    {
        ArgumentNullException.ThrowIfNull(options);
        options
            .UseSqlite(new SqliteConnectionStringBuilder { DataSource = file }.ToString())
            .AddInterceptors(Durable);
    }

    public override async Task PrepareAsync(CancellationToken cancel)
    {
        var file = DataFile;
        await using var turn = await OneProcess.WaitAsync($"{file}.lock", cancel);
        // SQLite gives its log and its shared memory the rights that the file itself has.
        OwnersFile.Make(file);
        foreach (var beside in new[] { "-wal", "-shm", ".lock" })
            OwnersFile.Close(file + beside);
        try
        {
            if (await NewerFormAsync(cancel) is { } newer)
                throw new StoreNotReadyException(newer);
            if (!(await Database.GetPendingMigrationsAsync(cancel)).Any())
                return;
            // A process that was killed while it migrated leaves this lock behind, and every later one would wait for it for ever.
            await Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancel);
            await Database.MigrateAsync(cancel);
        }
        catch (SqliteException e)
        {
            throw new StoreNotReadyException(
                StoreFaults.Find(e) switch
                {
                    StoreFault.DiskFull => $"The disk with {file} is full: make room, then start again.",
                    StoreFault.Damaged => $"{file} is no SQLite database, or damaged. Move it away and restore a backup into a new one.",
                    _ => $"{file} cannot be used: {e.Message}. See who may read and write it, and what else has it open.",
                },
                e);
        }
    }

    internal override async Task<IDbContextTransaction> BeginSnapshotAsync(CancellationToken cancel)
    {
        await Database.OpenConnectionAsync(cancel);
        var connection = (SqliteConnection)Database.GetDbConnection();
        var transaction = connection.BeginTransaction(deferred: true);
        return (await Database.UseTransactionAsync(transaction, cancel))!;
    }

    /// <summary>SQLite lets one write at a time; the others would sleep on their threads, in no order, so they queue here.</summary>
    internal override async ValueTask<IDisposable?> TakeTurnAsync(CancellationToken cancel)
    {
        var turns = Turns.GetOrAdd(Database.GetConnectionString()!, _ => new SemaphoreSlim(1));
        await turns.WaitAsync(cancel);
        return new Turn(turns);
    }

    /// <summary>Every transaction here begins as the only writer (BEGIN IMMEDIATE), so that reading is enough.</summary>
    internal override IQueryable<ProjectRow> Locked(string id) => Projects.Where(p => p.Id == id);

    /// <summary>SQLite has no moments: whole milliseconds, which sort as they should.</summary>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<MomentConverter>();
    }

    private sealed class MomentConverter() : ValueConverter<DateTimeOffset, long>(
        moment => moment.ToUnixTimeMilliseconds(), stored => StoredMoment.FromMilliseconds(stored));

    /// <summary>
    /// What is committed survives a kill and a power cut: a write-ahead log, flushed at every commit. For another
    /// process to finish writing SQLite itself waits, which looks again sooner than the driver would.
    /// </summary>
    private sealed class DurableConnections : DbConnectionInterceptor
    {
        private const string Pragmas = "PRAGMA busy_timeout=20000; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }

        public override Task ConnectionOpenedAsync(
            DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            ConnectionOpened(connection, eventData);
            return Task.CompletedTask;
        }
    }

    private sealed class Turn(SemaphoreSlim turns) : IDisposable
    {
        public void Dispose() => turns.Release();
    }

    private sealed class AtDesignTime : IDesignTimeDbContextFactory<SqliteDb>
    {
        public SqliteDb CreateDbContext(string[] args)
        {
            var options = new DbContextOptionsBuilder<SqliteDb>();
            Configure(options, "design.db");
            return new SqliteDb(options.Options);
        }
    }
}
