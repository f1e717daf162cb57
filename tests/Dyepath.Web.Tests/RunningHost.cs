using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Projects;
using Dyepath.Storage;
using Dyepath.Storage.Database;
using Dyepath.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;

[assembly: AssemblyFixture(typeof(Dyepath.Web.Tests.Hosts))]

namespace Dyepath.Web.Tests;

/// <summary>One real host on each database for the whole run; every test has projects of its own.</summary>
public sealed class Hosts : IAsyncDisposable
{
    private readonly Dictionary<DatabaseKind, Task<RunningHost>> _running = [];

    public TestDatabases Databases { get; } = new();

    internal Task<RunningHost> OnAsync(DatabaseKind kind)
    {
        lock (_running)
        {
            if (!_running.TryGetValue(kind, out var host))
                _running.Add(kind, host = RunningHost.StartWithPagesAsync(SettingsOn(kind)));
            return host;
        }
    }

    /// <summary>A folder with the store that a host made there: a program that is started on it does not plan the demo first, for seconds.</summary>
    internal async Task<string> BegunFolderAsync()
    {
        var database = Databases.NewDatabase(DatabaseKind.Sqlite);
        await (await RunningHost.StartAsync(new HostSettings(database, 0))).DisposeAsync();
        return database.Folder;
    }

    /// <summary>Who sits at this computer may say to ask from elsewhere, so that what is counted by address is each test's own.</summary>
    private HostSettings SettingsOn(DatabaseKind kind) => new(Databases.NewDatabase(kind), 0) { Proxies = [IPNetwork.Parse("127.0.0.1/32")] };

    public async ValueTask DisposeAsync()
    {
        foreach (var host in _running.Values)
            await (await host).DisposeAsync();
        Databases.Dispose();
    }
}

/// <summary>One host that asks for a token, for all cases of a class that end no session and give no wrong tokens to speak of.</summary>
public sealed class GuardedHost(Hosts hosts) : IAsyncLifetime
{
    public const string Token = "correct-horse-battery";

    internal RunningHost Running { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Running = await RunningHost.StartWithPagesAsync(new HostSettings(
        hosts.Databases.NewDatabase(DatabaseKind.Sqlite), 0, AccessToken: Token, MakeCertificate: true, Names: ["yarn.example"]));

    public ValueTask DisposeAsync() => Running.DisposeAsync();
}

/// <summary>A real host on a free port of this computer, and a client that behaves as its own page does.</summary>
internal sealed class RunningHost : IAsyncDisposable
{
    private static int _elsewhere;

    private readonly WebApplication _app;

    private readonly HostSettings _settings;

    private bool _isAnothers;

    /// <summary>Its log would stand between the failures of a run: it is written only where it is asked for. (A program's log is read by its own tests.)</summary>
    static RunningHost()
    {
        if (Environment.GetEnvironmentVariable("DYEPATH_TEST_LOG") is null)
            Console.SetError(TextWriter.Null);
    }

    private RunningHost(WebApplication app, HostSettings settings)
    {
        (_app, _settings) = (app, settings);
        Address = new Uri(app.Urls.Single());
        Client = NewClient();
        Client.DefaultRequestHeaders.Add("Origin", Address.GetLeftPart(UriPartial.Authority));
    }

    public Uri Address { get; }

    public HttpClient Client { get; }

    public static string Demo => Encoding.UTF8.GetString(DemoProject.Utf8);

    /// <summary>Without the client's pages, which are 30 MB as they are built, and which every host would read and keep in its folder.</summary>
    /// <param name="clock">Missing: the system's.</param>
    public static Task<RunningHost> StartAsync(HostSettings settings, TimeProvider? clock = null) =>
        StartAsync(DyepathHost.Build(settings, clock, new NullFileProvider()), settings);

    public static Task<RunningHost> StartWithPagesAsync(HostSettings settings) => StartAsync(DyepathHost.Build(settings), settings);

    private static async Task<RunningHost> StartAsync(WebApplication app, HostSettings settings)
    {
        await DyepathHost.StartAsync(app);
        return new RunningHost(app, settings);
    }

    /// <summary>The same host as somebody asks it whose address is nobody else's; it goes on after this is disposed of.</summary>
    public RunningHost FromElsewhere()
    {
        var number = Interlocked.Increment(ref _elsewhere);
        var other = new RunningHost(_app, _settings) { _isAnothers = true };
        other.Client.DefaultRequestHeaders.Add("X-Forwarded-For", $"10.0.{number / 256}.{number % 256}");
        return other;
    }

    /// <summary>Says nothing of where it comes from, follows and remembers nothing, trusts the authority that the host made.</summary>
    public HttpClient NewClient()
    {
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false };
        if (_settings.MakeCertificate)
            handler.SslOptions.CertificateChainPolicy = Trust();
        return new HttpClient(handler) { BaseAddress = Address };
    }

    /// <summary>As a phone does that was told to trust the authority which the host made.</summary>
    public X509ChainPolicy Trust() => new()
    {
        TrustMode = X509ChainTrustMode.CustomRootTrust,
        CustomTrustStore = { X509CertificateLoader.LoadCertificateFromFile(Path.Combine(_settings.Database.Folder, "certificate.crt")) },
        RevocationMode = X509RevocationMode.NoCheck,
    };

    public static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    public async Task<ProjectSummary> CreateAsync(string text)
    {
        using var answer = await Client.PostAsync(ApiPaths.Projects, Json(text));
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return await SummaryAsync(answer);
    }

    public async Task<HttpResponseMessage> SaveAsync(string id, string? seen, string text)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, ApiPaths.Project(id)) { Content = Json(text) };
        if (seen is not null)
            request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(seen));
        return await Client.SendAsync(request);
    }

    /// <summary>Changes what is stored behind the host's back.</summary>
    public async Task SpoilAsync(FormattableString sql)
    {
        await using var scope = _app.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<AppDb>().Database.ExecuteSqlAsync(sql);
    }

    public async Task<HttpResponseMessage> RestoreVersionAsync(string id, int number, string seen)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, ApiPaths.RestoreVersion(id, number));
        request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(seen));
        return await Client.SendAsync(request);
    }

    /// <summary>As the page does that asks for the token.</summary>
    public async Task<HttpResponseMessage> SignInAsync(string token, string? browser = null, string? cookie = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, ApiPaths.SignIn) { Content = new FormUrlEncodedContent([new("token", token)]) };
        if (browser is not null)
            request.Headers.Add("User-Agent", browser);
        if (cookie is not null)
            request.Headers.Add("Cookie", cookie);
        return await Client.SendAsync(request);
    }

    /// <summary>The cookie that an answer gives, as the browser sends it back.</summary>
    public static string CookieOf(HttpResponseMessage answer) => answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];

    /// <summary>As a maker does, who has a key and no access token.</summary>
    public Task<HttpResponseMessage> OpenAsync(string? key) => WithKeyAsync(HttpMethod.Get, ApiPaths.Handed, key);

    public Task<HttpResponseMessage> SendLogAsync(string? key, string making, string text) =>
        WithKeyAsync(HttpMethod.Put, ApiPaths.HandedLog(making), key, text);

    public static async Task<ProjectSummary> SummaryAsync(HttpResponseMessage answer) =>
        (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.ProjectSummary))!;

    /// <summary>The problem that a refusal says, which has the status of the answer and a sentence on what to do.</summary>
    public static async Task<Problem> ProblemAsync(HttpStatusCode status, HttpResponseMessage answer)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.Problem))!;
        Assert.Equal((int)status, problem.Status);
        Assert.EndsWith(".", problem.Title, StringComparison.Ordinal);
        Assert.EndsWith(".", problem.Detail, StringComparison.Ordinal);
        return problem;
    }

    private async Task<HttpResponseMessage> WithKeyAsync(HttpMethod method, string path, string? key, string? text = null)
    {
        using var request = new HttpRequestMessage(method, path) { Content = text is null ? null : Json(text) };
        if (key is not null)
            request.Headers.Add(ApiPaths.HandedKeyHeader, key);
        return await Client.SendAsync(request);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (_isAnothers)
            return;
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
