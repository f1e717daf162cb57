using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>Blocking, seams and ends, in the order in which they are done.</summary>
internal static class MakingUpSection
{
    public static Section Write(PatternContext context)
    {
        var steps = ImmutableArray.CreateBuilder<Instruction>();
        Add(context.Pieces.Length == 1
            ? "Wash the piece and dry it flat to the measurements of the drawing."
            : "Wash the pieces and dry them flat to the measurements of the drawing.");
        if (context.Pieces.Any(p => p.First is { Pooled: true, Foundation.Companion: false }))
            Add("Undo the extra chains, if you made any: open the slip knot, draw the tail back out of one chain after the other, stop at the first chain that holds a stitch, and pull the tail close.");
        if (context.Construction.Joins.Any(j => j.Sewn))
            Add(Sewing(context));
        var sewing = context.Construction.Sewing.Select(s => new SewingWords(context, s)).ToArray();
        foreach (var step in sewing.Where(s => !s.IsAfterEdgings))
        {
            Add(step.Say());
            if (step.Then() is { } then)
                Add(then);
        }
        if (sewing.Any(s => s.IsAfterEdgings))
            Add("Turn what is sewn outside out.");
        if (AfterEdgings(context) is null)
            Add(Weave);
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(TurnedOver(context));
        blocks.Add(new Steps(steps.ToImmutable()));
        blocks.AddRange(Meetings(context));
        blocks.AddRange(context.Own("makingUp"));
        return new Section("making-up", Phrase.Plain("Making up"), blocks.ToImmutable());

        void Add(string text) => steps.Add(new Instruction(Phrase.Plain($"{steps.Count + 1}"), Phrase.Plain(text)));
    }

    private const string Weave = "Weave the ends in, each under its own colour.";

    /// <summary>What is done once the edgings are worked; null where there are none.</summary>
    public static Section? AfterEdgings(PatternContext context)
    {
        if (context.Plan.Sizes[0].Edgings.IsEmpty)
            return null;
        string[] steps =
        [
            .. context.Construction.Sewing.Select(s => new SewingWords(context, s)).Where(s => s.IsAfterEdgings).Select(s => s.Say()),
            Weave,
            "Damp the edgings, lay them flat, and let them dry.",
        ];
        return new Section(
            "finishing", Phrase.Plain("After the edgings"),
            [new Steps([.. steps.Select((s, i) => new Instruction(Phrase.Plain($"{i + 1}"), Phrase.Plain(s)))])]);
    }

    private static string Sewing(PatternContext context)
    {
        var seams = context.Project.Garment.Seams;
        var yarn = context.Project.Companion is { } companion && companion.Uses.Contains(CompanionUse.Seams)
            ? companion.Name
            : "the variegated yarn, from a length of a colour that hides in the seam";
        return $"Sew with {yarn}. Every seam takes in {Number(seams.HiddenStitches, "stitch", "stitches")} of each edge that is made of row ends and {Number(seams.HiddenRows, "row", "rows")} of each edge that is made of stitches.";
    }

    private static string Number(int count, string one, string many) => count switch
    {
        0 => $"no {one}",
        1 => $"one {one}",
        _ => FormattableString.Invariant($"{count} {many}"),
    };

    /// <summary>Not one of the numbered steps, because sizes that are not turned over go without it.</summary>
    private static IEnumerable<Block> TurnedOver(PatternContext context)
    {
        foreach (var turned in context.Pieces.Where(p => p.BySize.Any(s => s.WrongSideOut)))
        {
            var sizes = context.Plan.Sizes.Where((_, i) => turned.BySize.ElementAt(i).WrongSideOut).Select(s => s.Name).ToImmutableArray();
            var which = sizes.Length == context.Plan.Sizes.Length ? "" : $" in {(sizes.Length == 1 ? "size" : "sizes")} {string.Join(", ", sizes)}";
            yield return new ForSizes(sizes,
            [
                new Paragraph(Phrase.Of(
                    $"Turn the {turned.Name} over before you sew{new InAllSizes(Phrase.Plain(which))}: the side that faces you in even-numbered rows becomes its outside, so that its colours {Meeting(context, turned.First.Id)} at the seams. Fabric worked back and forth looks alike on both sides.")),
            ]);
        }
    }

    /// <summary>A back mirrors its front; one of two fronts is turned for the back's sake and the other front's.</summary>
    private static string Meeting(PatternContext context, PieceId piece)
    {
        var pair = context.Construction.GroupOf(piece).Pieces;
        return pair.Any(p => p.Mirrored) ? "meet its neighbours' better" : $"mirror the {PlaceNames.Of(pair[0].Id)}'s";
    }

    /// <summary>
    /// At which seams the colours meet, so that a maker knows what to expect; sizes that differ each have their own words.
    /// </summary>
    private static IEnumerable<Block> Meetings(PatternContext context)
    {
        var opened = context.Construction.Joins.Where(j => j.Kind == JoinKind.Opening).Select(j => j.Id).ToHashSet();
        var groups = context.Plan.Sizes
            .GroupBy(s => Met([.. s.Seams.Where(seam => seam.Extension is not null && !opened.Contains(seam.Id))]))
            .Where(g => g.Key.Length > 0).ToArray();
        foreach (var group in groups)
        {
            var names = group.Select(s => s.Name).ToImmutableArray();
            var lead = names.Length == context.Plan.Sizes.Length ? Phrase.Empty : Phrase.Of($"{PatternContext.Lead(names)}");
            yield return new ForSizes(names, [new Paragraph(Phrase.Of($"{lead}{group.Key}"))]);
        }
    }

    /// <summary>Such as <c>Colours meet at the left side; do not meet at the left armhole.</c></summary>
    private static string Met(ImmutableArray<SeamPlan> seams) => seams.IsEmpty ? ""
        : $"Colours {string.Join("; ", seams.GroupBy(s => (s.Quality, Close: s.IsClose())).OrderBy(g => g.Key).Select(g => $"{(g.Key.Close ? "meet to within a stitch" : Words(g.Key.Quality))} at {Wording.List([.. g.Select(s => $"the {Named(s)}")])}"))}.";

    private static string Words(SeamQuality quality) => quality switch
    {
        SeamQuality.Good => "meet",
        SeamQuality.Visible => "jump a little",
        SeamQuality.ByChance => "do not meet",
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "No words for this quality."),
    };

    private static string Named(SeamPlan seam) => seam.Id is SeamId.LeftSleeve or SeamId.RightSleeve ? $"underside of the {seam.Where}" : seam.Where;
}
