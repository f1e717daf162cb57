using Dyepath.Contracts;

namespace Dyepath.Client.Store;

/// <summary>Projects on the host, over its JSON API. A failing connection is an answer, never an exception.</summary>
public sealed class ServerShelf(HttpClient http)
{
    private readonly HostApi _api = new(http);

    public Task<ServerAnswer<ProjectSummary[]>> ListAsync(bool archived) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Shelf(archived)), ContractsJson.Default.ProjectSummaryArray);

    public Task<ServerAnswer<StoredText>> GetAsync(string id) => _api.Text(ApiPaths.Project(id));

    /// <param name="id">Chosen here, so that a project begun offline keeps its address.</param>
    public Task<ServerAnswer<ProjectSummary>> CreateAsync(string id, string text) =>
        _api.Ask(HostApi.Sending(HttpMethod.Post, ApiPaths.NewProject(id), text), ContractsJson.Default.ProjectSummary);

    /// <param name="etag">The text that this one follows; the host refuses if it has another by now.</param>
    public Task<ServerAnswer<ProjectSummary>> SaveAsync(string id, string text, string etag)
    {
        var request = HostApi.Sending(HttpMethod.Put, ApiPaths.Project(id), text);
        request.Headers.TryAddWithoutValidation("If-Match", etag);
        return _api.Ask(request, ContractsJson.Default.ProjectSummary);
    }

    public Task<ServerAnswer<ProjectSummary>> PostAsync(string path, string? etag = null)
    {
        var request = HostApi.Sending(HttpMethod.Post, path, "{}");
        if (etag is not null)
            request.Headers.TryAddWithoutValidation("If-Match", etag);
        return _api.Ask(request, ContractsJson.Default.ProjectSummary);
    }

    public Task<ServerAnswer<ProjectSummary>> DeleteAsync(string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Project(id)), ContractsJson.Default.ProjectSummary);

    public Task<ServerAnswer<VersionSummary[]>> VersionsAsync(string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Versions(id)), ContractsJson.Default.VersionSummaryArray);

    public Task<ServerAnswer<StoredText>> VersionAsync(string id, int number) => _api.Text(ApiPaths.Version(id, number));
}
