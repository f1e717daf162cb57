using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;

namespace Dyepath.Drawing.Tests;

public sealed partial class HtmlBookletTests
{
    private static readonly string Sample = Html(SampleBooklet.Booklet, SampleBooklet.Everyone);
    private static readonly XElement Page = Body(Sample);
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Nothing_is_loaded_and_nothing_runs()
    {
        foreach (var html in new[]
                 {
                     Sample, Html(HostileBooklet.Booklet, SampleBooklet.Everyone),
                     Html(Starters.Booklet("demo"), Starters.Booklet("demo").Edition),
                 })
        {
            Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("src=", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("url(", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("@import", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotMatch("http(?!://www\\.w3\\.org/2000/svg\"|-equiv)", html);
        }
    }

    [Fact]
    public void A_photo_is_in_the_page_itself_with_its_alternative()
    {
        var html = Html(SamplePhoto.Booklet, SampleBooklet.Everyone);
        var image = Assert.Single(Body(html).Descendants("img"));
        Assert.Equal(SamplePhoto.Alternative, image.Attribute("alt")?.Value);
        Assert.Equal($"data:image/jpeg;base64,{SamplePhoto.Jpeg.Base64}", image.Attribute("src")?.Value);
        Assert.Contains("default-src 'none'; style-src 'unsafe-inline'; img-src data:\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Hostile_words_stay_words()
    {
        var body = Body(Html(HostileBooklet.Booklet, SampleBooklet.Everyone));
        Assert.Contains(body.Descendants("h1"), h => h.Value.Contains("<script>alert(1)</script> & \"quoted\"", StringComparison.Ordinal));
        Assert.DoesNotContain(
            body.DescendantsAndSelf().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain('\u202E', body.Value);
    }

    [Fact]
    public void Ids_are_unique_and_every_reference_finds_its_element()
    {
        var hostile = Body(Html(HostileBooklet.Booklet, SampleBooklet.Everyone));
        foreach (var body in new[] { Page, hostile, Started("demo"), Started("cardigan") })
        {
            var ids = body.DescendantsAndSelf().Attributes("id").Select(a => a.Value).ToArray();
            Assert.Equal(ids.Distinct().Count(), ids.Length);
            var references = body.Descendants().Attributes("aria-labelledby").SelectMany(a => a.Value.Split(' '))
                .Concat(body.Descendants("a").Select(a => a.Attribute("href")!.Value[1..])).ToArray();
            Assert.NotEmpty(references);
            Assert.All(references, id => Assert.Contains(id, ids));
        }
    }

    [Fact]
    public void Headings_go_down_one_step_at_a_time()
    {
        var levels = Page.Descendants().Where(e => Heading().IsMatch(e.Name.LocalName)).Select(e => e.Name.LocalName[1] - '0').ToArray();
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
    }

    [Fact]
    public void Tables_have_captions_and_scopes()
    {
        var table = Assert.Single(Page.Descendants("table"));
        Assert.NotEmpty(table.Element("caption")!.Value);
        Assert.All(table.Descendants("th"), th => Assert.True(th.Attribute("scope")?.Value is "col" or "row"));
        Assert.All(table.Element("tbody")!.Elements("tr"), tr => Assert.Equal("row", tr.Elements().First().Attribute("scope")?.Value));
    }

    [Fact]
    public void Pictures_have_names_and_descriptions()
    {
        XElement[] pages = [Page, Started("demo"), Started("cardigan"), Started("shawl")];
        Assert.All(pages.SelectMany(p => p.Descendants()).Where(e => e.Name.LocalName is "svg" or "img"), picture =>
        {
            if (picture.Name.LocalName == "svg")
                Assert.Equal("img", picture.Attribute("role")?.Value);
            Assert.NotEmpty(picture.Element(Svg + "title")?.Value ?? (picture.Attribute("aria-label") ?? picture.Attribute("alt"))!.Value);
        });
        Assert.All(Page.Descendants("figure").Where(f => f.Element("figcaption") is not null), figure =>
            Assert.NotEmpty(figure.Descendants(Svg + "desc").First().Value));
        Assert.Equal(6, Page.Descendants("figure").Count());
    }

    /// <summary>Wide things move in a region of their own, which the keyboard reaches and a screen reader names.</summary>
    [Theory]
    [InlineData("demo")]
    [InlineData("shawl")]
    public void What_may_be_too_wide_stands_in_a_named_region(string garment)
    {
        var page = Started(garment);
        var main = page.Descendants("main").Single();
        var drawings = main.Descendants("figure").Descendants(Svg + "svg").Where(e => e.Parent!.Name == "div" && !e.Ancestors().Any(Is("paper")));
        XElement[] wide = [.. main.Descendants("table"), .. drawings];
        Assert.NotEmpty(wide);
        Assert.All(wide.Select(e => e.Parent!), region =>
        {
            Assert.Equal("region", region.Attribute("role")?.Value);
            Assert.Equal("0", region.Attribute("tabindex")?.Value);
            Assert.NotEmpty(page.Descendants().Single(e => e.Attribute("id")?.Value == region.Attribute("aria-labelledby")!.Value).Value);
        });
    }

    /// <summary>Cells of at least 2.7 mm on pages whose margins leave 176 mm of A4 and of Letter.</summary>
    [Theory]
    [InlineData("demo")]
    [InlineData("shawl")]
    public void Charts_come_in_parts_that_fit_a_page_on_paper(string garment)
    {
        var page = Started(garment);
        var charts = page.Descendants("div").Where(Is("ground scroll chart")).ToArray();
        Assert.NotEmpty(charts);
        Assert.All(charts, chart =>
        {
            Assert.Equal("unprinted", chart.Parent!.Attribute("class")?.Value);
            var paper = Assert.Single(chart.Parent!.Parent!.Elements("div"), d => Is("paper")(d));
            Assert.NotNull(paper.Attribute("hidden"));
            Assert.All(paper.Descendants(Svg + "svg"), part =>
            {
                Assert.InRange(double.Parse(part.Attribute("width")!.Value[..^2], CultureInfo.InvariantCulture), 1, 176);
                Assert.InRange(double.Parse(part.Attribute("height")!.Value[..^2], CultureInfo.InvariantCulture), 1, 243);
            });
        });
    }

    /// <summary>A region that runs right to left is first seen at its right end.</summary>
    [Theory]
    [InlineData(0, 10, Hand.Right, true)]
    [InlineData(0, 10, Hand.Left, false)]
    [InlineData(14, 3, Hand.Right, false)]
    [InlineData(14, 3, Hand.Left, true)]
    [InlineData(0, 3, Hand.Right, true)]
    [InlineData(0, 3, Hand.Left, false)]
    public void A_chart_is_first_seen_where_its_first_row_lies(int offset, int units, Hand hand, bool atRight)
    {
        var chart = SampleBooklet.Turned(10, 2);
        chart = chart with { RowUnits = [units, 10], RowOffsets = [offset, 0], Cells = [.. chart.Cells.Take(units + 10)] };
        var booklet = SampleBooklet.Booklet with
        {
            Sections =
                [new Section("chart", Phrase.Plain("Chart"), [new Figure(chart, Phrase.Plain("Chart."), Phrase.Plain("Two rows."))])],
        };
        var page = Body(Html(booklet, SampleBooklet.Everyone with { Hand = hand }));
        var region = page.Descendants("div").Single(d => d.Attribute("role")?.Value == "region");
        Assert.Equal(atRight ? "rtl" : null, region.Attribute("dir")?.Value);
    }

    [Fact]
    public void Paper_has_neither_choice_nor_boxes_and_keeps_heads_with_tables()
    {
        var print = Sample[Sample.IndexOf("@media print", StringComparison.Ordinal)..];
        Assert.Contains("--ground: #fff; --raised: #fff; --ink: #000;", print, StringComparison.Ordinal);
        Assert.Matches(@"\.choice[^{]*, th > input \{ display: none; \}", print);
        Assert.Contains("thead { display: table-header-group; }", print, StringComparison.Ordinal);
        Assert.Contains("@page {", Sample, StringComparison.Ordinal);
        Assert.DoesNotMatch("@page[^}]*size:", Sample);
    }

    [Fact]
    public void The_edition_decides_language_hand_and_size()
    {
        Assert.Contains("<html lang=\"en-US\">", Sample, StringComparison.Ordinal);
        var edition = new Edition(Terms.Uk, Units.InchesThenCentimetres, Hand.Left, "M");
        var html = Html(SampleBooklet.Booklet, edition);
        Assert.Contains("<html lang=\"en-GB\">", html, StringComparison.Ordinal);
        Assert.Contains("Size M", html, StringComparison.Ordinal);
        Assert.All(Body(html).Descendants("tr"), row => Assert.Equal(2, row.Elements().Count()));
        Assert.DoesNotContain("dir=\"rtl\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_booklet_gives_the_same_page() => Assert.Equal(Sample, Html(SampleBooklet.Booklet, SampleBooklet.Everyone));

    /// <summary>WCAG 2.2, 1.4.3 (4.5 for text) and 1.4.11 (3 for what must be seen).</summary>
    [Theory]
    [InlineData("--ink", "--ground", 7)]
    [InlineData("--soft", "--ground", 4.5)]
    [InlineData("--accent", "--ground", 4.5)]
    [InlineData("--accent", "--raised", 4.5)]
    [InlineData("--alert", "--ground", 4.5)]
    public void Colours_stand_out_in_light_and_dark(string colour, string ground, double least)
    {
        var values = Variable().Matches(Sample).ToLookup(m => m.Groups[1].Value, m => m.Groups[2].Value);
        for (var theme = 0; theme < 2; theme++)
        {
            Assert.True(Srgb.TryParse(values[colour].ElementAt(theme), out var a));
            Assert.True(Srgb.TryParse(values[ground].ElementAt(theme), out var b));
            Assert.True(ContrastRatio.Of(a, b) >= least, $"{colour} on {ground}, theme {theme}: {ContrastRatio.Of(a, b):0.0}");
        }
    }

    private static Func<XElement, bool> Is(string name) => e => e.Attribute("class")?.Value == name;

    private static XElement Started(string garment) => Body(Html(Starters.Booklet(garment), Starters.Booklet(garment).Edition));

    private static string Html(Booklet booklet, Edition edition) =>
        HtmlBooklet.Write(booklet, edition, SampleBooklet.Saying(booklet, edition));

    private static XElement Body(string html) =>
        XElement.Parse(html[html.IndexOf("<body>", StringComparison.Ordinal)..html.IndexOf("</html>", StringComparison.Ordinal)]);

    [GeneratedRegex("^h[1-6]$")]
    private static partial Regex Heading();

    [GeneratedRegex("(--[a-z]+): (#[0-9a-f]{6});")]
    private static partial Regex Variable();
}
