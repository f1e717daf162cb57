using Dyepath.Core.Shaping;

namespace Dyepath.Core.Tests.Shaping;

/// <summary>
/// A maker who has nothing but the steps, the colour sequence and the number of rows of each part: works out every row and where its yarn
/// begins.
/// </summary>
internal static class StepFollower
{
    public static List<BrutePart> Follow(
        IReadOnlyList<ShapingStep> steps, IReadOnlyList<int> rows, IReadOnlyList<int?> below, int[] ring, BruteShape walk)
    {
        var parts = new List<BrutePart>();
        for (var part = 0; part < rows.Count; part++)
        {
            var mine = steps.Where(s => s.Part == part).ToList();
            var ground = below[part] is { } b ? parts[b] : null;
            var firstRow = ground is null ? 0 : ground.FirstRow + ground.Rows.Length;
            var begin = mine.Find(s => s.Act is ShapingAct.Begin or ShapingAct.Join);
            var (first, last) = ground?.Rows[^1] ?? (begin!.Column, begin.Column + begin.Units - 1);
            var fromLeft = begin is not null ? begin.Edge == RowEdge.Left : ground!.FromLeft != (ground.Rows.Length % 2 == 1);
            if (begin is { Act: ShapingAct.Join })
                (first, last) = fromLeft ? (first, last - begin.Units) : (first + begin.Units, last);
            var columns = new (int First, int Last)[rows[part]];
            for (var i = 0; i < columns.Length; i++)
            {
                foreach (var step in mine.Where(s => s.Row == firstRow + i))
                {
                    var shorter = step.Act switch
                    {
                        ShapingAct.LeaveUnworked or ShapingAct.SlipStitchBack => step.Units,
                        ShapingAct.WorkOverChains or ShapingAct.WorkOverStanding => -step.Units,
                        _ => 0,
                    };
                    (first, last) = step.Edge == RowEdge.Left ? (first, last - shorter) : (first + shorter, last);
                }
                columns[i] = (first, last);
            }
            var slipped = mine.Find(s => s.Act == ShapingAct.SlipStitchBack && s.Row == firstRow)?.Yarn ?? 0;
            var start = begin is { Place: { } place }
                ? (long)Math.Round((ring.Take(place.Section).Sum() + place.UnitsInto) * BruteShape.Unit)
                : walk.EndOf(ground!) + (long)Math.Round(slipped * BruteShape.Unit);
            parts.Add(new BrutePart(firstRow, fromLeft, start, columns));
        }
        return parts;
    }
}
