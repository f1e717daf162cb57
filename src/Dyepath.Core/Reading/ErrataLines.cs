using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Reading;

/// <summary>What a line of a booklet is, as far as its comparison with another edition's asks.</summary>
internal enum ErrataKind
{
    /// <summary>Title and designer.</summary>
    Head,

    /// <summary>A heading within a section.</summary>
    Heading,

    /// <summary>A sentence or a few of the pattern's own.</summary>
    Paragraph,

    /// <summary>A line of the designer's words.</summary>
    Own,

    /// <summary>Something that could hurt or spoil.</summary>
    Caution,

    /// <summary>An item of a list.</summary>
    Bullet,

    /// <summary>A labelled row, round or step.</summary>
    Step,

    /// <summary>What stands above a table.</summary>
    Caption,

    /// <summary>A row of a table, its first cell apart.</summary>
    Row,

    /// <summary>The words of a picture or photo.</summary>
    Picture,

    /// <summary>Name and symbol of a colour, wherever they stand.</summary>
    Colour,
}

/// <summary>One line of a booklet for one size, where it stands.</summary>
/// <param name="Section">Id of the section; empty on the cover.</param>
/// <param name="Part">Of its heading, in English and without what may change beside it; empty before the first heading.</param>
/// <param name="Key">Label of a step or first cell of a row, in English; else empty.</param>
/// <param name="English">What stands there, in English.</param>
internal sealed record ErrataLine(string Section, string Part, ErrataKind Kind, string Key, string English)
{
    /// <summary>Of the section, as the edition says it.</summary>
    public required string Title { get; init; }

    /// <summary>As the edition says it; empty before the first heading.</summary>
    public required string Heading { get; init; }

    /// <summary>As the edition says it; empty where there is none.</summary>
    public required string Label { get; init; }

    /// <summary>As the edition says it, without its label.</summary>
    public required string Text { get; init; }

    /// <summary>A step that has its place in the order for a label.</summary>
    public bool IsNumbered => Kind == ErrataKind.Step && Key.All(char.IsAsciiDigit);
}

/// <summary>A booklet's text for one size, taken apart line by line.</summary>
internal static partial class ErrataLines
{
    /// <summary>In the order in which they are read.</summary>
    /// <param name="edition">For one size.</param>
    public static ImmutableArray<ErrataLine> Of(Booklet booklet, Edition edition)
    {
        var say = new Wording(booklet, edition);
        var english = new Wording(booklet, edition with { Language = Language.English, Terms = Terms.Us });
        var lines = ImmutableArray.CreateBuilder<ErrataLine>();
        var (title, heading, section, part) = ("", "", "", "");
        Add(ErrataKind.Head, "title", booklet.Title, "", booklet.Title);
        if (booklet.Designer.Length > 0)
            Add(ErrataKind.Head, "designer", booklet.Designer, "", booklet.Designer);
        foreach (var own in booklet.Cover?.Own ?? [])
            Block(own);
        foreach (var one in booklet.For(edition).Sections)
        {
            (title, heading, section, part) = (say.Text(one.Title), "", one.Id, "");
            foreach (var block in one.Blocks)
                Block(block);
        }
        return lines.ToImmutable();

        void Add(ErrataKind kind, string key, string inEnglish, string label, string text) =>
            lines.Add(new ErrataLine(section, part, kind, TextBooklet.Spaced(key), TextBooklet.Spaced(inEnglish))
            {
                Title = title,
                Heading = heading,
                Label = TextBooklet.Spaced(label),
                Text = TextBooklet.Spaced(text),
            });

        void Said(ErrataKind kind, Phrase phrase) => Add(kind, "", english.Text(phrase), "", say.Text(phrase));

        void Block(Block block)
        {
            switch (block)
            {
                case Subheading sub:
                    (heading, part) = (say.Text(sub.Text), Short(english.Text(sub.Text)));
                    Said(ErrataKind.Heading, sub.Text);
                    break;
                case Paragraph paragraph:
                    Said(ErrataKind.Paragraph, paragraph.Text);
                    break;
                case OwnWords own:
                    foreach (var line in own.Text.Split('\n').Where(l => l.Trim().Length > 0))
                        Add(ErrataKind.Own, "", line, "", line);
                    break;
                case Caution caution:
                    Said(ErrataKind.Caution, caution.Text);
                    break;
                case Bullets bullets:
                    foreach (var item in bullets.Items)
                        Said(ErrataKind.Bullet, item);
                    break;
                case Steps steps:
                    foreach (var step in steps.Items)
                        Add(ErrataKind.Step, english.Text(step.Label), english.Text(step.Text), say.Text(step.Label), say.Text(step.Text));
                    break;
                case Table table:
                    Said(ErrataKind.Caption, table.Caption);
                    foreach (var (read, said) in Rows(table, english).Zip(Rows(table, say)))
                        Add(ErrataKind.Row, read.Key, read.Text, said.Key, said.Text);
                    break;
                case Figure figure:
                    Add(
                        ErrataKind.Picture, "", $"{english.Text(figure.Caption)} {english.Text(figure.Alternative)}", "",
                        $"{say.Text(figure.Caption)} {say.Text(figure.Alternative)}");
                    break;
                case Photo photo:
                    Add(ErrataKind.Picture, "", photo.Alternative, "", photo.Alternative);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(block), block, "No line for this kind of block.");
            }
        }
    }

    /// <summary>The first cell, with its column's name where it is a number; the others, with theirs where they are several.</summary>
    private static IEnumerable<(string Key, string Text)> Rows(Table table, Wording say)
    {
        var rows = table.ForSize(say.OnlySize).Select(row => row.Select(say.Text).ToArray()).ToArray();
        foreach (var row in rows.Skip(1))
        {
            var key = char.IsAsciiDigit(row[0].FirstOrDefault()) ? $"{rows[0][0]} {row[0]}" : row[0];
            yield return (key, row.Length == 2 ? row[1] : string.Join("; ", row.Zip(rows[0], (cell, head) => $"{head} {cell}").Skip(1)));
        }
    }

    /// <summary>A heading without what tells kinds, counts and copies.</summary>
    public static string Short(string heading) => Named().Match(heading).Value;

    /// <summary>Charts of the one booklet by their numbers in the other, as the pieces that are worked from them tell.</summary>
    public static ImmutableDictionary<int, int> Charts(IEnumerable<ErrataLine> was, IEnumerable<ErrataLine> now)
    {
        var after = Charted(now).GroupBy(c => c.Piece).ToDictionary(g => g.Key, g => g.First().Chart);
        return Charted(was).Where(c => after.ContainsKey(c.Piece)).GroupBy(c => c.Chart, c => after[c.Piece])
            .ToImmutableDictionary(g => g.Key, g => g.Contains(g.Key) ? g.Key : g.First());
    }

    /// <summary>The chart that each piece is worked from, and the chart's row that its row 1 is.</summary>
    public static IEnumerable<(string Piece, int Chart, int Row)> Charted(IEnumerable<ErrataLine> lines) =>
        from line in lines
        where line is { Section: "pieces", Kind: ErrataKind.Step, Key: "Chart" }
        let match = FromChart().Match(line.English)
        where match.Success
        select (line.Part, Whole(match, "chart"), Whole(match, "row"));

    /// <summary>A line as it would stand if its charts had the other booklet's numbers.</summary>
    public static ErrataLine Renumbered(ErrataLine line, ImmutableDictionary<int, int> charts) =>
        line.Kind == ErrataKind.Own ? line : line with
        {
            Part = line.Section == "charts" ? Mapped(line.Part, charts) : line.Part,
            English = line is { Kind: ErrataKind.Step, Key: "Chart" } ? Mapped($"Chart {line.English}", charts)["Chart ".Length..]
            : Mapped(line.English, charts),
        };

    private static string Mapped(string text, ImmutableDictionary<int, int> charts) => ChartNumber().Replace(text, match =>
        int.TryParse(match.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && charts.TryGetValue(number, out var other)
            ? other.ToString(CultureInfo.InvariantCulture) : match.Value);

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[^:(]*[^:( ]")]
    private static partial Regex Named();

    [GeneratedRegex("^(?<chart>[0-9]{1,8}); (?:row|round) 1 is chart (?:row|round) (?<row>[0-9]{1,8})\\.$")]
    private static partial Regex FromChart();

    [GeneratedRegex("(?<=[Cc]hart )[0-9]{1,8}")]
    private static partial Regex ChartNumber();
}
