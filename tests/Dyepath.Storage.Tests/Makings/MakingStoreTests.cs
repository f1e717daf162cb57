using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Makings;

public abstract class MakingStoreTests(TestDatabases databases, DatabaseKind kind) : IAsyncLifetime
{
    private TestStore _store = null!;

    public async ValueTask InitializeAsync() => _store = await TestStore.OpenAsync(databases.NewDatabase(kind));

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _store.DisposeAsync();
    }

    [Fact]
    public async Task A_making_comes_back_byte_for_byte_and_is_replaced_by_who_saw_it()
    {
        var created = Assert.IsType<MakingOutcome.Created>(await CreateAsync("a", "one", "p")).Making;
        Assert.Equal(new MakingSummary("a", "title of one", "M", "p", 3, _store.Now, Etag("one")) { Made = created.Made }, created);
        Assert.Equal(32, created.Made!.Length);
        _store.Now += TimeSpan.FromMinutes(1);
        var saved = Assert.IsType<MakingOutcome.Saved>(await SaveAsync("a", "one", "three")).Making;
        Assert.Equal(new MakingSummary("a", "title of three", "M", "p", 5, _store.Now, Etag("three")) { Made = created.Made }, saved);
        Assert.Equal(saved, Assert.Single(await ListAsync()));
        Assert.Equal("three", await ReadAsync("a"));
    }

    [Fact]
    public async Task What_was_sent_may_be_sent_again()
    {
        await CreateAsync("a", "one");
        var begun = Assert.Single(await ListAsync());
        _store.Now += TimeSpan.FromMinutes(1);
        Assert.Equal(begun, Assert.IsType<MakingOutcome.Saved>(await CreateAsync("a", "one")).Making);
        await SaveAsync("a", "one", "two");
        var saved = Assert.Single(await ListAsync());
        _store.Now += TimeSpan.FromMinutes(1);
        Assert.Equal(saved, Assert.IsType<MakingOutcome.Saved>(await SaveAsync("a", "one", "two")).Making);
    }

    [Fact]
    public async Task Nothing_is_overwritten_that_was_not_seen()
    {
        await CreateAsync("a", "one");
        await SaveAsync("a", "one", "two");
        Assert.Equal(Etag("two"), Assert.IsType<MakingOutcome.Stale>(await SaveAsync("a", "one", "three")).Stored.Etag);
        Assert.Equal(Etag("two"), Assert.IsType<MakingOutcome.Stale>(await CreateAsync("a", "one")).Stored.Etag);
        Assert.IsType<MakingOutcome.Missing>(await SaveAsync("nowhere", "one", "two"));
        Assert.Equal("two", await ReadAsync("a"));
    }

    [Fact]
    public async Task Of_devices_that_saw_the_same_text_exactly_one_wins()
    {
        await CreateAsync("race", "0");
        var seen = "0";
        for (var round = 0; round < 10; round++)
        {
            var from = seen;
            var outcomes = await Task.WhenAll(
                Enumerable.Range(0, 6).Select(device => Task.Run(() => SaveAsync("race", from, $"{round}/{device}"))));
            var winner = Assert.Single(outcomes.OfType<MakingOutcome.Saved>());
            Assert.Equal(5, outcomes.OfType<MakingOutcome.Stale>().Count());
            seen = (await ReadAsync("race"))!;
            Assert.Equal(winner.Making.Etag, Etag(seen));
        }
    }

    [Fact]
    public async Task An_id_is_given_once()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(device => Task.Run(() => CreateAsync("one", $"text {device}"))));
        var winner = Assert.Single(outcomes.OfType<MakingOutcome.Created>());
        Assert.All(outcomes.OfType<MakingOutcome.Stale>(), s => Assert.Equal(winner.Making.Etag, s.Stored.Etag));
        Assert.Equal(6, outcomes.Length);
    }

    [Fact]
    public async Task There_is_room_for_so_many_and_again_when_one_is_deleted()
    {
        for (var i = 0; i < MakingStore.Most; i++)
            Assert.IsType<MakingOutcome.Created>(await CreateAsync($"{i}", $"{i}"));
        Assert.IsType<MakingOutcome.Full>(await CreateAsync("more", "more"));
        Assert.IsType<MakingOutcome.Saved>(await CreateAsync("7", "7"));
        Assert.IsType<MakingOutcome.Saved>(await SaveAsync("7", "7", "goes on"));
        Assert.True(await _store.WithAsync((MakingStore store) => store.DeleteAsync("7", default)));
        Assert.False(await _store.WithAsync((MakingStore store) => store.DeleteAsync("7", default)));
        Assert.IsType<MakingOutcome.Created>(await CreateAsync("more", "more"));
    }

    [Fact]
    public async Task A_piece_outlives_the_project_it_was_begun_from()
    {
        await _store.CreateAsync("p", "project");
        await CreateAsync("a", "one", "p");
        await _store.WithAsync((ProjectStore store) => store.ArchiveAsync("p", true, default));
        Assert.Equal(DeleteOutcome.Deleted, await _store.WithAsync((ProjectStore store) => store.DeleteAsync("p", default)));
        Assert.Equal("p", Assert.Single(await ListAsync()).ProjectId);
    }

    private static string Etag(string text) => Etags.Of(Encoding.UTF8.GetBytes(text));

    private Task<MakingOutcome> CreateAsync(string id, string text, string? project = null) =>
        _store.WithAsync((MakingStore store) => store.CreateAsync(id, project, TestStore.Making(text), default));

    private Task<MakingOutcome> SaveAsync(string id, string seen, string text) =>
        _store.WithAsync((MakingStore store) => store.SaveAsync(id, Etag(seen), TestStore.Making(text), default));

    private async Task<IReadOnlyList<MakingSummary>> ListAsync() =>
        (await _store.WithAsync((MakingStore store) => store.ListAsync(Place.Start, default))).Items;

    private async Task<string?> ReadAsync(string id) =>
        await _store.WithAsync((MakingStore store) => store.ReadAsync(id, default)) is TextReading.Sound { Document: var document }
            ? Encoding.UTF8.GetString(document)
            : null;
}

public class SqliteMakingStoreTests(TestDatabases databases) : MakingStoreTests(databases, DatabaseKind.Sqlite);

public class PostgresMakingStoreTests(TestDatabases databases) : MakingStoreTests(databases, DatabaseKind.Postgres);
