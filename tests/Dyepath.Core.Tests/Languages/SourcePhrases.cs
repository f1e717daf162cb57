using System.Text;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Motifs;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Languages;

/// <summary>What the code can say, read out of it.</summary>
internal static partial class SourcePhrases
{
    /// <summary>Phrases as the source writes them out, with a hole for each thing in braces.</summary>
    public static IEnumerable<string> WrittenOut() =>
        from folder in new[] { "src/Dyepath.Core", "src/Dyepath.Drawing" }
        from file in Directory.EnumerateFiles(RepositoryFile.Find(folder), "*.cs", SearchOption.AllDirectories)
        where !file.Contains("/obj/", StringComparison.Ordinal) && !file.EndsWith("Phrase.cs", StringComparison.Ordinal)
        from phrase in Phrases(File.ReadAllText(file))
        select phrase;

    /// <summary>Names and rules that sentences are filled with.</summary>
    public static IEnumerable<string> Names() =>
    [
        .. Enum.GetValues<EdgeId>().Select(EdgeWords.Of),
        .. Enum.GetValues<EdgeCorner>().Select(EdgeWords.Of),
        .. Enum.GetValues<PieceId>().Select(PlaceNames.Of),
        .. Enum.GetValues<OpeningId>().Select(PlaceNames.Of),
        .. Enum.GetValues<SeamId>().SelectMany(seam => new[] { SeamWords.One(seam), SeamWords.Together(seam) }),
        .. Enum.GetValues<EdgingPlace>().Select(PlaceWords.Of),
        .. Enum.GetValues<OpenEnd>().Select(PlaceWords.At),
        .. Enum.GetValues<MotifKind>().Select(MotifWords.Of),
        .. SafetyRules.All.SelectMany(rule => rule.Rule is null
            ? new[] { Wording.Capital(rule.Feature), rule.Limit } : [Wording.Capital(rule.Feature), rule.Scope, rule.Limit]),
        SafetyRules.Disclaimer,
    ];

    private static IEnumerable<string> Phrases(string source)
    {
        foreach (Match begin in Begin().Matches(source))
        {
            var filled = begin.Value.Contains('$', StringComparison.Ordinal);
            var (said, depth) = (new StringBuilder(), 0);
            for (var i = begin.Index + begin.Length; depth > 0 || source[i] != '"'; i++)
            {
                if (filled && source[i] == '{' && depth++ == 0)
                    said.Append(LanguageTests.Hole);
                else if (filled && source[i] == '}')
                    depth--;
                else if (depth == 0)
                    said.Append(source[i]);
            }
            yield return said.ToString();
        }
    }

    [GeneratedRegex("""Phrase\.(?:Of|Plain)\(\s*\$?"(?!")""")]
    private static partial Regex Begin();
}
