using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Projects;

namespace Dyepath.Workspace.Work;

/// <summary>
/// A project document as it is being edited: any JSON object, whether or not it can be planned yet, so that nothing half typed is
/// lost. Values are reached by place, such as <c>yarn.sections[2].length</c>.
/// </summary>
public sealed class ProjectDocument
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
    private static readonly JsonDocumentOptions Forgiving = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
        MaxDepth = 32,
        AllowDuplicateProperties = false,
    };

    private readonly JsonObject _root;
    private readonly PictureShelf _shelf;
    private string? _text;
    private string? _slim;

    private ProjectDocument(JsonObject root, string? text, PictureShelf shelf) => (_root, _text, _shelf) = (root, text, shelf);

    /// <summary>As it is stored.</summary>
    public string Text => _text ??= WithPictures();

    /// <summary>The same with a short name for each picture that is set aside.</summary>
    public string Slim => _slim ??= SetPicturesAside() || _text is null ? _root.ToJsonString(Layout) : _text;

    /// <summary>The text without the photos, for whoever only computes.</summary>
    public string WithoutPhotos()
    {
        var slim = Slim;
        if (!_root.ContainsKey("photos"))
            return slim;
        var copy = (JsonObject)_root.DeepClone();
        copy.Remove("photos");
        return copy.ToJsonString(Layout);
    }

    /// <summary>To be read only.</summary>
    public JsonNode Root => _root;

    /// <summary>Where its pictures are set aside.</summary>
    public PictureShelf Shelf => _shelf;

    /// <summary>
    /// What was written only because something else asked for it, by place, so that it goes when that goes; known as long as the project
    /// is open.
    /// </summary>
    internal Dictionary<string, string> Implied => _shelf.Implied;

    private IReadOnlyDictionary<string, JpegPicture> Pictures => _shelf.Pictures;

    /// <param name="shelf">Of the same project's other states, whose slim text may be read too; missing, a new one.</param>
    /// <returns>Null where the text is no JSON object, or over the size that a project may have.</returns>
    public static ProjectDocument? TryParse(string text, PictureShelf? shelf = null)
    {
        if (text.Length > ProjectReader.MostBytes)
            return null;
        try
        {
            return JsonNode.Parse(text, documentOptions: Forgiving) is JsonObject root
                ? new ProjectDocument(root, shelf?.Pictures.Keys.Any(text.Contains) == true ? null : text, shelf ?? new PictureShelf())
                : null;
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

    /// <summary>Something stands at a place.</summary>
    public bool Has(string place) => Node(place) is not null;

    /// <summary>Whether the edition gives inches, alone or before centimetres.</summary>
    public bool IsInches => Typed("edition.units").StartsWith("in", StringComparison.Ordinal);

    /// <summary>A text or number at a place, as it would be typed; empty where there is none.</summary>
    public string Typed(string place) => Node(place) is JsonValue value ? Typed(value) : "";

    /// <summary>The value at a place is <c>true</c>.</summary>
    public bool Is(string place) => Node(place) is JsonValue value && value.GetValueKind() == JsonValueKind.True;

    /// <summary>Entries of the list at a place; 0 where there is no list.</summary>
    public int Count(string place) => Node(place) is JsonArray list ? list.Count : 0;

    /// <summary>Never empty.</summary>
    public string Title => Typed("title") is { Length: > 0 } title ? title : "Untitled";

    /// <summary>Puts a value at a place, making objects on the way; null takes it away.</summary>
    public void Set(string place, JsonNode? value)
    {
        Changing();
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
        Changing();
        if (Node(place) is not JsonArray list)
            Set(place, list = []);
        list.Insert(Math.Clamp(index ?? list.Count, 0, list.Count), value);
    }

    /// <summary>Moves an entry of a list, both places from 0; does nothing where there is no such entry.</summary>
    public void Move(string place, int from, int to)
    {
        if (Node(place) is not JsonArray list || from == to || from < 0 || from >= list.Count)
            return;
        Changing();
        var value = list[from];
        list.RemoveAt(from);
        list.Insert(Math.Clamp(to, 0, list.Count), value);
    }

    private void Changing() => (_text, _slim) = (null, null);

    /// <summary>The photos that have a picture, or its name.</summary>
    private IEnumerable<(JsonObject Photo, string Jpeg)> Photos() => _root["photos"] is not JsonArray photos ? [] : photos
        .OfType<JsonObject>().Where(photo => photo["jpeg"] is JsonValue).Select(photo => (photo, Typed((JsonValue)photo["jpeg"]!)));

    private bool SetPicturesAside()
    {
        foreach (var (photo, jpeg) in Photos().ToArray())
        {
            if (!Pictures.ContainsKey(jpeg) && _shelf.SetAside(jpeg) is { } name)
                photo["jpeg"] = name;
        }
        return Photos().Any(p => Pictures.ContainsKey(p.Jpeg));
    }

    /// <summary>The names cannot be guessed, so that only photos have them.</summary>
    private string WithPictures()
    {
        var slim = Slim;
        var text = new StringBuilder(slim);
        foreach (var (_, name) in Photos().Where(p => Pictures.ContainsKey(p.Jpeg)).DistinctBy(p => p.Jpeg))
            text.Replace(name, Pictures[name].Base64);
        return text.ToString();
    }

    private static string Typed(JsonValue value) =>
        value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : value.ToJsonString();

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
