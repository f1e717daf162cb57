using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage.Projects;

namespace Dyepath.Web.Tests.Drills;

/// <summary>
/// Saves one project over and over by the rules of the workspace: what had no answer, or one that says the host is away, is sent again as it was;
/// the ETag of the last text that was acknowledged guards every save.
/// </summary>
internal sealed class SteadyWriter(Uri address, int seed)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Hosts have to start beside the load.</summary>
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(20);

    private readonly string _id = Guid.NewGuid().ToString();
    private string _acknowledged = "";

    public int Acknowledged { get; private set; }

    /// <summary>Sent again after no answer, or after one that asks for it.</summary>
    public int Again { get; private set; }

    /// <summary>Answers that no rule allows for.</summary>
    public List<string> Faults { get; } = [];

    public async Task WriteAsync(CancellationToken stop)
    {
        using var client = NewClient();
        for (var number = 1; !stop.IsCancellationRequested; number++)
        {
            await SaveAsync(client, Text(number));
            await Task.Delay(Breath, CancellationToken.None);
        }
    }

    /// <summary>What is stored is the last acknowledged text, and each acknowledged save was done once and none twice.</summary>
    public async Task CheckAsync()
    {
        using var client = NewClient();
        Assert.Empty(Faults);
        Assert.Equal(_acknowledged, await client.GetStringAsync(ApiPaths.Project(_id)));
        var versions = (await client.GetFromJsonAsync(ApiPaths.Versions(_id), ContractsJson.Default.VersionSummaryArray))!;
        Assert.Equal(Acknowledged - 1, versions.Select(v => v.Number).FirstOrDefault());
    }

    /// <summary>Of a designer's usual size.</summary>
    private string Text(int number) => $$"""{ "title": "Drill {{seed}}", "save": {{number}}, "words": "{{new string((char)('a' + number % 26), 4000)}}" }""";

    private async Task SaveAsync(HttpClient client, string text)
    {
        for (var begun = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(begun) < Patience; await Task.Delay(Pause))
        {
            using var request = _acknowledged.Length == 0
                ? new HttpRequestMessage(HttpMethod.Post, ApiPaths.NewProject(_id))
                : new HttpRequestMessage(HttpMethod.Put, ApiPaths.Project(_id));
            request.Content = RunningHost.Json(text);
            if (_acknowledged.Length > 0)
                request.Headers.TryAddWithoutValidation("If-Match", Etag(_acknowledged));
            try
            {
                using var answer = await client.SendAsync(request);
                if (answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.Created || await IsMineAsync(answer, text))
                {
                    (_acknowledged, Acknowledged) = (text, Acknowledged + 1);
                    return;
                }
                if (answer.StatusCode is not (HttpStatusCode.ServiceUnavailable or HttpStatusCode.BadGateway or HttpStatusCode.GatewayTimeout))
                {
                    Faults.Add($"{answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
                    return;
                }
            }
            catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
            {
                // No answer: it may be stored or not.
            }
            Again++;
        }
        Faults.Add($"No host took a save within {Patience.TotalSeconds} s.");
    }

    /// <summary>The project of this id is the one that was sent before, whose answer did not arrive.</summary>
    private static async Task<bool> IsMineAsync(HttpResponseMessage answer, string text) =>
        answer.StatusCode == HttpStatusCode.Conflict
        && (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.Problem))!.CurrentEtag == Etag(text);

    private static string Etag(string text) => Etags.Of(Encoding.UTF8.GetBytes(text));

    private HttpClient NewClient()
    {
        var client = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromSeconds(30) };
        client.DefaultRequestHeaders.Add("Origin", address.GetLeftPart(UriPartial.Authority));
        return client;
    }
}
