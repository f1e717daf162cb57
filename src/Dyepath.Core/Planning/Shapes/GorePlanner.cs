using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>
/// Which row pairs of a piece worked sideways stop short of its top, and where (law 11). From level to level of half a colour period the
/// piece has as many pairs as it is wide there on average; the pairs of each level are spread evenly among those of the next, so that none
/// of the gores lies beside another if it can be helped.
/// </summary>
internal sealed class GorePlanner(Layout layout, GroupCounts counts)
{
    /// <summary>The first pair of rows and the last one lie at the seam.</summary>
    private const int FewestPairs = 2;

    /// <summary>Shorter rows are not worth their turns (an assumption without a source).</summary>
    private const int LeastUnits = 5;

    /// <summary>
    /// Null where no row can stop short: no step keeps the motif, one leaves hardly anything of a row, or it goes deeper than a top that
    /// closes.
    /// </summary>
    public CutOutline? Plan(SteadyPanel panel, GoreDesign gores, IReadOnlyDictionary<GarmentMeasure, Length> wanted)
    {
        if (panel.KeepingStep is not { } step || panel.Units < step + LeastUnits || counts.Rows < 2 * FewestPairs
            || gores.Cone is { } cone && step > cone * Round / Unit)
        {
            return null;
        }
        var leaves = Leaves(PairsByLevel(panel.Units, step, gores, wanted));
        var pairs = leaves.Select((level, pair) => (Row: 2 * pair, Leave: level * step)).Where(p => p.Leave > 0).ToArray();
        return new CutOutline(panel.Units, [new PartOutline(0, OutlineShapes.ShortRows(panel.Units, counts.Rows, RowEdge.Left, pairs))]);
    }

    private Length Unit => layout.Of(stitches: true).Step;

    /// <summary>The finished measure of the bottom.</summary>
    private Length Round => layout.Measure(counts, stitches: false);

    /// <summary>Pairs that are worked at each level, from the top down; all of them at the last.</summary>
    private int[] PairsByLevel(int stitches, int step, GoreDesign gores, IReadOnlyDictionary<GarmentMeasure, Length> wanted)
    {
        var all = counts.Rows / 2;
        var narrow = gores.Cone is null ? layout.Of(stitches: false)
            .Nearest(wanted[gores.Edge], layout.SewnEnds(counts.Group, stitches: false), 2) / 2 : 0;
        // What is to stay narrow does so for a step at least.
        var from = gores.Cone is null ? Math.Max(gores.Straight / Unit, step) : 0;
        var to = gores.Cone is { } cone ? cone * Round / Unit : Math.Max(stitches, from + 1);
        var levels = (stitches - LeastUnits) / step + 1;
        var pairs = new int[levels];
        for (var level = 0; level < levels; level++)
        {
            var mean = Mean(level * step, (level + 1) * step, from, to);
            var here = (int)Math.Round(narrow + (all - narrow) * mean, MidpointRounding.AwayFromZero);
            pairs[level] = level == levels - 1 ? all : Math.Clamp(here, level == 0 ? FewestPairs : pairs[level - 1], all);
        }
        return pairs;
    }

    /// <summary>How far, on average between two distances from the top, it has widened: 0 before one distance, 1 after another.</summary>
    private static double Mean(double begins, double ends, double from, double to)
    {
        // The area under the slope up to a distance.
        double Area(double at) => at <= from ? 0 : at >= to ? at - (from + to) / 2 : (at - from) * (at - from) / (2 * (to - from));
        return (Area(ends) - Area(begins)) / (ends - begins);
    }

    /// <summary>Of each pair the first level that it reaches, from the top down.</summary>
    private static int[] Leaves(int[] pairs)
    {
        var leaves = new int[pairs[^1]];
        Array.Fill(leaves, -1);
        for (var level = 0; level < pairs.Length; level++)
        {
            var free = Enumerable.Range(0, leaves.Length).Where(i => leaves[i] < 0).ToArray();
            var more = pairs[level] - (level == 0 ? 0 : pairs[level - 1]);
            for (var i = 0; i < more; i++)
                leaves[free[level == 0 ? Ends(i, more, free.Length) : Between(i, more, free.Length)]] = level;
        }
        return leaves;
    }

    /// <summary>Evenly from the first to the last.</summary>
    private static int Ends(int nth, int of, int among) => (2 * nth * (among - 1) + of - 1) / (2 * (of - 1));

    /// <summary>Evenly, as far from the first as from the last: the second half is the mirror of the first.</summary>
    private static int Between(int nth, int of, int among) =>
        2 * nth >= of ? among - 1 - Between(of - 1 - nth, of, among) : (2 * nth + 1) * among / (2 * of);
}
