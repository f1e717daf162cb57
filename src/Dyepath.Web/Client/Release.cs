using System.Collections.Frozen;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Client;

/// <param name="Bytes">As they are sent.</param>
/// <param name="IsBrotli">As it was compressed when it was published.</param>
/// <param name="Type">Its media type.</param>
internal sealed record ReleaseFile(byte[] Bytes, bool IsBrotli, string Type)
{
    /// <summary>Of a file that is asked for; of the others none is worked out.</summary>
    private readonly Lazy<string> _hash = new(() => Convert.ToHexStringLower(SHA256.HashData(Bytes).AsSpan(0, 12)));

    /// <param name="form">Of an answer that does not consist of the bytes themselves.</param>
    public EntityTagHeaderValue Tag(string form = "") => new($"\"{_hash.Value}{form}\"");
}

/// <summary>
/// One version of the client with all its files, in memory: what is published over them while the host runs does not reach a page.
/// In its page every file of its own is named under the version's address.
/// </summary>
internal sealed partial class Release
{
    /// <summary>The client's only page; every other is a place within it.</summary>
    public const string Page = "index.html";

    /// <summary>Addresses of versions begin with it.</summary>
    public const string Root = "v";

    /// <summary>Begins a version in the browser; asked for under its plain address, as browsers do.</summary>
    public const string Worker = "service-worker.js";

    /// <summary>What the service worker reads the files' names and hashes from.</summary>
    public const string Manifest = "service-worker-assets.js";

    private const string Compressed = ".br";

    private static readonly FileExtensionContentTypeProvider Types = new() { Mappings = { [".dat"] = "application/octet-stream" } };

    private readonly FrozenDictionary<string, ReleaseFile> _files;

    private Release(string version, IEnumerable<KeyValuePair<string, ReleaseFile>> files) =>
        (Version, _files) = (version, files.ToFrozenDictionary(StringComparer.Ordinal));

    /// <summary>Made from the contents of all files; fit for an address and a file's name.</summary>
    public string Version { get; }

    /// <summary>By its address within the client, such as <c>css/app.css</c>; null where there is no such file.</summary>
    public ReleaseFile? this[string address] => _files.GetValueOrDefault(address);

    /// <summary>Whether a text can be the name of a version.</summary>
    public static bool IsVersion(string text) => VersionName().IsMatch(text);

    /// <param name="files">As they were published or built.</param>
    /// <returns>Missing where they are no client.</returns>
    public static Release? Read(IFileProvider files)
    {
        if (Bytes(files, Manifest) is not { } manifest)
            return null;
        var text = Encoding.UTF8.GetString(manifest);
        using var json = JsonDocument.Parse(text.AsMemory()[text.IndexOf('{', StringComparison.Ordinal)..(text.LastIndexOf('}') + 1)]);
        var version = json.RootElement.GetProperty("version").GetString()!.Replace('+', '-').Replace('/', '_');
        var found = new Dictionary<string, ReleaseFile>();
        var addresses = json.RootElement.GetProperty("assets").EnumerateArray().Select(asset => asset.GetProperty("url").GetString()!);
        foreach (var address in addresses.Append(Worker).Append(Manifest).Where(address => address != Page))
        {
            if (Bytes(files, address + Compressed) is { } compressed)
                found[address] = new ReleaseFile(compressed, IsBrotli: true, TypeOf(address));
            else if (Bytes(files, address) is { } plain)
                found[address] = new ReleaseFile(plain, IsBrotli: false, TypeOf(address));
        }
        if (Bytes(files, Page) is { } page)
        {
            var named = OwnAddress().Replace(Encoding.UTF8.GetString(page), $"{Root}/{version}/");
            found[Page] = new ReleaseFile(Encoding.UTF8.GetBytes(named), IsBrotli: false, TypeOf(Page));
        }
        return new Release(version, found);
    }

    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="InvalidDataException">It is no release.</exception>
    public static Release Load(string version, string file)
    {
        using var zip = ZipFile.OpenRead(file);
        return new Release(version, zip.Entries.Select(entry =>
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            var isBrotli = entry.FullName.EndsWith(Compressed, StringComparison.Ordinal);
            var address = isBrotli ? entry.FullName[..^Compressed.Length] : entry.FullName;
            return KeyValuePair.Create(address, new ReleaseFile(bytes.ToArray(), isBrotli, TypeOf(address)));
        }));
    }

    /// <summary>As <see cref="Load"/> reads it: a zip.</summary>
    public void Save(Stream stream)
    {
        using var zip = new ZipArchive(stream, ZipArchiveMode.Create);
        foreach (var (address, file) in _files)
        {
            var entry = file.IsBrotli
                ? zip.CreateEntry(address + Compressed, CompressionLevel.NoCompression)
                : zip.CreateEntry(address, CompressionLevel.Fastest);
            using var into = entry.Open();
            into.Write(file.Bytes);
        }
    }

    private static string TypeOf(string address) => Types.TryGetContentType(address, out var type) ? type : "application/octet-stream";

    private static byte[]? Bytes(IFileProvider files, string address)
    {
        var file = files.GetFileInfo(address);
        if (!file.Exists || file.IsDirectory)
            return null;
        using var stream = file.CreateReadStream();
        var bytes = new byte[file.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    [GeneratedRegex("^[A-Za-z0-9_-]{1,64}$")]
    private static partial Regex VersionName();

    /// <summary>Before what the page asks for of its own version; the icon and the manifest belong to none.</summary>
    [GeneratedRegex("(?<=\\s(?:href|src)=\")(?=(?:css|js|_framework)/)")]
    private static partial Regex OwnAddress();
}
