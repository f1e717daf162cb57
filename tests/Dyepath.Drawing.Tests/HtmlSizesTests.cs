using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;

namespace Dyepath.Drawing.Tests;

/// <summary>A page for all sizes shows one of them where it is chosen, and needs no script for it.</summary>
public sealed partial class HtmlSizesTests
{
    private static readonly ImmutableArray<string> Four = ["S", "M", "L", "XL"];

    /// <summary>
    /// The law: what a chosen size leaves of the page is the page for that size alone, pictures and their descriptions included.
    /// </summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void A_chosen_size_leaves_what_the_edition_for_it_says(string garment)
    {
        var booklet = Starters.Booklet(garment);
        var page = Page(booklet, booklet.Edition).BelowCover();
        Assert.Equal(booklet.Sizes.Length == 1 ? 0 : booklet.Sizes.Length, page.Sizes);
        for (var size = 0; size < page.Sizes; size++)
        {
            var edition = booklet.Edition with { Size = booklet.Sizes[size] };
            Assert.Equal(Page(booklet, edition).BelowCover().Lines(null), page.Lines(size));
        }
    }

    /// <summary>The text is written by another renderer, which knows no elements, classes or pictures.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void The_page_says_what_the_text_says(string garment)
    {
        var booklet = Starters.Booklet(garment);
        foreach (var size in new[] { null, booklet.Sizes[^1] })
        {
            var edition = booklet.Edition with { Size = size };
            Assert.Equal(Said(TextBooklet.Write(booklet, edition)), Letters(Sections(Page(booklet, edition), booklet, null)));
        }
        if (booklet.Sizes.Length == 1)
            return;
        var last = booklet.Edition with { Size = booklet.Sizes[^1] };
        Assert.Equal(
            Said(TextBooklet.Write(booklet, last)),
            Letters(Sections(Page(booklet, booklet.Edition), booklet, booklet.Sizes.Length - 1)));
    }

    public static TheoryData<string> Garments => ["demo", "cardigan", "skirt", "hat", "shawl"];

    /// <summary>Worked out by hand from the trade's way of writing sizes.</summary>
    [Fact]
    public void A_size_list_leaves_one_number()
    {
        var phrase = Phrase.Of(
            $"Ch {Counts(74, 78, 86, 94)}, {new Strong(Phrase.Of($"twice {Counts(2, 2, 3, 3)}"))}; "
                + $"{Counts(5, 5, 5, 5)} in all, {Centimetres(10, 20, 30, 40)} wide.");
        var page = Page(Of(new Paragraph(phrase)), new Edition(Terms.Us, Units.CentimetresThenInches, Hand.Right));
        Assert.Equal(
            "p: Ch 74 (78, 86, 94), twice 2 (2, 3, 3); 5 in all, 10 (20, 30, 40) cm / 4 (7¾, 11¾, 15¾) in wide.", page.Lines(null)[^1]);
        Assert.Equal("p: Ch 74, twice 2; 5 in all, 10 cm / 4 in wide.", page.Lines(0)[^1]);
        Assert.Equal("p: Ch 94, twice 3; 5 in all, 40 cm / 15¾ in wide.", page.Lines(3)[^1]);
        // What is alike for all sizes is written once.
        Assert.DoesNotContain(page.Body.Descendants("span"), s => s.Value == "5");
    }

    [Fact]
    public void Without_styles_the_page_is_for_all_sizes()
    {
        var phrase = Phrase.Of(
            $"{new InAllSizes(Phrase.Plain("For all."))}{new InOneSize(Phrase.Of($"Only one, {Counts(1, 2, 3, 4)}."))}"
                + $"{new Strong(new Phrase([new InOneSize(Phrase.Plain("Loud."))]))}");
        var page = Page(Of(new Paragraph(phrase)), SampleBooklet.Everyone);
        Assert.Equal("p: For all.", page.Lines(null)[^1]);
        Assert.Equal("p: Only one, 3.Loud.", page.Lines(2)[^1]);
    }

    [Fact]
    public void Blocks_for_some_sizes_go_with_the_others()
    {
        var page = Page(
            Of(
                new ForSizes(
                    ["S", "L"],
                    [
                        new Subheading(Phrase.Plain("For two")), new Bullets([Phrase.Plain("two")]),
                        new ForSizes(["L", "XL"], [new Paragraph(Phrase.Plain("Large"))]),
                    ]),
                new Bullets([Phrase.Plain("everyone"), Phrase.Of($"{new InAllSizes(Phrase.Plain("who reads all"))}")]),
                new ForSizes(["M"], [new Bullets([Phrase.Plain("medium")])])),
            SampleBooklet.Everyone);
        string[] Said(int? size) => [.. page.Lines(size).Skip(5).Where(line => !line.StartsWith("h2", StringComparison.Ordinal))];
        Assert.Equal(["h3: For two", "li: two", "p: Large", "li: everyone", "li: who reads all", "li: medium"], Said(null));
        Assert.Equal(["h3: For two", "li: two", "li: everyone"], Said(0));
        Assert.Equal(["li: everyone", "li: medium"], Said(1));
        Assert.Equal(["h3: For two", "li: two", "p: Large", "li: everyone"], Said(2));
        Assert.Equal(["li: everyone"], Said(3));
        // A list that has no item for the size is no list.
        Assert.All(Enumerable.Range(0, 4), size => Assert.All(
            page.Seen(page.Body, size).Where(e => e.Name.LocalName == "ul"),
            list => Assert.Contains(list.Elements("li"), item => page.Seen(item, size).Any())));
    }

    [Fact]
    public void A_table_keeps_one_column()
    {
        var page = Page(SampleBooklet.Booklet, SampleBooklet.Everyone);
        var rows = page.Body.Descendants("table").First().Descendants("tr").ToArray();
        Assert.All(rows, row => Assert.Equal(10, page.Seen(row, null).Count(e => e.Name.LocalName is "th" or "td")));
        Assert.All(rows, row => Assert.Equal(2, page.Seen(row, 2).Count(e => e.Name.LocalName is "th" or "td")));
        Assert.Equal("M", page.Text(page.Seen(rows[0], 2).Last(e => e.Name.LocalName == "th"), 2));
    }

    [Fact]
    public void The_choice_is_a_group_of_buttons_with_names_that_begins_with_all()
    {
        var page = Page(SampleBooklet.Booklet, SampleBooklet.Everyone);
        var group = Assert.Single(page.Body.Descendants("fieldset"));
        Assert.NotEmpty(group.Element("legend")!.Value);
        var buttons = group.Descendants("input").ToArray();
        Assert.Single(buttons.Select(b => b.Attribute("name")!.Value).Distinct());
        Assert.Equal(["All sizes", .. SampleBooklet.Sizes], group.Descendants("label").Select(l => l.Value));
        Assert.Same(buttons[0], Assert.Single(buttons, b => b.Attribute("checked") is not null));
        // Before anything that it changes but the line that names the sizes.
        Assert.DoesNotContain(group.ElementsBeforeSelf(), e => e.Name.LocalName is not ("h1" or "p"));
        var status = Assert.Single(group.Elements("p"), p => p.Attribute("role")?.Value == "status");
        Assert.Equal("Only size M is shown and printed.", page.Text(status, 2));
        Assert.Equal("p: Size M", page.Lines(2)[2]);
    }

    [Theory]
    [InlineData("M")]
    [InlineData(null)]
    public void There_is_no_choice_of_one(string? size)
    {
        var booklet = size is null ? Of(new Paragraph(Phrase.Of($"Ch {Counts(8)}."))) with { Sizes = ["One size"] } : SampleBooklet.Booklet;
        var html = Html(booklet, SampleBooklet.Everyone with { Size = size });
        Assert.DoesNotContain("<fieldset", html, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"s0\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain(":checked)", RuleLines(html), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_of_another_wording_stay_as_they_are()
    {
        var booklet = Of(new Paragraph(Phrase.Of($"Ch {Counts(1, 2, 3, 4)}.")));
        var html = HtmlBooklet.Write(booklet, SampleBooklet.Everyone, phrase => [new TextSpan("Elsewhere", false)]);
        Assert.Contains("<p>Elsewhere</p>", html, StringComparison.Ordinal);
    }

    /// <summary>Rows are ticked where they are worked one after the other, and each box says which.</summary>
    [Fact]
    public void Rows_to_work_have_a_box_each()
    {
        var page = Page(Starters.Booklet("demo"), Starters.Booklet("demo").Edition);
        var tables = page.Body.Descendants("table").ToLookup(t => t.Attribute("class")!.Value == "by-row");
        Assert.NotEmpty(tables[true]);
        Assert.All(tables[true].SelectMany(t => t.Element("tbody")!.Elements("tr")), row =>
        {
            var box = Assert.Single(row.Descendants("input"));
            Assert.Equal("checkbox", box.Attribute("type")?.Value);
            Assert.Equal($"Row {row.Element("th")!.Value} is worked", box.Attribute("aria-label")?.Value);
        });
        Assert.All(tables[false], table => Assert.Empty(table.Descendants("input")));
    }

    private static string RuleLines(string html) =>
        string.Join('\n', html.Split('\n').Where(line => line.StartsWith(":root:has(", StringComparison.Ordinal)));

    /// <summary>Sizes and sections as the text has them: captions with the first description, no keys, no words inside pictures.</summary>
    private static string Sections(SeenPage page, Booklet booklet, int? size)
    {
        var said = new StringBuilder();
        var sizes = page.Text(page.Body.Descendants("p").First(p => p.Attribute("class")?.Value == "sizes"), size);
        said.Append(sizes.StartsWith("Sizes ", StringComparison.Ordinal) ? sizes[6..]
            : sizes.StartsWith("Size ", StringComparison.Ordinal) && !booklet.Sizes.Contains(sizes) ? sizes[5..] : sizes);
        foreach (var e in page.Seen(page.Body.Descendants("main").Single(), size))
        {
            if (e.Name.LocalName is "h2" or "h3" or "p" or "li" or "dt" or "dd" or "caption" or "th" or "td"
                && !e.Ancestors().Any(a => a.Name.LocalName is "svg" or "figure"))
                said.Append(page.Text(e, size));
            if (e.Name.LocalName == "figure" && e.Element("figcaption") is { } caption)
                said.Append("Picture").Append(page.Text(caption, size))
                    .Append(page.Seen(e, size).First(d => d.Name.LocalName == "desc").Value);
        }
        return said.ToString();
    }

    private static string Said(string text) => Letters(text[(text.IndexOf("\nSizes: ", StringComparison.Ordinal) + 8)..]);

    private static string Letters(string text) => NoLetter().Replace(text.ToUpperInvariant(), "");

    private static Booklet Of(params Block[] blocks) =>
        new("Trial", "", Four, SampleBooklet.Everyone, [new Section("trial", Phrase.Plain("Trial"), [.. blocks])]);

    private static PerSize<int> Counts(params int[] values) => new([.. values]);

    private static PerSize<Length> Centimetres(params double[] values) => new([.. values.Select(Length.FromCentimetres)]);

    private static SeenPage Page(Booklet booklet, Edition edition) => new(Html(booklet, edition));

    private static string Html(Booklet booklet, Edition edition) =>
        HtmlBooklet.Write(booklet, edition, SampleBooklet.Saying(booklet, edition));

    [GeneratedRegex(@"[^\p{L}\p{Nd}½¼¾⅛⅜⅝⅞]")]
    private static partial Regex NoLetter();
}
