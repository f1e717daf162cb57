using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics;
using System.Net;
using Dyepath.Web.Protection;

namespace Dyepath.Web.Serving;

/// <summary><c>dyepath-web serve</c>.</summary>
internal static class ServeCommand
{
    private const string TokenVariable = "DYEPATH_ACCESS_TOKEN";
    private const string PasswordVariable = "DYEPATH_CERTIFICATE_PASSWORD";

    /// <summary>With its options.</summary>
    public static Command Create()
    {
        var database = new DatabaseOptions();
        var port = new Option<int>("--port")
        {
            Description = "Port, 0 for any free one.",
            DefaultValueFactory = _ => HostSettings.UsualPort,
        };
        var listen = new Option<IPAddress?>("--listen")
        {
            Description = "Address to listen on, such as 192.168.1.20, or 0.0.0.0 for all; needs an access token and a certificate.",
            CustomParser = result =>
            {
                if (IPAddress.TryParse(result.Tokens[0].Value, out var address))
                    return address;
                result.AddError($"'{result.Tokens[0].Value}' is no address; write one such as 192.168.1.20.");
                return null;
            },
        };
        var token = new Option<string?>("--access-token")
        {
            Description = $"What browsers are asked for; better in the variable {TokenVariable}, where other users cannot see it.",
            DefaultValueFactory = _ => Environment.GetEnvironmentVariable(TokenVariable),
        };
        var certificate = new Option<string?>("--certificate")
        {
            Description = $"PKCS#12 file (.pfx) for https; its password in the variable {PasswordVariable}.",
        };
        var make = new Option<bool>("--make-certificate") { Description = "Makes a certificate for https, kept in the data folder." };
        var names = new Option<string[]>("--name") { Description = "A name by which browsers call this host; once for each name." };
        var proxies = new Option<IPNetwork[]>("--proxy")
        {
            Description = "Address or network of a proxy in front, such as 10.0.0.5 or 10.0.0.0/24, whose X-Forwarded-For is believed.",
            CustomParser = result => [.. result.Tokens.Select(token => Network(token.Value, result))],
        };
        var open = new Option<bool>("--open") { Description = "Opens the browser." };
        var command = new Command("serve", "Serves Dyepath until Ctrl-C.") { port, listen, token, certificate, make, proxies, names, open };
        database.AddTo(command);
        database.AddLimitsTo(command);
        command.SetAction(async (parsed, _) =>
        {
            var settings = new HostSettings(
                database.Read(parsed), parsed.GetValue(port), parsed.GetValue(listen), parsed.GetValue(token), parsed.GetValue(certificate),
                parsed.GetValue(make), parsed.GetValue(names) ?? [])
            {
                CertificatePassword = Environment.GetEnvironmentVariable(PasswordVariable),
                Proxies = parsed.GetValue(proxies),
            };
            await using var app = DyepathHost.Build(settings);
            await DyepathHost.StartAsync(app);
            foreach (var address in app.Urls)
                await Console.Out.WriteLineAsync($"Dyepath is at {Reached(address, $"{Environment.MachineName}.local")}");
            if (settings.MakeCertificate)
                await Console.Out.WriteLineAsync($"SHA-256 of the certificate to trust: {MadeCertificate.Of(settings).Fingerprint}");
            await Console.Out.FlushAsync(CancellationToken.None);
            if (parsed.GetValue(open))
                Open(Reached(app.Urls.First(), "localhost"));
            await app.WaitForShutdownAsync(CancellationToken.None);
            return 0;
        });
        return command;
    }

    private static IPNetwork Network(string text, ArgumentResult result)
    {
        if (IPNetwork.TryParse(text, out var network))
            return network;
        if (IPAddress.TryParse(text, out var address))
            return new IPNetwork(address, address.GetAddressBytes().Length * 8);
        result.AddError($"'{text}' is no address or network; write one such as 10.0.0.5 or 10.0.0.0/24.");
        return default;
    }

    /// <summary>An address that a browser understands, where the host listens on all of them.</summary>
    private static string Reached(string address, string name) =>
        address.Replace("//0.0.0.0:", $"//{name}:", StringComparison.Ordinal).Replace("//[::]:", $"//{name}:", StringComparison.Ordinal);

    private static void Open(string address)
    {
        try
        {
            Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or PlatformNotSupportedException)
        {
            Console.Error.WriteLine($"The browser could not be opened; open {address} yourself.");
        }
    }
}
