using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Dyepath.Storage.Faults;

/// <summary>What the databases' many errors come to.</summary>
public static class StoreFaults
{
    // https://www.sqlite.org/rescode.html
    private const int SqliteBusy = 5;
    private const int SqliteLocked = 6;
    private const int SqliteReadOnly = 8;
    private const int SqliteIo = 10;
    private const int SqliteCorrupt = 11;
    private const int SqliteFull = 13;
    private const int SqliteCannotOpen = 14;
    private const int SqliteNotADatabase = 26;

    /// <summary>Null where it is no fault of the store's.</summary>
    public static StoreFault? Find(Exception? exception)
    {
        for (var e = exception; e is not null; e = e.InnerException)
        {
            switch (e)
            {
                case StoreException known:
                    return known.Fault;
                case PostgresException postgres:
                    return OfPostgres(postgres.SqlState);
                case NpgsqlException or SocketException:
                    return StoreFault.Away;
                // Between two commands the driver notices that its connection broke, and then says that the transaction is over.
                case InvalidOperationException { Source: nameof(Npgsql) }:
                    return StoreFault.Away;
                case SqliteException sqlite:
                    return OfSqlite(sqlite.SqliteErrorCode);
            }
        }
        return null;
    }

    /// <param name="state">See appendix A of PostgreSQL's manual.</param>
    private static StoreFault? OfPostgres(string state) => state switch
    {
        PostgresErrorCodes.DiskFull => StoreFault.DiskFull,
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => StoreFault.Damaged,
        // Another writer's transaction came in between.
        PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.LockNotAvailable =>
            StoreFault.Away,
        // A standby, a database that is being put in another's place, a password that is being changed.
        PostgresErrorCodes.ReadOnlySqlTransaction or PostgresErrorCodes.InvalidCatalogName => StoreFault.Away,
        ['2', '8', ..] => StoreFault.Away,
        // Connection, resources, an operator's hand, the system.
        ['0', '8', ..] or ['5', '3', ..] or ['5', '7', ..] or ['5', '8', ..] => StoreFault.Away,
        _ => null,
    };

    private static StoreFault? OfSqlite(int code) => code switch
    {
        SqliteFull => StoreFault.DiskFull,
        SqliteCorrupt or SqliteNotADatabase => StoreFault.Damaged,
        SqliteBusy or SqliteLocked or SqliteReadOnly or SqliteIo or SqliteCannotOpen => StoreFault.Away,
        _ => null,
    };
}
