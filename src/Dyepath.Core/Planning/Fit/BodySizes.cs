using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Findings;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>One size's body: the middle of each measure's range, so that no body in the range is further off than half of it.</summary>
internal sealed record BodyOfSize(string Name, ImmutableSortedDictionary<string, Length> Measures)
{
    public Length this[BodyMeasure measure] => Measures[BodyMeasures.Key(measure)];

    public bool Has(BodyMeasure measure) => Measures.ContainsKey(BodyMeasures.Key(measure));
}

/// <summary>The sizes that a project is planned for, from a shipped chart or the designer's own.</summary>
internal sealed record BodySizes(ImmutableArray<BodyOfSize> Sizes, Wearers Wearer, int Base)
{
    /// <summary>Its sizes, in the pattern's order, every needed measure present; or located faults that say what to add.</summary>
    public static bool TryRead(
        SizeSelection selection, IReadOnlyList<BodyMeasure> needed, [NotNullWhen(true)] out BodySizes? sizes,
        out ImmutableArray<Finding> faults)
    {
        sizes = null;
        var found = ImmutableArray.CreateBuilder<Finding>();
        var (bodies, wearer) = Bodies(selection, found);
        foreach (var measure in needed)
        {
            var lacking = bodies.Where(b => !b.Has(measure)).Select(b => b.Name).ToArray();
            if (lacking.Length > 0)
                found.Add(Lacking(selection, measure, lacking));
        }
        var at = selection.Base is { } name ? bodies.FindIndex(b => b.Name == name) : bodies.Count / 2;
        if (at < 0)
            found.Add(new Finding(
                FindingLevel.Fault, "sizes.base",
                $"There is no size {selection.Base} in this pattern: choose one of {string.Join(", ", bodies.Select(b => b.Name))}."));
        faults = found.ToImmutable();
        if (!faults.IsEmpty)
            return false;
        sizes = new BodySizes([.. bodies], wearer, at);
        return true;
    }

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
                    name, size.Measurements.ToImmutableSortedDictionary(m => BodyMeasures.Key(m.Measure), m => m.Range.Middle)));
            else
                found.Add(new Finding(
                    FindingLevel.Fault, $"sizes.names[{i}]",
                    $"The chart {id} has no size {name}: choose among {string.Join(", ", chart.Sizes.Select(s => s.Name))}."));
        }
        return (bodies, chart.Wearer);
    }

    private static Finding Lacking(SizeSelection selection, BodyMeasure measure, string[] sizes)
    {
        var words = BodyMeasures.Words(measure);
        var who = sizes.Length == 1 ? $"Size {sizes[0]} has" : $"Sizes {string.Join(", ", sizes)} have";
        return selection.Own.IsEmpty
            ? new Finding(FindingLevel.Fault, "sizes.chart",
                $"{who} no {words} in the chart {selection.Chart}: choose a chart that has it, or give sizes of your own with {BodyMeasures.Key(measure)}.")
            : new Finding(FindingLevel.Fault, "sizes.own", $"{who} no {words}: add {BodyMeasures.Key(measure)}.");
    }
}
