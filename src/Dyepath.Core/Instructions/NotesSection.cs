using System.Collections.Immutable;
using Dyepath.Core.Booklets;
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
            var chain = context.InRounds ? "beginning chain and joining stitch" : "turning chain";
            var turn = context.InRounds ? "join" : "turn";
            items.Add(Phrase.Plain(context.Pieces.First(p => p.First.Pooled).First.TurnCost switch
            {
                0 => $"Pull every {chain} close, so that the {turn} takes no yarn that shows in the colours.",
                < 0.6 and > 0 => $"Leave every {chain} at its natural size: a {turn} takes about half a {context.UnitWord(one: true)} of yarn, and the picture counts on it.",
                _ => $"Work every {chain} alike: the picture counts on the yarn that it takes.",
            }));
        }
        if (context.Pieces.Any(p => p.First is { Pooled: true, RowStitches.Length: 2 }))
        {
            items.Add(Phrase.Plain(
                "Rows have two stitch counts in turn: every even-numbered row makes one stitch more at its beginning, every odd-numbered row leaves it unworked at its end. The edge wavers by half a stitch, and the seam hides it."));
        }
        items.Add(Phrase.Plain("A knot in the ball is a join: cut back to the same place of the sequence and go on from there. So is the end of a ball."));
        return new Section("notes", Phrase.Plain("Notes"), [new Bullets(items.ToImmutable()), .. context.Own("notes")]);
    }

    private static Phrase Way(PatternContext context)
    {
        var up = context.Plan.Direction == Direction.Up;
        var (stitches, rows) = context.Project.Garment.Shape switch
        {
            BoxyTop => up ? ("run round the body", "run up it") : ("run up the body", "run round it"),
            Cowl => up ? ("run round the cowl", "run up it") : ("run up the cowl", "run round it"),
            _ => up ? ("run across the width", "run up the length") : ("run along the length", "run across the width"),
        };
        if (context.InRounds)
        {
            return context.Pieces[0].First.Working switch
            {
                Working.Spiral => Phrase.Plain("Worked in one spiral from the lower edge up, right side always facing; the rounds are not joined."),
                Working.RoundsTurned => Phrase.Plain("Worked in joined rounds from the lower edge up, and turned after every join."),
                _ => Phrase.Plain("Worked in joined rounds from the lower edge up, right side always facing."),
            };
        }
        var how = context.Project.Garment.Shape switch
        {
            BoxyTop => up ? "Front, back and sleeves are worked upwards" : "Front, back and sleeves are worked sideways, from one side to the other",
            _ => up ? "Worked upwards, back and forth" : "Worked sideways, back and forth",
        };
        if (context.Project.Garment.Shape is BoxyTop && !context.Has(PieceId.Sleeve))
            how = how.Replace("Front, back and sleeves", "Front and back", StringComparison.Ordinal);
        return Phrase.Plain($"{how}: stitches {stitches}, rows {rows}.");
    }
}
