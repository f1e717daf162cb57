using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects.Description;

namespace Dyepath.Core.Projects;

/// <summary>Reads project documents. A bad document never throws; it leads to located faults.</summary>
public static class ProjectReader
{
    /// <summary>Largest document, in bytes: 2 MB.</summary>
    public const int MostBytes = DocumentParser.MostBytes;

    /// <param name="utf8">UTF-8 with or without byte order mark, at most <see cref="MostBytes"/>.</param>
    /// <param name="known">
    /// Pictures that were read before, by the short text that stands for each in the document's photos: reading them anew with every
    /// letter that is typed would take longer than all else.
    /// </param>
    public static ProjectReading Read(ReadOnlySpan<byte> utf8, IReadOnlyDictionary<string, JpegPicture>? known = null)
    {
        var faults = new FaultList();
        if (DocumentParser.Parse(utf8, faults) is not { } node || IsNewer(node, faults))
            return ProjectReading.Bad(faults.ToImmutable());
        if (known is { Count: > 0 })
            node = WithPictures(node, known);
        return ProjectDescription.Project.TryRead(Place.Root(node), faults, out var project)
            ? ProjectReading.Good(project)
            : ProjectReading.Bad(faults.ToImmutable());
    }

    /// <summary>
    /// Why the bytes are no JSON object of allowed size and depth; null where they are one, even with faults in it. Linear in the
    /// number of bytes.
    /// </summary>
    /// <param name="utf8">UTF-8 with or without byte order mark.</param>
    public static Fault? FindNoObject(ReadOnlySpan<byte> utf8)
    {
        var faults = new FaultList();
        if (DocumentParser.Parse(utf8, faults) is { } node and not ObjectNode)
            faults.NotJson(node.Line, Shown.Node(node), DocumentParser.Document, "Put it into braces: { … }.");
        return faults.ToImmutable().FirstOrDefault();
    }

    /// <param name="stream">Read to its end, or to one byte over <see cref="MostBytes"/>; what it throws itself is passed on.</param>
    public static ProjectReading Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var bytes = new byte[MostBytes + 1];
        return Read(bytes.AsSpan(0, stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)));
    }

    private static DocumentNode WithPictures(DocumentNode root, IReadOnlyDictionary<string, JpegPicture> known)
    {
        return Member(root, "photos", photos => photos is ListNode list
            ? list with { Items = [.. list.Items.Select(photo => Member(photo, "jpeg", Known))] }
            : photos);

        DocumentNode Known(DocumentNode jpeg) =>
            jpeg is TextNode { Text: var text } && known.TryGetValue(text, out var picture)
                ? new PictureNode(picture) { Line = jpeg.Line } : jpeg;
    }

    private static DocumentNode Member(DocumentNode node, string name, Func<DocumentNode, DocumentNode> change) => node is ObjectNode found
        ? found with { Members = [.. found.Members.Select(m => m.Name == name ? m with { Value = change(m.Value) } : m)] }
        : node;

    /// <summary>A newer document may mean anything: only its version is said, no other fault.</summary>
    private static bool IsNewer(DocumentNode node, FaultList faults)
    {
        var version = Place.Root(node).Member("schemaVersion");
        if (!TextPatterns.TryNumber(version.Node, out var number) || number <= Project.SchemaVersion)
            return false;
        faults.Form(
            version, FormattableString.Invariant($"{Project.SchemaVersion}"),
            "This document was made by a newer Dyepath; read it with that one.");
        return true;
    }
}
