using System.Data;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dyepath.Storage.Database;

/// <summary>A PostgreSQL server, behind any number of hosts.</summary>
public sealed class PostgresDb(DbContextOptions<PostgresDb> options) : AppDb(options)
{
    public static void Configure(DbContextOptionsBuilder options, string connection)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.UseNpgsql(connection);
    }

    /// <summary>Migrating waits for its turn by a lock that the server ends with the connection.</summary>
    public override Task PrepareAsync(CancellationToken cancel) => Database.MigrateAsync(cancel);

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
