using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Projects;

/// <summary>
/// A text that may be stored: a JSON object of allowed size and depth, whatever else is wrong in it, so that nothing that a designer
/// typed is lost.
/// </summary>
/// <param name="Utf8">As it was sent, byte for byte.</param>
/// <param name="Name">Its title, as lists show it.</param>
internal sealed record DocumentText(byte[] Utf8, string Name)
{
    private const string CopyMark = ", copy";

    private static readonly JsonReaderOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The text, or why it is none.</summary>
    public static (DocumentText? Text, Fault? Fault) Read(byte[] utf8) => ProjectReader.FindNoObject(utf8) is { } fault
        ? (null, fault)
        : (new DocumentText(utf8, FindTitle(utf8)?.Name ?? ProjectSummary.Untitled), null);

    /// <summary>The same text under a name of its own: only the title's value is written anew.</summary>
    public DocumentText Copy()
    {
        if (FindTitle(Utf8) is not { } title)
            return this;
        var (text, longest) = (title.Text.TrimEnd(), ShownName.Longest - CopyMark.Length);
        // The document's title is counted in numbers that write it, of which one character may have several.
        var most = longest;
        var kept = text;
        while (kept.EnumerateRunes().Count() > longest)
            kept = ShownName.Cut(text, most--);
        var written = JsonEncodedText.Encode(kept + CopyMark, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).EncodedUtf8Bytes;
        byte[] copy = [.. Utf8[..title.At], (byte)'"', .. written, (byte)'"', .. Utf8[title.End..]];
        return copy.Length <= ProjectReader.MostBytes ? new DocumentText(copy, FindTitle(copy)?.Name ?? Name) : this;
    }

    /// <summary>
    /// The document's own title, as it is and as it is shown, and the bytes from its opening quote to past its closing one.
    /// </summary>
    private static (string Text, string Name, int At, int End)? FindTitle(ReadOnlySpan<byte> utf8)
    {
        var mark = utf8.StartsWith(Utf8Mark) ? Utf8Mark.Length : 0;
        var reader = new Utf8JsonReader(utf8[mark..], Lenient);
        reader.Read();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var isTitle = reader.ValueTextEquals("title"u8);
            reader.Read();
            if (isTitle && reader.TokenType == JsonTokenType.String)
            {
                var text = reader.GetString()!;
                if (ShownName.Of(text) is { Length: > 0 } name)
                    return (text, name, mark + (int)reader.TokenStartIndex, mark + (int)reader.BytesConsumed);
            }
            reader.Skip();
        }
        return null;
    }
}
