using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Findings;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>The sizes that a project is planned for, from a shipped chart or the designer's own.</summary>
/// <param name="Derived">What the chart does not give and a rule did, for the designer to know.</param>
internal sealed record BodySizes(ImmutableArray<BodyOfSize> Sizes, Wearers Wearer, int Base, ImmutableArray<Finding> Derived)
{
    /// <summary>Its sizes, in the pattern's order, every needed measure present; or located faults that say what to add.</summary>
    public static bool TryRead(
        SizeSelection selection, IReadOnlyList<BodyMeasure> needed, IEnumerable<BodyMeasure> wished,
        [NotNullWhen(true)] out BodySizes? sizes, out ImmutableArray<Finding> faults)
    {
        sizes = null;
        var found = ImmutableArray.CreateBuilder<Finding>();
        var (bodies, wearer) = needed.Count == 0 ? AnyBody(selection) : Bodies(selection, found);
        var derived = ImmutableArray.CreateBuilder<Finding>();
        foreach (var measure in needed)
        {
            derived.AddRange(Derive(selection, measure, bodies));
            var lacking = bodies.Where(b => !b.Has(measure)).Select(b => b.Name).ToArray();
            if (lacking.Length > 0)
                found.Add(Lacking(selection, measure, lacking));
        }
        foreach (var measure in wished)
            derived.AddRange(Derive(selection, measure, bodies));
        var at = selection.Base is { } name ? bodies.FindIndex(b => b.Name == name) : bodies.Count / 2;
        if (at < 0)
            found.Add(new Finding(
                FindingLevel.Fault, "sizes.base",
                $"There is no size {selection.Base} in this pattern: {SizeSelection.SayChoice(bodies.Select(b => b.Name))}."));
        faults = found.ToImmutable();
        if (!faults.IsEmpty)
            return false;
        sizes = new BodySizes([.. bodies], wearer, at, derived.ToImmutable());
        return true;
    }

    /// <summary>A garment that is not made to the body: one size, or as many as are named.</summary>
    private static (List<BodyOfSize> Bodies, Wearers Wearer) AnyBody(SizeSelection selection) =>
        (!selection.Own.IsEmpty
            ? [.. selection.Own.Select(o => new BodyOfSize(o.Name, o.Measures))]
            : [.. selection.Names(toBody: false).Select(n => new BodyOfSize(n, ImmutableSortedDictionary<string, Length>.Empty))],
        Wearers.Adult);

    private static (List<BodyOfSize> Bodies, Wearers Wearer) Bodies(SizeSelection selection, ImmutableArray<Finding>.Builder found)
    {
        if (!selection.Own.IsEmpty)
        {
            // A chest is the same measure under another word.
            return ([.. selection.Own.Select(
                o => new BodyOfSize(o.Name,
                    o.Measures.ToImmutableSortedDictionary(m => m.Key == "chest" ? "bust" : m.Key, m => m.Value)))], Wearers.Adult);
        }
        if (selection.Chart is not { } id || !SizeCharts.TryFind(id, out var chart))
        {
            found.Add(new Finding(FindingLevel.Fault, "sizes.chart", selection.Chart is null
                ? "This garment is made to the body: name a chart, such as women, or give sizes of your own."
                : $"There is no chart {selection.Chart}: choose one of {string.Join(", ", SizeCharts.All.Select(c => c.Id))}."));
            return ([], Wearers.Adult);
        }
        var bodies = new List<BodyOfSize>();
        IEnumerable<string> names = selection.Sizes.IsEmpty ? chart.Sizes.Select(s => s.Name) : selection.Sizes;
        foreach (var (name, i) in names.Select((n, i) => (n, i)))
        {
            if (chart.TryFind(name, out var size))
                bodies.Add(new BodyOfSize(
                    name, size.Measurements.ToImmutableSortedDictionary(m => BodyMeasures.Key(m.Measure), m => m.Range.Middle))
                {
                    Largest = size.Measurements.ToImmutableSortedDictionary(m => BodyMeasures.Key(m.Measure), m => m.Range.Maximum),
                });
            else
                found.Add(new Finding(
                    FindingLevel.Fault, $"sizes.names[{i}]",
                    $"The chart {id} has no size {name}: choose among {string.Join(", ", chart.Sizes.Select(s => s.Name))}."));
        }
        return (bodies, chart.Wearer);
    }

    /// <summary>Gives the sizes of a shipped chart a measure that it lacks, where a rule leads to it.</summary>
    private static IEnumerable<Finding> Derive(SizeSelection selection, BodyMeasure measure, List<BodyOfSize> bodies)
    {
        if (!selection.Own.IsEmpty || selection.Chart is not { } id || !SizeCharts.TryFind(id, out var chart))
            yield break;
        string? rule = null;
        for (var i = 0; i < bodies.Count; i++)
        {
            if (bodies[i].Has(measure) || !chart.TryFind(bodies[i].Name, out var size)
                || DerivedMeasures.Find(chart, size, measure) is not { } derived)
                continue;
            bodies[i] = bodies[i] with { Measures = bodies[i].Measures.SetItem(BodyMeasures.Key(measure), derived.Length) };
            rule ??= derived.Rule;
        }
        if (rule is not null)
        {
            yield return new Finding(FindingLevel.Note, "sizes.chart",
                $"The chart {id} does not give {selection.Words(measure)} for every size: it is taken as {rule}. Sizes of your own can give it.");
        }
    }

    private static Finding Lacking(SizeSelection selection, BodyMeasure measure, string[] sizes)
    {
        var words = selection.Words(measure);
        var who = sizes.Length == 1 ? $"Size {sizes[0]} has" : $"Sizes {string.Join(", ", sizes)} have";
        return selection.Own.IsEmpty
            ? new Finding(FindingLevel.Fault, "sizes.chart",
                $"{who} no {words} in the chart {selection.Chart}: choose a chart that has it, or give sizes of your own with {BodyMeasures.Key(measure)}.")
            : new Finding(FindingLevel.Fault, "sizes.own", $"{who} no {words}: add {BodyMeasures.Key(measure)}.");
    }
}
