using System.Globalization;
using System.Text.Json.Nodes;
using Dyepath.Core.Measuring;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Swatch;

/// <summary>Changes to the fabric that concern more than one place of the document.</summary>
public static class SwatchEdits
{
    private const string Whole = "fabric.sectionStitches";

    /// <summary>Takes an object away once none of the fields that matter is said.</summary>
    public static void DropEmpty(ProjectDocument document, string place, params ReadOnlySpan<string> fields)
    {
        foreach (var field in fields)
        {
            if (document.Has($"{place}.{field}"))
                return;
        }
        document.Set(place, null);
    }

    /// <summary>
    /// One number of a maker's hands is enough: the other is that of most makers until it is put in, and goes with the last of hers.
    /// </summary>
    public static void Hands(ProjectDocument document)
    {
        const string spread = "fabric.hands.spread", memory = "fabric.hands.memory";
        var (hasSpread, hasMemory) = (Stands(spread), Stands(memory));
        if (!hasSpread && !hasMemory)
            document.Set("fabric.hands", null);
        else if (!hasMemory)
            Usual(memory, $"{HandsPrior.Default.Memory:0.##} stitches");
        else if (!hasSpread)
            Usual(spread, $"{100 * HandsPrior.Default.Spread:0.##} %");

        // What was put in by us is no number of hers.
        bool Stands(string place) => document.Has(place) && document.Typed(place) != document.Implied.GetValueOrDefault(place);

        void Usual(string place, FormattableString value)
        {
            document.Implied[place] = value.ToString(CultureInfo.InvariantCulture);
            document.Set(place, JsonValue.Create(document.Implied[place]));
        }
    }

    /// <summary>Whole stitches of one section; the others keep what they take now.</summary>
    /// <param name="now">What every section takes now.</param>
    public static void Stitches(ProjectDocument document, IReadOnlyList<int> now, int section, JsonNode value)
    {
        if (document.Count(Whole) != now.Count)
            document.Set(Whole, new JsonArray([.. now.Select(n => (JsonNode)JsonValue.Create(n))]));
        document.Set(string.Create(CultureInfo.InvariantCulture, $"{Whole}[{section}]"), value);
    }

    /// <summary>Free work has no whole stitches to hold to.</summary>
    public static void Keep(ProjectDocument document, string keeping)
    {
        document.Set("fabric.keeping", keeping == "counted" ? null : JsonValue.Create(keeping));
        if (keeping == "free")
            document.Set(Whole, null);
    }

    /// <summary>
    /// The second swatch becomes the pattern's. The counts were made with the hook of the first one and go with it: what they said is
    /// no longer true of the new hook.
    /// </summary>
    public static void Exchange(ProjectDocument document)
    {
        var (first, second) = (document.Node("fabric.swatch")?.DeepClone(), document.Node("fabric.otherSwatch")?.DeepClone());
        document.Set("fabric.swatch", second);
        document.Set("fabric.otherSwatch", first);
        document.Set(Whole, null);
    }
}
