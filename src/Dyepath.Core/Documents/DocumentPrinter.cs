using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Dyepath.Core.Documents;

/// <summary>
/// Prints nodes as a person would write them: two spaces a level, and what holds only plain values on one line
/// where it fits.
/// </summary>
internal static class DocumentPrinter
{
    private const int LineWidth = 100;
    private const int CommentWidth = 96;

    public static string Print(DocumentNode node)
    {
        var text = new StringBuilder();
        Append(text, node, 0, 0);
        return text.Append('\n').ToString();
    }

    /// <summary>As <see cref="Print"/> does, or where that is more than a reader takes, in as few bytes as may be.</summary>
    public static string PrintWithin(DocumentNode node, int mostBytes)
    {
        var text = Print(node);
        if (Encoding.UTF8.GetByteCount(text) <= mostBytes)
            return text;
        var small = new StringBuilder();
        AppendSmall(small, node);
        return small.ToString();
    }

    /// <summary>Everything on one line, however long.</summary>
    public static string Inline(DocumentNode node) => node switch
    {
        TextNode value => Quoted(value.Text),
        NumberNode value => value.Raw,
        FlagNode value => value.Value ? "true" : "false",
        ListNode { Items.Length: 0 } => "[]",
        ListNode list => $"[{string.Join(", ", list.Items.Select(Inline))}]",
        ObjectNode { Members.Length: 0 } => "{}",
        ObjectNode value => $"{{ {string.Join(", ", value.Members.Select(m => $"{Quoted(m.Name)}: {Inline(m.Value)}"))} }}",
        _ => "null",
    };

    /// <param name="used">Columns taken on the line before the value.</param>
    private static void Append(StringBuilder text, DocumentNode node, int indent, int used)
    {
        if (IsFlat(node) && Inline(node) is var inline && used + inline.Length < LineWidth)
        {
            text.Append(inline);
            return;
        }
        switch (node)
        {
            case ObjectNode value:
                text.Append("{\n");
                AppendMembers(text, value, indent + 2);
                text.Append(' ', indent).Append('}');
                break;
            case ListNode list:
                text.Append("[\n");
                for (var i = 0; i < list.Items.Length; i++)
                {
                    text.Append(' ', indent + 2);
                    Append(text, list.Items[i], indent + 2, indent + 2);
                    text.Append(i < list.Items.Length - 1 ? ",\n" : "\n");
                }
                text.Append(' ', indent).Append(']');
                break;
            default:
                text.Append(Inline(node));
                break;
        }
    }

    private static void AppendSmall(StringBuilder text, DocumentNode node)
    {
        switch (node)
        {
            case ObjectNode value:
                text.Append('{');
                for (var i = 0; i < value.Members.Length; i++)
                {
                    text.Append(i == 0 ? "" : ",").Append(Quoted(value.Members[i].Name)).Append(':');
                    AppendSmall(text, value.Members[i].Value);
                }
                text.Append('}');
                break;
            case ListNode list:
                text.Append('[');
                for (var i = 0; i < list.Items.Length; i++)
                {
                    text.Append(i == 0 ? "" : ",");
                    AppendSmall(text, list.Items[i]);
                }
                text.Append(']');
                break;
            default:
                text.Append(Inline(node));
                break;
        }
    }

    private static void AppendMembers(StringBuilder text, ObjectNode node, int indent)
    {
        for (var i = 0; i < node.Members.Length; i++)
        {
            var (name, value, comment) = node.Members[i];
            if (comment is not null)
                AppendComment(text, comment, indent);
            var start = $"{Quoted(name)}: ";
            text.Append(' ', indent).Append(start);
            Append(text, value, indent, indent + start.Length);
            // With a comma before them, the remarks need only lose their slashes.
            var isLast = i == node.Members.Length - 1 && node.Remarks.IsEmpty;
            text.Append(isLast ? "\n" : ",\n");
            if (comment is not null && !isLast)
                text.Append('\n');
        }
        for (var i = 0; i < node.Remarks.Length; i++)
        {
            var (name, comment, value) = node.Remarks[i];
            AppendComment(text, comment, indent);
            text.Append(' ', indent).Append($"// {Quoted(name)}: {Inline(value)},\n");
            if (i < node.Remarks.Length - 1)
                text.Append('\n');
        }
    }

    private static void AppendComment(StringBuilder text, string comment, int indent)
    {
        var column = CommentWidth;
        foreach (var word in comment.Split(' '))
        {
            if (column + 1 + word.Length >= CommentWidth)
            {
                if (column < CommentWidth || text[^1] != '\n')
                    text.Append('\n');
                text.Append(' ', indent).Append("//");
                column = indent + 2;
            }
            text.Append(' ').Append(word);
            column += 1 + word.Length;
        }
        text.Append('\n');
    }

    private static bool IsFlat(DocumentNode node) => node switch
    {
        ObjectNode value => value.Remarks.IsEmpty && value.Members.All(m => m.Comment is null && IsPlain(m.Value)),
        ListNode list => list.Items.All(IsPlain),
        _ => true,
    };

    private static bool IsPlain(DocumentNode node) => node is not (ObjectNode or ListNode);

    private static string Quoted(string text) =>
        $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
