using System.Net;
using System.Net.Http.Json;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Web.Tests.Makings;

namespace Dyepath.Web.Tests.Projects;

public class DamagedProjectTests(Hosts hosts)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_damaged_project_says_what_it_can_go_back_to_and_goes_back(DatabaseKind kind)
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(kind), 0));
        var one = await host.CreateAsync(RunningHost.Demo);
        using var saved = await host.SaveAsync(one.Id, one.Etag, """{ "title": "Tideline II" }""");
        var two = await RunningHost.SummaryAsync(saved);
        await host.SpoilAsync($"UPDATE projects SET document = {Encoding.UTF8.GetBytes("{ \"title\": \"Tibeline II\" }")} WHERE id = {one.Id}");
        foreach (var attempt in new Func<Task<HttpResponseMessage>>[]
        {
            () => host.Client.GetAsync(ApiPaths.Project(one.Id)),
            () => host.Client.PostAsync(ApiPaths.Copy(one.Id), null),
            () => host.Client.PostAsync(ApiPaths.Handovers(one.Id), RunningHost.Json("""{ "size": "M" }""")),
        })
        {
            using var answer = await attempt();
            var problem = await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, answer);
            Assert.Equal((1, two.Etag), (problem.GoodVersion, problem.CurrentEtag));
            Assert.Contains("Tideline II", problem.Title, StringComparison.Ordinal);
            Assert.Contains("version 1", problem.Detail, StringComparison.Ordinal);
        }
        Assert.Equal(2, (await host.Client.GetFromJsonAsync(ApiPaths.Projects, ContractsJson.Default.ProjectSummaryArray))!.Length);
        using var mended = await host.RestoreVersionAsync(one.Id, 1, two.Etag);
        Assert.Equal("Tideline", (await RunningHost.SummaryAsync(mended)).Name);
        Assert.Equal(RunningHost.Demo, await host.Client.GetStringAsync(ApiPaths.Project(one.Id)));
    }

    [Fact]
    public async Task Every_damaged_text_is_answered_in_words()
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0));
        var project = await host.CreateAsync(RunningHost.Demo);
        using var saved = await host.SaveAsync(project.Id, project.Etag, RunningHost.Demo + " ");
        var making = Guid.NewGuid().ToString();
        using var given = await host.Client.PostAsync(ApiPaths.Handovers(project.Id), RunningHost.Json("""{ "size": "M" }"""));
        var key = (await given.Content.ReadFromJsonAsync(ContractsJson.Default.Handover))!.Key;
        (await host.SendLogAsync(key, making, Pieces.Text(rows: 2))).Dispose();
        using var begin = new HttpRequestMessage(HttpMethod.Put, ApiPaths.NewMaking(making, null))
        {
            Content = RunningHost.Json(Pieces.Text(rows: 5)),
            Headers = { { "If-None-Match", "*" } },
        };
        (await host.Client.SendAsync(begin)).Dispose();
        var log = Assert.Single((await host.Client.GetFromJsonAsync(ApiPaths.Logs(project.Id), ContractsJson.Default.ReceivedLogArray))!).Id;
        var bytes = "half { \"a"u8.ToArray();
        await host.SpoilAsync($"UPDATE versions SET document = {bytes}");
        await host.SpoilAsync($"UPDATE handovers SET document = {bytes}");
        await host.SpoilAsync($"UPDATE maker_logs SET document = {bytes}");
        await host.SpoilAsync($"UPDATE makings SET document = {bytes}");
        foreach (var attempt in new Func<Task<HttpResponseMessage>>[]
        {
            () => host.Client.GetAsync(ApiPaths.Version(project.Id, 1)),
            () => host.RestoreVersionAsync(project.Id, 1, saved.Headers.ETag!.ToString()),
            () => host.OpenAsync(key),
            () => host.SendLogAsync(key, making, Pieces.Text(rows: 3)),
            () => host.Client.GetAsync(ApiPaths.Log(project.Id, log)),
            () => host.Client.GetAsync(ApiPaths.Making(making)),
        })
        {
            using var answer = await attempt();
            await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, answer);
        }
        Assert.Equal(RunningHost.Demo + " ", await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    /// <summary>An earlier program stored any JSON, which its versions and rows may hold still.</summary>
    [Fact]
    public async Task A_stored_text_that_is_no_object_is_given_back_and_made_into_nothing_new()
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0));
        var project = await host.CreateAsync("{}");
        var etag = Etags.Of("42"u8);
        await host.SpoilAsync($"UPDATE projects SET document = {"42"u8.ToArray()}, etag = {etag} WHERE id = {project.Id}");
        Assert.Equal("42", await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
        using var copied = await host.Client.PostAsync(ApiPaths.Copy(project.Id), null);
        await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, copied);
        using var handed = await host.Client.PostAsync(ApiPaths.Handovers(project.Id), RunningHost.Json("""{ "size": "M" }"""));
        await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, handed);
        using var saved = await host.SaveAsync(project.Id, etag, """{ "title": "mended" }""");
        Assert.Equal("mended", (await RunningHost.SummaryAsync(saved)).Name);
        await host.SpoilAsync($"UPDATE versions SET document = {"42"u8.ToArray()}");
        using var restored = await host.RestoreVersionAsync(project.Id, 1, saved.Headers.ETag!.ToString());
        await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, restored);
    }
}
