using System.Net;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Web.Serving;
using Dyepath.Web.Tests.Makings;

namespace Dyepath.Web.Tests.Serving;

public class RequestLogTests(Hosts hosts)
{
    private const string Token = GuardedHost.Token;

    /// <summary>The log of a program that was sent secrets in every place where one can stand.</summary>
    [Fact]
    public async Task Every_request_is_found_in_the_log_by_its_id_and_nothing_that_it_carried()
    {
        var folder = await hosts.BegunFolderAsync();
        await using var program = await RunningProgram.StartAsync($"--data {folder}", start => start.Environment["DYEPATH_ACCESS_TOKEN"] = Token);
        var client = program.Client;
        var key = SecretKey.New();
        const string title = "Quite-secret-tunic";
        var ids = new List<string>();
        async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, HttpContent? content = null, params (string Name, string Value)[] headers)
        {
            using var request = new HttpRequestMessage(method, path) { Content = content };
            foreach (var (name, value) in headers)
                request.Headers.TryAddWithoutValidation(name, value);
            var answer = await client.SendAsync(request);
            ids.Add(Assert.Single(answer.Headers.GetValues("X-Request-Id")));
            return answer;
        }
        (string, string) bearer = ("Authorization", $"Bearer {Token}");
        (await SendAsync(HttpMethod.Post, ApiPaths.SignIn, new FormUrlEncodedContent([new("token", "wrong-" + key)]))).Dispose();
        using var signedIn = await SendAsync(HttpMethod.Post, ApiPaths.SignIn, new FormUrlEncodedContent([new("token", Token)]), ("User-Agent", "Spy/1.0 Firefox/1.0 Linux"));
        var cookie = signedIn.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        (await SendAsync(HttpMethod.Get, $"{ApiPaths.Projects}/secret-path?archived=true&secret=query", null, ("Cookie", cookie), ("X-Request-Id", "forged-id"))).Dispose();
        (await SendAsync(HttpMethod.Post, ApiPaths.Projects, RunningHost.Json($$"""{ "title": "{{title}}" }"""), bearer)).Dispose();
        (await SendAsync(HttpMethod.Post, ApiPaths.Projects, RunningHost.Json($"{{ \"title\": {title}"), bearer)).Dispose();
        (await SendAsync(HttpMethod.Put, ApiPaths.HandedLog("0123456789ABCDEFGHIJKLMNOP"), RunningHost.Json(Pieces.Text(1)), (ApiPaths.HandedKeyHeader, key))).Dispose();
        (await SendAsync(HttpMethod.Get, $"{ApiPaths.Handed}?key={key}", null, ("Referer", $"http://x/{key}"))).Dispose();
        (await SendAsync(new HttpMethod("SECRETLY"), "api/nowhere/%e2%80%ae%0a%1b[31m", null, bearer)).Dispose();
        (await SendAsync(HttpMethod.Get, "api/projects", null, ("Authorization", $"Bearer wrong-{key}"))).Dispose();
        var log = await program.LogAsync();

        foreach (var secret in new[] { Token, key, cookie.Split('=')[1], title, "secret-path", "query", "forged-id", "SECRETLY", "Tideline", "Spy", "0123456789ABCDEFGHIJKLMNOP" })
            Assert.DoesNotContain(secret, log, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(ids.Count, ids.Distinct().Count());
        var lines = log.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement).ToArray();
        var messages = lines.Select(line => line.GetProperty("Message").GetString()!).ToArray();
        foreach (var id in ids.Skip(2))
            Assert.Contains(messages, message => message.EndsWith(id, StringComparison.Ordinal) && message.Contains(" answered ", StringComparison.Ordinal));
        Assert.Contains(messages, message => message.StartsWith("GET /api/projects/{id} answered 404", StringComparison.Ordinal));
        Assert.Contains(messages, message => message.StartsWith("PUT /api/handed/logs/{makingId} answered 404", StringComparison.Ordinal));
        Assert.Contains(messages, message => message.StartsWith("another method ", StringComparison.Ordinal));
        Assert.Contains(messages, message => message.StartsWith("Firefox on Linux signed in from ", StringComparison.Ordinal));
        Assert.Equal(2, messages.Count(message => message.StartsWith("A token from ", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(ApiPaths.Projects)]
    [InlineData("icon.svg")]
    [InlineData("make/from")]
    [InlineData("no/such/file.js")]
    [InlineData("api/typo")]
    public async Task Every_answer_has_an_id_of_its_own(string path)
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var one = await host.Client.GetAsync(path);
        using var other = await host.Client.GetAsync(path);
        var ids = new[] { one, other }.Select(answer => Assert.Single(answer.Headers.GetValues("X-Request-Id"))).ToArray();
        Assert.All(ids, id => Assert.Matches("^[0-9a-f]{16}$", id));
        Assert.NotEqual(ids[0], ids[1]);
    }

    [Fact]
    public async Task An_answer_without_a_store_has_the_id_too()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Postgres);
        await using var host = await RunningHost.StartAsync(new(database, 0));
        hosts.Databases.Drop(database);
        using var answer = await host.Client.GetAsync(ApiPaths.Projects);
        await RunningHost.ProblemAsync(HttpStatusCode.ServiceUnavailable, answer);
        Assert.Matches("^[0-9a-f]{16}$", Assert.Single(answer.Headers.GetValues("X-Request-Id")));
        Assert.Equal("no-store", answer.Headers.CacheControl!.ToString());
    }

    [Theory]
    [InlineData("plain words, 12 €\nnext line", "plain words, 12 €\nnext line")]
    [InlineData("\u001b[31mred\u0007\r", "\\u001b[31mred\\u0007\\u000d")]
    [InlineData("a\u202eb\u200bc\ufeffd\u2028e", "a\\u202eb\\u200bc\\ufeffd\\u2028e")]
    [InlineData("\ud83d\ude00", "\\ud83d\\ude00")]
    public void What_cannot_be_seen_is_written_as_its_number(string text, string clean) => Assert.Equal(clean, LogText.Clean(text));

    [Fact]
    public void Of_a_fault_only_the_system_s_own_words_are_told()
    {
        var fault = new InvalidOperationException("the title Quite-secret-tunic", new IOException("disk full\u001b"));
        var text = LogText.Of(fault);
        Assert.DoesNotContain("Quite-secret-tunic", text, StringComparison.Ordinal);
        Assert.Contains("System.InvalidOperationException", text, StringComparison.Ordinal);
        Assert.Contains("System.IO.IOException: disk full\\u001b", text, StringComparison.Ordinal);
    }
}
