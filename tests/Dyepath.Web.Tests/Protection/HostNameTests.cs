using System.Net;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

public class HostNameTests(Hosts hosts)
{
    [Theory]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("LOCALHOST", HttpStatusCode.OK)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("localhost:1", HttpStatusCode.OK)]
    [InlineData("rebound.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost.rebound.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.1.rebound.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.2", HttpStatusCode.MisdirectedRequest)]
    [InlineData("[::1]", HttpStatusCode.MisdirectedRequest)]
    public async Task Requests_under_another_name_are_not_answered(string name, HttpStatusCode status)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        foreach (var path in new[] { ApiPaths.Projects, "health/live", "openapi/v1.json" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Host = name;
            using var answer = await host.Client.SendAsync(request);
            if (status == HttpStatusCode.OK)
                Assert.Equal(status, answer.StatusCode);
            else
                await RunningHost.ProblemAsync(status, answer);
        }
    }

    [Theory]
    [InlineData(ApiPaths.Handed)]
    [InlineData("make/from")]
    [InlineData("index.html")]
    public async Task What_is_open_to_everyone_is_not_answered_under_another_name_either(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Host = "rebound.example" } };
        using var answer = await host.Client.SendAsync(request);
        await RunningHost.ProblemAsync(HttpStatusCode.MisdirectedRequest, answer);
    }

    [Fact]
    public async Task A_host_answers_to_the_names_it_was_given()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);
        await using var host = await RunningHost.StartAsync(new(database, 0, Names: ["yarn.example"]));
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects);
        request.Headers.Host = "Yarn.example";
        using var answer = await host.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }
}
