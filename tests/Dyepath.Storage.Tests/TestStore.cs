using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;

[assembly: AssemblyFixture(typeof(TestDatabases))]

namespace Dyepath.Storage.Tests;

/// <summary>A store with a clock that tests set. Every operation has a connection of its own, as a request has.</summary>
internal sealed class TestStore : TimeProvider, IAsyncDisposable
{
    private readonly ServiceProvider _services;

    /// <summary>What no program could read: the store looks no further into a text.</summary>
    public const string Unreadable = "unreadable";

    private static readonly StoredForms Forms = new(
        id => id.Length is > 0 and <= 36, document => !Encoding.UTF8.GetString(document).StartsWith(Unreadable, StringComparison.Ordinal));

    private TestStore(DatabaseChoice choice) =>
        _services = new ServiceCollection().AddSingleton<TimeProvider>(this).AddStorage(choice, Forms).BuildServiceProvider();

    public DateTimeOffset Now { get; set; } = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;

    /// <param name="migration">The tables of an earlier program: as this migration left them.</param>
    public static async Task<TestStore> OpenAsync(DatabaseChoice choice, string? migration = null)
    {
        var store = new TestStore(choice);
        await store.WithAsync<AppDb>(db => migration is null
            ? db.PrepareAsync(default)
            : db.Database.GetService<IMigrator>().MigrateAsync(migration));
        return store;
    }

    public static Draft Text(string text) => new(Encoding.UTF8.GetBytes(text), ShownName.Of($"name of {text}"), null);

    public async Task WithAsync<T>(Func<T, Task> work)
        where T : notnull
    {
        await using var scope = _services.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<T>());
    }

    public async Task<TResult> WithAsync<T, TResult>(Func<T, Task<TResult>> work)
        where T : notnull
    {
        await using var scope = _services.CreateAsyncScope();
        return await work(scope.ServiceProvider.GetRequiredService<T>());
    }

    /// <summary>Several things on one connection.</summary>
    public async Task WithScopeAsync(Func<IServiceProvider, Task> work)
    {
        await using var scope = _services.CreateAsyncScope();
        await work(scope.ServiceProvider);
    }

    public Task<ChangeOutcome> CreateAsync(string id, string text) =>
        WithAsync((ProjectStore store) => store.CreateAsync(id, Text(text), default));

    public Task<ChangeOutcome> SaveAsync(string id, string seen, string text, bool keep = false) =>
        WithAsync((ProjectStore store) => store.SaveAsync(id, Text(seen).Etag, Text(text), keep, default));

    public async Task<string?> ReadAsync(string id) =>
        await WithAsync((ProjectStore store) => store.ReadAsync(id, default)) is TextReading.Sound { Document: var document }
            ? Encoding.UTF8.GetString(document)
            : null;

    public async Task<IReadOnlyList<ProjectSummary>> ShelfAsync(bool archived = false) =>
        (await WithAsync((ProjectStore store) => store.ListAsync(archived, Place.Start, default))).Items;

    public async Task<IReadOnlyList<ReceivedLog>> LogsAsync(string project) =>
        (await WithAsync((MakerLogStore store) => store.ListAsync(project, Place.Start, default)))!.Items;

    /// <summary>As a failing disk or a hand that knows no better does.</summary>
    /// <param name="sql">One statement.</param>
    public Task<int> SpoilAsync(FormattableString sql) => WithAsync((AppDb db) => db.Database.ExecuteSqlAsync(sql));

    public async Task<string[]> VersionsAsync(string id) => await WithAsync(async (VersionStore store) =>
    {
        var texts = new List<string>();
        foreach (var version in (await store.ListAsync(id, int.MaxValue, default))!.Value.Items)
            texts.Add(Encoding.UTF8.GetString((await store.ReadAsync(id, version.Number, default))!));
        return texts.ToArray();
    });

    /// <summary>What stands for a making here: the store does not look into it.</summary>
    public static MakingText Making(string text, string size = "M") => new(Encoding.UTF8.GetBytes(text), ShownName.Of($"title of {text}"), size, text.Length);

    /// <returns>The new handover; its key too.</returns>
    public async Task<Handover> HandOverAsync(string project, string text) => Assert.IsType<HandoverOutcome.Done>(
        await WithAsync((HandoverStore store) => store.CreateAsync(project, Making(text), default))).Handover;

    public Task<HandedPiece?> OpenAsync(string key) => WithAsync((HandoverStore store) => store.OpenAsync(key, default));

    public async Task<ReceiveOutcome> ReceiveAsync(string key, string making, string text)
    {
        var piece = (await OpenAsync(key))!;
        return await WithAsync((MakerLogStore store) => store.ReceiveAsync(piece, making, Making(text), default));
    }

    public async Task<string> BackupAsync() => (await BackUpAsync()).Text;

    public Task<(string Text, WrittenBackup Written)> BackUpAsync() => WithAsync(async (BackupStore store) =>
    {
        using var stream = new MemoryStream();
        var written = await store.WriteAsync(stream, default);
        return (Encoding.UTF8.GetString(stream.ToArray()), written);
    });

    public Task<RestoredBackup> RestoreAsync(string backup) => RestoreAsync(Encoding.UTF8.GetBytes(backup));

    public Task<RestoredBackup> RestoreAsync(byte[] backup) => WithAsync((BackupStore store) => store.RestoreAsync(new MemoryStream(backup), default));

    public ValueTask DisposeAsync() => _services.DisposeAsync();
}
