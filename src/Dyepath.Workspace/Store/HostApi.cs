using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Dyepath.Contracts;
using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Store;

/// <summary>What came of asking the host.</summary>
public enum ServerReply
{
    /// <summary>It did what it was asked for.</summary>
    Done,

    /// <summary>No connection, or no host behind this page.</summary>
    Away,

    /// <summary>The host has another text than was expected.</summary>
    ChangedElsewhere,

    /// <summary>It has nothing under this id.</summary>
    Missing,

    /// <summary>The host asks for its access token first.</summary>
    SignIn,

    /// <summary>The host gave a reason; see <see cref="ServerAnswer{T}.Why"/>.</summary>
    Refused,

    /// <summary>What the host has stored is damaged.</summary>
    Damaged,

    /// <summary>The host is there and cannot just now; it may be asked again.</summary>
    Busy,
}

/// <param name="Reply">What came of it.</param>
/// <param name="Value">Where <paramref name="Reply"/> is <see cref="ServerReply.Done"/>.</param>
/// <param name="Why">The host's own words; empty where it gave none.</param>
/// <param name="After">When the host wants to be asked again, where it says so.</param>
/// <param name="Next">Where a list goes on.</param>
public sealed record ServerAnswer<T>(ServerReply Reply, T? Value, string Why = "", TimeSpan? After = null, string? Next = null)
{
    /// <summary>The same in the words of what is kept; only where there is no value.</summary>
    internal HostSaid<TText> Said<TText>()
        where TText : class => Reply switch
        {
            ServerReply.ChangedElsewhere => new HostHasAnother<TText>(),
            ServerReply.Missing => new HostDidNot<TText>(HostTrouble.Missing),
            ServerReply.SignIn => new HostDidNot<TText>(HostTrouble.SignIn),
            ServerReply.Refused => new HostDidNot<TText>(HostTrouble.Refused, Why),
            ServerReply.Damaged => new HostDidNot<TText>(HostTrouble.Damaged, Why),
            ServerReply.Busy => new HostDidNot<TText>(HostTrouble.Busy, Why, After),
            _ => new HostDidNot<TText>(HostTrouble.Away),
        };

    /// <summary>Why what was to be deleted is still there, in words; null where the host does not have it.</summary>
    /// <param name="wasSent">The host is known to have had it.</param>
    internal string? WhyStillThere(bool wasSent) => Reply switch
    {
        ServerReply.Done or ServerReply.Missing => null,
        ServerReply.Away or ServerReply.Busy => wasSent ? "The host has a copy and cannot be reached just now: try again once you are connected." : null,
        ServerReply.SignIn => "The host asks for its access token first.",
        _ => Why,
    };
}

internal static class HostTroubles
{
    /// <summary>What kept a text from being opened.</summary>
    public static ServerReply Reply(this HostTrouble trouble) => trouble switch
    {
        HostTrouble.SignIn => ServerReply.SignIn,
        HostTrouble.Missing => ServerReply.Missing,
        HostTrouble.Refused => ServerReply.Refused,
        HostTrouble.Damaged => ServerReply.Damaged,
        _ => ServerReply.Away,
    };
}

/// <summary>A text as the host has it.</summary>
/// <param name="Text">The document.</param>
/// <param name="Etag">Of the text, quotes included.</param>
/// <param name="Made">See <see cref="ProjectSummary.Made"/>.</param>
public sealed record StoredText(string Text, string Etag, string? Made = null);

/// <summary>Asks the host. A failing connection is an answer, never an exception.</summary>
internal sealed class HostApi(HttpClient http)
{
    /// <summary>A browser carries 64 KiB to its end after the page is gone (Fetch standard, keepalive).</summary>
    private const int MostAfterLeaving = 60_000;

    /// <summary>Where the browser's own handler of requests looks for options of its fetch; any other handler passes them over.</summary>
    internal static readonly HttpRequestOptionsKey<IDictionary<string, object>> FetchOptions = new("WebAssemblyFetchOptions");

    public static HttpRequestMessage Sending(HttpMethod method, string path, string text) =>
        Sending(method, path, Encoding.UTF8.GetBytes(text));

    public static HttpRequestMessage Sending(HttpMethod method, string path, byte[] utf8) => new(method, path)
    {
        Content = new ByteArrayContent(utf8) { Headers = { ContentType = new MediaTypeHeaderValue("application/json") } },
    };

    /// <summary>The page may be gone before the host answers.</summary>
    public static void LeavePage(HttpRequestMessage request, bool leaving, int bytes)
    {
        if (leaving && bytes <= MostAfterLeaving)
            request.Options.Set(FetchOptions, new Dictionary<string, object> { ["keepalive"] = true });
    }

    public Task<ServerAnswer<StoredText>> Text(string path) => Text(new HttpRequestMessage(HttpMethod.Get, path));

    public async Task<ServerAnswer<StoredText>> Text(HttpRequestMessage request)
    {
        var (reply, response, why) = await Send(request);
        using (response)
        {
            if (reply != ServerReply.Done)
                return new(reply, null, why, response?.Headers.RetryAfter?.Delta);
            try
            {
                // Named by its bytes, as the host names it: what stands between may have changed the header.
                var bytes = await response!.Content.ReadAsByteArrayAsync();
                return new(reply, new StoredText(Encoding.UTF8.GetString(bytes), Etags.Of(bytes), Header(response, ApiPaths.MadeHeader)));
            }
            catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException or IOException)
            {
                // Cut off on the way.
                return new(ServerReply.Away, null);
            }
        }
    }

    public async Task<ServerAnswer<T>> Ask<T>(HttpRequestMessage request, JsonTypeInfo<T> type)
        where T : class
    {
        var (reply, response, why) = await Send(request);
        using (response)
        {
            if (reply != ServerReply.Done || response!.StatusCode == HttpStatusCode.NoContent)
                return new(reply, null, why, response?.Headers.RetryAfter?.Delta);
            try
            {
                return new(reply, await response.Content.ReadFromJsonAsync(type), Next: NextPage(response));
            }
            catch (Exception fault) when (fault is JsonException or HttpRequestException or TaskCanceledException or IOException)
            {
                return new(ServerReply.Away, null);
            }
        }
    }

    /// <summary>Why something is not answered, as the host says it; null where it is.</summary>
    public async Task<Problem?> ProblemAsync(string path)
    {
        try
        {
            using var response = await http.GetAsync(new Uri(path, UriKind.Relative));
            return response.IsSuccessStatusCode ? null : await response.Content.ReadFromJsonAsync(ContractsJson.Default.Problem);
        }
        catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException or IOException or JsonException)
        {
            return null;
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
        if ((int)response.StatusCode is 429 or 500 or 502 or 503 or 504)
            return (ServerReply.Busy, response, said == "application/problem+json" ? await Why(response) : "");
        if (said != "application/problem+json")
            return (ServerReply.Away, response, "");
        return (response.StatusCode switch
        {
            HttpStatusCode.NotFound => ServerReply.Missing,
            HttpStatusCode.Unauthorized => ServerReply.SignIn,
            HttpStatusCode.UnprocessableEntity => ServerReply.Damaged,
            HttpStatusCode.PreconditionFailed or HttpStatusCode.Conflict => ServerReply.ChangedElsewhere,
            _ => ServerReply.Refused,
        }, response, await Why(response));
    }

    private static string? Header(HttpResponseMessage response, string name) =>
        response.Headers.TryGetValues(name, out var values) ? values.First() : null;

    /// <summary>The address in <c>Link: &lt;…&gt;; rel="next"</c> (RFC 8288).</summary>
    private static string? NextPage(HttpResponseMessage response) =>
        Header(response, "Link") is { } link && link.EndsWith("; rel=\"next\"", StringComparison.Ordinal) && link[0] == '<' ? link[1..link.IndexOf('>')] : null;

    private static async Task<string> Why(HttpResponseMessage response)
    {
        try
        {
            var problem = await response.Content.ReadFromJsonAsync(ContractsJson.Default.Problem);
            return $"{problem?.Title} {problem?.Detail}".Trim();
        }
        catch (Exception fault)
            when (fault is JsonException or NotSupportedException or HttpRequestException or TaskCanceledException or IOException)
        {
            return "The host did not say why.";
        }
    }
}
