using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>The abbreviations and special stitches that the pattern uses, and no others.</summary>
internal static class AbbreviationsSection
{
    /// <summary>What a <see cref="Term"/> that is an abbreviation stands for.</summary>
    internal static ImmutableArray<(string Short, string Long)> Terms { get; } =
    [
        ("sl st", "slip stitch"),
        ("sc", "single crochet"),
        ("sc2tog", "single crochet 2 together"),
        ("sc3tog", "single crochet 3 together"),
        ("hdc", "half double crochet"),
        ("dc", "double crochet"),
    ];

    private static readonly ImmutableArray<(string Short, string Long)> Shared =
    [
        ("st", "stitch"),
        ("rep", "repeat"),
        ("RS", "right side"),
        ("WS", "wrong side"),
    ];

    /// <param name="work">The sections in which stitches are worked.</param>
    public static IEnumerable<Section> Write(PatternContext context, IEnumerable<Section> work)
    {
        var special = Special(context).ToImmutableArray();
        var said = work.SelectMany(section => section.Blocks).SelectMany(Phrases).Concat(special).SelectMany(Inlines).ToArray();
        var terms = said.OfType<Term>().Select(term => term.Us.ToLowerInvariant()).ToHashSet();
        var words = said.OfType<Words>().SelectMany(w => Regex.Matches(w.Text, @"\p{L}+").Select(m => m.Value)).ToHashSet();
        if (words.Contains("sts"))
            words.Add("st");
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Phrase.Of($"{new Strong(Phrase.Plain("ch"))}: chain"));
        foreach (var (abbreviation, name) in Terms.Where(t => terms.Contains(t.Short)))
            items.Add(Phrase.Of($"{new Strong(new Phrase([new Term(abbreviation)]))}: {new Term(name)}"));
        foreach (var (abbreviation, name) in Shared.Where(s => words.Contains(s.Short)))
            items.Add(Phrase.Of($"{new Strong(Phrase.Plain(abbreviation))}: {name}"));
        yield return new Section("abbreviations", Phrase.Plain("Abbreviations"),
        [
            new Paragraph(Phrase.Of(
                $"The pattern is in {new Term("US terms")}.{new InAllSizes(Phrase.Plain(" Size lists give the smallest size first and the others in parentheses; a number that stands alone is for every size."))}")),
            new Bullets(items.ToImmutable()),
        ]);
        if (!special.IsEmpty)
            yield return new Section("special-stitches", Phrase.Plain("Special stitches"), [new Bullets(special)]);
    }

    private static IEnumerable<Phrase> Special(PatternContext context)
    {
        var sc = new Term("sc");
        if (context.Project.Fabric.Stitch == FabricStitch.Linen)
        {
            yield return Phrase.Of(
                $"{new Strong(Phrase.Plain("Linen stitch"))}: {sc} and ch 1 in turn; every {sc} is worked into the ch-1 space below, every ch 1 lies over a {sc}. A pair is one {sc} and one ch; both count as stitches.");
        }
        var atCorners = context.Plan.Sizes.SelectMany(s => s.Edgings).Any(e => e.Corners.Inner > 0) ? 2 : 0;
        foreach (var less in context.Plan.Sizes.SelectMany(s => s.Pieces).Select(p => p.Taper).OfType<Taper>()
            .SelectMany(t => Enumerable.Range(0, t.Rows).Select(t.Decreases)).Append(atCorners).Where(n => n > 0).Distinct().Order())
        {
            yield return Phrase.Of(
                $"{new Strong(new Phrase([new Term($"sc{less + 1}tog")]))}: insert the hook in the next st, {new Term("yarn over")} and draw a loop through, {(less == 1 ? "and again in the st after it" : "and again in each of the 2 sts after it")}; {new Term("yarn over")} and draw it through all {less + 2} loops. {less + 1} sts have become one.");
        }
        foreach (var special in context.Plan.Sizes[0].Edgings.SelectMany(e => EdgingLibrary.Find(e.Edging).Special).Distinct())
            yield return special;
    }

    private static IEnumerable<Phrase> Phrases(Block block) => block switch
    {
        Subheading heading => [heading.Text],
        Paragraph paragraph => [paragraph.Text],
        Bullets bullets => bullets.Items,
        Caution caution => [caution.Text],
        Steps steps => steps.Items.SelectMany(step => new[] { step.Label, step.Text }),
        ForSizes some => some.Blocks.SelectMany(Phrases),
        _ => [],
    };

    internal static IEnumerable<Inline> Inlines(Phrase phrase) => phrase.Leaves.SelectMany(part => part switch
    {
        Strong strong => Inlines(strong.Content),
        InOneSize one => Inlines(one.Content),
        InAllSizes many => Inlines(many.Content),
        _ => [part],
    });
}
