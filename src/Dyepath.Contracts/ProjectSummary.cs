namespace Dyepath.Contracts;

/// <summary>A project as it lies on the shelf.</summary>
/// <param name="Id">A GUID or 26 letters and digits.</param>
/// <param name="Name">The document's title, or <see cref="Untitled"/> where it cannot be read.</param>
/// <param name="UpdatedAt">When the text was last changed; in whole milliseconds.</param>
/// <param name="Etag">The text's ETag as in the header, quotes included; send it back as If-Match.</param>
/// <param name="Swatch">Missing while the document has no plan.</param>
public sealed record ProjectSummary(
    string Id, string Name, bool Archived, DateTimeOffset UpdatedAt, string Etag, SwatchPicture? Swatch)
{
    public const string Untitled = "Untitled";
}

/// <summary>A corner of the planned fabric for the shelf: where the base size's first pooled piece begins.</summary>
/// <param name="Colours">By section of the yarn, <c>#rrggbb</c>.</param>
/// <param name="Stitches">Cells across, 1 to <see cref="MostStitches"/>.</param>
/// <param name="Rows">Cells up, 1 to <see cref="MostRows"/>.</param>
/// <param name="Cells">Index of each cell's section, as one looks at it: the top row first, each row from the left. Base64 in JSON.</param>
public sealed record SwatchPicture(IReadOnlyList<string> Colours, int Stitches, int Rows, byte[] Cells)
{
    public const int MostStitches = 40;

    public const int MostRows = 30;
}
