using System.Net;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

/// <summary>What holds something of the designer's or a maker's is kept by no cache; the program's own files are.</summary>
public class CachingTests(Hosts hosts)
{
    [Theory]
    [InlineData(ApiPaths.Projects)]
    [InlineData(ApiPaths.Projects + "/nowhere")]
    [InlineData(ApiPaths.Projects + "/{id}")]
    [InlineData(ApiPaths.Projects + "/{id}/versions")]
    [InlineData(ApiPaths.Projects + "/{id}/handovers")]
    [InlineData(ApiPaths.Projects + "/{id}/logs")]
    [InlineData(ApiPaths.Makings)]
    [InlineData(ApiPaths.Handed)]
    [InlineData(ApiPaths.Demo)]
    [InlineData("api/unknown")]
    [InlineData("health/ready")]
    [InlineData("openapi/v1.json")]
    [InlineData("no/such/file.js")]
    [InlineData("v/no-such-version/css/app.css")]
    public async Task What_is_personal_is_kept_by_nobody(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        var project = await host.CreateAsync("{}");
        using var answer = await host.Client.GetAsync(path.Replace("{id}", project.Id, StringComparison.Ordinal));
        Assert.Equal("no-store", answer.Headers.CacheControl?.ToString());
    }

    [Fact]
    public async Task Nor_are_refusals_and_answers_to_changes()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var created = await host.Client.PostAsync(ApiPaths.Projects, RunningHost.Json("{}"));
        using var foreign = await host.NewClient().PostAsync(ApiPaths.Projects, RunningHost.Json("{}"));
        using var renamed = new HttpRequestMessage(HttpMethod.Get, "icon.svg") { Headers = { Host = "rebound.example" } };
        using var misdirected = await host.Client.SendAsync(renamed);
        foreach (var answer in new[] { created, foreign, misdirected })
            Assert.Equal("no-store", answer.Headers.CacheControl?.ToString());
    }

    /// <summary>Who has a text sends its ETag, and gets it again only where it is another one; no cache need keep it for that.</summary>
    [Fact]
    public async Task A_document_that_is_known_is_not_sent_again()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        var project = await host.CreateAsync("{}");
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Project(project.Id)) { Headers = { { "If-None-Match", project.Etag } } };
        using var answer = await host.Client.SendAsync(request);
        Assert.Equal((HttpStatusCode.NotModified, "no-store"), (answer.StatusCode, answer.Headers.CacheControl?.ToString()));
    }

    [Theory]
    [InlineData("index.html")]
    [InlineData("css/app.css")]
    [InlineData("icon.svg")]
    [InlineData("service-worker.js")]
    [InlineData("make/from")]
    [InlineData("yarn")]
    public async Task The_program_s_own_files_are_looked_at_anew(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var answer = await host.Client.GetAsync(path);
        Assert.Equal((HttpStatusCode.OK, "no-cache"), (answer.StatusCode, answer.Headers.CacheControl?.ToString()));
        Assert.NotNull(answer.Headers.ETag);
    }
}
