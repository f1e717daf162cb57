using System.Net;
using Dyepath.Contracts;
using Dyepath.Web.Protection;
using Dyepath.Web.Serving;
using Microsoft.AspNetCore.Http;

namespace Dyepath.Web.Tests.Protection;

/// <summary>Guesses at the access token from many addresses, as a proxy that is believed tells them.</summary>
public sealed class GuessingTests(Hosts hosts)
{
    private const string Token = GuardedHost.Token;

    [Fact]
    public async Task Ten_wrong_ones_from_an_address_stop_that_address_alone()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        Assert.Equal(HttpStatusCode.TooManyRequests, await WrongAsync(host, 11, _ => "198.51.100.7"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(host, "198.51.100.7", Token));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(host, "::ffff:198.51.100.7", Token));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, "198.51.100.8", Token));
    }

    [Fact]
    public async Task A_household_of_many_ipv6_addresses_is_one()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        Assert.Equal(HttpStatusCode.TooManyRequests, await WrongAsync(host, 11, n => $"2001:db8:1:2::{n + 1:x}"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(host, "2001:db8:1:2:ffff::1", Token));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, "2001:db8:1:3::1", Token));
    }

    [Fact]
    public async Task What_a_provider_gives_one_customer_has_a_limit_too()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        Assert.Equal(HttpStatusCode.TooManyRequests, await WrongAsync(host, 41, n => $"2001:db8:1:{n:x}::1"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(host, "2001:db8:1:ffff::1", Token));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, "2001:db8:2::1", Token));
    }

    [Fact]
    public async Task Guesses_sent_together_are_counted_one_by_one()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        var answers = await Task.WhenAll(Enumerable.Range(0, 60).Select(n => AskAsync(host, "198.51.100.7", $"guess-{n}")));
        Assert.Equal(10, answers.Count(status => status == HttpStatusCode.Unauthorized));
    }

    [Fact]
    public async Task Nobody_else_is_believed_about_addresses()
    {
        await using var plain = await StartAsync();
        await using var elsewhere = await StartAsync("192.0.2.0/24");
        foreach (var host in new[] { plain, elsewhere })
        {
            Assert.Equal(HttpStatusCode.TooManyRequests, await WrongAsync(host, 11, n => $"198.51.100.{n}"));
            Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(host, "203.0.113.9", Token));
        }
    }

    /// <summary>A client can write the header too: what stands left of the proxy's own word is not believed.</summary>
    [Fact]
    public async Task Only_the_proxy_s_own_word_is_believed()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        Assert.Equal(HttpStatusCode.TooManyRequests, await WrongAsync(host, 11, n => $"203.0.113.{n}, 198.51.100.7"));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, "198.51.100.7, 203.0.113.9", Token));
    }

    [Fact]
    public async Task Behind_a_proxy_that_speaks_https_the_cookie_is_for_https_only()
    {
        await using var host = await StartAsync("127.0.0.1/32");
        using var request = new HttpRequestMessage(HttpMethod.Post, ApiPaths.SignIn)
        {
            Content = new FormUrlEncodedContent([new("token", Token)]),
            Headers = { { "X-Forwarded-Proto", "https" }, { "X-Forwarded-For", "198.51.100.7" }, { "Origin", $"https://127.0.0.1:{host.Address.Port}" } },
        };
        using var answer = await host.NewClient().SendAsync(request);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Matches("^__Host-dyepath=.*; secure", Assert.Single(answer.Headers.GetValues("Set-Cookie")));
    }

    [Fact]
    public async Task Guesses_from_everywhere_slow_strangers_down_and_shut_nobody_out()
    {
        const int beyond = 20;
        var clock = new HeldClock();
        await using var host = await StartAsync(clock, "127.0.0.1/32");
        using var signIn = await host.SignInAsync(Token);
        var cookie = RunningHost.CookieOf(signIn);
        for (var n = 0; n < SlowLane.WrongInAMinute; n++)
            Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(host, $"203.0.113.{n}", "guess"));

        // As many strangers as there are places, and more; each of them is a network of its own.
        var strangers = Enumerable.Range(0, SlowLane.Places + beyond).Select(n => AskAsync(host, $"198.51.100.{n}", "guess")).ToArray();
        await foreach (var refused in Task.WhenEach(strangers).Take(beyond))
            Assert.Equal(HttpStatusCode.TooManyRequests, await refused);
        // Who is signed in does not notice, nor does who sits at the computer itself.
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects) { Headers = { { "Cookie", cookie } } };
        Assert.Equal(HttpStatusCode.OK, (await host.NewClient().SendAsync(request)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, null, Token));
        Assert.Equal(SlowLane.Places, strangers.Count(s => !s.IsCompleted));
        clock.LetGoOn();
        var answers = await Task.WhenAll(strangers);
        Assert.Equal(SlowLane.Places, answers.Count(status => status == HttpStatusCode.Unauthorized));
        // The designer elsewhere waits, and is let in.
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host, "192.0.2.1", Token));
    }

    [Fact]
    public void What_is_remembered_is_bounded()
    {
        var limit = new FailureLimit(TimeProvider.System);
        for (var n = 0u; n < 3 * FailureLimit.MostRemembered; n++)
            limit.Count(From(new IPAddress([0x20, 1, (byte)(n >> 24), (byte)(n >> 16), (byte)(n >> 8), (byte)n, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1])));
        Assert.InRange(limit.Remembered, 1, FailureLimit.MostRemembered);
    }

    private static DefaultHttpContext From(IPAddress address) => new() { Connection = { RemoteIpAddress = address } };

    private Task<RunningHost> StartAsync(params string[] proxies) => StartAsync(clock: null, proxies);

    /// <param name="clock">Missing: the system's.</param>
    private Task<RunningHost> StartAsync(TimeProvider? clock, params string[] proxies) => RunningHost.StartAsync(
        new HostSettings(
            hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0, AccessToken: Token)
        { Proxies = [.. proxies.Select(IPNetwork.Parse)] },
        clock);

    /// <returns>What the last of so many wrong tokens led to.</returns>
    private static async Task<HttpStatusCode> WrongAsync(RunningHost host, int times, Func<int, string> from)
    {
        var last = HttpStatusCode.OK;
        for (var n = 0; n < times; n++)
            last = await AskAsync(host, from(n), $"guess-{n}");
        return last;
    }

    private static async Task<HttpStatusCode> AskAsync(RunningHost host, string? from, string token)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Projects) { Headers = { { "Authorization", $"Bearer {token}" } } };
        if (from is not null)
            request.Headers.Add("X-Forwarded-For", from);
        using var answer = await host.Client.SendAsync(request);
        return answer.StatusCode;
    }
}
