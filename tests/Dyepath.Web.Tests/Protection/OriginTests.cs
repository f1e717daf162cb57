using System.Net;
using System.Text;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

public class OriginTests(Hosts hosts)
{
    private const string Own = "own";

    [Theory]
    [InlineData(Own, null, true)]
    [InlineData(Own, "same-origin", true)]
    [InlineData(null, "same-origin", true)]
    [InlineData(null, null, false)]
    [InlineData(null, "none", false)]
    [InlineData(null, "same-site", false)]
    [InlineData(null, "cross-site", false)]
    [InlineData(Own, "same-site", false)]
    [InlineData(Own, "cross-site", false)]
    [InlineData("null", null, false)]
    [InlineData("null", "same-origin", false)]
    [InlineData("http://elsewhere.example", null, false)]
    [InlineData("http://127.0.0.1:1", null, false)]
    [InlineData("http://127.0.0.1", null, false)]
    [InlineData("file:///index.html", null, false)]
    public async Task Changes_are_taken_from_our_own_pages_only(string? origin, string? site, bool taken)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        var project = await host.CreateAsync("{}");
        using var client = host.NewClient();
        foreach (var (method, path, body) in new[]
        {
            (HttpMethod.Post, ApiPaths.Projects, "{}"),
            (HttpMethod.Put, ApiPaths.Project(project.Id), "{}"),
            (HttpMethod.Post, ApiPaths.Copy(project.Id), null),
            (HttpMethod.Post, ApiPaths.Archive(project.Id), null),
            (HttpMethod.Post, ApiPaths.Restore(project.Id), null),
            (HttpMethod.Post, ApiPaths.RestoreVersion(project.Id, 1), null),
            (HttpMethod.Delete, ApiPaths.Project(project.Id), null),
            (HttpMethod.Put, ApiPaths.Making(project.Id), "{}"),
            (HttpMethod.Delete, ApiPaths.Making(project.Id), null),
            (HttpMethod.Post, ApiPaths.Handovers(project.Id), "{}"),
            (HttpMethod.Delete, ApiPaths.Handover(project.Id, project.Id), null),
            (HttpMethod.Put, ApiPaths.HandedLog(project.Id), "{}"),
            (HttpMethod.Delete, ApiPaths.Log(project.Id, project.Id), null),
        })
        {
            using var request = new HttpRequestMessage(method, path) { Content = body is null ? null : RunningHost.Json(body) };
            if (origin is not null)
                request.Headers.Add("Origin", origin == Own ? host.Address.GetLeftPart(UriPartial.Authority) : origin);
            if (site is not null)
                request.Headers.Add("Sec-Fetch-Site", site);
            using var answer = await client.SendAsync(request);
            if (taken)
                Assert.NotEqual(HttpStatusCode.Forbidden, answer.StatusCode);
            else
                await RunningHost.ProblemAsync(HttpStatusCode.Forbidden, answer);
        }
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData(null)]
    public async Task Only_json_is_taken(string? type)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        foreach (var (method, path) in new[] { (HttpMethod.Post, ApiPaths.Projects), (HttpMethod.Put, ApiPaths.HandedLog("x")) })
        {
            var content = new ByteArrayContent(Encoding.UTF8.GetBytes("{}"));
            if (type is not null)
                content.Headers.TryAddWithoutValidation("Content-Type", type);
            using var request = new HttpRequestMessage(method, path) { Content = content };
            using var answer = await host.Client.SendAsync(request);
            await RunningHost.ProblemAsync(HttpStatusCode.UnsupportedMediaType, answer);
        }
    }

    [Fact]
    public async Task No_other_origin_is_ever_allowed_to_read()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var client = host.NewClient();
        using var preflight = new HttpRequestMessage(HttpMethod.Options, ApiPaths.Projects)
        {
            Headers = { { "Origin", "http://elsewhere.example" }, { "Access-Control-Request-Method", "PUT" } },
        };
        using var refused = await client.SendAsync(preflight);
        await RunningHost.ProblemAsync(HttpStatusCode.Forbidden, refused);
        using var read = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects)
        {
            Headers = { { "Origin", "http://elsewhere.example" } },
        };
        using var answer = await client.SendAsync(read);
        foreach (var headers in new[] { refused.Headers, answer.Headers })
            Assert.DoesNotContain(headers, h => h.Key.StartsWith("Access-Control", StringComparison.OrdinalIgnoreCase));
    }
}
