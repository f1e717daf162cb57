using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>Rows whose colours begin equally much earlier or later than in the row two below, or than in the round below.</summary>
/// <param name="Part">Of a shaped piece; none of a rectangle.</param>
/// <param name="First">Of the piece, from 0.</param>
/// <param name="Units">By which they begin earlier in the order of work; negative: later. In (−P/2, P/2].</param>
internal sealed record ColourShift(ShapedPart? Part, int First, int Last, double Units)
{
    /// <summary>
    /// In the order of work; of a shaped piece from the third row on, since no row lies two below the first ones. None of a piece on a
    /// bias, whose rows have one of two shifts by turns.
    /// </summary>
    public static ImmutableArray<ColourShift> Of(PiecePlan piece)
    {
        if (piece.Shape is not { } shape)
            return [new ColourShift(null, 0, piece.Rows - 1, IsTurned(piece) ? 2 * piece.Lean : piece.Lean)];
        if (IsBiased(shape))
            return [];
        var advance = shape.Panel.PlaceAt(2, 0) - shape.Panel.PlaceAt(0, 0);
        var shifts = ImmutableArray.CreateBuilder<ColourShift>();
        foreach (var part in shape.Parts)
        {
            for (var row = Math.Max(part.FirstRow, 2); row < part.FirstRow + part.Rows; row++)
            {
                var below = part;
                while (row - 2 < below.FirstRow)
                    below = shape.Parts[below.Below!.Value];
                if (part.OffsetAt(row) is not { } here || below.OffsetAt(row - 2) is not { } there)
                    continue;
                var units = ColourRing.ToUnits(Lean.Wrap(here - there + advance, shape.Panel.Period));
                if (shifts.Count > 0 && shifts[^1] is var before && before.Part == part && before.Last == row - 1 && before.Units == units)
                    shifts[^1] = before with { Last = row };
                else
                    shifts.Add(new ColourShift(part, row, row, units));
            }
        }
        return shifts.ToImmutable();
    }

    /// <summary>The rows before it, of its own part or of one below; none where it is the first.</summary>
    public ColourShift? Before(ImmutableArray<ColourShift> all)
    {
        for (var at = all.IndexOf(this) - 1; at >= 0; at--)
        {
            for (var part = Part; part is not null; part = Below(part))
            {
                if (all[at].Part == part)
                    return all[at];
            }
        }
        return null;

        ShapedPart? Below(ShapedPart part) =>
            part.Below is { } below ? all.Select(s => s.Part).FirstOrDefault(p => p?.Index == below) : null;
    }

    /// <summary>Two rows are no picture.</summary>
    public bool IsSeen => Last - First >= 2;

    /// <summary>What is seen of the rows, as far as they go on; null where the colours only jump.</summary>
    public MotifKind? Picture(PatternContext context, PiecePlan piece)
    {
        for (var row = First; row <= Last; row++)
        {
            // A row that goes on over chains at its end still has the lean of those before it.
            var units = Part!.Outline.At(row - Part.FirstRow).Units;
            if (Math.Abs(2 * piece.Shape!.Panel.LeanOf(units).UnitsPerRow - Units) < 1e-6)
                return context.MotifOf(piece, units);
        }
        return null;
    }

    public static bool IsTurned(PiecePlan piece) => piece.Working is Working.Turned or Working.RoundsTurned;

    /// <summary>Such as <c>2 stitches later</c>, or <c>exactly above itself</c>.</summary>
    public Phrase By(PatternContext context) => By(context, Units);

    private static Phrase By(PatternContext context, double units)
    {
        if (IsNone(units))
            return Phrase.Plain("exactly above itself");
        var pairs = context.Project.Fabric.Stitch.StitchesPerUnit > 1;
        var number = Math.Abs(units);
        var by = Math.Abs(units) switch
        {
            0.5 => pairs ? Phrase.Plain("half a pair") : Phrase.Plain("half a stitch"),
            1 => pairs ? Phrase.Plain("1 pair") : Phrase.Plain("1 stitch"),
            _ => pairs ? Phrase.Of($"{number} pairs") : Phrase.Of($"{number} stitches"),
        };
        return units > 0 ? Phrase.Of($"{by} earlier") : Phrase.Of($"{by} later");
    }

    private static bool IsNone(double units) => Math.Abs(units) < 1e-6;

    private static Phrase Moved(PatternContext context, double units, Phrase below) =>
        IsNone(units) ? Phrase.Of($"exactly above itself {below}") : Phrase.Of($"{By(context, units)} than it did {below}");

    /// <summary>The same in a shaped piece, such as <c>2 stitches later than two rows below</c>.</summary>
    public Phrase AgainstTwoBelow(PatternContext context) =>
        IsNone(Units) ? Phrase.Plain("exactly above itself two rows below") : Phrase.Of($"{By(context)} than two rows below");

    /// <summary>Sentences of a piece, as many as its rows differ; one that names both kinds of rows where it lies on a bias.</summary>
    public static ImmutableArray<Phrase> Said(PatternContext context, PiecePlan piece)
    {
        var below = Below(context, piece);
        return piece.Shape is { } shape && IsBiased(shape)
            ? [Phrase.Of($"In the order of work, each colour of a right-side row begins {Moved(context, 2 * shape.LeanFrom(0), below)}, each colour of a wrong-side row {Moved(context, 2 * shape.LeanFrom(1), below)}: the lines of one lean otherwise than those of the other.")]
            : [.. Of(piece).Select(s => Phrase.Of($"In the order of work, each colour begins {Moved(context, s.Units, below)}.")).Distinct()];
    }

    /// <summary>Whether right-side and wrong-side rows move otherwise, and it has two of each.</summary>
    private static bool IsBiased(ShapedPiece shape) => shape is { Bias: > 0, Rows: > 3 };

    /// <summary>Its rows, such as <c>rows 3 to 14</c>, or <c>second side, row 40</c>.</summary>
    public Phrase Rows
    {
        get
        {
            var rows = First == Last ? Phrase.Of($"row {First + 1}")
                : Last == First + 1 ? Phrase.Of($"rows {First + 1} and {Last + 1}")
                : Phrase.Of($"rows {First + 1} to {Last + 1}");
            return Part is { Below: not null } ? Phrase.Of($"{PartNames.Of(Part)}, {rows}") : rows;
        }
    }

    /// <summary>Such as <c>two rows below</c>.</summary>
    public static Phrase Below(PatternContext context, PiecePlan piece) => Phrase.Plain(
        !IsTurned(piece) ? "in the round below" : context.InRounds ? "two rounds below" : "two rows below");

    /// <summary>What stands with one chart where the charts, or the rows of one, differ.</summary>
    public static ImmutableArray<Block> With(PatternContext context, ChartVariant chart)
    {
        if (context.ShiftsAlike)
            return [];
        if (Said(context, chart.Piece) is [var one])
            return [new Paragraph(one)];
        return
        [
            new Paragraph(Phrase.Plain("In the order of work, each colour begins, against the row two below:")),
            new Bullets([.. Of(chart.Piece).Select(s => Phrase.Of($"{s.Rows}: {s.By(context)}."))]),
        ];
    }
}
