using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>Does what a written pick-up says, knowing nothing of how it was made.</summary>
internal static partial class RuleFollower
{
    /// <summary>Stitches picked up, and places passed, by one who does what the sentence says.</summary>
    public static (int Stitches, int Places) Follow(string rule)
    {
        var (stitches, places) = (0, 0);
        foreach (var part in rule[..Math.Max(rule.LastIndexOf(": ", StringComparison.Ordinal), rule.LastIndexOf("; ", StringComparison.Ordinal))].Split("; "))
        {
            // Stretches that share a rule are named together: "front and back".
            var edges = part.Contains(':', StringComparison.Ordinal)
                ? part[..part.IndexOf(':', StringComparison.Ordinal)].Split(" and ").Length
                : 1;
            if (EachOf().Match(part) is { Success: true } each)
                (stitches, places) = (stitches + edges * Number(each, 1) * Number(each, 2), places + edges * Number(each, 2));
            if (Along().Match(part) is { Success: true } along)
                (stitches, places) = (stitches + edges * Number(along, 1), places + edges * Number(along, 2));
            if (Groups().Match(part) is { Success: true } groups)
                (stitches, places) = (
                    stitches + edges * Number(groups, 1) * Number(groups, 3), places + edges * Number(groups, 2) * Number(groups, 3));
            if (Rest().Match(part) is { Success: true } rest)
                (stitches, places) = (stitches + edges * Number(rest, 1), places + edges * Number(rest, 2));
            if (Corners().Match(part) is { Success: true } corners)
                stitches += Sign(corners) * Number(corners, 1) * Number(corners, 3);
            else if (Extra().Match(part) is { Success: true } extra)
                stitches += Sign(extra) * Number(extra, 1);
        }
        return (stitches, places);
    }

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    private static int Sign(Match match) => match.Groups[2].Value == "extra" ? 1 : -1;

    [GeneratedRegex(@"pick up (\d+) in each of the (\d+)")]
    private static partial Regex EachOf();

    [GeneratedRegex(@"pick up (\d+) along the (\d+) stitches and row ends, evenly spread")]
    private static partial Regex Along();

    [GeneratedRegex(@"pick up (\d+) in every (\d+) (?:row ends|stitches), (\d+) times?")]
    private static partial Regex Groups();

    [GeneratedRegex(@"then (\d+) in the last (\d+)")]
    private static partial Regex Rest();

    [GeneratedRegex(@"^(\d+) (extra|fewer) at each of the (\d+) corners")]
    private static partial Regex Corners();

    [GeneratedRegex(@"^(\d+) (extra|fewer)")]
    private static partial Regex Extra();
}
