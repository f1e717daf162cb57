using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Tests.Handovers;

public abstract class HandoverStoreTests(TestDatabases databases, DatabaseKind kind) : IAsyncLifetime
{
    private TestStore _store = null!;

    public async ValueTask InitializeAsync()
    {
        _store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await _store.CreateAsync("p", "project");
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _store.DisposeAsync();
    }

    [Fact]
    public async Task A_key_opens_its_piece_and_no_other()
    {
        var (one, two) = (await _store.HandOverAsync("p", "one"), await _store.HandOverAsync("p", "two"));
        Assert.Matches("^[0-9A-Za-z_-]{43}$", one.Key);
        Assert.NotEqual(one.Key, two.Key);
        Assert.Equal("one", await OpenedAsync(one.Key));
        Assert.Equal("two", await OpenedAsync(two.Key));
        foreach (var wrong in new[] { "", one.Key[..42], one.Key + "A", one.Id, one.Key.ToUpperInvariant(), SecretKey.New() })
            Assert.Null(await _store.OpenAsync(wrong));
    }

    [Fact]
    public async Task The_store_and_its_backup_hold_no_key()
    {
        var handover = await _store.HandOverAsync("p", "one");
        await _store.WithAsync<AppDb>(async db =>
        {
            var row = await db.Handovers.SingleAsync();
            Assert.NotEqual(handover.Key, row.KeyHash);
            Assert.Null(await _store.OpenAsync(row.KeyHash));
        });
        Assert.DoesNotContain(handover.Key, await _store.BackupAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_maker_s_log_is_replaced_by_her_next_one_and_not_by_another_s()
    {
        var handover = await _store.HandOverAsync("p", "piece");
        Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(handover.Key, "hers", "1"));
        Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(handover.Key, "other", "22"));
        _store.Now += TimeSpan.FromHours(1);
        Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(handover.Key, "hers", "333"));
        var logs = await LogsAsync();
        Assert.Equal([3, 2], logs.Select(l => l.Entries));
        Assert.Equal(_store.Now, logs[0].ReceivedAt);
        Assert.Equal("333", Encoding.UTF8.GetString((await _store.WithAsync((MakerLogStore s) => s.ReadAsync("p", logs[0].Id, default)))!));
        Assert.Equal(2, Assert.Single((await HandoversAsync())!).Logs);
    }

    [Fact]
    public async Task Revoking_ends_the_key_and_leaves_the_logs()
    {
        var handover = await _store.HandOverAsync("p", "piece");
        await _store.ReceiveAsync(handover.Key, "hers", "1");
        var opened = (await _store.OpenAsync(handover.Key))!;
        await _store.CreateAsync("other", "project");
        Assert.False(await RevokeAsync("other", handover.Id));
        Assert.True(await RevokeAsync("p", handover.Id));
        Assert.False(await RevokeAsync("p", handover.Id));
        Assert.Null(await _store.OpenAsync(handover.Key));
        Assert.Empty((await HandoversAsync())!);
        Assert.Single(await LogsAsync());
        var late = await _store.WithAsync((MakerLogStore s) => s.ReceiveAsync(opened, "hers", TestStore.Making("22"), default));
        Assert.Equal(ReceiveOutcome.Revoked, late);
        Assert.Equal(1, Assert.Single(await LogsAsync()).Entries);
    }

    [Fact]
    public async Task A_project_takes_its_handovers_and_logs_with_it()
    {
        var handover = await _store.HandOverAsync("p", "piece");
        await _store.ReceiveAsync(handover.Key, "hers", "1");
        var opened = (await _store.OpenAsync(handover.Key))!;
        await _store.WithAsync((ProjectStore s) => s.ArchiveAsync("p", true, default));
        Assert.NotNull(await _store.OpenAsync(handover.Key));
        Assert.Equal(DeleteOutcome.Deleted, await _store.WithAsync((ProjectStore s) => s.DeleteAsync("p", default)));
        Assert.Null(await _store.OpenAsync(handover.Key));
        Assert.Null(await HandoversAsync());
        Assert.Equal(
            ReceiveOutcome.Revoked, await _store.WithAsync((MakerLogStore s) => s.ReceiveAsync(opened, "hers", TestStore.Making("2"), default)));
        await _store.WithAsync<AppDb>(async db => Assert.Equal(0, await db.Logs.CountAsync() + await db.Handovers.CountAsync()));
        Assert.IsType<HandoverOutcome.Missing>(
            await _store.WithAsync((HandoverStore s) => s.CreateAsync("p", TestStore.Making("piece"), default)));
    }

    [Fact]
    public async Task Makers_who_send_at_once_are_all_heard_while_the_designer_saves()
    {
        var handover = await _store.HandOverAsync("p", "piece");
        var saving = Task.Run(async () =>
        {
            for (var i = 0; i < 10; i++)
                Assert.IsType<ChangeOutcome.Done>(await _store.SaveAsync("p", (await _store.ReadAsync("p"))!, $"{i}"));
        });
        var sent = Enumerable.Range(0, 24).Select(i => Task.Run(() => _store.ReceiveAsync(handover.Key, $"{i % 8}", new string('x', i + 1))));
        Assert.All(await Task.WhenAll(sent), outcome => Assert.Equal(ReceiveOutcome.Stored, outcome));
        await saving;
        Assert.Equal(8, (await LogsAsync()).Count);
    }

    [Fact]
    public async Task A_handover_holds_so_many_logs_and_bytes_and_a_project_so_many_handovers()
    {
        var handover = await _store.HandOverAsync("p", "piece");
        for (var i = 0; i < MakerLogStore.MostOfHandover; i++)
            Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(handover.Key, $"{i}", "log"));
        Assert.Equal(ReceiveOutcome.Full, await _store.ReceiveAsync(handover.Key, "more", "log"));
        Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(handover.Key, "0", "goes on"));

        var large = await _store.HandOverAsync("p", "piece");
        var most = new string('x', (int)(MakerLogStore.MostBytesOfHandover / 10));
        for (var i = 0; i < 10; i++)
            Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(large.Key, $"{i}", most));
        Assert.Equal(ReceiveOutcome.Full, await _store.ReceiveAsync(large.Key, "more", "x"));
        Assert.Equal(ReceiveOutcome.Full, await _store.ReceiveAsync(large.Key, "0", most + "x"));
        Assert.Equal(ReceiveOutcome.Stored, await _store.ReceiveAsync(large.Key, "0", most));

        for (var i = 2; i < HandoverStore.MostOfProject; i++)
            await _store.HandOverAsync("p", "piece");
        Assert.IsType<HandoverOutcome.Full>(await _store.WithAsync((HandoverStore s) => s.CreateAsync("p", TestStore.Making("piece"), default)));
        Assert.True(await RevokeAsync("p", handover.Id));
        await _store.HandOverAsync("p", "piece");
    }

    private async Task<string?> OpenedAsync(string key) =>
        await _store.OpenAsync(key) is { } piece ? Encoding.UTF8.GetString(piece.Document) : null;

    private Task<bool> RevokeAsync(string project, string id) => _store.WithAsync((HandoverStore s) => s.RevokeAsync(project, id, default));

    private Task<IReadOnlyList<HandoverSummary>?> HandoversAsync() => _store.WithAsync((HandoverStore s) => s.ListAsync("p", default));

    private Task<IReadOnlyList<ReceivedLog>> LogsAsync() => _store.LogsAsync("p");
}

public class SqliteHandoverStoreTests(TestDatabases databases) : HandoverStoreTests(databases, DatabaseKind.Sqlite);

public class PostgresHandoverStoreTests(TestDatabases databases) : HandoverStoreTests(databases, DatabaseKind.Postgres);
