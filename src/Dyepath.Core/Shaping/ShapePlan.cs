namespace Dyepath.Core.Shaping;

/// <summary>How a silhouette may be followed.</summary>
public sealed record ShapeOptions
{
    /// <summary>
    /// How far an edge may lie off the silhouette in any row, in units. Where steps that keep the motif leave more, an outline with steps
    /// that break it is offered beside. Null: none is offered.
    /// </summary>
    public double? Tolerance { get; init; }

    /// <summary>Whether rows may be worked on over chains of companion yarn.</summary>
    public bool Chains { get; init; } = true;

    /// <summary>Whether rows may begin with slip stitches back, where those keep the motif.</summary>
    public bool SlipStitches { get; init; }

    /// <summary>
    /// How much nearer a step has to bring the outline, in pooling units times rows, 0 to 1,000. With 0 fewer steps decide only between
    /// outlines that are equally near; the default spares the maker steps for the sake of a few units in a single row (an assumption
    /// without a source).
    /// </summary>
    public double StepWorth { get; init; } = 4;

    /// <summary>
    /// Where the motif is broken, how much less it has to break for a step, in pooling units that rows jump by, 0 to 100: without it, an
    /// edge wanders in and out by a stitch for the sake of jumps that nobody sees, and its words are long.
    /// </summary>
    public double StepSpares { get; init; }

    /// <summary>Fewest units in a row, 1 to 1,000.</summary>
    public int LeastUnits { get; init; } = 1;

    /// <summary>
    /// The panel is the widest that rows may be: the first row has any of its columns, and every edge lies a whole number of
    /// <see cref="SteadyPanel.KeepingStep"/> within it. Nothing then breaks the motif, so that no tolerance is looked at.
    /// </summary>
    public bool WithinPanel { get; init; }
}

/// <summary>How far an edge lies off the silhouette.</summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Row">Of the piece.</param>
/// <param name="Edge">Which edge of the row.</param>
/// <param name="Units">Units by which the worked edge lies further left; negative further right.</param>
public readonly record struct EdgeMiss(int Part, int Row, RowEdge Edge, double Units);

/// <summary>The outline nearest to a silhouette.</summary>
/// <param name="Piece">The outline as it is worked.</param>
/// <param name="Distance">
/// The area between outline and silhouette, in pooling units times rows: over all rows and both edges, how far they lie apart.
/// </param>
/// <param name="Worst">The row and edge that lie furthest off.</param>
/// <param name="Nearer">
/// Where <see cref="ShapeOptions.Tolerance"/> is not met: an outline that breaks the motif as little as it takes to meet it.
/// </param>
public sealed record ShapePlan(ShapedPiece Piece, double Distance, EdgeMiss Worst, ShapePlan? Nearer = null)
{
    /// <summary>The panel's column at which the first row has its right-hand edge; the piece counts its columns from there.</summary>
    public int FirstColumn { get; init; }
}
