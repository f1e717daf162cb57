namespace Dyepath.Workspace.Pattern;

/// <summary>A part of the booklet that takes the designer's own words and photos.</summary>
/// <param name="Place">Name in the document (<see cref="Core.Booklets.WordPlaces"/>).</param>
/// <param name="Name">As the page shows it.</param>
/// <param name="Section">Of the booklet, so that the view can go there.</param>
/// <param name="Hint">What stands there already, and what she may add.</param>
public sealed record BookletPlace(string Place, string Name, string Section, string Hint)
{
    /// <summary>In the order of the booklet.</summary>
    public static IReadOnlyList<BookletPlace> All { get; } =
    [
        new("cover", "On the cover", "cover", "Title, your name, the sizes and the garment as worn stand there. A photo takes the drawing's place; words stand below the sizes."),
        new("introduction", "About", "introduction", "Opens the booklet: what inspired it, how it wears, how hard it is."),
        new("materials", "Materials", "materials", "Yarn, balls by size, hook and notions are written for you. Add where to find the yarn, or what may stand in for it."),
        new("gauge", "Gauge", "gauge", "Your gauge and the yarn of twenty stitches are written for you. Add how you swatch."),
        new("notes", "Notes", "notes", "Direction, turns and knots are written for you. Add what a maker should know before she begins."),
        new("pieces", "Pieces", "pieces", "Every row is written for you. Your words stand before the first piece."),
        new("makingUp", "Making up", "making-up", "Blocking, seams and ends are written for you. Your words follow them."),
        new("care", "Care", "care", "Stand before the usual care and cautions."),
        new("closing", "Closing", "care", "The last words of the booklet: thanks, where to write to you, your terms of use."),
    ];

    /// <summary>Where the document has the designer's words.</summary>
    public string Words => $"words.{Place}";
}
