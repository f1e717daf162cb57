using System.Net;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

/// <summary>What a host that asks for a token serves without it, and what it does not.</summary>
public sealed class OpenAddressTests(GuardedHost guarded) : IClassFixture<GuardedHost>
{
    private readonly RunningHost _host = guarded.Running;

    [Theory]
    [InlineData(ApiPaths.Projects)]
    [InlineData("")]
    [InlineData("health/live")]
    [InlineData("openapi/v1.json")]
    [InlineData("sign-in/../api/projects")]
    [InlineData(ApiPaths.Makings)]
    [InlineData("api/handed/../makings")]
    [InlineData("api/handed/typo")]
    [InlineData("api/projects/x/handovers")]
    [InlineData("api/projects/x/logs")]
    [InlineData(ApiPaths.Demo)]
    [InlineData("yarn")]
    [InlineData("maker")]
    [InlineData("make/../yarn")]
    [InlineData("no/such/file.js")]
    [InlineData("appsettings.json")]
    [InlineData(ApiPaths.Session)]
    [InlineData(ApiPaths.Devices)]
    public async Task All_that_is_the_designer_s_is_asked_for_the_token(string path)
    {
        using var answer = await _host.Client.GetAsync(path);
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, answer);
        Assert.Equal("Bearer", answer.Headers.WwwAuthenticate.ToString());
    }

    /// <summary>A maker to whom a piece was handed over has no token, and nothing here is the designer's.</summary>
    [Theory]
    [InlineData("index.html", "text/html")]
    [InlineData("css/app.css", "text/css")]
    [InlineData("icon.svg", "image/svg+xml")]
    [InlineData("service-worker.js", "text/javascript")]
    [InlineData("_framework/blazor.webassembly.js", "text/javascript")]
    [InlineData("make", "text/html")]
    [InlineData("make/", "text/html")]
    [InlineData("make/from", "text/html")]
    [InlineData("make/0123456789ABCDEFGHIJKLMNOP", "text/html")]
    public async Task The_program_s_own_files_and_the_page_for_making_are_served_to_everyone(string path, string type)
    {
        foreach (var method in new[] { HttpMethod.Get, HttpMethod.Head })
        {
            using var request = new HttpRequestMessage(method, path) { Headers = { Accept = { new("text/html") } } };
            using var answer = await _host.NewClient().SendAsync(request);
            Assert.Equal((HttpStatusCode.OK, type), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        }
        using var change = await _host.Client.PostAsync(path, RunningHost.Json("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, change);
    }

    [Theory]
    [InlineData("yarn")]
    [InlineData("no/such/page")]
    public async Task Of_the_other_pages_a_browser_is_sent_to_sign_in(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Accept = { new("text/html") } } };
        using var answer = await _host.Client.SendAsync(request);
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in"), (answer.StatusCode, answer.Headers.Location!.OriginalString));
    }
}
