using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;

namespace Dyepath.Workspace.Pattern;

/// <summary>Finds what a finding of the technical check speaks of, so that it can be shown.</summary>
public static class CheckPlace
{
    private const string InText = "pattern: ";

    /// <summary>Parts of the plan by the section that prints them; a part that comes first decides.</summary>
    private static readonly (string Part, string Section)[] Parts =
    [
        (".edgings", "edgings"), (".yarn", "materials"), (".seams", "making-up"), (".pieces", "pieces"), (".target", "sizes"), (".finished", "sizes"),
    ];

    /// <param name="finding">Of <see cref="Core.Reading.PatternCheck"/>.</param>
    /// <returns>Id of the section of the booklet, or null where the finding speaks of none.</returns>
    public static string? SectionOf(Finding finding, Booklet booklet)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(booklet);
        var place = finding.Place;
        if (place.StartsWith(InText, StringComparison.Ordinal))
            return OfText(place[InText.Length..], booklet);
        // The text contradicts itself: it is told by the heading that it stands under.
        if (place == "pattern")
            return Sections(booklet).FirstOrDefault(s => s.Headings.Any(h => finding.Text.StartsWith(h, StringComparison.Ordinal))).Id;
        if (place.StartsWith("sizes.", StringComparison.Ordinal))
            return Parts.FirstOrDefault(p => place.Contains(p.Part, StringComparison.Ordinal)).Section ?? "sizes";
        return place is "yarnPerUnit" or "stitchWidth" or "rowHeight" ? "gauge" : null;
    }

    private static string OfText(string place, Booklet booklet)
    {
        var titled = booklet.Sections.FirstOrDefault(section => Enum.GetValues<Terms>().Any(terms => place.StartsWith(
            new Wording(booklet, booklet.Edition with { Terms = terms, Language = Language.English }).Text(section.Title),
            StringComparison.OrdinalIgnoreCase)));
        return titled?.Id
            ?? (place.StartsWith("Chart", StringComparison.Ordinal) ? "charts"
            : Enum.GetValues<EdgingPlace>().Any(edge => place.EndsWith($", {PlaceWords.Of(edge)}", StringComparison.Ordinal)) ? "edgings"
            : "pieces");
    }

    private static IEnumerable<(string Id, string[] Headings)> Sections(Booklet booklet)
    {
        var wording = new Wording(booklet, booklet.Edition with { Size = null, Language = Language.English });
        return booklet.For(booklet.Edition with { Size = null, Language = Language.English }).Sections.Select(
            s => (s.Id, s.Blocks.OfType<Subheading>().Select(h => wording.Text(h.Text)).ToArray()));
    }

    /// <summary>The place of the document that such a number comes from, where it is one; the others come from many.</summary>
    public static string? DocumentPlaceOf(string place) => place switch
    {
        "yarnPerUnit" => "fabric.swatch.yarnUsed",
        "stitchWidth" or "rowHeight" => "fabric.swatch.worked",
        _ => null,
    };
}
