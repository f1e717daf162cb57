using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Tests;

/// <summary>The picture on the cover shows the fabric as it is worn.</summary>
public sealed class WornChartTests
{
    public static TheoryData<string, Direction> Ways => [.. from kind in Repertoire.All from way in new[] { Direction.Up, Direction.Sideways } select (kind.Name, way)];

    /// <summary>From the corner where the work begins, cell by cell against the piece as it is worn.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void It_is_the_piece_as_worn(string kind, Direction direction)
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
        var result = GarmentPlanner.Plan(starter with { Garment = starter.Garment with { Direction = direction } }, TestContext.Current.CancellationToken);
        // What is worked in rounds goes up.
        if (!result.HasPlan)
        {
            Assert.Equal("cowl", kind);
            return;
        }
        var worn = WornPiece.Of(result.Plan, result.Plan.Sizes[0].Pieces.First(p => p.Pooled));
        var chart = WornChart.Of(BookletParts.Fabric(BookletParts.Sized(PatternWriter.Write(result.Plan), starter.Edition))!, 0.62);
        Assert.True(chart.Columns > 10 && chart.Rows > 5);
        var at = 0;
        for (var line = 0; line < Math.Min(chart.Rows, worn.Rows); at += chart.RowUnits[line], line++)
        {
            for (var unit = 0; unit < chart.RowUnits[line]; unit++)
            {
                var fromRight = chart.RowOffsets[line] / 2 + unit;
                var x = direction == Direction.Sideways ? chart.Columns - 1 - fromRight : worn.Columns - 1 - fromRight;
                if (x < worn.Columns)
                    Assert.Equal(worn.Cells[(worn.Rows - 1 - line) * worn.Columns + x], chart.Cells[at + unit]);
            }
        }
    }

    /// <summary>Where rows stop short for a gore, those beside them have closed over it, cell by cell as the piece is worn.</summary>
    [Fact]
    public void Gores_are_shown_closed()
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == "skirt"));
        var flared = (Skirt)starter.Garment.Shape with { Flare = Length.FromCentimetres(40) };
        var plan = GarmentPlanner.Plan(starter with { Garment = starter.Garment with { Shape = flared } }, TestContext.Current.CancellationToken).Plan!;
        var worn = WornPiece.Of(plan, plan.Sizes[0].Pieces[0]);
        var chart = WornChart.Of(BookletParts.Fabric(BookletParts.Sized(PatternWriter.Write(plan), starter.Edition))!, 0.62);
        Assert.Equal((worn.Columns, worn.Rows), (chart.Columns, chart.Rows));
        for (var line = 0; line < worn.Rows; line++)
        {
            var fromRight = chart.Cells.AsSpan().Slice(line * chart.Columns, chart.Columns).ToArray();
            Assert.Equal(worn.Cells.Slice((worn.Rows - 1 - line) * worn.Columns, worn.Columns).ToArray(), fromRight.Reverse().ToArray());
        }
        Assert.Contains(ColourChart.Blank, chart.Cells);
    }

    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_piece_that_is_cut_is_shown_whole(Direction direction)
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == "vest"));
        var plan = GarmentPlanner.Plan(starter with { Garment = starter.Garment with { Direction = direction } }, TestContext.Current.CancellationToken).Plan!;
        var chart = BookletParts.Fabric(BookletParts.Sized(PatternWriter.Write(plan), starter.Edition))!;
        var sheet = ColourChartDrawing.Fabric(chart, new Reader(starter.Edition, new Wording([.. plan.Sizes.Select(s => s.Name)], starter.Edition).Say), 160, "");
        var piece = plan.Sizes[0].Pieces[0];
        Assert.Equal(piece.Height / piece.Width, sheet.Height / sheet.Width, 0.001);
        Assert.True(sheet.Width <= 160 && sheet.Height <= 0.8 * 160 + 0.001);
    }

    /// <summary>Rows that stand half a unit over, of two units each: up becomes right, right becomes down.</summary>
    [Fact]
    public void Half_units_have_lines_of_their_own()
    {
        var chart = SampleBooklet.Turned(22, 2) with
        {
            Columns = 2,
            Cells = [0, 1, 2, 3],
            RowUnits = [2, 2],
            RowOffsets = [0, 1],
            Sideways = true,
        };
        var turned = WornChart.Of(chart, 0.62);
        const byte none = ColourChart.Blank;
        Assert.Equal([none, 0, 2, 0, 2, 1, 3, 1, 3, none], turned.Cells);
        Assert.Equal((2, 5), (turned.Columns, turned.Rows));
        Assert.Equal(chart.RowHeight, turned.UnitWidth);
        Assert.Equal(chart.UnitWidth / 2, turned.RowHeight);
    }

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void The_first_row_is_at_the_side_where_the_maker_begins(Hand hand)
    {
        // Row 1 in the first colour, row 2 in the second.
        var chart = SampleBooklet.Turned(22, 2) with { Cells = [.. Enumerable.Range(0, 44).Select(i => (byte)(i / 22))], Sideways = true };
        var sheet = ColourChartDrawing.Fabric(chart, new Reader(SampleBooklet.Everyone with { Hand = hand }, SampleBooklet.Say), 160, "");
        double Right(int section) => sheet.Shapes.OfType<Outline>().Single(o => o.Style.Fill == chart.Key[section].Colour).Steps.Max(s => s.To.X);
        Assert.Equal(hand == Hand.Right, Right(0) < Right(1));
    }
}
