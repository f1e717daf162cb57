using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Motifs;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Work;

/// <summary>A row in the words that are read or heard beside the hook.</summary>
public static class RowWords
{
    /// <summary>Such as <c>3 deep water, 4 shallows, 2 foam</c>.</summary>
    /// <param name="names">By section.</param>
    public static string Say(IEnumerable<ColourRun> runs, ImmutableArray<string> names) =>
        string.Join(", ", runs.Select(run => FormattableString.Invariant($"{run.Units} {names[run.Section]}")));

    /// <summary>
    /// How far, in pooling units, every colour begins earlier in a row than in the last one worked the same way: two rows below, or in
    /// rounds one. Null in the first of its kind.
    /// </summary>
    /// <param name="row">From 0.</param>
    public static double? Earlier(Fabric fabric, int row)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        var step = fabric.Path.IsTurned ? 2 : 1;
        if (row < step)
            return null;
        return ColourRing.ToUnits(Lean.Wrap(fabric.Path.AdvanceAt(row - step).Micro, fabric.Ring.Total));
    }

    /// <summary>One sentence; empty in the first row of its kind.</summary>
    public static string SayEarlier(Fabric fabric, int row)
    {
        if (Earlier(fabric, row) is not { } earlier)
            return "";
        var below = fabric.Path.Working == Working.Turned ? "two rows below" : fabric.Path.IsTurned ? "two rounds below" : "in the round below";
        var size = Math.Abs(earlier);
        if (size < 0.125)
            return $"Every colour begins where it did {below}.";
        var (one, many) = fabric.Path.StitchesPerUnit == 2 ? ("pair", "pairs") : ("stitch", "stitches");
        var whole = Math.Round(size, MidpointRounding.AwayFromZero);
        var far = Math.Abs(size - 0.5) < 0.125 ? $"half a {one}"
            : Math.Abs(size - whole) >= 0.125 ? FormattableString.Invariant($"about {size:0.#} {many}")
            : whole == 1 ? $"one {one}"
            : FormattableString.Invariant($"{whole} {many}");
        return $"Each colour begins {far} {(earlier > 0 ? "earlier" : "later")} than {below}.";
    }
}
