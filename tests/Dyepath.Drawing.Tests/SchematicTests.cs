using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Tests;

public sealed class SchematicTests
{
    private static readonly Reader Reader = new(SampleBooklet.Everyone, SampleBooklet.Say);

    [Fact]
    public void Labels_do_not_overlap()
    {
        foreach (var schematic in new[] { SampleBooklet.Schematic, Crowded() })
        {
            var boxes = Labels(Draw(schematic).Sheets[0]).ToArray();
            for (var i = 0; i < boxes.Length; i++)
            {
                for (var j = 0; j < i; j++)
                    Assert.False(boxes[i].Box.Overlaps(boxes[j].Box), $"{boxes[i].Text} lies on {boxes[j].Text}.");
            }
        }
    }

    [Fact]
    public void Labels_stay_on_the_sheet()
    {
        var sheet = Draw(Crowded()).Sheets[0];
        Assert.All(
            Labels(sheet),
            label => Assert.True(
                label.Box.X >= -0.5 && label.Box.Right <= sheet.Width + 0.5 && label.Box.Y >= -0.5
                    && label.Box.Bottom <= sheet.Height + 0.5,
                label.Text));
    }

    [Fact]
    public void Words_that_do_not_fit_their_line_go_into_the_key()
    {
        var drawn = Draw(SampleBooklet.Schematic);
        Assert.Contains(drawn.Key, entry => entry.Sign.Title == "1" && entry.Text.StartsWith("d 36 (38, 40", StringComparison.Ordinal));
        Assert.Contains(Labels(drawn.Sheets[0]), label => label.Text == "1");
    }

    /// <summary>Words that are a little longer than what they measure stand beside it, in lanes of their own, and nothing has to be looked up.</summary>
    [Fact]
    public void Words_stand_where_they_measure()
    {
        var drawn = Draw(InWords());
        var labels = Labels(drawn.Sheets[0]).ToArray();
        Assert.All(InWords().Pieces[0].Dimensions, d => Assert.Contains(labels, l => l.Text == Reader.Text(d.Label)));
        for (var i = 0; i < labels.Length; i++)
            Assert.All(labels[..i], other => Assert.False(labels[i].Box.Overlaps(other.Box), $"{labels[i].Text} lies on {other.Text}."));
        Assert.DoesNotContain(drawn.Key, entry => entry.Sign.Title is "1" or "2");
    }

    /// <summary>As of a vest: a narrow shoulder beside a neck and an inset, and a neck depth inside the piece.</summary>
    private static Schematic InWords() => new(
    [
        .. ((string[])["front", "back"]).Select(name => new SchematicPiece(
            Phrase.Plain(name),
            [new(7, 0), new(14, 0), new(14, 7), new(38, 7), new(38, 0), new(45, 0), new(45, 20), new(52, 20), new(52, 54), new(0, 54), new(0, 20), new(7, 20)],
            [
                new(new(0, 54), new(52, 54), -3, Phrase.Plain("width 52 cm")), new(new(0, 0), new(0, 54), -4, Phrase.Plain("height 54 cm")),
                new(new(14, 0), new(38, 0), 3, Phrase.Plain("neck width 24 cm")), new(new(26, 0), new(26, 7), 0, Phrase.Plain("neck depth 7 cm")),
                new(new(7, 0), new(14, 0), 3, Phrase.Plain("shoulder width 7 cm")), new(new(0, 0), new(0, 20), -3, Phrase.Plain("armhole depth 20 cm")),
                new(new(0, 0), new(7, 0), 3, Phrase.Plain("armhole inset 7 cm")),
            ],
            [],
            new(1, 0))),
    ]);

    public static TheoryData<string> Garments => [.. Repertoire.All.Select(kind => kind.Name)];

    /// <summary>On the pieces of every garment, in its smallest, middle and largest size, every word stands clear of all others and of all lines.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void No_word_lies_on_another_or_on_a_line(string garment)
    {
        var plan = GarmentPlanner.Plan(StarterDocument.Of(Repertoire.All.Single(kind => kind.Name == garment)), TestContext.Current.CancellationToken).Plan!;
        var met = new List<string>();
        foreach (var size in new[] { 0, plan.Sizes.Length / 2, plan.Sizes.Length - 1 }.Distinct())
        {
            foreach (var units in new[] { Units.Centimetres, Units.Inches })
            {
                var edition = plan.Project.Edition with { Units = units };
                var reader = new Reader(edition, new Wording([.. plan.Sizes.Select(s => s.Name)], edition).Say);
                var sheet = SchematicDrawing.Draw((Schematic)PatternWriter.Schematic(plan, size).Picture, "", "", reader, Room.Screen).Sheets[0];
                met.AddRange(Met(sheet).Select(words => $"{plan.Sizes[size].Name}, {units}: {words}"));
            }
        }
        Assert.True(met.Count == 0, string.Join("\n", met));
    }

    private static IEnumerable<string> Met(Sheet sheet)
    {
        var labels = Labels(sheet).ToArray();
        var lines = Segments(sheet).ToArray();
        for (var i = 0; i < labels.Length; i++)
        {
            foreach (var other in labels[..i].Where(other => labels[i].Box.Overlaps(other.Box)))
                yield return $"{labels[i].Text} lies on {other.Text}.";
            foreach (var (from, to) in lines.Where(line => Crosses(labels[i].Box, line.From, line.To)))
                yield return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{labels[i].Text} lies on the line from {from.X:0.0} {from.Y:0.0} to {to.X:0.0} {to.Y:0.0}.");
        }
    }

    private static IEnumerable<(Point From, Point To)> Segments(Sheet sheet)
    {
        foreach (var (shape, at) in Shapes(sheet.Shapes, default))
        {
            var (from, begun) = (default(Point), default(Point));
            foreach (var step in (shape as Outline)?.Steps ?? [])
            {
                var to = step.Verb == PathVerb.Close ? begun : step.To;
                if (step.Verb == PathVerb.Move)
                    begun = to;
                else
                    yield return (from + at, to + at);
                from = to;
            }
        }
    }

    /// <summary>Whether any of a segment lies in a box.</summary>
    private static bool Crosses(Box box, Point from, Point to)
    {
        var (enters, leaves) = (0.0, 1.0);
        foreach (var (start, way, low, high) in new[] { (from.X, to.X - from.X, box.X, box.Right), (from.Y, to.Y - from.Y, box.Y, box.Bottom) })
        {
            if (Math.Abs(way) < 1e-9)
            {
                if (start <= low || start >= high)
                    return false;
                continue;
            }
            var (one, two) = ((low - start) / way, (high - start) / way);
            (enters, leaves) = (Math.Max(enters, Math.Min(one, two)), Math.Min(leaves, Math.Max(one, two)));
        }
        return enters < leaves;
    }

    [Fact]
    public void All_pieces_have_one_scale()
    {
        var sheet = Draw(SampleBooklet.Schematic).Sheets[0];
        var outlines = Shapes(sheet.Shapes, default).Select(s => s.Shape).OfType<Outline>().Where(o => o.Style.Stroke == Ink.Edge)
            .ToArray();
        var widths = outlines.Select(o => o.Steps[1].To.X - o.Steps[0].To.X).ToArray();
        Assert.Equal(2, widths.Length);
        Assert.Equal(52.0 / 40, widths[0] / widths[1], 9);
    }

    /// <summary>Pieces are drawn as a right-handed maker's: worked sideways they grow to the right; the notes tell a left-handed one of the mirror.</summary>
    [Theory]
    [InlineData(Hand.Right, 1, 0)]
    [InlineData(Hand.Left, 1, 0)]
    [InlineData(Hand.Right, 0, -1)]
    [InlineData(Hand.Left, 0, -1)]
    public void The_arrow_shows_the_way_the_rows_grow(Hand hand, int x, int y)
    {
        var piece = new SchematicPiece(Phrase.Plain("front"), [new(0, 0), new(40, 0), new(40, 50), new(0, 50)], [], [], y == 0 ? new(1, 0) : new(0, -1));
        var reader = new Reader(SampleBooklet.Everyone with { Hand = hand }, SampleBooklet.Say);
        var sheet = SchematicDrawing.Draw(new Schematic([piece]), "", "", reader, Room.Screen).Sheets[0];
        var head = Shapes(sheet.Shapes, default).Select(s => s.Shape).OfType<Outline>().Single(o => o.Steps.Length == 4 && o.Steps[3].Verb == PathVerb.Close).Steps;
        var back = (head[1].To + head[2].To) * 0.5;
        Assert.Equal((x, y), (Math.Sign(Math.Round(head[0].To.X - back.X, 6)), Math.Sign(Math.Round(head[0].To.Y - back.Y, 6))));
    }

    [Theory]
    [InlineData(Units.Centimetres, "cm")]
    [InlineData(Units.InchesThenCentimetres, "in")]
    public void The_scale_bar_is_to_scale_in_the_units_of_the_edition(Units units, string unit)
    {
        var sheet = SchematicDrawing.Draw(
            SampleBooklet.Schematic, "", "", new Reader(SampleBooklet.Everyone with { Units = units }, SampleBooklet.Say),
            Room.Screen).Sheets[0];
        var all = Shapes(sheet.Shapes, default).ToArray();
        var scale = all.Select(s => s.Shape).OfType<Outline>().First(o => o.Style.Stroke == Ink.Edge).Steps[1].To.X / 52;
        var bar = all.Select(s => s.Shape).OfType<Outline>().Last(o => o.Style.Fill == Ink.Paper).Steps[1].To.X;
        var label = all.Select(s => s.Shape).OfType<TextLine>().Last().Text.Split(' ');
        Assert.Equal(unit, label[1]);
        Assert.Equal(int.Parse(label[0], System.Globalization.CultureInfo.InvariantCulture) * (unit == "in" ? 2.54 : 1), bar / scale, 6);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public void Places_out_of_reach_are_refused(double place)
    {
        var piece = SampleBooklet.Schematic.Pieces[0];
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Draw(new Schematic([piece with { Outline = piece.Outline.SetItem(1, new(place, 0)) }])));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Draw(new Schematic([piece with { Dimensions = [piece.Dimensions[0] with { Offset = place }] }])));
    }

    /// <summary>Many dimensions wanted at the same distance on the same side.</summary>
    internal static Schematic Crowded() => new(
    [
        .. ((string[])["front", "back", "sleeve"]).Select(name => new SchematicPiece(
            Phrase.Plain(name),
            [new(0, 0), new(40, 0), new(46, 50), new(0, 50)],
            [
                new(new(0, 50), new(46, 50), -1, Phrase.Plain("a")), new(new(0, 50), new(20, 50), -1, Phrase.Plain("b")),
                new(new(10, 50), new(46, 50), -1, Phrase.Plain("c 12.5 cm")),
                new(new(0, 0), new(0, 50), -1, Phrase.Plain("d")), new(new(0, 20), new(0, 50), -1, Phrase.Plain("e 30 cm")),
                new(new(40, 0), new(46, 50), 2, Phrase.Plain("f 51 cm")),
                new(new(0, 0), new(2, 0), 2, Phrase.Plain("g")),
            ],
            [new(new(10, 0), new(30, 0), Phrase.Plain("neck")), new(new(0, 0), new(0, 18), Phrase.Plain("armhole"))],
            new(0, -1))),
    ]);

    private static DrawnPicture Draw(Schematic schematic) => SchematicDrawing.Draw(schematic, "Schematic.", "", Reader, Room.Screen);

    private static IEnumerable<(string Text, Box Box)> Labels(Sheet sheet)
    {
        foreach (var (shape, at) in Shapes(sheet.Shapes, default))
        {
            if (shape is not TextLine line)
                continue;
            var (width, height) = (
                Typeface.Of(line.Lettering.Bold).Width(line.Text, line.Lettering.Size), line.Lettering.Size * Lettering.CapHeight);
            var left = line.Lettering.Anchor == Anchor.Middle ? -width / 2 : 0;
            Point[] box = [new(left, 0), new(left + width, 0), new(left, -height), new(left + width, -height)];
            var corners = box.Select(c => Turned(c, line.Degrees) + line.At + at).ToArray();
            var (x, y) = (corners.Min(c => c.X), corners.Min(c => c.Y));
            yield return (line.Text, new Box(x, y, corners.Max(c => c.X) - x, corners.Max(c => c.Y) - y));
        }
    }

    private static IEnumerable<(Shape Shape, Point At)> Shapes(IEnumerable<Shape> shapes, Point at) =>
        shapes.SelectMany(shape => shape is Group group ? Shapes(group.Shapes, at + group.At) : [(shape, at)]);

    private static Point Turned(Point point, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new Point(point.X * cos - point.Y * sin, point.X * sin + point.Y * cos);
    }
}
