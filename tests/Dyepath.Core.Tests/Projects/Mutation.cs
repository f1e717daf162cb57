using System.Text.Json.Nodes;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Changes a JSON document at one random place.</summary>
internal static class Mutation
{
    private static readonly string[] Texts =
    [
        "", " ", "x", "41 cm", "-3.5 in", "½ in", "16 ½ in", "1/2 in", "41cm", "41  cm", "12 mm", "0 m", "230 yd", "100 g", "3.5 oz",
        "1e3 cm", "999999 cm", "10 stitches", "1 %", "101 %", "4 cm²", "#12f", "#12345g", "women", "sc", "linen", "tunic", "cowl",
        "blanket", "newer", "older",
        "classic", "up", "free", "width", "panelRows", "M", "line\nbreak", "tab\t", "\u202Ereversed", "é波🌊", "∞",
    ];

    private static readonly double[] Numbers = [0, 1, -1, 0.5, 3, 7, 8, 14, 64, 1_000, 1_001, 5_001, 1e6, 1e30, -1e300, 2.5e-9];

    public static string Mutate(string json, Random random)
    {
        var root = JsonNode.Parse(json)!;
        var nodes = Below(root).ToArray();
        var node = nodes[random.Next(nodes.Length)];
        switch (random.Next(5))
        {
            case 0 when node.Parent is JsonObject owner:
                owner.Remove(node.GetPropertyName());
                break;
            case 1 when node.Parent is JsonObject owner:
                var name = node.GetPropertyName();
                owner.Remove(name);
                owner[Misspelt(name, random)] = node;
                break;
            case 2 when node is JsonObject value:
                value[Texts[random.Next(Texts.Length)]] = Value(random, nodes);
                break;
            case 3 when node is JsonArray list:
                if (list.Count == 0 || random.Next(2) == 0)
                    list.Add(Value(random, nodes));
                else
                    list.RemoveAt(random.Next(list.Count));
                break;
            case 4 when node is JsonArray { Count: > 0 } list:
                for (var times = random.Next(1, 70); times > 0; times--)
                    list.Add(list[0]?.DeepClone());
                break;
            default:
                Replace(node, Value(random, nodes));
                break;
        }
        return root.ToJsonString();
    }

    private static IEnumerable<JsonNode> Below(JsonNode node)
    {
        IEnumerable<JsonNode?> children = node switch
        {
            JsonObject value => value.Select(m => m.Value),
            JsonArray list => list,
            _ => [],
        };
        return children.OfType<JsonNode>().SelectMany(c => Below(c).Prepend(c));
    }

    private static void Replace(JsonNode node, JsonNode? value)
    {
        if (node.Parent is JsonObject owner)
            owner[node.GetPropertyName()] = value;
        else if (node.Parent is JsonArray list)
            list[node.GetElementIndex()] = value;
    }

    private static JsonNode? Value(Random random, JsonNode[] others) => random.Next(7) switch
    {
        0 => JsonValue.Create(Texts[random.Next(Texts.Length)]),
        1 => JsonValue.Create(Numbers[random.Next(Numbers.Length)]),
        2 => JsonValue.Create(random.Next(2) == 0),
        3 => null,
        4 => new JsonArray(),
        5 => new JsonObject(),
        _ => others[random.Next(others.Length)].DeepClone(),
    };

    private static string Misspelt(string name, Random random)
    {
        var at = random.Next(name.Length);
        return random.Next(2) == 0 ? name.Remove(at, 1) : name.Insert(at, "e");
    }
}
