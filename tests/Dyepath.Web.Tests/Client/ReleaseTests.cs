using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Dyepath.Storage;
using Dyepath.Web.Client;
using Dyepath.Web.Serving;
using Microsoft.Extensions.FileProviders;

namespace Dyepath.Web.Tests.Client;

/// <summary>A host that began with releases in its folder: six before it, each a day older than the next; one that came since cannot be read.</summary>
public sealed class LaterHost(Hosts hosts) : IAsyncLifetime
{
    public const string Rules = "body { margin: 0 }";

    internal RunningHost Running { get; private set; } = null!;

    internal DirectoryInfo Kept { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        var settings = new HostSettings(hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0);
        Kept = Directory.CreateDirectory(Path.Combine(settings.Database.Folder, "releases"));
        for (var age = 1; age <= 6; age++)
        {
            var file = Path.Combine(Kept.FullName, $"before{age}.zip");
            await using (var stream = File.Create(file))
                Earlier($"before{age}").Save(stream);
            File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddDays(-age));
        }
        Running = await RunningHost.StartWithPagesAsync(settings);
        await File.WriteAllTextAsync(Path.Combine(Kept.FullName, "broken.zip"), "no zip");
    }

    public ValueTask DisposeAsync() => Running.DisposeAsync();

    private static Release Earlier(string version)
    {
        var folder = Directory.CreateTempSubdirectory("dyepath-release-");
        try
        {
            Directory.CreateDirectory(Path.Combine(folder.FullName, "css"));
            void Write(string address, string text) => File.WriteAllText(Path.Combine(folder.FullName, address), text);
            Write("service-worker-assets.js", $$"""self.assetsManifest = { "version": "{{version}}", "assets": [{ "url": "index.html" }, { "url": "css/app.css" }] };""");
            Write("service-worker.js", "");
            Write("index.html", """<link rel="stylesheet" href="css/app.css">""");
            Write("css/app.css", "not asked for where there is a compressed one");
            using (var brotli = new BrotliStream(File.Create(Path.Combine(folder.FullName, "css/app.css.br")), CompressionMode.Compress))
                brotli.Write(Encoding.UTF8.GetBytes(Rules));
            using var files = new PhysicalFileProvider(folder.FullName);
            return Release.Read(files)!;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}

/// <summary>The program's files, each version under an address of its own.</summary>
public sealed class ReleaseTests(Hosts hosts, LaterHost later) : IClassFixture<LaterHost>
{
    [Fact]
    public async Task The_page_names_its_files_under_its_version_and_they_stand_there_for_ever()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        var page = await host.Client.GetStringAsync("/");
        var addresses = Regex.Matches(page, "(?:href|src)=\"([^\"/]+/[^\"]*)\"").Select(m => m.Groups[1].Value).ToList();
        Assert.True(addresses.Count > 15);
        var version = Assert.Single(addresses.Select(a => Regex.Match(a, "^v/([^/]+)/").Groups[1].Value).Distinct());
        foreach (var address in addresses.Append($"v/{version}/js/worker.js"))
        {
            using var answer = await host.NewClient().GetAsync(address);
            Assert.Equal((HttpStatusCode.OK, true), (answer.StatusCode, answer.Headers.CacheControl!.Extensions.Any(e => e.Name == "immutable")));
        }
        Assert.Equal(page, await host.Client.GetStringAsync("index.html"));
        Assert.Equal(page, await host.Client.GetStringAsync($"v/{version}/index.html"));
    }

    [Theory]
    [InlineData("v/other/js/store.js")]
    [InlineData("v/other")]
    [InlineData("v/..%2Fdyepath/db")]
    [InlineData("v/broken/js/store.js")]
    public async Task A_version_that_is_not_kept_is_said_to_be_gone(string address)
    {
        using var answer = await later.Running.Client.GetAsync(address);
        await RunningHost.ProblemAsync(HttpStatusCode.Gone, answer);
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    [Fact]
    public async Task A_host_serves_the_versions_before_it_and_forgets_the_oldest()
    {
        var host = later.Running;
        foreach (var (age, status) in new[] { (1, HttpStatusCode.OK), (3, HttpStatusCode.OK), (4, HttpStatusCode.Gone), (6, HttpStatusCode.Gone) })
        {
            using var answer = await host.Client.GetAsync($"v/before{age}/css/app.css");
            Assert.Equal(status, answer.StatusCode);
        }
        Assert.Contains("v/before2/css/app.css", await host.Client.GetStringAsync("v/before2/index.html"), StringComparison.Ordinal);
        Assert.Equal(["before1.zip", "before2.zip", "before3.zip"], later.Kept.GetFiles("before*").Select(file => file.Name).Order());
        // With its own, and the one that cannot be read.
        Assert.Equal(3 + 2, later.Kept.GetFiles().Length);
    }

    [Theory]
    [InlineData("br", true)]
    [InlineData("gzip, br;q=0.5", true)]
    [InlineData("gzip, br;q=0", false)]
    [InlineData("gzip", false)]
    [InlineData(null, false)]
    public async Task What_was_compressed_when_published_is_sent_as_the_browser_takes_it(string? takes, bool compressed)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "v/before1/css/app.css");
        if (takes is not null)
            request.Headers.Add("Accept-Encoding", takes);
        using var answer = await later.Running.Client.SendAsync(request);
        var body = await answer.Content.ReadAsStreamAsync();
        Assert.Equal(compressed, answer.Content.Headers.ContentEncoding.Contains("br"));
        Assert.Equal("text/css", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("Accept-Encoding", answer.Headers.Vary);
        using var reader = new StreamReader(compressed ? new BrotliStream(body, CompressionMode.Decompress) : body);
        Assert.Equal(LaterHost.Rules, await reader.ReadToEndAsync());
    }
}
