using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;

namespace Dyepath.Web.Tests.Protection;

/// <summary>What the host speaks over TLS, tried by connecting.</summary>
public sealed class TransportTests(GuardedHost guarded) : IClassFixture<GuardedHost>
{
    private readonly RunningHost _host = guarded.Running;

    /// <summary>Numbers from the registry of TLS cipher suites (IANA).</summary>
    [Theory]
    [InlineData(0xc02b, "ECDHE-ECDSA, AES-128-GCM")]
    [InlineData(0xc02c, "ECDHE-ECDSA, AES-256-GCM")]
    [InlineData(0xcca9, "ECDHE-ECDSA, ChaCha20-Poly1305")]
    public async Task A_client_with_authenticated_encryption_is_served(int suite, string name) =>
        Assert.True(suite == await ClientHello.OfferAsync(_host.Address, ClientHello.Tls12, (ushort)suite), name);

    [Theory]
    [InlineData(0xc009, "ECDHE-ECDSA, AES-128-CBC, SHA-1")]
    [InlineData(0xc00a, "ECDHE-ECDSA, AES-256-CBC, SHA-1")]
    [InlineData(0xc023, "ECDHE-ECDSA, AES-128-CBC, SHA-256")]
    [InlineData(0xc024, "ECDHE-ECDSA, AES-256-CBC, SHA-384")]
    [InlineData(0xc0ac, "ECDHE-ECDSA, AES-128-CCM")]
    [InlineData(0xc072, "ECDHE-ECDSA, Camellia-128-CBC")]
    [InlineData(0x002f, "RSA, AES-128-CBC")]
    [InlineData(0x009c, "RSA, AES-128-GCM")]
    [InlineData(0x009e, "DHE-RSA, AES-128-GCM")]
    [InlineData(0xc006, "ECDHE-ECDSA, no encryption")]
    [InlineData(0x0034, "DH without a certificate, AES-128-CBC")]
    public async Task A_client_with_nothing_better_is_refused(int suite, string name)
    {
        Assert.True(await ClientHello.OfferAsync(_host.Address, ClientHello.Tls12, (ushort)suite) is null, name);
        // Beside a good one it is not chosen.
        Assert.Equal((ushort)0xc02b, await ClientHello.OfferAsync(_host.Address, ClientHello.Tls12, (ushort)suite, 0xc02b));
    }

    [Theory]
    [InlineData(ClientHello.Tls10)]
    [InlineData(ClientHello.Tls11)]
    public async Task Older_versions_are_refused(ushort version) =>
        Assert.Null(await ClientHello.OfferAsync(_host.Address, version, 0xc009, 0xc00a, 0xc013, 0x002f, 0x0035));

    [Theory]
    [InlineData(SslProtocols.Tls12)]
    [InlineData(SslProtocols.Tls13)]
    public async Task A_whole_handshake_ends_in_authenticated_encryption(SslProtocols version)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _host.Address.Port);
        await using var tls = new SslStream(socket.GetStream());
        await tls.AuthenticateAsClientAsync(new SslClientAuthenticationOptions
        {
            TargetHost = "localhost",
            EnabledSslProtocols = version,
            CertificateChainPolicy = _host.Trust(),
        });
        Assert.Equal(version, tls.SslProtocol);
        Assert.Matches("GCM|CHACHA20", tls.NegotiatedCipherSuite.ToString());
    }

    [Theory]
    [InlineData("yarn.example", true)]
    [InlineData("localhost", false)]
    [InlineData("127.0.0.1", false)]
    public async Task Browsers_are_told_to_come_by_https_from_now_on(string name, bool told)
    {
        using var client = _host.NewClient();
        foreach (var path in new[] { "sign-in", "icon.svg", "api/projects" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Host = name } };
            using var answer = await client.SendAsync(request);
            var said = answer.Headers.TryGetValues("Strict-Transport-Security", out var values) ? Assert.Single(values) : null;
            Assert.Equal(told ? "max-age=31536000" : null, said);
        }
    }
}
