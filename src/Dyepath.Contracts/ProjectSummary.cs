using System.Text.Json;

namespace Dyepath.Contracts;

/// <summary>A project as it lies on the shelf.</summary>
/// <param name="Id">A GUID or 26 letters and digits.</param>
/// <param name="Name">The document's title, or <see cref="Untitled"/> where it cannot be read.</param>
/// <param name="Archived">Off the shelf; it can be put back.</param>
/// <param name="UpdatedAt">When the text was last changed; in whole milliseconds.</param>
/// <param name="Etag">The text's ETag as in the header, quotes included; send it back as If-Match.</param>
/// <param name="Made">Another one than before: the store lost the project meanwhile, and got it again from a device or a backup.</param>
/// <param name="Swatch">As the client drew it last; missing until it has drawn one.</param>
public sealed record ProjectSummary(
    string Id, string Name, bool Archived, DateTimeOffset UpdatedAt, string Etag, SwatchPicture? Swatch, string? Made = null)
{
    /// <summary>What a project without a title is called.</summary>
    public const string Untitled = "Untitled";
}

/// <summary>A corner of the planned fabric as worn, small enough for a shelf.</summary>
/// <param name="Colours">By section of the yarn, <c>#rrggbb</c>.</param>
/// <param name="Stitches">Cells across, 1 to <see cref="MostStitches"/>.</param>
/// <param name="Rows">Cells up, 1 to <see cref="MostRows"/>.</param>
/// <param name="Cells">
/// Index of each cell's section, as one looks at it: the top row first, each row from the left; 255 where there is no stitch. Base64 in
/// JSON.
/// </param>
public sealed record SwatchPicture(IReadOnlyList<string> Colours, int Stitches, int Rows, byte[] Cells)
{
    /// <summary>Cells across.</summary>
    public const int MostStitches = 40;

    /// <summary>Cells up.</summary>
    public const int MostRows = 30;

    /// <summary>Colours, one a section.</summary>
    public const int MostColours = 64;

    /// <summary>Where there is no stitch.</summary>
    public const byte Empty = 255;

    /// <summary>The picture, as JSON; null where it is none that can be drawn.</summary>
    public static SwatchPicture? Read(ReadOnlySpan<byte> utf8)
    {
        try
        {
            var picture = JsonSerializer.Deserialize(utf8, ContractsJson.Default.SwatchPicture);
            return picture?.IsDrawable() == true ? picture : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Whether it can be drawn: whoever sends a picture may send anything.</summary>
    public bool IsDrawable() =>
        Colours is { Count: > 0 and <= MostColours } && Colours.All(IsColour)
        && Stitches is >= 1 and <= MostStitches && Rows is >= 1 and <= MostRows
        && Cells?.Length == Stitches * Rows && Cells.All(cell => cell == Empty || cell < Colours.Count);

    private static bool IsColour(string? text) => text is ['#', .. { Length: 6 } digits] && digits.All(char.IsAsciiHexDigit);
}
