using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Handing;

/// <summary>Pieces handed over, and the logs that come back: both sides, over the host's JSON API.</summary>
public sealed class HandedShelf(HttpClient http)
{
    private readonly HostApi _api = new(http);

    /// <summary>Whether a text has the form of a key: 43 letters, digits, - and _.</summary>
    public static bool CanBeKey(string text) => text.Length == 43 && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    /// <returns>With the key, which is told this once.</returns>
    public Task<ServerAnswer<Handover>> HandOverAsync(string projectId, string size) => _api.Ask(
        HostApi.Sending(
            HttpMethod.Post, ApiPaths.Handovers(projectId),
            System.Text.Json.JsonSerializer.Serialize(new NewHandover(size), ContractsJson.Default.NewHandover)),
        ContractsJson.Default.Handover);

    /// <summary>Those of a project that stand.</summary>
    public Task<ServerAnswer<HandoverSummary[]>> HandoversAsync(string projectId) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Handovers(projectId)), ContractsJson.Default.HandoverSummaryArray);

    /// <summary>Ends a handover: its key opens nothing any more.</summary>
    public Task<ServerAnswer<Handover>> RevokeAsync(string projectId, string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Handover(projectId, id)), ContractsJson.Default.Handover);

    /// <summary>What makers of a project have sent, without their texts.</summary>
    public Task<ServerAnswer<ReceivedLog[]>> LogsAsync(string projectId) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Logs(projectId)), ContractsJson.Default.ReceivedLogArray);

    /// <summary>The making document that one maker has sent.</summary>
    public Task<ServerAnswer<StoredText>> LogAsync(string projectId, string id) => _api.Text(ApiPaths.Log(projectId, id));

    /// <summary>Removes from the host what one maker has sent.</summary>
    public Task<ServerAnswer<Handover>> DeleteLogAsync(string projectId, string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Log(projectId, id)), ContractsJson.Default.Handover);

    /// <summary>The piece that a key opens, with an empty log.</summary>
    public Task<ServerAnswer<StoredText>> OpenAsync(string key) =>
        _api.Text(WithKey(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Handed), key));

    /// <summary>Sends what the maker has done to the designer; what she sent of this piece before is replaced.</summary>
    public async Task<ServerReply> SendLogAsync(string key, string makingId, MakingDocument making) => (await _api.Text(WithKey(
        HostApi.Sending(HttpMethod.Put, ApiPaths.HandedLog(makingId), MakingWriter.WriteUtf8(making)), key))).Reply;

    private static HttpRequestMessage WithKey(HttpRequestMessage request, string key)
    {
        request.Headers.TryAddWithoutValidation(ApiPaths.HandedKeyHeader, key);
        return request;
    }
}
