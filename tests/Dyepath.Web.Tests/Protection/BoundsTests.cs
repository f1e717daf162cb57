using System.Net;
using System.Text;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

/// <summary>Values of any length and any letters are answered in words, never with a fault of ours.</summary>
public abstract class BoundsTests(Hosts hosts, DatabaseKind kind)
{
    private static readonly string Long = new('x', 3_000);

    [Theory]
    [InlineData(ApiPaths.Projects + "/{value}")]
    [InlineData(ApiPaths.Projects + "/{value}/versions")]
    [InlineData(ApiPaths.Projects + "/{value}/versions/1")]
    [InlineData(ApiPaths.Projects + "/{value}/handovers")]
    [InlineData(ApiPaths.Projects + "/{value}/logs")]
    [InlineData(ApiPaths.Projects + "/{value}/logs/{value}")]
    [InlineData(ApiPaths.Makings + "/{value}")]
    [InlineData(ApiPaths.Projects + "?archived={value}")]
    [InlineData(ApiPaths.Projects + "?after={value}")]
    [InlineData(ApiPaths.Projects + "/x/versions/{value}")]
    public async Task Whatever_stands_in_an_address(string path)
    {
        var host = await hosts.OnAsync(kind);
        foreach (var value in new[] { "x", "%00", "%01", "%0a", "%ff", "%c0%80", "%ed%a0%80", "%e2%80%ae", "..%2f..", "'--", "99999999999999999999", Long })
        {
            using var answer = await host.Client.GetAsync(path.Replace("{value}", value, StringComparison.Ordinal));
            Assert.InRange((int)answer.StatusCode, 200, 431);
        }
    }

    [Fact]
    public async Task Whatever_stands_in_a_query_or_in_what_a_change_carries()
    {
        var host = await hosts.OnAsync(kind);
        var project = (await host.CreateAsync(RunningHost.Demo)).Id;
        foreach (var value in new[] { "", "\\u0000", "\\u0001", "\\ud800", "\\u202e", Long, new string('x', 100_000) })
        {
            using var handed = await host.Client.PostAsync(ApiPaths.Handovers(project), RunningHost.Json($"{{ \"size\": \"{value}\" }}"));
            await RunningHost.ProblemAsync(handed.StatusCode, handed);
            Assert.InRange((int)handed.StatusCode, 400, 413);
            using var titled = await host.Client.PostAsync(ApiPaths.Projects, RunningHost.Json($"{{ \"title\": \"{value}\" }}"));
            Assert.InRange((int)titled.StatusCode, 200, 413);
            using var making = new HttpRequestMessage(HttpMethod.Put, ApiPaths.Making(Guid.NewGuid().ToString()))
            {
                Content = RunningHost.Json(Makings.Pieces.Text(1).Replace("\"Tideline\"", $"\"{value}\"", StringComparison.Ordinal)),
                Headers = { { "If-None-Match", "*" } },
            };
            using var stored = await host.Client.SendAsync(making);
            Assert.InRange((int)stored.StatusCode, 200, 413);
        }
        foreach (var id in new[] { "", "%00", "x", Long, $"{Guid.NewGuid()}%0a" })
        {
            using var created = await host.Client.PostAsync($"{ApiPaths.Projects}?id={id}", RunningHost.Json("{}"));
            await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, created);
        }
    }

    [Fact]
    public async Task Whatever_stands_in_a_key()
    {
        await using var host = await RunningHost.StartAsync(new(hosts.Databases.NewDatabase(kind), 0));
        foreach (var key in new[] { "x", "\u00e9", Long, new string('A', 43) })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Handed);
            request.Headers.TryAddWithoutValidation(ApiPaths.HandedKeyHeader, Convert.ToBase64String(Encoding.UTF8.GetBytes(key)));
            using var answer = await host.Client.SendAsync(request);
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, answer);
        }
    }
}

public class SqliteBoundsTests(Hosts hosts) : BoundsTests(hosts, DatabaseKind.Sqlite);

public class PostgresBoundsTests(Hosts hosts) : BoundsTests(hosts, DatabaseKind.Postgres);
