using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>
/// Works a round as its words say, in US terms, knowing nothing of the chart and of the edging's multiple.
/// </summary>
internal sealed partial class StepFollower
{
    private readonly string _body;
    private readonly string _last;

    public StepFollower(string words)
    {
        Words = words;
        Chains = Beginning().Match(words) is { Success: true } begin ? Whole(begin, "n") : 0;
        Joins = words.Contains("; sl st in the first ", StringComparison.Ordinal) ? 1 : 0;
        var repeat = Repeated().Match(words);
        _body = repeat.Success ? repeat.Groups["body"].Value : Alone().Match(words).Groups["body"].Value;
        _last = LastOnes().Match(words) is { Success: true } last ? $"sc in each of the next {Whole(last, "n")} sc" : "";
        Assert.True(_body.Length > 0, $"nothing to work in: {words}");
    }

    public string Words { get; }

    public int Chains { get; }

    public int Joins { get; }

    /// <summary>Stitches that one repeat uses.</summary>
    public int Used => Steps(_body).Sum(s => s.Used);

    /// <summary>Marks that a chart needs for so many stitches of whole repeats.</summary>
    public ImmutableSortedDictionary<StitchSymbol, int> Made(int stitches)
    {
        Assert.Equal(0, stitches % Used);
        return Steps(_body).Where(s => s.Made > 0).GroupBy(s => s.Mark).ToImmutableSortedDictionary(g => g.Key, g => g.Sum(s => s.Made) * stitches / Used);
    }

    /// <summary>The stitches that the next round finds, once all are used; fails where stitches are left or lacking.</summary>
    public int Work(int stitches)
    {
        var (repeats, rest) = Math.DivRem(stitches - Steps(_last).Sum(s => s.Used), Used);
        Assert.True(rest == 0 && repeats > 0, $"{stitches} stitches are not whole repeats: {Words}");
        return repeats * Steps(_body).Sum(s => s.Found) + Steps(_last).Sum(s => s.Found);
    }

    private static IEnumerable<(StitchSymbol Mark, int Made, int Used, int Found)> Steps(string words)
    {
        foreach (var step in words.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(w => w.Trim()))
        {
            if (Each().Match(step) is { Success: true } each)
                yield return (Mark(each.Groups["stitch"].Value), Number(each, "n"), Number(each, "n"), Number(each, "n"));
            else if (Many().Match(step) is { Success: true } many)
                yield return (Mark(many.Groups["stitch"].Value), Whole(many, "n"), 1, Whole(many, "n"));
            else if (Skips().Match(step) is { Success: true } skips)
                yield return (default, 0, Whole(skips, "n"), 0);
            else if (Ch().Match(step) is { Success: true } ch)
                yield return (StitchSymbol.Chain, Whole(ch, "n"), 0, Whole(ch, "n"));
            else if (step == "sl st in the sc just made")
                yield return (StitchSymbol.SlipStitch, 1, 0, 0);
            else if (step == "V-stitch in the next sc")
            {
                yield return (StitchSymbol.DoubleCrochet, 2, 1, 2);
                yield return (StitchSymbol.Chain, 1, 0, 1);
            }
            else if (step == "cluster over the next 2 sts")
                yield return (StitchSymbol.CrossedCluster, 1, 2, 1);
            else if (Bunch().IsMatch(step))
                yield return (StitchSymbol.Strands, 1, 1, 0);
            else
                Assert.Fail($"not understood: {step}");
        }
    }

    private static StitchSymbol Mark(string stitch) => stitch switch
    {
        "sc" => StitchSymbol.SingleCrochet,
        "reverse sc" => StitchSymbol.ReverseSingleCrochet,
        "dc" => StitchSymbol.DoubleCrochet,
        "sl st" => StitchSymbol.SlipStitch,
        _ => throw new ArgumentException(stitch),
    };

    private static int Number(Match match, string group) => match.Groups[group].Success ? Whole(match, group) : 1;

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?:Without turning, )?[Cc]h (?<n>\d+)(?: \(not counted\))?, ")]
    private static partial Regex Beginning();

    [GeneratedRegex(@"\* (?<body>.*?); repeat from \*")]
    private static partial Regex Repeated();

    [GeneratedRegex(@"(?:^|[Cc]h \d+, )(?<body>(?:reverse )?(?:sc|sl st) in (?:each|every) [^,;.]+)")]
    private static partial Regex Alone();

    [GeneratedRegex(@"; sc in each of the last (?<n>\d+) sc")]
    private static partial Regex LastOnes();

    [GeneratedRegex(@"^(?<stitch>reverse sc|sc|dc|sl st) in (?:every place of the pick-up|each (?:(?:sc|st) (?:around|across)|st and in each ch of a buttonhole)|each of the next (?<n>\d+) (?:sc|sts)|the next sc|each sc of the last round.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex Each();

    [GeneratedRegex(@"^(?<n>\d+) (?<stitch>dc) in the next sc$")]
    private static partial Regex Many();

    [GeneratedRegex(@"^skip (?<n>\d+) (?:sc|sts)$")]
    private static partial Regex Skips();

    [GeneratedRegex(@"^ch (?<n>\d+)$")]
    private static partial Regex Ch();

    [GeneratedRegex(@"^knot a bunch of \d+ strands into the next sc$")]
    private static partial Regex Bunch();
}
