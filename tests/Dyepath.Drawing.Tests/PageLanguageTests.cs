using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Drawing;

namespace Dyepath.Drawing.Tests;

/// <summary>The words of pages, pictures and the listing are in the catalogue as well.</summary>
public sealed partial class PageLanguageTests
{
    public static TheoryData<Language> Languages => [.. Enum.GetValues<Language>().Where(l => l != Language.English)];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_word_of_pages_and_pictures_has_an_entry(Language language)
    {
        var missing = new SortedSet<string>(StringComparer.Ordinal);
        var demo = ProjectReader.Read(DemoProject.Utf8).Project!;
        foreach (var size in new[] { null, "M" })
        {
            // The designer's own words are in her own language.
            var project = demo with { Words = demo.Words.Clear(), Edition = demo.Edition with { Language = language, Size = size } };
            var plan = GarmentPlanner.Plan(project).Plan!;
            var booklet = PatternWriter.Write(plan);
            var wording = new Wording(booklet.Sizes, booklet.Edition, key => missing.Add(key));
            var html = HtmlBooklet.Write(booklet, booklet.Edition, wording.Say);
            using var pdf = new MemoryStream();
            PdfBooklet.Write(booklet, booklet.Edition, wording.Say, new Print(PageSize.A4, TypeSize.Large), pdf);
            Assert.Empty(missing);
            Assert.Contains($"<html lang=\"{LanguageTags.Of(language, Terms.Us)}\"", html, StringComparison.Ordinal);
            // What a choice of size says is made by the page itself.
            foreach (var words in new[] { " The ", " the ", "stitches", "Size ", "Sizes ", "Contents" })
                Assert.DoesNotContain(words, Seen(html), StringComparison.Ordinal);
            Assert.DoesNotContain(" the ", ListingSheet.Text(plan, booklet), StringComparison.Ordinal);
        }
    }

    /// <summary>Without marks of the page, but for what they say to a screen reader.</summary>
    private static string Seen(string html)
    {
        var body = html[html.IndexOf("<body", StringComparison.Ordinal)..];
        return $"{Mark().Replace(body, " ")} {string.Join(' ', Said().Matches(body).Select(m => m.Value))}";
    }

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Mark();

    [GeneratedRegex("(?:aria-label|alt)=\"[^\"]*\"")]
    private static partial Regex Said();
}
