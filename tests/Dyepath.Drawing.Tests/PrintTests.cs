using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pdf;
using Dyepath.Drawing.Pictures;
using UglyToad.PdfPig;
using Words = Dyepath.Drawing.Pdf.Words;

namespace Dyepath.Drawing.Tests;

/// <summary>Whole patterns on paper: sizes of type, what pages hold, and the cover.</summary>
public sealed class PrintTests
{
    public static TheoryData<string, TypeSize, PageSize> Prints => [.. from garment in new[] { "tunic", "cardigan", "hat", "shawl" }
        from type in Enum.GetValues<TypeSize>()
        select (garment, type, type == TypeSize.Compact ? PageSize.Letter : PageSize.A4)];

    /// <summary>
    /// The American Printing House for the Blind and the Clear Print of the RNIB call 18 points, or 16 to 18, large print (from memory).
    /// Letters in drawings are as large as their cells and lines let them be; page numbers and the title's repetition are larger than usual.
    /// </summary>
    [Theory]
    [InlineData("tunic")]
    [InlineData("cardigan")]
    public void Large_print_is_18_points_wherever_it_is_read(string garment)
    {
        var sizes = Words(garment, TypeSize.Large);
        Assert.All(sizes.Where(s => !s.IsFooter), s => Assert.True(s.Words.Size >= 18, $"{s.Words.Text}: {s.Words.Size}"));
        Assert.All(sizes, s => Assert.True(s.Words.Size >= 14, $"{s.Words.Text}: {s.Words.Size}"));
    }

    /// <summary>7 points are the least that is held to be legible in print (a typographic rule of thumb, from memory).</summary>
    [Theory]
    [InlineData(TypeSize.Normal)]
    [InlineData(TypeSize.Compact)]
    public void No_words_are_smaller_than_7_points(TypeSize type) =>
        Assert.All(Words("tunic", type), s => Assert.True(s.Words.Size >= 7, $"{s.Words.Text}: {s.Words.Size}"));

    /// <summary>Read by another program: a page has ten lines of text at least or something drawn; the last one may be short.</summary>
    [Theory]
    [MemberData(nameof(Prints))]
    public void No_page_holds_a_line_or_two(string garment, TypeSize type, PageSize paper)
    {
        using var pdf = PdfDocument.Open(Pdf(Pattern(garment), new Print(paper, type)));
        foreach (var page in pdf.GetPages().Skip(1).SkipLast(1))
        {
            var lines = page.GetWords().Where(w => w.BoundingBox.Bottom > 60).Select(w => Math.Round(w.BoundingBox.Bottom / 4)).Distinct().Count();
            var highest = page.GetWords().Select(w => w.BoundingBox.Top).DefaultIfEmpty(0).Max();
            var lowest = page.GetWords().Where(w => w.BoundingBox.Bottom > 60).Select(w => w.BoundingBox.Bottom).DefaultIfEmpty(highest).Min();
            Assert.True(lines >= 8 || page.Paths.Sum(p => p.Count) > 200 || highest - lowest > page.Height / 3, $"page {page.Number} holds {lines} lines: {page.Text[..Math.Min(80, page.Text.Length)]}");
        }
    }

    [Theory]
    [InlineData("tunic")]
    [InlineData("cardigan")]
    public void Compact_takes_fewer_pages_and_large_print_more(string garment)
    {
        var pages = Enum.GetValues<TypeSize>().ToDictionary(t => t, t =>
        {
            using var pdf = PdfDocument.Open(Pdf(Pattern(garment), new Print(PageSize.A4, t)));
            return pdf.NumberOfPages;
        });
        Assert.True(pages[TypeSize.Compact] < pages[TypeSize.Normal] && pages[TypeSize.Normal] < pages[TypeSize.Large]);
    }

    /// <summary>Area by area: what is coloured on the cover is what the plan's cells have of each colour, whichever way a piece hangs.</summary>
    [Theory]
    [InlineData("tunic", Hand.Right)]
    [InlineData("cardigan", Hand.Right)]
    [InlineData("skirt", Hand.Left)]
    [InlineData("hat", Hand.Left)]
    public void The_cover_shows_every_colour_as_often_as_the_fabric_has_it(string garment, Hand hand)
    {
        var booklet = Pattern(garment);
        var edition = booklet.Edition with { Hand = hand };
        var reader = new Reader(edition, new Wording(booklet, edition).Say);
        var cover = booklet.Cover!;
        var view = cover.Worn[cover.Sample].Value.Front;
        var sheet = WornDrawing.Arranged(cover, cover.Sample, reader, new Box(0, 0, 160, 200), 8)[0].Sheet;
        var scale = sheet.Width / Width(view);
        var expected = view.Patches
            .SelectMany(p => p.Cells.Where(c => c != ColourChart.Blank).Select(c => (Colour: c == Patch.Plain ? cover.Companion : cover.Colours[c], Area: p.Width * p.Height / p.Cells.Length)))
            .GroupBy(c => c.Colour).ToDictionary(g => g.Key, g => g.Sum(c => c.Area) * scale * scale);
        var drawn = sheet.Shapes.OfType<Outline>().Where(o => o.Style is { Fill: not null, Stroke: null })
            .GroupBy(o => o.Style.Fill!.Value).ToDictionary(g => g.Key, g => g.Sum(o => Rectangles(o).Sum(r => r.Width * r.Height)));
        Assert.Equal(expected.Count, drawn.Count);
        // Runs overlap the paper between them by a twenty-fifth of a cell either way.
        Assert.All(expected, e => Assert.InRange(drawn[e.Key], e.Value * 0.999, e.Value * 1.1));
    }

    /// <summary>The colours of the first row of stitches, from left to right, are the same with the other hand from right to left.</summary>
    [Fact]
    public void The_other_hands_cover_is_mirrored()
    {
        var booklet = Pattern("tunic");
        var sheets = new[] { Hand.Right, Hand.Left }.Select(hand =>
        {
            var edition = booklet.Edition with { Hand = hand };
            return WornDrawing.Arranged(booklet.Cover!, booklet.Cover!.Sample, new Reader(edition, new Wording(booklet, edition).Say), new Box(0, 0, 160, 200), 8)[0].Sheet;
        }).ToArray();
        var (right, left) = (Middles(sheets[0]), Middles(sheets[1]));
        Assert.Equal(right.Length, left.Length);
        Assert.All(right.Zip(left), pair => Assert.Equal(sheets[0].Width - pair.First.X, pair.Second.X, 1e-6));
        Assert.True(right.Zip(left).Any(pair => Math.Abs(pair.First.X - pair.Second.X) > 1), "nothing is mirrored");

        static (double X, double Y)[] Middles(Sheet sheet) => [.. sheet.Shapes.OfType<Outline>().Where(o => o.Style is { Fill: not null, Stroke: null })
            .SelectMany(Rectangles).Select(r => (r.X + r.Width / 2, r.Y))];
    }

    /// <summary>Front and back stand in the room, apart from each other, and fill it in one direction.</summary>
    [Theory]
    [InlineData("tunic")]
    [InlineData("vest")]
    [InlineData("poncho")]
    [InlineData("skirt")]
    public void Front_and_back_stand_in_their_room_apart(string garment)
    {
        var booklet = Pattern(garment);
        var reader = new Reader(booklet.Edition, new Wording(booklet, booklet.Edition).Say);
        var views = WornDrawing.Arranged(booklet.Cover!, booklet.Cover!.Sample, reader, new Box(10, 20, 170, 180), 8);
        Box[] boxes = [.. views.Select(v => new Box(v.At.X, v.At.Y, v.Sheet.Width, v.Sheet.Height))];
        Assert.All(boxes, b => Assert.True(b.X >= 10 - 1e-6 && b.Y >= 20 - 1e-6 && b.X + b.Width <= 180 + 1e-6 && b.Y + b.Height <= 200 + 1e-6, $"{b} lies beyond the room"));
        if (boxes is [var front, var back])
        {
            var (beside, below) = (back.X - front.X - front.Width, back.Y - front.Y - front.Height);
            Assert.True(Math.Abs(beside - 8) < 1e-6 || Math.Abs(below - 8) < 1e-6, $"{beside} beside, {below} below");
        }
        var (wide, tall) = (boxes.Max(b => b.X + b.Width) - boxes.Min(b => b.X), boxes.Max(b => b.Y + b.Height) - boxes.Min(b => b.Y));
        Assert.True(Math.Abs(wide - 170) < 1e-6 || Math.Abs(tall - 180) < 1e-6, $"{wide} by {tall}");
    }

    [Fact]
    public void A_copy_of_one_size_shows_that_size()
    {
        var booklet = Pattern("tunic");
        foreach (var size in booklet.Sizes)
        {
            var edition = booklet.Edition with { Size = size };
            var sentence = booklet.Cover!.Worn[booklet.Sizes.IndexOf(size)].Value.Front.Sentence;
            Assert.Contains($"size {size}.", sentence, StringComparison.Ordinal);
            var drawn = Ops(booklet, edition, TypeSize.Normal).OfType<Begin>().First(b => b.Role == Role.Figure);
            Assert.Equal(sentence, drawn.Alternative);
        }
    }

    /// <summary>A designer's photo of her own comes instead of the drawing, and her words below the sizes.</summary>
    [Fact]
    public void A_photo_for_the_cover_takes_the_drawings_place()
    {
        var booklet = Pattern("tunic");
        booklet = booklet with
        {
            Cover = booklet.Cover! with { Own = [new OwnWords("cover", "For windy days."), new Photo("cover", "On the mole.", SamplePhoto.Jpeg)] },
        };
        var ops = Ops(booklet, booklet.Edition, TypeSize.Normal);
        var first = ops.Skip(1).TakeWhile(o => o is not NewPage).ToArray();
        Assert.Contains(first.OfType<Words>(), w => w.Text.Contains("For windy days.", StringComparison.Ordinal));
        Assert.Equal(["On the mole."], first.OfType<Begin>().Where(b => b.Role == Role.Figure).Select(b => b.Alternative));
    }

    /// <summary>As many boxes beside a row as the longest of its pieces works it, four at most.</summary>
    [Fact]
    public void Rows_have_boxes_to_tick()
    {
        var booklet = Pattern("tunic");
        var table = booklet.Sections.SelectMany(s => s.Blocks).SelectMany(b => b is ForSizes some ? some.Blocks : [b]).OfType<Table>().First(t => t.Ticks > 0);
        var ops = Ops(booklet, booklet.Edition, TypeSize.Normal);
        var boxes = ops.OfType<Draw>().Count(d => d.Sheet is { Title: "", Shapes: [Outline { Style: { Fill: null, Stroke.Width: 0.5 } }] });
        var tables = booklet.Sections.SelectMany(s => s.Blocks).SelectMany(b => b is ForSizes some ? some.Blocks : [b]).OfType<Table>();
        Assert.Equal(tables.Sum(t => t.Ticks * t.Rows.Length), boxes);
        Assert.InRange(table.Ticks, 1, 4);
    }

    private static double Width(GarmentDrawing view)
    {
        var xs = view.Outlines.SelectMany(o => o.Points.Select(p => p.X)).Concat(view.Patches.SelectMany(p => new[] { p.X, p.X + p.Width })).ToArray();
        return xs.Max() - xs.Min() + 1;
    }

    private static IEnumerable<Box> Rectangles(Outline outline)
    {
        var corners = new List<Point>();
        foreach (var step in outline.Steps)
        {
            if (step.Verb != PathVerb.Close)
            {
                corners.Add(step.To);
                continue;
            }
            var (xs, ys) = (corners.Select(c => c.X).ToArray(), corners.Select(c => c.Y).ToArray());
            yield return new Box(xs.Min(), ys.Min(), xs.Max() - xs.Min(), ys.Max() - ys.Min());
            corners.Clear();
        }
    }

    private static (Words Words, bool IsFooter)[] Words(string garment, TypeSize type)
    {
        var booklet = Pattern(garment);
        var said = new List<(Words, bool)>();
        var depth = new Stack<Role>();
        foreach (var op in Ops(booklet, booklet.Edition, type))
        {
            if (op is Begin begin)
                depth.Push(begin.Role);
            else if (op is BeginLink)
                depth.Push(Role.Contents);
            else if (op is End)
                depth.Pop();
            else if (op is Words words)
                said.Add((words, depth.Contains(Role.Artifact)));
        }
        return [.. said];
    }

    private static IReadOnlyList<PageOp> Ops(Booklet booklet, Edition edition, TypeSize type)
    {
        booklet = BookletParts.Sized(booklet, edition);
        var reader = new Reader(edition, new Wording(booklet, edition).Say);
        var flow = new Flow(PageFrame.Of(new Print(PageSize.A4, type)), booklet.Title);
        CoverPages.Write(flow, booklet, reader);
        var blocks = new PageBlocks(flow, booklet, reader);
        for (var i = 0; i < booklet.Sections.Length; i++)
            blocks.Write(booklet.Sections[i], i);
        return flow.Ops;
    }

    private static byte[] Pdf(Booklet booklet, Print print)
    {
        using var output = new MemoryStream();
        PdfBooklet.Write(booklet, booklet.Edition, new Wording(booklet, booklet.Edition).Say, print, output, cancel: TestContext.Current.CancellationToken);
        return output.ToArray();
    }

    private static readonly Dictionary<string, Booklet> Written = [];

    private static Booklet Pattern(string garment)
    {
        lock (Written)
        {
            if (!Written.TryGetValue(garment, out var booklet))
            {
                var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
                var plan = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken).Plan!;
                Written[garment] = booklet = PatternWriter.Write(plan, TestContext.Current.CancellationToken);
            }
            return booklet;
        }
    }
}
