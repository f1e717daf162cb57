using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>The whole of what Dyepath worked out for one project; every number of the pattern is read from here.</summary>
/// <param name="Sequence">The yarn's colours as worked, and what was measured of them; the plan rests on it.</param>
/// <param name="Why">One sentence: why this direction and these counts.</param>
/// <param name="Options">Both directions where both are possible, for comparison; the chosen one is among them.</param>
public sealed record Plan(
    Project Project,
    ColourSequence Sequence,
    Length StitchWidth,
    Length RowHeight,
    Direction Direction,
    string Why,
    ImmutableArray<SizePlan> Sizes,
    ImmutableArray<DirectionOption> Options,
    ImmutableArray<Finding> Findings)
{
    /// <summary>The rules that the targets and counts follow, for the booklet and the audit to quote.</summary>
    public required ImmutableArray<PlanRule> Rules { get; init; }

    /// <summary>The option that the sizes are planned by.</summary>
    public DirectionOption Chosen => Options.First(o => o.Direction == Direction);
}

/// <summary>A rule of the trade that the plan follows, in one or two sentences.</summary>
/// <param name="Id">The measure or step that it is for, such as <c>width</c>.</param>
public sealed record PlanRule(string Id, string Text);

/// <summary>What one direction gives.</summary>
/// <param name="WorstError">Largest finished-width or finished-length error over the sizes.</param>
/// <param name="Curve">Worst error by how many distinct counts are allowed; never rises.</param>
public sealed record DirectionOption(
    Direction Direction,
    bool Feasible,
    string Reason,
    ImmutableArray<int> Counts,
    Length WorstError,
    Length TypicalError,
    ImmutableArray<CurvePoint> Curve)
{
    /// <summary>The sizes and every count that makes the motif, by finished measure.</summary>
    public required FitRuler Ruler { get; init; }
}

public sealed record CurvePoint(int Counts, Length WorstError, ImmutableArray<int> Stitches);

/// <param name="Body">The chart's measures that were used, by name.</param>
public sealed record SizePlan(
    string Name,
    ImmutableSortedDictionary<string, Length> Body,
    ImmutableSortedDictionary<GarmentMeasure, Length> Target,
    ImmutableSortedDictionary<GarmentMeasure, Length> Finished,
    ImmutableArray<PiecePlan> Pieces,
    ImmutableArray<EdgingPlan> Edgings,
    ImmutableArray<SeamPlan> Seams,
    YarnPlan Yarn)
{
    /// <summary>Missing where the garment has no such piece.</summary>
    public PiecePlan? Find(PieceId id) => Pieces.FirstOrDefault(p => p.Id == id);

    /// <exception cref="InvalidOperationException">The garment has no such piece.</exception>
    public PiecePlan this[PieceId id] => Pieces.First(p => p.Id == id);
}

/// <summary>One rectangle of fabric.</summary>
/// <param name="Copies">How many are made alike (2 for sleeves).</param>
/// <param name="Pooled">Worked in the variegated yarn.</param>
/// <param name="Stitches">Stitches of the first row; in linen stitch two to a pooling unit.</param>
/// <param name="RowStitches">One number, or two that alternate.</param>
/// <param name="FoundationChains">Chains to begin with, the ones that make the first stitch's height included.</param>
/// <param name="Start">Yarn position of the first stitch in pooling units, [0, C).</param>
/// <param name="StartSection">The section in which the first stitch lies.</param>
/// <param name="TurnCost">Yarn of a turn or join, in pooling units.</param>
/// <param name="Width">Across the piece as worn, before seams and edgings, at the garment's gauge.</param>
/// <param name="Height">Down the piece as worn, before seams and edgings.</param>
/// <param name="SideBandRows">Plain rows of companion yarn worked along each side, those that the seam hides included; 0 for none.</param>
/// <param name="Openings">What its seams leave open, in the order in which it is marked.</param>
public sealed record PiecePlan(
    PieceId Id,
    int Copies,
    bool Pooled,
    Working Working,
    int Stitches,
    ImmutableArray<int> RowStitches,
    int Rows,
    int FoundationChains,
    double Start,
    int StartSection,
    double TurnCost,
    double Lean,
    MotifKind Motif,
    double ForgivesTighter,
    double ForgivesLooser,
    Length Width,
    Length Height,
    int SideBandRows,
    ImmutableArray<PieceOpening> Openings)
{
    /// <summary>Such as <c>front</c>.</summary>
    public string Name => PlaceNames.Of(Id);

    /// <exception cref="InvalidOperationException">The piece has no such opening.</exception>
    public PieceOpening Opening(OpeningId id) => Openings.First(o => o.Id == id);

    /// <summary>The stitches and rows to mark, in order.</summary>
    public ImmutableArray<PieceMark> Marks => [.. Openings.SelectMany(o => o.Marks)];

    public required FoundationPlan Foundation { get; init; }

    /// <summary>
    /// Sewn with the side that its odd-numbered rows show outwards turned in, so that its motif mirrors its neighbour's at every
    /// seam. Back and forth work looks alike on both sides.
    /// </summary>
    public bool WrongSideOut { get; init; }
}

/// <summary>A stretch of a piece's edge that its seams leave open.</summary>
/// <param name="AlongStitches">True: the stretch is counted in stitches of the first row, from its beginning; false: in rows.</param>
/// <param name="First">From 1.</param>
/// <param name="Last">The last stitch or row of the stretch; an armhole ends where the piece does.</param>
public sealed record PieceOpening(OpeningId Id, bool AlongStitches, int First, int Last)
{
    public int Length => Last - First + 1;

    /// <summary>A neck is marked at both ends, an armhole where it begins: it ends at the shoulder.</summary>
    internal IEnumerable<PieceMark> Marks => Id == OpeningId.Neck
        ? [new PieceMark(this, true, First), new PieceMark(this, false, Last)]
        : [new PieceMark(this, true, First)];
}

/// <summary>A stitch or row to mark: an opening's beginning or end.</summary>
/// <param name="Position">From 1.</param>
public sealed record PieceMark(PieceOpening Opening, bool Begins, int Position)
{
    public bool AlongStitches => Opening.AlongStitches;
}

/// <param name="Spread">The stitches picked up round or along the edge, and how they are spread.</param>
/// <param name="Depth">What the edging adds to the edge.</param>
public sealed record EdgingPlan(EdgingPlace Where, string Edging, int Copies, PickUp Spread, int Rounds, Length Depth)
{
    /// <summary>Stitches picked up.</summary>
    public int PickUp => Spread.Total;
}

/// <param name="First">The piece, or the pieces one after the other, along one side of it.</param>
/// <param name="PhaseJump">Mean size of the jump in phase along the seam, in pooling units of yarn.</param>
/// <param name="Match">Share of the adjoining stitches that jump by less than half a pooling unit, in [0, 1].</param>
public sealed record SeamPlan(SeamId Id, ImmutableArray<PieceId> First, PieceId Second, double PhaseJump, double Match, Length Length)
{
    /// <summary>Such as <c>left side</c>.</summary>
    public string Where => PlaceNames.Of(Id);

    internal bool Joins(PieceId piece) => Second == piece || First.Contains(piece);
}

/// <param name="Length">Variegated yarn, everything included.</param>
/// <param name="BallsTypical">Balls when joins fall as planned.</param>
/// <param name="BallsSafe">Balls with the reserve.</param>
/// <param name="Companion">Companion yarn, where there is one.</param>
/// <param name="Uses">What takes how much, for the audit.</param>
/// <param name="Joins">Where each ball ends.</param>
public sealed record YarnPlan(
    Length Length,
    Mass Mass,
    int BallsTypical,
    int BallsSafe,
    Length Leftover,
    CompanionPlan? Companion,
    ImmutableArray<YarnUse> Uses,
    ImmutableArray<BallJoin> Joins)
{
    /// <summary>The ball that a stitch takes its yarn from; null where no ball ends in its piece, so that none can be told.</summary>
    /// <param name="row">From 1.</param>
    /// <param name="stitch">From 1, in working order.</param>
    public int? BallAt(string piece, int row, int stitch)
    {
        var ends = Joins.Where(j => j.Piece == piece).ToArray();
        return ends.FirstOrDefault(j => (j.Row, j.Stitch).CompareTo((row, stitch)) > 0)?.Ball ?? ends.LastOrDefault()?.Ball + 1;
    }
}

public sealed record CompanionPlan(Length Length, Mass Mass, int Balls);

public sealed record YarnUse(string What, bool Companion, Length Length);

/// <param name="Row">Row in which the ball ends, from 1; 0 in the foundation.</param>
/// <param name="Wasted">Yarn cut away to reach the same place of the sequence.</param>
public sealed record BallJoin(int Ball, string Piece, int Row, int Stitch, Length Wasted);
