using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>One piece: chains, start, lean, measures.</summary>
internal static class PieceCheck
{
    public static void Piece(Plan plan, PiecePlan piece, PlainFabric fabric, Disagreements notes)
    {
        notes.Same("foundationChains", piece.FoundationChains, piece switch
        {
            { Taper: not null } => piece.Stitches + 1,
            { Working: Working.Turned } => Chains(fabric, piece.Stitches),
            _ => piece.Stitches,
        });
        notes.Same("foundation.chains", piece.Foundation.Chains, piece.FoundationChains);
        if (fabric.PerUnit == 2 && piece.Working != Working.Turned && !LinenMeets(piece))
            notes.Say("stitches", $"{piece.Stitches} stitches of linen stitch bring a single crochet over or beside another where a round ends.");
        if (piece.Shape is not null)
            ShapeCheck.Shape(plan, piece, fabric, notes);
        if (piece.Taper is { } taper)
        {
            Triangle(plan, piece, taper, notes);
            notes.Same("width", piece.Width, fabric.TriangleStitch * piece.Stitches, Length.FromMillimetres(0.1));
            notes.Same("height", piece.Height, fabric.EdgingRow * piece.Rows, Length.FromMillimetres(0.1));
            return;
        }
        var stitches = piece.Shape is null ? piece.RowStitches.Average() : ShapeCheck.Width(piece);
        var (along, up) = (fabric.StitchWidth * stitches, fabric.RowHeight * piece.Rows);
        var (width, height) = plan.Direction == Direction.Up ? (along, up) : (up, along);
        notes.Same("width", piece.Width, width, Length.FromMillimetres(0.1));
        notes.Same("height", piece.Height, height, Length.FromMillimetres(0.1));
        if (!piece.Pooled)
            return;
        if (plan.Project.Garment.StartOf(piece.Id) is { } asked)
            notes.Same("start", piece.Start, asked, 0);
        notes.Same("startSection", piece.StartSection, SectionAt(plan.Sequence.Ring, piece.Start));
        if (!piece.Foundation.Companion)
        {
            // Along the yarn as it is dyed: from the knot by the chains' yarn to where the first stitch lies within its colour.
            var (dyed, sequence) = (plan.Sequence.Dyed, plan.Sequence.Ring.SequenceUnits);
            var end = dyed.Take(piece.Foundation.KnotSection).Sum() + piece.Foundation.KnotInto + piece.Foundation.Yarn;
            var nth = (piece.Start % sequence + sequence) % sequence - Begin(plan.Sequence.Ring, piece.StartSection);
            var share = nth * ColourRing.Unit / plan.Sequence.Ring.Sections[piece.StartSection];
            var start = dyed.Take(piece.StartSection).Sum() + share * dyed[piece.StartSection];
            notes.Same("foundation.knotInto", 0, Math.IEEERemainder(end - start, sequence), 1e-4);
        }
        if (fabric.Period is { } period)
            notes.Same("lean", piece.Lean, Lean(piece, fabric.PerUnit, period), 1e-5);
    }

    /// <summary>
    /// From all of its stitches down to one, each row as near to the straight line as whole stitches come, no row losing more than two; the
    /// slope lies away from the upright edge, which is sewn.
    /// </summary>
    private static void Triangle(Plan plan, PiecePlan piece, Taper taper, Disagreements notes)
    {
        notes.Same("taper, first row", taper.At(0), piece.Stitches);
        notes.Same("taper, last row", taper.At(piece.Rows - 1), 1);
        for (var row = 1; row < piece.Rows; row++)
        {
            var line = piece.Stitches - (piece.Stitches - 1.0) * row / (piece.Rows - 1);
            notes.Same($"taper, row {row + 1}", taper.At(row), line, 0.5 + 1e-9);
            if (taper.At(row - 1) - taper.At(row) is < 0 or > 2)
                notes.Say($"taper, row {row + 1}", $"It has {taper.At(row)} stitches over {taper.At(row - 1)}.");
        }
        if (plan.Construction.IsSewn(piece.Id, taper.Slope) || !plan.Construction.IsSewn(piece.Id, taper.Slope.Mirrored()))
            notes.Say("taper", $"It is sewn along its slope, or not along the other edge.");
    }

    /// <summary>
    /// Lays single crochets and chains round twice. Joined, a round's end must differ from its beginning, which it meets; in a
    /// spiral, every stitch from the one that it is worked over.
    /// </summary>
    private static bool LinenMeets(PiecePlan piece)
    {
        var isChain = Enumerable.Range(0, 2 * piece.Stitches).Select(i => i % 2 == 1).ToArray();
        return piece.Working == Working.Spiral
            ? Enumerable.Range(0, piece.Stitches).All(i => isChain[piece.Stitches + i] != isChain[i])
            : isChain[piece.Stitches - 1] != isChain[0];
    }

    private static int Chains(PlainFabric fabric, int stitches) => (fabric.Stitch.Id, fabric.TurningChainCounts) switch
    {
        ("sc", false) => stitches + 1,
        ("sc", true) => stitches,
        ("hdc", false) => stitches + 2,
        ("hdc", true) => stitches + 1,
        ("dc", true) => stitches + 2,
        ("dc", false) => stitches + 3,
        ("linen", _) => stitches + (stitches % 2 == 0 ? 2 : 1),
        _ => stitches + fabric.Stitch.TurningChains - (fabric.TurningChainCounts ? 1 : 0),
    };

    private static int SectionAt(ColourRing ring, double place)
    {
        var at = place % ring.SequenceUnits;
        for (var section = 0; section < ring.Sections.Length; section++)
        {
            at -= ColourRing.ToUnits(ring.Sections[section]);
            if (at < -1e-9)
                return section;
        }
        return 0;
    }

    private static double Begin(ColourRing ring, int section) => ring.Sections.Take(section).Sum() / (double)ColourRing.Unit;

    /// <summary>
    /// How far the yarn has gone round its period when a row comes that is worked the same way, shared among the rows
    /// between.
    /// </summary>
    private static double Lean(PiecePlan piece, int perUnit, double period)
    {
        var turned = piece.Working is Working.Turned or Working.RoundsTurned;
        var rows = turned || piece.RowStitches.Length == 2 ? 2 : 1;
        var yarn = 0.0;
        for (var row = 0; row < rows; row++)
        {
            var stitches = piece.Shape is null ? piece.RowStitches[row % piece.RowStitches.Length]
                : piece.Shape.Bias > 0 ? piece.Shape.Parts[0].Outline.At(row).Units
                : ShapeCheck.Width(piece);
            yarn += (double)stitches / perUnit + piece.TurnCost;
        }
        while (yarn > period / 2 + 1e-7)
            yarn -= period;
        return yarn / rows;
    }
}
