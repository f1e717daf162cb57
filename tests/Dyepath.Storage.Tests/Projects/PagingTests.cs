using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;

namespace Dyepath.Storage.Tests.Projects;

public class PagingTests(TestDatabases databases)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task Parts_of_a_list_make_the_whole_whatever_is_changed_meanwhile(DatabaseKind kind)
    {
        await using var store = await TestStore.OpenAsync(databases.NewDatabase(kind));
        var expected = new List<string>();
        await store.WithAsync<AppDb>(async db =>
        {
            // Seven a moment: the place is among equals too.
            for (var i = 0; i < 2 * ApiPaths.MostListed + 30; i++)
            {
                var (id, text) = ($"p{i:000}", TestStore.Text($"{i}"));
                var moment = store.Now.AddMilliseconds(-(i / 7));
                db.Projects.Add(new ProjectRow { Id = id, Name = text.Name, CreatedAt = moment, UpdatedAt = moment, Etag = text.Etag, Document = text.Document });
                db.Makings.Add(new MakingRow { Id = id, Title = "", Size = "", Entries = 0, UpdatedAt = moment, Etag = text.Etag, Document = text.Document });
                db.Logs.Add(new MakerLogRow
                {
                    Id = id,
                    ProjectId = "p000",
                    MakingId = id,
                    Size = "",
                    ReceivedAt = moment,
                    Entries = 0,
                    Bytes = 1,
                    Document = text.Document,
                });
                expected.Add(id);
            }
            await db.SaveChangesAsync();
        });
        store.Now += TimeSpan.FromMinutes(1);
        Assert.Equal(expected, await AllAsync<ProjectSummary>(place => store.WithAsync((ProjectStore s) => s.ListAsync(false, place, default)), p => p.Id));
        Assert.Equal(expected, await AllAsync<MakingSummary>(place => store.WithAsync((MakingStore s) => s.ListAsync(place, default)), m => m.Id));
        Assert.Equal(expected, await AllAsync<ReceivedLog>(async place => (await store.WithAsync((MakerLogStore s) => s.ListAsync("p000", place, default)))!, l => l.Id));

        // One that was on the first part, the very one it ended with, and one of a later part are changed between the parts.
        var first = await store.WithAsync((ProjectStore s) => s.ListAsync(false, Place.Start, default));
        foreach (var i in new[] { 3, ApiPaths.MostListed - 1, ApiPaths.MostListed + 50 })
            await store.SaveAsync($"p{i:000}", $"{i}", "changed");
        var rest = await AllAsync<ProjectSummary>(
            place => store.WithAsync((ProjectStore s) => s.ListAsync(false, place == Place.Start ? first.Next! : place, default)), p => p.Id);
        Assert.Equal(expected[ApiPaths.MostListed..].Where(id => id != $"p{ApiPaths.MostListed + 50:000}"), rest);
    }

    private static async Task<List<string>> AllAsync<T>(Func<Place, Task<Page<T>>> list, Func<T, string> id)
    {
        var ids = new List<string>();
        for (Place? place = Place.Start; place is not null;)
        {
            var page = await list(place);
            Assert.InRange(page.Items.Count, 1, ApiPaths.MostListed);
            ids.AddRange(page.Items.Select(id));
            place = page.Next;
        }
        return ids;
    }
}
