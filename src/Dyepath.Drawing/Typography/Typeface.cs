using System.Text;

namespace Dyepath.Drawing.Typography;

/// <summary>A weight of the text font, with the sign font for what it lacks.</summary>
internal sealed class Typeface
{
    private static readonly FontFile Signs = FontFile.Embedded("DejaVuSans-Subset.ttf");

    private readonly FontFile _text;

    private Typeface(string family, bool bold, bool italic, string file)
    {
        Family = family;
        Bold = bold;
        Italic = italic;
        _text = FontFile.Embedded(file);
    }

    public const string SignFamily = "Dyepath Signs";

    public static Typeface Regular { get; } = new("Dyepath Text", false, false, "AtkinsonHyperlegible-Regular.ttf");

    public static Typeface BoldFace { get; } = new("Dyepath Text", true, false, "AtkinsonHyperlegible-Bold.ttf");

    public static Typeface ItalicFace { get; } = new("Dyepath Text", false, true, "AtkinsonHyperlegible-Italic.ttf");

    public string Family { get; }

    public bool Bold { get; }

    public bool Italic { get; }

    public byte[] Bytes => _text.Bytes;

    public static byte[] SignBytes => Signs.Bytes;

    public static Typeface Of(bool bold) => bold ? BoldFace : Regular;

    /// <summary>Width in the unit of <paramref name="size"/>, without kerning.</summary>
    public double Width(string text, double size)
    {
        var ems = 0.0;
        foreach (var character in Printable(text).EnumerateRunes())
            ems += (_text.Has(character) ? _text : Signs).Advance(character);
        return ems * size;
    }

    /// <summary>Splits what can be printed into runs of one font each.</summary>
    public IEnumerable<(string Text, bool Sign)> Runs(string text)
    {
        var printable = Printable(text);
        if (printable.EnumerateRunes().All(_text.Has))
            return printable.Length > 0 ? [(printable, false)] : [];
        return MixedRuns(printable);
    }

    private IEnumerable<(string Text, bool Sign)> MixedRuns(string printable)
    {
        var run = new StringBuilder();
        var sign = false;
        foreach (var character in printable.EnumerateRunes())
        {
            var needsSign = !_text.Has(character);
            if (needsSign != sign && run.Length > 0)
            {
                yield return (run.ToString(), sign);
                run.Clear();
            }
            sign = needsSign;
            run.Append(character);
        }
        if (run.Length > 0)
            yield return (run.ToString(), sign);
    }

    /// <summary>One line in which every character has a glyph; others become U+FFFD, soft hyphens and joiners nothing.</summary>
    private string Printable(string text)
    {
        var clean = SafeText.OneLine(text);
        if (clean.EnumerateRunes().All(Exists))
            return clean;
        var printable = new StringBuilder(clean.Length);
        foreach (var character in clean.EnumerateRunes())
        {
            if (character.Value is 0x00AD or (>= 0x200B and <= 0x200D) or 0x2060 or (>= 0xFE00 and <= 0xFE0F))
                continue;
            if (character.Value is 0x202F or 0x2009 or 0x2007)
                printable.Append('\u00A0');
            else
                printable.Append(Exists(character) ? character.ToString() : "\uFFFD");
        }
        return printable.ToString();
    }

    /// <summary>Whether a character prints as itself.</summary>
    public bool Exists(Rune character) => _text.Has(character) || Signs.Has(character);
}
