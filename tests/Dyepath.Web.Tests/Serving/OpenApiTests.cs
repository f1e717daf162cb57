using System.Net;
using System.Text.Json;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Serving;

public class OpenApiTests(Hosts hosts)
{
    private static readonly string[] Endpoints =
    [
        "get /api/projects", "post /api/projects", "get /api/projects/{id}", "put /api/projects/{id}", "delete /api/projects/{id}",
        "post /api/projects/{id}/archive", "post /api/projects/{id}/restore", "post /api/projects/{id}/copy",
        "get /api/projects/{id}/versions", "get /api/projects/{id}/versions/{number}",
        "post /api/projects/{id}/versions/{number}/restore", "post /api/projects/{id}/editions", "delete /api/projects/{id}/editions/{edition}",
        "get /api/demo",
        "get /api/makings", "get /api/makings/{id}", "put /api/makings/{id}", "delete /api/makings/{id}",
        "get /api/projects/{id}/handovers", "post /api/projects/{id}/handovers", "delete /api/projects/{id}/handovers/{handover}",
        "get /api/projects/{id}/logs", "get /api/projects/{id}/logs/{log}", "delete /api/projects/{id}/logs/{log}",
        "get /api/session", "get /api/handed", "put /api/handed/logs/{makingId}",
    ];

    [Fact]
    public async Task Every_endpoint_is_described()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var document = JsonDocument.Parse(await host.Client.GetStringAsync("openapi/v1.json"));
        var described = document.RootElement.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Select(method => $"{method.Name} {path.Name}")).Order();
        Assert.Equal(
            Endpoints.Order(),
            described);
    }

    [Theory]
    [InlineData("POST", "yarn")]
    [InlineData("PATCH", "icon.svg")]
    [InlineData("UNHEARD-OF", "make/from")]
    public async Task What_cannot_be_done_at_an_address_is_said_in_words(string method, string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var answer = await host.Client.SendAsync(request);
        await RunningHost.ProblemAsync(HttpStatusCode.MethodNotAllowed, answer);
    }

    [Theory]
    [InlineData("api")]
    [InlineData("api/typo")]
    [InlineData("api/projects/x/typo")]
    [InlineData("api/projects/x/versions/one")]
    [InlineData("api/handed/typo")]
    [InlineData("api/handed/logs")]
    public async Task An_unknown_address_of_the_api_is_no_page(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var answer = await host.Client.GetAsync(path);
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, answer);
    }
}
