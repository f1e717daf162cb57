using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pdf;

/// <summary>Breaks words into lines at spaces; a word wider than the line is cut.</summary>
internal static class TextWrap
{
    /// <returns>At least one line. Each but the last ends with a space, which parts the words for who listens.</returns>
    public static ImmutableArray<ImmutableArray<TextSpan>> Lines(ImmutableArray<TextSpan> spans, double width, double size)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<TextSpan>>();
        var line = new List<TextSpan>();
        var used = 0.0;
        foreach (var word in Words(spans).SelectMany(word => Cut(word, width, size)))
        {
            var wide = Width(word, size);
            var space = line.Count == 0 ? 0 : Width([new TextSpan(" ", line[^1].Strong)], size);
            if (line.Count > 0 && used + space + wide > width + 0.01)
            {
                Add(line, new TextSpan(" ", line[^1].Strong));
                lines.Add([.. line]);
                line.Clear();
                (used, space) = (0, 0);
            }
            if (line.Count > 0)
                Add(line, new TextSpan(" ", line[^1].Strong));
            foreach (var piece in word)
                Add(line, piece);
            used += space + wide;
        }
        lines.Add([.. line]);
        return lines.ToImmutable();
    }

    public static double Width(IEnumerable<TextSpan> spans, double size) =>
        spans.Sum(span => Typeface.Of(span.Strong).Width(span.Text, size));

    /// <summary>Width of the longest word.</summary>
    public static double LongestWord(ImmutableArray<TextSpan> spans, double size) =>
        Words(spans).Select(word => Width(word, size)).DefaultIfEmpty(0).Max();

    private static IEnumerable<List<TextSpan>> Words(ImmutableArray<TextSpan> spans)
    {
        var word = new List<TextSpan>();
        foreach (var span in spans)
        {
            var parts = SafeText.OneLine(span.Text).Split(' ');
            for (var i = 0; i < parts.Length; i++)
            {
                if (i > 0 && word.Count > 0)
                {
                    yield return word;
                    word = [];
                }
                if (parts[i].Length > 0)
                    word.Add(new TextSpan(parts[i], span.Strong));
            }
        }
        if (word.Count > 0)
            yield return word;
    }

    private static IEnumerable<List<TextSpan>> Cut(List<TextSpan> word, double width, double size)
    {
        if (Width(word, size) <= width)
        {
            yield return word;
            yield break;
        }
        var piece = new List<TextSpan>();
        var used = 0.0;
        foreach (var (character, strong) in word.SelectMany(span => span.Text.EnumerateRunes().Select(rune => (Rune: rune, span.Strong))))
        {
            var wide = Typeface.Of(strong).Width(character.ToString(), size);
            if (used + wide > width && piece.Count > 0)
            {
                yield return piece;
                (piece, used) = ([], 0);
            }
            Add(piece, new TextSpan(character.ToString(), strong));
            used += wide;
        }
        yield return piece;
    }

    private static void Add(List<TextSpan> line, TextSpan span)
    {
        if (line.Count > 0 && line[^1].Strong == span.Strong)
            line[^1] = new TextSpan(line[^1].Text + span.Text, span.Strong);
        else
            line.Add(span);
    }
}
