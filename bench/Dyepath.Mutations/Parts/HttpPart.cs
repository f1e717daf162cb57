using System.Net;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;
using Dyepath.Storage;
using Dyepath.Web.Serving;
using Microsoft.AspNetCore.Builder;

namespace Dyepath.Mutations.Parts;

/// <summary>A real host on a free port of this computer, with a database of its own.</summary>
internal sealed class OwnHost : IAsyncDisposable
{
    private readonly DirectoryInfo _folder;

    private OwnHost(DirectoryInfo folder, WebApplication app)
    {
        (_folder, App) = (folder, app);
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new Uri(app.Urls.Single()) };
        Client.DefaultRequestHeaders.Add("Origin", Client.BaseAddress.GetLeftPart(UriPartial.Authority));
    }

    public WebApplication App { get; }

    public HttpClient Client { get; }

    public static async Task<OwnHost> StartAsync()
    {
        var folder = Directory.CreateTempSubdirectory("dyepath-mutations-");
        // What it answers is judged here, and ten thousand lines of log would hide that.
        var error = Console.Error;
        Console.SetError(TextWriter.Null);
        try
        {
            var app = DyepathHost.Build(new HostSettings(new DatabaseChoice(folder.FullName), 0));
            await DyepathHost.StartAsync(app);
            return new OwnHost(folder, app);
        }
        finally
        {
            Console.SetError(error);
        }
    }

    public async Task<(HttpStatusCode Status, byte[] Body, string? Etag, string? Type)> SendAsync(
        HttpMethod method, string path, byte[]? body, CancellationToken cancel, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path);
        if (body is not null)
        {
            request.Content = new ByteArrayContent(body);
            request.Content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
        }
        foreach (var (name, value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using var answer = await Client.SendAsync(request, cancel);
        return (answer.StatusCode, await answer.Content.ReadAsByteArrayAsync(cancel), answer.Headers.ETag?.ToString(), answer.Content.Headers.ContentType?.MediaType);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await App.StopAsync();
        await App.DisposeAsync();
        _folder.Delete(recursive: true);
    }
}

/// <summary>Projects, makings and handovers over HTTP.</summary>
internal sealed class HttpPart : IPart
{
    private static readonly string[] Ids = ["", "a", "../x", "00000000-0000-0000-0000-000000000000", "x'; --", "\u202e", "aaaaaaaaaaaaaaaaaaaaaaaaaa", new string('a', 3_000), "1/versions/-1", "1/versions/99999999999"];

    private OwnHost? _host;
    private string[] _projects = [];
    private string[] _makings = [];
    private readonly string _project = Guid.NewGuid().ToString();
    private readonly string _making = Guid.NewGuid().ToString();
    private string _projectTag = "";
    private string _makingTag = "";
    private string _key = "";

    public string Name => "http";

    private OwnHost Host => _host!;

    public async Task PrepareAsync(int seed)
    {
        _host = await OwnHost.StartAsync();
        _projects = Bases.Projects(seed, 12);
        _makings = [.. _projects.Take(5).Select((p, i) => MakingPart.Write(p, new Random(i)))];
        _projectTag = (await GoodAsync(HttpMethod.Post, ApiPaths.NewProject(_project), _projects[0])).Etag!;
        _makingTag = (await GoodAsync(HttpMethod.Put, ApiPaths.Making(_making), _makings[0], ("If-None-Match", "*"))).Etag!;
        var size = JsonDocument.Parse(_makings[0]).RootElement.GetProperty("size").GetString()!;
        var handed = await GoodAsync(HttpMethod.Post, ApiPaths.Handovers(_project), JsonSerializer.Serialize(new NewHandover(size), ContractsJson.Default.NewHandover));
        _key = JsonSerializer.Deserialize(handed.Body, ContractsJson.Default.Handover)!.Key;
    }

    private async Task<(byte[] Body, string? Etag)> GoodAsync(HttpMethod method, string path, string body, params (string, string)[] headers)
    {
        var (status, answer, etag, _) = await Host.SendAsync(method, path, Encoding.UTF8.GetBytes(body), default, headers);
        return (int)status < 300 ? (answer, etag) : throw new InvalidOperationException($"{method} {path}: {status} {Encoding.UTF8.GetString(answer)}");
    }

    public byte[] Input(int seed, int number)
    {
        var random = new Random(unchecked(seed * 1_000_003 + number));
        return (number % 8) switch
        {
            0 or 1 or 2 => Mutator.Damage(_projects[random.Next(_projects.Length)], random),
            3 or 4 => Mutator.Damage(_makings[random.Next(_makings.Length)], random),
            5 => Mutator.Damage(_makings[0], random),
            6 => Mutator.Damage("""{"size":"S"}""", random),
            _ => Encoding.UTF8.GetBytes(Ids[random.Next(Ids.Length)]),
        };
    }

    public async Task<string> TryAsync(byte[] input, int number, CancellationToken cancel)
    {
        switch (number % 8)
        {
            case 0:
                var id = Guid.NewGuid().ToString();
                var made = await AskAsync(HttpMethod.Post, ApiPaths.NewProject(id), input, cancel);
                if (made.Status == HttpStatusCode.Created)
                {
                    await IsKeptAsync(ApiPaths.Project(id), input, cancel);
                    await AskAsync(HttpMethod.Post, ApiPaths.Copy(id), [], cancel);
                    await AskAsync(HttpMethod.Post, ApiPaths.Archive(id), [], cancel);
                    await AskAsync(HttpMethod.Delete, ApiPaths.Project(id), null, cancel);
                }
                return $"new project {(int)made.Status}";
            case 1 or 2:
                var saved = await AskAsync(HttpMethod.Put, ApiPaths.Project(_project), input, cancel, ("If-Match", number % 5 == 0 ? "\"x" : _projectTag));
                if (saved.Status == HttpStatusCode.OK)
                {
                    _projectTag = saved.Etag!;
                    await IsKeptAsync(ApiPaths.Project(_project), input, cancel);
                    await AskAsync(HttpMethod.Get, ApiPaths.Projects, null, cancel);
                }
                return $"project {(int)saved.Status}";
            case 3:
                var begun = Guid.NewGuid().ToString();
                var first = await AskAsync(HttpMethod.Put, ApiPaths.Making(begun), input, cancel, ("If-None-Match", "*"));
                if (first.Status == HttpStatusCode.Created)
                {
                    await IsKeptAsync(ApiPaths.Making(begun), input, cancel);
                    await AskAsync(HttpMethod.Get, ApiPaths.Makings, null, cancel);
                    await AskAsync(HttpMethod.Delete, ApiPaths.Making(begun), null, cancel);
                }
                return $"new making {(int)first.Status}";
            case 4:
                var next = await AskAsync(HttpMethod.Put, ApiPaths.Making(_making), input, cancel, ("If-Match", number % 5 == 0 ? "*,W/\"\"" : _makingTag));
                if (next.Status == HttpStatusCode.OK)
                {
                    _makingTag = next.Etag!;
                    await IsKeptAsync(ApiPaths.Making(_making), input, cancel);
                }
                return $"making {(int)next.Status}";
            case 5:
                var log = await AskAsync(HttpMethod.Put, ApiPaths.HandedLog(_making), input, cancel, (ApiPaths.HandedKeyHeader, _key));
                return $"log {(int)log.Status}";
            case 6:
                var handed = await AskAsync(HttpMethod.Post, ApiPaths.Handovers(_project), input, cancel);
                if (handed.Status == HttpStatusCode.Created)
                    await AskAsync(HttpMethod.Delete, ApiPaths.Handover(_project, JsonSerializer.Deserialize(handed.Body, ContractsJson.Default.Handover)!.Id), null, cancel);
                return $"handover {(int)handed.Status}";
            default:
                var odd = Encoding.UTF8.GetString(input);
                var path = (number / 8 % 4) switch { 0 => ApiPaths.Project(odd), 1 => ApiPaths.Making(odd), 2 => $"{ApiPaths.Project(_project)}/versions/{odd}", _ => ApiPaths.Log(_project, odd) };
                return $"read {(int)(await AskAsync(HttpMethod.Get, path, null, cancel)).Status}";
        }
    }

    private static bool Ends(string? sentence) => sentence is { Length: > 0 } && sentence[^1] is '.' or '?';

    private async Task IsKeptAsync(string path, byte[] input, CancellationToken cancel)
    {
        if (!(await AskAsync(HttpMethod.Get, path, null, cancel)).Body.AsSpan().SequenceEqual(input))
            throw new Broken("what was stored is not what was sent");
    }

    private async Task<(HttpStatusCode Status, byte[] Body, string? Etag)> AskAsync(
        HttpMethod method, string path, byte[]? body, CancellationToken cancel, params (string, string)[] headers)
    {
        var (status, answer, etag, type) = await Host.SendAsync(method, path, body, cancel, headers);
        var text = answer.Length < 20_000 ? Encoding.UTF8.GetString(answer) : "";
        if ((int)status >= 500)
            throw new Broken($"{method} is answered {(int)status}: {text}");
        if ((int)status >= 400)
        {
            if (type != "application/problem+json")
                throw new Broken($"{method} is refused with {(int)status} and no words");
            var problem = JsonSerializer.Deserialize(answer, ContractsJson.Default.Problem)!;
            if (problem.Status != (int)status || !Ends(problem.Title) || !Ends(problem.Detail))
                throw new Broken($"{method} is refused with {(int)status} and does not say what to do: {text}");
        }
        return (status, answer, etag);
    }

    public async ValueTask DisposeAsync()
    {
        if (_host is not null)
            await _host.DisposeAsync();
    }
}
