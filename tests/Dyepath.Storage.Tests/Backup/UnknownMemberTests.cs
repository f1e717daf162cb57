using Dyepath.Storage.Backup;

namespace Dyepath.Storage.Tests.Backup;

/// <summary>What a backup says is restored or refused: nothing of it is passed over.</summary>
public class UnknownMemberTests(TestDatabases databases)
{
    [Theory]
    [InlineData("", true)]
    [InlineData(",\"odd\":1", false)]
    public async Task A_line_that_says_more_than_is_known_is_not_restored(string more, bool isGood)
    {
        var backup = $$$"""
            {"start":{"form":1,"takenAt":"2026-03-01T09:10:00+00:00"}}
            {"project":{"id":"a","name":"two","archived":false,"createdAt":"2026-03-01T09:00:00+00:00","updatedAt":"2026-03-01T09:05:00+00:00","lastVersion":0,"document":"two"{{{more}}}}}
            {"end":{"projects":1,"versions":0}}

            """;
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        if (isGood)
            await store.RestoreAsync(backup);
        else
            await Assert.ThrowsAsync<BadBackupException>(() => store.RestoreAsync(backup));
        Assert.Equal(isGood ? "two" : null, await store.ReadAsync("a"));
    }
}
