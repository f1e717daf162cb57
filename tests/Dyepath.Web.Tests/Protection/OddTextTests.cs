using System.Net;
using System.Net.Sockets;
using System.Text;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

/// <summary>Halves of characters, characters that nobody sees, and none at all, wherever a request may carry text: never a fault of the host's.</summary>
public abstract class OddTextTests(Hosts hosts, DatabaseKind kind)
{
    private static readonly string[] Odd = ["%00", "%ED%A0%80", "%F0%9F%A7%B6", "%E2%80%AE", "%E2%80%A8", "%FF", "%0D%0A", "a%27b", "%C3", new('x', 500)];

    private static readonly string[] OddHeaders = ["\"\u00e9\"", "\"\ud83e\uddf6\"", "\"a b\"", "\"\u202e\"", new('x', 3000)];

    [Fact]
    public async Task Odd_ids_are_answered_in_words()
    {
        var host = await hosts.OnAsync(kind);
        var id = (await host.CreateAsync("{}")).Id;
        foreach (var odd in Odd)
        {
            foreach (var path in new[]
            {
                ApiPaths.Project(odd), ApiPaths.Versions(odd), ApiPaths.Making(odd), ApiPaths.Handovers(odd), ApiPaths.Logs(odd), ApiPaths.Log(id, odd),
                $"{ApiPaths.Projects}?{ApiPaths.After}={odd}", $"{ApiPaths.Makings}?{ApiPaths.After}=1_{odd}", $"{ApiPaths.Projects}?archived={odd}",
                $"{ApiPaths.Versions(id)}?{ApiPaths.After}={odd}", $"{ApiPaths.Logs(id)}?{ApiPaths.After}={odd}_{odd}", $"{ApiPaths.Projects}/{id}/versions/{odd}",
            })
                await AnsweredAsync(host, "GET", path);
            foreach (var (method, path) in new[]
            {
                ("PUT", ApiPaths.Project(odd)), ("DELETE", ApiPaths.Project(odd)), ("POST", ApiPaths.Copy(odd)), ("POST", ApiPaths.Archive(odd)),
                ("POST", ApiPaths.NewProject(odd)), ("PUT", ApiPaths.NewMaking(odd, odd)), ("DELETE", ApiPaths.Making(odd)),
                ("POST", ApiPaths.Handovers(odd)), ("DELETE", ApiPaths.Handover(id, odd)), ("DELETE", ApiPaths.Log(id, odd)), ("PUT", ApiPaths.HandedLog(odd)),
            })
                await AnsweredAsync(host, method, path, "{}");
        }
    }

    [Fact]
    public async Task Odd_headers_are_answered_in_words()
    {
        var host = await hosts.OnAsync(kind);
        var project = await host.CreateAsync("{}");
        foreach (var odd in OddHeaders)
        {
            foreach (var header in new[] { "If-Match", "If-None-Match", ApiPaths.HandedKeyHeader, ApiPaths.PictureHeader, "Origin", "Authorization", "Cookie" })
            {
                await AnsweredAsync(host, "PUT", ApiPaths.Project(project.Id), "{ }", $"{header}: {odd}");
                await AnsweredAsync(host, "PUT", ApiPaths.Making(project.Id), "{}", $"{header}: {odd}");
                await AnsweredAsync(host, "GET", ApiPaths.Project(project.Id), null, $"{header}: {odd}");
                await AnsweredAsync(host, "GET", ApiPaths.Handed, null, $"{header}: {odd}");
            }
        }
        Assert.Equal("{}", await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    [Fact]
    public async Task Odd_texts_in_bodies_are_answered_in_words()
    {
        var host = await hosts.OnAsync(kind);
        var id = (await host.CreateAsync(RunningHost.Demo)).Id;
        foreach (var size in new[] { "\\ud83e", "\\u0000", "M\\u200b", "\\u202eM", "🧶", new string('x', 10_000), "\u001f" })
            await AnsweredAsync(host, "POST", ApiPaths.Handovers(id), $$"""{ "size": "{{size}}" }""");
        foreach (var body in new[] { "null", "42", "[]", "{}", """{ "size": null }""", "\"", "" })
            await AnsweredAsync(host, "POST", ApiPaths.Handovers(id), body);
        foreach (var title in new[] { "\\ud83e", "\\u0000", "\\u200b", "a\\u0000b", "\\udfff\\ud800" })
            await AnsweredAsync(host, "POST", ApiPaths.Projects, $$"""{ "title": "{{title}}" }""");
    }

    /// <summary>Written by hand: a client library would mend or refuse what is odd.</summary>
    private static async Task AnsweredAsync(RunningHost host, string method, string path, string? body = null, string? header = null)
    {
        using var tcp = new TcpClient();
        await tcp.ConnectAsync(IPAddress.Loopback, host.Address.Port);
        await using var stream = tcp.GetStream();
        var bytes = Encoding.UTF8.GetBytes(body ?? "");
        var origin = header?.StartsWith("Origin", StringComparison.Ordinal) == true ? "" : $"Origin: {host.Address.GetLeftPart(UriPartial.Authority)}\r\n";
        var content = body is null ? "" : $"Content-Type: application/json\r\nContent-Length: {bytes.Length}\r\n";
        var head = $"{method} /{path} HTTP/1.1\r\nHost: {host.Address.Authority}\r\nConnection: close\r\n{origin}{content}{(header is null ? "" : header + "\r\n")}\r\n";
        await stream.WriteAsync(Encoding.UTF8.GetBytes(head));
        await stream.WriteAsync(bytes);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var answer = await reader.ReadToEndAsync();
        var status = int.Parse(answer.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(status < 500, $"{method} {path} with {header} {body} was answered {answer}");
    }
}

public class SqliteOddTextTests(Hosts hosts) : OddTextTests(hosts, DatabaseKind.Sqlite);

public class PostgresOddTextTests(Hosts hosts) : OddTextTests(hosts, DatabaseKind.Postgres);
