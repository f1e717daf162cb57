using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

public class SecurityHeaderTests(Hosts hosts)
{
    [Theory]
    [InlineData(ApiPaths.Projects)]
    [InlineData(ApiPaths.Projects + "/nowhere")]
    [InlineData("api/unknown")]
    [InlineData("health/ready")]
    [InlineData("openapi/v1.json")]
    [InlineData("no/such/page")]
    [InlineData("make/from")]
    [InlineData("index.html")]
    [InlineData(ApiPaths.Handed)]
    public async Task Every_answer_says_what_browsers_are_to_refuse(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var answer = await host.Client.GetAsync(path);
        Check(answer);
    }

    [Fact]
    public async Task Refusals_say_it_too()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var answer = await host.NewClient().PostAsync(ApiPaths.Projects, null);
        Check(answer);
        using var large = await host.Client.PostAsync(ApiPaths.Projects, RunningHost.Json(new string('x', 2_000_001)));
        Check(large);
    }

    private static void Check(HttpResponseMessage answer)
    {
        string Header(string name) => Assert.Single(answer.Headers.GetValues(name));
        var policy = Header("Content-Security-Policy").Split("; ").Select(d => d.Split(' ', 2)).ToDictionary(d => d[0], d => d[1]);
        Assert.Equal("'self'", policy["default-src"]);
        Assert.Equal("'self' 'wasm-unsafe-eval'", policy["script-src"]);
        Assert.Equal("'self' data: blob:", policy["img-src"]);
        Assert.Equal("'self'", policy["worker-src"]);
        Assert.Equal("'self'", policy["connect-src"]);
        Assert.Equal("'none'", policy["frame-ancestors"]);
        Assert.Equal("nosniff", Header("X-Content-Type-Options"));
        Assert.Equal("no-referrer", Header("Referrer-Policy"));
        Assert.Equal("same-origin", Header("Cross-Origin-Opener-Policy"));
        Assert.Equal("same-origin", Header("Cross-Origin-Resource-Policy"));
        Assert.Contains("microphone=()", Header("Permissions-Policy"), StringComparison.Ordinal);
        Assert.Contains("screen-wake-lock=(self)", Header("Permissions-Policy"), StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Server"));
    }
}
