using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>
/// Whether a maker's hands hold a width by advice, and if not, what would: each remedy by itself, worked by a few simulated makers like
/// her. A width is held when their median share in planned colour reaches the threshold.
/// </summary>
/// <param name="Share">Their share as the piece is, in [0, 1].</param>
/// <param name="Threshold">The share that counts as held.</param>
/// <param name="Check">When she reads.</param>
/// <param name="Sections">Their share when they read where every colour ends; nothing when they need not.</param>
/// <param name="Narrower">The fewest panels side by side that are held; nothing when none of up to six is, or they need not.</param>
/// <param name="Steadier">The largest part of her hands' spread that holds it; nothing when a quarter does not.</param>
public sealed record HoldableWork(
    double Share, double Threshold, CheckHabit Check, double? Sections, HoldableWork.Panels? Narrower, double? Steadier)
{
    /// <summary>Of five stitches four in their colours: the pattern is plain to see.</summary>
    public const double Enough = 0.8;

    private const int MostPanels = 6;

    /// <summary>A narrower panel shows no pattern.</summary>
    private const int Narrowest = 10;

    /// <summary>A piece that goes on longer tells no more of whether it is held.</summary>
    private const int MostRows = 72;

    private static readonly ImmutableArray<double> Steadiness = [0.75, 0.5, 0.25];

    /// <summary>Her hands hold the width as it is.</summary>
    public bool Holds => Share >= Threshold;

    /// <summary>They hold it when she reads where every colour ends; false where that was not tried.</summary>
    public bool SectionsHold => Sections >= Threshold;

    /// <summary>Panels side by side in place of one piece.</summary>
    /// <param name="Count">From 2.</param>
    /// <param name="Stitches">In the widest row of each.</param>
    /// <param name="Check">
    /// When they are read; where <see cref="HoldableWork.Check"/> suffices for no width, where every colour ends.
    /// </param>
    public sealed record Panels(int Count, int Stitches, CheckHabit Check);

    /// <param name="piece">As planned.</param>
    /// <param name="world">What is known of the maker; see <see cref="MakerWorld.Of"/>.</param>
    /// <param name="check">When she reads.</param>
    /// <param name="threshold">In [0, 1].</param>
    /// <param name="makers">In [2, 1,000].</param>
    /// <param name="seed">The same seed gives the same answer everywhere.</param>
    public static HoldableWork For(
        PlannedPiece piece, MakerWorld world, CheckHabit check, double threshold = Enough, int makers = 30, ulong seed = 1)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(world);
        Guard.InRange(threshold, 0, 1, "of the stitches");
        Guard.InRange(makers, 2, 1_000, "makers");
        ImmutableArray<int> rows = [.. piece.RowStitches.Take(MostRows)];
        double Median(CheckHabit habit, int panels, double steadiness)
        {
            PlannedPiece panel = piece.WithRows([.. rows.Select(stitches => (stitches + panels - 1) / panels)]);
            HandModel hands = world.Hands;
            MakerWorld makersThen = world with
            {
                Hands = HandModel.Create(steadiness * hands.Spread, hands.Memory, hands.Bias, hands.LargestCorrection),
            };
            return MakerSimulation.Run(panel, makersThen, new MakerPolicy(habit, Steering.Advice), makers, seed).Share.Value;
        }
        bool Reaches(CheckHabit habit, int panels, double steadiness) => Median(habit, panels, steadiness) >= threshold;

        double share = Median(check, 1, 1);
        if (share >= threshold) return new HoldableWork(share, threshold, check, null, null, 1);
        double sections = check == CheckHabit.EverySection ? share : Median(CheckHabit.EverySection, 1, 1);
        int widest = rows.Max();
        int[] counts = [.. Enumerable.Range(2, MostPanels - 1).Where(count => widest / count >= Narrowest)];
        ImmutableArray<CheckHabit> habits = check == CheckHabit.EverySection || sections >= threshold
            ? [check] : [check, CheckHabit.EverySection];
        Panels? narrower = habits
            .SelectMany(habit => counts.Select(count => new Panels(count, (widest + count - 1) / count, habit)))
            .FirstOrDefault(panels => Reaches(panels.Check, panels.Count, 1));
        double? steadier = Steadiness.Where(part => Reaches(check, 1, part)).Select(part => (double?)part).FirstOrDefault();
        return new HoldableWork(share, threshold, check, sections, narrower, steadier);
    }
}
