using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Abbreviations, and what a maker should know before she begins.</summary>
internal static class NotesSection
{
    public static Section Abbreviations(PatternContext context)
    {
        var stitch = context.Project.Fabric.Stitch;
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Phrase.Of($"{new Strong(Phrase.Plain("ch"))}: chain"));
        items.Add(Phrase.Of($"{Bold("sl st")}: slip stitch"));
        items.Add(Phrase.Of($"{Bold("sc")}: {new Term("single crochet")}"));
        if (stitch == FabricStitch.HalfDoubleCrochet)
            items.Add(Phrase.Of($"{Bold("hdc")}: {new Term("half double crochet")}"));
        if (stitch == FabricStitch.DoubleCrochet)
            items.Add(Phrase.Of($"{Bold("dc")}: {new Term("double crochet")}"));
        items.Add(Phrase.Of($"{new Strong(Phrase.Plain("st(s)"))}: stitch(es)"));
        items.Add(Phrase.Of($"{new Strong(Phrase.Plain("rep"))}: repeat"));
        items.Add(Phrase.Of($"{new Strong(Phrase.Plain("RS, WS"))}: right side, wrong side"));
        return new Section("abbreviations", Phrase.Plain("Abbreviations"),
        [
            new Paragraph(Phrase.Of($"The pattern is in {new Term("US terms")}.")),
            new Bullets(items.ToImmutable()),
        ]);

        static Strong Bold(string us) => new(new Phrase([new Term(us)]));
    }

    public static Section Notes(PatternContext context)
    {
        var plan = context.Plan;
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Phrase.Plain("Size lists give the smallest size first and the others in parentheses; a number that stands alone is for every size."));
        if (plan.Project.Garment.Shape is BoxyTop)
        {
            items.Add(Phrase.Plain(plan.Direction == Direction.Up
                ? "The panels are worked from the hem up: stitches run round the body, rows run up it."
                : "The panels are worked sideways, from one side seam to the other: stitches run up the body, rows run round it."));
        }
        items.Add(Phrase.Plain(context.Pieces[0].First.TurnCost switch
        {
            0 => "Pull the turning chain close, so that the turn takes no yarn that shows in the colours.",
            < 0.6 and > 0 => "Leave the turning chain at its natural size: it takes about half a stitch of yarn, and the picture counts on it.",
            _ => "Work every turning chain alike: the picture counts on the yarn that it takes.",
        }));
        items.Add(Phrase.Plain("Nobody holds this picture by even work alone. Compare each row with the table of row starts, and work a little tighter or looser until the next colour change when a colour comes early or late."));
        items.Add(Phrase.Plain("A knot in the ball is a join: cut back to the same place of the sequence and go on from there."));
        return new Section("notes", Phrase.Plain("Notes"), [new Bullets(items.ToImmutable()), .. context.Own("notes")]);
    }
}
