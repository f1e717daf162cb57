using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Html;

namespace Dyepath.Drawing;

/// <summary>The booklet as one page of HTML that loads nothing else and runs no script.</summary>
public static class HtmlBooklet
{
    /// <returns>A whole document; the same bytes for the same booklet and edition.</returns>
    /// <exception cref="ArgumentException">A picture or table contradicts itself.</exception>
    /// <exception cref="TooMuchWorkException">More charts than <see cref="Core.Instructions.BookletSize"/> allows.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static string Write(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, CancellationToken cancel = default)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        Write(booklet, edition, say, text, cancel);
        return text.ToString();
    }

    /// <summary>The same for a screen alone: without what only a printed page shows, about half as long.</summary>
    /// <inheritdoc cref="Write(Booklet, Edition, Func{Phrase, ImmutableArray{TextSpan}}, CancellationToken)"/>
    public static string OnScreen(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, CancellationToken cancel = default)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        Write(booklet, edition, say, text, new Effort(cancel: cancel), prints: false);
        return text.ToString();
    }

    /// <summary>The same, written as it is made.</summary>
    /// <param name="output">What was written before an exception stays there.</param>
    /// <inheritdoc cref="Write(Booklet, Edition, Func{Phrase, ImmutableArray{TextSpan}}, CancellationToken)" path="/exception"/>
    public static void Write(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, TextWriter output,
        CancellationToken cancel = default) =>
        Write(booklet, edition, say, output, new Effort(cancel: cancel));

    internal static void Write(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, TextWriter output, Effort effort, bool prints = true)
    {
        ArgumentNullException.ThrowIfNull(booklet);
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(say);
        ArgumentNullException.ThrowIfNull(output);
        // Also refuses what is too large; a page for all sizes tells their blocks apart.
        var sized = BookletParts.Sized(booklet, edition);
        var reader = new Reader(edition, say, effort);
        var choice = new SizeChoice(booklet, reader);
        var html = new HtmlText(output);
        html.Raw(string.Create(CultureInfo.InvariantCulture, $"<!doctype html>\n<html lang=\"{reader.Language}\">\n<head>\n<meta charset=\"utf-8\">\n"));
        html.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n");
        html.Element("title", booklet.Title).Raw("\n<style>\n").Raw(Style()).Raw("</style>\n<style>\n").Raw(choice.Rules()).Raw("</style>\n</head>\n<body>\n");
        html.Raw("<a class=\"skip\" href=\"#pattern\">").Text(reader.Text("Skip to the pattern")).Raw("</a>\n<div class=\"page\">\n");
        new HtmlPage(html, choice.IsOffered ? booklet : sized, reader, choice, prints).Write();
        html.Raw("</div>\n</body>\n</html>\n");
    }

    private static string Style()
    {
        using var stream = typeof(HtmlBooklet).Assembly.GetManifestResourceStream("booklet.css")
            ?? throw new InvalidOperationException("booklet.css is not embedded.");
        using var text = new StreamReader(stream);
        return text.ReadToEnd();
    }
}
