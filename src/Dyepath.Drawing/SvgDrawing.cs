using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing;

/// <summary>Pictures as SVG files of their own, the key below.</summary>
public static class SvgDrawing
{
    private const double KeyLine = 7;

    /// <returns>SVG 1.1 with a title and a description for who cannot see it; the same bytes for the same picture.</returns>
    /// <exception cref="ArgumentException">The picture contradicts itself, such as a chart with fewer cells than it says.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static string Write(
        Figure figure, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(say);
        var reader = new Reader(edition, say);
        return Write(figure.Picture, reader.Text(figure.Caption), reader.Text(figure.Alternative), edition, say, cancel);
    }

    /// <inheritdoc cref="Write(Figure, Edition, Func{Phrase, ImmutableArray{TextSpan}}, CancellationToken)"/>
    /// <param name="title">What the picture is.</param>
    /// <param name="description">What a sighted person sees in it.</param>
    public static string Write(
        Picture picture, string title, string description, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say,
        CancellationToken cancel = default) => Write(picture, title, description, edition, say, new Effort(cancel: cancel));

    internal static string Write(
        Picture picture, string title, string description, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var drawn = PictureDrawing.Draw(picture, title, description, new Reader(edition, say, effort), Room.Screen);
        return SvgWriter.Write(WithKey(drawn), "picture", effort);
    }

    private static Sheet WithKey(DrawnPicture drawn)
    {
        var sheet = drawn.Sheets[0];
        var shapes = sheet.Shapes.ToBuilder();
        var width = sheet.Width;
        var lettering = new Lettering(3.2, Ink.Black);
        var y = sheet.Height + 2;
        foreach (var entry in drawn.Key)
        {
            shapes.Add(new Group(entry.Sign.Shapes, new Point(1, y)));
            shapes.Add(new TextLine(new Point(9, lettering.BaselineAround(y + entry.Sign.Height / 2)), entry.Text, lettering));
            width = Math.Max(width, 11 + Typeface.Regular.Width(entry.Text, lettering.Size));
            y += KeyLine;
        }
        return sheet with { Width = width, Height = y, Shapes = shapes.ToImmutable() };
    }
}
