using Dyepath.Client.Store;
using Dyepath.Contracts;
using Microsoft.AspNetCore.Components.WebAssembly.Http;

namespace Dyepath.Client.Making.Store;

/// <summary>Copies of pieces under way on the host, over its JSON API.</summary>
public sealed class MakingHost(HttpClient http)
{
    /// <summary>A browser carries 64 KiB to its end after the page is gone (Fetch standard, keepalive).</summary>
    private const int MostAfterLeaving = 60_000;

    private readonly HostApi _api = new(http);

    public Task<ServerAnswer<MakingSummary[]>> ListAsync() =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Makings), ContractsJson.Default.MakingSummaryArray);

    public Task<ServerAnswer<StoredText>> GetAsync(string id) => _api.Text(ApiPaths.Making(id));

    /// <param name="etag">The text that this one continues; missing where the host is not known to have any.</param>
    /// <param name="leaving">The page may be gone before the host answers.</param>
    public Task<ServerAnswer<MakingSummary>> PutAsync(string id, string? projectId, string? etag, byte[] document, bool leaving = false)
    {
        var request = HostApi.Sending(HttpMethod.Put, etag is null ? ApiPaths.NewMaking(id, projectId) : ApiPaths.Making(id), document);
        request.Headers.TryAddWithoutValidation(etag is null ? "If-None-Match" : "If-Match", etag ?? "*");
        if (leaving && document.Length <= MostAfterLeaving)
            request.SetBrowserRequestOption("keepalive", true);
        return _api.Ask(request, ContractsJson.Default.MakingSummary);
    }

    public Task<ServerAnswer<MakingSummary>> DeleteAsync(string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Making(id)), ContractsJson.Default.MakingSummary);
}
