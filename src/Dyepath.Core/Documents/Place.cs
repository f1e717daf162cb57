using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Dyepath.Core.Documents;

/// <summary>A value of the document together with the way to it.</summary>
internal readonly record struct Place(string Path, DocumentNode Node)
{
    public const string Whole = "document";

    public static Place Root(DocumentNode node) => new("", node);

    /// <summary>The member of that name; where it is missing, its place-to-be on the line of its owner.</summary>
    public Place Member(string name) =>
        Member(name, (Node as ObjectNode)?.Find(name)?.Value ?? new NullNode { Line = Node.Line });

    public Place Member(string name, DocumentNode value)
    {
        var shown = IsPlain(name) ? name : $"[{Shown.Text(name)}]";
        return new Place(Path.Length == 0 ? shown : shown[0] == '[' ? Path + shown : $"{Path}.{shown}", value);
    }

    public Place Item(int index)
    {
        var path = FormattableString.Invariant($"{Path}[{index}]");
        return new Place(path, Node is ListNode list && index < list.Items.Length ? list.Items[index] : new NullNode { Line = Node.Line });
    }

    private static bool IsPlain(string name) =>
        name.Length is > 0 and <= 40 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '$');
}

/// <summary>Says what was found, short and without characters that could upset a terminal.</summary>
internal static class Shown
{
    private const int Longest = 40;

    public static string Node(DocumentNode node) => node switch
    {
        TextNode text => Text(text.Text),
        NumberNode number => number.Raw.Length <= Longest ? number.Raw : $"{number.Raw.AsSpan(0, Longest)}…",
        FlagNode flag => flag.Value ? "true" : "false",
        ObjectNode => "an object { … }",
        ListNode list => FormattableString.Invariant($"a list of {list.Items.Length}"),
        _ => "null",
    };

    public static string Text(string text)
    {
        var isWhole = text.Length <= Longest;
        var kept = isWhole ? text : text[..(char.IsHighSurrogate(text[Longest - 1]) ? Longest - 1 : Longest)];
        var escaped = JsonEncodedText.Encode(kept, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).ToString();
        var visible = string.Concat(escaped.Select(c => char.GetUnicodeCategory(c) == UnicodeCategory.Format
            ? FormattableString.Invariant($"\\u{(int)c:x4}")
            : c.ToString()));
        return isWhole ? $"\"{visible}\"" : $"\"{visible}…\"";
    }
}
