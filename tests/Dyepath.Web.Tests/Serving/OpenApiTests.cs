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
        "post /api/projects/{id}/versions/{number}/restore", "get /api/demo",
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
    [InlineData("api")]
    [InlineData("api/typo")]
    [InlineData("api/projects/x/typo")]
    [InlineData("api/projects/x/versions/one")]
    public async Task An_unknown_address_of_the_api_is_no_page(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var answer = await host.Client.GetAsync(path);
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, answer);
    }
}
