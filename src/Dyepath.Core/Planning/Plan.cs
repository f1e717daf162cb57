using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>The whole of what Dyepath worked out for one project; every number of the pattern is read from here.</summary>
/// <param name="Project">What it was worked out from.</param>
/// <param name="Sequence">The yarn's colours as worked, and what was measured of them; the plan rests on it.</param>
/// <param name="Direction">The one chosen, for all sizes.</param>
/// <param name="Sizes">In the pattern's order.</param>
/// <param name="Options">Both directions where both are possible, for comparison; the chosen one is among them.</param>
/// <param name="Findings">Notes and warnings; a plan has no faults.</param>
public sealed record Plan(
    Project Project,
    ColourSequence Sequence,
    Direction Direction,
    ImmutableArray<SizePlan> Sizes,
    ImmutableArray<DirectionOption> Options,
    ImmutableArray<Finding> Findings)
{
    /// <summary>In the state that the garment is sized by, in the chosen direction.</summary>
    public required Length StitchWidth { get; init; }

    /// <summary>In the state that the garment is sized by, in the chosen direction.</summary>
    public required Length RowHeight { get; init; }

    /// <summary>Of the edgings' single crochet, beside a fabric of that direction.</summary>
    public required EdgingGauge EdgingGauge { get; init; }

    /// <summary>What the targets and counts follow a rule for; <see cref="RuleWords"/> says it.</summary>
    public required ImmutableArray<PlanRule> Rules { get; init; }

    /// <summary>What is furthest off of all measures; missing where that is one of those that the counts decide.</summary>
    public FitError? FurthestBeyond { get; init; }

    /// <summary>A measure of swatch or yarn cannot be right, and every figure of the plan rests on it.</summary>
    public bool IsDoubtful => Findings.Any(YarnFindings.IsWrong);

    /// <summary>How its pieces are put together.</summary>
    public Construction Construction => Project.Garment.Shape.Construct(Project.Garment);

    /// <summary>The option that the sizes are planned by.</summary>
    public DirectionOption Chosen => Options.First(o => o.Direction == Direction);
}

/// <summary>What one direction gives.</summary>
/// <param name="Direction">What is compared.</param>
/// <param name="Feasible">Counts that make the motif serve every size.</param>
/// <param name="Counts">Distinct stitch counts over all sizes; empty where none serve.</param>
/// <param name="TypicalError">How far a size's measure is off, in the root mean square.</param>
/// <param name="Curve">Worst error by how many distinct counts are allowed; never rises.</param>
public sealed record DirectionOption(
    Direction Direction,
    bool Feasible,
    ImmutableArray<int> Counts,
    Length TypicalError,
    ImmutableArray<CurvePoint> Curve)
{
    /// <summary>Why no counts serve; none where some do.</summary>
    public ImmutableArray<Finding> Reasons { get; init; } = [];

    /// <summary>Share of yarn per stitch that each of its counts forgives before the motif is lost, 0 to 1.</summary>
    public double Forgives { get; init; }

    /// <summary>What is furthest off; missing where no size is planned.</summary>
    public FitError? Furthest { get; init; }

    /// <summary>How far the furthest is off; zero where no size is planned.</summary>
    public Length WorstError => Furthest?.Off ?? Length.Zero;

    /// <summary>The measures that its counts decide: <see cref="WorstError"/> is the largest of theirs alone.</summary>
    public ImmutableArray<GarmentMeasure> Decides { get; init; } = [];

    /// <summary>
    /// Share of the variegated stitches at which the colours draw something else than the motif, since edges are cut; 0 to 1.
    /// </summary>
    public double LostShare { get; init; }

    /// <summary>The sizes and every count that makes the motif, by finished measure.</summary>
    public required FitRuler Ruler { get; init; }
}

/// <summary>What so many distinct counts come to.</summary>
/// <param name="Counts">How many are allowed.</param>
/// <param name="WorstError">How far the furthest size is then off.</param>
/// <param name="Stitches">The counts that are then used.</param>
public sealed record CurvePoint(int Counts, Length WorstError, ImmutableArray<int> Stitches);

/// <summary>Every number of one size.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Target">Finished measures as they are asked for, by rule or by hand.</param>
/// <param name="Finished">What they come to in whole stitches and rows.</param>
/// <param name="Pieces">In the order in which they are made.</param>
/// <param name="Edgings">In the order in which they are worked.</param>
/// <param name="Seams">In the order in which a seam table lists them.</param>
/// <param name="Yarn">For one garment of this size.</param>
public sealed record SizePlan(
    string Name,
    ImmutableSortedDictionary<GarmentMeasure, Length> Target,
    ImmutableSortedDictionary<GarmentMeasure, Length> Finished,
    ImmutableArray<PiecePlan> Pieces,
    ImmutableArray<EdgingPlan> Edgings,
    ImmutableArray<SeamPlan> Seams,
    YarnPlan Yarn)
{
    /// <summary>The chart's measures that were used, by name.</summary>
    public required ImmutableSortedDictionary<string, Length> Body { get; init; }

    /// <summary>Finished measures held against the body that has to get in; empty where the garment is not made to one.</summary>
    public ImmutableArray<WornFit> Worn { get; init; } = [];

    /// <summary>
    /// The chance that a piece comes out well, of the piece for which it is least; missing where there are no colours to hold.
    /// </summary>
    public double? MadeWell => Pieces.Min(p => p.MadeWell);

    /// <summary>Missing where the garment has no such piece.</summary>
    public PiecePlan? Find(PieceId id) => Pieces.FirstOrDefault(p => p.Id == id);

    /// <exception cref="InvalidOperationException">The garment has no such piece.</exception>
    public PiecePlan this[PieceId id] => Pieces.First(p => p.Id == id);
}

/// <summary>One piece of fabric: a rectangle, or shaped row by row.</summary>
/// <param name="Id">Which piece of the garment.</param>
/// <param name="Copies">How many are made alike (2 for sleeves).</param>
/// <param name="Pooled">Worked in the variegated yarn.</param>
/// <param name="Working">Turned, or how rounds follow each other.</param>
/// <param name="Stitches">Stitches of the first row; in linen stitch two to a pooling unit.</param>
/// <param name="RowStitches">One number, or two that alternate; of a shaped piece that of its first row.</param>
/// <param name="Rows">Rows or rounds, edgings and side bands left out.</param>
public sealed record PiecePlan(
    PieceId Id,
    int Copies,
    bool Pooled,
    Working Working,
    int Stitches,
    ImmutableArray<int> RowStitches,
    int Rows)
{
    /// <summary>Chains to begin with, the ones that make the first stitch's height included.</summary>
    public required int FoundationChains { get; init; }

    /// <summary>Yarn position of the first stitch in pooling units, [0, C).</summary>
    public required double Start { get; init; }

    /// <summary>The section in which the first stitch lies.</summary>
    public required int StartSection { get; init; }

    /// <summary>Yarn of a turn or join, in pooling units.</summary>
    public required double TurnCost { get; init; }

    /// <summary>Units that colours move sideways in a row, positive towards the right-hand edge; 0 where it is plain.</summary>
    public required double Lean { get; init; }

    /// <summary>What its colours make.</summary>
    public required MotifKind Motif { get; init; }

    /// <summary>0 both ways where it is plain.</summary>
    public required Forgiveness Forgives { get; init; }

    /// <summary>Across the piece as worn, before seams and edgings, at the garment's gauge.</summary>
    public required Length Width { get; init; }

    /// <summary>Down the piece as worn, before seams and edgings.</summary>
    public required Length Height { get; init; }

    /// <summary>Plain rows of companion yarn worked along each side, those that the seam hides included; 0 for none.</summary>
    public required int SideBandRows { get; init; }

    /// <summary>What its seams leave open, in the order in which it is marked.</summary>
    public required ImmutableArray<PieceOpening> Openings { get; init; }

    /// <summary>Such as <c>front</c>.</summary>
    public string Name => PlaceNames.Of(Id);

    /// <exception cref="InvalidOperationException">The piece has no such opening.</exception>
    public PieceOpening Opening(OpeningId id) => Openings.First(o => o.Id == id);

    /// <summary>The stitches and rows to mark, in order.</summary>
    public ImmutableArray<PieceMark> Marks => [.. Openings.SelectMany(o => o.Marks)];

    /// <summary>What it begins on, and in which yarn.</summary>
    public required FoundationPlan Foundation { get; init; }

    /// <summary>The plain band along each of its sides; missing where there is none.</summary>
    public SideBandPlan? SideBand { get; init; }

    /// <summary>The chance that it comes out well, as <see cref="Planning.MadeWell"/> says, in [0, 1]; missing where it is plain.</summary>
    public double? MadeWell { get; init; }

    /// <summary>How its rows become shorter, where it is a plain triangle; missing for everything else.</summary>
    public Taper? Taper { get; init; }

    /// <summary>Its parts, their rows and the steps between, where openings are cut into it; missing for a rectangle.</summary>
    public ShapedPiece? Shape { get; init; }

    /// <summary>
    /// Sewn with the side that its odd-numbered rows show outwards turned in, so that its motif mirrors its neighbour's at every
    /// seam. Back and forth work looks alike on both sides.
    /// </summary>
    public bool WrongSideOut { get; init; }
}

/// <summary>A band of companion yarn, picked up along a side of a piece and worked back and forth in single crochet.</summary>
/// <param name="Rows">Those that the seam hides included.</param>
/// <param name="Spread">Stitches picked up, from the hem up: below the opening of the side and above it, where it has one.</param>
public sealed record SideBandPlan(int Rows, PickUp Spread)
{
    /// <summary>Picked up along the whole side.</summary>
    public int Stitches => Spread.Total;

    /// <summary>
    /// Stitches below the mark of the side's opening, which goes on to the band's last row; missing where the side has none.
    /// </summary>
    public int? Below => Spread.Stretches.Length == 2 ? Spread.Stretches[0].Total : null;
}

/// <summary>A stretch of a piece's edge that its seams leave open.</summary>
/// <param name="Id">Which opening of the garment.</param>
/// <param name="AlongStitches">True: the stretch is counted in stitches of the first row, from its beginning; false: in rows.</param>
/// <param name="First">From 1.</param>
/// <param name="Last">The last stitch or row of the stretch; an armhole ends where the piece does.</param>
public sealed record PieceOpening(OpeningId Id, bool AlongStitches, int First, int Last)
{
    /// <summary>Stitches or rows of the stretch.</summary>
    public int Length => Last - First + 1;

    /// <summary>Rows or stitches that are cut out of the piece there; 0 for a slit.</summary>
    public int Into { get; init; }

    /// <summary>
    /// Its length at both sides that it is at, in the mean: worked up, what is cut at the right may lie a row off what is cut at the left.
    /// </summary>
    public double Mean { get => field == 0 ? Length : field; init; }

    /// <summary>
    /// Stitches or rows of its side that are left beside it, where it runs to an end of that side; missing where it is in the middle.
    /// </summary>
    public int? Beside { get; init; }

    /// <summary>The left or the right side of the piece that it is on or runs to, where it is at one of them only.</summary>
    public PieceSide? Side { get; init; }

    /// <summary>
    /// A neck, or what else lies within its side, is marked at both ends, an opening that runs to an end of its side where it begins,
    /// counted from the other end; a vent where what is sewn above it begins. What is cut is seen without a mark.
    /// </summary>
    internal IEnumerable<PieceMark> Marks => Into > 0 ? []
        : Id == OpeningId.Vent ? [new PieceMark(this, false, Last + 1)]
        : Beside is { } beside
        ? [new PieceMark(this, true, beside + 1)]
        : [new PieceMark(this, true, First), new PieceMark(this, false, Last)];
}

/// <summary>A stitch or row to mark: an opening's beginning or end.</summary>
/// <param name="Opening">What is marked.</param>
/// <param name="Begins">It is the opening's first place, or else its end.</param>
/// <param name="Position">From 1.</param>
public sealed record PieceMark(PieceOpening Opening, bool Begins, int Position)
{
    /// <summary>A stitch of a row, or else a row.</summary>
    public bool AlongStitches => Opening.AlongStitches;

    /// <summary>Where a marker goes: a neck's mark is at one edge, what is open at both sides is marked at both.</summary>
    public int Places => Opening.Side is null && Opening.Id != OpeningId.Neck ? 2 : 1;
}

/// <param name="Where">The edge that it goes to.</param>
/// <param name="Edging">The edging's id.</param>
/// <param name="Copies">How often the garment has it: 2 for cuffs.</param>
/// <param name="Spread">The stitches picked up round or along the edge, and how they are spread.</param>
/// <param name="Rounds">Rounds, or rows where the edge is open; picking up is the first.</param>
/// <param name="Depth">What the edging adds to the edge.</param>
public sealed record EdgingPlan(EdgingPlace Where, string Edging, int Copies, PickUp Spread, int Rounds, Length Depth)
{
    /// <summary>The same of the other one of a pair, where its pieces are others; missing where it is like the first.</summary>
    public PickUp? Other { get; init; }

    /// <summary>
    /// The other one of a pair, where it takes other stitches than the first: it is not only met in another order.
    /// </summary>
    public PickUp? Unlike
    {
        get
        {
            return Other is { } other && !InOrder(other).SequenceEqual(InOrder(Spread)) ? other : null;

            static IEnumerable<(string, int, int)> InOrder(PickUp pickUp) =>
                pickUp.Stretches.Select(r => (EdgeWords.Of(r.Stretch.Id), r.Stretch.Places, r.Total)).Append(("", 0, pickUp.Total)).Order();
        }
    }

    /// <summary>Stitches picked up.</summary>
    public int PickUp => Spread.Total;

    /// <summary>
    /// Corners that take 2 stitches more in every round after the first, and corners that take 2 fewer, so that it lies flat.
    /// </summary>
    public (int Outer, int Inner) Corners { get; init; }

    /// <summary>Stitches by which a round is longer than the one before it.</summary>
    public int PerRound => 2 * (Corners.Outer - Corners.Inner);

    /// <summary>Stitches of the last round, where rounds have one for every stitch picked up.</summary>
    public int LastCount => PickUp + PerRound * EdgingLibrary.Find(Edging).CornerRounds(Rounds);

    /// <summary>Length of the edge that it is worked along.</summary>
    public Length Edge { get; init; }

    /// <summary>
    /// Elastic to cut, its overlap included; missing where the edging takes none, or no girth of the body is known at the edge.
    /// </summary>
    public Length? Elastic { get; init; }

    /// <summary>
    /// How wide the edge is at rest, once it is edged: as wide as its elastic, sewn together, where that is the narrower.
    /// </summary>
    public Length RelaxedWidth => Elastic is { } elastic
        ? Length.Min(Edge, elastic - Edgings.Edging.ElasticOverlap)
        : EdgingLibrary.Find(Edging).RelaxedWidth(Edge);

    /// <summary>How wide the edge becomes without harm, once it is edged: what a hip, a head or a hand has to go through.</summary>
    public Length StretchedWidth => EdgingLibrary.Find(Edging).StretchedWidth(Edge);
}

/// <summary>A stretch of a piece's side: its stitches or row ends, those that seams at the side's ends hide left out.</summary>
/// <param name="Piece">Which piece of the garment.</param>
/// <param name="Side">As worn, seen from outside.</param>
/// <param name="From">Places of the side before it, from the bottom up or from left to right as worn.</param>
/// <param name="Count">Stitches or row ends of the stretch.</param>
/// <param name="AlongStitches">Counted in stitches, or else in row ends.</param>
/// <param name="Backwards">Gone along from its end.</param>
public sealed record EdgeRun(PieceId Piece, PieceSide Side, int From, int Count, bool AlongStitches, bool Backwards)
{
    /// <summary>Rows or stitches between it and the outermost of its side: more than 0 along what is cut out of the piece.</summary>
    public int Inside { get; init; }
}

/// <summary>Edges that meet.</summary>
/// <param name="Id">Which seam of the garment.</param>
/// <param name="First">Along one side of it, one after the other.</param>
/// <param name="Second">Along the other, gone along the same way.</param>
/// <param name="IsSewn">A seam, or else the join of a round.</param>
/// <param name="PhaseJump">Mean size of the jump in phase along the seam, in pooling units of yarn.</param>
/// <param name="Match">Share of the adjoining stitches that jump by less than half a pooling unit, in [0, 1].</param>
/// <param name="Length">As sewn.</param>
public sealed record SeamPlan(
    SeamId Id, ImmutableArray<EdgeRun> First, ImmutableArray<EdgeRun> Second, bool IsSewn, double PhaseJump, double Match, Length Length)
{
    /// <summary>Such as <c>left side</c>.</summary>
    public string Where => PlaceNames.Of(Id);

    /// <summary>What the jump is measured against; missing where no colours adjoin: beside a side band or a plain piece.</summary>
    public SeamExtension? Extension { get; init; }

    /// <summary>
    /// The mean jump of pieces that begin anywhere, in pooling units: a quarter of the colour period; 0 where no colours adjoin.
    /// </summary>
    public double Chance { get; init; }

    /// <summary>Means nothing where no colours adjoin.</summary>
    public SeamQuality Quality => SeamQualities.Of(PhaseJump, Chance);

    /// <summary>Pieces along one side of it, such as <c>front and back</c>.</summary>
    public static string Names(ImmutableArray<EdgeRun> runs) =>
        string.Join(" and ", runs.Select(r => r.Piece).Distinct().Order().Select(PlaceNames.Of));

    internal bool Joins(PieceId piece) => First.Concat(Second).Any(r => r.Piece == piece);
}

/// <param name="Length">Variegated yarn, everything included.</param>
/// <param name="Mass">Of <paramref name="Length"/>, by the label.</param>
/// <param name="BallsTypical">Balls when joins fall as planned.</param>
/// <param name="BallsSafe">The fewest balls that serve 19 makers of 20.</param>
/// <param name="Leftover">What remains of the last ball when joins fall as planned.</param>
/// <param name="Companion">Companion yarn, where there is one.</param>
/// <param name="Joins">Where each ball ends.</param>
public sealed record YarnPlan(
    Length Length,
    Mass Mass,
    int BallsTypical,
    int BallsSafe,
    Length Leftover,
    CompanionPlan? Companion,
    ImmutableArray<BallJoin> Joins)
{
    /// <summary>What takes how much, for the audit.</summary>
    public required ImmutableArray<YarnUse> Uses { get; init; }

    /// <summary>What is not of the variegated yarn; without a companion yarn, the chains that rows are worked on over.</summary>
    public Length CompanionLength => Uses.Where(u => u.Companion).Aggregate(Length.Zero, (sum, use) => sum + use.Length);

    /// <summary>Makers whom the variegated balls serve, from the fewest balls that serve anyone to those that serve 99 of 100.</summary>
    public ImmutableArray<BallShare> Odds { get; init; } = [];

    /// <summary>The share of makers whom one ball fewer than <see cref="BallsSafe"/> serves.</summary>
    public double ShareWithOneFewer => Odds.FirstOrDefault(o => o.Balls == BallsSafe - 1)?.Share ?? 0;

    /// <summary>The ball that a stitch takes its yarn from; null where no ball ends in the run, so that none can be told.</summary>
    /// <param name="row">From 1.</param>
    /// <param name="stitch">From 1, in working order.</param>
    public int? BallAt(PieceRun run, int row, int stitch)
    {
        var ends = Joins.Where(j => j.Run == run).ToArray();
        return ends.FirstOrDefault(j => (j.Row, j.Stitch).CompareTo((row, stitch)) > 0)?.Ball ?? ends.LastOrDefault()?.Ball + 1;
    }

    /// <summary>The same of a stitch that was read, in each copy of its piece.</summary>
    public ImmutableArray<int?> BallsAt(PiecePlan piece, StitchReading stitch)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(stitch);
        return [.. Enumerable.Range(1, piece.Copies).Select(copy => BallAt(
            new PieceRun(piece.Id, piece.Copies == 1 ? null : copy, stitch.Side), stitch.Row, stitch.FirstStitch))];
    }
}

/// <param name="Length">For one garment, everything included.</param>
/// <param name="Mass">Of <paramref name="Length"/>, by the label.</param>
/// <param name="Balls">The fewest that serve 19 makers of 20.</param>
public sealed record CompanionPlan(Length Length, Mass Mass, int Balls)
{
    /// <inheritdoc cref="YarnPlan.Odds"/>
    public ImmutableArray<BallShare> Odds { get; init; } = [];
}

/// <param name="Ball">Number of the ball that ends, from 1.</param>
/// <param name="Run">What is being worked when it ends.</param>
/// <param name="Row">Row in which the ball ends, from 1; 0 in the foundation.</param>
/// <param name="Stitch">From 1, in working order; in the foundation the chain.</param>
/// <param name="Wasted">Yarn cut away to reach the same place of the sequence.</param>
public sealed record BallJoin(int Ball, PieceRun Run, int Row, int Stitch, Length Wasted)
{
    /// <summary>Where in the sequence it ends, in micro-units from its beginning.</summary>
    public long Place { get; init; }

    /// <summary>The section in which it ends, and the pooling units of it that are worked by then.</summary>
    public (int Section, double Into) ColourIn(ColourSequence sequence)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        var (section, into) = sequence.Ring.Locate(Place);
        return (section, ColourRing.ToUnits(into));
    }
}
