using System.Net;
using System.Net.Http.Json;
using Dyepath.Contracts;
using Dyepath.Web.Protection;
using Dyepath.Web.Serving;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Web.Tests.Protection;

/// <summary>A host that asks for a token, over https with a certificate that it made.</summary>
public sealed class AccessTokenTests(Hosts hosts) : IAsyncLifetime
{
    private const string Token = "correct-horse-battery";

    private RunningHost _host = null!;
    private HttpClient _client = null!;

    public async ValueTask InitializeAsync()
    {
        _host = await RunningHost.StartAsync(new HostSettings(
            hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0, AccessToken: Token, MakeCertificate: true));
        _client = _host.NewClient();
        _client.DefaultRequestHeaders.Add("Origin", _host.Address.GetLeftPart(UriPartial.Authority));
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _host.DisposeAsync();
    }

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
    public async Task All_that_is_the_designer_s_is_asked_for_the_token(string path)
    {
        using var answer = await _client.GetAsync(path);
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
        using var change = await _client.PostAsync(path, RunningHost.Json("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, change);
    }

    [Theory]
    [InlineData("yarn")]
    [InlineData("no/such/page")]
    public async Task Of_the_other_pages_a_browser_is_sent_to_sign_in(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Accept = { new("text/html") } } };
        using var answer = await _client.SendAsync(request);
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in"), (answer.StatusCode, answer.Headers.Location!.OriginalString));
    }

    [Fact]
    public async Task A_handed_piece_is_opened_and_its_log_sent_without_the_token_and_nothing_else()
    {
        using var designer = _host.NewClient();
        designer.DefaultRequestHeaders.Authorization = new("Bearer", Token);
        designer.DefaultRequestHeaders.Add("Origin", _host.Address.GetLeftPart(UriPartial.Authority));
        using var created = await designer.PostAsync(ApiPaths.Projects, RunningHost.Json(RunningHost.Demo));
        var project = (await RunningHost.SummaryAsync(created)).Id;
        using var given = await designer.PostAsync(ApiPaths.Handovers(project), RunningHost.Json("""{ "size": "M" }"""));
        var key = (await given.Content.ReadFromJsonAsync(ContractsJson.Default.Handover))!.Key;
        const string making = "0123456789ABCDEFGHIJKLMNOP";

        using var opened = await _host.OpenAsync(key);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
        using var sent = await _host.SendLogAsync(key, making, await opened.Content.ReadAsStringAsync());
        Assert.Equal(HttpStatusCode.NoContent, sent.StatusCode);
        using var wrong = await _host.OpenAsync(key[1..]);
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, wrong);

        _client.DefaultRequestHeaders.Add(ApiPaths.HandedKeyHeader, key);
        foreach (var path in new[] { ApiPaths.Projects, ApiPaths.Project(project), ApiPaths.Handovers(project), ApiPaths.Logs(project), ApiPaths.Makings })
        {
            using var answer = await _client.GetAsync(path);
            await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, answer);
        }
        using var put = await _client.PutAsync(ApiPaths.Making(making), RunningHost.Json("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, put);
        using var asked = await designer.GetAsync(ApiPaths.Logs(project));
        Assert.Single((await asked.Content.ReadFromJsonAsync(ContractsJson.Default.MakerLogArray))!);
    }

    [Fact]
    public async Task Wrong_keys_do_not_keep_the_designer_out()
    {
        for (var guess = 0; guess < 11; guess++)
            (await _host.OpenAsync($"{guess}")).Dispose();
        using var stopped = await _host.OpenAsync("one more");
        await RunningHost.ProblemAsync(HttpStatusCode.TooManyRequests, stopped);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Authorization = new("Bearer", Token)));
    }

    [Fact]
    public async Task A_handed_piece_is_checked_as_all_else_is()
    {
        using var foreign = await _host.NewClient().PutAsync(ApiPaths.HandedLog("x"), RunningHost.Json("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Forbidden, foreign);
        // Nothing takes such a request, so nothing says that it is open.
        using var text = await _client.PutAsync(ApiPaths.HandedLog("x"), new StringContent("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, text);
    }

    [Fact]
    public async Task A_program_sends_the_token_as_bearer()
    {
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Authorization = new("Bearer", Token)));
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(r => r.Headers.Authorization = new("Basic", Token)));
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(r => r.Headers.Authorization = new("Bearer", Token[..^1])));
    }

    [Fact]
    public async Task A_browser_is_sent_to_the_page_that_takes_the_token_for_a_cookie()
    {
        using var page = new HttpRequestMessage(HttpMethod.Get, "") { Headers = { Accept = { new("text/html") } } };
        using var sent = await _client.SendAsync(page);
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in"), (sent.StatusCode, sent.Headers.Location!.OriginalString));
        using var form = await _client.GetAsync("sign-in");
        Assert.Equal("same-origin", Assert.Single(form.Headers.GetValues("Referrer-Policy")));
        Assert.Contains("<script src=\"/sign-in.js\"></script>", await form.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains("location.hash", await _client.GetStringAsync("sign-in.js"), StringComparison.Ordinal);

        using var wrong = await SignInAsync("wrong");
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.False(wrong.Headers.Contains("Set-Cookie"));

        using var right = await SignInAsync(Token);
        Assert.Equal((HttpStatusCode.SeeOther, "/"), (right.StatusCode, right.Headers.Location!.OriginalString));
        var cookie = Assert.Single(right.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("__Host-dyepath=", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, cookie, StringComparison.Ordinal);
        foreach (var attribute in new[] { "httponly", "secure", "samesite=strict", "path=/", "expires=" })
            Assert.Contains($"; {attribute}", cookie, StringComparison.Ordinal);

        var value = cookie.Split(';')[0];
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Add("Cookie", value)));
        var (stamp, seal) = (value.Split('=', 2)[1].Split('.')[0], value.Split('.')[1]);
        foreach (var forged in new[] { $"{stamp}.{seal[..^1]}", $"9{stamp}.{seal}", stamp, $"{stamp}.", $".{seal}", "", "x.y.z" })
            Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(r => r.Headers.Add("Cookie", $"__Host-dyepath={forged}")));
    }

    [Fact]
    public async Task A_page_elsewhere_cannot_sign_in()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "sign-in")
        {
            Content = new FormUrlEncodedContent([new("token", Token)]),
            Headers = { { "Origin", "https://elsewhere.example" } },
        };
        using var answer = await _host.NewClient().SendAsync(request);
        await RunningHost.ProblemAsync(HttpStatusCode.Forbidden, answer);
    }

    [Fact]
    public async Task Guessing_is_stopped_but_who_is_signed_in_goes_on()
    {
        using var signedIn = await SignInAsync(Token);
        var cookie = signedIn.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        for (var guess = 0; guess < 10; guess++)
        {
            if (guess % 2 == 0)
                Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(r => r.Headers.Authorization = new("Bearer", $"guess-{guess}")));
            else
                (await SignInAsync($"guess-{guess}")).Dispose();
        }
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(r => r.Headers.Authorization = new("Bearer", Token)));
        using var stopped = await SignInAsync(Token);
        await RunningHost.ProblemAsync(HttpStatusCode.TooManyRequests, stopped);
        Assert.NotNull(stopped.Headers.RetryAfter);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Add("Cookie", cookie)));
    }

    [Fact]
    public async Task A_cookie_runs_out_after_a_month_and_with_another_token()
    {
        var clock = new Clock { Now = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero) };
        using var token = new AccessToken(Token, clock);
        var given = new DefaultHttpContext();
        token.GiveCookie(given);
        var cookie = given.Response.Headers.SetCookie.ToString().Split(';')[0];

        clock.Now = clock.Now.AddDays(30).AddSeconds(-1);
        Assert.Equal(StatusCodes.Status200OK, await ThroughAsync(token, cookie));
        using var other = new AccessToken("another-token-altogether", clock);
        Assert.Equal(StatusCodes.Status401Unauthorized, await ThroughAsync(other, cookie));
        clock.Now = clock.Now.AddSeconds(2);
        Assert.Equal(StatusCodes.Status401Unauthorized, await ThroughAsync(token, cookie));
    }

    private static async Task<int> ThroughAsync(AccessToken token, string cookie)
    {
        using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        var context = new DefaultHttpContext { Request = { Path = "/api/projects" }, RequestServices = services };
        context.Request.Headers.Cookie = cookie;
        await new AccessToken.Check(_ => Task.CompletedTask, token).InvokeAsync(context);
        return context.Response.StatusCode;
    }

    private async Task<HttpStatusCode> AskAsync(Action<HttpRequestMessage> with)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects);
        with(request);
        using var answer = await _client.SendAsync(request);
        return answer.StatusCode;
    }

    private Task<HttpResponseMessage> SignInAsync(string token) =>
        _client.PostAsync("sign-in", new FormUrlEncodedContent([new("token", token)]));

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
