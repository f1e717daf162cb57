using System.Net;
using System.Net.Http.Json;
using Dyepath.Contracts;
using Dyepath.Storage;

namespace Dyepath.Web.Tests.Health;

public class HealthTests(Hosts hosts)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_running_host_with_its_store_is_live_and_ready(DatabaseKind kind)
    {
        var host = await hosts.OnAsync(kind);
        Assert.Equal("Healthy", await host.Client.GetStringAsync("health/live"));
        Assert.Empty((await ReadyAsync(host, HttpStatusCode.OK)).Troubles);
    }

    [Fact]
    public async Task Without_its_store_it_is_live_but_not_ready_and_answers_that_it_may_be_asked_again()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Postgres);
        await using var host = await RunningHost.StartAsync(new(database, 0));
        var project = await host.CreateAsync("{}");
        hosts.Databases.Drop(database);
        Assert.Equal("Healthy", await host.Client.GetStringAsync("health/live"));
        Assert.Equal("away", Assert.Single((await ReadyAsync(host, HttpStatusCode.ServiceUnavailable)).Troubles).Kind);
        foreach (var attempt in new Func<Task<HttpResponseMessage>>[]
        {
            () => host.Client.GetAsync(ApiPaths.Projects),
            () => host.Client.GetAsync(ApiPaths.Project(project.Id)),
            () => host.Client.PostAsync(ApiPaths.Projects, RunningHost.Json("{}")),
            () => host.SaveAsync(project.Id, project.Etag, "{ }"),
            () => host.Client.PostAsync(ApiPaths.Archive(project.Id), null),
            () => host.Client.PostAsync(ApiPaths.Copy(project.Id), null),
            () => host.Client.DeleteAsync(ApiPaths.Project(project.Id)),
            () => host.Client.GetAsync(ApiPaths.Versions(project.Id)),
            () => host.Client.GetAsync(ApiPaths.Version(project.Id, 1)),
            () => host.RestoreVersionAsync(project.Id, 1, project.Etag),
            () => host.Client.GetAsync(ApiPaths.Makings),
            () => host.Client.GetAsync(ApiPaths.Making(project.Id)),
            () => host.Client.DeleteAsync(ApiPaths.Making(project.Id)),
            () => host.Client.GetAsync(ApiPaths.Handovers(project.Id)),
            () => host.Client.PostAsync(ApiPaths.Handovers(project.Id), RunningHost.Json("""{ "size": "M" }""")),
            () => host.Client.DeleteAsync(ApiPaths.Handover(project.Id, project.Id)),
            () => host.Client.GetAsync(ApiPaths.Logs(project.Id)),
            () => host.Client.GetAsync(ApiPaths.Log(project.Id, project.Id)),
            () => host.OpenAsync(new string('k', 43)),
        })
        {
            using var answer = await attempt();
            await RunningHost.ProblemAsync(HttpStatusCode.ServiceUnavailable, answer);
            Assert.NotNull(answer.Headers.RetryAfter);
        }
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task What_somebody_has_to_see_to_is_told_in_words(DatabaseKind kind)
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(kind), 0));
        var project = await host.CreateAsync("""{ "title": "Tideline" }""");
        await host.SpoilAsync($"UPDATE projects SET etag = '\"0123\"' WHERE id = {project.Id}");
        var damaged = Assert.Single((await ReadyAsync(host, HttpStatusCode.OK)).Troubles);
        Assert.Equal("damaged", damaged.Kind);
        Assert.Contains("Tideline", damaged.Title, StringComparison.Ordinal);
        Assert.Contains(project.Id, damaged.Detail, StringComparison.Ordinal);
        await host.SpoilAsync($"""INSERT INTO "__EFMigrationsHistory" VALUES ('29990101000000_Later', '99.0.0')""");
        var newer = (await ReadyAsync(host, HttpStatusCode.ServiceUnavailable)).Troubles[0];
        Assert.Equal("newer", newer.Kind);
        Assert.Contains("29990101000000_Later", newer.Detail, StringComparison.Ordinal);
    }

    private static async Task<Readiness> ReadyAsync(RunningHost host, HttpStatusCode status)
    {
        using var answer = await host.Client.GetAsync("health/ready");
        Assert.Equal(status, answer.StatusCode);
        var readiness = (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.Readiness))!;
        Assert.Equal(status == HttpStatusCode.OK, readiness.Ready);
        Assert.All(readiness.Troubles, trouble => Assert.EndsWith(".", trouble.Detail, StringComparison.Ordinal));
        return readiness;
    }
}
