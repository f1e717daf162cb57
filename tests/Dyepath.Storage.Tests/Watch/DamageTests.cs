using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Tests.Watch;

/// <summary>What a failing disk, or a hand in the database, does to one row happens to that row alone.</summary>
public abstract class DamageTests(TestDatabases databases, DatabaseKind kind) : IAsyncLifetime
{
    private static readonly byte[] Other = Encoding.UTF8.GetBytes("{ \"title\": \"Tibeline\" }");
    private static readonly byte[] Unreadable = Encoding.UTF8.GetBytes(TestStore.Unreadable);

    private TestStore _store = null!;

    public async ValueTask InitializeAsync()
    {
        _store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await _store.CreateAsync("a", "one");
        _store.Now += TimeSpan.FromMinutes(10);
        await _store.SaveAsync("a", "one", "two");
        _store.Now += TimeSpan.FromMinutes(10);
        await _store.SaveAsync("a", "two", "three");
        await _store.CreateAsync("b", "sound");
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _store.DisposeAsync();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_damaged_text_is_told_with_its_last_good_version_which_mends_it(bool isReadable)
    {
        var bytes = isReadable ? Other : Unreadable;
        await _store.SpoilAsync($"UPDATE projects SET document = {bytes} WHERE id = 'a'");
        await _store.SpoilAsync($"UPDATE versions SET document = {Unreadable} WHERE project_id = 'a' AND number = 2");

        var damaged = Assert.IsType<TextReading.Damaged>(await ReadingAsync("a"));
        Assert.Equal(("name of three", TestStore.Text("three").Etag, 1), (damaged.Name, damaged.Etag, damaged.LastGood!.Number));
        Assert.Equal("sound", await _store.ReadAsync("b"));
        Assert.Equal(["b", "a"], (await _store.ShelfAsync()).Select(p => p.Id).Order(StringComparer.Ordinal).Reverse());
        Assert.Equal(new DamagedText("a", "name of three"), Assert.Single(await LookedAsync()));

        var good = (await _store.WithAsync((VersionStore s) => s.ReadAsync("a", 1, default)))!;
        var mended = await _store.WithAsync((ProjectStore s) => s.SaveAsync("a", damaged.Etag, new Draft(good, "One", null), true, default));
        Assert.IsType<ChangeOutcome.Done>(mended);
        Assert.Equal("one", await _store.ReadAsync("a"));
        Assert.Empty(await LookedAsync());
        // What can be read still is kept to be looked at; what cannot is of no use to anybody.
        var versions = (await _store.WithAsync((VersionStore s) => s.ListAsync("a", int.MaxValue, default)))!.Value.Items;
        Assert.Equal(isReadable ? [3, 2, 1] : [2, 1], versions.Select(v => v.Number));
    }

    /// <summary>An earlier program stored names as they were typed.</summary>
    [Theory]
    [InlineData("Sto\u001b[2Jrm\u202e", "Sto [2Jrm")]
    [InlineData("\u200b", ProjectSummary.Untitled)]
    public async Task What_is_damaged_is_told_by_a_name_as_lists_show_it(string stored, string shown)
    {
        await _store.SpoilAsync($"UPDATE projects SET document = {Unreadable}, name = {stored} WHERE id = 'a'");
        await _store.SpoilAsync($"DELETE FROM versions WHERE project_id = 'a'");
        Assert.Equal(shown, Assert.IsType<TextReading.Damaged>(await ReadingAsync("a")).Name);
        Assert.Equal(shown, Assert.Single(await LookedAsync()).Name);
        Assert.Equal(shown, Assert.Single((await _store.BackUpAsync()).Written.Damaged).Name);
    }

    [Fact]
    public async Task A_version_that_cannot_be_read_is_told_for_itself()
    {
        await _store.SpoilAsync($"UPDATE versions SET document = {Unreadable} WHERE project_id = 'a' AND number = 2");
        var fault = await Assert.ThrowsAsync<StoreException>(() => _store.WithAsync((VersionStore s) => s.ReadAsync("a", 2, default)));
        Assert.Equal(StoreFault.Damaged, fault.Fault);
        Assert.Equal("one", Encoding.UTF8.GetString((await _store.WithAsync((VersionStore s) => s.ReadAsync("a", 1, default)))!));
        Assert.Equal("three", await _store.ReadAsync("a"));
    }

    [Fact]
    public async Task Saving_the_same_text_again_mends_its_bytes()
    {
        await _store.SpoilAsync($"UPDATE projects SET document = {Unreadable} WHERE id = 'a'");
        Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("a", "three", "three"));
        Assert.Equal("three", await _store.ReadAsync("a"));

        await _store.WithAsync((MakingStore s) => s.CreateAsync("m", null, TestStore.Making("rows"), default));
        await _store.SpoilAsync($"UPDATE makings SET document = {Unreadable}");
        Assert.IsType<TextReading.Damaged>(await _store.WithAsync((MakingStore s) => s.ReadAsync("m", default)));
        var again = await _store.WithAsync((MakingStore s) => s.SaveAsync("m", TestStore.Making("rows").Etag, TestStore.Making("rows"), default));
        Assert.IsType<MakingOutcome.Saved>(again);
        Assert.IsType<TextReading.Sound>(await _store.WithAsync((MakingStore s) => s.ReadAsync("m", default)));
    }

    [Fact]
    public async Task Without_a_good_version_the_text_is_told_and_can_be_replaced()
    {
        await _store.SpoilAsync($"UPDATE projects SET document = {Unreadable} WHERE id = 'b'");
        var damaged = Assert.IsType<TextReading.Damaged>(await ReadingAsync("b"));
        Assert.Null(damaged.LastGood);
        Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("b", "sound", "anew"));
        Assert.Equal("anew", await _store.ReadAsync("b"));
        Assert.Empty(await _store.VersionsAsync("b"));
    }

    [Fact]
    public async Task A_backup_names_what_is_damaged_and_has_the_rest()
    {
        var key = (await _store.HandOverAsync("a", "piece")).Key;
        await _store.ReceiveAsync(key, "jumper", "row");
        await _store.ReceiveAsync((await _store.HandOverAsync("a", "other piece")).Key, "jacket", "no row");
        await _store.CreateAsync("c", "lost");
        await _store.WithAsync((MakingStore s) => s.CreateAsync("m", null, TestStore.Making("rows"), default));
        await _store.WithAsync((MakingStore s) => s.CreateAsync("n", null, TestStore.Making("rounds"), default));
        await _store.SpoilAsync($"UPDATE projects SET document = {Other} WHERE id IN ('a', 'c')");
        await _store.SpoilAsync($"UPDATE versions SET document = {Unreadable} WHERE number = 2");
        await _store.SpoilAsync($"UPDATE handovers SET document = {Unreadable} WHERE document = {Encoding.UTF8.GetBytes("piece")}");
        await _store.SpoilAsync($"UPDATE maker_logs SET document = {Unreadable} WHERE making_id = 'jacket'");
        await _store.SpoilAsync($"UPDATE makings SET document = {Other} WHERE id = 'n'");

        var (backup, written) = await _store.BackUpAsync();
        Assert.Equal(
            [
                (StoredPart.Handover, "name of three", null), (StoredPart.Log, "name of three", null), (StoredPart.Making, "title of rounds", null),
                (StoredPart.Project, "name of lost", null), (StoredPart.Project, "name of three", 1), (StoredPart.Version, "name of three", (int?)null),
            ],
            written.Damaged.Select(d => (d.Part, d.Name, d.Instead)).OrderBy(d => $"{d.Part} {d.Name}", StringComparer.Ordinal));
        Assert.Equal(new BackupCounts(2, 1, 1, 1, 1), written.Counts);
        await using var other = await TestStore.OpenAsync(databases.NewDatabase(kind));
        Assert.Equal(written.Counts, (await other.RestoreAsync(backup)).Counts);
        Assert.Equal(("one", "sound", null), (await other.ReadAsync("a"), await other.ReadAsync("b"), await other.ReadAsync("c")));
        Assert.Equal("jumper".Length - 3, Assert.Single(await other.LogsAsync("a")).Entries);
        Assert.Null(await other.WithAsync((AppDb db) => db.Logs.Select(l => l.HandoverId).SingleAsync()));
        Assert.Empty((await other.BackUpAsync()).Written.Damaged);
    }

    [Fact]
    public async Task A_picture_that_is_none_keeps_nobody_from_the_shelf()
    {
        foreach (var swatch in new[] { "{", "[]", "{}", """{"colours":["red"],"stitches":1,"rows":1,"cells":"AA=="}""" })
        {
            await _store.SpoilAsync($"UPDATE projects SET swatch = {swatch}, etag = 'no etag' WHERE id = 'a'");
            Assert.Null((await _store.ShelfAsync()).Single(p => p.Id == "a").Swatch);
            Assert.IsType<TextReading.Damaged>(await ReadingAsync("a"));
            Assert.Equal("sound", await _store.ReadAsync("b"));
        }
    }

    [Fact]
    public async Task A_look_goes_through_every_text_in_turn()
    {
        for (var i = 0; i < 25; i++)
            await _store.CreateAsync($"p{i:00}", "text");
        await _store.SpoilAsync($"UPDATE projects SET document = {Other} WHERE id = 'p24'");
        for (var looks = 0; looks < 2; looks++)
            Assert.Empty(await LookedAsync());
        Assert.Equal("p24", Assert.Single(await LookedAsync()).Id);
        await _store.WithAsync((ProjectStore s) => s.ArchiveAsync("p24", true, default));
        await _store.WithAsync((ProjectStore s) => s.DeleteAsync("p24", default));
        Assert.Empty(await LookedAsync());
    }

    private Task<TextReading> ReadingAsync(string id) => _store.WithAsync((ProjectStore s) => s.ReadAsync(id, default));

    private async Task<IReadOnlyList<DamagedText>> LookedAsync()
    {
        await _store.WithAsync<StoreInspector>(inspector => inspector.LookAsync(default));
        return await _store.WithAsync((StoreWatch watch) => Task.FromResult(watch.Damaged));
    }
}

public class SqliteDamageTests(TestDatabases databases) : DamageTests(databases, DatabaseKind.Sqlite);

public class PostgresDamageTests(TestDatabases databases) : DamageTests(databases, DatabaseKind.Postgres);
