using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Versions;

namespace Dyepath.Storage.Tests.Versions;

public class EditionStoreTests(TestDatabases databases)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_published_text_outlives_every_save(DatabaseKind kind)
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await store.CreateAsync("a", "text 0");
        var published = Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 1, "as buyers have it")).Version;
        Assert.Equal(new VersionSummary(1, store.Now, 17, 1), published);
        for (var i = 1; i <= 220; i++)
        {
            store.Now += TimeSpan.FromDays(1);
            await store.SaveAsync("a", $"text {i - 1}", $"text {i}");
        }
        Assert.Equal("text 220", await store.ReadAsync("a"));
        Assert.Equal("as buyers have it", await TextAsync(store, published.Number));
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_number_belongs_to_one_text_until_it_is_taken_back(DatabaseKind kind)
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        await store.CreateAsync("a", "text");
        var first = Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 1, "one")).Version;
        // Sent again after a connection that broke.
        Assert.Equal(first, Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 1, "one")).Version);
        Assert.Equal(first, Assert.IsType<PublishOutcome.Taken>(await PublishAsync(store, 1, "another")).Version);
        Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 2, "another"));
        Assert.True(await store.WithAsync((EditionStore s) => s.TakeBackAsync("a", 1, default)));
        Assert.False(await store.WithAsync((EditionStore s) => s.TakeBackAsync("a", 1, default)));
        // The text stays, as a version like any other.
        Assert.Equal("one", await TextAsync(store, first.Number));
        Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 1, "another"));
        Assert.IsType<PublishOutcome.Missing>(await store.WithAsync((EditionStore s) => s.PublishAsync("b", 1, [1], default)));
    }

    [Fact]
    public async Task There_are_so_many_and_no_more()
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(DatabaseKind.Sqlite));
        await store.CreateAsync("a", "text");
        for (var i = 1; i <= EditionStore.MostEditions; i++)
            Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, i, $"text {i}"));
        Assert.IsType<PublishOutcome.TooMany>(await PublishAsync(store, EditionStore.MostEditions + 1, "one more"));
        Assert.IsType<PublishOutcome.Done>(await PublishAsync(store, 3, "text 3"));
    }

    private static Task<PublishOutcome> PublishAsync(TestStore store, int edition, string text) =>
        store.WithAsync((EditionStore s) => s.PublishAsync("a", edition, Encoding.UTF8.GetBytes(text), default));

    private static async Task<string> TextAsync(TestStore store, int version) =>
        Encoding.UTF8.GetString((await store.WithAsync((VersionStore s) => s.ReadAsync("a", version, default)))!);
}
