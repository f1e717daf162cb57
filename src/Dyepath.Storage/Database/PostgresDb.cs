using System.Data;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dyepath.Storage.Database;

/// <summary>A PostgreSQL server, behind any number of hosts.</summary>
public sealed class PostgresDb(DbContextOptions<PostgresDb> options) : AppDb(options)
{
    /// <summary>"dyepath" in ASCII: any number that nobody else in the same database locks by.</summary>
    private const long MigrationLock = 0x64_79_65_70_61_74_68;

    public static void Configure(DbContextOptionsBuilder options, string connection)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.UseNpgsql(connection);
    }

    /// <summary>
    /// Migrating waits for its turn by a lock of our own, which the server ends with the connection: the one that comes with
    /// migrations is given up between two of them, and another host would then begin with the second as well.
    /// </summary>
    public override async Task PrepareAsync(CancellationToken cancel)
    {
        var database = Database.GetService<IRelationalDatabaseCreator>();
        if (!await database.ExistsAsync(cancel))
            await database.CreateAsync(cancel);
        await Database.OpenConnectionAsync(cancel);
        try
        {
            await Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({MigrationLock})", cancel);
            await Database.MigrateAsync(cancel);
            await Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({MigrationLock})", cancel);
        }
        finally
        {
            await Database.CloseConnectionAsync();
        }
    }

    internal override Task<IDbContextTransaction> BeginSnapshotAsync(CancellationToken cancel) =>
        Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);

    internal override IQueryable<ProjectRow> Locked(string id) =>
        Projects.FromSql($"SELECT * FROM projects WHERE id = {id} FOR UPDATE");

    private sealed class AtDesignTime : IDesignTimeDbContextFactory<PostgresDb>
    {
        public PostgresDb CreateDbContext(string[] args)
        {
            var options = new DbContextOptionsBuilder<PostgresDb>();
            Configure(options, "Host=design");
            return new PostgresDb(options.Options);
        }
    }
}
