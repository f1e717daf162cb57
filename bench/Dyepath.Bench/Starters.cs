using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;

namespace Dyepath.Bench;

/// <summary>A document that a garment is begun with, in a chart and with a form of neck.</summary>
/// <param name="Neck">The document's word; missing where the garment has no choice.</param>
/// <param name="Chart">Missing where it is not made to the body.</param>
internal sealed record Starter(GarmentKind Kind, string? Neck, string? Chart)
{
    public static IEnumerable<Starter> All =>
        from kind in Repertoire.All
        from chart in kind.IsToBody ? SizeCharts.All.Select(c => (string?)c.Id) : [null]
        from starter in Of(kind, chart)
        select starter;

    /// <summary>One for each form of neck that the garment may have.</summary>
    public static IEnumerable<Starter> Of(GarmentKind kind, string? chart) =>
        kind.Fields.FirstOrDefault(f => f.Name == "neck") is { } neck
            ? neck.Choices.Select(c => new Starter(kind, c.Name, chart))
            : [new Starter(kind, null, chart)];

    public string Name => Neck is null ? Kind.Name : $"{Kind.Name}, {Neck}";

    /// <summary>All sizes of its chart together, said by none, and each alone.</summary>
    public IEnumerable<string[]> Choices => Chart is not null && SizeCharts.TryFind(Chart, out var chart)
        ? [[], .. chart.Sizes.Select(s => new[] { s.Name })] : [[]];

    /// <summary>Without the edging of hem, cuffs and brim that it is begun with.</summary>
    public bool Bare { get; init; }

    /// <summary>With the sizes named, or all of its chart.</summary>
    public Project Project(params ReadOnlySpan<string> sizes)
    {
        var document = JsonNode.Parse(ProjectWriter.Write(StarterDocument.Of(Kind)))!;
        if (Neck is not null)
        {
            document["garment"]!["neck"] = Neck;
            // What is left open beside the neck is there to be closed.
            if (Neck == "buttoned")
                Edge(document["garment"]!, "shoulder", "button-band");
            // What fills it is plain.
            if (Neck == "v-insert")
                document["companion"] = JsonNode.Parse(ProjectWriter.Write(StarterDocument.Of(Repertoire.All.First(k => k.HasCompanion))))!["companion"]!.DeepClone();
        }
        if (Bare && document["garment"]!["edgings"] is JsonArray edgings)
            edgings.RemoveAll(e => !Kind.NeededEdgings.Any(n => EdgingPlaces.Key(n.Where) == e!["where"]!.ToString()) && e!["where"]!.ToString() != "shoulder");
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.ToJsonString()));
        var project = reading.Project ?? throw new InvalidOperationException($"{Name}: {string.Join(" ", reading.Faults)}");
        return Chart is null ? project : project with { Sizes = new SizeSelection(Chart, [.. sizes], [], null, [], []) };
    }

    private static void Edge(JsonNode garment, string where, string edging)
    {
        if (garment["edgings"] is not JsonArray edgings)
            garment["edgings"] = edgings = [];
        edgings.Add(new JsonObject { ["where"] = where, ["edging"] = edging });
    }
}
