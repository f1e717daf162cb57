using System.Net.Security;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Dyepath.Web.Serving;

/// <summary>
/// TLS 1.2 and later, with authenticated encryption under keys that are forgotten afterwards. Where the system alone chooses
/// suites, on Windows, TLS 1.2 would bring older ones along, so that only 1.3 is spoken there as far as Windows has it.
/// </summary>
internal static class Transport
{
    private static readonly Version WindowsWithTls13 = new(10, 0, 20348);

    private static readonly TlsCipherSuite[] Suites =
    [
        TlsCipherSuite.TLS_AES_128_GCM_SHA256,
        TlsCipherSuite.TLS_AES_256_GCM_SHA384,
        TlsCipherSuite.TLS_CHACHA20_POLY1305_SHA256,
        TlsCipherSuite.TLS_ECDHE_ECDSA_WITH_AES_128_GCM_SHA256,
        TlsCipherSuite.TLS_ECDHE_ECDSA_WITH_AES_256_GCM_SHA384,
        TlsCipherSuite.TLS_ECDHE_ECDSA_WITH_CHACHA20_POLY1305_SHA256,
        TlsCipherSuite.TLS_ECDHE_RSA_WITH_AES_128_GCM_SHA256,
        TlsCipherSuite.TLS_ECDHE_RSA_WITH_AES_256_GCM_SHA384,
        TlsCipherSuite.TLS_ECDHE_RSA_WITH_CHACHA20_POLY1305_SHA256,
    ];

    /// <summary>Sets certificate, protocols and suites.</summary>
    public static void Secure(HttpsConnectionAdapterOptions https, X509Certificate2 certificate)
    {
        https.ServerCertificate = certificate;
        if (OperatingSystem.IsWindows())
        {
            https.SslProtocols = Environment.OSVersion.Version >= WindowsWithTls13 ? SslProtocols.Tls13 : SslProtocols.Tls12;
            return;
        }
        https.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13;
        if (OperatingSystem.IsAndroid())
            return;
        var policy = new CipherSuitesPolicy(Suites);
        https.OnAuthenticate = (_, tls) => tls.CipherSuitesPolicy = policy;
    }
}
