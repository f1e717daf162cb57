using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Tests;

public sealed class ChartTests
{
    private static readonly Reader Right = new(SampleBooklet.Everyone, SampleBooklet.Say);
    private static readonly Reader Left = new(SampleBooklet.Everyone with { Hand = Hand.Left }, SampleBooklet.Say);

    [Fact]
    public void Row_1_begins_at_the_bottom_right_and_row_2_at_the_left()
    {
        var texts = Texts(Whole(SampleBooklet.Turned(22, 6), Right));
        var (one, two) = (Label(texts, "1"), Label(texts, "2"));
        var six = Label(texts, "6");
        Assert.True(one.X > texts.Cells.Max(c => c.X), "Row 1 is labelled right of its cells.");
        Assert.True(two.X < texts.Cells.Min(c => c.X), "Row 2 is labelled left of its cells.");
        Assert.True(one.Y > two.Y && two.Y > six.Y, "Rows go up.");
    }

    [Fact]
    public void Row_1_reads_the_sequence_from_right_to_left_and_row_2_from_left_to_right()
    {
        var rows = Rows(Whole(SampleBooklet.Turned(22, 2), Right));
        Assert.Equal("DDDDDDDCCCCCCBBBBAAAAA", rows[^1]);
        Assert.Equal("AAAAABBBBCCCCCCDDDDDDD", rows[^2]);
    }

    [Fact]
    public void Left_handed_rows_begin_at_the_other_side()
    {
        var sheet = Whole(SampleBooklet.Turned(22, 2), Left);
        Assert.Equal("AAAAABBBBCCCCCCDDDDDDD", Rows(sheet)[^1]);
        var texts = Texts(sheet);
        Assert.True(Label(texts, "1").X < texts.Cells.Min(c => c.X));
        Assert.True(Label(texts, "2").X > texts.Cells.Max(c => c.X));
    }

    [Theory]
    [InlineData(Working.Rounds)]
    [InlineData(Working.Spiral)]
    public void Rounds_that_are_not_turned_all_begin_at_the_right(Working working)
    {
        var texts = Texts(Whole(SampleBooklet.Turned(12, 4, working), Right));
        Assert.All(["2", "3", "4"], label => Assert.True(Label(texts, label).X > texts.Cells.Max(c => c.X)));
    }

    [Fact]
    public void Arrows_point_the_way_of_work()
    {
        // The head is the only closed outline of three corners; its tip comes first.
        var group = Unscaled(Whole(SampleBooklet.Turned(8, 2), Right));
        var heads = group.Shapes.OfType<Outline>().Where(o => o.Steps.Length == 4 && o.Steps[3].Verb == PathVerb.Close).ToArray();
        Assert.Equal(2, heads.Length);
        Assert.True(heads[0].Steps[0].To.X < heads[0].Steps[1].To.X, "Row 1 is worked to the left.");
        Assert.True(heads[1].Steps[0].To.X > heads[1].Steps[1].To.X, "Row 2 is worked to the right.");
    }

    [Fact]
    public void Arrows_are_mirrored_for_left_handed_makers()
    {
        var group = Unscaled(Whole(SampleBooklet.Turned(8, 2), Left));
        var heads = group.Shapes.OfType<Outline>().Where(o => o.Steps.Length == 4 && o.Steps[3].Verb == PathVerb.Close).ToArray();
        Assert.Equal(2, heads.Length);
        Assert.True(heads[0].Steps[0].To.X > heads[0].Steps[1].To.X, "Row 1 is worked to the right.");
        Assert.True(heads[1].Steps[0].To.X < heads[1].Steps[1].To.X, "Row 2 is worked to the left.");
    }

    /// <summary>A maker counts in tens: a bold line above every tenth row and beside every tenth column, and their numbers bold.</summary>
    [Theory]
    [InlineData(1, new[] { 10, 20 })]
    [InlineData(6, new[] { 10, 20, 30 })]
    public void Every_tenth_row_and_column_is_bold(int firstRow, int[] tens)
    {
        var sheet = Whole(SampleBooklet.Turned(22, 25) with { FirstRow = firstRow }, Right);
        var group = Unscaled(sheet);
        var lines = group.Shapes.OfType<Outline>().Single(o => o.Style.Stroke == Ink.Tenth).Steps.Chunk(2).Select(l => (From: l[0].To, To: l[1].To)).ToArray();
        var texts = Texts(sheet);
        var centres = texts.Cells.Select(c => c.Y).Distinct().OrderDescending().ToArray();
        var height = centres[0] - centres[1];
        var rows = lines.Where(l => l.From.Y == l.To.Y).Select(l => l.From.Y).ToArray();
        Assert.Equal(tens.Length, rows.Length);
        // Above the tenth row's middle by half a row, where its symbol stands a little below the middle.
        Assert.All(tens.Zip(rows), ten => Assert.InRange(centres[ten.First - firstRow] - ten.Second, height * 0.5, height));
        var width = texts.Cells.Where(c => c.Y == centres[0]).Select(c => c.X).Order().ToArray() is var columns ? columns[1] - columns[0] : 0;
        // Columns are counted from the right, where row 1 begins.
        Assert.Equal([10.0, 20], lines.Where(l => l.From.X == l.To.X).Select(l => Math.Round(22 - l.From.X / width, 6)));
        Assert.Equal(
            tens.Select(t => $"{t}"),
            texts.Labels.Where(l => l.Lettering.Bold).Select(l => l.Text));
    }

    [Fact]
    public void A_linen_row_stands_half_a_unit_over()
    {
        var sheet = Whole(SvgSnapshotTests.Linen(), Right);
        var rows = Texts(sheet).Cells.GroupBy(c => c.Y).OrderByDescending(row => row.Key).Select(row => row.Max(c => c.X)).ToArray();
        var unit = Texts(sheet).Cells.Where(c => c.Y == Texts(sheet).Cells.Max(cell => cell.Y)).Select(c => c.X).Order().Take(2).ToArray();
        Assert.Equal((unit[1] - unit[0]) / 2, rows[0] - rows[1], 6);
    }

    [Fact]
    public void Uneven_rows_follow_each_other_without_gaps()
    {
        var chart = SampleBooklet.Turned(4, 3) with { RowUnits = [2, 4, 3], Cells = [0, 1, 2, 3, 0, 1, 3, 2, 1] };
        Assert.Equal(["BCD", "BADC", "BA"], Rows(Whole(chart, Right)));
    }

    [Fact]
    public void Left_and_right_handed_charts_are_mirror_images() =>
        Charts.Holds(
            chart =>
            {
                var (right, left) = (Whole(chart, Right), Whole(chart, Left));
                Assert.Equal(right.Width, left.Width, 9);
                var mirrored = Texts(right).Cells.Select(c => (Math.Round(right.Width - 20 - c.X, 6), Math.Round(c.Y, 6), c.Text)).Order();
                Assert.Equal(mirrored, Texts(left).Cells.Select(c => (Math.Round(c.X, 6), Math.Round(c.Y, 6), c.Text)).Order());
            },
            seed: 61, cases: 60);

    [Fact]
    public void Parts_of_a_divided_chart_show_every_cell_once() =>
        Gen.Select(Charts, Gen.Double[60, 170], Gen.Double[60, 240]).Holds(
            (chart, width, height) =>
            {
                var drawn = ColourChartDrawing.Draw(chart, "Chart.", "", Right, new Room(width, height));
                var parts = drawn.Sheets.Length == 1 ? drawn.Sheets : drawn.Sheets[1..];
                Assert.Equal(chart.RowUnits.Sum(), parts.Sum(part => Texts(part).Cells.Length));
                Assert.Equal(Count(Texts(Whole(chart, Right))), Count(parts.SelectMany(part => Texts(part).Cells)));
                Assert.All(drawn.Sheets, sheet => Assert.True(sheet.Width <= width + 1e-6 && sheet.Height <= height + 1e-6));
            },
            seed: 62, cases: 60);

    /// <summary>
    /// A piece in steps, narrow, wide and narrow again, its far corner alone: no part is empty, each is as large as what is worked in it, and its
    /// columns are numbered from the first that it shows.
    /// </summary>
    [Fact]
    public void Parts_of_a_shaped_piece_show_only_what_is_worked()
    {
        int[] units = [.. Enumerable.Repeat(18, 80), .. Enumerable.Repeat(94, 40), .. Enumerable.Repeat(18, 120)];
        int[] offsets = [.. Enumerable.Repeat(2 * 76, 80), .. Enumerable.Repeat(0, 40), .. Enumerable.Repeat(2 * 76, 120)];
        var chart = SampleBooklet.Turned(94, units.Length) with
        {
            RowUnits = [.. units],
            RowOffsets = [.. offsets],
            Cells = SampleBooklet.Turned(94, units.Length).Cells[..units.Sum()],
        };
        var parts = ColourChartDrawing.Draw(chart, "Chart.", "", Right, new Room(182, 240)).Sheets[1..];
        Assert.Equal(units.Sum(), parts.Sum(part => Texts(part).Cells.Length));
        var unit = parts.SelectMany(p => Texts(p).Cells.GroupBy(c => c.Y).Select(r => r.Select(c => c.X).Order().ToArray())).Where(x => x.Length > 1).Min(x => x[1] - x[0]);
        Assert.All(parts, part =>
        {
            var (cells, labels) = Texts(part);
            Assert.NotEmpty(cells);
            // Half a cell at either side.
            Assert.Equal(part.Width - 20, cells.Max(c => c.X) - cells.Min(c => c.X) + unit, 1e-6);
            var said = System.Text.RegularExpressions.Regex.Match(part.Title, @"columns (\d+) to (\d+), rows (\d+) to (\d+)\.");
            Assert.Contains(labels, l => l.Text == said.Groups[1].Value);
            Assert.Equal(cells.GroupBy(c => Math.Round(c.Y, 6)).Count(), int.Parse(said.Groups[4].Value, System.Globalization.CultureInfo.InvariantCulture) - int.Parse(said.Groups[3].Value, System.Globalization.CultureInfo.InvariantCulture) + 1);
        });
    }

    /// <summary>On an A4 page 46 or 47 columns of this gauge are read with ease, 53 still can be.</summary>
    [Theory]
    [InlineData(50, 1, 50)]
    [InlineData(93, 2, 47)]
    [InlineData(96, 2, 48)]
    [InlineData(110, 3, 40)]
    public void A_chart_a_little_too_wide_takes_equal_parts_of_smaller_cells(int stitches, int parts, int widest)
    {
        var drawn = ColourChartDrawing.Draw(SampleBooklet.Turned(stitches, 42), "Chart.", "", Right, new Room(182, 240));
        var sheets = drawn.Sheets.Length == 1 ? drawn.Sheets : drawn.Sheets[1..];
        Assert.Equal(parts, sheets.Length);
        Assert.Equal(widest, Rows(sheets[0])[0].Length);
    }

    [Fact]
    public void A_symbol_is_black_on_light_yarn_and_white_on_dark()
    {
        foreach (var colour in SampleBooklet.Key)
        {
            var ink = Contrast.InkOn(colour.Colour);
            var other = ink == Ink.Paper ? new Core.Colours.Srgb(0, 0, 0) : Ink.Paper;
            Assert.True(ContrastRatio.Of(ink, colour.Colour) >= ContrastRatio.Of(other, colour.Colour));
            Assert.True(ContrastRatio.Of(ink, colour.Colour) >= 4.5);
        }
    }

    [Fact]
    public void A_chart_that_contradicts_itself_is_refused()
    {
        var chart = SampleBooklet.Turned(6, 3);
        Refused(chart with { Cells = chart.Cells[..^1] });
        Refused(chart with { RowUnits = [6, 6] });
        Refused(chart with { RowUnits = [6, 7, 6] });
        Refused(chart with { Cells = chart.Cells.SetItem(4, 9) });
        Refused(chart with { RowUnits = [6, 5, 6] });
        Refused(chart with { UnitWidth = default });

        static void Refused(ColourChart chart) => Assert.Throws<ArgumentException>(() => Whole(chart, Right));
    }

    [Fact]
    public void The_largest_chart_is_divided_into_pages_that_fit()
    {
        var drawn = ColourChartDrawing.Draw(SampleBooklet.Turned(1000, 300), "Chart.", "", Right, new Room(170, 230));
        Assert.All(drawn.Sheets, sheet => Assert.True(sheet.Width <= 170.001 && sheet.Height <= 230.001));
        Assert.Equal(300_000, drawn.Sheets.Skip(1).Sum(part => Texts(part).Cells.Length));
    }

    private static Gen<ColourChart> Charts =>
        from columns in Gen.Int[1, 60]
        from rows in Gen.Int[1, 50]
        from units in Gen.Int[1, columns].Array[rows]
        from offsets in Gen.Int[-3, 3].Array[rows]
        from working in Gen.Enum<Working>()
        select SampleBooklet.Turned(columns, rows, working) with
        {
            RowUnits = [.. units],
            RowOffsets = [.. offsets],
            Cells = SampleBooklet.Turned(columns, rows, working).Cells[..units.Sum()],
        };

    private static Sheet Whole(ColourChart chart, Reader reader) =>
        ColourChartDrawing.Draw(chart, "Chart.", "", reader, Room.Screen).Sheets[0];

    private static (ImmutableArray<(double X, double Y, string Text)> Cells, ImmutableArray<TextLine> Labels) Texts(Sheet sheet)
    {
        var group = Unscaled(sheet);
        return (
            [.. group.Shapes.OfType<TextRow>().SelectMany(row => row.Texts.Select(text => (text.X, row.Baseline, text.Text)))],
            [.. group.Shapes.OfType<TextLine>()]);
    }

    private static Point Label((ImmutableArray<(double, double, string)>, ImmutableArray<TextLine> Labels) texts, string label) =>
        texts.Labels.First(line => line.Text == label).At;

    private static string[] Rows(Sheet sheet) =>
        [
            .. Texts(sheet).Cells.GroupBy(c => c.Y).OrderBy(row => row.Key)
                .Select(row => string.Concat(row.OrderBy(c => c.X).Select(c => c.Text))),
        ];

    private static string Count((ImmutableArray<(double X, double Y, string Text)> Cells, ImmutableArray<TextLine>) texts) =>
        Count(texts.Cells);

    private static string Count(IEnumerable<(double X, double Y, string Text)> cells) =>
        string.Join(' ', cells.GroupBy(c => c.Text).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key}{g.Count()}"));

    /// <summary>What is drawn in cells, in the millimetres of the group round it.</summary>
    private static Group Unscaled(Sheet sheet)
    {
        var group = Assert.IsType<Group>(Assert.Single(sheet.Shapes));
        return group with { Shapes = [.. group.Shapes.SelectMany(shape => shape is Group inner ? inner.Shapes.Select(s => InMillimetres(s, inner)) : [shape])] };

        static Shape InMillimetres(Shape shape, Group inner) => shape switch
        {
            TextRow row => row with { Baseline = row.Baseline * inner.Scale, Texts = [.. row.Texts.Select(t => (t.X * inner.Scale, t.Text))] },
            Outline outline => outline with { Steps = [.. outline.Steps.Select(step => step with { To = new(step.To.X * inner.Scale, step.To.Y * inner.Scale) })] },
            _ => throw new NotSupportedException(shape.GetType().Name),
        };
    }
}
