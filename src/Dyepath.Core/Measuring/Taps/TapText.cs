using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>What is wrong at one place of a text of taps.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">Character within the line, from 1.</param>
/// <param name="Text">What stands there, and what to do.</param>
public sealed record TapFault(int Line, int Column, string Text);

/// <summary>
/// Taps written as text: a colour's word or letter for each stitch, between them blanks, commas or line ends; <c>3 teal</c> for three
/// of them;
/// <c>|</c> or an empty line ends a row; from <c>#</c> on a line is a comment.
/// </summary>
public static class TapText
{
    /// <summary>Largest text, in bytes.</summary>
    public const int MostBytes = 200_000;

    /// <summary>Faults told at most; a text with more is another kind of file.</summary>
    private const int MostFaults = 20;

    /// <summary>Stitches that one number may stand for.</summary>
    private static readonly CountBounds Times = new(1, 500, "taps");

    /// <summary>The taps, and all faults; with any of these the taps are not to be used.</summary>
    /// <param name="utf8">UTF-8 with or without byte order mark.</param>
    public static (TappedStitches Taps, ImmutableArray<TapFault> Faults) Read(ReadOnlySpan<byte> utf8)
    {
        var taps = new TappedStitches();
        if (utf8.Length > MostBytes)
            return (taps, [new(1, 1, $"The text is larger than {MostBytes:N0} bytes. Leave out rows: a few hundred stitches say all there is to say.")]);
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(utf8).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return (taps, [new(1, 1, "It has bytes that are not UTF-8; save it as plain text in the encoding UTF-8.")]);
        }
        return (taps, new Reader(taps).Read(text));
    }

    private sealed class Reader(TappedStitches taps)
    {
        private readonly ImmutableArray<TapFault>.Builder _faults = ImmutableArray.CreateBuilder<TapFault>();
        private (int Times, int Line, int Column)? _number;

        public ImmutableArray<TapFault> Read(string text)
        {
            var lines = text.ReplaceLineEndings("\n").Split('\n');
            for (var line = 0; line < lines.Length && _faults.Count < MostFaults; line++)
            {
                if (string.IsNullOrWhiteSpace(lines[line]))
                    EndRow();
                else
                    ReadLine(lines[line], line + 1);
            }
            EndNumber();
            if (_faults.Count == 0 && taps.Count == 0)
                _faults.Add(new(1, 1, "There is no tap. Write the colour of each stitch as you work it: teal teal sand …"));
            return _faults.ToImmutable();
        }

        private void ReadLine(string line, int number)
        {
            for (var at = 0; at < line.Length && _faults.Count < MostFaults;)
            {
                if (line[at] == '#')
                    return;
                if (line[at] == '|')
                {
                    EndRow();
                    at++;
                }
                else if (line[at] == ',' || char.IsWhiteSpace(line[at]))
                {
                    at++;
                }
                else
                {
                    var end = at;
                    while (end < line.Length && line[end] is not (',' or '|' or '#') && !char.IsWhiteSpace(line[end]))
                        end++;
                    Word(line[at..end], number, at + 1);
                    at = end;
                }
            }
        }

        private void Word(string word, int line, int column)
        {
            if (char.IsAsciiDigit(word[0]))
            {
                EndNumber();
                if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var times) && Times.Holds(times))
                    _number = (times, line, column);
                else
                    _faults.Add(new(line, column, $"{Shown(word)} is no number of taps. Write {Times.Smallest} to {Times.Largest} before a colour, such as 3 teal."));
                return;
            }
            if (!word.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '\'') || word.Length > TappedStitches.LongestName)
            {
                _faults.Add(new(line, column,
                    $"{Shown(word)} is no colour. Write a word or a letter of at most {TappedStitches.LongestName} characters; two words become one with a hyphen, such as dark-teal."));
                _number = null;
                return;
            }
            var more = _number?.Times ?? 1;
            _number = null;
            if (taps.Count + more > TappedStitches.Counts.Largest)
            {
                _faults.Add(new(line, column, $"From here on there are more than {TappedStitches.Counts.Largest} taps. Leave out rows: a few hundred stitches say all there is to say."));
            }
            else if (taps.Colours.Count == TappedStitches.MostColours && !taps.Colours.Contains(word, StringComparer.OrdinalIgnoreCase))
            {
                _faults.Add(new(line, column, $"{Shown(word)} is colour {TappedStitches.MostColours + 1}; at most {TappedStitches.MostColours} can be told apart. Look for words that are mistyped."));
            }
            else
            {
                for (var i = 0; i < more; i++)
                    taps.Tap(word);
            }
        }

        private void EndRow()
        {
            EndNumber();
            taps.EndRow();
        }

        /// <summary>A number has a colour behind it.</summary>
        private void EndNumber()
        {
            if (_number is { } number)
                _faults.Add(new(number.Line, number.Column, $"{number.Times} has no colour behind it. Write which, such as {number.Times} teal."));
            _number = null;
        }

        private static string Shown(string word) => $"\"{(word.Length > 30 ? word[..29] + "…" : word)}\"";
    }
}
