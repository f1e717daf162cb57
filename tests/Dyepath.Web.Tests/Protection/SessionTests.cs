using System.Net;
using System.Text.RegularExpressions;
using Dyepath.Contracts;
using Dyepath.Storage;
using Dyepath.Storage.Sessions;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Tests.Protection;

/// <summary>Devices that sign in and out, on hosts that ask for a token.</summary>
public abstract partial class SessionTests(Hosts hosts, DatabaseKind kind) : IAsyncLifetime
{
    private const string Token = GuardedHost.Token;

    private const string Firefox = "Mozilla/5.0 (X11; Linux x86_64; rv:150.0) Gecko/20100101 Firefox/150.0";

    private const string Phone = "Mozilla/5.0 (iPhone; CPU iPhone OS 19_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/19.0 Mobile/15E148 Safari/604.1";

    private readonly SetClock _clock = new();

    private readonly DatabaseChoice _database = hosts.Databases.NewDatabase(kind);

    private RunningHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await StartAsync(Token);

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return _host.DisposeAsync();
    }

    [Fact]
    public async Task Signing_out_ends_the_session_and_takes_the_cookie_back()
    {
        var (cookie, other) = (await SignInAsync(Firefox), await SignInAsync(Firefox));
        Assert.NotEqual(cookie, other);
        Assert.Equal("""{"signedIn":true}""", await (await GetAsync(ApiPaths.Session, cookie)).Content.ReadAsStringAsync());
        using var bearer = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Session) { Headers = { { "Authorization", $"Bearer {Token}" } } };
        Assert.Equal("""{"signedIn":false}""", await (await _host.Client.SendAsync(bearer)).Content.ReadAsStringAsync());

        using var left = await PostAsync(ApiPaths.SignOut, cookie);
        Assert.Equal((HttpStatusCode.SeeOther, "/sign-in/out"), (left.StatusCode, left.Headers.Location!.OriginalString));
        Assert.Matches("^dyepath=; expires=Thu, 01 Jan 1970 .*samesite=strict", Assert.Single(left.Headers.GetValues("Set-Cookie")));
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, cookie)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, other)).StatusCode);
        Assert.Contains("You are signed out", await (await GetAsync(ApiPaths.SignOut, null)).Content.ReadAsStringAsync(), StringComparison.Ordinal);

        // Who has no session, or none any more, signs out without a fault.
        foreach (var nothing in new[] { cookie, null, "dyepath=x" })
        {
            using var again = await PostAsync(ApiPaths.SignOut, nothing);
            Assert.Equal(HttpStatusCode.SeeOther, again.StatusCode);
        }
    }

    [Fact]
    public async Task Devices_are_listed_by_plain_names_and_one_can_be_signed_out()
    {
        var phone = await SignInAsync(Phone);
        _clock.Now = _clock.Now.AddDays(2);
        var own = await SignInAsync(Firefox);
        var page = await PageAsync(own);
        var items = Item().Matches(page).Select(m => m.Value).ToArray();
        Assert.Equal(2, items.Length);
        Assert.Contains("Firefox on Linux", items[0], StringComparison.Ordinal);
        Assert.Contains("this device", items[0], StringComparison.Ordinal);
        Assert.Contains("Last seen within the last hour, signed in just now", items[0], StringComparison.Ordinal);
        Assert.Contains("Safari on iPhone", items[1], StringComparison.Ordinal);
        Assert.DoesNotContain("this device", items[1], StringComparison.Ordinal);
        Assert.Contains("Last seen 2 days ago, signed in 2 days ago", items[1], StringComparison.Ordinal);
        Assert.DoesNotContain("AppleWebKit", page, StringComparison.Ordinal);
        Assert.DoesNotContain(own.Split('=')[1], page, StringComparison.Ordinal);

        using var ended = await PostAsync(ApiPaths.Devices, own, ("end", Id(items[1])));
        Assert.Equal((HttpStatusCode.SeeOther, "/sign-in/devices"), (ended.StatusCode, ended.Headers.Location!.OriginalString));
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, phone)).StatusCode);
        Assert.Single(Item().Matches(await PageAsync(own)));
        using var self = await PostAsync(ApiPaths.Devices, own, ("end", Id(items[0])));
        Assert.Equal("/sign-in/out", self.Headers.Location!.OriginalString);
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, own)).StatusCode);
    }

    [Fact]
    public async Task All_devices_are_signed_out_at_once_on_every_host()
    {
        await using var other = await StartAsync(Token);
        var (own, phone) = (await SignInAsync(Firefox), await SignInAsync(Phone));
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, phone, other)).StatusCode);
        using var ended = await PostAsync(ApiPaths.Devices, own, ("end", "everywhere"));
        Assert.Equal("/sign-in/out", ended.Headers.Location!.OriginalString);
        foreach (var host in new[] { _host, other })
        {
            foreach (var cookie in new[] { own, phone })
                Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, cookie, host)).StatusCode);
        }
    }

    [Fact]
    public async Task Only_who_is_signed_in_ends_sessions_and_only_from_our_own_page()
    {
        var own = await SignInAsync(Firefox);
        using var stranger = await PostAsync(ApiPaths.Devices, null, ("end", "everywhere"));
        await RunningHost.ProblemAsync(HttpStatusCode.Unauthorized, stranger);
        foreach (var path in new[] { ApiPaths.Devices, ApiPaths.SignOut, ApiPaths.SignIn })
        {
            using var client = _host.NewClient();
            using var request = new HttpRequestMessage(HttpMethod.Post, path)
            {
                Content = new FormUrlEncodedContent([new("end", "everywhere"), new("token", Token)]),
                Headers = { { "Origin", "http://elsewhere.example" }, { "Cookie", own } },
            };
            using var foreign = await client.SendAsync(request);
            await RunningHost.ProblemAsync(HttpStatusCode.Forbidden, foreign);
        }
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, own)).StatusCode);
        foreach (var end in new[] { "nothing", "", "01a213eb-a650-7c83-a879-5f4dba01ca42", "' OR 1=1 --" })
            (await PostAsync(ApiPaths.Devices, own, ("end", end))).Dispose();
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, own)).StatusCode);
    }

    [Fact]
    public async Task A_device_that_is_not_ours_is_cleared()
    {
        var own = await SignInAsync(Firefox);
        using var ended = await PostAsync(ApiPaths.Devices, own, ("end", "clear"));
        Assert.Contains("told to clear", await ended.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.OK, null), (ended.StatusCode, ended.Headers.Location));
        Assert.Equal("\"cache\", \"cookies\", \"storage\"", Assert.Single(ended.Headers.GetValues("Clear-Site-Data")));
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, own)).StatusCode);
    }

    [Fact]
    public async Task A_session_survives_a_restart_and_ends_with_another_token()
    {
        var cookie = await SignInAsync(Firefox);
        await using (var again = await StartAsync(Token))
            Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, cookie, again)).StatusCode);
        await using (var other = await StartAsync("another-token-altogether"))
            Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, cookie, other)).StatusCode);
        // Going back to the first token brings no device back.
        await using var back = await StartAsync(Token);
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, cookie, back)).StatusCode);
    }

    [Fact]
    public async Task A_session_ends_when_it_is_not_used_and_after_half_a_year_even_if_it_is()
    {
        var (idle, used) = (await SignInAsync(Phone), await SignInAsync(Firefox));
        var begun = _clock.Now;
        for (_clock.Now = begun; _clock.Now < begun + SessionStore.Longest; _clock.Now += SessionStore.LongestIdle - TimeSpan.FromSeconds(1))
            Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, used)).StatusCode);
        _clock.Now = begun + SessionStore.LongestIdle;
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, idle)).StatusCode);
        _clock.Now = begun + SessionStore.Longest - TimeSpan.FromSeconds(1);
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(ApiPaths.Projects, used)).StatusCode);
        _clock.Now = begun + SessionStore.Longest;
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, used)).StatusCode);
    }

    [Fact]
    public async Task Signing_in_again_gives_another_session_and_ends_the_one_before()
    {
        var first = await SignInAsync(Firefox);
        var second = await SignInAsync(Firefox, first);
        Assert.NotEqual(first, second);
        Assert.Equal(HttpStatusCode.Unauthorized, (await GetAsync(ApiPaths.Projects, first)).StatusCode);
        Assert.Single(Item().Matches(await PageAsync(second)));
    }

    private Task<RunningHost> StartAsync(string token) => RunningHost.StartAsync(new HostSettings(_database, 0, AccessToken: token), _clock);

    private async Task<string> SignInAsync(string browser, string? cookie = null)
    {
        using var answer = await _host.SignInAsync(Token, browser, cookie);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return RunningHost.CookieOf(answer);
    }

    private Task<HttpResponseMessage> GetAsync(string path, string? cookie, RunningHost? host = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (cookie is not null)
            request.Headers.Add("Cookie", cookie);
        return (host ?? _host).Client.SendAsync(request);
    }

    private Task<HttpResponseMessage> PostAsync(string path, string? cookie, params (string Name, string Value)[] fields)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path);
        if (fields.Length > 0)
            request.Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        if (cookie is not null)
            request.Headers.Add("Cookie", cookie);
        return _host.Client.SendAsync(request);
    }

    private async Task<string> PageAsync(string cookie)
    {
        using var answer = await GetAsync(ApiPaths.Devices, cookie);
        Assert.Equal((HttpStatusCode.OK, "text/html"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.Equal("no-store", answer.Headers.CacheControl!.ToString());
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        return await answer.Content.ReadAsStringAsync();
    }

    private static string Id(string item) => Value().Match(item).Groups[1].Value;

    [GeneratedRegex("<li>.*?</li>", RegexOptions.Singleline)]
    private static partial Regex Item();

    [GeneratedRegex("value=\"([^\"]+)\"")]
    private static partial Regex Value();
}

public class SqliteSessionTests(Hosts hosts) : SessionTests(hosts, DatabaseKind.Sqlite);

public class PostgresSessionTests(Hosts hosts) : SessionTests(hosts, DatabaseKind.Postgres);
