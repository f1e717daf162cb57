using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Dyepath.Core.Documents;

/// <summary>Turns bytes into a tree of nodes, or says why they are no JSON document.</summary>
internal static class DocumentParser
{
    /// <summary>Largest document, in bytes.</summary>
    public const int MostBytes = 2_000_000;

    /// <summary>Deepest nesting of lists and objects.</summary>
    public const int DeepestNesting = 16;

    public const string Document = "one JSON object { … } as UTF-8 text, comments (//) and trailing commas allowed";

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    public static DocumentNode? Parse(ReadOnlySpan<byte> bytes, FaultList faults)
    {
        if (bytes.Length > MostBytes)
        {
            faults.NotJson(
                1, "more than 2 MB", FormattableString.Invariant($"at most {MostBytes} bytes"),
                "Leave out a photo, or shorten your own words.");
            return null;
        }
        if (bytes.StartsWith(Utf8Mark))
            bytes = bytes[Utf8Mark.Length..];
        if (FirstInvalid(bytes) is { } invalid)
        {
            faults.NotJson(LineAt(bytes, invalid), "bytes that are not UTF-8", Document, "Save the file in the encoding UTF-8.");
            return null;
        }
        if (bytes.IndexOfAnyExcept(" \t\r\n"u8) < 0)
        {
            faults.NotJson(1, "an empty file", Document, "Start from the starter document.");
            return null;
        }
        return ParseText(bytes, faults);
    }

    private static DocumentNode? ParseText(ReadOnlySpan<byte> bytes, FaultList faults)
    {
        var walk = new Walk(bytes);
        try
        {
            var root = walk.ReadDocument();
            if (root is null)
            {
                faults.NotJson(
                    walk.Line, $"nesting deeper than {DeepestNesting}", $"lists and objects at most {DeepestNesting} deep",
                    "Check for a bracket or brace that is never closed.");
            }
            return root;
        }
        catch (JsonException e)
        {
            var line = (int)(e.LineNumber ?? 0) + 1;
            faults.NotJson(
                line, $"text that is not JSON: {Shown.Text(RestOfLine(bytes, line, (int)(e.BytePositionInLine ?? 0)))}", Document,
                "Mend the punctuation here, or at the end of the line before.");
            return null;
        }
        catch (InvalidOperationException)
        {
            // GetString refuses \ud800 and its like: an escape that is half a character.
            faults.NotJson(walk.Line, "an escape sequence that is half a character", Document, "Write the character itself.");
            return null;
        }
    }

    private static int? FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        if (Utf8.IsValid(bytes))
            return null;
        var at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out var used) == System.Buffers.OperationStatus.Done)
            at += used;
        return at;
    }

    private static string RestOfLine(ReadOnlySpan<byte> bytes, int line, int column)
    {
        for (; line > 1; line--)
            bytes = bytes[(bytes.IndexOf((byte)'\n') + 1)..];
        var end = bytes.IndexOfAny((byte)'\r', (byte)'\n');
        var rest = (end < 0 ? bytes : bytes[..end])[Math.Min(column, end < 0 ? bytes.Length : end)..];
        return rest.IsEmpty ? "the end of the line" : Encoding.UTF8.GetString(rest);
    }

    private static int LineAt(ReadOnlySpan<byte> bytes, int offset) => bytes[..offset].Count((byte)'\n') + 1;

    private ref struct Walk(ReadOnlySpan<byte> bytes)
    {
        private readonly ReadOnlySpan<byte> _bytes = bytes;
        private Utf8JsonReader _reader = new(bytes, new JsonReaderOptions
        {
            AllowTrailingCommas = true,
            CommentHandling = JsonCommentHandling.Skip,
            MaxDepth = DeepestNesting + 1,
        });
        private int _counted;

        public int Line { get; private set; } = 1;

        /// <summary>Null when the nesting is too deep.</summary>
        public DocumentNode? ReadDocument()
        {
            Next();
            var root = ReadValue(0);
            if (root is not null)
                _reader.Read();
            return root;
        }

        private DocumentNode? ReadValue(int depth)
        {
            var line = Line;
            switch (_reader.TokenType)
            {
                case JsonTokenType.StartObject:
                    return depth < DeepestNesting ? ReadObject(line, depth + 1) : null;
                case JsonTokenType.StartArray:
                    return depth < DeepestNesting ? ReadList(line, depth + 1) : null;
                case JsonTokenType.String:
                    return new TextNode(_reader.GetString()!) { Line = line };
                case JsonTokenType.Number:
                    return new NumberNode(Encoding.UTF8.GetString(_reader.ValueSpan)) { Line = line };
                case JsonTokenType.True or JsonTokenType.False:
                    return new FlagNode(_reader.TokenType == JsonTokenType.True) { Line = line };
                default:
                    return new NullNode { Line = line };
            }
        }

        private ObjectNode? ReadObject(int line, int depth)
        {
            var members = ImmutableArray.CreateBuilder<Member>();
            for (Next(); _reader.TokenType != JsonTokenType.EndObject; Next())
            {
                var name = _reader.GetString()!;
                Next();
                if (ReadValue(depth) is not { } value)
                    return null;
                members.Add(new Member(name, value));
            }
            return new ObjectNode(members.ToImmutable(), []) { Line = line };
        }

        private ListNode? ReadList(int line, int depth)
        {
            var items = ImmutableArray.CreateBuilder<DocumentNode>();
            for (Next(); _reader.TokenType != JsonTokenType.EndArray; Next())
            {
                if (ReadValue(depth) is not { } value)
                    return null;
                items.Add(value);
            }
            return new ListNode(items.ToImmutable()) { Line = line };
        }

        private void Next()
        {
            _reader.Read();
            var start = (int)_reader.TokenStartIndex;
            Line += _bytes[_counted..start].Count((byte)'\n');
            _counted = start;
        }
    }
}
