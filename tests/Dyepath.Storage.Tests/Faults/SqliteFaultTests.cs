using System.Runtime.Versioning;
using System.Text;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Watch;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Storage.Tests.Faults;

public class SqliteFaultTests(TestDatabases databases)
{
    [Fact]
    public async Task When_the_disk_is_full_nothing_that_was_stored_is_lost_and_saving_goes_on_when_there_is_room()
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await store.CreateAsync("a", "one");
        var backup = await store.BackupAsync();
        var large = new string('x', 500_000);
        await store.WithScopeAsync(async services =>
        {
            // Held open, so that the limit, which SQLite keeps for each connection, holds for what follows.
            var db = services.GetRequiredService<AppDb>();
            await db.Database.OpenConnectionAsync();
            await db.Database.ExecuteSqlRawAsync("PRAGMA max_page_count = 40");
            var projects = services.GetRequiredService<ProjectStore>();
            foreach (var attempt in new Func<Task>[]
            {
                () => projects.SaveAsync("a", TestStore.Text("one").Etag, TestStore.Text(large), false, default),
                () => projects.CreateAsync("b", TestStore.Text(large), default),
                () => services.GetRequiredService<MakingStore>().CreateAsync("m", null, TestStore.Making(large), default),
            })
            {
                Assert.Equal(StoreFault.DiskFull, (await Assert.ThrowsAsync<StoreException>(attempt)).Fault);
                Assert.True(services.GetRequiredService<StoreWatch>().IsFull);
            }
            await db.Database.ExecuteSqlRawAsync("PRAGMA max_page_count = 100000");
        });
        Assert.Equal(backup, await store.BackupAsync());
        Assert.IsType<ChangeOutcome.Done>(await store.SaveAsync("a", "one", large));
        Assert.Equal(large, await store.ReadAsync("a"));
        Assert.False(await store.WithAsync((StoreWatch watch) => Task.FromResult(watch.IsFull)));
    }

    [Fact]
    public async Task Of_a_backup_that_the_disk_does_not_take_nothing_is_restored()
    {
        await using var first = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        foreach (var id in new[] { "a", "b", "c" })
            await first.CreateAsync(id, new string('x', 200_000));
        var backup = Encoding.UTF8.GetBytes(await first.BackupAsync());
        await using var second = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await second.WithScopeAsync(async services =>
        {
            var db = services.GetRequiredService<AppDb>();
            await db.Database.OpenConnectionAsync();
            await db.Database.ExecuteSqlRawAsync("PRAGMA max_page_count = 120");
            var fault = await Assert.ThrowsAsync<StoreException>(
                () => services.GetRequiredService<BackupStore>().RestoreAsync(new MemoryStream(backup), default));
            Assert.Equal(StoreFault.DiskFull, fault.Fault);
            await db.Database.ExecuteSqlRawAsync("PRAGMA max_page_count = 100000");
        });
        Assert.Empty(await second.ShelfAsync());
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_named()
    {
        var choice = databases.NewDatabase(DatabaseKind.Sqlite);
        await File.WriteAllTextAsync(choice.File, new string('x', 5000));
        var refusal = await Assert.ThrowsAsync<StoreNotReadyException>(() => TestStore.OpenAsync(choice));
        Assert.Contains(choice.File, refusal.Message, StringComparison.Ordinal);
        Assert.Contains("backup", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Its_files_are_its_owner_s_alone()
    {
        if (OperatingSystem.IsWindows())
            return; // It gives files the rights of their folder.
        var choice = databases.NewDatabase(DatabaseKind.Sqlite);
        await using (var store = await TestStore.OpenAsync(choice))
        {
            await store.CreateAsync("a", "one");
            Check(expected: 4);
        }
        SqliteConnection.ClearAllPools();
        // As an earlier program left them.
        foreach (var file in Directory.GetFiles(choice.Folder))
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        await using (var store = await TestStore.OpenAsync(choice))
        {
            await store.CreateAsync("b", "one");
            Check(expected: 4);
        }

        [UnsupportedOSPlatform("windows")]
        void Check(int expected)
        {
            var files = Directory.GetFiles(choice.Folder);
            Assert.Equal(expected, files.Length);
            foreach (var file in files)
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }
    }
}
