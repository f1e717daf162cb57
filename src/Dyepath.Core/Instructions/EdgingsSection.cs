using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Edgings;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>Every edging: where it begins, how many stitches are picked up and how they are spread, its rounds and its chart.</summary>
internal static class EdgingsSection
{
    public static Section? Write(PatternContext context)
    {
        var plans = context.Plan.Sizes[0].Edgings;
        if (plans.IsEmpty)
            return null;
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var shown = new Dictionary<string, string>();
        for (var i = 0; i < plans.Length; i++)
        {
            var at = i;
            var plan = plans[at];
            if (!EdgingLibrary.TryFind(plan.Edging, out var edging))
                throw new InvalidOperationException($"The plan names an edging that does not ship: {plan.Edging}.");
            var place = PlaceWords.Of(plan.Where);
            blocks.Add(new Subheading(Phrase.Of($"{place}{(plan.Copies == 1 ? "" : $" (work {plan.Copies})")}: {edging.Name}")));
            blocks.Add(new Steps(Starts(context, at)));
            blocks.AddRange(PickUpRules(context, at));
            if (shown.TryGetValue(plan.Edging, out var before))
            {
                blocks.Add(new Paragraph(Phrase.Plain($"Work the rounds as for the {before}.")));
                continue;
            }
            shown.Add(plan.Edging, place.ToLowerInvariant());
            blocks.Add(new Steps([.. edging.Steps.Select(step => step with { Text = Sentence(step.Text) })]));
            blocks.Add(new Figure(
                edging.Chart,
                Sentence(Phrase.Of($"{edging.Name} in the standard symbols.")),
                Phrase.Plain("The steps above say the same in words.")));
        }
        return new Section("edgings", Phrase.Plain("Edgings"), blocks.ToImmutable());
    }

    /// <summary>Yarn, stitches picked up and rounds of one edging.</summary>
    /// <param name="at">Its index in every size.</param>
    public static ImmutableArray<Instruction> Starts(PatternContext context, int at)
    {
        var rounds = context.Each(s => s.Edgings[at].Rounds);
        return
        [
            new Instruction(Phrase.Plain("Yarn"), Phrase.Of($"{context.YarnFor(CompanionUse.Edgings)}, joined with the right side facing {Beginning(context, context.Plan.Sizes[0].Edgings[at].Where)}.")),
            new Instruction(Phrase.Plain("Pick up"), Phrase.Of($"{context.Each(s => s.Edgings[at].PickUp)} stitches, spread evenly as said below.")),
            new Instruction(Phrase.Plain("Work"), Phrase.Of($"{rounds} {(rounds.IsSame && rounds.Values[0] == 1 ? "round" : "rounds")}, about {context.Each(s => s.Edgings[at].Depth)} deep.")),
        ];
    }

    private static string Beginning(PatternContext context, EdgingPlace place) => place switch
    {
        EdgingPlace.Hem => "at a side seam",
        EdgingPlace.Neck => "at a shoulder seam",
        EdgingPlace.Armholes => "at the side seam",
        EdgingPlace.Cuffs => "at the seam under the sleeve",
        EdgingPlace.Border => "at the first stitch of the first row",
        EdgingPlace.Brims when context.InRounds => "where the rounds begin",
        EdgingPlace.Brims => "at the back seam",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "No beginning for this place."),
    };

    /// <summary>
    /// One rule with size lists where the sizes differ in its numbers alone, a remainder of none among them said as 0; otherwise a rule
    /// for each group of sizes.
    /// </summary>
    private static IEnumerable<Block> PickUpRules(PatternContext context, int at)
    {
        var sizes = context.Plan.Sizes.Select(s => s.Edgings[at].Spread).ToImmutableArray();
        if (PickUpWords.Shared(sizes, withRests: false) is { } shared)
        {
            yield return new Bullets([shared]);
            yield break;
        }
        if (PickUpWords.Shared(sizes, withRests: true) is { } withRests)
        {
            var own = new InOneSize(new Phrase([new WordChoice(new([.. sizes.Select(PickUpWords.Text)]))]));
            yield return new Bullets([Phrase.Of($"{new InAllSizes(withRests)}{own}")]);
            yield break;
        }
        foreach (var group in context.Plan.Sizes.GroupBy(s => PickUpWords.Text(s.Edgings[at].Spread)))
        {
            var names = group.Select(s => s.Name).ToImmutableArray();
            yield return new ForSizes(names,
            [
                new Bullets([Phrase.Of($"{new InAllSizes(Phrase.Of($"{new Strong(Phrase.Plain(string.Join(", ", names)))}: "))}{group.Key}")]),
            ]);
        }
    }

    /// <summary>Begins with a capital.</summary>
    public static Phrase Sentence(Phrase phrase) => phrase.Parts[0] switch
    {
        Term term => phrase with { Parts = phrase.Parts.SetItem(0, new Term(char.ToUpperInvariant(term.Us[0]) + term.Us[1..])) },
        Words words when words.Text.Length > 0 =>
            phrase with { Parts = phrase.Parts.SetItem(0, new Words(char.ToUpperInvariant(words.Text[0]) + words.Text[1..])) },
        _ => phrase,
    };
}
