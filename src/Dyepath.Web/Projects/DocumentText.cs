using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Projects;

/// <summary>
/// A text that may be stored: JSON of allowed size and depth, whatever else is wrong in it, so that nothing that a designer
/// typed is lost.
/// </summary>
/// <param name="Project">Missing while the text has faults.</param>
internal sealed record DocumentText(byte[] Utf8, string Name, Project? Project)
{
    private const int LongestName = 120;

    private static readonly JsonReaderOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The text, or why it is none.</summary>
    public static (DocumentText? Text, Fault? Fault) Read(byte[] utf8)
    {
        var reading = ProjectReader.Read(utf8);
        if (reading.Faults.FirstOrDefault(f => f.Kind == FaultKind.NotJson) is { } fault)
            return (null, fault);
        return (new DocumentText(utf8, FindTitle(utf8)?.Name ?? ProjectSummary.Untitled, reading.Project), null);
    }

    /// <summary>The same text under a name of its own: only the title's value is written anew.</summary>
    public DocumentText Copy()
    {
        const string mark = ", copy";
        if (FindTitle(Utf8) is not { } title)
            return this;
        var name = title.Name.Length + mark.Length > LongestName ? title.Name[..(LongestName - mark.Length)] + mark : title.Name + mark;
        var written = JsonEncodedText.Encode(name, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).EncodedUtf8Bytes;
        return Read([.. Utf8[..title.At], (byte)'"', .. written, (byte)'"', .. Utf8[title.End..]]).Text!;
    }

    /// <summary>The document's own title, and the bytes from its opening quote to past its closing one.</summary>
    private static (string Name, int At, int End)? FindTitle(ReadOnlySpan<byte> utf8)
    {
        var mark = utf8.StartsWith(Utf8Mark) ? Utf8Mark.Length : 0;
        var reader = new Utf8JsonReader(utf8[mark..], Lenient);
        reader.Read();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var isTitle = reader.ValueTextEquals("title"u8);
            reader.Read();
            if (isTitle && reader.TokenType == JsonTokenType.String && Shown(reader.GetString()!) is { Length: > 0 } name)
                return (name, mark + (int)reader.TokenStartIndex, mark + (int)reader.BytesConsumed);
            reader.Skip();
        }
        return null;
    }

    /// <summary>One line without control characters, which a database may refuse.</summary>
    private static string Shown(string title)
    {
        var line = new StringBuilder(title.Length);
        foreach (var c in title)
            line.Append(char.IsControl(c) ? ' ' : c);
        var trimmed = line.ToString().Trim();
        return trimmed.Length <= LongestName ? trimmed : trimmed[..LongestName];
    }
}
