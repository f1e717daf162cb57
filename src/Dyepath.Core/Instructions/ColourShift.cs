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
    public string By(PatternContext context) => By(context, Units);

    private static string By(PatternContext context, double units)
    {
        if (Math.Abs(units) < 1e-6)
            return "exactly above itself";
        var by = Math.Abs(units) switch
        {
            0.5 => $"half a {context.UnitWord(one: true)}",
            1 => $"1 {context.UnitWord(one: true)}",
            var many => $"{MaterialsSection.Number(many)} {context.UnitWord()}",
        };
        return $"{by} {(units > 0 ? "earlier" : "later")}";
    }

    private static string Moved(PatternContext context, double units, string below) =>
        $"{By(context, units)}{(Math.Abs(units) < 1e-6 ? "" : " than it did")} {below}";

    /// <summary>Sentences of a piece, as many as its rows differ; one that names both kinds of rows where it lies on a bias.</summary>
    public static ImmutableArray<string> Said(PatternContext context, PiecePlan piece)
    {
        var below = Below(context, piece);
        return piece.Shape is { } shape && IsBiased(shape)
            ? [$"In the order of work, each colour of a right-side row begins {Moved(context, 2 * shape.LeanFrom(0), below)}, each colour of a wrong-side row {Moved(context, 2 * shape.LeanFrom(1), below)}: the lines of one lean otherwise than those of the other."]
            : [.. Of(piece).Select(s => $"In the order of work, each colour begins {Moved(context, s.Units, below)}.").Distinct()];
    }

    /// <summary>Whether right-side and wrong-side rows move otherwise, and it has two of each.</summary>
    private static bool IsBiased(ShapedPiece shape) => shape is { Bias: > 0, Rows: > 3 };

    /// <summary>Its rows, such as <c>rows 3 to 14</c>, or <c>second side, row 40</c>.</summary>
    public string Rows
    {
        get
        {
            var part = Part is { Below: not null } ? $"{PartNames.Of(Part)}, " : "";
            return First == Last
                ? FormattableString.Invariant($"{part}row {First + 1}")
                : FormattableString.Invariant($"{part}rows {First + 1} {(Last == First + 1 ? "and" : "to")} {Last + 1}");
        }
    }

    public static string Below(PatternContext context, PiecePlan piece) => IsTurned(piece) ? $"two {context.RowWord}s below" : "in the round below";

    /// <summary>What stands with one chart where the charts, or the rows of one, differ.</summary>
    public static ImmutableArray<Block> With(PatternContext context, ChartVariant chart)
    {
        if (context.ShiftsAlike)
            return [];
        if (Said(context, chart.Piece) is [var one])
            return [new Paragraph(Phrase.Plain(one))];
        return
        [
            new Paragraph(Phrase.Plain("In the order of work, each colour begins, against the row two below:")),
            new Bullets([.. Of(chart.Piece).Select(s => Phrase.Plain($"{s.Rows}: {s.By(context)}."))]),
        ];
    }
}
