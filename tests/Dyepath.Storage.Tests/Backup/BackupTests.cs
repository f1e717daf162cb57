using Dyepath.Storage.Backup;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Backup;

public class BackupTests(TestDatabases databases)
{
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
        Assert.Equal((2, 2), (tally.Projects, tally.Versions));
        Assert.Empty(tally.LeftAlone);
        Assert.Equal(backup, await second.BackupAsync());
        Assert.Equal(await first.VersionsAsync("a"), await second.VersionsAsync("a"));
        Assert.IsType<ChangeOutcome.Done>(await second.SaveAsync("a", "\uFEFF{ \"três\": \"\\ud83e\\uddf6 🧶\" }\r\n", "next"));
    }

    [Fact]
    public async Task A_project_that_is_there_already_stays_as_it_is()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.CreateAsync("a", "of my own");
        var tally = await second.RestoreAsync(backup);
        Assert.Equal((1, 0), (tally.Projects, tally.Versions));
        Assert.StartsWith("name of", Assert.Single(tally.LeftAlone), StringComparison.Ordinal);
        Assert.Equal("of my own", await second.ReadAsync("a"));
        Assert.Equal("archived", await second.ReadAsync("b"));
        Assert.Equal(2, (await second.RestoreAsync(backup)).LeftAlone.Count);
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
        return store;
    }
}
