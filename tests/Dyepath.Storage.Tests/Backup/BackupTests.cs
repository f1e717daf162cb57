using System.Text;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Backup;

public class BackupTests(TestDatabases databases)
{
    private string _key = "";

    [Theory]
    [InlineData(DatabaseKind.Sqlite, DatabaseKind.Postgres)]
    [InlineData(DatabaseKind.Postgres, DatabaseKind.Sqlite)]
    public async Task Everything_goes_to_the_other_database_and_stays_the_same(DatabaseKind from, DatabaseKind to)
    {
        await using var first = await FilledAsync(from);
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(to));
        second.Now = first.Now;
        var backup = await first.BackupAsync();
        var tally = await second.RestoreAsync(backup);
        Assert.Equal((2, 2, 1, 3, 2), (tally.Projects, tally.Versions, tally.Handovers, tally.Logs, tally.Makings));
        Assert.Empty(tally.LeftAlone);
        Assert.Equal(backup, await second.BackupAsync());
        Assert.Equal(await first.VersionsAsync("a"), await second.VersionsAsync("a"));
        Assert.Equal("piece", Encoding.UTF8.GetString((await second.OpenAsync(_key))!.Document));
        Assert.Equal(ReceiveOutcome.Stored, await second.ReceiveAsync(_key, "jumper", "with another row"));
        Assert.Equal(3, (await second.WithAsync((MakerLogStore s) => s.ListAsync("a", default)))!.Count);
        Assert.IsType<ChangeOutcome.Done>(await second.SaveAsync("a", "\uFEFF{ \"três\": \"\\ud83e\\uddf6 🧶\" }\r\n", "next"));
    }

    [Fact]
    public async Task A_project_that_is_there_already_stays_as_it_is()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.CreateAsync("a", "of my own");
        await second.WithAsync((MakingStore s) => s.CreateAsync("m", null, TestStore.Making("my own"), default));
        var tally = await second.RestoreAsync(backup);
        Assert.Equal((1, 0, 0, 0, 1), (tally.Projects, tally.Versions, tally.Handovers, tally.Logs, tally.Makings));
        Assert.Collection(
            tally.LeftAlone, name => Assert.StartsWith("name of", name, StringComparison.Ordinal), title => Assert.Equal("title of { }", title));
        Assert.Equal("of my own", await second.ReadAsync("a"));
        Assert.Equal("archived", await second.ReadAsync("b"));
        var kept = (await second.WithAsync((MakingStore s) => s.ReadAsync("m", default)))!.Value;
        Assert.Equal("my own", Encoding.UTF8.GetString(kept.Document));
        Assert.Equal(4, (await second.RestoreAsync(backup)).LeftAlone.Count);
    }

    [Fact]
    public async Task A_backup_from_before_there_were_makings_is_restored()
    {
        const string backup = """
            {"start":{"form":1,"takenAt":"2026-03-01T09:10:00+00:00"}}
            {"project":{"id":"a","name":"name of two","archived":false,"createdAt":"2026-03-01T09:00:00+00:00","updatedAt":"2026-03-01T09:05:00+00:00","lastVersion":1,"document":"two"}}
            {"version":{"number":1,"savedAt":"2026-03-01T09:00:00+00:00","kept":false,"document":"one"}}
            {"end":{"projects":1,"versions":1}}

            """;
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var tally = await store.RestoreAsync(backup);
        Assert.Equal((1, 1, 0, 0, 0), (tally.Projects, tally.Versions, tally.Handovers, tally.Logs, tally.Makings));
        Assert.Equal("two", await store.ReadAsync("a"));
        Assert.Equal(["one"], await store.VersionsAsync("a"));
    }

    [Fact]
    public async Task Of_a_backup_that_a_later_program_wrote_nothing_is_restored()
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var later = """{"start":{"form":3,"takenAt":"2026-03-01T09:10:00+00:00"}}""" + "\n" + """{"end":{"projects":0,"versions":0}}""";
        await Assert.ThrowsAsync<BadBackupException>(() => store.RestoreAsync(later));
    }

    [Fact]
    public async Task Of_a_backup_that_was_cut_short_nothing_is_restored()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        for (var length = 0; length < backup.Length - 1; length += 7)
            await Assert.ThrowsAsync<BadBackupException>(() => second.RestoreAsync(backup[..length]));
        var lines = backup.Split('\n');
        for (var line = 0; line < lines.Length - 1; line++)
        {
            var without = string.Join('\n', [.. lines[..line], .. lines[(line + 1)..]]);
            await Assert.ThrowsAsync<BadBackupException>(() => second.RestoreAsync(without));
        }
        Assert.True(await second.WithAsync((ProjectStore store) => store.IsEmptyAsync(default)));
    }

    private async Task<TestStore> FilledAsync(DatabaseKind kind)
    {
        var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await store.CreateAsync("a", "{}");
        store.Now += TimeSpan.FromMinutes(5);
        await store.SaveAsync("a", "{}", "{ \"line\": 1,\n\"tab\":\t2 }");
        store.Now += TimeSpan.FromMinutes(5);
        await store.SaveAsync("a", "{ \"line\": 1,\n\"tab\":\t2 }", "\uFEFF{ \"três\": \"\\ud83e\\uddf6 🧶\" }\r\n", keep: true);
        await store.CreateAsync("b", "archived");
        await store.WithAsync((ProjectStore s) => s.ArchiveAsync("b", true, default));
        _key = (await store.HandOverAsync("a", "piece")).Key;
        await store.ReceiveAsync(_key, "jumper", "one row");
        await store.ReceiveAsync(_key, "jacket", "no row");
        var revoked = await store.HandOverAsync("a", "as it was before");
        await store.ReceiveAsync(revoked.Key, "jumper", "two rows");
        await store.WithAsync((HandoverStore s) => s.RevokeAsync("a", revoked.Id, default));
        await store.WithAsync((MakingStore s) => s.CreateAsync("m", "a", TestStore.Making("{ }"), default));
        await store.WithAsync((MakingStore s) => s.CreateAsync("n", null, TestStore.Making("{ \"três\": 🧶 }"), default));
        return store;
    }
}
