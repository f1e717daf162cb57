using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Dyepath.EndToEnd.Tests;

/// <summary>
/// A copy of the published host, over which another version can be published: the same program with another engine, whose booklets
/// have another heading. It is made from the first one in the way in which publishing would name and list it.
/// </summary>
internal sealed class PublishedCopy : IDisposable
{
    public const string Heading = "Abbreviations";
    public const string OtherHeading = "Abbreviatiens";

    private const string Fingerprint = "anotherone";

    public PublishedCopy()
    {
        foreach (var file in Directory.EnumerateFiles(PublishedHost.Published, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(Folder, Path.GetRelativePath(PublishedHost.Published, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    public string Folder { get; } = Directory.CreateTempSubdirectory("dyepath-published-").FullName;

    public string this[string address] => Path.Combine(Folder, "wwwroot", address);

    /// <summary>Address of the other version's engine.</summary>
    public string OtherEngine { get; private set; } = "";

    /// <param name="broken">A file that does not arrive as it was published.</param>
    public void PublishOver(string? broken = null)
    {
        var manifest = File.ReadAllText(this["service-worker-assets.js"]);
        var engine = Between(manifest, "\"_framework/Dyepath.Core.", ".wasm\"");
        var (old, other) = ($"Dyepath.Core.{engine}.wasm", $"Dyepath.Core.{Fingerprint}.wasm");
        OtherEngine = $"_framework/{other}";
        var bytes = File.ReadAllBytes(this[$"_framework/{old}"]);
        var oldHash = Hash(bytes);
        // The module's id, which the compiler makes from all that is in it.
        bytes[Guids(bytes)] ^= 0xff;
        var heading = bytes.AsSpan().IndexOf(Encoding.Unicode.GetBytes(Heading));
        Assert.True(heading > 0);
        Encoding.Unicode.GetBytes(OtherHeading).CopyTo(bytes, heading);
        File.WriteAllBytes(this[OtherEngine], bytes);

        var boot = File.ReadAllText(this["_framework/dotnet.js"]);
        var oldBoot = Hash(Encoding.UTF8.GetBytes(boot));
        boot = boot.Replace(old, other, StringComparison.Ordinal).Replace(oldHash, Hash(bytes), StringComparison.Ordinal);
        Write("_framework/dotnet.js", boot);
        var version = Between(manifest, "\"version\": \"", "\"");
        manifest = manifest.Replace(version, $"{version[..^2]}_2", StringComparison.Ordinal)
            .Replace(old, other, StringComparison.Ordinal).Replace(oldHash, Hash(bytes), StringComparison.Ordinal)
            .Replace(oldBoot, Hash(Encoding.UTF8.GetBytes(boot)), StringComparison.Ordinal);
        Write("service-worker-assets.js", manifest);
        Write("service-worker.js", File.ReadAllText(this["service-worker.js"]).Replace(version, $"{version[..^2]}_2", StringComparison.Ordinal));
        if (broken is not null)
            Write(broken, "/* Not what was published. */");
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private void Write(string address, string text)
    {
        foreach (var compressed in new[] { ".br", ".gz" })
            File.Delete(this[address] + compressed);
        File.WriteAllText(this[address], text);
    }

    private static string Between(string text, string before, string after)
    {
        var from = text.IndexOf(before, StringComparison.Ordinal) + before.Length;
        return text[from..text.IndexOf(after, from, StringComparison.Ordinal)];
    }

    private static string Hash(byte[] bytes) => $"sha256-{Convert.ToBase64String(SHA256.HashData(bytes))}";

    /// <summary>Where an assembly's metadata keeps its id (ECMA-335, II.24.2).</summary>
    private static int Guids(ReadOnlySpan<byte> assembly)
    {
        var root = assembly.IndexOf("BSJB"u8);
        var at = root + 16 + BinaryPrimitives.ReadInt32LittleEndian(assembly[(root + 12)..]);
        for (var streams = BinaryPrimitives.ReadInt16LittleEndian(assembly[(at + 2)..]); streams > 0; streams--)
        {
            var head = at + 4;
            var length = assembly[(head + 8)..].IndexOf((byte)0);
            if (assembly.Slice(head + 8, length).SequenceEqual("#GUID"u8))
                return root + BinaryPrimitives.ReadInt32LittleEndian(assembly[head..]);
            at = head + 4 + ((length + 4) & ~3);
        }
        throw new InvalidDataException("This is no assembly.");
    }
}
