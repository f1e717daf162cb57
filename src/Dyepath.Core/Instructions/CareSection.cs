using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Instructions;

/// <summary>Care, and the cautions that depend on the wearer.</summary>
internal static class CareSection
{
    public static Section Write(PatternContext context)
    {
        var parts = Parts(context);
        var cords = parts.HasFlag(SafetyParts.Cords);
        // What is no sleepwear is not told the rules of sleepwear, and what has no cord not those of cords.
        var rules = SafetyRules.Touching(context.Wearers, parts).Where(r => !r.OfSleepwear && (cords || !r.OfCords)).ToImmutableArray();
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("care"));
        blocks.Add(new Bullets(
        [
            Phrase.Of($"Follow the ball band. Where it is silent: {FibreCare.HandWash(Fibres(context))}, better cold; press the water out in a towel; {Care("flatDry")} to the measurements."),
        ]));
        blocks.AddRange(rules.Where(r => r.Rule is null).Select(r => new Caution(Phrase.Of($"{Said(context, r.Feature)}: {r.Limit}."))));
        if (!cords && (context.Wearers & ~Wearers.Adult) != 0 && parts != SafetyParts.None)
            blocks.Add(new Caution(Phrase.Plain("Cords: this pattern has none; add none.")));
        ImmutableArray<Phrase> regulations =
        [
            .. rules.Where(r => r.Rule is not null).Select(r => Phrase.Of(
                $"{new Strong(Phrase.Plain(Wording.Capital(r.Feature)))}, {r.Scope}: {r.Limit} ({Phrase.Named(r.Rule!)}).")),
        ];
        if (!regulations.IsEmpty)
        {
            blocks.Add(new Caution(Phrase.Of($"Rules for children's garments, as far as they touch this one. {SafetyRules.Disclaimer}")));
            blocks.Add(new Bullets(regulations));
        }
        blocks.AddRange(context.Own("closing"));
        return new Section("care", Phrase.Plain("Care and cautions"), blocks.ToImmutable());
    }

    /// <summary>What fits anybody is a child's only where it is made for one.</summary>
    private static Phrase Said(PatternContext context, string feature) =>
        context.Project.Garment.Shape.IsToBody || !feature.StartsWith("babies", StringComparison.OrdinalIgnoreCase)
            ? Phrase.Plain(Wording.Capital(feature)) : Phrase.Of($"If it is made for a baby, as for {feature}");

    /// <summary>A companion's label says nothing of its fibre: it is taken to bear what the variegated yarn does.</summary>
    private static IEnumerable<string> Fibres(PatternContext context) => [context.Project.Yarn.Fibre];

    private static SafetyParts Parts(PatternContext context)
    {
        var needs = context.Project.Garment.Shape.Needs;
        var worn = needs switch
        {
            [] => SafetyParts.None,
            [BodyMeasure.Head] => SafetyParts.Head,
            _ => needs.All(m => m is BodyMeasure.Hip or BodyMeasure.Waist) ? SafetyParts.Lower : SafetyParts.Top,
        };
        var edgings = context.Plan.Sizes[0].Edgings;
        var hasButtons = edgings.Any(e => context.EdgesAt(e.Where).Closes is not null);
        var hasCords = edgings.Any(e => EdgingLibrary.Find(e.Edging).Hazards.HasFlag(EdgingHazards.Cords));
        return worn | (hasButtons ? SafetyParts.Buttons : SafetyParts.None) | (hasCords ? SafetyParts.Cords : SafetyParts.None);
    }

    private static string Care(string key) => CareSymbols.TryFind(key, out var symbol)
        ? symbol.Meaning
        : throw new ArgumentOutOfRangeException(nameof(key), key, "No such care instruction.");
}
