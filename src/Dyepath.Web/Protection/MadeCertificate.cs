using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dyepath.Storage.Database;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Protection;

/// <summary>
/// A certificate for a home network, with the authority that a phone is told to trust. The authority's key signs once and is
/// forgotten: whoever steals the data folder can pass for this host, but for no other.
/// </summary>
internal sealed class MadeCertificate
{
    /// <summary>Where a phone fetches the authority.</summary>
    public const string Path = "/certificate.crt";

    private const string ServerUse = "1.3.6.1.5.5.7.3.1";

    /// <summary>Browsers refuse certificates that are valid for longer.</summary>
    private static readonly TimeSpan Validity = TimeSpan.FromDays(397);

    private static readonly TimeSpan RenewBefore = TimeSpan.FromDays(30);

    private readonly HostSettings _settings;

    private MadeCertificate(HostSettings settings) => _settings = settings;

    /// <summary>The authority's certificate, DER.</summary>
    public byte[] Authority => File.ReadAllBytes(AuthorityFile);

    /// <summary>The authority's SHA-256, as phones show it.</summary>
    public string Fingerprint => string.Join(':', SHA256.HashData(Authority).Select(b => b.ToString("X2", CultureInfo.InvariantCulture)));

    private string AuthorityFile => System.IO.Path.Combine(_settings.Database.Folder, "certificate.crt");

    private string KeyFile => System.IO.Path.Combine(_settings.Database.Folder, "certificate.pfx");

    /// <summary>In the data folder of these settings; nothing is made before it is loaded.</summary>
    public static MadeCertificate Of(HostSettings settings) => new(settings);

    /// <summary>The stored certificate while it is valid and names this host; else a new one.</summary>
    public X509Certificate2 Load()
    {
        if (!File.Exists(KeyFile) || !File.Exists(AuthorityFile) || !StillServes(X509CertificateLoader.LoadPkcs12FromFile(KeyFile, null)))
            Make();
        return X509CertificateLoader.LoadPkcs12FromFile(KeyFile, null);
    }

    private bool StillServes(X509Certificate2 certificate)
    {
        using (certificate)
        {
            var names = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>().Single();
            return certificate.NotAfter > DateTime.Now + RenewBefore
                && !new HostNames(_settings).Names.Except(names.EnumerateDnsNames(), StringComparer.OrdinalIgnoreCase).Any()
                && (_settings.Listen is not { } address || IsAny(address) || names.EnumerateIPAddresses().Contains(address));
        }
    }

    private void Make()
    {
        var from = DateTimeOffset.UtcNow.AddHours(-1);
        using var authorityKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var authorityRequest = new CertificateRequest($"CN=Dyepath on {Environment.MachineName}", authorityKey, HashAlgorithmName.SHA256);
        authorityRequest.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        authorityRequest.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        var authorityId = new X509SubjectKeyIdentifierExtension(authorityRequest.PublicKey, false);
        authorityRequest.CertificateExtensions.Add(authorityId);
        using var authority = authorityRequest.CreateSelfSigned(from, from + Validity);

        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={Environment.MachineName}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerUse)], false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromSubjectKeyIdentifier(authorityId));
        request.CertificateExtensions.Add(AlternativeNames());
        using var signed = request.Create(authority, from, from + Validity, RandomNumberGenerator.GetBytes(16));
        using var certificate = signed.CopyWithPrivateKey(key);

        using (var file = OwnersFile.Open(KeyFile, FileMode.Create))
            file.Write(certificate.Export(X509ContentType.Pkcs12));
        File.WriteAllBytes(AuthorityFile, authority.Export(X509ContentType.Cert));
    }

    private X509Extension AlternativeNames()
    {
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in new HostNames(_settings).Names)
            names.AddDnsName(name);
        var addresses = _settings.Listen is { } one && !IsAny(one)
            ? [one]
            : NetworkInterface.GetAllNetworkInterfaces().SelectMany(i => i.GetIPProperties().UnicastAddresses).Select(a => a.Address)
                .Where(a => !a.IsIPv6LinkLocal);
        foreach (var address in addresses)
            names.AddIpAddress(address);
        return names.Build();
    }

    private static bool IsAny(IPAddress address) => address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any);
}
