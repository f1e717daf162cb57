using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>Where the maker is and what she can do about a drift.</summary>
public sealed record DriftPlace
{
    /// <param name="piece">The piece as planned.</param>
    /// <param name="worked">Stitches worked, in [0, the piece's].</param>
    public DriftPlace(PlannedPiece piece, int worked)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Piece = piece;
        Worked = Guard.InRange(worked, 0, piece.Stitches, "stitches");
    }

    /// <summary>As planned.</summary>
    public PlannedPiece Piece { get; }

    /// <summary>Stitches, from the piece's beginning.</summary>
    public int Worked { get; }

    /// <summary>As <see cref="HandModel.LargestCorrection"/>.</summary>
    public double LargestCorrection { get; init => field = Guard.InRange(value, 0.001, 0.5, "of the yarn per stitch", nameof(LargestCorrection)); } = 0.06;

    /// <summary>The level of <see cref="TensionGrades"/> that she holds; 0, her natural hands.</summary>
    public double Holding { get; init; }

    /// <summary>The most that a looser or tighter turning chain gives or takes, in stitches of yarn, in [0, 5]; 0 in a spiral.</summary>
    public double Turn { get; init => field = Guard.InRange(value, 0, 5, "stitches", nameof(Turn)); }

    /// <summary>Whether an edge stitch may be skipped or added here: at a row's end, in fabric that hides it.</summary>
    public bool EdgeStitch { get; init; }

    /// <summary>
    /// What the next hook size changes in the yarn per stitch, relative, in [0, 0.5]; 0 where there is no other hook. By default a
    /// quarter of a millimetre at 4 mm: yarn in proportion to the diameter's 0.6th power (<see cref="Measuring.HookResponse"/>).
    /// </summary>
    public double HookStep { get; init => field = Guard.InRange(value, 0, 0.5, "of the yarn per stitch", nameof(HookStep)); } = 0.04;

    /// <summary>Whether the yarn may be cut and joined again here.</summary>
    public bool CanJoin { get; init; }

    /// <summary>The row, from 0, from whose beginning on ripping back is worth it; see <see cref="BadRows"/>. Missing where it is not.</summary>
    public int? RipTo { get; init; }
}
