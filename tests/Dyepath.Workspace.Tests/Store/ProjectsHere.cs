using System.Collections.Immutable;
using System.Net;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Keeping;

namespace Dyepath.Workspace.Tests.Store;

/// <summary>A device's projects, with as many tabs as ask for them.</summary>
internal sealed class ProjectDevice
{
    private readonly Dictionary<string, CopiesHere<ProjectText>> _copies = [];
    private readonly List<ProjectTab> _tabs = [];
    private readonly HashSet<string> _archived = [];

    public bool Refuses { get; set; }

    /// <summary>It answers no sooner than this is taken back.</summary>
    public bool Hangs { get; set; }

    public IEnumerable<(string Id, Copy<ProjectText> Copy)> All => _copies.SelectMany(c => c.Value.All.Select(copy => (c.Key, copy)));

    /// <param name="reloaded">The tab that this one is after a reload.</param>
    public ProjectTab Tab(ProjectTab? reloaded = null)
    {
        var tab = new ProjectTab(this, reloaded?.Session ?? []);
        _tabs.Add(tab);
        return tab;
    }

    public void Clear()
    {
        _copies.Clear();
        foreach (var tab in _tabs)
            tab.Cleared?.Invoke();
    }

    internal sealed class ProjectTab(ProjectDevice device, Dictionary<string, string> session) : IDeviceShelf, IDeviceEvents
    {
        public Dictionary<string, string> Session => session;

        public string? LastWriter(string id) => session.GetValueOrDefault(id);

        public void RememberWriter(string id, string writer) => session[id] = writer;

        public void Close() => device._tabs.Remove(this);

        public Action<string>? Wrote { get; private set; }

        public Action<string>? Removed { get; private set; }

        public Action? Cleared { get; private set; }

        public Action? Online { get; private set; }

        public Task<ImmutableArray<Copy<ProjectText>>> ReadAsync(string id) =>
            Answer(() => device._copies.TryGetValue(id, out var copies) ? copies.All.ToImmutableArray() : []);

        public Task<DeviceWriting<ProjectText>> WriteAsync(string id, WriteDevice<ProjectText> write) => Answer(() =>
        {
            if (!device._copies.TryGetValue(id, out var copies))
                device._copies[id] = copies = new();
            var writing = copies.Put(write);
            foreach (var tab in device._tabs.Where(t => t != this))
                tab.Wrote?.Invoke(id);
            return writing;
        });

        public Task<ProjectCopy[]> ListAsync() =>
            Answer(() => device.All.Select(c => ProjectCopy.Of(c.Id, c.Copy) with { Text = null, Archived = device._archived.Contains(c.Id) }).ToArray());

        public Task RemoveAsync(string id) => Answer(() =>
        {
            var removed = device._copies.Remove(id);
            foreach (var tab in device._tabs.Where(t => t != this))
                tab.Removed?.Invoke(id);
            return removed;
        });

        public Task ArchiveAsync(string id, bool archived) => Answer(() => archived ? device._archived.Add(id) : device._archived.Remove(id));

        public void ListenTo(string sort, Action<string> wrote, Action<string> removed) => (Wrote, Removed) = (wrote, removed);

        public void ListenToPage(Action cleared, Action online, Action<bool> seen) => (Cleared, Online) = (cleared, online);

        private async Task<T> Answer<T>(Func<T> work)
        {
            if (device.Refuses)
                throw new IOException("The disk is full.");
            while (device.Hangs)
                await Task.Delay(5);
            var answer = work();
            await Task.Yield();
            return answer;
        }
    }
}

/// <summary>The host's projects, with its rules of ETags; and other answers as it is told.</summary>
internal sealed class ProjectHost : HttpMessageHandler
{
    private int _made = 1;

    public Dictionary<string, string> Texts { get; } = [];

    public List<string> Asked { get; } = [];

    public bool IsAway { get; set; }

    /// <summary>It never answers.</summary>
    public bool Hangs { get; set; }

    /// <summary>Answers with this, so many times.</summary>
    public (HttpStatusCode Status, int Times) Fails { get; set; }

    /// <summary>It does what it is asked, and the answer is lost on the way.</summary>
    public bool LosesAnswers { get; set; }

    public HttpClient Client => new(this, disposeHandler: false) { BaseAddress = new Uri("http://host.test/") };

    public void LoseEverything()
    {
        Texts.Clear();
        _made++;
    }

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var path = request.RequestUri!.AbsolutePath[1..];
        var body = request.Content is { } content ? await content.ReadAsStringAsync(cancellationToken) : "";
        Asked.Add($"{request.Method} {path}");
        await Task.Yield();
        if (Hangs)
            await Task.Delay(Timeout.Infinite, cancellationToken);
        if (IsAway)
            throw new HttpRequestException("No connection.");
        if (Fails.Times > 0)
        {
            Fails = (Fails.Status, Fails.Times - 1);
            return Problem(Fails.Status);
        }
        var answer = Answer(request, path, body);
        answer.Headers.TryAddWithoutValidation(ApiPaths.MadeHeader, $"{_made}");
        return LosesAnswers ? throw new HttpRequestException("Cut off.") : answer;
    }

    private HttpResponseMessage Answer(HttpRequestMessage request, string path, string body)
    {
        if (path == ApiPaths.Projects && request.Method == HttpMethod.Get)
        {
            var archived = request.RequestUri!.Query.Contains("archived", StringComparison.Ordinal);
            return Json(JsonSerializer.Serialize(archived ? [] : Texts.Keys.Select(Summary).ToArray(), ContractsJson.Default.ProjectSummaryArray));
        }
        var id = path == ApiPaths.Projects ? request.RequestUri!.Query["?id=".Length..] : path[(ApiPaths.Projects.Length + 1)..];
        var stored = Texts.GetValueOrDefault(id);
        if (request.Method == HttpMethod.Post)
        {
            if (stored is not null)
                return Problem(HttpStatusCode.Conflict);
        }
        else if (stored is null)
            return Problem(HttpStatusCode.NotFound);
        else if (request.Method == HttpMethod.Get)
        {
            var text = Json(stored);
            text.Headers.TryAddWithoutValidation("ETag", Etag(stored));
            return text;
        }
        else if (request.Method == HttpMethod.Delete)
        {
            Texts.Remove(id);
            return new(HttpStatusCode.NoContent);
        }
        else if (stored != body && request.Headers.GetValues("If-Match").First() != Etag(stored))
            return Problem(HttpStatusCode.PreconditionFailed);
        Texts[id] = body;
        return Json(JsonSerializer.Serialize(Summary(id), ContractsJson.Default.ProjectSummary));
    }

    private ProjectSummary Summary(string id) => new(id, ProjectText.Of(Texts[id]).Name, false, DateTimeOffset.UnixEpoch, Etag(Texts[id]), null, $"{_made}");

    private static string Etag(string text) => Etags.Of(Encoding.UTF8.GetBytes(text));

    private static HttpResponseMessage Json(string text) => new(HttpStatusCode.OK) { Content = new StringContent(text, Encoding.UTF8, "application/json") };

    private static HttpResponseMessage Problem(HttpStatusCode status) => new(status)
    {
        Content = new StringContent("""{ "title": "It cannot.", "detail": "Try later." }""", Encoding.UTF8, "application/problem+json"),
    };
}
