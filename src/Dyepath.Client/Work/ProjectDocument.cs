using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Work;

/// <summary>
/// A project document as it is being edited: any JSON object, whether or not it can be planned yet, so that nothing half typed is
/// lost. Values are reached by place, such as <c>yarn.sections[2].length</c>.
/// </summary>
public sealed class ProjectDocument
{
    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Forgiving = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
        MaxDepth = 32,
        AllowDuplicateProperties = false,
    };

    private readonly JsonObject _root;
    private string? _text;

    private ProjectDocument(JsonObject root, string? text) => (_root, _text) = (root, text);

    /// <summary>As it is stored.</summary>
    public string Text => _text ??= _root.ToJsonString(Layout);

    /// <returns>Null where the text is no JSON object, or over the size that a project may have.</returns>
    public static ProjectDocument? TryParse(string text)
    {
        if (text.Length > ProjectReader.MostBytes)
            return null;
        try
        {
            return JsonNode.Parse(text, documentOptions: Forgiving) is JsonObject root ? new ProjectDocument(root, text) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The value at a place; null where there is none.</summary>
    public JsonNode? Node(string place)
    {
        JsonNode? node = _root;
        foreach (var step in Steps(place))
            node = Step(node, step);
        return node;
    }

    public bool Has(string place) => Node(place) is not null;

    /// <summary>A text or number at a place, as it would be typed; empty where there is none.</summary>
    public string Typed(string place) => Node(place) is JsonValue value ? Typed(value) : "";

    public bool Is(string place) => Node(place) is JsonValue value && value.GetValueKind() == JsonValueKind.True;

    public int Count(string place) => Node(place) is JsonArray list ? list.Count : 0;

    public string Title => Typed("title") is { Length: > 0 } title ? title : "Untitled";

    /// <summary>Puts a value at a place, making objects on the way; null takes it away.</summary>
    public void Set(string place, JsonNode? value)
    {
        _text = null;
        var steps = Steps(place).ToArray();
        JsonNode? node = _root;
        for (var i = 0; i < steps.Length - 1; i++)
        {
            var next = Step(node, steps[i]);
            if (next is not (JsonObject or JsonArray))
            {
                if (value is null)
                    return;
                next = steps[i + 1] is int ? new JsonArray() : new JsonObject();
                Put(node, steps[i], next);
            }
            node = next;
        }
        Put(node, steps[^1], value);
    }

    /// <summary>Adds a value to the list at a place, making the list where there is none.</summary>
    /// <param name="index">Where; missing, at the end.</param>
    public void Add(string place, JsonNode value, int? index = null)
    {
        _text = null;
        if (Node(place) is not JsonArray list)
            Set(place, list = []);
        list.Insert(Math.Clamp(index ?? list.Count, 0, list.Count), value);
    }

    public void Move(string place, int from, int to)
    {
        if (Node(place) is not JsonArray list || from == to || from < 0 || from >= list.Count)
            return;
        _text = null;
        var value = list[from];
        list.RemoveAt(from);
        list.Insert(Math.Clamp(to, 0, list.Count), value);
    }

    private static string Typed(JsonValue value) => value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : value.ToJsonString();

    private static JsonNode? Step(JsonNode? node, object step) => (node, step) switch
    {
        (JsonObject found, string name) => found.TryGetPropertyValue(name, out var value) ? value : null,
        (JsonArray list, int at) => at < list.Count ? list[at] : null,
        _ => null,
    };

    private static void Put(JsonNode? node, object step, JsonNode? value)
    {
        switch (node, step)
        {
            case (JsonObject found, string name) when value is null:
                found.Remove(name);
                break;
            case (JsonObject found, string name):
                found[name] = value;
                break;
            case (JsonArray list, int at) when value is null:
                if (at < list.Count)
                    list.RemoveAt(at);
                break;
            case (JsonArray list, int at) when at < list.Count:
                list[at] = value;
                break;
            case (JsonArray list, int):
                list.Add(value);
                break;
        }
    }

    /// <summary>Names as texts, list places as whole numbers.</summary>
    private static IEnumerable<object> Steps(string place)
    {
        foreach (var part in place.Split('.', '['))
        {
            if (part.EndsWith(']'))
                yield return int.Parse(part.AsSpan(0, part.Length - 1), System.Globalization.CultureInfo.InvariantCulture);
            else
                yield return part;
        }
    }
}
