using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>A booklet's text as somebody hands it out, line by line against what its document writes.</summary>
internal static class DeliveredText
{
    /// <summary>Lines in which a moved one is looked for.</summary>
    private const int Window = 400;

    /// <summary>The edition that the text is, as far as its lines tell: language, terms, units, hand and size.</summary>
    public static Edition EditionOf(Plan plan, Booklet booklet, string text, Effort effort)
    {
        var lines = Lines(text).ToHashSet(StringComparer.Ordinal);
        var own = plan.Project.Edition;
        IEnumerable<string?> sizes =
        [
            null, .. plan.Sizes.Select(s => s.Name).Where(name => lines.Any(l => l.EndsWith($": {name}", StringComparison.Ordinal))),
        ];
        var editions =
            from language in Enum.GetValues<Language>()
            from terms in language == Language.English ? Enum.GetValues<Terms>() : [own.Terms]
            from units in Enum.GetValues<Units>()
            from hand in Enum.GetValues<Hand>()
            from size in sizes
            select own with { Terms = terms, Units = units, Hand = hand, Size = size, Language = language };
        return editions.Prepend(own).MaxBy(edition =>
        {
            var written = TextBooklet.Write(booklet, edition);
            effort.Spend(written.Length);
            return Lines(written).Count(lines.Contains);
        })!;
    }

    /// <summary>Each line that is missing, added or otherwise, under the section that it stands in.</summary>
    public static IEnumerable<Finding> Compare(string written, string text)
    {
        var (theirs, ours) = (Sectioned(text), Sectioned(written));
        var (i, j) = (0, 0);
        while (i < ours.Length || j < theirs.Length)
        {
            if (i < ours.Length && j < theirs.Length && ours[i].Line == theirs[j].Line)
            {
                (i, j) = (i + 1, j + 1);
                continue;
            }
            var (missing, added) = Apart(ours, i, theirs, j);
            for (var n = 0; n < Math.Max(missing, added); n++)
            {
                var (our, their) = (n < missing ? ours[i + n] : default, n < added ? theirs[j + n] : default);
                var place = $"text: {(our.Line is not null ? our.Section : their.Section)}";
                yield return new Finding(FindingLevel.Fault, place, (our.Line, their.Line) switch
                {
                    ({ } was, null) => $"“{was}” is missing",
                    (null, { } now) => $"“{now}” is not of this pattern",
                    var (was, now) => $"“{now}” stands where the pattern has “{was}”",
                });
            }
            (i, j) = (i + missing, j + added);
        }
    }

    /// <summary>How many lines of either are passed until both go on alike.</summary>
    private static (int Missing, int Added) Apart(
        (string Section, string Line)[] ours, int i, (string Section, string Line)[] theirs, int j)
    {
        for (var sum = 1; sum < Window; sum++)
        {
            for (var missing = 0; missing <= sum; missing++)
            {
                var added = sum - missing;
                if (i + missing < ours.Length && j + added < theirs.Length && ours[i + missing].Line == theirs[j + added].Line)
                    return (missing, added);
            }
        }
        return (ours.Length - i, theirs.Length - j);
    }

    /// <summary>Whole lines and rows of tables, without wrapping and padding.</summary>
    private static (string Section, string Line)[] Sectioned(string text) =>
    [
        .. from section in BookletText.Sections(text)
        from part in section.Parts
        from line in part.Heading.Length == 0
            ? [section.Title, .. Of(part)]
            : Of(part).Prepend(part.Heading)
        select (section.Title, line),
    ];

    private static IEnumerable<string> Of(TextPart part) =>
        part.Lines.Concat(part.Tables.SelectMany(t => t.Rows.Prepend(t.Head)).Select(row => string.Join(" | ", row)));

    private static IEnumerable<string> Lines(string text) => Sectioned(text).Select(l => l.Line);
}
