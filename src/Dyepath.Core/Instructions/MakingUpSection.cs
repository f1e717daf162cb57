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
        Add(Phrase.Plain(context.Pieces.Length == 1
            ? "Wash the piece and dry it flat to the measurements of the drawing."
            : "Wash the pieces and dry them flat to the measurements of the drawing."));
        if (context.Pieces.Any(p => p.First is { Pooled: true, Foundation.Companion: false }))
            Add(Phrase.Plain("Undo the extra chains, if you made any: open the slip knot, draw the tail back out of one chain after the other, stop at the first chain that holds a stitch, and pull the tail close."));
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
            Add(Phrase.Plain("Turn what is sewn outside out."));
        if (AfterEdgings(context) is null)
            Add(Weave);
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(TurnedOver(context));
        blocks.Add(new Steps(steps.ToImmutable()));
        blocks.AddRange(Meetings(context));
        blocks.AddRange(context.Own("makingUp"));
        return new Section("making-up", Phrase.Plain("Making up"), blocks.ToImmutable());

        void Add(Phrase text) => steps.Add(new Instruction(Phrase.Of($"{steps.Count + 1}"), text));
    }

    private static readonly Phrase Weave = Phrase.Plain("Weave the ends in, each under its own colour.");

    /// <summary>What is done once the edgings are worked; null where there are none.</summary>
    public static Section? AfterEdgings(PatternContext context)
    {
        if (context.Plan.Sizes[0].Edgings.IsEmpty)
            return null;
        Phrase[] steps =
        [
            .. context.Construction.Sewing.Select(s => new SewingWords(context, s)).Where(s => s.IsAfterEdgings).Select(s => s.Say()),
            Weave,
            Phrase.Plain("Damp the edgings, lay them flat, and let them dry."),
        ];
        return new Section(
            "finishing", Phrase.Plain("After the edgings"),
            [new Steps([.. steps.Select((s, i) => new Instruction(Phrase.Of($"{i + 1}"), s))])]);
    }

    private static Phrase Sewing(PatternContext context)
    {
        var seams = context.Project.Garment.Seams;
        var yarn = context.Project.Companion is { } companion && companion.Uses.Contains(CompanionUse.Seams)
            ? Phrase.Named(companion.Name)
            : Phrase.Plain("the variegated yarn, from a length of a colour that hides in the seam");
        return Phrase.Of($"Sew with {yarn}. Every seam takes in {Stitches(seams.HiddenStitches)} of each edge that is made of row ends and {Rows(seams.HiddenRows)} of each edge that is made of stitches.");
    }

    private static Phrase Stitches(int count) => count switch
    {
        0 => Phrase.Plain("no stitch"),
        1 => Phrase.Plain("one stitch"),
        _ => Phrase.Of($"{count} stitches"),
    };

    private static Phrase Rows(int count) => count switch
    {
        0 => Phrase.Plain("no row"),
        1 => Phrase.Plain("one row"),
        _ => Phrase.Of($"{count} rows"),
    };

    /// <summary>Not one of the numbered steps, because sizes that are not turned over go without it.</summary>
    private static IEnumerable<Block> TurnedOver(PatternContext context)
    {
        foreach (var turned in context.Pieces.Where(p => p.BySize.Any(s => s.WrongSideOut)))
        {
            var sizes = context.Plan.Sizes.Where((_, i) => turned.BySize.ElementAt(i).WrongSideOut).Select(s => s.Name).ToImmutableArray();
            var named = Phrase.Named(string.Join(", ", sizes));
            var which = sizes.Length == context.Plan.Sizes.Length ? Phrase.Empty
                : sizes.Length == 1 ? Phrase.Of($" in size {named}") : Phrase.Of($" in sizes {named}");
            yield return new ForSizes(sizes,
            [
                new Paragraph(Phrase.Of(
                    $"Turn the {turned.Name} over before you sew{new InAllSizes(which)}: the side that faces you in even-numbered rows becomes its outside, {Meeting(context, turned.First.Id)}. Fabric worked back and forth looks alike on both sides.")),
            ]);
        }
    }

    /// <summary>A back mirrors its front; one of two fronts is turned for the back's sake and the other front's.</summary>
    private static Phrase Meeting(PatternContext context, PieceId piece)
    {
        var pair = context.Construction.GroupOf(piece).Pieces;
        return pair.Any(p => p.Mirrored)
            ? Phrase.Plain("so that its colours meet its neighbours' better at the seams")
            : Phrase.Of($"so that its colours mirror the {PlaceNames.Of(pair[0].Id)}'s at the seams");
    }

    /// <summary>
    /// At which seams the colours meet, so that a maker knows what to expect; sizes that differ each have their own words.
    /// </summary>
    private static IEnumerable<Block> Meetings(PatternContext context)
    {
        var opened = context.Construction.Joins.Where(j => j.Kind == JoinKind.Opening).Select(j => j.Id).ToHashSet();
        var groups = context.Plan.Sizes
            .GroupBy(s => Met([.. s.Seams.Where(seam => seam.Extension is not null && !opened.Contains(seam.Id))]))
            .Where(g => !g.Key.Parts.IsEmpty).ToArray();
        foreach (var group in groups)
        {
            var names = group.Select(s => s.Name).ToImmutableArray();
            var lead = names.Length == context.Plan.Sizes.Length ? Phrase.Empty : new Phrase([PatternContext.Lead(names)]);
            yield return new ForSizes(names, [new Paragraph(lead + group.Key)]);
        }
    }

    /// <summary>Such as <c>Colours meet at the left side; do not meet at the left armhole.</c></summary>
    private static Phrase Met(ImmutableArray<SeamPlan> seams) => seams.IsEmpty ? Phrase.Empty : Phrase.Of(
        $"Colours {Phrase.Join("; ", seams.GroupBy(s => (s.Quality, Close: s.IsClose())).OrderBy(g => g.Key).Select(g => Met(g.Key.Quality, g.Key.Close, Phrase.List(g.Select(Named)))))}.");

    private static Phrase Met(SeamQuality quality, bool close, Phrase where) => (quality, close) switch
    {
        (_, true) => Phrase.Of($"meet to within a stitch at {where}"),
        (SeamQuality.Good, _) => Phrase.Of($"meet at {where}"),
        (SeamQuality.Visible, _) => Phrase.Of($"jump a little at {where}"),
        (SeamQuality.ByChance, _) => Phrase.Of($"do not meet at {where}"),
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "No words for this quality."),
    };

    private static Phrase Named(SeamPlan seam) =>
        Phrase.Plain(seam.Id is SeamId.LeftSleeve or SeamId.RightSleeve ? $"the underside of the {seam.Where}" : $"the {seam.Where}");
}
