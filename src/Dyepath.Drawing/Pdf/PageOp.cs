using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pdf;

/// <summary>Roles of the structure tree (ISO 32000-1, 14.8.4).</summary>
internal enum Role
{
    Section,
    Title,
    Heading,
    Subheading,
    Paragraph,
    List,
    Item,
    ItemLabel,
    ItemBody,
    Table,
    TableCaption,
    Row,
    ColumnHeader,
    RowHeader,
    Cell,
    Contents,
    ContentsEntry,
    Figure,

    /// <summary>Not part of the text: lines, page numbers, repeated table heads.</summary>
    Artifact,
}

/// <summary>One step of writing pages, in points from the top left corner; elements may stay open over a page's end.</summary>
internal abstract record PageOp;

internal sealed record NewPage : PageOp;

/// <param name="Alternative">For figures only.</param>
/// <param name="Bounds">For figures only.</param>
internal sealed record Begin(Role Role, string Alternative = "", Box Bounds = default) : PageOp;

internal sealed record End : PageOp;

internal sealed record Words(double X, double Baseline, string Text, Typeface Face, double Size, Srgb Colour) : PageOp;

/// <param name="Scale">Points for a millimetre of the sheet.</param>
internal sealed record Draw(Sheet Sheet, double X, double Y, double Scale) : PageOp;

/// <summary>A photograph, as wide and high as its box.</summary>
internal sealed record Show(JpegPicture Picture, Box Box) : PageOp;

/// <summary>Names the place for contents, links and bookmarks.</summary>
internal sealed record Landmark(int Section, string Title) : PageOp;

/// <summary>Begins a link to a section; the words that follow, up to its end, are its text.</summary>
internal sealed record BeginLink(int Section, Box Bounds, string Alternative) : PageOp;

/// <summary>The number of the page on which a section begins, right-aligned.</summary>
internal sealed record PageNumber(int Section, double Right, double Baseline, double Size, Srgb Colour) : PageOp;
