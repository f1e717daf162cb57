using System.Data;
using System.Diagnostics;
using System.Net.Sockets;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Dyepath.Storage.Database;

/// <summary>A PostgreSQL server, behind any number of hosts.</summary>
public sealed class PostgresDb(DbContextOptions<PostgresDb> options) : AppDb(options)
{
    /// <summary>"dyepath" in ASCII: any number that nobody else in the same database locks by.</summary>
    private const long MigrationLock = 0x64_79_65_70_61_74_68;

    /// <summary>
    /// A server takes a hundred connections unless it is told otherwise, and may serve several hosts. Who finds none free waits in line:
    /// a save takes milliseconds.
    /// </summary>
    private const int MostConnections = 20;

    /// <summary>Seconds in that line, or until the server answers; then the answer is that it did not.</summary>
    private const int Patience = 5;

    private static readonly TimeSpan UntilItIsThere = TimeSpan.FromMilliseconds(500);

    private static readonly TimeSpan LongestMigration = TimeSpan.FromMinutes(30);

    protected override string Where => $"The database {Settings.Database} on {Server}";

    private NpgsqlConnectionStringBuilder Settings => new(Database.GetConnectionString());

    private string Server => $"{Settings.Host}:{Settings.Port}";

    /// <summary>For a PostgreSQL connection string.</summary>
    public static void Configure(DbContextOptionsBuilder options, string connection)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.UseNpgsql(Completed(connection));
    }

    /// <summary>What is said in the connection string holds; the rest is chosen for several hosts on one server.</summary>
    public static string Completed(string connection)
    {
        var settings = new NpgsqlConnectionStringBuilder(connection);
        settings.Database ??= settings.Username ?? Environment.UserName;
        Choose("Maximum Pool Size", MostConnections);
        Choose("Timeout", Patience);
        return settings.ToString();

        void Choose(string key, int value)
        {
            if (!settings.ShouldSerialize(key))
                settings[key] = value;
        }
    }

    /// <summary>
    /// Migrating waits for its turn by a lock of our own, which the server ends with the connection: the one that comes with
    /// migrations is given up between two of them, and another host would then begin with the second as well. A server that is
    /// starting itself is waited for a little.
    /// </summary>
    public override async Task PrepareAsync(CancellationToken cancel)
    {
        var begun = Stopwatch.GetTimestamp();
        while (true)
        {
            try
            {
                await MigrateAsync(cancel);
                return;
            }
            catch (Exception e) when (MayWorkInAMoment(e) && Stopwatch.GetElapsedTime(begun).TotalSeconds < Settings.Timeout)
            {
                await Task.Delay(UntilItIsThere, cancel);
            }
            catch (Exception e)
                when (e is NpgsqlException or SocketException or InvalidOperationException { InnerException: NpgsqlException })
            {
                throw new StoreNotReadyException(Words(e), e);
            }
        }
    }

    /// <summary>
    /// A connection that broke, a server that starts or has none free, another's lock; a wrong password or name stays wrong.
    /// </summary>
    protected override bool MayWorkInAMoment(Exception fault) => StoreFaults.Find(fault) == StoreFault.Away
        && Said(fault)?.SqlState is null or ['0', '8', ..] or ['4', '0', ..] or ['5', '3', ..] or ['5', '7', ..];

    private static PostgresException? Said(Exception? fault)
    {
        for (var e = fault; e is not null; e = e.InnerException)
        {
            if (e is PostgresException said)
                return said;
        }
        return null;
    }

    /// <summary>What is wrong with the server, and what to do; never the password.</summary>
    private string Words(Exception e) => Said(e)?.SqlState switch
    {
        null => $"PostgreSQL cannot be reached at {Server}, database {Settings.Database}. "
            + "See whether it runs, and whether --database or DYEPATH_DATABASE names the right server and port.",
        ['2', '8', ..] => $"PostgreSQL at {Server} refuses the user {Settings.Username} for the database {Settings.Database}. "
            + "See the user's name and password in --database or DYEPATH_DATABASE, and who may connect in the server's pg_hba.conf.",
        PostgresErrorCodes.InvalidCatalogName => $"PostgreSQL at {Server} has no database {Settings.Database}, and this user may not make it: "
            + $"createdb --owner={Settings.Username} {Settings.Database}",
        PostgresErrorCodes.InsufficientPrivilege => $"PostgreSQL at {Server} does not let the user {Settings.Username} make tables in the database "
            + $"{Settings.Database}: make that user the owner of a database of its own, "
            + $"createdb --owner={Settings.Username} {Settings.Database}",
        PostgresErrorCodes.TooManyConnections => $"PostgreSQL at {Server} has no connection free. "
            + "Give each host fewer with \"Maximum Pool Size=…\" in --database, or the server more (max_connections).",
        PostgresErrorCodes.DiskFull => $"The disk of PostgreSQL at {Server} is full: make room, then start again.",
        var state => $"The database {Settings.Database} on {Server} could not be prepared: {Said(e)!.MessageText} ({state}).",
    };

    private async Task MigrateAsync(CancellationToken cancel)
    {
        var database = Database.GetService<IRelationalDatabaseCreator>();
        if (!await database.ExistsAsync(cancel))
            await CreateAsync(database, cancel);
        await Database.OpenConnectionAsync(cancel);
        var usual = Database.GetCommandTimeout();
        try
        {
            Database.SetCommandTimeout(LongestMigration);
            await Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({MigrationLock})", cancel);
            if (await NewerFormAsync(cancel) is { } newer)
                throw new StoreNotReadyException(newer);
            await Database.MigrateAsync(cancel);
            await Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({MigrationLock})", cancel);
        }
        finally
        {
            Database.SetCommandTimeout(usual);
            await Database.CloseConnectionAsync();
        }
    }

    private static async Task CreateAsync(IRelationalDatabaseCreator database, CancellationToken cancel)
    {
        try
        {
            await database.CreateAsync(cancel);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.DuplicateDatabase or PostgresErrorCodes.UniqueViolation)
        {
            // Another host made it at the same moment.
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
