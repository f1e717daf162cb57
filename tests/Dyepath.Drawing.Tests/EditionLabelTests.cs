using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using UglyToad.PdfPig;

namespace Dyepath.Drawing.Tests;

/// <summary>Which edition of a pattern somebody holds, on its front and on every page.</summary>
public sealed class EditionLabelTests
{
    private static readonly Booklet Booklet = Starters.Booklet("demo");

    private static readonly Edition Second = Booklet.Edition with { Number = 2, Date = new DateOnly(2026, 12, 1) };

    [Fact]
    public void The_page_says_it_below_the_title()
    {
        var html = HtmlBooklet.Write(Booklet, Second, new Wording(Booklet, Second).Say, TestContext.Current.CancellationToken);
        Assert.Matches(new Regex("<h1[^>]*>.*</h1>(?s:.*)>Edition 2, 2026-12-01<(?s:.*)</header>"), html);
        Assert.DoesNotContain(
            "Edition", HtmlBooklet.Write(Booklet, Booklet.Edition, new Wording(Booklet, Booklet.Edition).Say, TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    /// <summary>Read by another program; a title that is too long for the foot is cut, the edition is not.</summary>
    [Theory]
    [InlineData("Tideline", TypeSize.Normal)]
    [InlineData("A tunic with a title that goes on and on until there is no room left for any of it at the foot of a page, however", TypeSize.Large)]
    public void Every_page_of_the_pdf_says_it(string title, TypeSize type)
    {
        var pages = Pages(Booklet with { Title = title }, Second, type);
        Assert.All(pages, page => Assert.Contains("Edition 2, 2026-12-01", page, StringComparison.Ordinal));
        Assert.All(Pages(Booklet with { Title = title }, Booklet.Edition, type), page => Assert.DoesNotContain("Edition", page, StringComparison.Ordinal));
    }

    private static string[] Pages(Booklet booklet, Edition edition, TypeSize type)
    {
        using var output = new MemoryStream();
        PdfBooklet.Write(booklet, edition, new Wording(booklet, edition).Say, new Print(PageSize.A4, type), output, cancel: TestContext.Current.CancellationToken);
        using var pdf = PdfDocument.Open(output.ToArray());
        return [.. pdf.GetPages().Select(p => string.Join(' ', p.GetWords().Select(w => w.Text)))];
    }
}
