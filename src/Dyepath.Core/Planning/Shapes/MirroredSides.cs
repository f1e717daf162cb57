using System.Collections.Immutable;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>
/// The two sides of a piece with a neck in its middle, worked up. Where the motif goes on they are alike but for a row, since rows end at
/// either edge by turns; where it gives way each by itself may give way elsewhere, and one can be made the mirror of the other.
/// </summary>
internal static class MirroredSides
{
    /// <summary>Rows by which mirrored edges differ: every other row ends at one edge.</summary>
    private const int Apart = 1;

    /// <summary>
    /// Of a piece's stitches: so much more of the motif is given for sides that are alike (an assumption without a source).
    /// </summary>
    private const double Given = 0.02;

    private static readonly ImmutableArray<(bool FromRight, int Shift)> Ways =
        [(true, -Apart), (true, Apart), (false, -Apart), (false, Apart)];

    /// <summary>
    /// The same with either side as the other one is, whichever loses less of the motif; as it is where its sides are alike, or where
    /// that would lose much more.
    /// </summary>
    public static CutOutline Of(SteadyPanel panel, CutOutline outline)
    {
        if (outline.KeepsMotif || outline.Parts.Length != 3 || AreAlike(outline.Parts))
            return outline;
        return Ways.Select(way => Mirrored(panel, outline, way.FromRight, way.Shift)).OfType<CutOutline>()
            .Where(m => m.LostShare <= outline.LostShare + Given && AreAlike(m.Parts)).MinBy(m => m.LostShare) ?? outline;
    }

    /// <summary>Column for column, one side's is as high as the other's, or a row higher or lower.</summary>
    private static bool AreAlike(ImmutableArray<PartOutline> parts)
    {
        var tops = new int[parts[0].Outline.LastColumn + 1];
        foreach (var part in parts)
        {
            foreach (var row in part.Outline.ByRow())
                tops.AsSpan(row.First..(row.Last + 1)).Fill(part.FirstRow + row.FromRow);
        }
        return Enumerable.Range(0, tops.Length / 2).All(c => Math.Abs(tops[c] - tops[^(c + 1)]) <= Apart);
    }

    /// <summary>Null where no rows can be worked so.</summary>
    private static CutOutline? Mirrored(SteadyPanel panel, CutOutline outline, bool fromRight, int shift)
    {
        var last = outline.Units - 1;
        var (whole, right, left) = (outline.Parts[0], outline.Parts[1], outline.Parts[2]);
        try
        {
            var below = fromRight
                ? Rows(whole, whole, (own, its) => (own.First, last - its.First))
                : Rows(whole, whole, (own, its) => (last - its.Last, own.Last));
            var piece = ShapedPiece.Work(panel, fromRight ? [below, right, Side(left, right)] : [below, Side(right, left), left]);
            // Where a part begins, an edge may have no row left to end at.
            return piece.Steps.Any(s => s.Act == ShapingAct.SlipStitchBack) ? null : outline.Of(piece);
        }
        catch (ArgumentException)
        {
            // Rows that would grow where they begin, or lie over each other.
            return null;
        }

        PartOutline Side(PartOutline part, PartOutline other) => Rows(part, other, (_, its) => (last - its.Last, last - its.First));

        PartOutline Rows(PartOutline part, PartOutline other, Func<OutlineRun, OutlineRun, (int First, int Last)> edges) => part with
        {
            Outline = Outline.ByRow([.. Enumerable.Range(0, part.Outline.Rows).Select(row =>
                edges(part.Outline.At(row), other.Outline.At(Math.Clamp(row - shift, 0, part.Outline.Rows - 1))))]),
        };
    }
}
