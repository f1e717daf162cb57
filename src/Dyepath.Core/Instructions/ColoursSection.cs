using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Instructions;

/// <summary>How the colours are kept: what each takes, how tight to work it, what the eye follows, and a strip that tests it.</summary>
internal static class ColoursSection
{
    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        if (context.Project.Fabric.Keeping == ColourKeeping.Counted)
        {
            blocks.Add(new Paragraph(Phrase.Of(
                $"The stitch counts of this pattern make the picture as long as every colour takes the same number of {context.UnitWord()} whenever it comes:")));
            blocks.Add(new Bullets([.. Counted(context)]));
            blocks.Add(new Paragraph(Phrase.Plain(
                "Where a colour would run on over the next stitch, work its last stitches a little looser; where it would end too soon, a little tighter.")));
        }
        else
        {
            blocks.Add(new Paragraph(Phrase.Plain(
                "Work evenly and let the colours fall as they come; charts and tables show where they should fall. Check often: no hands are even enough for long.")));
        }
        blocks.Add(new Paragraph(Shift(context)));
        blocks.Add(new Paragraph(Phrase.Plain(context.InRounds
            ? "So look at the round below as you go. A colour that comes late was worked too tight: work a little looser until it is back in its place. A colour that comes early was worked too loose: work a little tighter."
            : "So look at the two rows below as you go. A colour that comes late was worked too tight: work a little looser until it is back in its place. A colour that comes early was worked too loose: work a little tighter.")));
        blocks.AddRange(TestStrip.Write(context));
        return new Section("colours", Phrase.Plain("Keeping the colours"), blocks.ToImmutable());
    }

    private static IEnumerable<Phrase> Counted(PatternContext context)
    {
        var tension = Tension(context);
        for (var i = 0; i < context.Key.Length; i++)
        {
            var units = context.Plan.Sequence.UnitsIn(i);
            var (many, unit) = (units, context.UnitWord(one: units == 1));
            yield return tension.IsEmpty
                ? Phrase.Of($"{context.Colour(i)}: {many} {unit}.")
                : Phrase.Of($"{context.Colour(i)}: {many} {unit}, {Words(tension[i])}.");
        }
    }

    /// <summary>What each colour asks of the hands, in the order in which the yarn runs.</summary>
    private static ImmutableArray<SectionTension> Tension(PatternContext context)
    {
        var columns = context.Pieces.Any(p => p.First is { Pooled: true, Motif: MotifKind.Columns });
        return context.Plan.Sequence.Measured.Natural.Source == SequenceSource.Intended
            ? []
            : context.Plan.Sequence.Tension(columns ? TensionLimits.Stacked : TensionLimits.Scattered);
    }

    /// <summary>Said by feel, as no hand works by per cent.</summary>
    private static string Words(SectionTension tension)
    {
        const double unfelt = 0.01;
        const double touch = 0.03;
        var size = Math.Abs(tension.Change);
        if (size < unfelt)
            return "at your usual pull on the yarn";
        var how = tension.Change > 0 ? "looser" : "tighter";
        return tension.Verdict switch
        {
            TensionVerdict.Shows => $"clearly {how} than the others, which will show",
            TensionVerdict.MayShow => $"clearly {how} than the others, which may show",
            _ => size < touch ? $"a touch {how}" : $"a little {how}",
        };
    }

    /// <summary>What the eye follows: where a colour begins against the row two below, or the round below.</summary>
    private static Phrase Shift(PatternContext context)
    {
        var piece = context.Charts[0].Piece;
        return context.ShiftsAlike ? Phrase.Of($"{ColourShift.Said(context, piece)[0]}")
            : context.InRounds ? Phrase.Of($"How much earlier or later each colour begins than it did {ColourShift.Below(context, piece)} is not the same everywhere: it stands with the round starts of each chart.")
            : Phrase.Of($"How much earlier or later each colour begins than it did {ColourShift.Below(context, piece)} is not the same everywhere: it stands with the row starts of each chart.");
    }
}
