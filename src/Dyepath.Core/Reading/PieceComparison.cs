using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>Pieces as read against pieces as planned.</summary>
internal static class PieceComparison
{
    /// <summary>
    /// Common instruction; turned rows of linen stitch with even counts begin with a space, and so does every other joined round.
    /// </summary>
    /// <param name="nth">Of the rows that begin with chains, from 0.</param>
    private static int TurningChains(string stitch, PiecePlan piece, int nth) => piece.Taper is not null ? 1 : stitch switch
    {
        "hdc" => 2,
        "dc" => 3,
        "linen" when piece.Working == Fabrics.Working.Turned && piece.Stitches % 2 == 0 => 2,
        "linen" when piece.Working == Fabrics.Working.Rounds => 1 + nth % 2,
        _ => 1,
    };

    /// <summary>As planned; beyond a triangle's last row none.</summary>
    private static int StitchesOf(PiecePlan piece, int row) => piece.Taper is not { } taper
        ? piece.RowStitches[row % piece.RowStitches.Length]
        : row < piece.Rows ? taper.At(row) : 0;

    public static void Compare(Plan plan, SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var pieces = read.Pieces.Where(p => p.Size == size.Name).ToArray();
        if (pieces.Length != size.Pieces.Length)
        {
            notes.Add((size.Name, $"the text has {pieces.Length} pieces, the plan {size.Pieces.Length}"));
            return;
        }
        foreach (var (said, planned) in pieces.Zip(size.Pieces))
        {
            var place = $"{size.Name}, {planned.Name}";
            var name = Wording.Capital(planned.Name) + (planned.Copies == 1 ? "" : $" (make {planned.Copies})");
            if (said.Name != name)
                notes.Add((place, $"the text heads it “{said.Name}”"));
            Same(place, "chains", said.Chains, planned.FoundationChains);
            Same(place, "rows", planned.Shape is null ? said.Rows : said.Shaped.Select(r => r.Row).DefaultIfEmpty(0).Max(), planned.Rows);
            if (planned.Shape is not null || !said.IsRectangle)
                ShapeComparison.Compare(plan, planned, said, place, notes);
            for (var row = 0; row < said.RowStitches.Length && planned.Shape is null; row++)
                Same(place, $"stitches in row {row + 1}", said.RowStitches[row], StitchesOf(planned, row));
            Triangle(plan, planned, said, place);
            if (said.TurningChains.Where((n, nth) => n != TurningChains(plan.Project.Fabric.Stitch.Id, planned, nth)).Any())
                notes.Add((place, $"rows begin with {string.Join(", ", said.TurningChains)} chains in the text"));
            if (!said.Marks.SequenceEqual(planned.Marks.Select(m => m.Position)))
                notes.Add((place, $"the text marks {string.Join(", ", said.Marks)}, the plan {string.Join(", ", planned.Marks.Select(m => m.Position))}"));
            if (said.Cuff != (planned.Id != Garments.PieceId.Sleeve ? null : plan.Direction == Garments.Direction.Up ? "the foundation chain." : "the edge where odd-numbered rows begin."))
                notes.Add((place, $"the cuff is “{said.Cuff}” in the text"));
            Same(place, "rows of side bands", said.BandRows, planned.SideBandRows);
            Same(place, "stitches of side bands", said.BandStitches, planned.SideBand?.Stitches ?? 0);
            Same(place, "mark of the side bands", said.BandMark, planned.SideBand?.Below ?? 0);
            if (planned.Pooled)
                Beginning(plan, place, planned, said.Beginning);
        }

        void Triangle(Plan whole, PiecePlan planned, ReadPiece said, string place)
        {
            if (planned.Taper is null != said.Triangle is null)
                notes.Add((place, "the text calls it a triangle and the plan does not, or the other way round"));
            if (planned.Taper is not { } taper || said.Triangle is not { } triangle)
                return;
            Same(place, "rows told", said.RowStitches.Length, planned.Rows);
            var fills = whole.Construction.GroupOf(planned.Id).Fills!;
            var (wearers, slope) = taper.Slope == PieceSide.Left ? ("left", "end") : ("right", "begin");
            if ((triangle.Of, triangle.Meets) != ($"{PlaceNames.Of(fills.Into)} {PlaceNames.Of(fills.Opening)}", PlaceNames.Of(fills.Opening))
                || (triangle.Wearers, triangle.Slope) != (wearers, slope)
                || !Amounts.Says(triangle.Width, planned.Width) || !Amounts.Says(triangle.Height, planned.Height))
                notes.Add((place, $"the text says {triangle}"));
            // Its outside faces in odd rows, which are worked from the right to the left.
            foreach (var row in said.Shaped.Where(r => r.TogetherAtEnd is not null))
            {
                var atLeft = row.TogetherAtEnd == (row.Row % 2 == 1);
                if (atLeft != (taper.Slope == PieceSide.Left))
                    notes.Add((place, $"row {row.Row} works stitches together at the upright edge"));
            }
        }

        void Same(string place, string what, int said, int planned)
        {
            if (said != planned)
                notes.Add((place, $"{what}: {said} in the text, {planned} in the plan"));
        }

        void Beginning(Plan whole, string place, PiecePlan planned, ReadBeginning? said)
        {
            var symbols = whole.Sequence.Colours;
            var nth = 1 + (int)Math.Floor(planned.Start - whole.Sequence.UnitsBefore(planned.StartSection) + 1e-6);
            if (said?.FirstStitch != $"{symbols[planned.StartSection].Symbol}{nth}")
                notes.Add((place, $"row 1 begins at {said?.FirstStitch} in the text, at {symbols[planned.StartSection].Symbol}{nth} in the plan"));
            if (planned.Foundation.Companion || said is null)
                return;
            Same(place, "extra chains", said.ExtraChains, planned.Foundation.MoreChains);
            if (said.EasyColour != symbols[planned.Foundation.ColourSection].Symbol
                || said.KnotColour != symbols[planned.Foundation.KnotSection].Symbol)
                notes.Add((place, $"the slip knot lies at {said.EasyColour} or {said.KnotColour} in the text, at {symbols[planned.Foundation.ColourSection].Symbol} in the plan"));
            if (!Amounts.Says(said.Knot, whole.Sequence.YarnPerUnit * planned.Foundation.KnotInto))
                notes.Add((place, $"the slip knot lies {said.Knot} in, not {whole.Sequence.YarnPerUnit * planned.Foundation.KnotInto}"));
        }
    }
}
