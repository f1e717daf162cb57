using System.Net;
using System.Net.Http.Json;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Projects;
using Dyepath.Storage.Makings;

namespace Dyepath.Web.Tests.Makings;

public abstract class MakingApiTests(Hosts hosts, DatabaseKind kind) : IAsyncLifetime
{
    private readonly string _id = Guid.NewGuid().ToString();

    private RunningHost _host = null!;

    private HttpClient Client => _host.Client;

    public async ValueTask InitializeAsync() => _host = await hosts.OnAsync(kind);

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_piece_begun_on_a_device_is_kept_and_given_back_byte_for_byte()
    {
        var project = Guid.NewGuid().ToString();
        var text = "// mine\r\n" + Pieces.Text(rows: 3);
        using var created = await PutAsync(ApiPaths.NewMaking(_id, project), text, ifNoneMatch: "*");
        Assert.Equal((HttpStatusCode.Created, $"/{ApiPaths.Making(_id)}"), (created.StatusCode, created.Headers.Location!.OriginalString));
        var summary = await SummaryAsync(created);
        Assert.Equal((_id, "Tideline", "M", project, 3), (summary.Id, summary.Title, summary.Size, summary.ProjectId, summary.Entries));
        Assert.Equal(summary.Etag, created.Headers.ETag!.ToString());

        using var read = await Client.GetAsync(ApiPaths.Making(_id));
        Assert.Equal(text, await read.Content.ReadAsStringAsync());
        Assert.Equal((summary.Etag, "application/json"), (read.Headers.ETag!.ToString(), read.Content.Headers.ContentType!.ToString()));
        using var again = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Making(_id)) { Headers = { { "If-None-Match", summary.Etag } } };
        using var unchanged = await Client.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, unchanged.StatusCode);
        Assert.Contains(summary, await ListAsync());
    }

    [Fact]
    public async Task Two_devices_follow_a_piece_and_neither_overwrites_the_other()
    {
        using var begun = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        var seen = begun.Headers.ETag!.ToString();
        using var first = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 1), ifMatch: seen);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        var stored = await SummaryAsync(first);

        using var late = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 2), ifMatch: seen);
        var problem = await RunningHost.ProblemAsync(HttpStatusCode.PreconditionFailed, late);
        Assert.Equal((stored.Etag, stored.UpdatedAt), (problem.CurrentEtag, problem.UpdatedAt));
        Assert.Equal(stored.Etag, late.Headers.ETag!.ToString());
        using var anew = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        Assert.Equal(stored.Etag, (await RunningHost.ProblemAsync(HttpStatusCode.PreconditionFailed, anew)).CurrentEtag);
        Assert.Equal(Pieces.Text(rows: 1), await Client.GetStringAsync(ApiPaths.Making(_id)));

        using var second = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 3), ifMatch: $"W/{stored.Etag}");
        Assert.Equal(3, (await SummaryAsync(second)).Entries);
    }

    [Fact]
    public async Task What_was_sent_but_not_answered_may_be_sent_again()
    {
        using var begun = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        using var begunAgain = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        Assert.Equal(HttpStatusCode.OK, begunAgain.StatusCode);
        Assert.Equal(await SummaryAsync(begun), await SummaryAsync(begunAgain));
        using var saved = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 1), ifMatch: begun.Headers.ETag!.ToString());
        using var savedAgain = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 1), ifMatch: begun.Headers.ETag!.ToString());
        Assert.Equal(await SummaryAsync(saved), await SummaryAsync(savedAgain));
    }

    [Fact]
    public async Task The_newest_change_is_listed_first()
    {
        var other = Guid.NewGuid().ToString();
        using var first = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        await Task.Delay(2);
        using var second = await PutAsync(ApiPaths.NewMaking(other, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        await Task.Delay(2);
        using var saved = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 1), ifMatch: first.Headers.ETag!.ToString());
        Assert.Equal([_id, other], (await ListAsync()).Select(m => m.Id).Where(id => id == _id || id == other));
    }

    [Fact]
    public async Task A_change_says_what_it_continues()
    {
        using var unsaid = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 0));
        await RunningHost.ProblemAsync(HttpStatusCode.PreconditionRequired, unsaid);
        using var any = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 0), ifMatch: "*");
        await RunningHost.ProblemAsync(HttpStatusCode.PreconditionRequired, any);
        using var named = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 0), ifNoneMatch: "\"0123\"");
        await RunningHost.ProblemAsync(HttpStatusCode.PreconditionRequired, named);
        using var nowhere = await PutAsync(ApiPaths.Making(_id), Pieces.Text(rows: 0), ifMatch: "\"0123\"");
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, nowhere);
    }

    [Fact]
    public async Task A_deleted_making_is_gone()
    {
        using var created = await PutAsync(ApiPaths.NewMaking(_id, null), Pieces.Text(rows: 0), ifNoneMatch: "*");
        using (var deleted = await Client.DeleteAsync(ApiPaths.Making(_id)))
            Assert.Equal(HttpStatusCode.NoContent, deleted.StatusCode);
        using var read = await Client.GetAsync(ApiPaths.Making(_id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, read);
        using var again = await Client.DeleteAsync(ApiPaths.Making(_id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, again);
        Assert.DoesNotContain(await ListAsync(), m => m.Id == _id);
    }

    [Theory]
    [InlineData("", "document")]
    [InlineData("{", "document")]
    [InlineData("[]", "document")]
    [InlineData("{}", "makingVersion")]
    [InlineData("[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]", "document")]
    [InlineData("""{ "makingVersion": 1, "size": "M", "project": {} }""", "project.")]
    [InlineData("""{ "makingVersion": 3 }""", "makingVersion")]
    [InlineData("""{ "makingVersion": 1, "log": [ { "did": "row", "at": 0 }, { "did": "hex", "at": 0 } ] }""", "log[1].did")]
    public async Task What_is_no_making_is_refused_with_its_place(string text, string place)
    {
        using var answer = await PutAsync(ApiPaths.NewMaking(_id, null), text, ifNoneMatch: "*");
        var problem = await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
        Assert.Contains(place, problem.Detail, StringComparison.Ordinal);
        using var read = await Client.GetAsync(ApiPaths.Making(_id));
        Assert.Equal(HttpStatusCode.NotFound, read.StatusCode);
    }

    [Fact]
    public async Task A_making_may_have_two_megabytes_and_no_byte_more()
    {
        var text = Pieces.Text(rows: 1);
        var most = text + new string(' ', ProjectReader.MostBytes - Encoding.UTF8.GetByteCount(text));
        using var created = await PutAsync(ApiPaths.NewMaking(_id, null), most, ifNoneMatch: "*");
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        Assert.Equal(most, await Client.GetStringAsync(ApiPaths.Making(_id)));
        using var larger = await PutAsync(ApiPaths.Making(_id), most + " ", ifMatch: created.Headers.ETag!.ToString());
        await RunningHost.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, larger);
    }

    [Theory]
    [InlineData("a", null)]
    [InlineData("..%2Fetc", null)]
    [InlineData("00000000-0000-0000-0000-000000000000%0A", null)]
    [InlineData(null, "a")]
    [InlineData(null, "%00")]
    public async Task Ids_are_of_their_form(string? id, string? project)
    {
        using var answer = await PutAsync(ApiPaths.NewMaking(id ?? _id, project), Pieces.Text(rows: 0), ifNoneMatch: "*");
        await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
    }

    private static async Task<MakingSummary> SummaryAsync(HttpResponseMessage answer) =>
        (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.MakingSummary))!;

    private async Task<MakingSummary[]> ListAsync() =>
        (await Client.GetFromJsonAsync(ApiPaths.Makings, ContractsJson.Default.MakingSummaryArray))!;

    private async Task<HttpResponseMessage> PutAsync(string path, string text, string? ifMatch = null, string? ifNoneMatch = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, path) { Content = RunningHost.Json(text) };
        if (ifMatch is not null)
            request.Headers.TryAddWithoutValidation("If-Match", ifMatch);
        if (ifNoneMatch is not null)
            request.Headers.TryAddWithoutValidation("If-None-Match", ifNoneMatch);
        return await Client.SendAsync(request);
    }
}

public class SqliteMakingApiTests(Hosts hosts) : MakingApiTests(hosts, DatabaseKind.Sqlite);

public class PostgresMakingApiTests(Hosts hosts) : MakingApiTests(hosts, DatabaseKind.Postgres);

public class FullHostTests(Hosts hosts)
{
    [Fact]
    public async Task When_there_is_no_room_for_a_making_the_answer_says_what_to_do()
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0));
        for (var i = 0; i <= MakingStore.Most; i++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Put, ApiPaths.NewMaking(Guid.NewGuid().ToString(), null))
            {
                Content = RunningHost.Json(Pieces.Text(rows: 0)),
                Headers = { { "If-None-Match", "*" } },
            };
            using var answer = await host.Client.SendAsync(request);
            if (i < MakingStore.Most)
                Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
            else
                Assert.Contains("Delete", (await RunningHost.ProblemAsync(HttpStatusCode.InsufficientStorage, answer)).Detail, StringComparison.Ordinal);
        }
    }
}
