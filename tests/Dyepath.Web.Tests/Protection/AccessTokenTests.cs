using System.Net;
using System.Net.Http.Json;
using Dyepath.Contracts;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Tests.Protection;

/// <summary>A host that asks for a token, over https with a certificate that it made.</summary>
public sealed class AccessTokenTests(Hosts hosts) : IAsyncLifetime
{
    private const string Token = GuardedHost.Token;

    private RunningHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await RunningHost.StartAsync(new HostSettings(
        hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0, AccessToken: Token, MakeCertificate: true));

    public ValueTask DisposeAsync() => _host.DisposeAsync();

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

        _host.Client.DefaultRequestHeaders.Add(ApiPaths.HandedKeyHeader, key);
        foreach (var path in new[] { ApiPaths.Projects, ApiPaths.Project(project), ApiPaths.Handovers(project), ApiPaths.Logs(project), ApiPaths.Makings })
        {
            using var answer = await _host.Client.GetAsync(path);
            await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, answer);
        }
        using var put = await _host.Client.PutAsync(ApiPaths.Making(making), RunningHost.Json("{}"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, put);
        using var asked = await designer.GetAsync(ApiPaths.Logs(project));
        Assert.Single((await asked.Content.ReadFromJsonAsync(ContractsJson.Default.ReceivedLogArray))!);
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
        using var text = await _host.Client.PutAsync(ApiPaths.HandedLog("x"), new StringContent("{}"));
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
        using var sent = await _host.Client.SendAsync(page);
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in"), (sent.StatusCode, sent.Headers.Location!.OriginalString));
        using var form = await _host.Client.GetAsync("sign-in");
        Assert.Equal("same-origin", Assert.Single(form.Headers.GetValues("Referrer-Policy")));
        Assert.Contains("<script src=\"/sign-in.js\"></script>", await form.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains("location.hash", await _host.Client.GetStringAsync("sign-in.js"), StringComparison.Ordinal);

        using var wrong = await _host.SignInAsync("wrong");
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.False(wrong.Headers.Contains("Set-Cookie"));

        using var right = await _host.SignInAsync(Token);
        Assert.Equal((HttpStatusCode.SeeOther, "/"), (right.StatusCode, right.Headers.Location!.OriginalString));
        var cookie = Assert.Single(right.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("__Host-dyepath=", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, cookie, StringComparison.Ordinal);
        foreach (var attribute in new[] { "httponly", "secure", "samesite=strict", "path=/", "expires=" })
            Assert.Contains($"; {attribute}", cookie, StringComparison.Ordinal);

        var value = cookie.Split(';')[0];
        Assert.Matches("^__Host-dyepath=[0-9A-Za-z_-]{43}$", value);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Add("Cookie", value)));
        var key = value.Split('=')[1];
        foreach (var forged in new[] { key[..^1], key + "A", $"A{key[1..]}", "", "x.y.z", new string('A', 43), new string('A', 3_000) })
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
        using var signedIn = await _host.SignInAsync(Token);
        var cookie = RunningHost.CookieOf(signedIn);
        for (var guess = 0; guess < 10; guess++)
        {
            if (guess % 2 == 0)
                Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(r => r.Headers.Authorization = new("Bearer", $"guess-{guess}")));
            else
                (await _host.SignInAsync($"guess-{guess}")).Dispose();
        }
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(r => r.Headers.Authorization = new("Bearer", Token)));
        using var stopped = await _host.SignInAsync(Token);
        Assert.Equal((HttpStatusCode.TooManyRequests, "text/html"), (stopped.StatusCode, stopped.Content.Headers.ContentType!.MediaType));
        Assert.Contains("Wait a minute, then try again.", await stopped.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.NotNull(stopped.Headers.RetryAfter);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(r => r.Headers.Add("Cookie", cookie)));
    }

    private async Task<HttpStatusCode> AskAsync(Action<HttpRequestMessage> with)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects);
        with(request);
        using var answer = await _host.Client.SendAsync(request);
        return answer.StatusCode;
    }
}
