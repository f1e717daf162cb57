using System.Net;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Core.Making.Log;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>The host's makings, with its rules of ETags; and other answers as it is told.</summary>
internal sealed class HostHere : HttpMessageHandler
{
    public Dictionary<string, string> Texts { get; } = [];

    public Dictionary<string, string?> Projects { get; } = [];

    /// <summary>Answers to what is not about makings: method and path, then JSON.</summary>
    public Dictionary<string, string> Answers { get; } = [];

    /// <summary>Method and path of everything that was asked, and the bodies that came.</summary>
    public List<string> Asked { get; } = [];

    public List<string> Bodies { get; } = [];

    public Dictionary<string, string> Headers { get; } = [];

    public bool IsAway { get; set; }

    /// <summary>What it has stored cannot be read.</summary>
    public bool IsDamaged { get; set; }

    public static string Etag(string text) => Etags.Of(Encoding.UTF8.GetBytes(text));

    public MakingDocument Read(string id) => MakingReader.Read(Encoding.UTF8.GetBytes(Texts[id])).Making!;

    public void Put(string id, MakingDocument making) => Texts[id] = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making));

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var path = request.RequestUri!.AbsolutePath[1..];
        var body = request.Content is { } content ? await content.ReadAsStringAsync(cancellationToken) : "";
        Asked.Add($"{request.Method} {path}");
        Bodies.Add(body);
        foreach (var header in request.Headers)
            Headers[header.Key] = header.Value.First();
        await Task.Yield();
        if (IsAway)
            throw new HttpRequestException("No connection.");
        if (Answers.TryGetValue($"{request.Method} {path}", out var told))
            return Json(HttpStatusCode.OK, told);
        if (path == ApiPaths.Makings)
            return Json(HttpStatusCode.OK, JsonSerializer.Serialize(Texts.Keys.Select(Summary).ToArray(), ContractsJson.Default.MakingSummaryArray));
        if (!path.StartsWith(ApiPaths.Makings + "/", StringComparison.Ordinal))
            return Refuse(HttpStatusCode.NotFound);
        var id = path[(ApiPaths.Makings.Length + 1)..];
        var stored = Texts.GetValueOrDefault(id);
        if (request.Method == HttpMethod.Put)
        {
            var seen = request.Headers.TryGetValues("If-Match", out var values) ? values.First() : null;
            if (stored is null && seen is not null)
                return Refuse(HttpStatusCode.NotFound);
            if (stored is not null && stored != body && Etag(stored) != seen)
                return Refuse(HttpStatusCode.PreconditionFailed);
            Texts[id] = body;
            if (stored is null)
                Projects[id] = request.RequestUri.Query is { Length: > 0 } query ? query["?project=".Length..] : null;
            return Json(HttpStatusCode.OK, JsonSerializer.Serialize(Summary(id), ContractsJson.Default.MakingSummary));
        }
        if (stored is null)
            return Refuse(HttpStatusCode.NotFound);
        if (request.Method == HttpMethod.Delete)
        {
            Texts.Remove(id);
            return new HttpResponseMessage(HttpStatusCode.NoContent);
        }
        if (IsDamaged)
            return Refuse(HttpStatusCode.UnprocessableEntity);
        var answer = Json(HttpStatusCode.OK, stored);
        answer.Headers.TryAddWithoutValidation("ETag", Etag(stored));
        return answer;
    }

    private MakingSummary Summary(string id)
    {
        var making = Read(id);
        return new(id, making.Project.Title, making.Size, Projects.GetValueOrDefault(id), making.Log.Length, MakingBench.Now, Etag(Texts[id]));
    }

    private static HttpResponseMessage Json(HttpStatusCode status, string text) => new(status) { Content = new StringContent(text, Encoding.UTF8, "application/json") };

    private static HttpResponseMessage Refuse(HttpStatusCode status) =>
        new(status) { Content = new StringContent("{}", Encoding.UTF8, "application/problem+json") };
}
