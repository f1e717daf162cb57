using System.Text.Json.Nodes;
using Dyepath.Client.Fields;
using Dyepath.Client.Work;

namespace Dyepath.Client.Garment;

/// <summary>The shapes that a garment can have, as the document names them, and what changing one for another takes along.</summary>
internal static class GarmentShapes
{
    private static readonly string[] Common = ["shape", "direction", "motif", "grading", "edgings"];

    private static readonly Dictionary<string, string[]> Own = new()
    {
        ["pullover"] = ["ease", "hipEase", "belowWaist", "hipBelowWaist", "neckWidth", "neckStep", "upperArmEase", "sleeves", "seams"],
        ["tunic"] = ["ease", "hipEase", "belowWaist", "hipBelowWaist", "neckWidth", "neckStep", "upperArmEase", "sleeves", "seams"],
        ["cowl"] = ["circumference", "height", "working", "seams"],
        ["wrap"] = ["width", "length"],
        ["blanket"] = ["width", "length"],
    };

    /// <summary>What a shape cannot do without, and what it begins with.</summary>
    private static readonly Dictionary<string, (string Name, string Value)[]> First = new()
    {
        ["cowl"] = [("circumference", "66 cm"), ("height", "28 cm")],
        ["wrap"] = [("width", "45 cm"), ("length", "170 cm")],
        ["blanket"] = [("width", "100 cm"), ("length", "120 cm")],
    };

    private static readonly Dictionary<string, Choice[]> Edges = new()
    {
        ["top"] = [new("hem"), new("neck"), new("armholes"), new("cuffs")],
        ["cowl"] = [new("brims")],
        ["wrap"] = [new("border", "all round")],
    };

    /// <summary>Its outline, on a grid of 48.</summary>
    public static IReadOnlyList<(string Value, string Words, string Outline)> All { get; } =
    [
        ("pullover", "Pullover", "M13 14h22v22H13zM13 14H3v9h10M35 14h10v9H35M19 14h10"),
        ("tunic", "Tunic", "M14 9h20v32H14zM14 9H5v8h9M34 9h9v8h-9M19 9h10"),
        ("cowl", "Cowl", "M10 16c0-3 28-3 28 0v18c0 4-28 4-28 0zM10 16c0 3 28 3 28 0"),
        ("wrap", "Wrap or scarf", "M4 18h40v12H4zM4 18l-2 2M4 22l-2 2M4 26l-2 2M44 18l2 2M44 22l2 2M44 26l2 2"),
        ("blanket", "Blanket", "M8 8h32v32H8zM11 11h26v26H11z"),
    ];

    public static bool IsTop(string shape) => shape is "pullover" or "tunic";

    /// <summary>Edges that an edging can go on.</summary>
    public static IReadOnlyList<Choice> EdgesOf(string shape) => Edges[IsTop(shape) ? "top" : shape == "cowl" ? "cowl" : "wrap"];

    /// <summary>
    /// Makes the garment another one: what both have stays, what the new one needs is given a value to begin with. Undo brings the
    /// rest back.
    /// </summary>
    public static void Change(ProjectDocument document, string shape)
    {
        if (document.Node("garment") is not JsonObject garment)
            document.Set("garment", garment = []);
        var keeps = Common.Concat(Own[shape]).ToHashSet();
        foreach (var name in garment.Select(field => field.Key).ToArray())
        {
            if (!keeps.Contains(name))
                garment.Remove(name);
        }
        document.Set("garment.shape", shape);
        foreach (var (name, value) in First.GetValueOrDefault(shape, []))
        {
            if (garment[name] is null)
                document.Set($"garment.{name}", value);
        }
        if (garment["edgings"] is JsonArray edgings)
        {
            var edges = EdgesOf(shape).Select(e => e.Value).ToHashSet();
            for (var i = edgings.Count - 1; i >= 0; i--)
            {
                if (!edges.Contains(edgings[i]?["where"]?.ToString() ?? ""))
                    edgings.RemoveAt(i);
            }
        }
        if (!IsTop(shape))
            document.Set("sizes", null);
        else if (!document.Has("sizes.chart") && !document.Has("sizes.own"))
            document.Set("sizes.chart", "women");
        // What a motif can be depends on how rows follow each other: the new shape begins with what is usual for it.
        if (shape == "cowl")
            document.Set("garment.motif", null);
    }
}
