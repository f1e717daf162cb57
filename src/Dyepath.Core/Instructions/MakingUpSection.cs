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
        if (context.Plan.Sizes.SelectMany(s => s.Seams).Any(s => s.Id != SeamId.RoundJoin))
            Add(Sewing(context));
        if (context.Project.Garment.Shape is BoxyTop)
        {
            foreach (var step in Top(context))
                Add(step);
        }
        else if (context.Project.Garment.Shape is Cowl && context.Pieces[0].First.Working == Working.Turned)
        {
            Add(context.Plan.Direction == Direction.Up
                ? "Back seam: lay the two side edges together, right sides in, and sew row to row into a tube."
                : "Back seam: lay the first row and the last row together, right sides in, and sew stitch to stitch into a tube.");
        }
        Add(context.Pieces.All(p => !p.First.Pooled || p.First.Foundation.Companion)
            ? "Weave the ends in, each under its own colour."
            : "Undo the extra chains, if you made any. Weave the ends in, each under its own colour.");
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(TurnedOver(context));
        blocks.Add(new Steps(steps.ToImmutable()));
        if (context.Plan.Sizes.All(s => s.Seams.Length > 0))
            blocks.Add(SeamTable(context));
        blocks.AddRange(context.Own("makingUp"));
        return new Section("making-up", Phrase.Plain("Making up"), blocks.ToImmutable());

        void Add(string text) => steps.Add(new Instruction(Phrase.Plain($"{steps.Count + 1}"), Phrase.Plain(text)));
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
        if (context.Pieces.FirstOrDefault(p => p.BySize.Any(s => s.WrongSideOut)) is not { } turned)
            yield break;
        var sizes = context.Plan.Sizes.Where((_, i) => turned.BySize.ElementAt(i).WrongSideOut).Select(s => s.Name).ToImmutableArray();
        var which = sizes.Length == context.Plan.Sizes.Length ? "" : $" in {(sizes.Length == 1 ? "size" : "sizes")} {string.Join(", ", sizes)}";
        yield return new ForSizes(sizes,
        [
            new Paragraph(Phrase.Of(
                $"Turn the {turned.Name} over before you sew{new InAllSizes(Phrase.Plain(which))}: the side that faces you in even-numbered rows becomes its outside, so that its colours mirror the front's at the seams. Fabric worked back and forth looks alike on both sides.")),
        ]);
    }

    private static IEnumerable<string> Top(PatternContext context)
    {
        var up = context.Plan.Direction == Direction.Up;
        yield return "Shoulders: lay front and back together, outsides in. Sew from each outer edge to the marks of the neck opening. Both ends of the opening take strain: sew there twice.";
        if (context.Has(PieceId.Sleeve))
        {
            yield return up
                ? "Sleeves: lay the last row of each sleeve, outsides in, between the two armhole marks, its middle at the shoulder seam, and sew."
                : "Sleeves: lay the edge of each sleeve where odd-numbered rows end, outsides in, between the two armhole marks, its middle at the shoulder seam, and sew.";
            yield return $"Sides and sleeves: sew {(up ? "row to row" : "stitch to stitch")} from the hem up to the armhole marks, and on along the underside of the sleeve to the cuff.";
        }
        else
        {
            yield return $"Sides: sew {(up ? "row to row" : "stitch to stitch")} from the hem up to the armhole marks.";
        }
    }

    /// <summary>How far the colours jump across each seam, so that a maker knows what to expect.</summary>
    private static Table SeamTable(PatternContext context)
    {
        var plain = context.Pieces.Where(p => !p.First.Pooled).Select(p => p.First.Id).ToArray();
        var seams = context.Plan.Sizes[0].Seams.Select((seam, i) => (Seam: seam, Index: i)).Where(s => !plain.Any(s.Seam.Joins));
        return new Table(
            Phrase.Plain($"How the colours meet at each seam: by how many {context.UnitWord()} they jump on average (0: they run on)."),
            [Phrase.Plain("Seam"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
            [.. seams.Select(seam => ImmutableArray.CreateRange(
                [Phrase.Plain(Named(seam.Seam)), .. context.Plan.Sizes.Select(s => Phrase.Plain(Rounded(s.Seams[seam.Index].PhaseJump)))]))],
            PerSizeColumns: true);
    }

    private static string Named(SeamPlan seam) => seam.Id is SeamId.LeftSleeve or SeamId.RightSleeve ? $"under the {seam.Where}" : seam.Where;

    /// <summary>To the half stitch: finer is beyond what an eye sees at a seam.</summary>
    private static string Rounded(double jump) =>
        MaterialsSection.Number(Math.Round(jump * 2, MidpointRounding.AwayFromZero) / 2);
}
