using System.Text;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;
using Dyepath.Drawing.Pdf;
using Dyepath.Drawing.Typography;
using PdfSharp.Drawing;

namespace Dyepath.Drawing.Tests;

public sealed class TypographyTests
{
    [Fact]
    public void Widths_agree_with_the_PDF_library()
    {
        var fonts = PdfFonts.Registered();
        using var graphics = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
        foreach (var face in new[] { Typeface.Regular, Typeface.BoldFace, Typeface.ItalicFace })
        {
            const string text = "Row 12 (RS): 104 (112, 120) sc, turn; 36¼ in, é, × and –.";
            var measured = graphics.MeasureString(text, fonts.Font(face, sign: false, 100)).Width;
            Assert.Equal(measured, face.Width(text, 100), 0.5);
        }
    }

    [Fact]
    public void Every_character_that_wording_uses_prints_as_itself()
    {
        const string used =
            "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 "
                + ".,;:!?()[]/+-−–—'‘’\"“”•·×±≈≤≥%°½¼¾⅛⅜⅝⅞⅓⅔←→↑↓↖↗↘↙☆✓⚠…éüñøåßçŁžΩжЯ\u00A0";
        foreach (var face in new[] { Typeface.Regular, Typeface.BoldFace, Typeface.ItalicFace })
            Assert.All(used.EnumerateRunes(), rune => Assert.True(face.Exists(rune), $"U+{rune.Value:X4} {rune}"));
    }

    [Fact]
    public void Characters_that_the_text_font_lacks_come_from_the_sign_font()
    {
        Assert.Equal([("a ", false), ("→", true), (" ½ ", false), ("⅛", true)], Typeface.Regular.Runs("a → ½ ⅛"));
    }

    [Fact]
    public void A_character_in_neither_font_is_replaced()
    {
        Assert.Equal([("\uFFFD", true)], Typeface.Regular.Runs("漢"));
        Assert.Equal([("ab", false)], Typeface.Regular.Runs("a\u200Bb"));
    }

    [Theory]
    [InlineData("ring \U0001F9F6", "ring \U0001F9F6")]
    [InlineData("a\u0000b\u0007", "a\uFFFDb\uFFFD")]
    [InlineData("\u202Eevil\u202C", "evil")]
    [InlineData("one\r\ntwo\nthree", "one two three")]
    [InlineData("\uFFFF", "\uFFFD")]
    public void Hostile_characters_are_replaced_or_dropped(string text, string expected) => Assert.Equal(expected, SafeText.OneLine(text));

    /// <remarks>Apart from the others: an attribute cannot hold half a character.</remarks>
    [Fact]
    public void Lone_surrogates_are_replaced()
    {
        Assert.Equal("a\uFFFDb", SafeText.OneLine("a\ud800b"));
        Assert.Equal("a\uFFFD", SafeText.OneLine("a\udc00"));
        Assert.Equal("\uFFFD\uFFFD", SafeText.OneLine("\udc00\ud800"));
    }

    [Fact]
    public void Markup_is_escaped() =>
        Assert.Equal("&lt;script&gt;alert(&#39;&amp;&quot;)&lt;/script&gt;", SafeText.Markup("<script>alert('&\")</script>"));

    [Fact]
    public void Any_string_makes_valid_XML() =>
        Gen.String[Gen.Char, 0, 40].Holds(
            text => System.Xml.Linq.XElement.Parse($"<a b=\"{SafeText.Markup(text)}\">{SafeText.Markup(text)}</a>"),
            seed: 63, cases: 500);

    [Fact]
    public void Wrapped_lines_keep_every_word_and_fit() =>
        Gen.Select(Gen.String[Gen.Char["abcWi 1½ "], 0, 80], Gen.Bool, Gen.Double[30, 300]).Holds(
            (text, strong, width) =>
            {
                var lines = TextWrap.Lines([new TextSpan(text, strong), new TextSpan(text, !strong)], width, 10);
                var said = string.Concat(lines.SelectMany(line => line).Select(span => span.Text));
                Assert.Equal(Spaceless(text + text), Spaceless(said));
                Assert.All(lines, line => Assert.True(TextWrap.Width(Trimmed(line), 10) <= width + 0.1));
                Assert.All(lines.SkipLast(1), line => Assert.EndsWith(" ", line[^1].Text, StringComparison.Ordinal));
            },
            seed: 64, cases: 300);

    [Fact]
    public void Words_are_wrapped_at_spaces() =>
        Assert.Equal(
            ["Work 61 ", "stitches a ", "row."],
            TextWrap.Lines([new TextSpan("Work 61 stitches a row.", false)], 55, 10).Select(line => line.Single().Text));

    private static IEnumerable<TextSpan> Trimmed(IReadOnlyList<TextSpan> line) =>
        line.Select((span, i) => i == line.Count - 1 ? span with { Text = span.Text.TrimEnd(' ') } : span);

    private static string Spaceless(string text) => text.Replace(" ", "", StringComparison.Ordinal);
}
