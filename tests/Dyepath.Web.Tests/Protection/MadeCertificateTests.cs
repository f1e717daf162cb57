using System.Net;
using System.Security.Cryptography.X509Certificates;
using Dyepath.Storage;
using Dyepath.Web.Protection;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Tests.Protection;

public class MadeCertificateTests(Hosts hosts)
{
    private static readonly IPAddress Home = IPAddress.Parse("192.168.1.20");

    private readonly DatabaseChoice _folder = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);

    [Fact]
    public void It_names_this_host_and_is_signed_by_an_authority_that_can_sign_nothing_more()
    {
        using var certificate = Made(Home, "yarn.example");
        var names = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>().Single();
        Assert.Equal([Home], names.EnumerateIPAddresses());
        Assert.Equal(["localhost", Environment.MachineName, $"{Environment.MachineName}.local", "yarn.example"], names.EnumerateDnsNames());
        Assert.True(certificate.HasPrivateKey);
        Assert.InRange(certificate.NotAfter - DateTime.Now, TimeSpan.FromDays(390), TimeSpan.FromDays(398));

        using var authority = X509CertificateLoader.LoadCertificateFromFile(Path.Combine(_folder.Folder, "certificate.crt"));
        var hash = authority.GetCertHashString(System.Security.Cryptography.HashAlgorithmName.SHA256);
        Assert.Equal(hash, Certificate(Home, "yarn.example").Fingerprint.Replace(":", "", StringComparison.Ordinal));
        using var chain = new X509Chain();
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        Assert.True(chain.Build(certificate));
        var constraints = authority.Extensions.OfType<X509BasicConstraintsExtension>().Single();
        Assert.True(constraints.CertificateAuthority);
        Assert.Equal((true, 0), (constraints.HasPathLengthConstraint, constraints.PathLengthConstraint));

        // The authority's key is nowhere: the one key in the folder is the host's own.
        var stored = X509CertificateLoader.LoadPkcs12CollectionFromFile(Path.Combine(_folder.Folder, "certificate.pfx"), null);
        Assert.Equal(certificate.Thumbprint, Assert.Single(stored).Thumbprint);
        Assert.False(certificate.Extensions.OfType<X509BasicConstraintsExtension>().Single().CertificateAuthority);
        const UnixFileMode owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        if (!OperatingSystem.IsWindows())
            Assert.Equal(owner, File.GetUnixFileMode(Path.Combine(_folder.Folder, "certificate.pfx")));
    }

    [Fact]
    public void It_is_kept_until_the_host_goes_by_another_name()
    {
        using var first = Made(Home);
        using var again = Made(Home);
        Assert.Equal(first.Thumbprint, again.Thumbprint);
        using var named = Made(Home, "yarn.example");
        Assert.NotEqual(first.Thumbprint, named.Thumbprint);
        using var moved = Made(IPAddress.Parse("192.168.1.21"), "yarn.example");
        Assert.NotEqual(named.Thumbprint, moved.Thumbprint);
        using var everywhere = Made(IPAddress.Any, "yarn.example");
        Assert.Equal(moved.Thumbprint, everywhere.Thumbprint);
    }

    private X509Certificate2 Made(IPAddress listen, params string[] names) => Certificate(listen, names).Load();

    private MadeCertificate Certificate(IPAddress listen, params string[] names) => MadeCertificate.Of(
        new HostSettings(_folder, 0, listen, GuardedHost.Token, MakeCertificate: true, Names: names));
}
