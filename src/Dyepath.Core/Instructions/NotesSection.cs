using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>What a maker should know before she begins.</summary>
internal static class NotesSection
{
    public static Section Write(PatternContext context)
    {
        var plan = context.Plan;
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Way(context));
        if (context.Pieces[0].First.Working != Working.Spiral)
        {
            items.Add((context.Pieces.First(p => p.First.Pooled).First.TurnCost, context.InRounds) switch
            {
                (0, true) => Phrase.Plain("Pull every beginning chain and joining stitch close, so that the join takes no yarn that shows in the colours."),
                (0, false) => Phrase.Plain("Pull every turning chain close, so that the turn takes no yarn that shows in the colours."),
                ( < 0.6 and > 0, true) => Phrase.Of($"Leave every beginning chain and joining stitch at its natural size: a join takes about half a {context.UnitWord(one: true)} of yarn, and the picture counts on it."),
                ( < 0.6 and > 0, false) => Phrase.Of($"Leave every turning chain at its natural size: a turn takes about half a {context.UnitWord(one: true)} of yarn, and the picture counts on it."),
                (_, true) => Phrase.Plain("Work every beginning chain and joining stitch alike: the picture counts on the yarn that it takes."),
                _ => Phrase.Plain("Work every turning chain alike: the picture counts on the yarn that it takes."),
            });
        }
        if (context.Pieces.Any(p => p.First is { Pooled: true, RowStitches.Length: 2 }))
        {
            items.Add(Phrase.Plain(
                "Rows have two stitch counts in turn: every even-numbered row makes one stitch more at its beginning, every odd-numbered row leaves it unworked at its end. The edge wavers by half a stitch, and the seam hides it."));
        }
        if (context.Construction.Groups.Select(g => g.Gores).FirstOrDefault(g => g is not null) is { } gores)
            items.AddRange(Gored(context, gores));
        else if (context.Pieces.Any(p => p.First.Shape is not null))
        {
            var held = (context.Construction.Joins.Any(j => j.Sewn), context.Plan.Sizes[0].Edgings.Length > 0) switch
            {
                (true, true) => "; an edging or a seam holds it",
                (true, false) => "; where a seam runs, it holds it",
                (false, true) => "; an edging holds it",
                _ => "",
            };
            var pieces = context.Pieces.Any(p => p.First.Taper is not null)
                ? Phrase.Of($"Pieces of {Phrase.Named(context.Project.Yarn.Name)}") : Phrase.Plain("Pieces");
            items.Add(Phrase.Of(
                $"{pieces} are shaped by rows that stop short, go on over a chain, or are joined on: no stitch is decreased or increased, so that the colours go on. Where a row stops short, the rest stays unworked{held}."));
        }
        if (context.Construction.Groups.Select(g => g.Fills).FirstOrDefault(f => f is not null) is { } fills)
        {
            items.Add(Phrase.Of(
                $"The {PlaceNames.Of(fills.Opening)} is cut square, so that the colours go on, and made into a V by two plain inserts in {context.Companion}: triangles that are sewn into its lower corners. They alone are worked with decreases."));
        }
        if (context.HasChains)
        {
            items.Add(Phrase.Plain(
                "A chain to go on over is made before the row that needs it: leave the row's own loop on a marker, and chain away from the piece. The stitches worked into it follow the last stitch of the row without a gap, in the colours as they come."));
            var loops = (!context.Plan.Sizes[0].Edgings.IsEmpty, context.Construction.Joins.Any(j => j.Sewn)) switch
            {
                (true, true) => " Where an edging runs, pick up its stitches in the free loops of the chain; where a seam runs, sew through those loops.",
                (true, false) => " Where an edging runs, pick up its stitches in the free loops of the chain.",
                (false, true) => " Where a seam runs, sew through its free loops.",
                _ => "",
            };
            items.Add(context.Project.Companion is null
                ? Phrase.Of($"The chain stays in the piece, so let its yarn match one of the colours of {Phrase.Named(context.Project.Yarn.Name)}.{loops}")
                : Phrase.Of($"The chain stays in the piece.{loops}"));
        }
        var varied = Enumerable.Range(0, plan.Sizes[0].Edgings.Length).Where(i => !context.Each(s => s.Edgings[i].Rounds).IsSame)
            .Select(i => plan.Sizes[0].Edgings[i].Where)
            .Select((place, i) => Phrase.Plain(i == 0 ? PlaceWords.Of(place) : PlaceWords.Within(place))).ToArray();
        if (varied.Length > 0)
            items.Add(new([new InAllSizes(Phrase.Of($"{Phrase.List(varied)}: deeper in some sizes than in others, to make up the measurement; see Edgings."))]));
        return new Section("notes", Phrase.Plain("Notes"), [new Bullets(items.ToImmutable()), .. context.Own("notes")]);
    }

    /// <summary>How gores are made, and what is seen of them.</summary>
    private static IEnumerable<Phrase> Gored(PatternContext context, GoreDesign gores)
    {
        yield return Phrase.Of(
            $"Gores: some rows stop short of the {EdgeWords.Of(gores.Top)} and turn. What they leave stays as it is, and the next longer row goes on over it, so that there are fewer rows at the {EdgeWords.Of(gores.Top)} than below. No stitch is decreased or increased. At the turn, draw the yarn close, so that no hole stays where the longer row goes on.");
        var strips = context.Plan.Sizes.SelectMany(s => s.Pieces).SelectMany(p => p.Shape?.Strips ?? []).ToArray();
        var jumps = strips.Select(s => Math.Abs(s.Jump)).Where(j => j > 0).Distinct().Order().ToArray();
        if (jumps.Length == 0)
            yield break;
        var by = jumps.Select(j => Phrase.Of($"{j}")).Aggregate((a, b) => Phrase.Of($"{a} or {b}"));
        yield return Phrase.Of(
            $"Where a row goes on over what shorter rows left, its lines of colour lie {by} {context.UnitWord(one: jumps is [1])} to one side of those below. That is the gore's own line, from its tip up to the {EdgeWords.Of(gores.Top)}; it is no fault, and everywhere else the picture goes on.");
    }

    private static Phrase Way(PatternContext context)
    {
        var up = context.Plan.Direction == Direction.Up;
        var words = GarmentWords.Of(context.Project.Garment.Shape);
        var (stitches, rows) = up ? (words.Across, words.Down) : (words.Down, words.Across);
        if (context.InRounds)
        {
            return context.Pieces[0].First.Working switch
            {
                Working.Spiral => Phrase.Plain("Worked in one spiral from the lower edge up, right side always facing; the rounds are not joined."),
                Working.RoundsTurned => Phrase.Plain("Worked in joined rounds from the lower edge up, and turned after every join."),
                _ => Phrase.Plain("Worked in joined rounds from the lower edge up, right side always facing."),
            };
        }
        var how = (words.Pieces, up) switch
        {
            ({ } pieces, true) => Phrase.Of($"{pieces} are worked upwards"),
            ({ } pieces, false) => Phrase.Of($"{pieces} are worked sideways, from one side to the other"),
            (null, true) => Phrase.Plain("Worked upwards, back and forth"),
            (null, false) => Phrase.Plain("Worked sideways, back and forth"),
        };
        // What was named just before is not named again: round the body, up it.
        var again = rows.What == stitches.What ? "it" : rows.What;
        // Which edge hangs down: of a strip that has no lower edge, or of slopes, nothing is said.
        var hangs = words.Down.Way != "up" || context.Construction.Groups.Any(g => g.IsSloped) ? ""
            : up ? "; the foundation is the lower edge" : "; row 1 begins at the lower edge";
        // Whatever is worked from the other side of every row comes out as in a mirror.
        var mirrored = new LeftHanded(Phrase.Plain(
            " Left-handed, you make the mirror image: what is called right comes to lie at the wearer's left, and left at the right. The drawings of the pieces are a right-handed maker's; the charts and their arrows are yours."));
        return Phrase.Of($"{how}: stitches run {$"{stitches.Way} {stitches.What}"}, rows run {$"{rows.Way} {again}"}{hangs}.{mirrored}");
    }
}
