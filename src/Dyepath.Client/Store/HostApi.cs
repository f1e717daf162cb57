using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Dyepath.Contracts;

namespace Dyepath.Client.Store;

public enum ServerReply
{
    Done,

    /// <summary>No connection, or no host behind this page.</summary>
    Away,

    /// <summary>The host has another text than was expected.</summary>
    ChangedElsewhere,

    Missing,

    /// <summary>The host asks for its access token first.</summary>
    SignIn,

    /// <summary>The host gave a reason; see <see cref="ServerAnswer{T}.Why"/>.</summary>
    Refused,
}

/// <param name="Value">Where <paramref name="Reply"/> is <see cref="ServerReply.Done"/>.</param>
public sealed record ServerAnswer<T>(ServerReply Reply, T? Value, string Why = "");

/// <summary>A text as the host has it.</summary>
public sealed record StoredText(string Text, string Etag);

/// <summary>Asks the host. A failing connection is an answer, never an exception.</summary>
internal sealed class HostApi(HttpClient http)
{
    public static HttpRequestMessage Sending(HttpMethod method, string path, string text) => Sending(method, path, Encoding.UTF8.GetBytes(text));

    public static HttpRequestMessage Sending(HttpMethod method, string path, byte[] utf8) => new(method, path)
    {
        Content = new ByteArrayContent(utf8) { Headers = { ContentType = new MediaTypeHeaderValue("application/json") } },
    };

    public Task<ServerAnswer<StoredText>> Text(string path) => Text(new HttpRequestMessage(HttpMethod.Get, path));

    public async Task<ServerAnswer<StoredText>> Text(HttpRequestMessage request)
    {
        var (reply, response, why) = await Send(request);
        using (response)
        {
            return reply == ServerReply.Done
                ? new(reply, new StoredText(await response!.Content.ReadAsStringAsync(), response.Headers.ETag?.ToString() ?? ""))
                : new(reply, null, why);
        }
    }

    public async Task<ServerAnswer<T>> Ask<T>(HttpRequestMessage request, JsonTypeInfo<T> type)
        where T : class
    {
        var (reply, response, why) = await Send(request);
        using (response)
        {
            if (reply != ServerReply.Done || response!.StatusCode == HttpStatusCode.NoContent)
                return new(reply, null, why);
            try
            {
                return new(reply, await response.Content.ReadFromJsonAsync(type));
            }
            catch (JsonException)
            {
                return new(ServerReply.Away, null);
            }
        }
    }

    private async Task<(ServerReply Reply, HttpResponseMessage? Response, string Why)> Send(HttpRequestMessage request)
    {
        HttpResponseMessage response;
        try
        {
            response = await http.SendAsync(request);
        }
        catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
        {
            return (ServerReply.Away, null, "");
        }
        // Where only the program's files are served, an address of the API answers with a page, or with some other server's refusal.
        var said = response.Content.Headers.ContentType?.MediaType;
        if (response.IsSuccessStatusCode)
            return (said == "text/html" ? ServerReply.Away : ServerReply.Done, response, "");
        if (said != "application/problem+json" || (int)response.StatusCode is 502 or 503 or 504)
            return (ServerReply.Away, response, "");
        return (response.StatusCode switch
        {
            HttpStatusCode.NotFound => ServerReply.Missing,
            HttpStatusCode.Unauthorized => ServerReply.SignIn,
            HttpStatusCode.PreconditionFailed or HttpStatusCode.Conflict => ServerReply.ChangedElsewhere,
            _ => ServerReply.Refused,
        }, response, await Why(response));
    }

    private static async Task<string> Why(HttpResponseMessage response)
    {
        try
        {
            var problem = await response.Content.ReadFromJsonAsync(ContractsJson.Default.Problem);
            return $"{problem?.Title} {problem?.Detail}".Trim();
        }
        catch (Exception fault) when (fault is JsonException or NotSupportedException or HttpRequestException)
        {
            return "The host did not say why.";
        }
    }
}
