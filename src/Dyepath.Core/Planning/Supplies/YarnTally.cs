using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
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
        Fabrication fabrication, ImmutableArray<PiecePlan> pieces, ImmutableArray<EdgingPlan> edgings, ImmutableArray<SeamPlan> seams)
    {
        var uses = Uses(fabrication, pieces, edgings, seams).ToList();
        var ball = fabrication.Project.Yarn.Ball;
        ImmutableArray<PooledPiece> pooled = [.. pieces.Where(p => p.Pooled).SelectMany(p => Enumerable.Range(1, p.Copies)
            .Select(copy => PieceWriter.Pooled(fabrication, p, p.Copies == 1 ? p.Name : $"{p.Name} {copy}")))];
        var inPieces = Sum(pooled.Select(p => fabrication.YarnPerUnit * ColourRing.ToUnits(p.Yarn)));
        var other = Sum(uses.Where(u => !u.Companion).Select(u => u.Length)) - inPieces;
        BallPlan? Balls(double joinWaste) =>
            BallPlanner.Plan(fabrication.Ring.Total, fabrication.YarnPerUnit, ball.Length, pooled, joinWaste, other);
        if (Balls(0.5) is not { } typical || Balls(1) is not { } worst)
            return null;
        uses.Add(new YarnUse("restarts, joins and their ends", false, typical.Wasted));
        var length = inPieces + other + typical.Wasted;
        return new YarnPlan(
            length,
            ball.Mass * (length / ball.Length),
            typical.Balls,
            BallPlanner.Safe(worst.Balls, length, ball.Length),
            typical.Left,
            Companion(fabrication, uses),
            [.. uses],
            typical.Joins);
    }

    private static IEnumerable<YarnUse> Uses(
        Fabrication fabrication, ImmutableArray<PiecePlan> pieces, ImmutableArray<EdgingPlan> edgings, ImmutableArray<SeamPlan> seams)
    {
        var (unit, single) = (fabrication.YarnPerUnit, fabrication.SingleCrochetYarn);
        foreach (var piece in pieces)
        {
            var path = fabrication.Path(piece);
            var turns = unit * ColourRing.ToUnits(path.Turns.Take(piece.Rows - 1).Sum());
            var stitches = unit * ColourRing.ToUnits(path.Yarn) - turns;
            yield return new YarnUse($"{piece.Name}: stitches", !piece.Pooled, piece.Copies * stitches);
            if (turns != Length.Zero)
                yield return new YarnUse($"{piece.Name}: turning", !piece.Pooled, piece.Copies * turns);
            yield return new YarnUse($"{piece.Name}: foundation", piece.Foundation.Companion, piece.Copies * piece.Foundation.Yarn * unit);
            if (piece.SideBandRows > 0)
            {
                var perBand = PickUp.FlatRatio(
                    fabrication.GaugeFor(Direction.Up).RowHeight, fabrication.GaugeFor(Direction.Up).StitchWidth) * piece.Rows;
                yield return new YarnUse($"{piece.Name}: side bands", true, 2.0 * piece.Copies * piece.SideBandRows * perBand * single);
            }
            if (!piece.Pooled)
                yield return new YarnUse($"{piece.Name}: ends", true, 2.0 * piece.Copies * BallPlanner.End);
        }
        foreach (var edging in edgings)
        {
            EdgingLibrary.TryFind(edging.Edging, out var made);
            var yarn = edging.Copies * (made!.YarnInSingleCrochet(edging.PickUp, edging.Rounds) * single + 2 * BallPlanner.End);
            yield return new YarnUse(
                $"edging: {edging.Where.ToString().ToLowerInvariant()}", fabrication.CompanionFor(CompanionUse.Edgings), yarn);
        }
        if (!seams.IsEmpty)
        {
            var sewn = Sum(seams.Select(s => SeamYarn * s.Length + 2 * BallPlanner.End));
            yield return new YarnUse("seams", fabrication.CompanionFor(CompanionUse.Seams), sewn);
        }
        var gauge = fabrication.Project.Fabric.Swatch.Worked;
        var units = SwatchSide / gauge.StitchWidth * (SwatchSide / gauge.RowHeight) / fabrication.Stitch.StitchesPerUnit;
        yield return new YarnUse("swatch", false, unit * units);
    }

    private static CompanionPlan? Companion(Fabrication fabrication, List<YarnUse> uses)
    {
        if (fabrication.Project.Companion is not { } companion)
            return null;
        var length = Sum(uses.Where(u => u.Companion).Select(u => u.Length));
        return new CompanionPlan(
            length, companion.Ball.Mass * (length / companion.Ball.Length), (int)Math.Ceiling(length * Reserve / companion.Ball.Length));
    }

    /// <summary>Of plain yarn 15 % is kept in reserve (10 to 15 %, common practice, no source).</summary>
    private const double Reserve = 1.15;

    private static Length Sum(IEnumerable<Length> lengths) => lengths.Aggregate(Length.Zero, (a, b) => a + b);
}
