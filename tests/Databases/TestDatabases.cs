using System.Diagnostics;
using Dyepath.Storage;
using Npgsql;
using Xunit;

namespace Dyepath.Tests;

public enum DatabaseKind
{
    Sqlite,
    Postgres,
}

/// <summary>
/// Empty databases of both kinds. The PostgreSQL server is the one named in DYEPATH_TEST_POSTGRES, or one of its own that
/// tests/with-postgres starts at the first need and stops when this process ends. Where neither can be had, tests fail.
/// </summary>
public sealed class TestDatabases : IDisposable
{
    private const string Variable = "DYEPATH_TEST_POSTGRES";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("dyepath-test-");
    private readonly Lazy<string> _server;
    private Process? _process;
    private int _made;

    public TestDatabases() => _server = new Lazy<string>(() => Environment.GetEnvironmentVariable(Variable) ?? Start());

    public static TheoryData<DatabaseKind> Both { get; } = [DatabaseKind.Sqlite, DatabaseKind.Postgres];

    public DatabaseChoice NewDatabase(DatabaseKind kind)
    {
        var name = $"dyepath_{Environment.ProcessId}_{Interlocked.Increment(ref _made)}";
        var choice = new DatabaseChoice(_folder.CreateSubdirectory(name).FullName);
        if (kind == DatabaseKind.Sqlite)
            return choice;
        Tell($"CREATE DATABASE {name}");
        return choice with { Connection = new NpgsqlConnectionStringBuilder(_server.Value) { Database = name }.ToString() };
    }

    /// <summary>Takes a PostgreSQL database away, whoever uses it.</summary>
    public void Drop(DatabaseChoice choice) =>
        Tell($"DROP DATABASE {new NpgsqlConnectionStringBuilder(choice.Connection).Database} WITH (FORCE)");

    /// <summary>Tells a PostgreSQL database something on a connection of its own, which is closed afterwards.</summary>
    public static async Task TellAsync(DatabaseChoice choice, string sql)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(choice.Connection) { Pooling = false }.ToString());
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    public void Dispose()
    {
        NpgsqlConnection.ClearAllPools();
        if (_process is not null)
            PostgresServer.Stop(_process);
        _folder.Delete(recursive: true);
    }

    private void Tell(string sql)
    {
        using var connection = new NpgsqlConnection(_server.Value);
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 120 };
        command.ExecuteNonQuery();
    }

    private string Start()
    {
        (_process, var connection) = PostgresServer.Start();
        return connection;
    }
}
