using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Instructions;

/// <summary>
/// What a buyer asks before she buys, from the pattern's own numbers: sizes, measures, yarn, hook, gauge, skill, terms and cautions. Every
/// table is the booklet's, so that no second number can differ from the first.
/// </summary>
public static class ListingSheet
{
    /// <summary>Sections of which the listing has the tables and the words.</summary>
    private static readonly ImmutableArray<string> Listed = ["sizes", "materials", "gauge"];

    /// <summary>As plain text, to paste where the pattern is offered.</summary>
    /// <param name="booklet">The plan's, as <see cref="PatternWriter"/> writes it.</param>
    public static string Text(Plan plan, Booklet booklet)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(booklet);
        (booklet, var wording) = Worded(booklet);
        var text = new StringBuilder();
        void Line(string line) => text.Append(line).Append('\n');
        Line(booklet.Title);
        if (booklet.Designer.Length > 0)
            Line(booklet.Designer);
        Line("");
        foreach (var warning in Unmeasured(booklet, plan, wording))
            Line($"{warning}\n");
        Line(GarmentSentence.Of(plan, plan.Sizes[Shown(booklet)], booklet.Edition.Language));
        foreach (var (name, words) in Facts(plan, booklet))
            Line($"{wording.Text(name)}: {wording.Text(words)}");
        foreach (var section in booklet.Sections.Where(s => Listed.Contains(s.Id)))
        {
            Line("");
            Line(wording.Text(section.Title));
            foreach (var item in section.Blocks.OfType<Bullets>().SelectMany(b => b.Items))
                Line($"- {wording.Text(item)}");
            foreach (var row in Rows(booklet, section, wording))
                Line($"{row[0]}: {string.Join("; ", row.Skip(1).Zip(Names(booklet, plan), (value, size) => $"{size} {value}"))}");
        }
        var cautions = booklet.Sections.Where(s => s.Id == "care").SelectMany(s => s.Blocks).ToArray();
        if (cautions.OfType<Caution>().Any())
        {
            Line("");
            foreach (var caution in cautions.OfType<Caution>())
                Line(wording.Text(caution.Text));
        }
        return text.ToString();
    }

    /// <summary>
    /// As a table of values parted by commas (RFC 4180), a line for each measure and a column for each size. A cell that a spreadsheet
    /// would take for a formula begins with an apostrophe.
    /// </summary>
    /// <param name="booklet">The plan's, as <see cref="PatternWriter"/> writes it.</param>
    public static string Spreadsheet(Plan plan, Booklet booklet)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(booklet);
        (booklet, var wording) = Worded(booklet);
        var lines = new StringBuilder();
        void Line(IEnumerable<string> cells) => lines.AppendJoin(',', cells.Select(Cell)).Append("\r\n");
        foreach (var warning in Unmeasured(booklet, plan, wording))
            Line([wording.Text(Phrase.Plain("Attention")), warning]);
        Line([wording.Text(Phrase.Plain("Pattern")), booklet.Title]);
        Line([wording.Text(Phrase.Plain("Designer")), booklet.Designer]);
        foreach (var (name, words) in Facts(plan, booklet))
            Line([wording.Text(name), wording.Text(words)]);
        Line([wording.Text(Phrase.Plain("Size")), .. Names(booklet, plan)]);
        foreach (var row in booklet.Sections.Where(s => Listed.Contains(s.Id)).SelectMany(s => Rows(booklet, s, wording)))
            Line(row);
        return lines.ToString();
    }

    private static (Booklet Booklet, Wording Wording) Worded(Booklet booklet) =>
        (booklet.For(booklet.Edition), new Wording(booklet, booklet.Edition));

    /// <summary>What was not measured is not offered as if it had been.</summary>
    private static IEnumerable<string> Unmeasured(Booklet booklet, Plan plan, Wording wording)
    {
        if (ExampleValues.Of(plan.Project).IsEmpty)
            return [];
        var materials = booklet.Sections.Where(s => s.Id == "materials").SelectMany(s => s.Blocks);
        return materials.OfType<Caution>().Take(1).Select(c => wording.Text(c.Text));
    }

    /// <summary>Index of the size that is described: the only one, or the sample.</summary>
    private static int Shown(Booklet booklet) =>
        booklet.Edition.Size is { } only ? booklet.Sizes.IndexOf(only) : booklet.Cover!.Sample;

    private static IEnumerable<string> Names(Booklet booklet, Plan plan) =>
        booklet.Edition.Size is { } only ? [only] : plan.Sizes.Select(s => s.Name);

    /// <summary>Of the first table of a section, which has the measures, or the yarn; where balls end helps nobody who buys.</summary>
    private static IEnumerable<ImmutableArray<string>> Rows(Booklet booklet, Section section, Wording wording)
    {
        int? only = booklet.Edition.Size is { } size ? booklet.Sizes.IndexOf(size) : null;
        var table = section.Blocks.OfType<Table>().FirstOrDefault(t => t.PerSizeColumns);
        return (table?.ForSize(only).Skip(1) ?? [])
            .Select(row => ImmutableArray.CreateRange(row.SetItem(0, Called(row[0])), wording.Text));
    }

    /// <summary>Away from its table a length of yarn would be read as the garment's.</summary>
    private static Phrase Called(Phrase row) => row.Leaves.OfType<UnitNames>().FirstOrDefault()?.Of switch
    {
        UnitsOf.YarnLength when !IsCompanion(row) => Phrase.Of($"Yarn, length, {new UnitNames(UnitsOf.YarnLength)}"),
        UnitsOf.YarnMass => Phrase.Of($"Yarn, weight, {new UnitNames(UnitsOf.YarnMass)}"),
        _ => row,
    };

    private static bool IsCompanion(Phrase row) =>
        row.Leaves.First() is Words { Text: var words } && !words.StartsWith("Length", StringComparison.Ordinal);

    private static IEnumerable<(Phrase Name, Phrase Words)> Facts(Plan plan, Booklet booklet)
    {
        yield return (Phrase.Plain("Sizes"), Phrase.Named(string.Join(", ", Names(booklet, plan))));
        if (booklet.Sizes.Length > 1 && booklet.Edition.Size is null)
            yield return (Phrase.Plain("Sample"), Phrase.Named(plan.Sizes[Shown(booklet)].Name));
        yield return (Phrase.Plain("Skill level"), Phrase.Plain(Skill(plan)));
        if (booklet.Edition.Language == Language.English)
            yield return (Phrase.Plain("Terms"), Phrase.Plain(booklet.Edition.Terms == Terms.Us ? "US" : "UK"));
        yield return (Phrase.Plain("Language"), Phrase.Plain(booklet.Edition.Language.ToString()));
        if (booklet.Edition.Hand == Hand.Left)
            yield return (Phrase.Plain("Written for"), Phrase.Plain("left-handed makers"));
        yield return (Phrase.Plain("Hook"), Phrase.Of($"{plan.Project.Fabric.Swatch.HookMillimetres} mm"));
    }

    /// <summary>
    /// By the four levels that the Craft Yarn Council defines (basic, easy, intermediate, complex; from memory): colours that are held to a
    /// count ask for steady hands and rows counted, so never less than intermediate; what is shaped within the motif is complex.
    /// </summary>
    public static string Skill(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Sizes.SelectMany(s => s.Pieces).Any(p => p.Shape is not null) ? "complex" : "intermediate";
    }

    /// <summary>A cell of such a table.</summary>
    internal static string Cell(string value)
    {
        if (value.Length > 0 && "=+-@\t\r".Contains(value[0], StringComparison.Ordinal))
            value = "'" + value;
        return value.AsSpan().IndexOfAny("\",\r\n") >= 0 ? $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : value;
    }
}
