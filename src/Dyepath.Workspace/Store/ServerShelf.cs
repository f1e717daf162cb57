using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Dyepath.Contracts;
using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Store;

/// <summary>Projects on the host, over its JSON API. A failing connection is an answer, never an exception.</summary>
public sealed class ServerShelf(HttpClient http) : IHostTexts<ProjectText>
{
    /// <summary>Lists come in pages; a longer one is cut off.</summary>
    private const int MostPages = 50;

    private readonly HostApi _api = new(http);

    /// <summary>Those on the shelf, or those in the archive.</summary>
    public Task<ServerAnswer<ProjectSummary[]>> ListAsync(bool archived) =>
        All(ApiPaths.Shelf(archived), ContractsJson.Default.ProjectSummaryArray);

    /// <summary>A project's document as the host has it.</summary>
    public Task<ServerAnswer<StoredText>> GetAsync(string id) => _api.Text(ApiPaths.Project(id));

    public async Task<HostSaid<ProjectText>> ReadAsync(string id)
    {
        var answer = await GetAsync(id);
        return answer.Value is { } stored ? new HostHas<ProjectText>(ProjectText.Of(stored.Text), stored.Etag, stored.Made)
            : answer.Said<ProjectText>();
    }

    /// <param name="id">Chosen here, so that a project begun offline keeps its address.</param>
    /// <param name="etag">The text that this one follows; the host refuses if it has another by now. Missing, it should have none.</param>
    public async Task<HostSaid<ProjectText>> WriteAsync(string id, ProjectText content, string? etag, bool leaving)
    {
        var text = Encoding.UTF8.GetBytes(content.Text);
        var request = etag is null
            ? HostApi.Sending(HttpMethod.Post, ApiPaths.NewProject(id), text)
            : HostApi.Sending(HttpMethod.Put, ApiPaths.Project(id), text);
        if (etag is not null)
            request.Headers.TryAddWithoutValidation("If-Match", etag);
        if (content.Swatch is { } swatch)
        {
            request.Headers.TryAddWithoutValidation(
                ApiPaths.PictureHeader, Convert.ToBase64String(
                    JsonSerializer.SerializeToUtf8Bytes(swatch, ContractsJson.Default.SwatchPicture)));
        }
        HostApi.LeavePage(request, leaving, text.Length);
        var answer = await _api.Ask(request, ContractsJson.Default.ProjectSummary);
        if (answer.Value is not { } summary)
            return answer.Said<ProjectText>();
        // What was stored is what was sent, or it is asked for.
        return summary.Etag == Etags.Of(text) ? new HostTook<ProjectText>(summary.Etag, summary.Made) : new HostHasAnother<ProjectText>();
    }

    /// <summary>Brings back the newest version that can be read of a project whose text is damaged.</summary>
    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> MendAsync(string id)
    {
        if (await _api.ProblemAsync(ApiPaths.Project(id)) is not { GoodVersion: { } version, CurrentEtag: { } etag })
            return "There is no version that can be read, or the host cannot be reached just now.";
        var answer = await PostAsync(ApiPaths.RestoreVersion(id, version), etag);
        return answer.Reply == ServerReply.Done ? null : answer.Why.Length > 0 ? answer.Why : "The host cannot be reached just now.";
    }

    /// <summary>Asks for what a path of <see cref="ApiPaths"/> does, such as a copy; with an ETag, only of that text.</summary>
    public Task<ServerAnswer<ProjectSummary>> PostAsync(string path, string? etag = null)
    {
        var request = HostApi.Sending(HttpMethod.Post, path, "{}");
        if (etag is not null)
            request.Headers.TryAddWithoutValidation("If-Match", etag);
        return _api.Ask(request, ContractsJson.Default.ProjectSummary);
    }

    /// <summary>Removes a project from the host.</summary>
    public Task<ServerAnswer<ProjectSummary>> DeleteAsync(string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Project(id)), ContractsJson.Default.ProjectSummary);

    /// <summary>Kept versions of a project, without their texts.</summary>
    public Task<ServerAnswer<VersionSummary[]>> VersionsAsync(string id) =>
        All(ApiPaths.Versions(id), ContractsJson.Default.VersionSummaryArray);

    /// <summary>Keeps a document for good under the edition number that it has.</summary>
    public Task<ServerAnswer<VersionSummary>> PublishAsync(string id, string text) =>
        _api.Ask(HostApi.Sending(HttpMethod.Post, ApiPaths.Editions(id), text), ContractsJson.Default.VersionSummary);

    /// <summary>Takes the publishing of an edition back; its text stays a version.</summary>
    public Task<ServerAnswer<VersionSummary>> TakeBackAsync(string id, int edition) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Edition(id, edition)), ContractsJson.Default.VersionSummary);

    /// <summary>The document of one version.</summary>
    public Task<ServerAnswer<StoredText>> VersionAsync(string id, int number) => _api.Text(ApiPaths.Version(id, number));

    private async Task<ServerAnswer<T[]>> All<T>(string first, JsonTypeInfo<T[]> type)
    {
        List<T> all = [];
        var page = first;
        for (var pages = 0; pages < MostPages && page is not null; pages++)
        {
            var answer = await _api.Ask(new HttpRequestMessage(HttpMethod.Get, page), type);
            if (answer.Value is not { } some)
                return answer;
            all.AddRange(some);
            page = answer.Next;
        }
        return new(ServerReply.Done, [.. all]);
    }
}
