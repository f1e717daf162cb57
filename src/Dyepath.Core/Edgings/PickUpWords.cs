using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Edgings;

/// <summary>
/// A pick-up in lines that a person follows one by one. What does not change from size to size is words, what may is numbers, so that
/// sizes whose words are the same share one list.
/// </summary>
public static class PickUpWords
{
    /// <summary>For one size, a line for each thing to do in the order in which it is met, and one that says how many that makes.</summary>
    public static ImmutableArray<Phrase> Lines(PickUp pickUp) => Lines(pickUp, withRests: false);

    /// <summary>For one size, in English, its lines one after the other.</summary>
    public static string Text(PickUp pickUp) => string.Join("; ", Lines(pickUp).Select(Text));

    private static string Text(Phrase line) => string.Concat(line.Leaves.Select(part => part switch
    {
        Words words => words.Text,
        Count count => count.Values.Values[0].ToString(CultureInfo.InvariantCulture),
        _ => throw new InvalidOperationException("A pick-up is words and numbers."),
    }));

    /// <summary>For all sizes at once; null where their words differ.</summary>
    /// <param name="withRests">A remainder of none is said as a dash, so that sizes with and without one may share a line.</param>
    public static ImmutableArray<Phrase>? Shared(ImmutableArray<PickUp> sizes, bool withRests)
    {
        ImmutableArray<Phrase>[] each = [.. sizes.Select(size => Lines(size, withRests))];
        if (each.Any(lines => lines.Length != each[0].Length))
            return null;
        var shared = Enumerable.Range(0, each[0].Length).Select(i => Phrase.Shared([.. each.Select(lines => lines[i])])).ToArray();
        return shared.Contains(null) ? null : [.. shared.OfType<Phrase>()];
    }

    private static ImmutableArray<Phrase> Lines(PickUp pickUp, bool withRests)
    {
        var one = pickUp is { Stretches.Length: 1, Extra: 0 };
        var said = ImmutableArray.CreateBuilder<Phrase>();
        foreach (var alike in Neighbours(pickUp))
        {
            if (alike[0].Stretch.Corner is { } corner)
                said.Add(Phrase.Plain(EdgeWords.Of(corner)));
            var names = Phrase.Together(alike.Select(s => Name(pickUp, s)));
            var stretch = Stretch(alike[0], alike.Count > 1 ? Phrase.Of($"on each of {names}") : names, withRests);
            said.Add(one ? Phrase.Of($"{stretch}: {pickUp.Total} in all.") : Phrase.Of($"{stretch} = {alike[0].Total}"));
        }
        said.AddRange(Extra(pickUp));
        if (!one)
            said.Add(Phrase.Of($"{pickUp.Total} in all."));
        return said.ToImmutable();
    }

    /// <summary>What a stretch is found by; of several of one name, which one it is on the way.</summary>
    private static Phrase Name(PickUp pickUp, StretchRule rule)
    {
        var name = EdgeWords.Said(rule.Stretch.Id);
        var alike = pickUp.Stretches.Where(r => r.Stretch.Id == rule.Stretch.Id).ToArray();
        if (alike.Length == 1)
            return name;
        var nth = Array.FindIndex(alike, r => ReferenceEquals(r, rule)) + 1;
        // Words and no number: sizes in which it is another one share no sentence.
        return new Phrase([new Nested(name), new Words(FormattableString.Invariant($" ({nth} of {alike.Length})"))]);
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

    private static Phrase Stretch(StretchRule rule, Phrase names, bool withRests)
    {
        var places = rule.Stretch.Places;
        if (rule.Stretch.Stepped)
            return Phrase.Of($"{names}: pick up {rule.Stitches} along the {places} stitches and row ends, evenly spread");
        if (rule.Places == 1)
            return rule.Stretch.RowEnds
                ? Phrase.Of($"{names}: pick up {rule.Stitches} in each of the {places} row ends")
                : Phrase.Of($"{names}: pick up {rule.Stitches} in each of the {places} stitches");
        var groups = (rule.Stretch.RowEnds, rule.Groups == 1) switch
        {
            (true, true) => Phrase.Of($"{names}: pick up {rule.Stitches} in every {rule.Places} row ends, {rule.Groups} time"),
            (true, false) => Phrase.Of($"{names}: pick up {rule.Stitches} in every {rule.Places} row ends, {rule.Groups} times"),
            (false, true) => Phrase.Of($"{names}: pick up {rule.Stitches} in every {rule.Places} stitches, {rule.Groups} time"),
            (false, false) => Phrase.Of($"{names}: pick up {rule.Stitches} in every {rule.Places} stitches, {rule.Groups} times"),
        };
        if (rule.RestPlaces == 0 && !withRests)
            return groups;
        var (stitches, rest) = (OrDash(rule.RestStitches), OrDash(rule.RestPlaces));
        return (rule.Stretch.RowEnds, rule.RestPlaces == 1 && !withRests) switch
        {
            (true, true) => Phrase.Of($"{groups}, then {stitches} in the last {rest} row end"),
            (true, false) => Phrase.Of($"{groups}, then {stitches} in the last {rest} row ends"),
            (false, true) => Phrase.Of($"{groups}, then {stitches} in the last {rest} stitch"),
            (false, false) => Phrase.Of($"{groups}, then {stitches} in the last {rest} stitches"),
        };

        Count OrDash(int count) => new(new PerSize<int>([count])) { NoneIsDash = withRests };
    }

    private static IEnumerable<Phrase> Extra(PickUp pickUp)
    {
        if (pickUp.AtEachCorner != 0)
            yield return pickUp.AtEachCorner > 0
                ? Phrase.Of($"{pickUp.AtEachCorner} extra at each of the {pickUp.Corners} corners")
                : Phrase.Of($"{-pickUp.AtEachCorner} fewer at each of the {pickUp.Corners} corners");
        if (pickUp.Along == 0)
            yield break;
        var places = Phrase.Join(", ", pickUp.ExtraPlaces().Select(place => Place(pickUp, place)));
        yield return pickUp.Along > 0 ? Phrase.Of($"{pickUp.Along} extra, at {places}") : Phrase.Of($"{-pickUp.Along} fewer, at {places}");
    }

    /// <summary>A place of the edge as a maker counts it: of one stretch, from where that begins.</summary>
    private static Phrase Place(PickUp pickUp, int place)
    {
        foreach (var rule in pickUp.Stretches)
        {
            var places = rule.Stretch.Places;
            if (place > places)
            {
                place -= places;
                continue;
            }
            var said = rule.Stretch.Stepped ? Phrase.Of($"place {place}") : rule.Stretch.RowEnds ? Phrase.Of($"row end {place}") : Phrase.Of($"stitch {place}");
            return pickUp.Stretches.Length == 1 ? said : Phrase.Of($"{said} of the {Name(pickUp, rule)}");
        }
        throw new ArgumentOutOfRangeException(nameof(place), place, "The edge ends before this place.");
    }
}
