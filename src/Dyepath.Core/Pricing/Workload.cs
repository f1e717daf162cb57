using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Pricing;

/// <summary>What is worked with the hook in one kind of part.</summary>
/// <param name="Stitches">Without chains and slip stitches.</param>
/// <param name="SingleCrochets">The same by the time that they take, foundation chains and strands included.</param>
/// <param name="Turns">Turns of rows and joins of rounds.</param>
public readonly record struct Work(long Stitches, double SingleCrochets, long Turns)
{
    /// <summary>Both together.</summary>
    public static Work operator +(Work one, Work other) =>
        new(one.Stitches + other.Stitches, one.SingleCrochets + other.SingleCrochets, one.Turns + other.Turns);

    /// <summary>So many alike.</summary>
    public static Work operator *(int copies, Work work) => new(copies * work.Stitches, copies * work.SingleCrochets, copies * work.Turns);
}

/// <summary>
/// All the work in one size, counted from the plan. Time is counted in single crochet: a stitch takes as many times longer as it takes more
/// yarn, since every loop of it is one movement of the hook (an assumption without a source; by yarn-overs a half double takes 3/2 and a
/// double 4/2 of a single crochet, by yarn 1.48 and 1.92).
/// </summary>
public sealed record Workload
{
    /// <summary>Single crochet that a turn or a join takes the time of (an assumption without a source).</summary>
    public const double Turn = 2;

    /// <summary>Single crochet that a centimetre of seam takes the time of (an assumption without a source).</summary>
    public const double SeamCentimetre = 6;

    /// <summary>Single crochet that weaving in one end takes the time of (an assumption without a source).</summary>
    public const double End = 30;

    /// <summary>Single crochet that one bunch of a fringe takes the time of, cut and knotted in (an assumption, no source).</summary>
    public const double Bunch = 8;

    /// <summary>Pieces in the variegated yarn, all copies.</summary>
    public required Work Pooled { get; init; }

    /// <summary>Pieces and side bands in one colour, all copies.</summary>
    public required Work Plain { get; init; }

    /// <summary>Everything that is worked along finished edges, all copies.</summary>
    public required Work Edgings { get; init; }

    /// <summary>Of all sewn seams.</summary>
    public required Length Seams { get; init; }

    /// <summary>Ends to weave in: two of each piece or part that is joined on, band, edging, seam and ball that is joined.</summary>
    public required int Ends { get; init; }

    /// <summary>All that the hook works.</summary>
    public Work Hook => Pooled + Plain + Edgings;

    /// <summary>Everything, seams and ends too, in single crochet of equal time.</summary>
    public double SingleCrochets =>
        Hook.SingleCrochets + Turn * Hook.Turns + SeamCentimetre * Seams.Centimetres + End * Ends;

    /// <summary>Of one size of the plan.</summary>
    public static Workload Of(Plan plan, SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(size);
        var sewn = size.Seams.Where(s => s.IsSewn).ToArray();
        var bands = size.Pieces.Where(p => p.SideBand is not null).ToArray();
        return new Workload
        {
            Pooled = Sum(size.Pieces.Where(p => p.Pooled).Select(p => p.Copies * OfPiece(plan, p))),
            Plain = Sum(size.Pieces.Where(p => !p.Pooled).Select(p => p.Copies * OfPiece(plan, p)))
                + Sum(bands.Select(p => 2 * p.Copies * OfBand(p.SideBand!))),
            Edgings = Sum(size.Edgings.Select(e => e.Copies * OfEdging(e))),
            Seams = sewn.Aggregate(Length.Zero, (sum, seam) => sum + seam.Length),
            Ends = 2 * (size.Pieces.Sum(p => p.Copies * PieceFabric.Stretches(plan, p).Length) + 2 * bands.Sum(p => p.Copies)
                + size.Edgings.Sum(e => e.Copies) + sewn.Length + size.Yarn.Joins.Length),
        };
    }

    /// <summary>What a row of a piece takes, its turn included, in single crochet of equal time.</summary>
    /// <param name="stitches">Of the row.</param>
    /// <param name="turns">A turn or join ends it.</param>
    public static double OfRow(int stitches, FabricStitch stitch, bool turns)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return stitches * stitch.YarnInSingleCrochet + (turns ? Turn : 0);
    }

    private static Work OfPiece(Plan plan, PiecePlan piece)
    {
        var chains = piece.FoundationChains * FabricStitch.ChainInSingleCrochet;
        if (piece.Taper is { } taper)
        {
            var stitches = Enumerable.Range(0, taper.Rows).Sum(taper.At);
            return new Work(stitches, stitches + chains, taper.Rows - 1);
        }
        var paths = PieceFabric.Stretches(plan, piece).Select(s => s.Path).ToArray();
        var all = paths.Sum(p => p.RowStitches.Sum(n => (long)n));
        return new Work(all, all * plan.Project.Fabric.Stitch.YarnInSingleCrochet + chains, paths.Sum(TurnsOf));
    }

    private static long TurnsOf(FabricPath path) => path.Working switch
    {
        Working.Turned => path.Rows - 1,
        Working.Spiral => 0,
        _ => path.Rows,
    };

    private static Work OfBand(SideBandPlan band)
    {
        var stitches = (long)band.Rows * band.Stitches;
        return new Work(stitches, stitches, band.Rows - 1);
    }

    /// <summary>Rows that stand across the edge are counted by the rounds that they are as deep as; two of them meet at a repeat.</summary>
    private static Work OfEdging(EdgingPlan plan)
    {
        var edging = EdgingLibrary.Find(plan.Edging);
        var widening = edging.CornerRounds(plan.Rounds);
        var stitches = Enumerable.Range(0, plan.Rounds).Sum(round => (long)plan.PickUp + plan.PerRound * Math.Min(round, widening));
        var strands = edging.Fringe is null ? 0 : plan.PickUp / edging.Multiple * Bunch;
        var turns = edging.Across ? 1 + 2L * plan.PickUp / edging.Multiple : edging.InRows ? plan.Rounds - 1 : plan.Rounds;
        return new Work(stitches, edging.YarnInSingleCrochet(plan.PickUp, plan.Rounds, plan.PerRound) + strands, turns);
    }

    private static Work Sum(IEnumerable<Work> works) => works.Aggregate(default(Work), (sum, work) => sum + work);
}
