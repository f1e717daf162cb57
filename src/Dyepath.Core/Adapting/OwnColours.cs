using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Colours;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>What a pattern says of its own colours, for a yarn that has others.</summary>
internal static class OwnColours
{
    private static readonly Regex Sentences = new(@"(?<=[.!?…])\s+", RegexOptions.CultureInvariant);

    /// <summary>
    /// Nothing asks for a colour of the designer's that the reader's yarn has not: a companion yarn that is called by such a colour, or
    /// dyed as one, takes the nearest of hers, and a sentence of the designer's that names one is left out.
    /// </summary>
    /// <param name="pattern">The designer's document.</param>
    /// <param name="own">The same with the reader's sections.</param>
    public static Project Of(Project pattern, Project own)
    {
        var lacking = Lacking(pattern, own);
        if (lacking.IsEmpty)
            return own;
        return own with
        {
            Companion = own.Companion is { } companion ? Matching(companion, lacking, own.Yarn.Sections) : null,
            Words = own.Words.Select(w => KeyValuePair.Create(w.Key, Kept(w.Value))).Where(w => w.Value.Length > 0)
                .ToImmutableSortedDictionary(own.Words.KeyComparer),
        };

        string Kept(string words) => string.Join(' ', Sentences.Split(words).Where(s => !NamesOne(s, lacking)));
    }

    /// <summary>The sentences that are left out, in the order of the booklet.</summary>
    public static ImmutableArray<string> LeftOut(Project pattern, Project own) =>
        Lacking(pattern, own) is { IsEmpty: false } lacking
            ? [.. pattern.Words.Values.SelectMany(text => Sentences.Split(text)).Where(s => NamesOne(s, lacking))] : [];

    private static ImmutableArray<YarnSection> Lacking(Project pattern, Project own) =>
        [.. pattern.Yarn.Sections.Where(s => own.Yarn.Sections.All(o => o.Name != s.Name)).DistinctBy(s => s.Name)];

    private static CompanionYarn Matching(CompanionYarn companion, ImmutableArray<YarnSection> lacking, ImmutableArray<YarnSection> own)
    {
        if (!NamesOne(companion.Name, lacking) && lacking.All(s => s.Colour != companion.Colour))
            return companion;
        var nearest = own.MinBy(s => LookAlikes.Difference(s.Colour, companion.Colour, Viewing.Normal))!;
        return companion with { Name = nearest.Name, Colour = nearest.Colour };
    }

    private static bool NamesOne(string sentence, ImmutableArray<YarnSection> sections) => sections.Any(s =>
        Regex.IsMatch(sentence, $@"(?<!\w){Regex.Escape(s.Name)}(?!\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant));
}
