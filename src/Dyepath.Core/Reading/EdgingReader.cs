using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>Follows the pick-up rule of every edging, size by size.</summary>
internal sealed partial class EdgingReader(ImmutableArray<string> sizes, List<string> wrong)
{
    public IEnumerable<ReadEdging> Read(ImmutableArray<TextPart> parts)
    {
        foreach (var part in parts.Where(p => p.Heading.Length > 0))
        {
            var heading = Heading().Match(part.Heading);
            var copies = heading.Groups["copies"].Success ? Whole(heading, "copies") : 1;
            for (var size = 0; size < sizes.Length; size++)
            {
                var lines = part.Lines.Select(l => SizeLists.For(l, size, sizes.Length)).ToArray();
                var pickUp = lines.Select(l => PickUp().Match(l)).FirstOrDefault(m => m.Success);
                var work = lines.Select(l => Rounds().Match(l)).FirstOrDefault(m => m.Success);
                var rules = Listed(lines).Where(l => Total().IsMatch(l))
                    .Select(l => Own(l, sizes[size])).OfType<string>().Select(InOneSize).ToArray();
                var other = rules.Length == 2 ? Led().Match(rules[1]) : Match.Empty;
                if (other.Success)
                    rules = rules[..1];
                if (pickUp is null || work is null || rules.Length != 1)
                {
                    wrong.Add($"{part.Heading}, size {sizes[size]}: {rules.Length} pick-up rules, or no numbers to hold them against");
                    continue;
                }
                var width = lines.Select(l => Width().Match(l)).FirstOrDefault(m => m.Success);
                yield return new ReadEdging(
                    heading.Groups["place"].Value, copies, sizes[size], Whole(pickUp, "n"), Whole(work, "n"), Follow(rules[0]),
                    Whole(Total().Match(rules[0]), "n"))
                {
                    Rule = rules[0],
                    OtherRule = other.Success ? other.Groups["rule"].Value : null,
                    Edge = width?.Groups["edge"].Value,
                    AtRest = width?.Groups["rest"].Value,
                    Stretched = width?.Groups["stretched"].Value,
                    Corners = (Counted(lines, Outer()), Counted(lines, Inner())),
                    LastCount = lines.Select(l => Last().Match(l)).FirstOrDefault(m => m.Success) is { } last ? Whole(last, "n") : null,
                    Elastic = lines.Select(l => Elastic().Match(l)).FirstOrDefault(m => m.Success)?.Groups["n"].Value,
                    Buttonholes = Buttonholes(lines, $"{part.Heading}, size {sizes[size]}"),
                };
            }
        }
    }

    /// <summary>Lists, their lines one after the other: each ends with how many stitches it makes.</summary>
    private static IEnumerable<string> Listed(string[] lines)
    {
        var list = new List<string>();
        foreach (var line in lines.Where(l => l.StartsWith("- ", StringComparison.Ordinal)))
        {
            list.Add(line[2..]);
            if (!line.EndsWith(" in all.", StringComparison.Ordinal))
                continue;
            yield return string.Join("; ", list);
            list.Clear();
        }
    }

    private ReadButtonholes? Buttonholes(string[] lines, string place)
    {
        var said = lines.Select(l => Holes().Match(l)).FirstOrDefault(m => m.Success);
        var worked = lines.Select(l => HoleRow().Match(l)).FirstOrDefault(m => m.Success);
        if (said is null && worked is null)
            return null;
        if (said is null || worked is null)
        {
            wrong.Add($"{place}: buttonholes are {(said is null ? "worked and not counted" : "counted and not worked")}");
            return null;
        }
        var further = !worked.Groups["skip"].Success ? 0 : worked.Groups["times"].Success ? Whole(worked, "times") : 1;
        return new ReadButtonholes(
            Whole(said, "n"), Whole(said, "row"), further + 1, Whole(worked, "row"),
            Whole(worked, "first") + (further == 0 ? 0 : further * (Whole(worked, "skip") + Whole(worked, "between"))) + Whole(worked, "lastSkip") + Whole(worked, "last"));
    }

    /// <summary>As many corners as are said, if each makes two stitches; none where nothing is said.</summary>
    private static int Counted(string[] lines, Regex said) =>
        lines.Select(l => said.Match(l)).FirstOrDefault(m => m.Success) is not { } match ? 0
        : (match.Groups["n"].Success ? Whole(match, "n") : 1) is var corners && 2 * corners == Whole(match, "each") ? corners : -1;

    /// <summary>The rule without its sizes; null where it is for others.</summary>
    private string? Own(string line, string size)
    {
        var colon = line.IndexOf(": ", StringComparison.Ordinal);
        var lead = line.StartsWith("Sizes ", StringComparison.Ordinal) ? "Sizes " : "Size ";
        var named = colon < 0 || !line.StartsWith(lead, StringComparison.Ordinal) ? [] : line[lead.Length..colon].Split(", ");
        if (named.Length == 0 || named.Any(n => !sizes.Contains(n)))
            return line;
        return named.Contains(size) ? line[(colon + 2)..] : null;
    }

    /// <summary>As it would be said for one size alone: a list's remainder of none is not said, and one place is not plural.</summary>
    private static string InOneSize(string rule) => LastOne().Replace(
        NoRest().Replace(rule, "").Replace(", then – in", ", then 0 in", StringComparison.Ordinal), "in the last 1 ${place}");

    private static int Follow(string rule)
    {
        var sum = 0;
        foreach (Match group in Group().Matches(rule))
        {
            var edges = group.Groups["where"].Value.Split(" and ").Length;
            sum += edges * (Whole(group, "stitches") * Whole(group, "times") + (group.Groups["rest"].Success ? Whole(group, "rest") : 0));
        }
        foreach (Match spread in Evenly().Matches(rule))
            sum += spread.Groups["where"].Value.Split(" and ").Length * Whole(spread, "stitches");
        foreach (Match extra in Extra().Matches(rule))
        {
            var corners = extra.Groups["corners"].Success ? Whole(extra, "corners") : 1;
            sum += (extra.Groups["what"].Value == "extra" ? 1 : -1) * Whole(extra, "n") * corners;
        }
        return sum;
    }

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<place>[^:(]+?)(?: \(work (?<copies>\d+)\))?:")]
    private static partial Regex Heading();

    [GeneratedRegex(@"^Pick up: (?<n>\d+) stitches in all(?:, \d+ on the other)?, as")]
    private static partial Regex PickUp();

    [GeneratedRegex(@"^Work: (?<n>\d+) (?:round|row)s?,")]
    private static partial Regex Rounds();

    [GeneratedRegex("^(?:Corners: Work what is extra at each of the (?<n>[0-9]+) corners into the last place before it, and mark the middle one of the stitches there|Outer corners: Mark the stitch picked up last before (?:each of the (?<n>[0-9]+) outer corners|the outer corner))\\. In every (?:round|row) of [sd]c (?:after the first|between the first and the last) work 3 [sd]c in it, so that the corner lies flat, and mark the middle one of them: (?<each>[0-9]+) stitches more each time\\.$")]
    private static partial Regex Outer();

    [GeneratedRegex("^Inner corners: Mark the stitch picked up last before (?:each of the (?<n>[0-9]+) inner corners|the inner corner)\\. In every (?:round|row) of [sd]c (?:after the first|between the first and the last) work [sd]c3tog over it and the stitches beside it, so that the corner lies flat, and mark that: (?<each>[0-9]+) stitches fewer each time\\.$")]
    private static partial Regex Inner();

    [GeneratedRegex("^Count: (?<n>[0-9]+) stitches in the last (?:round|row)\\.$")]
    private static partial Regex Last();

    [GeneratedRegex("^Width: The edge is (?<edge>.+) long; edged it is about (?<rest>.+) at rest and stretches to (?<stretched>.+)\\.$")]
    private static partial Regex Width();

    [GeneratedRegex("^Elastic to cut: About (?<n>.+), its overlap included\\.$")]
    private static partial Regex Elastic();

    [GeneratedRegex(@"^Buttonholes: (?<n>\d+) in the band of the [^,]+, in row (?<row>\d+)[,.]")]
    private static partial Regex Holes();

    [GeneratedRegex(@"^Row (?<row>\d+): Ch 1, [sd]c in each of the first (?<first>\d+) sts, (?:\* ch \d+, (?:skip|miss) (?<skip>\d+) sts, [sd]c in each of the next (?<between>\d+) sts; work from \* (?:once|(?<times>\d+) times in all); )?ch \d+, (?:skip|miss) (?<lastSkip>\d+) sts, [sd]c in each of the last (?<last>\d+) sts, turn\.")]
    private static partial Regex HoleRow();

    [GeneratedRegex(@"^(?:at the wearer's right|left front|right front|back), (?<rule>.+)$")]
    private static partial Regex Led();

    [GeneratedRegex(@"pick up .*[:;] (?<n>\d+) in all\.")]
    private static partial Regex Total();

    [GeneratedRegex(@"(?:^|; )(?<where>[^:;]+): pick up (?<stitches>\d+) in (?:each of the (?<times>\d+)|every \d+ (?:row ends|stitches), (?<times>\d+) times?)(?: (?:row ends?|stitch(?:es)?))?(?:, then (?<rest>\d+) in the last \d+)?")]
    private static partial Regex Group();

    [GeneratedRegex(@"(?:^|; )(?<where>[^:;]+): pick up (?<stitches>\d+) along the \d+ stitches and row ends, evenly spread")]
    private static partial Regex Evenly();

    [GeneratedRegex(", then – in the last – (row ends|stitches)")]
    private static partial Regex NoRest();

    [GeneratedRegex("in the last 1 (?:(?<place>row end)s|(?<place>stitch)es)")]
    private static partial Regex LastOne();

    [GeneratedRegex(@"; (?<n>\d+) (?<what>extra|fewer)(?: at each of the (?<corners>\d+) corners)?")]
    private static partial Regex Extra();
}
