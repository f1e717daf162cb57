using System.Text;
using CsCheck;
using Dyepath.Core.Booklets;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace Dyepath.Drawing.Tests;

public sealed class PdfBookletTests
{
    private static readonly byte[] Sample = Pdf(SampleBooklet.Booklet, SampleBooklet.Everyone, PageSize.A4);

    [Fact]
    public void Pages_are_of_the_paper_asked_for()
    {
        using var a4 = PdfDocument.Open(Sample);
        Assert.All(a4.GetPages(), page => Assert.Equal((595.3, 841.9), (Math.Round(page.Width, 1), Math.Round(page.Height, 1))));
        using var letter = PdfDocument.Open(Pdf(SampleBooklet.Booklet, SampleBooklet.Everyone, PageSize.Letter));
        Assert.All(letter.GetPages(), page => Assert.Equal((612, 792), (page.Width, page.Height)));
    }

    [Fact]
    public void Text_is_in_reading_order()
    {
        using var pdf = PdfDocument.Open(Sample);
        var text = string.Concat(pdf.GetPages().Select(page => page.Text));
        string[] order =
        [
            "Tideline", "An unnamed designer", "Contents", "Before you begin", "A boxy tunic", "Count every row", "Buy all balls",
            "Locking stitch markers",
            "The colour sequence, in stitches.", "Finished measurements after washing.", "Bust, finished", "Neck width",
            "The pieces of size M", "Row 1 (RS)", "Rows 3–24",
            "Part A1", "Part B1", "Pick up 3 in every 4", "Shells and picots",
        ];
        var at = 0;
        foreach (var words in order)
        {
            var found = text.IndexOf(words, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"\"{words}\" is missing or out of order.");
            at = found;
        }
    }

    [Fact]
    public void Words_of_wrapped_lines_stay_apart()
    {
        using var pdf = PdfDocument.Open(Sample);
        Assert.Contains("until the picture stands", string.Concat(pdf.GetPages().Select(p => p.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void All_fonts_are_embedded_subsets()
    {
        using var pdf = PdfDocument.Open(Sample);
        var fonts = pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct().ToArray();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, font => Assert.Matches("^[A-Z]{6}\\+(Atkinson|DejaVu)", font));
        Assert.True(Sample.AsSpan().IndexOf("/FontFile2"u8) > 0);
    }

    [Fact]
    public void The_catalog_says_that_the_file_is_tagged()
    {
        using var pdf = PdfDocument.Open(Sample);
        var catalog = pdf.Structure.Catalog.CatalogDictionary;
        Assert.Equal("en-US", Assert.IsType<StringToken>(catalog.Data["Lang"]).Data);
        Assert.True(catalog.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.True(catalog.ContainsKey(NameToken.Create("MarkInfo")));
        Assert.Equal("Tideline", pdf.Information.Title);
        Assert.All(pdf.GetPages(), page => Assert.Equal("S", Assert.IsType<NameToken>(page.Dictionary.Data["Tabs"]).Data));
        Assert.True(Sample.AsSpan().IndexOf("<pdfuaid:part>1</pdfuaid:part>"u8) > 0);
    }

    [Fact]
    public void The_structure_tree_holds_headings_tables_lists_and_figures()
    {
        using var pdf = PdfDocument.Open(Sample);
        var elements = StructureElements(pdf);
        var kinds = elements.GroupBy(e => Name(e, "S")).ToDictionary(g => g.Key, g => g.Count());
        Assert.Equal(1, kinds["H1"]);
        Assert.Equal(SampleBooklet.Booklet.Sections.Length + 1, kinds["H2"]);
        Assert.Equal(SampleBooklet.Booklet.Sections.Length, kinds["TOCI"]);
        Assert.Equal(1, kinds["Table"]);
        Assert.Equal(5, kinds["TR"]);
        Assert.Equal(10 + 4, kinds["TH"]);
        Assert.Equal(4 * 9, kinds["TD"]);
        Assert.Equal(kinds["LI"], kinds["LBody"]);
        Assert.All(elements.Where(e => Name(e, "S") == "Figure"), figure => Assert.True(figure.ContainsKey(NameToken.Create("Alt"))));
    }

    [Fact]
    public void Figures_have_their_boxes_where_they_are_on_the_page()
    {
        using var pdf = PdfDocument.Open(Sample);
        var cover = StructureElements(pdf).First(e => Name(e, "S") == "Figure");
        var attributes = Resolve<DictionaryToken>(pdf, cover.Data["A"]);
        var box = Resolve<ArrayToken>(pdf, attributes.Data["BBox"]).Data.OfType<NumericToken>().Select(n => n.Double).ToArray();
        var page = pdf.GetPage(1);
        var title = page.Letters.First(l => l.Value == "T");
        Assert.True(box[3] < title.StartBaseLine.Y && box[3] > page.Height / 2, "The fabric lies below the title, in the upper half.");
    }

    [Fact]
    public void Every_section_has_a_bookmark()
    {
        using var pdf = PdfDocument.Open(Sample);
        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        Assert.Equal(
            SampleBooklet.Booklet.Sections.Select(s => string.Concat(SampleBooklet.Say(s.Title).Select(t => t.Text))),
            bookmarks.Roots.Select(b => b.Title));
    }

    [Fact]
    public void Nothing_runs_off_the_page()
    {
        foreach (var bytes in new[] { Sample, Pdf(HostileBooklet.Booklet, SampleBooklet.Everyone, PageSize.Letter) })
        {
            using var pdf = PdfDocument.Open(bytes);
            foreach (var page in pdf.GetPages())
                Assert.All(page.Letters, l => Assert.True(IsOn(page, l), $"Page {page.Number}: {l.Value} at {l.StartBaseLine}"));
        }

        static bool IsOn(Page page, Letter letter) =>
            letter.StartBaseLine.X >= 0 && letter.EndBaseLine.X <= page.Width + 3 && letter.StartBaseLine.Y >= 20
                && letter.StartBaseLine.Y <= page.Height - 20;
    }

    [Fact]
    public void Arrows_and_eighths_come_out_as_themselves()
    {
        var booklet = SampleBooklet.Booklet with
        {
            Sections = [new Section("a", Phrase.Plain("→ ⅜"), [new Paragraph(Phrase.Plain("Turn ↻, 1⅛ in, żółw, Жук."))])],
        };
        using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
        var text = string.Concat(pdf.GetPages().Select(p => p.Text));
        Assert.Contains("Turn ↻, 1⅛ in, żółw, Жук.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_table_repeats_its_head_on_every_page()
    {
        var rows = Enumerable.Range(1, 120)
            .Select(n => System.Collections.Immutable.ImmutableArray.Create(Phrase.Plain($"Row {n}"), Phrase.Plain($"{n} sc")));
        var table = new Table(Phrase.Plain("Long."), [Phrase.Plain("Label"), Phrase.Plain("Stitches")], [.. rows], PerSizeColumns: false);
        var booklet = SampleBooklet.Booklet with { Sections = [new Section("a", Phrase.Plain("Rows"), [table])] };
        using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
        var pages = pdf.GetPages().Skip(1).Select(p => p.Text).ToArray();
        Assert.True(pages.Length > 1);
        Assert.All(
            pages, text => Assert.Contains("LabelStitches", text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal));
        var elements = StructureElements(pdf);
        Assert.Equal(121, elements.Count(e => Name(e, "S") == "TR"));
    }

    [Fact]
    public void Forty_sizes_are_shared_out_over_several_tables()
    {
        string[] sizes = [.. Enumerable.Range(1, 40).Select(n => $"Size{n}")];
        var table = new Table(
            Phrase.Plain("Wide."), [Phrase.Plain("Size"), .. sizes.Select(Phrase.Plain)],
            [[Phrase.Plain("Bust"), .. sizes.Select((_, n) => Phrase.Plain($"x{n}y"))]], PerSizeColumns: true);
        var booklet = new Booklet("Wide", "", [.. sizes], SampleBooklet.Everyone, [new Section("a", Phrase.Plain("Sizes"), [table])]);
        using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
        var text = string.Concat(pdf.GetPages().Select(p => p.Text));
        Assert.All(Enumerable.Range(0, 40), n => Assert.Contains($"x{n}y", text, StringComparison.Ordinal));
        Assert.True(StructureElements(pdf).Count(e => Name(e, "S") == "Table") > 1);
    }

    [Fact]
    public void A_chart_as_tall_as_the_page_stays_with_its_heading()
    {
        var figure = new Figure(SampleBooklet.Turned(40, 72), Phrase.Plain("Tall chart."), Phrase.Empty);
        var booklet = SampleBooklet.Booklet with { Sections = [new Section("a", Phrase.Plain("Heading above"), [figure])] };
        using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
        Assert.Contains(
            pdf.GetPages(),
            page => page.Text.Contains("Heading above", StringComparison.Ordinal)
                && page.Text.Contains("Tall chart.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_heading_is_never_last_on_its_page()
    {
        for (var fillers = 24; fillers < 38; fillers++)
        {
            var filler = Enumerable.Range(0, fillers).Select(_ => (Block)new Paragraph(Phrase.Plain("Filler.")));
            var three = new Paragraph(Phrase.Plain("Begin here " + string.Join(' ', Enumerable.Range(100, 55))));
            var booklet = SampleBooklet.Booklet with
            {
                Sections = [new Section("a", Phrase.Plain("Rows"), [.. filler, new Subheading(Phrase.Plain("Kept heading")), three])],
            };
            using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
            Assert.Contains(
                pdf.GetPages(),
                page => page.Text.Contains("Kept heading", StringComparison.Ordinal)
                    && page.Text.Contains("Begin here", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_paragraph_longer_than_a_page_goes_on()
    {
        var words = string.Join(' ', Enumerable.Range(1, 2500));
        var booklet = SampleBooklet.Booklet with
        {
            Sections = [new Section("a", Phrase.Plain("Long"), [new Paragraph(Phrase.Plain(words))])],
        };
        using var pdf = PdfDocument.Open(Pdf(booklet, SampleBooklet.Everyone, PageSize.A4));
        var text = string.Concat(pdf.GetPages().SelectMany(p => p.Letters).Where(l => l.PointSize > 9).Select(l => l.Value));
        Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Equal(
            1,
            StructureElements(pdf)
                .Count(e => Name(e, "S") == "P" && e.ContainsKey(NameToken.Create("K")) && e.Data["K"] is ArrayToken { Length: > 1 }));
    }

    [Fact]
    public void Cancelling_writes_nothing()
    {
        using var output = new MemoryStream();
        Assert.Throws<OperationCanceledException>(() =>
            PdfBooklet.Write(
                SampleBooklet.Booklet, SampleBooklet.Everyone, SampleBooklet.Say, new Print(PageSize.A4), output, cancel: new CancellationToken(true)));
        Assert.Equal(0, output.Length);
    }

    [Fact]
    public void Hostile_words_do_not_stop_it()
    {
        using var pdf = PdfDocument.Open(Pdf(HostileBooklet.Booklet, SampleBooklet.Everyone, PageSize.A4));
        Assert.Contains("<script>alert(1)</script>", pdf.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Photos_are_figures_with_their_alternative_and_keep_their_proportion()
    {
        using var pdf = PdfDocument.Open(Pdf(SamplePhoto.Booklet, SampleBooklet.Everyone, PageSize.A4));
        var image = Assert.Single(pdf.GetPages().SelectMany(page => page.GetImages()));
        Assert.Equal((SamplePhoto.Width, SamplePhoto.Height), (image.WidthInSamples, image.HeightInSamples));
        Assert.Equal((double)SamplePhoto.Width / SamplePhoto.Height, image.BoundingBox.Width / image.BoundingBox.Height, 3);
        Assert.Equal(SamplePhoto.Jpeg.ToBytes(), image.RawBytes.ToArray());
        var figures = StructureElements(pdf).Where(e => Name(e, "S") == "Figure" && e.ContainsKey(NameToken.Create("Alt"))).ToArray();
        Assert.Contains(figures, f => f.Data["Alt"] switch
        {
            StringToken text => text.Data,
            HexToken hex => hex.Data,
            _ => "",
        } == SamplePhoto.Alternative);
    }

    [Fact]
    public void Every_picture_that_a_document_may_have_can_be_printed() => Gen.Select(Gen.Int[2, 47], Gen.Byte).Holds(
        (at, value) =>
        {
            var file = SamplePhoto.Jpeg.ToBytes();
            file[at % file.Length] = value;
            if (JpegPicture.TryRead(Convert.ToBase64String(file), out var picture, out _))
                Assert.NotEmpty(Pdf(SamplePhoto.With(picture), SampleBooklet.Everyone, PageSize.A4));
        },
        seed: 71, cases: 120);

    private static byte[] Pdf(Booklet booklet, Edition edition, PageSize size)
    {
        using var output = new MemoryStream();
        PdfBooklet.Write(booklet, edition, SampleBooklet.Saying(booklet, edition), new Print(size), output, cancel: TestContext.Current.CancellationToken);
        return output.ToArray();
    }

    private static List<DictionaryToken> StructureElements(PdfDocument pdf)
    {
        var found = new List<DictionaryToken>();
        Collect(Resolve<DictionaryToken>(pdf, pdf.Structure.Catalog.CatalogDictionary.Data["StructTreeRoot"]));
        return found;

        void Collect(DictionaryToken parent)
        {
            if (!parent.Data.TryGetValue("K", out var kids))
                return;
            IReadOnlyList<IToken> all = kids is ArrayToken several ? several.Data : [kids];
            foreach (var kid in all.OfType<IndirectReferenceToken>())
            {
                if (pdf.Structure.GetObject(kid.Data).Data is not DictionaryToken element || !element.ContainsKey(NameToken.Create("S")))
                    continue;
                found.Add(element);
                Collect(element);
            }
        }
    }

    private static T Resolve<T>(PdfDocument pdf, IToken token)
        where T : IToken =>
            Assert.IsType<T>(token is IndirectReferenceToken reference ? pdf.Structure.GetObject(reference.Data).Data : token);

    private static string Name(DictionaryToken element, string key) => Assert.IsType<NameToken>(element.Data[key]).Data;
}
