using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Dyepath.Core.Quantities;
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
        var sample = Base(document);
        document.Set("sizes.names", ordered.Length == chart.Sizes.Length ? null : new JsonArray([.. ordered.Select(n => JsonValue.Create(n))]));
        if (document.Typed("sizes.base") is { Length: > 0 } made && !ordered.Contains(made))
            document.Set("sizes.base", null);
        KeepBase(document, sample);
        foreach (var list in (string[])["sizes.locked", "sizes.overrides"])
        {
            for (var i = document.Count(list) - 1; i >= 0; i--)
            {
                if (!ordered.Contains(document.Typed($"{list}[{i}].size")))
                    document.Set($"{list}[{i}]", null);
            }
        }
    }

    /// <summary>Puts a size behind the designer's own ones, with the measures of the last, to be changed.</summary>
    public static void AddOwn(ProjectDocument document)
    {
        var sample = Base(document);
        var count = document.Count("sizes.own");
        var last = document.Node($"sizes.own[{count - 1}]")?.DeepClone() as JsonObject ?? new JsonObject { ["measures"] = new JsonObject() };
        last["name"] = $"size {count + 1}";
        document.Add("sizes.own", last);
        KeepBase(document, sample);
    }

    /// <summary>Calls one of the designer's own sizes otherwise, wherever it is spoken of.</summary>
    public static void RenameOwn(ProjectDocument document, int at, string name)
    {
        var before = document.Typed($"sizes.own[{at}].name");
        document.Set($"sizes.own[{at}].name", name);
        if (before.Length == 0)
            return;
        if (document.Typed("sizes.base") == before)
            document.Set("sizes.base", name);
        foreach (var list in (string[])["sizes.locked", "sizes.overrides"])
        {
            for (var i = 0; i < document.Count(list); i++)
            {
                if (document.Typed($"{list}[{i}].size") == before)
                    document.Set($"{list}[{i}].size", name);
            }
        }
    }

    /// <summary>Takes one of the designer's own sizes away.</summary>
    public static void RemoveOwn(ProjectDocument document, int at)
    {
        var sample = Base(document);
        document.Set($"sizes.own[{at}]", null);
        if (document.Typed("sizes.base") is { Length: > 0 } made && !Called(document).Contains(made))
            document.Set("sizes.base", null);
        KeepBase(document, sample);
    }

    /// <summary>What the document's sizes are called, smallest first: own, named, or all of its chart; empty without any.</summary>
    public static string[] Called(ProjectDocument document) =>
        document.Count("sizes.own") > 0
            ? [.. Enumerable.Range(0, document.Count("sizes.own")).Select(i => document.Typed($"sizes.own[{i}].name"))]
        : Names(document) is { Length: > 0 } names ? names
        : SizeCharts.TryFind(document.Typed("sizes.chart"), out var chart) ? [.. chart.Sizes.Select(s => s.Name)]
        : [];

    /// <summary>The size that is made as the sample: the one that is said, else the middle one, as in plans; null without any.</summary>
    public static string? Base(ProjectDocument document)
    {
        var called = Called(document);
        return document.Typed("sizes.base") is { Length: > 0 } said && called.Contains(said) ? said
            : called.Length > 0 ? called[called.Length / 2] : null;
    }

    /// <summary>What the document's size tables call the girth round the chest, as a pattern of it does.</summary>
    public static string BustWord(ProjectDocument document) => new SizeSelection(
        document.Typed("sizes.chart"), [],
        [.. Enumerable.Range(0, document.Count("sizes.own")).Select(i => new OwnSize("", Keys(document, i)))], null, [], []).BustWord;

    private static ImmutableSortedDictionary<string, Length> Keys(ProjectDocument document, int own) =>
        (document.Node($"sizes.own[{own}].measures") as JsonObject ?? []).ToImmutableSortedDictionary(m => m.Key, _ => Length.Zero);

    /// <summary>The middle one moves as sizes come and go; the sample that was made does not.</summary>
    private static void KeepBase(ProjectDocument document, string? sample)
    {
        if (sample is { Length: > 0 } && Base(document) != sample && Called(document).Contains(sample))
            document.Set("sizes.base", sample);
    }

    public static string[] Names(ProjectDocument document) => document.Node("sizes.names") is JsonArray names
        ? [.. names.Select(n => n?.ToString() ?? "")]
        : [];
}
