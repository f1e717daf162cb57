using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Workshops;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>The fabric of a workshop's card: a letter on every stitch beside its colour, row numbers where rows begin, and a key.</summary>
internal static class CardFabricDrawing
{
    private const double Side = 6;
    private const double KeyLine = 5;
    private const double Letters = 3.2;

    /// <summary>Height of the whole rows at most.</summary>
    private const double MostWhole = 34;

    public static Sheet Draw(CardFabric fabric, string description, double width)
    {
        var columns = fabric.Rows[0].Length;
        var cell = (width - 2 * Side) / columns;
        var height = cell * fabric.HeightOverWidth;
        var bottom = height * fabric.Rows.Length;
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        for (var row = 0; row < fabric.Rows.Length; row++)
        {
            var top = bottom - (row + 1) * height;
            for (var c = 0; c < columns; c++)
            {
                var x = width - Side - (c + 1) * cell;
                var section = fabric.Rows[row][c];
                shapes.Add(new PathBuilder().Rectangle(x, top, cell, height).With(new Style(fabric.Colours[section].Colour, Ink.Grid)));
                var lettering = new Lettering(Math.Min(0.75 * cell, 0.85 * height), Contrast.InkOn(fabric.Colours[section].Colour),
                    Anchor.Middle);
                shapes.Add(new TextLine(new Point(x + cell / 2, lettering.BaselineAround(top + height / 2)), fabric.Symbols[section],
                    lettering));
            }
            var atRight = !fabric.IsTurned || row % 2 == 0;
            var number = new Lettering(Math.Min(2.6, 0.9 * height), Ink.Black, atRight ? Anchor.Start : Anchor.End);
            // Where the left-hand edge is not drawn, a row that begins there has its number beyond what is drawn.
            shapes.Add(new TextLine(
                new Point(atRight ? width - Side + 1 : Side - 1, number.BaselineAround(top + height / 2)), Text(row + 1), number));
        }
        if (columns < fabric.Whole[0].Length)
        {
            var torn = new PathBuilder().Line(new Point(Side, 0), new Point(Side, bottom));
            shapes.Add(torn.With(new Style(null, new Stroke(Ink.Black, 0.5, 1.2))));
        }
        var y = bottom + 2;
        var left = Side;
        foreach (var (colour, symbol) in fabric.Colours.Zip(fabric.Symbols).DistinctBy(pair => pair.Second))
        {
            var wide = 6.5 + 2 + Typography.Typeface.Regular.Width(colour.Name, Letters) + 4;
            if (left + wide > width && left > Side)
                (left, y) = (Side, y + KeyLine);
            shapes.Add(new PathBuilder().Rectangle(left, y, 5, 4).With(new Style(colour.Colour, Ink.Fine)));
            var sign = new Lettering(2.8, Contrast.InkOn(colour.Colour), Anchor.Middle);
            shapes.Add(new TextLine(new Point(left + 2.5, sign.BaselineAround(y + 2)), symbol, sign));
            var name = new Lettering(Letters, Ink.Black);
            shapes.Add(new TextLine(new Point(left + 6.5, name.BaselineAround(y + 2)), colour.Name, name));
            left += wide;
        }
        y += KeyLine + 1;
        var (whole, tall) = Whole(fabric, new Box(Side, y, width - 2 * Side, MostWhole));
        return new Sheet(width, y + tall, [.. shapes, .. whole], "The fabric", description);
    }

    /// <summary>Whole rows, each stretch of a colour in one piece: a picture to compare with, beside the one with letters.</summary>
    private static (IEnumerable<Shape> Shapes, double Height) Whole(CardFabric fabric, Box room)
    {
        var stitches = fabric.Whole.Max(row => row.Length);
        var cell = Math.Min(room.Width / stitches, room.Height / (fabric.HeightOverWidth * fabric.Whole.Length));
        var height = cell * fabric.HeightOverWidth;
        var all = height * fabric.Whole.Length;
        var shapes = new List<Shape>();
        for (var row = 0; row < fabric.Whole.Length; row++)
        {
            var cells = fabric.Whole[row];
            for (var begin = 0; begin < cells.Length;)
            {
                var end = begin;
                while (end < cells.Length && cells[end] == cells[begin])
                    end++;
                shapes.Add(new PathBuilder().Rectangle(room.X + (stitches - end) * cell, room.Y + all - (row + 1) * height, (end - begin)
                    * cell, height)
                    .With(new Style(fabric.Colours[cells[begin]].Colour, new Stroke(fabric.Colours[cells[begin]].Colour, 0.05))));
                begin = end;
            }
        }
        shapes.Add(new PathBuilder().Rectangle(room.X, room.Y, stitches * cell, all).With(new Style(null, Ink.Fine)));
        return (shapes, all);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
