using System.Text;
using System.Text.Json;

namespace Dyepath.Mutations.Mutating;

/// <summary>A JSON text as a tree that may hold what JSON cannot: doubled names, numbers beyond all ranges, broken escapes.</summary>
internal sealed class JsonTree
{
    private JsonTree(char kind) => Kind = kind;

    /// <summary>{ of an object, [ of a list, 0 of anything else.</summary>
    public char Kind { get; }

    /// <summary>Its text, where it is neither object nor list.</summary>
    public string Raw { get; set; } = "";

    public List<JsonTree> Children { get; } = [];

    /// <summary>The children's names as written, quotes included; of objects only.</summary>
    public List<string> Names { get; } = [];

    public static JsonTree Value(string raw) => new('0') { Raw = raw };

    public static JsonTree List(params IEnumerable<JsonTree> items)
    {
        var list = new JsonTree('[');
        list.Children.AddRange(items);
        return list;
    }

    public static JsonTree Object(string name, JsonTree value)
    {
        var made = new JsonTree('{');
        made.Names.Add(name);
        made.Children.Add(value);
        return made;
    }

    public static JsonTree Parse(string json)
    {
        using var document = JsonDocument.Parse(json, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        return Of(document.RootElement);
    }

    private static JsonTree Of(JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                var made = new JsonTree('{');
                foreach (var member in element.EnumerateObject())
                {
                    made.Names.Add(Quoted(member.Name));
                    made.Children.Add(Of(member.Value));
                }
                return made;
            case JsonValueKind.Array:
                return List(element.EnumerateArray().Select(Of));
            default:
                return Value(element.GetRawText());
        }
    }

    public static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    public JsonTree Clone()
    {
        var copy = new JsonTree(Kind) { Raw = Raw };
        copy.Names.AddRange(Names);
        copy.Children.AddRange(Children.Select(c => c.Clone()));
        return copy;
    }

    /// <summary>Every node below with its owner and its place there, the outermost first.</summary>
    public IEnumerable<(JsonTree Owner, int At)> Below()
    {
        for (var i = 0; i < Children.Count; i++)
        {
            yield return (this, i);
            foreach (var inner in Children[i].Below())
                yield return inner;
        }
    }

    public void Remove(int at)
    {
        Children.RemoveAt(at);
        if (Kind == '{')
            Names.RemoveAt(at);
    }

    public void Insert(int at, string name, JsonTree value)
    {
        Children.Insert(at, value);
        if (Kind == '{')
            Names.Insert(at, name);
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        Write(text);
        return text.ToString();
    }

    private void Write(StringBuilder text)
    {
        if (Kind == '0')
        {
            text.Append(Raw);
            return;
        }
        text.Append(Kind);
        for (var i = 0; i < Children.Count; i++)
        {
            text.Append(i > 0 ? "," : "").Append(Kind == '{' ? Names[i] + ":" : "");
            Children[i].Write(text);
        }
        text.Append(Kind == '{' ? '}' : ']');
    }
}
