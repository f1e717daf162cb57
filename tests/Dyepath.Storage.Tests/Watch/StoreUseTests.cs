using Dyepath.Storage.Faults;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Watch;

public class StoreUseTests(TestDatabases databases)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task There_is_room_for_so_many_projects_and_again_when_one_is_deleted(DatabaseKind kind)
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(kind) with { Limits = new StoreLimits(MostProjects: 3) });
        foreach (var id in new[] { "a", "b", "c" })
            Assert.IsType<ChangeOutcome.Done>(await store.CreateAsync(id, "text"));
        Assert.Equal(StoreFault.TooManyProjects, await FaultAsync(() => store.CreateAsync("d", "text")));
        Assert.IsType<ChangeOutcome.Done>(await store.SaveAsync("a", "text", "goes on"));
        await DeleteAsync(store, "b");
        Assert.IsType<ChangeOutcome.Done>(await store.CreateAsync("d", "text"));
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task There_is_room_for_so_many_bytes_of_every_kind_and_nothing_is_lost_beyond(DatabaseKind kind)
    {
        var choice = databases.NewDatabase(kind) with { Limits = new StoreLimits(MostBytes: 1000) };
        await using var store = await TestStore.OpenAsync(choice);
        await store.CreateAsync("a", new string('a', 300));
        await store.SaveAsync("a", new string('a', 300), new string('b', 300));
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(() => store.SaveAsync("a", new string('b', 300), new string('c', 401))));
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(() => store.CreateAsync("b", new string('c', 401))));
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(
            () => store.WithAsync((MakingStore s) => s.CreateAsync("m", null, TestStore.Making(new string('c', 401)), default))));
        var key = (await store.HandOverAsync("a", new string('p', 200))).Key;
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(() => store.ReceiveAsync(key, "jumper", new string('l', 201))));
        Assert.Equal(ReceiveOutcome.Stored, await store.ReceiveAsync(key, "jumper", new string('l', 200)));
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(() => store.CreateAsync("b", "x")));
        Assert.Equal(new string('b', 300), await store.ReadAsync("a"));
        await DeleteAsync(store, "a");
        Assert.IsType<ChangeOutcome.Done>(await store.CreateAsync("b", new string('c', 1000)));

        // Another host on the same store counts what this one stored.
        await using var other = await TestStore.OpenAsync(choice);
        Assert.Equal(StoreFault.TooManyBytes, await FaultAsync(() => other.CreateAsync("c", "x")));
    }

    private static async Task<StoreFault> FaultAsync<T>(Func<Task<T>> work) => (await Assert.ThrowsAsync<StoreException>(() => (Task)work())).Fault;

    private static Task DeleteAsync(TestStore store, string id) => store.WithAsync<ProjectStore>(async projects =>
    {
        await projects.ArchiveAsync(id, true, default);
        Assert.Equal(DeleteOutcome.Deleted, await projects.DeleteAsync(id, default));
    });
}
