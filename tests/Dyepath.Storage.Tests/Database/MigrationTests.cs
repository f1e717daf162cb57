using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Tests.Database;

public class MigrationTests(TestDatabases databases)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task An_empty_database_becomes_what_the_model_says(DatabaseKind kind)
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await store.WithAsync<AppDb>(async db =>
        {
            Assert.False(db.Database.HasPendingModelChanges());
            Assert.Empty(await db.Database.GetPendingMigrationsAsync());
        });
        await store.CreateAsync("a", "text");
        Assert.Equal("text", await store.ReadAsync("a"));
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task What_an_earlier_program_stored_is_there_after_migrating(DatabaseKind kind)
    {
        var choice = databases.NewDatabase(kind);
        await using (var earlier = await TestStore.OpenAsync(choice, migration: "FirstTables"))
        {
            await earlier.WithAsync<AppDb>(async db =>
            {
                var (one, two) = (TestStore.Text("one"), TestStore.Text("two"));
                // In the columns that there were.
                object now = kind == DatabaseKind.Sqlite ? earlier.Now.ToUnixTimeMilliseconds() : earlier.Now;
                await db.Database.ExecuteSqlAsync(
                    $"INSERT INTO projects (id, name, archived, created_at, updated_at, etag, last_version, document) VALUES ('a', {two.Name}, {false}, {now}, {now}, {two.Etag}, 1, {two.Document})");
                await db.Database.ExecuteSqlAsync(
                    $"INSERT INTO versions (project_id, number, saved_at, kept, bytes, document) VALUES ('a', 1, {now}, {false}, 3, {one.Document})");
            });
        }
        await using var store = await TestStore.OpenAsync(choice);
        Assert.Equal("two", await store.ReadAsync("a"));
        Assert.Equal(["one"], await store.VersionsAsync("a"));
        var handover = await store.HandOverAsync("a", "piece");
        Assert.NotNull(await store.OpenAsync(handover.Key));
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_database_of_a_newer_program_is_refused_in_words_and_left_as_it_is(DatabaseKind kind)
    {
        var choice = databases.NewDatabase(kind);
        await using (var store = await TestStore.OpenAsync(choice))
        {
            await store.CreateAsync("a", "text");
            Assert.Null(await store.WithAsync((StoreInspector inspector) => inspector.FindNewerAsync(default)));
            await store.SpoilAsync($"""INSERT INTO "__EFMigrationsHistory" VALUES ('29990101000000_Later', '99.0.0')""");
            // A host that runs on beside the newer one knows it too.
            Assert.NotNull(await store.WithAsync((StoreInspector inspector) => inspector.FindNewerAsync(default)));
        }
        var refusal = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(choice));
        var place = kind == DatabaseKind.Sqlite ? choice.File : new Npgsql.NpgsqlConnectionStringBuilder(choice.Connection).Database!;
        foreach (var said in new[] { place, "29990101000000_Later", "knows up to", "newer program" })
            Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task Hosts_that_start_together_make_the_tables_once(DatabaseKind kind)
    {
        var choice = databases.NewDatabase(kind);
        var stores = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => TestStore.OpenAsync(choice))));
        await stores[0].CreateAsync("a", "text");
        foreach (var store in stores)
        {
            Assert.Equal("text", await store.ReadAsync("a"));
            await store.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_database_that_the_server_does_not_have_is_made()
    {
        var choice = databases.NewDatabase(DatabaseKind.Postgres);
        databases.Drop(choice);
        await using var store = await TestStore.OpenAsync(choice);
        await store.CreateAsync("a", "text");
        Assert.Equal("text", await store.ReadAsync("a"));
    }

    [Fact]
    public async Task A_lock_left_by_a_killed_process_stops_nobody()
    {
        var choice = databases.NewDatabase(DatabaseKind.Sqlite);
        var options = new DbContextOptionsBuilder<SqliteDb>();
        SqliteDb.Configure(options, choice.File);
        await using (var db = new SqliteDb(options.Options))
        {
            await db.Database.ExecuteSqlRawAsync(
                """
                CREATE TABLE "__EFMigrationsLock" ("Id" INTEGER NOT NULL PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT INTO "__EFMigrationsLock" VALUES (1, '2026-01-01');
                """);
        }
        await using var store = await TestStore.OpenAsync(choice).WaitAsync(TimeSpan.FromMinutes(5));
        await store.CreateAsync("a", "text");
    }

    [Fact]
    public async Task A_commit_is_flushed_to_a_write_ahead_log()
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await store.WithAsync<AppDb>(async db =>
        {
            const int full = 2;
            var journal = db.Database.SqlQueryRaw<string>("SELECT journal_mode AS Value FROM pragma_journal_mode");
            var synchronous = db.Database.SqlQueryRaw<int>("SELECT synchronous AS Value FROM pragma_synchronous");
            Assert.Equal(("wal", full), (await journal.SingleAsync(), await synchronous.SingleAsync()));
        });
    }
}
