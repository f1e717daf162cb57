using System.Net;
using Dyepath.Storage;

namespace Dyepath.Web.Serving;

/// <summary>How the host is asked to run.</summary>
/// <param name="Database">Where the store lies.</param>
/// <param name="Port">0 for any free one.</param>
/// <param name="Listen">Missing: this computer alone.</param>
/// <param name="AccessToken">Missing: nobody is asked; only on this computer alone.</param>
/// <param name="Certificate">A PKCS#12 file.</param>
/// <param name="MakeCertificate">Makes a certificate in the data folder, and a new one when it runs out.</param>
/// <param name="Names">Names by which browsers may call this host, besides localhost and the computer's own.</param>
internal sealed record HostSettings(
    DatabaseChoice Database,
    int Port,
    IPAddress? Listen = null,
    string? AccessToken = null,
    string? Certificate = null,
    bool MakeCertificate = false,
    params IReadOnlyList<string> Names)
{
    /// <summary>Of that file.</summary>
    public string? CertificatePassword { get; init; }

    /// <summary>Whose word on where a request comes from is taken; missing, nobody's.</summary>
    public IReadOnlyList<IPNetwork>? Proxies { get; init; }

    /// <summary>Where nothing else is said.</summary>
    public const int UsualPort = 5280;

    /// <summary>In characters.</summary>
    public const int ShortestToken = 16;

    /// <summary>Only this computer can reach it.</summary>
    public bool IsLocal => Listen is null || IPAddress.IsLoopback(Listen);

    /// <summary>It speaks https.</summary>
    public bool HasTls => Certificate is not null || MakeCertificate;

    /// <exception cref="BadSettingException">The settings would leave the projects open to others.</exception>
    public void Check()
    {
        if (AccessToken is { Length: < ShortestToken })
            throw new BadSettingException($"The access token has fewer than {ShortestToken} characters; choose a longer one, at random.");
        if (Certificate is not null && MakeCertificate)
            throw new BadSettingException("Name a certificate or have one made, not both.");
        if (IsLocal)
            return;
        if (AccessToken is null)
        {
            throw new BadSettingException(
                $"Whoever reaches {Listen} could read and change your projects: set --access-token, or the variable DYEPATH_ACCESS_TOKEN.");
        }
        if (!HasTls)
        {
            throw new BadSettingException(
                $"Whoever shares the network with {Listen} could read your token: name a --certificate, or add --make-certificate.");
        }
    }
}
