using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Store;

/// <summary>Copies of pieces under way on the host, over its JSON API.</summary>
public sealed class MakingHost(HttpClient http, TimeProvider? clock = null) : IHostTexts<Piece>
{
    private readonly HostApi _api = new(http);
    private readonly TimeProvider _clock = clock ?? TimeProvider.System;

    /// <summary>By piece, the project that it was begun from: a piece never goes to another.</summary>
    private readonly Dictionary<string, string?> _projects = new(StringComparer.Ordinal);

    /// <summary>Every piece on the host, without its text.</summary>
    public async Task<ServerAnswer<MakingSummary[]>> ListAsync()
    {
        var answer = await _api.Ask(new HttpRequestMessage(HttpMethod.Get, ApiPaths.Makings), ContractsJson.Default.MakingSummaryArray);
        foreach (var making in answer.Value ?? [])
            _projects[making.Id] = making.ProjectId;
        return answer;
    }

    /// <summary>A piece's document as the host has it.</summary>
    public Task<ServerAnswer<StoredText>> GetAsync(string id) => _api.Text(ApiPaths.Making(id));

    public async Task<HostSaid<Piece>> ReadAsync(string id)
    {
        var answer = await GetAsync(id);
        if (answer.Value is not { } stored)
            return answer.Said<Piece>();
        if (MakingReader.Read(Encoding.UTF8.GetBytes(stored.Text)).Making is not { } making)
            return new HostIsUnreadable<Piece>();
        if (!_projects.ContainsKey(id))
            await ListAsync();
        return new HostHas<Piece>(Piece.Of(making, _clock.GetUtcNow(), _projects.GetValueOrDefault(id)), stored.Etag, stored.Made);
    }

    /// <param name="etag">The text that this one continues; missing where the host is not known to have any.</param>
    public async Task<HostSaid<Piece>> WriteAsync(string id, Piece content, string? etag, bool leaving)
    {
        var document = MakingWriter.WriteUtf8(content.Making);
        var request = HostApi.Sending(
            HttpMethod.Put, etag is null ? ApiPaths.NewMaking(id, content.ProjectId) : ApiPaths.Making(id), document);
        request.Headers.TryAddWithoutValidation(etag is null ? "If-None-Match" : "If-Match", etag ?? "*");
        HostApi.LeavePage(request, leaving, document.Length);
        var answer = await _api.Ask(request, ContractsJson.Default.MakingSummary);
        if (answer.Value is not { } summary)
            return answer.Said<Piece>();
        _projects[id] = summary.ProjectId;
        return summary.Etag == Etags.Of(document) ? new HostTook<Piece>(summary.Etag, summary.Made) : new HostHasAnother<Piece>();
    }

    /// <summary>Removes a piece from the host.</summary>
    public Task<ServerAnswer<MakingSummary>> DeleteAsync(string id) =>
        _api.Ask(new HttpRequestMessage(HttpMethod.Delete, ApiPaths.Making(id)), ContractsJson.Default.MakingSummary);
}
