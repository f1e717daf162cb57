using System.Net;
using Dyepath.Contracts;
using Dyepath.Storage;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Tests.Serving;

public class HostSettingsTests(Hosts hosts)
{
    private const string Token = GuardedHost.Token;

    [Theory]
    [InlineData(null, null, false, null)]
    [InlineData("127.0.0.1", null, false, null)]
    [InlineData("::1", null, false, null)]
    [InlineData("0.0.0.0", null, false, "--access-token")]
    [InlineData("192.168.1.20", null, true, "--access-token")]
    [InlineData("192.168.1.20", Token, false, "--make-certificate")]
    [InlineData("192.168.1.20", Token, true, null)]
    [InlineData("127.0.0.1", "too-short", false, "16 characters")]
    public void A_host_that_others_reach_has_a_token_and_tls(string? listen, string? token, bool tls, string? refusal)
    {
        var settings = new HostSettings(
            new DatabaseChoice("."), 0, listen is null ? null : IPAddress.Parse(listen), token, MakeCertificate: tls);
        if (refusal is null)
            settings.Check();
        else
            Assert.Contains(refusal, Assert.Throws<BadSettingException>(settings.Check).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_the_network_it_answers_over_https_to_who_has_the_token()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);
        await using var host = await RunningHost.StartAsync(new HostSettings(database, 0, IPAddress.Any, Token, MakeCertificate: true));
        using var client = host.NewClient();
        client.BaseAddress = new UriBuilder(host.Address) { Host = "127.0.0.1" }.Uri;
        Assert.Equal("https", client.BaseAddress.Scheme);
        var authority = await client.GetByteArrayAsync("certificate.crt");
        Assert.Equal(await File.ReadAllBytesAsync(Path.Combine(database.Folder, "certificate.crt")), authority);
        client.DefaultRequestHeaders.Authorization = new("Bearer", Token);
        using var answer = await client.GetAsync(ApiPaths.Projects);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var plain = new HttpClient();
        await Assert.ThrowsAsync<HttpRequestException>(() => plain.GetAsync(new UriBuilder(client.BaseAddress) { Scheme = "http" }.Uri));
    }

    [Fact]
    public void A_certificate_that_cannot_be_read_is_named()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);
        var file = Path.Combine(database.Folder, "mine.pfx");
        File.WriteAllText(file, "no certificate");
        var refusal = Assert.Throws<BadSettingException>(() => DyepathHost.Build(new HostSettings(database, 0, Certificate: file)));
        Assert.Contains("mine.pfx", refusal.Message, StringComparison.Ordinal);
    }
}
