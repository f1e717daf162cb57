using System.Security.Cryptography;
using System.Text;
using Dyepath.Storage.Database;
using Dyepath.Storage.Sessions;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Storage.Tests.Sessions;

public abstract class SessionStoreTests(TestDatabases databases, DatabaseKind kind) : IAsyncLifetime
{
    private const string Mark = "mark of the token";

    private TestStore _store = null!;

    public async ValueTask InitializeAsync() => _store = await TestStore.OpenAsync(databases.NewDatabase(kind));

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _store.DisposeAsync();
    }

    [Fact]
    public async Task The_store_holds_the_hash_of_a_key_of_256_random_bits_alone()
    {
        var (one, two) = (await BeginAsync("one"), await BeginAsync("two"));
        Assert.NotEqual(one, two);
        foreach (var key in new[] { one, two })
        {
            Assert.Matches("^[0-9A-Za-z_-]{43}$", key);
            Assert.NotNull(await OpenAsync(key));
            foreach (var wrong in new[] { "", key[..42], key + "A", key.ToUpperInvariant(), Hash(key) })
                Assert.Null(await OpenAsync(wrong));
        }
        await _store.WithAsync<AppDb>(async db =>
        {
            var rows = await db.Sessions.ToListAsync();
            Assert.Equal(new[] { Hash(one), Hash(two) }.Order(), rows.Select(r => r.KeyHash).Order());
            foreach (var property in rows.SelectMany(r => typeof(SessionRow).GetProperties().Select(p => p.GetValue(r)?.ToString())))
                Assert.DoesNotContain(property, new[] { one, two });
        });
        Assert.DoesNotContain(Hash(one), await _store.BackupAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task That_a_device_was_seen_is_written_once_an_hour_at_most()
    {
        var begun = _store.Now;
        var key = await BeginAsync("device");
        _store.Now = begun + SessionStore.SeenEvery - TimeSpan.FromMilliseconds(1);
        await OpenAsync(key);
        Assert.Equal(begun, Assert.Single(await ListAsync()).SeenAt);
        _store.Now = begun + SessionStore.SeenEvery;
        Assert.Equal(_store.Now, (await OpenAsync(key))!.SeenAt);
        Assert.Equal(new Session((await ListAsync())[0].Id, "device", begun, _store.Now), Assert.Single(await ListAsync()));
    }

    [Fact]
    public async Task A_session_holds_under_its_own_token_alone()
    {
        var key = await BeginAsync("device");
        Assert.Null(await OpenAsync(key, "another mark"));
        Assert.Empty(await ListAsync("another mark"));
        await _store.WithAsync((SessionStore s) => s.EndOfOtherTokensAsync(Mark, default));
        Assert.NotNull(await OpenAsync(key));
        await _store.WithAsync((SessionStore s) => s.EndOfOtherTokensAsync("another mark", default));
        Assert.Null(await OpenAsync(key));
    }

    [Fact]
    public async Task There_are_so_many_at_most_and_the_one_unseen_for_longest_makes_room()
    {
        var keys = new List<string>();
        for (var n = 0; n < SessionStore.Most; n++, _store.Now += TimeSpan.FromHours(2))
            keys.Add(await BeginAsync($"{n}"));
        await OpenAsync(keys[0]);
        keys.Add(await BeginAsync("last"));
        var names = (await ListAsync()).Select(s => s.Device).ToArray();
        Assert.Equal(SessionStore.Most, names.Length);
        Assert.Equal("last", names[0]);
        Assert.Contains("0", names);
        Assert.DoesNotContain("1", names);
        Assert.Null(await OpenAsync(keys[1]));
    }

    [Fact]
    public async Task Sessions_that_ran_out_leave_the_store_when_another_begins()
    {
        await BeginAsync("old");
        _store.Now += SessionStore.LongestIdle;
        Assert.Empty(await ListAsync());
        await BeginAsync("new");
        Assert.Equal(1, await _store.WithAsync((AppDb db) => db.Sessions.CountAsync()));
    }

    /// <summary>Ended while it is being opened elsewhere, it stays ended.</summary>
    [Fact]
    public async Task Ending_and_opening_at_once_never_bring_a_session_back()
    {
        for (var round = 0; round < 10; round++)
        {
            var key = await BeginAsync("device");
            _store.Now += SessionStore.SeenEvery;
            var id = (await ListAsync()).Single().Id;
            await Task.WhenAll(
                OpenAsync(key), OpenAsync(key), _store.WithAsync((SessionStore s) => s.EndAsync(id, default)), OpenAsync(key));
            Assert.Null(await OpenAsync(key));
            Assert.Empty(await ListAsync());
        }
    }

    /// <summary>Who only reads is not kept out because nothing can be written.</summary>
    [Fact]
    public async Task A_session_opens_though_a_full_disk_does_not_take_that_it_was_seen()
    {
        var begun = _store.Now;
        var key = await BeginAsync("device");
        _store.Now += SessionStore.SeenEvery;
        await _store.WithScopeAsync(async services =>
        {
            // Held open, so that what fills the disk of SQLite, which is of each connection, holds for what follows.
            var db = services.GetRequiredService<AppDb>();
            await db.Database.OpenConnectionAsync();
            await FillAsync(db);
            var sessions = services.GetRequiredService<SessionStore>();
            Assert.Equal(begun, (await sessions.OpenAsync(key, Mark, default))!.SeenAt);
            Assert.True(services.GetRequiredService<StoreWatch>().IsFull);
        });
        Assert.Equal(begun, Assert.Single(await ListAsync()).SeenAt);
    }

    /// <summary>From here on the disk is full for whoever changes a session.</summary>
    protected abstract Task FillAsync(AppDb db);

    private static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private async Task<string> BeginAsync(string device) =>
        (await _store.WithAsync((SessionStore s) => s.BeginAsync(Mark, device, default))).Key;

    private Task<Session?> OpenAsync(string key, string mark = Mark) => _store.WithAsync((SessionStore s) => s.OpenAsync(key, mark, default));

    private Task<IReadOnlyList<Session>> ListAsync(string mark = Mark) => _store.WithAsync((SessionStore s) => s.ListAsync(mark, default));
}

public class SqliteSessionStoreTests(TestDatabases databases) : SessionStoreTests(databases, DatabaseKind.Sqlite)
{
    protected override async Task FillAsync(AppDb db)
    {
        await db.Database.ExecuteSqlRawAsync("CREATE TABLE ballast (bytes BLOB)");
        await db.Database.ExecuteSqlRawAsync("CREATE TRIGGER fill AFTER UPDATE ON sessions BEGIN INSERT INTO ballast VALUES (zeroblob(1000000)); END");
        await db.Database.ExecuteSqlRawAsync("PRAGMA max_page_count = 60");
    }
}

public class PostgresSessionStoreTests(TestDatabases databases) : SessionStoreTests(databases, DatabaseKind.Postgres)
{
    protected override async Task FillAsync(AppDb db)
    {
        await db.Database.ExecuteSqlRawAsync(
            "CREATE FUNCTION fill() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'full' USING ERRCODE = 'disk_full'; END $$");
        await db.Database.ExecuteSqlRawAsync("CREATE TRIGGER fill BEFORE UPDATE ON sessions EXECUTE FUNCTION fill()");
    }
}
