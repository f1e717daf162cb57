using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>Everything that takes yarn in one size, and the balls that it comes to.</summary>
internal static class YarnTally
{
    /// <summary>Yarn of a sewn seam over its length (common practice, no source).</summary>
    public const double SeamYarn = 3;

    /// <summary>Side of the square swatch.</summary>
    public static readonly Length SwatchSide = Length.FromCentimetres(15);

    /// <returns>Null where the ball is too short to join, or the yarn beyond all bounds.</returns>
    public static YarnPlan? Plan(
        SharedFabric shared, ImmutableArray<PiecePlan> pieces, ImmutableArray<EdgingPlan> edgings, ImmutableArray<SeamPlan> seams)
    {
        var uses = Uses(shared, pieces, edgings, seams).ToList();
        var ball = shared.Project.Yarn.Ball;
        ImmutableArray<PooledPiece> pooled = [.. pieces.Where(p => p.Pooled).SelectMany(p => Enumerable.Range(1, p.Copies)
            .SelectMany(copy => PieceWriter.Pooled(shared, p, p.Copies == 1 ? null : copy)))];
        var inPieces = Sum(pooled.Select(p => shared.YarnPerUnit * ColourRing.ToUnits(p.Yarn)));
        var other = Sum(uses.Where(u => !u.Companion).Select(u => u.Length)) - inPieces;
        BallPlan? Balls(double joinWaste) =>
            BallPlanner.Plan(shared.Ring.Total, shared.YarnPerUnit, ball.Length, pooled, joinWaste, other);
        var odds = shared.Decisions.BallShares(
            () => BallOdds.Of(shared.Ring.Total, shared.YarnPerUnit, ball.Length, pooled, other, shared.Effort));
        if (Balls(0.5) is not { } typical || Balls(1) is null || odds.IsEmpty)
            return null;
        var companion = Companion(shared, uses);
        if (companion is { Odds.IsEmpty: true })
            return null;
        uses.Add(new YarnUse(YarnPurpose.RestartsAndJoins, false, typical.Wasted));
        var length = inPieces + other + typical.Wasted;
        return new YarnPlan(
            length,
            ball.Mass * (length / ball.Length),
            typical.Balls,
            BallOdds.SafeOf(odds),
            typical.Left,
            companion,
            typical.Joins)
        {
            Uses = [.. uses],
            Odds = odds,
        };
    }

    private static IEnumerable<YarnUse> Uses(
        SharedFabric shared, ImmutableArray<PiecePlan> pieces, ImmutableArray<EdgingPlan> edgings, ImmutableArray<SeamPlan> seams)
    {
        var (unit, single) = (shared.YarnPerUnit, shared.SingleCrochetYarn);
        foreach (var piece in pieces)
        {
            var (stitches, turns) = Worked(shared, piece);
            yield return Of(YarnPurpose.Stitches, !piece.Pooled, piece.Copies * stitches);
            if (turns != Length.Zero)
                yield return Of(YarnPurpose.Turning, !piece.Pooled, piece.Copies * turns);
            yield return Of(YarnPurpose.Foundation, piece.Foundation.Companion, piece.Copies * piece.Foundation.Yarn * unit);
            if (piece.Shape is { CompanionChains: > 0 } shape)
            {
                var chains = shape.CompanionChains * Foundation.ChainInUnits(shared.Stitch) * unit;
                var times = shape.Steps.Count(s => s.Act == ShapingAct.WorkOverChains);
                // On a bias the yarn goes up with the edge: a stitch's yarn is more than two rows are tall. Elsewhere each chain is
                // joined and fastened off by itself.
                var ends = shape.Bias > 0 ? 2 * BallPlanner.End + (times - 1) * unit : 2.0 * times * BallPlanner.End;
                yield return Of(YarnPurpose.ChainsToWorkOver, true, piece.Copies * (chains + ends));
            }
            if (piece.SideBand is { } band)
            {
                yield return Of(
                    YarnPurpose.SideBands, true, 2.0 * piece.Copies * (band.Rows * band.Stitches * single + 2 * BallPlanner.End));
            }
            if (!piece.Pooled)
                yield return Of(YarnPurpose.Ends, true, 2.0 * piece.Copies * BallPlanner.End);

            YarnUse Of(YarnPurpose purpose, bool companion, Length length) => new(purpose, companion, length) { Piece = piece.Id };
        }
        foreach (var edging in edgings)
        {
            var rounds = EdgingLibrary.Find(edging.Edging).Yarn(edging.PickUp, edging.Rounds, single, edging.PerRound);
            var yarn = edging.Copies * (rounds + 2 * BallPlanner.End);
            yield return new YarnUse(YarnPurpose.Edging, shared.CompanionFor(CompanionUse.Edgings), yarn) { Edging = edging.Where };
        }
        // The join of a round is no seam.
        if (seams.Any(s => s.IsSewn))
        {
            var sewn = Sum(seams.Where(s => s.IsSewn).Select(s => SeamYarn * s.Length + 2 * BallPlanner.End));
            yield return new YarnUse(YarnPurpose.Seams, shared.CompanionFor(CompanionUse.Seams), sewn);
        }
        var gauge = shared.Project.Fabric.Swatch.Worked;
        var units = SwatchSide / gauge.StitchWidth * (SwatchSide / gauge.RowHeight) / shared.Stitch.StitchesPerUnit;
        yield return new YarnUse(YarnPurpose.Swatch, false, unit * units);
    }

    /// <summary>
    /// Yarn of a piece's stitches and of its turns; stitches worked together take the yarn of each (common practice, no source).
    /// </summary>
    private static (Length Stitches, Length Turns) Worked(SharedFabric shared, PiecePlan piece)
    {
        if (piece.Taper is { } taper)
        {
            var single = shared.SingleCrochetYarn;
            return (
                single * (taper.Stitches + Enumerable.Range(0, taper.Rows - 1).Sum(taper.At)),
                single * ((taper.Rows - 1) * FabricStitch.SingleCrochet.NominalTurnCost));
        }
        var unit = shared.YarnPerUnit;
        var paths = PieceFabric.Stretches(shared.Project.Fabric, piece).Select(s => s.Path).ToArray();
        var turns = unit * ColourRing.ToUnits(paths.Sum(p => p.Turns.Take(p.Rows - 1).Sum()));
        return (unit * ColourRing.ToUnits(paths.Sum(p => p.Yarn)) - turns, turns);
    }

    private static CompanionPlan? Companion(SharedFabric shared, List<YarnUse> uses)
    {
        if (shared.Project.Companion is not { } companion)
            return null;
        var length = Sum(uses.Where(u => u.Companion).Select(u => u.Length));
        // Plain yarn has no sequence to be met.
        var odds = BallOdds.Of(1, shared.YarnPerUnit, companion.Ball.Length, [], length, shared.Effort);
        return new CompanionPlan(length, companion.Ball.Mass * (length / companion.Ball.Length), odds.IsEmpty ? 0 : BallOdds.SafeOf(odds))
        {
            Odds = odds,
        };
    }

    private static Length Sum(IEnumerable<Length> lengths) => lengths.Aggregate(Length.Zero, (a, b) => a + b);
}
