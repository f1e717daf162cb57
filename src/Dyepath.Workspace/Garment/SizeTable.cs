using System.Text.Json.Nodes;
using Dyepath.Core.Sizing;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Garment;

/// <summary>Changes to the sizes that a pattern is written for.</summary>
internal static class SizeTable
{
    /// <summary>Measures that garments here are planned by; the others of a chart are of no use yet.</summary>
    public static IReadOnlyList<BodyMeasure> Used { get; } =
    [
        BodyMeasure.Bust, BodyMeasure.Waist, BodyMeasure.Hip, BodyMeasure.BackWaistLength, BodyMeasure.UpperArm, BodyMeasure.ArmholeDepth,
        BodyMeasure.CentreBackNeckToCuff,
    ];

    /// <summary>Takes the sizes of a shipped chart over as the designer's own, to be changed number by number.</summary>
    public static void MakeOwn(ProjectDocument document, SizeChart chart)
    {
        var names = Names(document);
        var own = new JsonArray();
        foreach (var size in chart.Sizes.Where(s => names.Length == 0 || names.Contains(s.Name)))
        {
            var measures = new JsonObject();
            foreach (var measurement in size.Measurements.OrderBy(m => m.Measure))
                measures[BodyMeasures.Key(measurement.Measure)] = FormattableString.Invariant($"{measurement.Range.Middle.Centimetres:0.##} cm");
            own.Add(new JsonObject { ["name"] = size.Name, ["measures"] = measures });
        }
        document.Set("sizes.chart", null);
        document.Set("sizes.names", null);
        document.Set("sizes.own", own);
    }

    /// <summary>Goes back to a shipped chart.</summary>
    public static void UseChart(ProjectDocument document, string chart)
    {
        document.Set("sizes.own", null);
        document.Set("sizes.names", null);
        document.Set("sizes.base", null);
        document.Set("sizes.locked", null);
        document.Set("sizes.overrides", null);
        document.Set("sizes.chart", chart);
    }

    /// <summary>Puts a size in or takes it out; all of them are said by saying none.</summary>
    public static void Turn(ProjectDocument document, SizeChart chart, string name, bool wanted)
    {
        var names = Names(document) is { Length: > 0 } some ? some.ToList() : [.. chart.Sizes.Select(s => s.Name)];
        names.Remove(name);
        if (wanted)
            names.Add(name);
        var ordered = chart.Sizes.Select(s => s.Name).Where(names.Contains).ToArray();
        if (ordered.Length == 0)
            return;
        document.Set("sizes.names", ordered.Length == chart.Sizes.Length ? null : new JsonArray([.. ordered.Select(n => JsonValue.Create(n))]));
        if (document.Typed("sizes.base") is { Length: > 0 } made && !ordered.Contains(made))
            document.Set("sizes.base", null);
        foreach (var list in (string[])["sizes.locked", "sizes.overrides"])
        {
            for (var i = document.Count(list) - 1; i >= 0; i--)
            {
                if (!ordered.Contains(document.Typed($"{list}[{i}].size")))
                    document.Set($"{list}[{i}]", null);
            }
        }
    }

    public static string[] Names(ProjectDocument document) => document.Node("sizes.names") is JsonArray names
        ? [.. names.Select(n => n?.ToString() ?? "")]
        : [];
}
