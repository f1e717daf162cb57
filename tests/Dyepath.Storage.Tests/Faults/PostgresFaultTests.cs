using System.Net.Sockets;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Sessions;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Dyepath.Storage.Tests.Faults;

public class PostgresFaultTests(TestDatabases databases)
{
    [Fact]
    public async Task Connections_that_the_server_closed_are_noticed_by_nobody()
    {
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        await using var store = await TestStore.OpenAsync(choice);
        await store.CreateAsync("a", "0");
        for (var round = 0; round < 10; round++)
        {
            await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => store.ReadAsync("a")));
            await CloseOthersAsync(choice);
            Assert.IsType<ChangeOutcome.Done>(await store.SaveAsync("a", $"{round}", $"{round + 1}"));
        }
        Assert.Equal("10", await store.ReadAsync("a"));
    }

    [Fact]
    public async Task Nor_by_who_is_signed_in()
    {
        const string mark = "mark of the token";
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        await using var store = await TestStore.OpenAsync(choice);
        var (session, key) = await AfterClosingAsync(s => s.BeginAsync(mark, "device", default));
        Assert.Equal(session, await AfterClosingAsync(s => s.OpenAsync(key, mark, default)));
        store.Now += SessionStore.SeenEvery;
        Assert.Equal(store.Now, (await AfterClosingAsync(s => s.OpenAsync(key, mark, default)))!.SeenAt);
        Assert.Single(await AfterClosingAsync(s => s.ListAsync(mark, default)));
        Assert.True(await AfterClosingAsync(s => s.EndAsync(session.Id, default)));
        foreach (var endsAll in new Func<SessionStore, Task>[] { s => s.EndAllAsync(default), s => s.EndOfOtherTokensAsync("another mark", default) })
        {
            await store.WithAsync((SessionStore s) => s.BeginAsync(mark, "device", default));
            await CloseOthersAsync(choice);
            await store.WithAsync(endsAll);
            Assert.Empty(await store.WithAsync((SessionStore s) => s.ListAsync(mark, default)));
        }

        async Task<T> AfterClosingAsync<T>(Func<SessionStore, Task<T>> work)
        {
            await CloseOthersAsync(choice);
            return await store.WithAsync(work);
        }
    }

    [Fact]
    public async Task Many_who_save_at_once_wait_for_few_connections()
    {
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        choice = choice with { Connection = $"{choice.Connection};Maximum Pool Size=2;Timeout=60" };
        await using var store = await TestStore.OpenAsync(choice);
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 60).Select(i => Task.Run(() => store.CreateAsync($"p{i}", "text"))));
        Assert.All(outcomes, outcome => Assert.IsType<ChangeOutcome.Done>(outcome));
    }

    [Fact]
    public void What_is_said_in_the_connection_string_holds()
    {
        var usual = new NpgsqlConnectionStringBuilder(Storage.Database.PostgresDb.Completed("Host=db;Username=u"));
        Assert.Equal((20, 5, "u"), (usual.MaxPoolSize, usual.Timeout, usual.Database));
        var said = new NpgsqlConnectionStringBuilder(Storage.Database.PostgresDb.Completed("Host=db;MaxPoolSize=7;Timeout=9;Database=d"));
        Assert.Equal((7, 9, "d"), (said.MaxPoolSize, said.Timeout, said.Database));
    }

    [Theory]
    [InlineData("127.0.0.1", 9, "cannot be reached at 127.0.0.1:9, database patterns")]
    [InlineData("/nowhere", 5432, "cannot be reached at /nowhere:5432")]
    [InlineData("no-such-server.invalid", 5432, "cannot be reached at no-such-server.invalid:5432")]
    public async Task A_server_that_is_not_there_is_named_without_the_password(string host, int port, string said)
    {
        var connection = $"Host={host};Port={port};Database=patterns;Username=u;Password=sesame;Timeout=1";
        var refusal = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(new DatabaseChoice(".", connection)));
        Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("sesame", refusal.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_refuses_is_told_from_one_that_is_away()
    {
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        var settings = new NpgsqlConnectionStringBuilder(choice.Connection) { Username = "nobody_of_this_name", Password = "sesame" };
        var refusal = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(choice with { Connection = settings.ToString() }));
        Assert.Contains("refuses the user nobody_of_this_name", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("sesame", refusal.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_user_who_may_make_no_database_and_no_tables_is_told_how_they_are_made()
    {
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        var name = $"guest_{Environment.ProcessId}";
        await TestDatabases.TellAsync(choice, $"CREATE ROLE {name} LOGIN");
        try
        {
            var settings = new NpgsqlConnectionStringBuilder(choice.Connection) { Username = name };
            var tables = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(choice with { Connection = settings.ToString() }));
            Assert.Contains($"createdb --owner={name}", tables.Message, StringComparison.Ordinal);
            settings.Database = "there_is_none_of_this_name";
            var database = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(choice with { Connection = settings.ToString() }));
            Assert.Contains($"createdb --owner={name} there_is_none_of_this_name", database.Message, StringComparison.Ordinal);
        }
        finally
        {
            await TestDatabases.TellAsync(choice, $"DROP OWNED BY {name}; DROP ROLE {name}");
        }
    }

    [Theory]
    [InlineData("53100", StoreFault.DiskFull)]
    [InlineData("53300", StoreFault.Away)]
    [InlineData("57P01", StoreFault.Away)]
    [InlineData("57P02", StoreFault.Away)]
    [InlineData("57P03", StoreFault.Away)]
    [InlineData("08006", StoreFault.Away)]
    [InlineData("40P01", StoreFault.Away)]
    [InlineData("25006", StoreFault.Away)]
    [InlineData("28P01", StoreFault.Away)]
    [InlineData("3D000", StoreFault.Away)]
    [InlineData("58030", StoreFault.Away)]
    [InlineData("XX001", StoreFault.Damaged)]
    [InlineData("23505", null)]
    [InlineData("22021", null)]
    public void What_the_server_says_is_sorted(string state, StoreFault? fault)
    {
        var said = new PostgresException("…", "ERROR", "ERROR", state);
        Assert.Equal(fault, StoreFaults.Find(said));
        Assert.Equal(fault, StoreFaults.Find(new InvalidOperationException("…", new DbUpdateException("…", said))));
        Assert.Equal(StoreFault.Away, StoreFaults.Find(new NpgsqlException("…", new SocketException())));
        Assert.Null(StoreFaults.Find(new InvalidOperationException()));
    }

    private static Task CloseOthersAsync(DatabaseChoice choice) => TestDatabases.TellAsync(
        choice, "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()");
}
