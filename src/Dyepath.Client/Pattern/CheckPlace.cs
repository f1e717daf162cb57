using Dyepath.Core.Instructions;

namespace Dyepath.Client.Pattern;

/// <summary>Finds what a finding of the technical check speaks of, so that it can be shown.</summary>
public static class CheckPlace
{
    private const string InText = "pattern: ";

    /// <summary>Parts of the plan by the section that prints them; a part that comes first decides.</summary>
    private static readonly (string Part, string Section)[] Parts =
    [
        (".edgings", "edgings"), (".yarn", "materials"), (".seams", "making-up"), (".pieces", "pieces"), (".target", "sizes"), (".finished", "sizes"),
    ];

    /// <param name="place">Of a finding of <see cref="Core.Instructions.Reading.PatternCheck"/>.</param>
    /// <returns>Id of the section of the booklet, or null where the finding speaks of none.</returns>
    public static string? SectionOf(string place, Booklet booklet)
    {
        ArgumentNullException.ThrowIfNull(booklet);
        if (place.StartsWith(InText, StringComparison.Ordinal))
        {
            var said = place[InText.Length..];
            var titled = booklet.Sections.FirstOrDefault(section => Enum.GetValues<Terms>().Any(terms => said.StartsWith(
                new Wording(booklet, booklet.Edition with { Terms = terms }).Text(section.Title), StringComparison.OrdinalIgnoreCase)));
            return titled?.Id ?? (said.StartsWith("Chart", StringComparison.OrdinalIgnoreCase) ? "charts" : "pieces");
        }
        if (place.StartsWith("sizes.", StringComparison.Ordinal))
            return Parts.FirstOrDefault(p => place.Contains(p.Part, StringComparison.Ordinal)).Section ?? "sizes";
        return place is "yarnPerUnit" or "stitchWidth" or "rowHeight" ? "gauge" : null;
    }

    /// <summary>The place of the document that such a number comes from, where it is one; the others come from many.</summary>
    public static string? DocumentPlaceOf(string place) => place switch
    {
        "yarnPerUnit" => "fabric.swatch.yarnUsed",
        "stitchWidth" or "rowHeight" => "fabric.swatch.worked",
        _ => null,
    };
}
