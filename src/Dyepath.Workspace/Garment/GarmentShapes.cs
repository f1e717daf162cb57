using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Fields;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Garment;

/// <summary>What changing one garment for another takes along.</summary>
public static class GarmentShapes
{
    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<GarmentKind> All => Repertoire.All;

    /// <summary>By the document's word; the first of all where there is none of that name.</summary>
    public static GarmentKind Find(string shape) => All.FirstOrDefault(kind => kind.Name == shape) ?? All[0];

    /// <summary>Edges that an edging can go on, as the document names them.</summary>
    public static IReadOnlyList<Choice> EdgesOf(string shape) => [.. Find(shape).Edges.Select(place => place == EdgingPlace.Border
        ? new Choice(EdgingPlaces.Key(place), "all round")
        : new Choice(EdgingPlaces.Key(place)))];

    /// <summary>Those that can go on an edge: rows where its ends do not meet, rounds where they do.</summary>
    public static IEnumerable<Edging> EdgingsAt(string shape, EdgingPlace place, Func<string, string> typed)
    {
        var open = Find(shape).IsOpen(place, typed);
        return EdgingLibrary.All.Where(e => e.Places.Contains(place) && e.InRows == open);
    }

    /// <summary>
    /// Makes the garment another one: what both have stays, what the new one needs is given a value to begin with. Undo brings the
    /// rest back.
    /// </summary>
    public static void Change(ProjectDocument document, string shape)
    {
        ArgumentNullException.ThrowIfNull(document);
        var kind = Find(shape);
        // A title that nobody has written follows the garment.
        var (title, untouched) = (document.Typed("title"), StarterDocument.TitleOf(Find(document.Typed("garment.shape"))));
        if (title.StartsWith(untouched, StringComparison.Ordinal)
            && (title.Length == untouched.Length || IsNumber(title[untouched.Length..])))
            document.Set("title", StarterDocument.TitleOf(kind) + title[untouched.Length..]);
        if (kind.HasCompanion && document.Node("companion") is null)
        {
            document.Set("companion", JsonNode.Parse(ProjectWriter.Write(StarterDocument.Of(kind)))!["companion"]!.DeepClone());
            if (document.Node("yarn.ball") is { } ball)
                document.Set("companion.ball", ball.DeepClone());
        }
        if (document.Node("garment") is not JsonObject garment)
            document.Set("garment", garment = []);
        var keeps = kind.DocumentFields.ToHashSet();
        foreach (var name in garment.Select(field => field.Key).ToArray())
        {
            var choices = kind.Fields.FirstOrDefault(f => f.Name == name)?.Choices ?? [];
            if (!keeps.Contains(name) || (!choices.IsEmpty && choices.All(c => c.Name != garment[name]?.ToString())))
                garment.Remove(name);
        }
        document.Set("garment.shape", shape);
        foreach (var field in kind.Fields.Where(f => f.First is not null))
        {
            if (garment[field.Name] is null)
                document.Set($"garment.{field.FirstPlace}", field.First!);
        }
        if (garment["edgings"] is JsonArray edgings)
        {
            var edges = EdgesOf(shape).Select(e => e.Value).ToHashSet();
            for (var i = edgings.Count - 1; i >= 0; i--)
            {
                var where = edgings[i]?["where"]?.ToString() ?? "";
                // Sleeves are sewn to the edges of armholes.
                if (!edges.Contains(where)
                    || (where == EdgingPlaces.Key(EdgingPlace.Armholes) && kind.DocumentFields.Contains("sleeves") && document.Node("garment.sleeves") is not null))
                    edgings.RemoveAt(i);
                else if (Enum.TryParse<EdgingPlace>(where, ignoreCase: true, out var place)
                    && EdgingsAt(shape, place, name => document.Typed($"garment.{name}")).ToArray() is { Length: > 0 } fitting && fitting.All(e => e.Id != edgings[i]!["edging"]?.ToString()))
                    edgings[i]!["edging"] = fitting[0].Id;
            }
        }
        foreach (var first in kind.NeededEdgings)
        {
            var where = EdgingPlaces.Key(first.Where);
            if (document.Node("garment.edgings") is not JsonArray list)
                document.Set("garment.edgings", list = []);
            if (!list.Any(e => e?["where"]?.ToString() == where))
                list.Add(new JsonObject { ["where"] = where, ["edging"] = first.Edging });
        }
        if (!kind.IsToBody)
            document.Set("sizes", null);
        else if (!document.Has("sizes.chart") && !document.Has("sizes.own"))
            document.Set("sizes.chart", kind.Chart);
        // What a motif can be depends on how rows follow each other: the new shape begins with what is usual for it.
        if (kind.Fields.Any(f => f.Kind == FieldKind.Working))
            document.Set("garment.motif", null);
    }

    /// <summary>Such as <c> 2</c>, behind a title that another project has.</summary>
    private static bool IsNumber(string text) => text.Length is > 1 and < 5 && text[0] == ' ' && text.Skip(1).All(char.IsAsciiDigit);

}
