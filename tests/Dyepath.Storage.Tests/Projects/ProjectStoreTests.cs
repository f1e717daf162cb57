using Dyepath.Contracts;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Projects;

/// <summary>One store for the tests of one database; every test has projects of its own in it.</summary>
public abstract class ProjectStoreTests(TestDatabases databases, DatabaseKind kind) : IAsyncLifetime
{
    private TestStore _store = null!;

    public async ValueTask InitializeAsync() => _store = await TestStore.OpenAsync(databases.NewDatabase(kind));

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _store.DisposeAsync();
    }

    [Fact]
    public async Task Texts_come_back_byte_for_byte()
    {
        var odd = new byte[] { 0xEF, 0xBB, 0xBF, (byte)'{', (byte)'\r', (byte)'\n', 0, (byte)'}', 0xF0, 0x9F, 0xA7, 0xB6, (byte)' ' };
        await _store.WithAsync<ProjectStore>(async store =>
        {
            var swatch = new SwatchPicture(["#102030"], 2, 1, [0, 0]);
            var done = Assert.IsType<ChangeOutcome.Done>(await store.CreateAsync("odd", new Draft(odd, "Odd", swatch), default));
            Assert.Equal(_store.Now, done.Project.UpdatedAt);
        });
        await _store.WithAsync<ProjectStore>(async store =>
        {
            var read = Assert.IsType<TextReading.Sound>(await store.ReadAsync("odd", default));
            Assert.Equal(odd, read.Document);
            Assert.Equal<byte>([0, 0], read.Swatch!.Cells);
            var listed = Assert.Single(await _store.ShelfAsync());
            Assert.Equal((read.Etag, "Odd", _store.Now), (listed.Etag, listed.Name, listed.UpdatedAt));
            Assert.Equal<byte>([0, 0], listed.Swatch!.Cells);
        });
    }

    [Fact]
    public async Task A_save_keeps_the_replaced_text_as_a_version()
    {
        await _store.CreateAsync("a", "one");
        var created = _store.Now;
        _store.Now += TimeSpan.FromMinutes(10);
        var done = Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("a", "one", "two"));
        Assert.Equal(
            (TestStore.Text("two").Etag, "name of two", _store.Now), (done.Project.Etag, done.Project.Name, done.Project.UpdatedAt));
        Assert.Equal("two", await _store.ReadAsync("a"));
        var version = Assert.Single((await _store.WithAsync((Storage.Versions.VersionStore v) => v.ListAsync("a", int.MaxValue, default)))!.Value.Items);
        Assert.Equal(new VersionSummary(1, created, 3), version);
    }

    [Fact]
    public async Task Saving_the_same_text_again_changes_nothing()
    {
        await _store.CreateAsync("a", "one");
        await _store.SaveAsync("a", "one", "two");
        var saved = _store.Now;
        _store.Now += TimeSpan.FromHours(1);
        var again = Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("a", "one", "two"));
        Assert.Equal(saved, again.Project.UpdatedAt);
        Assert.Equal(["one"], await _store.VersionsAsync("a"));
    }

    [Fact]
    public async Task A_save_over_a_text_that_was_not_seen_changes_nothing()
    {
        await _store.CreateAsync("a", "one");
        await _store.SaveAsync("a", "one", "two");
        var stale = Assert.IsType<ChangeOutcome.Stale>(await _store.SaveAsync("a", "one", "three"));
        Assert.Equal(TestStore.Text("two").Etag, stale.Stored.Etag);
        Assert.Equal("two", await _store.ReadAsync("a"));
        Assert.Equal(["one"], await _store.VersionsAsync("a"));
        Assert.IsType<ChangeOutcome.Missing>(await _store.SaveAsync("nowhere", "one", "two"));
    }

    [Fact]
    public async Task Of_writers_that_saw_the_same_text_exactly_one_wins()
    {
        await _store.CreateAsync("race", "0");
        for (var round = 0; round < 10; round++)
        {
            var seen = round == 0 ? "0" : (await _store.ReadAsync("race"))!;
            var writers = Enumerable.Range(0, 6).Select(w => Task.Run(() => _store.SaveAsync("race", seen, $"{round}/{w}")));
            var outcomes = await Task.WhenAll(writers);
            var winner = Assert.Single(outcomes.OfType<ChangeOutcome.Done>());
            Assert.Equal(5, outcomes.OfType<ChangeOutcome.Stale>().Count());
            Assert.Equal(winner.Project.Etag, TestStore.Text((await _store.ReadAsync("race"))!).Etag);
        }
    }

    [Fact]
    public async Task An_id_is_given_once()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(w => Task.Run(() => _store.CreateAsync("one", $"text {w}"))));
        var winner = Assert.Single(outcomes.OfType<ChangeOutcome.Done>());
        Assert.All(outcomes.OfType<ChangeOutcome.Stale>(), s => Assert.Equal(winner.Project.Etag, s.Stored.Etag));
        Assert.Equal(6, outcomes.Length);
    }

    [Fact]
    public async Task Only_the_archive_is_deleted_from_and_with_every_version()
    {
        await _store.CreateAsync("a", "one");
        await _store.SaveAsync("a", "one", "two");
        await _store.WithAsync<ProjectStore>(async store =>
        {
            Assert.Equal(DeleteOutcome.NotArchived, await store.DeleteAsync("a", default));
            Assert.True((await store.ArchiveAsync("a", true, default))!.Archived);
            Assert.Empty(await _store.ShelfAsync());
            Assert.Single(await _store.ShelfAsync(archived: true));
            Assert.Equal(DeleteOutcome.Deleted, await store.DeleteAsync("a", default));
            Assert.Equal(DeleteOutcome.Missing, await store.DeleteAsync("a", default));
            Assert.Null(await store.ArchiveAsync("a", false, default));
        });
        await _store.CreateAsync("a", "anew");
        Assert.Empty(await _store.VersionsAsync("a"));
    }

    [Fact]
    public async Task The_shelf_shows_the_newest_change_first()
    {
        foreach (var id in new[] { "x", "y", "z" })
        {
            await _store.CreateAsync(id, id);
            _store.Now += TimeSpan.FromMilliseconds(1);
        }
        await _store.SaveAsync("x", "x", "changed");
        Assert.Equal(["x", "z", "y"], (await _store.ShelfAsync()).Select(p => p.Id));
    }

    [Fact]
    public async Task Versions_of_a_busy_morning_are_thinned_but_not_what_a_restore_replaced()
    {
        await _store.CreateAsync("a", "0");
        for (var i = 1; i <= 20; i++)
        {
            // Every half minute; the text that the 7th save replaces is to be kept.
            _store.Now += TimeSpan.FromSeconds(30);
            Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("a", $"{i - 1}", $"{i}", keep: i == 7));
        }
        // Saved at 9:00:00 + i/2 min: the last of every two minutes, and the kept one.
        Assert.Equal(["19", "15", "11", "7", "6", "3"], await _store.VersionsAsync("a"));
    }

    [Fact]
    public async Task A_backup_is_of_one_moment()
    {
        await _store.CreateAsync("a", "one");
        using var stop = new CancellationTokenSource();
        var saving = Task.Run(async () =>
        {
            for (var i = 0; !stop.IsCancellationRequested; i++)
                await _store.SaveAsync("a", (await _store.ReadAsync("a"))!, $"{i}");
        });
        for (var i = 0; i < 5; i++)
        {
            var lines = (await _store.BackupAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Contains(",\"end\":{\"projects\":1,", lines[^1], StringComparison.Ordinal);
        }
        await stop.CancelAsync();
        await saving;
    }
}

public class SqliteProjectStoreTests(TestDatabases databases) : ProjectStoreTests(databases, DatabaseKind.Sqlite);

public class PostgresProjectStoreTests(TestDatabases databases) : ProjectStoreTests(databases, DatabaseKind.Postgres);
