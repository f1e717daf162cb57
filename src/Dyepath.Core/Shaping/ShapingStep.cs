using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>What a maker does to shape a piece.</summary>
public enum ShapingAct
{
    /// <summary>Begin the piece on its foundation chain.</summary>
    Begin,

    /// <summary>Turn before the row below ends; what is left is worked no more, or later as <see cref="WorkOverStanding"/>.</summary>
    LeaveUnworked,

    /// <summary>Slip stitch back over units of the row just worked, before the next one.</summary>
    SlipStitchBack,

    /// <summary>Work on over chains of companion yarn at the row's end.</summary>
    WorkOverChains,

    /// <summary>Work on over stitches that short rows left standing.</summary>
    WorkOverStanding,

    /// <summary>Fasten off at the end of a part.</summary>
    FastenOff,

    /// <summary>Join the yarn at its own place of the sequence and begin a part on the stitches of another.</summary>
    Join,
}

/// <summary>A place of the colour sequence.</summary>
/// <param name="Section">Index of the section.</param>
/// <param name="UnitsInto">Pooling units from its beginning, in [0, its length).</param>
public readonly record struct YarnPlace(int Section, double UnitsInto)
{
    /// <param name="place">Micro-units from the sequence's beginning, any value.</param>
    public static YarnPlace Of(ColourRing ring, long place)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var (section, into) = ring.Locate(place);
        return new YarnPlace(section, ColourRing.ToUnits(into));
    }
}

/// <summary>One step of shaping.</summary>
/// <param name="Act">What is done.</param>
/// <param name="Part">Index of the part.</param>
/// <param name="Row">Of the piece, from 0.</param>
/// <param name="Edge">At which edge of the row.</param>
/// <param name="Column">
/// The column that the row begins with (<see cref="ShapingAct.Begin"/>, SlipStitchBack, Join) or ends with (all others).
/// </param>
/// <param name="Units">
/// Pooling units left, slip-stitched over or grown; of Begin, those of the row that the foundation chain carries; of Join, those passed
/// over between the edge of the part below and the join; of FastenOff 0.
/// </param>
/// <param name="Place">
/// Where the sequence is when the first stitch after Begin, SlipStitchBack or Join is made; of a turning chain that counts, when the chain
/// is.
/// </param>
public sealed record ShapingStep(ShapingAct Act, int Part, int Row, RowEdge Edge, int Column, int Units, YarnPlace? Place = null)
{
    /// <summary>Pooling units of yarn that slip stitches pull through.</summary>
    public double Yarn { get; init; }
}

/// <summary>A place where the colours stop going on as in the steady panel.</summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Row">The first row whose colours lie off, of the piece.</param>
/// <param name="Edge">The edge at which that row begins, and at which the row before ended.</param>
/// <param name="Column">The column that it begins with.</param>
/// <param name="Jump">
/// By how many pooling units of yarn they lie off across that turn, in (−P/2, P/2]; null for a part whose rows are worked the other way
/// than the panel's.
/// </param>
/// <param name="Lean">Units per row that rows of this width lean from here on, as long as their edges stay.</param>
/// <param name="KeepsLean">Whether that is the panel's lean: then the motif is displaced once and goes on.</param>
public sealed record MotifBreak(int Part, int Row, RowEdge Edge, int Column, double? Jump, double Lean, bool KeepsLean);

/// <summary>
/// A strip at a row's end that rows before it left standing (law 11): every stitch of it has the panel's colour, but the rows between are
/// missing there, so that the picture jumps across it.
/// </summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Row">The row that goes on over it, of the piece.</param>
/// <param name="Edge">At which it ends.</param>
/// <param name="Column">Of the strip, the one nearest to that edge.</param>
/// <param name="Units">Columns.</param>
/// <param name="Skipped">Rows that are missing below it.</param>
/// <param name="Jump">
/// By how many pooling units of yarn its colours lie off those that would follow the rows below it, in (−P/2, P/2]: twice the lean for each
/// pair of rows that is missing.
/// </param>
public sealed record SkippedStrip(int Part, int Row, RowEdge Edge, int Column, int Units, int Skipped, double Jump);
