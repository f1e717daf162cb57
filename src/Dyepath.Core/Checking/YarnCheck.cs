using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>Adds the yarn up row by row, and walks the balls.</summary>
internal static class YarnCheck
{
    private static readonly Length Tolerance = Length.FromCentimetres(1);

    public static void Yarn(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var yarn = size.Yarn;
        var uses = Length.Zero;
        var companion = Length.Zero;
        foreach (var use in yarn.Uses)
        {
            if (use.Companion)
                companion += use.Length;
            else
                uses += use.Length;
        }
        notes.Same("length", yarn.Length, uses, Tolerance);
        var ball = plan.Project.Yarn.Ball;
        notes.Same("balls", yarn.Length + yarn.Leftover, ball.Length * yarn.BallsTypical, Tolerance);
        notes.Same("mass", yarn.Mass.Grams, ball.Mass.Grams * (yarn.Length.Metres / ball.Length.Metres), 0.01);
        var fixedUses = yarn.Uses.Where(u => !u.Companion && u.Purpose != YarnPurpose.RestartsAndJoins).Sum(u => u.Length.Metres);
        var sequence = fabric.Unit.Metres * plan.Sequence.Ring.SequenceUnits;
        Balls("ballsSafe", (yarn.BallsSafe, yarn.Odds), fixedUses, ball.Length.Metres, sequence,
            size.Pieces.Where(p => p.Pooled).Sum(p => p.Copies), notes);
        if (yarn.Companion is { } solid)
        {
            notes.Same("companion", solid.Length, companion, Tolerance);
            Balls("companion.balls", (solid.Balls, solid.Odds), companion.Metres, plan.Project.Companion!.Ball.Length.Metres, 0, 0, notes);
        }
        foreach (var piece in size.Pieces)
            Piece(piece, yarn, fabric, notes);
        foreach (var join in yarn.Joins)
        {
            var piece = size.Find(join.Run.Piece);
            if (piece is null || join.Row > piece.Rows || join.Row < 0 || join.Stitch < 1
                || join.Stitch > Math.Max(piece.FoundationChains, piece.Shape is null ? piece.RowStitches.Max() : ShapeCheck.Width(piece)))
                notes.Say($"joins.{join.Ball}",
                    $"Ball {join.Ball} ends at row {join.Row}, stitch {join.Stitch} of the {join.Run.Name}, where there is none.");
        }
    }

    /// <summary>
    /// Chains of companion yarn at the ends of rows that go on further than the row below, and not over stitches that waited, each with
    /// two ends.
    /// </summary>
    private static void Chains(PiecePlan piece, YarnPlan yarn, PlainFabric fabric, Disagreements notes)
    {
        var (chains, pieces) = (0, 0);
        foreach (var part in piece.Shape!.Parts)
        {
            var under = part.Below is { } index ? piece.Shape.Parts[index] : null;
            for (var row = under is null ? 1 : 0; row < part.Rows; row++)
            {
                var (below, run) = (row > 0 ? part.Outline.At(row - 1) : under!.Outline.At(under.Rows - 1), part.Outline.At(row));
                foreach (var further in new[] { below.First - run.First, run.Last - below.Last })
                    (chains, pieces) = further > 0 && !run.OverStanding ? (chains + further, pieces + 1) : (chains, pieces);
            }
        }
        var used = Used(piece, yarn, YarnPurpose.ChainsToWorkOver);
        var each = fabric.Unit * (25.5 / 53 / fabric.Stitch.YarnInSingleCrochet);
        var ends = piece.Shape.Bias > 0 ? Length.FromCentimetres(30) + (pieces - 1) * fabric.Unit : pieces * Length.FromCentimetres(30);
        notes.Same($"uses.{piece.Name}: chains to work on over", used, piece.Copies * (chains * each + ends), Tolerance);
    }

    /// <summary>
    /// A band lies flat within a sixth, which is what simple ratios leave; its yarn is that of its stitches and two ends.
    /// </summary>
    private static void Bands(PiecePlan piece, YarnPlan yarn, PlainFabric fabric, Disagreements notes)
    {
        var used = Used(piece, yarn, YarnPurpose.SideBands);
        if ((piece.SideBand?.Rows ?? 0) != piece.SideBandRows || piece.SideBand is not { } band)
        {
            notes.Same($"uses.{piece.Name}: side bands", piece.SideBandRows, 0);
            notes.Same($"uses.{piece.Name}: side bands", used, Length.Zero, Tolerance);
            return;
        }
        var single = fabric.Unit / (fabric.Stitch.YarnInSingleCrochet * fabric.PerUnit);
        notes.Same($"uses.{piece.Name}: side bands", used, 2.0 * piece.Copies * (band.Rows * band.Stitches * single + Length.FromCentimetres(30)), Tolerance);
        var rowEnds = band.Spread.Stretches[0].Stretch.RowEnds;
        notes.Same($"pieces.{piece.Name}.sideBand, places", band.Spread.Stretches.Sum(s => s.Stretch.Places), rowEnds ? piece.Rows : piece.Stitches);
        var flat = rowEnds ? piece.Rows * Math.Min(5, fabric.BandRatios.RowEnd) : piece.Stitches * Math.Min(5, fabric.BandRatios.Stitch);
        notes.Same($"pieces.{piece.Name}.sideBand, stitches", band.Stitches, flat, flat / 6 + 1);
    }

    /// <summary>
    /// Between the balls of a maker of a heavy hand whose joins waste nothing and of one whose every join and restart wastes all it can:
    /// the heaviest hand of 20 takes 1.645 standard deviations over the plan.
    /// </summary>
    private static void Balls(
        string what, (int Safe, IReadOnlyList<BallShare> Odds) planned, double metres, double ball, double sequence, int pieces,
        Disagreements notes)
    {
        var (safe, odds) = planned;
        const double spread = 0.06, ends = 0.3;
        var least = Math.Ceiling(metres * (1 + 1.63 * spread) / ball - 1e-9);
        var most = metres * (1 + 1.66 * spread);
        var wasted = (sequence * (1 + 1.66 * spread)) + ends;
        var enough = ball <= wasted ? double.PositiveInfinity : Math.Ceiling((most + 2 * pieces * wasted) / (ball - wasted) + 1e-9);
        if (safe < least || safe > Math.Max(enough, 1))
            notes.Say(what, FormattableString.Invariant($"{safe} balls are not what serves 19 makers of 20: between {least} and {enough}."));
        if (odds.Count == 0 || odds[^1].Share < 0.99 || odds.First(o => o.Share >= 0.95).Balls != safe
            || odds.Zip(odds.Skip(1)).Any(pair => pair.Second.Balls != pair.First.Balls + 1 || pair.Second.Share < pair.First.Share))
            notes.Say(what, "The shares of makers do not rise ball by ball to 99 of 100, or another number serves 19 of 20.");
    }

    /// <summary>
    /// Every stitch of the row below takes a single crochet's yarn, worked into alone or together with the next; every turn not quite
    /// half of one.
    /// </summary>
    private static void Triangle(PiecePlan piece, Taper taper, YarnPlan yarn, PlainFabric fabric, Disagreements notes)
    {
        var single = fabric.Unit / (fabric.Stitch.YarnInSingleCrochet * fabric.PerUnit);
        var worked = (double)piece.Stitches;
        for (var row = 1; row < piece.Rows; row++)
            worked += taper.At(row - 1) + 0.45;
        var chains = (piece.Stitches + 1) * 25.5 / 53;
        notes.Same($"uses.{piece.Name}", Used(piece, yarn, YarnPurpose.Stitches, YarnPurpose.Turning), piece.Copies * worked * single, Tolerance);
        notes.Same($"uses.{piece.Name}: foundation", Used(piece, yarn, YarnPurpose.Foundation), piece.Copies * chains * single, Tolerance);
        if (!yarn.Uses.Where(u => u.Piece == piece.Id).All(u => u.Companion))
            notes.Say($"uses.{piece.Name}", "It is plain, and takes of the variegated yarn.");
    }

    private static Length Used(PiecePlan piece, YarnPlan yarn, params ReadOnlySpan<YarnPurpose> purposes)
    {
        var sum = Length.Zero;
        foreach (var use in yarn.Uses)
            sum += use.Piece == piece.Id && purposes.Contains(use.Purpose) ? use.Length : Length.Zero;
        return sum;
    }

    private static void Piece(PiecePlan piece, YarnPlan yarn, PlainFabric fabric, Disagreements notes)
    {
        if (piece.Taper is { } taper)
        {
            Triangle(piece, taper, yarn, fabric, notes);
            return;
        }
        var units = 0.0;
        foreach (var part in piece.Shape?.Parts ?? [])
        {
            for (var row = 0; row < part.Rows; row++)
                units += part.Outline.At(row).Units + (row > 0 || part.Continues ? piece.TurnCost : 0);
        }
        for (var row = 0; row < piece.Rows && piece.Shape is null; row++)
        {
            units += (double)piece.RowStitches[row % piece.RowStitches.Length] / fabric.PerUnit;
            if (row < piece.Rows - 1)
                units += piece.TurnCost;
        }
        var planned = Used(piece, yarn, YarnPurpose.Stitches, YarnPurpose.Turning);
        notes.Same($"uses.{piece.Name}", planned, fabric.Unit * (piece.Copies * units), Tolerance);
        Bands(piece, yarn, fabric, notes);
        if (piece.Shape is not null)
            Chains(piece, yarn, fabric, notes);
        var chains = fabric.Unit * (
            piece.Copies * piece.FoundationChains * 25.5 / 53 / (fabric.Stitch.YarnInSingleCrochet * fabric.PerUnit));
        notes.Same($"uses.{piece.Name}: foundation", Used(piece, yarn, YarnPurpose.Foundation), chains, Tolerance);
    }
}
