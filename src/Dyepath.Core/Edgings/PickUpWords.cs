using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Edgings;

/// <summary>
/// A pick-up in the words that a person follows. What does not change from size to size is words, what may is numbers, so that sizes whose
/// words are the same share one sentence.
/// </summary>
public static class PickUpWords
{
    /// <summary>For one size.</summary>
    public static string Text(PickUp pickUp) =>
        string.Concat(Parts(pickUp, withRests: false).Select(p => p.Word ?? FormattableString.Invariant($"{p.Number}")));

    /// <summary>For all sizes at once; null where their words differ.</summary>
    /// <param name="withRests">A remainder of none is said as 0, so that sizes with and without one may share a sentence.</param>
    public static Phrase? Shared(ImmutableArray<PickUp> sizes, bool withRests)
    {
        var parts = sizes.Select(size => Parts(size, withRests).ToArray()).ToArray();
        if (parts.Any(own => !own.Select(p => p.Word).SequenceEqual(parts[0].Select(p => p.Word))))
            return null;
        return new Phrase([.. parts[0].Select((part, i) => part.Word is { } word
            ? (Inline)new Words(word)
            : new Count(new([.. parts.Select(own => own[i].Number)])))]);
    }

    private static IEnumerable<Part> Parts(PickUp pickUp, bool withRests)
    {
        var one = pickUp is { Stretches.Length: 1, Extra: 0 };
        foreach (var (alike, i) in Neighbours(pickUp).Select((alike, i) => (alike, i)))
        {
            if (i > 0)
                yield return "; ";
            if (alike[0].Stretch.Corner is { } corner)
                yield return $"{EdgeWords.Of(corner)}; ";
            foreach (var part in Stretch(alike[0], $"{(alike.Count > 1 ? "on each of " : "")}{string.Join(" and ", alike.Select(s => Name(pickUp, s)))}", withRests))
                yield return part;
            if (!one)
            {
                yield return " = ";
                yield return alike[0].Total;
            }
        }
        foreach (var part in Extra(pickUp))
            yield return part;
        yield return one ? ": " : "; ";
        yield return pickUp.Total;
        yield return " in all.";
    }

    /// <summary>What a stretch is found by; of several of one name, which one it is on the way.</summary>
    private static string Name(PickUp pickUp, StretchRule rule)
    {
        var alike = pickUp.Stretches.Where(r => r.Stretch.Id == rule.Stretch.Id).ToArray();
        var nth = Array.FindIndex(alike, r => ReferenceEquals(r, rule)) + 1;
        return $"{EdgeWords.Of(rule.Stretch.Id)}{(alike.Length == 1 ? "" : FormattableString.Invariant($" ({nth} of {alike.Length})"))}";
    }

    /// <summary>
    /// Stretches of one rule that follow each other are named together: the edge is told in the order in which it is met.
    /// </summary>
    private static List<List<StretchRule>> Neighbours(PickUp pickUp)
    {
        var groups = new List<List<StretchRule>>();
        foreach (var rule in pickUp.Stretches)
        {
            if (groups.Count > 0 && rule.Stretch.Corner is null && Key(groups[^1][0]) == Key(rule))
                groups[^1].Add(rule);
            else
                groups.Add([rule]);
        }
        return groups;

        static (int, int, int, int, int, bool, bool) Key(StretchRule rule) =>
            (rule.Stitches, rule.Places, rule.RestPlaces, rule.RestStitches, rule.Groups, rule.Stretch.RowEnds, rule.Stretch.Stepped);
    }

    private static Part[] Stretch(StretchRule rule, string names, bool withRests)
    {
        if (rule.Stretch.Stepped)
            return [$"{names}: pick up ", rule.Stitches, " along the ", rule.Stretch.Places, " stitches and row ends, evenly spread"];
        var (one, many) = rule.Stretch.RowEnds ? ("row end", "row ends") : ("stitch", "stitches");
        if (rule.Places == 1)
            return [$"{names}: pick up ", rule.Stitches, " in each of the ", rule.Stretch.Places, $" {many}"];
        Part[] groups = [$"{names}: pick up ", rule.Stitches, " in every ", rule.Places, $" {many}, ", rule.Groups, rule.Groups == 1 ? " time" : " times"];
        if (rule.RestPlaces == 0 && !withRests)
            return groups;
        return [.. groups, ", then ", rule.RestStitches, " in the last ", rule.RestPlaces, $" {(rule.RestPlaces == 1 && !withRests ? one : many)}"];
    }

    private static Part[] Extra(PickUp pickUp)
    {
        Part[] corners = pickUp.AtEachCorner == 0 ? []
            : ["; ", Math.Abs(pickUp.AtEachCorner), $" {(pickUp.AtEachCorner > 0 ? "extra" : "fewer")} at each of the ", pickUp.Corners, " corners"];
        var (count, what) = (Math.Abs(pickUp.Along), pickUp.Along > 0 ? "extra" : "fewer");
        if (count == 0)
            return corners;
        var places = pickUp.ExtraPlaces().SelectMany((place, i) => (Part[])[i == 0 ? "" : ", ", .. Place(pickUp, place)]);
        return [.. corners, "; ", count, $" {what}, at ", .. places];
    }

    /// <summary>A place of the edge as a maker counts it: of one stretch, from where that begins.</summary>
    private static Part[] Place(PickUp pickUp, int place)
    {
        foreach (var rule in pickUp.Stretches)
        {
            var places = rule.Stretch.Places;
            if (place > places)
            {
                place -= places;
                continue;
            }
            var of = pickUp.Stretches.Length == 1 ? "" : $" of the {Name(pickUp, rule)}";
            return [rule.Stretch.Stepped ? "place " : rule.Stretch.RowEnds ? "row end " : "stitch ", place, of];
        }
        throw new ArgumentOutOfRangeException(nameof(place), place, "The edge ends before this place.");
    }

    /// <summary>Words, or a number that a size may have otherwise.</summary>
    private readonly record struct Part(string? Word, int Number)
    {
        public static implicit operator Part(string word) => new(word, 0);

        public static implicit operator Part(int number) => new(null, number);
    }
}
