using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dyepath.Web.Protection;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Dyepath.Web.Serving;

/// <summary>Where Kestrel listens, and with which certificate.</summary>
internal static class Listening
{
    /// <summary>Binds Kestrel to the settings' address and port.</summary>
    public static void Bind(this KestrelServerOptions kestrel, HostSettings settings)
    {
        var certificate = Certificate(settings);
        if (settings.Listen is null && settings.Port != 0)
            kestrel.ListenLocalhost(settings.Port, Secure);
        else
            kestrel.Listen(settings.Listen ?? IPAddress.Loopback, settings.Port, Secure);

        void Secure(ListenOptions listen)
        {
            if (certificate is not null)
                listen.UseHttps(https => Transport.Secure(https, certificate));
        }
    }

    private static X509Certificate2? Certificate(HostSettings settings)
    {
        if (settings.MakeCertificate)
            return MadeCertificate.Of(settings).Load();
        if (settings.Certificate is not { } file)
            return null;
        try
        {
            return X509CertificateLoader.LoadPkcs12FromFile(file, settings.CertificatePassword);
        }
        catch (CryptographicException)
        {
            throw new BadSettingException($"{file} is no PKCS#12 certificate with key, or its password is another one.");
        }
    }
}
