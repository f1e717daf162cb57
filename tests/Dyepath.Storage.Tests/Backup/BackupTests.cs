using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;

namespace Dyepath.Storage.Tests.Backup;

public class BackupTests(TestDatabases databases)
{
    private string _key = "";

    [Theory]
    [InlineData(DatabaseKind.Sqlite, DatabaseKind.Postgres)]
    [InlineData(DatabaseKind.Postgres, DatabaseKind.Sqlite)]
    public async Task Everything_goes_to_the_other_database_and_back_and_stays_the_same(DatabaseKind from, DatabaseKind to)
    {
        await using var first = await FilledAsync(from);
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(to));
        await using var third = await TestStore.OpenAsync(databases.NewDatabase(from));
        second.Now = third.Now = first.Now;
        var backup = await first.BackupAsync();
        var restored = await second.RestoreAsync(backup);
        Assert.Equal(new BackupCounts(2, 3, 1, 3, 2), restored.Counts);
        Assert.Empty(restored.LeftAlone);
        Assert.True(restored.HasHashes);
        Assert.Equal(backup, await second.BackupAsync());
        await third.RestoreAsync(await second.BackupAsync());
        Assert.Equal(backup, await third.BackupAsync());
        foreach (var store in new[] { second, third })
        {
            Assert.Equal(await first.VersionsAsync("a"), await store.VersionsAsync("a"));
            Assert.Equal([null, null, 7], (await store.WithAsync((VersionStore s) => s.ListAsync("a", int.MaxValue, default)))!.Value.Items.Select(v => v.Edition).Order());
            Assert.Equal(await first.ShelfAsync(), await store.ShelfAsync(), Same);
            Assert.Equal(await first.ShelfAsync(archived: true), await store.ShelfAsync(archived: true), Same);
            Assert.Equal("piece", Encoding.UTF8.GetString((await store.OpenAsync(_key))!.Document));
            Assert.Equal(ReceiveOutcome.Stored, await store.ReceiveAsync(_key, "jumper", "with another row"));
            Assert.Equal(3, (await store.LogsAsync("a")).Count);
            Assert.IsType<ChangeOutcome.Done>(await store.SaveAsync("a", "\uFEFF{ \"três\": \"\\ud83e\\uddf6 🧶\" }\r\n", "next"));
        }

        static bool Same(ProjectSummary one, ProjectSummary other) => one with { Swatch = null, Made = null } == other with { Swatch = null, Made = null }
            // A device that knows a newer text than the backup tells so by it.
            && one.Made != other.Made
            && (one.Swatch?.Cells ?? []).SequenceEqual(other.Swatch?.Cells ?? []);
    }

    /// <summary>Control characters are written as escape sequences, six letters each.</summary>
    [Fact]
    public async Task The_longest_text_is_restored_and_a_line_longer_than_any_is_refused()
    {
        var text = new string('\u0001', 2_000_000);
        await using var first = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await first.CreateAsync("a", text);
        await first.CreateAsync("b", "short");
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.RestoreAsync(backup);
        Assert.Equal((text, "short"), (await second.ReadAsync("a"), await second.ReadAsync("b")));
        var refusal = await Assert.ThrowsAsync<BadBackupException>(
            () => second.RestoreAsync(backup[..(backup.IndexOf('\n', StringComparison.Ordinal) + 1)] + new string(' ', 20_000_001)));
        Assert.Contains("Line 2 is longer than any", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_project_that_is_there_already_stays_as_it_is()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.CreateAsync("a", "of my own");
        await second.WithAsync((MakingStore s) => s.CreateAsync("m", null, TestStore.Making("my own"), default));
        var restored = await second.RestoreAsync(backup);
        Assert.Equal(new BackupCounts(1, 0, 0, 0, 1), restored.Counts);
        Assert.Collection(
            restored.LeftAlone, name => Assert.StartsWith("name of", name, StringComparison.Ordinal), title => Assert.Equal("title of { }", title));
        Assert.Equal("of my own", await second.ReadAsync("a"));
        Assert.Equal("archived", await second.ReadAsync("b"));
        var kept = Assert.IsType<TextReading.Sound>(await second.WithAsync((MakingStore s) => s.ReadAsync("m", default)));
        Assert.Equal("my own", Encoding.UTF8.GetString(kept.Document));
        Assert.Equal(4, (await second.RestoreAsync(backup)).LeftAlone.Count);
    }

    [Fact]
    public async Task Names_that_are_told_are_one_line_of_what_can_be_seen()
    {
        await using var first = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var draft = new Draft("{}"u8.ToArray(), "Tide\u001b[2J\u202eline\u2028\u200b\r", null);
        await first.WithAsync((ProjectStore s) => s.CreateAsync("a", draft, default));
        Assert.Equal("Tide [2Jline", Assert.Single(await first.ShelfAsync()).Name);
        Assert.Equal("Tide [2Jline", Assert.Single((await first.RestoreAsync(await first.BackupAsync())).LeftAlone));
    }

    [Fact]
    public async Task A_backup_from_before_there_were_makings_is_restored_and_said_to_have_no_hashes()
    {
        const string backup = """
            {"start":{"form":1,"takenAt":"2026-03-01T09:10:00+00:00"}}
            {"project":{"id":"a","name":"name of two","archived":false,"createdAt":"2026-03-01T09:00:00+00:00","updatedAt":"2026-03-01T09:05:00+00:00","lastVersion":1,"document":"two"}}
            {"version":{"number":1,"savedAt":"2026-03-01T09:00:00+00:00","kept":false,"document":"one"}}
            {"end":{"projects":1,"versions":1}}

            """;
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var restored = await store.RestoreAsync(backup);
        Assert.Equal(new BackupCounts(1, 1), restored.Counts);
        Assert.False(restored.HasHashes);
        Assert.Equal("two", await store.ReadAsync("a"));
        Assert.Equal(["one"], await store.VersionsAsync("a"));
    }

    [Fact]
    public async Task Of_a_backup_that_a_later_program_wrote_nothing_is_restored()
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var later = """{"start":{"form":4,"takenAt":"2026-03-01T09:10:00+00:00"}}""" + "\n" + """{"end":{"projects":0,"versions":0}}""";
        var refusal = await Assert.ThrowsAsync<BadBackupException>(() => store.RestoreAsync(later));
        foreach (var said in new[] { "form 4", "up to 3", "newer program" })
            Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_a_backup_that_was_cut_short_or_changed_nothing_is_restored()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        for (var length = 0; length < backup.Length - 1; length += 31)
            await RefusedAsync(second, Encoding.UTF8.GetBytes(backup[..length]));
        // One letter, anywhere: in a hash, in a name, in a document, in the counts.
        var bytes = Encoding.UTF8.GetBytes(backup);
        for (var at = 0; at < bytes.Length - 1; at += 11)
        {
            var changed = (byte[])bytes.Clone();
            changed[at] ^= 1;
            await RefusedAsync(second, changed);
        }
        var lines = backup.Split('\n')[..^1];
        for (var line = 0; line < lines.Length; line++)
        {
            await RefusedAsync(second, [.. lines[..line], .. lines[(line + 1)..]]);
            await RefusedAsync(second, [.. lines[..(line + 1)], lines[line], .. lines[(line + 1)..]]);
            if (line > 0)
                await RefusedAsync(second, [.. lines[..(line - 1)], lines[line], lines[line - 1], .. lines[(line + 1)..]]);
        }
        await RefusedAsync(second, [.. lines, ""]);
        await RefusedAsync(second, [.. lines, .. lines]);
        Assert.True(await second.WithAsync((ProjectStore store) => store.IsEmptyAsync(default)));
        Assert.Equal(first.Now, second.Now = first.Now);
        await second.RestoreAsync(backup);
        Assert.Equal(backup, await second.BackupAsync());
    }

    /// <summary>In a backup without hashes, where nothing else tells.</summary>
    [Theory]
    [InlineData("\"number\":2", "\"number\":1", "version 1")]
    [InlineData("\"number\":2", "\"number\":3", "version 3")]
    [InlineData("\"number\":1", "\"number\":-1", "version -1")]
    [InlineData("\"lastVersion\":3", "\"lastVersion\":1", "version 2")]
    [InlineData("\"lastVersion\":3", "\"lastVersion\":-2", "versions")]
    [InlineData("\"keyHash\":\"", "\"keyHash\":\"x", "hash of a key")]
    [InlineData("\"entries\":7", "\"entries\":-7", "entries")]
    [InlineData("\"id\":\"b\"", "\"id\":\"a\"", "a second time")]
    [InlineData("\"id\":\"n\"", "\"id\":\"m\"", "a second time")]
    [InlineData("\"id\":\"b\"", "\"id\":\"\"", "no id")]
    [InlineData("\"makingId\":\"jacket\"", "\"makingId\":\"jumper\"", "a second time")]
    [InlineData("\"document\":\"archived\"", "\"document\":\"unreadable\"", "no document")]
    [InlineData("\"making\":{", "\"making\":{},\"project\":{", "Line ")]
    public async Task What_cannot_be_is_refused_and_its_line_named(string written, string changed, string said)
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = Unhashed(await first.BackupAsync());
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var at = backup.IndexOf(written, StringComparison.Ordinal);
        var refusal = await Assert.ThrowsAsync<BadBackupException>(
            () => second.RestoreAsync(string.Concat(backup.AsSpan(0, at), changed, backup.AsSpan(at + written.Length))));
        Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
        Assert.Matches("^Line [0-9]+ ", refusal.Message);
        Assert.True(await second.WithAsync((ProjectStore store) => store.IsEmptyAsync(default)));
        Assert.False((await second.RestoreAsync(backup)).HasHashes);
    }

    [Fact]
    public async Task A_log_below_another_project_than_its_handover_is_refused()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var lines = Unhashed(await first.BackupAsync()).Split('\n').ToList();
        var log = lines.Find(line => line.Contains("\"handoverId\":\"", StringComparison.Ordinal))!;
        lines.Remove(log);
        lines.Insert(lines.FindIndex(line => line.Contains("\"project\":{\"id\":\"b\"", StringComparison.Ordinal)) + 1, log);
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        var refusal = await Assert.ThrowsAsync<BadBackupException>(() => second.RestoreAsync(string.Join('\n', lines)));
        Assert.Contains("a log of a handover that its project does not have above it", refusal.Message, StringComparison.Ordinal);
        Assert.True(await second.WithAsync((ProjectStore store) => store.IsEmptyAsync(default)));
    }

    [Fact]
    public async Task A_handover_that_another_project_has_is_told()
    {
        await using var first = await FilledAsync(DatabaseKind.Sqlite);
        var backup = await first.BackupAsync();
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.RestoreAsync(backup);
        await second.SpoilAsync(
            $"""
            PRAGMA foreign_keys = 0; UPDATE projects SET id = 'other' WHERE id = 'a';
            UPDATE versions SET project_id = 'other'; UPDATE handovers SET project_id = 'other'; UPDATE maker_logs SET project_id = 'other';
            PRAGMA foreign_keys = 1
            """);
        var refusal = await Assert.ThrowsAsync<BadBackupException>(() => second.RestoreAsync(backup));
        Assert.Contains("another project", refusal.Message, StringComparison.Ordinal);
        Assert.Null(await second.ReadAsync("a"));
    }

    /// <summary>As programs wrote a backup before it had hashes.</summary>
    private static string Unhashed(string backup) => string.Join('\n', backup.Split('\n')[..^1].Select(line => $"{{{line[(line.IndexOf(',', StringComparison.Ordinal) + 1)..]}"))
        .Replace("\"form\":3", "\"form\":2", StringComparison.Ordinal);

    private static Task RefusedAsync(TestStore store, string[] lines) =>
        RefusedAsync(store, Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n"))));

    private static async Task RefusedAsync(TestStore store, byte[] backup) =>
        await Assert.ThrowsAsync<BadBackupException>(() => store.RestoreAsync(backup));

    private async Task<TestStore> FilledAsync(DatabaseKind kind)
    {
        var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        var picture = new SwatchPicture(["#102030", "#fFfFfF"], 2, 2, [0, 1, SwatchPicture.Empty, 1]);
        await store.WithAsync((ProjectStore s) => s.CreateAsync("a", TestStore.Text("{}") with { Swatch = picture }, default));
        store.Now += TimeSpan.FromMinutes(5);
        await store.SaveAsync("a", "{}", "{ \"line\": 1,\n\"tab\":\t2 }");
        store.Now += TimeSpan.FromMinutes(5);
        await store.SaveAsync("a", "{ \"line\": 1,\n\"tab\":\t2 }", "\uFEFF{ \"três\": \"\\ud83e\\uddf6 🧶\" }\r\n", keep: true);
        await store.WithAsync((EditionStore s) => s.PublishAsync("a", 7, "{ \"edition\": 7 }"u8.ToArray(), default));
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
