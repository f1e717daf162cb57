using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Instructions;

/// <summary>Care, and the cautions that touch whoever will wear it.</summary>
internal static class CareSection
{
    private const string Advice = "advice";

    public static Section Write(PatternContext context)
    {
        var rules = Rules(context.Project.Sizes.Chart);
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("care"));
        blocks.Add(new Bullets(
        [
            Phrase.Plain($"Follow the ball band. Where it is silent: {Care("handWash")}, better cold; press the water out in a towel; {Care("flatDry")} to the measurements."),
        ]));
        blocks.AddRange(rules.Where(r => r.Rule == Advice).Select(r => new Caution(Phrase.Plain($"{Sentence(r.Feature)}: {r.Limit}."))));
        ImmutableArray<Phrase> regulations =
        [
            .. rules.Where(r => r.Rule != Advice).Select(r => Phrase.Of(
                $"{new Strong(Phrase.Plain(Sentence(r.Feature)))}, {r.Scope}: {r.Limit} ({r.Rule}).")),
        ];
        if (!regulations.IsEmpty)
        {
            blocks.Add(new Caution(Phrase.Plain($"Rules for children's garments, as far as they touch this one. {SafetyRules.Disclaimer}")));
            blocks.Add(new Bullets(regulations));
        }
        blocks.AddRange(context.Own("closing"));
        return new Section("care", Phrase.Plain("Care and cautions"), blocks.ToImmutable());
    }

    /// <summary>Without a chart it may be for anyone: all advice, and no regulation.</summary>
    private static ImmutableArray<SafetyRule> Rules(string? chart) => SizeCharts.TryFind(chart ?? "", out var found)
        ? SafetyRules.Touching(found.Wearer)
        : [.. SafetyRules.All.Where(r => r.Rule == Advice)];

    private static string Care(string key) => CareSymbols.TryFind(key, out var symbol)
        ? symbol.Meaning
        : throw new ArgumentOutOfRangeException(nameof(key), key, "No such care instruction.");

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
