using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>
/// What the designer fixed. A number locked in the base size is as it was made: the base keeps it, and every other size is moved
/// by as much as the base was (made less rule). An override moves its own size alone.
/// </summary>
internal sealed class FixedNumbers
{
    private readonly ImmutableArray<FixedNumber> _locked;
    private readonly ImmutableArray<FixedNumber> _overrides;
    private readonly string _base;

    public FixedNumbers(SizeSelection selection, string baseSize)
        : this(selection.Locked, selection.Overrides, baseSize)
    {
    }

    private FixedNumbers(ImmutableArray<FixedNumber> locked, ImmutableArray<FixedNumber> overrides, string baseSize) =>
        (_locked, _overrides, _base) = (locked, overrides, baseSize);

    /// <summary>As seen from another direction than the one that counts were fixed for: there they mean nothing.</summary>
    public FixedNumbers MeasuresOnly() => new([.. _locked.Where(f => f.Count is null)], [.. _overrides.Where(f => f.Count is null)], _base);

    /// <summary>A count fixed for a size, by either way; an override outranks a lock.</summary>
    public int? Count(string size, string what) =>
        _overrides.FirstOrDefault(o => o.Size == size && o.What == what)?.Count
        ?? (size == _base ? _locked.FirstOrDefault(l => l.What == what)?.Count : null);

    /// <summary>Where in the document an override fixes a count of a size, and which; null where none does.</summary>
    public (string Place, int Count)? Where(string size, string what)
    {
        var at = _overrides.ToList().FindIndex(o => o.Size == size && o.What == what);
        return at >= 0 && _overrides[at].Count is { } count ? ($"sizes.overrides[{at}].count", count) : null;
    }

    /// <summary>The base size's count as it was made.</summary>
    public int? Made(string what) => _locked.FirstOrDefault(l => l.What == what)?.Count;

    /// <summary>A measure overridden for this size alone.</summary>
    public Length? Override(string size, GarmentMeasure measure) =>
        _overrides.FirstOrDefault(o => o.Size == size && o.What == GarmentMeasures.Key(measure))?.Length;

    /// <summary>The base size's measure as it was made.</summary>
    public Length? Made(GarmentMeasure measure) => _locked.FirstOrDefault(l => l.What == GarmentMeasures.Key(measure))?.Length;

    /// <summary>Moves a series of targets to what was made and overridden.</summary>
    /// <param name="made">As made, where a locked count says so rather than a locked measure.</param>
    public ImmutableArray<Length> Apply(GarmentMeasure measure, BodySizes sizes, ImmutableArray<Length> byRule, Length? made = null)
    {
        var moved = (Made(measure) ?? made) is { } asMade ? asMade - byRule[sizes.Base] : Length.Zero;
        return [.. byRule.Select((target, i) => Override(sizes.Sizes[i].Name, measure) ?? target + moved)];
    }

    /// <summary>Numbers that name no size, measure or count that there is.</summary>
    public IEnumerable<Finding> Faults(IReadOnlyList<string> sizes, IReadOnlyList<GarmentMeasure> measures, IReadOnlyList<string> counts)
    {
        foreach (var (list, name) in new[] { (_locked, "locked"), (_overrides, "overrides") })
        {
            for (var i = 0; i < list.Length; i++)
            {
                var (number, place) = (list[i], $"sizes.{name}[{i}]");
                if (!sizes.Contains(number.Size))
                    yield return Fault($"{place}.size", $"There is no size {number.Size}: {SizeSelection.SayChoice(sizes)}.");
                else if (name == "locked" && number.Size != _base)
                    yield return Fault($"{place}.size", $"Only the base size, {_base}, is locked as made; give {number.Size} an override.");
                var isMeasure = measures.Any(m => GarmentMeasures.Key(m) == number.What);
                if (!isMeasure && !counts.Contains(number.What))
                    yield return Fault($"{place}.what",
                        $"{number.What} is no number of this garment: choose one of {string.Join(", ", [.. measures.Select(GarmentMeasures.Key), .. counts])}.");
                else if (isMeasure && number.Length is null)
                    yield return Fault($"{place}.length", $"{number.What} is a length: give one, such as \"110 cm\".");
                else if (!isMeasure && number.Count is null or < 1)
                    yield return Fault($"{place}.count", $"{number.What} is a count: give a whole number of at least 1.");
            }
        }
    }

    private static Finding Fault(string place, string text) => new(FindingLevel.Fault, place, text);
}
