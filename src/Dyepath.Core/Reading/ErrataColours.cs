using System.Collections.Immutable;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

/// <summary>Colours that only have another name or symbol: told once, and not wherever they are named.</summary>
internal static class ErrataColours
{
    /// <summary>Was and is, such as <c>foam (F)</c>; empty where all are called the same, or others have come.</summary>
    public static ImmutableArray<(string Was, string Now)> Called(Plan was, Plan now)
    {
        var (before, after) = (was.Sequence.Colours, now.Sequence.Colours);
        if (before.Length != after.Length)
            return [];
        var (old, young) = (before.Select(c => c.Name).ToHashSet(), after.Select(c => c.Name).ToHashSet());
        var renamed = before.Zip(after).Where(pair => Said(pair.First) != Said(pair.Second)).ToArray();
        var isRenamed = renamed.All(pair =>
            pair.First.Name == pair.Second.Name || (!young.Contains(pair.First.Name) && !old.Contains(pair.Second.Name)));
        return isRenamed ? [.. renamed.Select(pair => (Said(pair.First), Said(pair.Second)))] : [];
    }

    /// <summary>Each as a line of the section that lists the colours.</summary>
    public static IEnumerable<ErrataPair> Pairs(ImmutableArray<(string Was, string Now)> called, ImmutableArray<ErrataLine> now)
    {
        if (called.IsEmpty)
            yield break;
        var at = now.FirstOrDefault(line => line.Section == "colours") ?? now.First(line => line.Section == "materials");
        var section = now.Select(line => line.Section).Distinct().ToList().IndexOf(at.Section);
        foreach (var (was, after) in called)
            yield return new ErrataPair(Line(was), Line(after), (section, -1));

        ErrataLine Line(string colour) => new(at.Section, "", ErrataKind.Colour, "", colour)
        {
            Title = at.Title,
            Heading = "",
            Label = "",
            Text = colour,
        };
    }

    private static string Said(SequenceColour colour) => $"{colour.Name} ({colour.Symbol})";
}
