using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>A picture as drawing lists, in reading order, and the key to its signs as text beside them.</summary>
internal sealed record DrawnPicture(ImmutableArray<Sheet> Sheets, ImmutableArray<KeyEntry> Key);

internal sealed record KeyEntry(Sheet Sign, string Text);

/// <summary>Room for one sheet, in millimetres.</summary>
/// <param name="SmallestCell">Shortest side of a chart's cell that takes a legible symbol.</param>
internal readonly record struct Room(double Width, double Height, double SmallestCell = 2.7)
{
    /// <summary>For screens, where a picture may be as tall as it needs.</summary>
    public static Room Screen { get; } = new(165, double.PositiveInfinity);

    public bool IsPaged => !double.IsPositiveInfinity(Height);
}

internal static class PictureDrawing
{
    /// <param name="title">Name of the picture; sheets of a divided one add their part to it.</param>
    /// <param name="description">What a sighted person sees.</param>
    public static DrawnPicture Draw(Picture picture, string title, string description, Reader reader, Room room) => picture switch
    {
        ColourChart chart => ColourChartDrawing.Draw(chart, title, description, reader, room),
        Schematic schematic => SchematicDrawing.Draw(schematic, title, description, reader, room),
        YarnRuler ruler => YarnRulerDrawing.Draw(ruler, title, description, room),
        SymbolChart symbols => SymbolChartDrawing.Draw(symbols, title, description, reader, room),
        _ => throw new ArgumentOutOfRangeException(nameof(picture), picture, "No drawing for this kind of picture."),
    };
}
