using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;
using Dyepath.Storage;
using Dyepath.Storage.Projects;
using Dyepath.Web.Serving;

namespace Dyepath.Bench;

/// <summary>
/// Documents read and saved over HTTP on this computer, host and load in one process: the load takes its share of the cores.
/// Closed loop: every client sends the next request when the last is answered.
/// </summary>
internal static class HostBenchmark
{
    private const string Variable = "DYEPATH_TEST_POSTGRES";
    private const int Clients = 16;

    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Measured = TimeSpan.FromSeconds(4);

    public static void Run(TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("dyepath-bench-");
        try
        {
            RunAsync(output, "SQLite", new DatabaseChoice(folder.FullName)).GetAwaiter().GetResult();
            if (Environment.GetEnvironmentVariable(Variable) is { } server)
                RunAsync(output, "PostgreSQL", new DatabaseChoice(folder.FullName, server)).GetAwaiter().GetResult();
            else
                output.WriteLine($"PostgreSQL is not measured: {Variable} is not set; see tests/with-postgres.");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task RunAsync(TextWriter output, string name, DatabaseChoice database)
    {
        await using var app = DyepathHost.Build(new HostSettings(database, 0));
        await DyepathHost.StartAsync(app);
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.Single()) };
        client.DefaultRequestHeaders.Add("Origin", client.BaseAddress.GetLeftPart(UriPartial.Authority));
        var demo = Encoding.UTF8.GetString(DemoProject.Utf8);
        var projects = Enumerable.Range(0, Clients).Select(_ => Guid.NewGuid().ToString()).ToArray();
        var stored = new string[Clients];
        for (var i = 0; i < Clients; i++)
        {
            using var created = await client.PostAsync(ApiPaths.NewProject(projects[i]), Json(demo));
            created.EnsureSuccessStatusCode();
            stored[i] = demo;
        }
        await ReportAsync(output, $"{name}, reading a document", i => client.GetAsync(ApiPaths.Project(projects[i])));
        await ReportAsync(output, $"{name}, the shelf of {Clients + 1}", _ => client.GetAsync(ApiPaths.Projects));
        await ReportAsync(output, $"{name}, saving a document", SaveAsync);
        await app.StopAsync();

        async Task<HttpResponseMessage> SaveAsync(int i)
        {
            var next = demo.Replace("Tideline is", $"Tideline {Guid.NewGuid()} is", StringComparison.Ordinal);
            using var request = new HttpRequestMessage(HttpMethod.Put, ApiPaths.Project(projects[i])) { Content = Json(next) };
            request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(Etags.Of(Encoding.UTF8.GetBytes(stored[i]))));
            stored[i] = next;
            return await client.SendAsync(request);
        }
    }

    private static async Task ReportAsync(TextWriter output, string what, Func<int, Task<HttpResponseMessage>> ask)
    {
        await LoadAsync(ask, WarmUp);
        var times = await LoadAsync(ask, Measured);
        times.Sort();
        var (half, most) = (times[times.Count / 2], times[times.Count * 99 / 100]);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: {times.Count / Measured.TotalSeconds:0} requests/s, p50 {half:0.0} ms, p99 {most:0.0} ms"));
    }

    /// <summary>Milliseconds of every request.</summary>
    private static async Task<List<double>> LoadAsync(Func<int, Task<HttpResponseMessage>> ask, TimeSpan duration)
    {
        var begun = Stopwatch.GetTimestamp();
        var clients = await Task.WhenAll(Enumerable.Range(0, Clients).Select(i => Task.Run(async () =>
        {
            var times = new List<double>();
            while (Stopwatch.GetElapsedTime(begun) < duration)
            {
                var sent = Stopwatch.GetTimestamp();
                using var answer = await ask(i);
                answer.EnsureSuccessStatusCode();
                times.Add(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
            }
            return times;
        })));
        return [.. clients.SelectMany(times => times)];
    }

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");
}
