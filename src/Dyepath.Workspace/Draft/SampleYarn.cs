using System.Text.Json.Nodes;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Draft;

/// <summary>
/// A yarn with its swatch to look round with, before one of her own is measured: the starter document's. It is in a document as long as
/// all of it is; with the first thing of the designer's own the rest of it goes, so that none of it is ever drawn as hers.
/// </summary>
public static class SampleYarn
{
    /// <summary>What is poured in; the yarn's name and what else is said of it are the designer's from the start.</summary>
    private static readonly string[] Places = ["yarn.sections", "yarn.counted", "yarn.ball", "yarn.category", "fabric.swatch"];

    private static ProjectDocument Sample { get; } = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;

    /// <summary>Whether yarn and swatch are the sample, whole and unchanged.</summary>
    public static bool IsIn(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Array.TrueForAll(Places, place => JsonNode.DeepEquals(document.Node(place), Sample.Node(place)));
    }

    /// <summary>Whether the swatch's yarn, or its hook and gauge, are the sample's.</summary>
    public static bool HasItsSwatch(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Same("fabric.swatch.yarnUsed") || (Same("fabric.swatch.hook") && Same("fabric.swatch.worked"));

        bool Same(string place) => document.Has(place) && JsonNode.DeepEquals(document.Node(place), Sample.Node(place));
    }

    /// <summary>Whether there is room for it: no colour and no gauge is put in yet.</summary>
    public static bool HasRoom(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Count("yarn.sections") == 0 && !document.Has("fabric.swatch.worked");
    }

    /// <summary>Puts it in; what stood in its places is gone.</summary>
    public static void Pour(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        foreach (var place in Places)
            document.Set(place, Sample.Node(place)?.DeepClone());
    }

    /// <summary>Takes out what is the sample's; what the designer has put in or changed since stays.</summary>
    public static void TakeOut(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        foreach (var place in Places)
            document.Set(place, Rest(document.Node(place), Sample.Node(place)));
    }

    /// <summary>What is not the sample's: null where nothing is left.</summary>
    private static JsonNode? Rest(JsonNode? mine, JsonNode? sample)
    {
        if (mine is null || JsonNode.DeepEquals(mine, sample))
            return null;
        if (mine is not JsonObject own || sample is not JsonObject from)
            return mine.DeepClone();
        var left = own.Select(p => KeyValuePair.Create(p.Key, Rest(p.Value, from[p.Key]))).Where(p => p.Value is not null).ToArray();
        return left.Length == 0 ? null : new JsonObject(left);
    }
}
