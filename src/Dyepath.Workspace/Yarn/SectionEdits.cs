using System.Globalization;
using System.Text.Json.Nodes;
using Dyepath.Core.Colours;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Yarn;

/// <summary>Changes to the sections that carry along what is said of each elsewhere: counts and whole stitches.</summary>
public static class SectionEdits
{
    private const string Sections = "yarn.sections";
    private const string Whole = "fabric.sectionStitches";

    /// <summary>A section without colour and length behind all others; what was counted before says 0 stitches of it.</summary>
    public static void Add(ProjectDocument document)
    {
        var count = document.Count(Sections);
        document.Add(Sections, new JsonObject { ["name"] = FreeName(document, count + 1) });
        if (document.Count(Whole) == count && count > 0)
            document.Add(Whole, JsonValue.Create(1));
        foreach (var row in WholeRows(document, count).ToArray())
            document.Add(row, JsonValue.Create(0));
    }

    /// <summary>
    /// The colour that a section's name is, as far as none was picked: a name such as <c>dark teal</c> paints the section before anybody
    /// has looked for its colour, and following the name as it is typed.
    /// </summary>
    public static void ColourByName(ProjectDocument document, int index)
    {
        var (name, place) = (document.Typed(Item(Sections, index) + ".name"), Item(Sections, index) + ".colour");
        var byName = document.Implied.GetValueOrDefault(place);
        if (document.Has(place) && document.Typed(place) != byName)
            return;
        var colour = ColourNames.Find(name)?.ToString();
        document.Set(place, colour is null ? null : JsonValue.Create(colour));
        if (colour is null)
            document.Implied.Remove(place);
        else
            document.Implied[place] = colour;
    }

    /// <summary>Takes out a section, from 0, with its counts and whole stitches.</summary>
    public static void Remove(ProjectDocument document, int index)
    {
        var count = document.Count(Sections);
        foreach (var list in Lists(document, count).ToArray())
            document.Set(Item(list, index), null);
    }

    /// <summary>Moves a section, from 0, with its counts and whole stitches.</summary>
    public static void Move(ProjectDocument document, int from, int to)
    {
        var count = document.Count(Sections);
        foreach (var list in Lists(document, count).ToArray())
            document.Move(list, from, to);
    }

    private static IEnumerable<string> Lists(ProjectDocument document, int count)
    {
        if (document.Count(Whole) == count)
            yield return Whole;
        foreach (var row in WholeRows(document, count))
            yield return row;
        yield return Sections;
    }

    private static IEnumerable<string> WholeRows(ProjectDocument document, int count) =>
        from ball in Enumerable.Range(0, document.Count("yarn.counted"))
        let repeats = Item("yarn.counted", ball) + ".repeats"
        from repeat in Enumerable.Range(0, document.Count(repeats))
        let row = Item(repeats, repeat)
        where document.Count(row) == count
        select row;

    private static string FreeName(ProjectDocument document, int first)
    {
        var names = Enumerable.Range(0, document.Count(Sections)).Select(i => document.Typed(Item(Sections, i) + ".name")).ToHashSet();
        return Enumerable.Range(first, names.Count + 1)
            .Select(n => string.Create(CultureInfo.InvariantCulture, $"colour {n}")).First(name => !names.Contains(name));
    }

    private static string Item(string list, int index) => string.Create(CultureInfo.InvariantCulture, $"{list}[{index}]");
}
