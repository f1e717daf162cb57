using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>
/// Finds the outline nearest to a silhouette whose every step keeps the motif: least in area off it and in what its steps have to be worth.
/// Exact for each part, given the parts worked before it (docs/decisions/shaping-by-steps.md).
/// </summary>
public static class ShapePlanner
{
    /// <summary>Plans a piece of turned rows.</summary>
    /// <param name="silhouette">1 to 64 parts in the order of work; a part on another begins where that ends.</param>
    /// <returns>
    /// Where no outline keeps the motif, the one that breaks it least, if there is a tolerance; null where there is none either, because
    /// the parts leave each other no room or a joint search would be beyond all bounds.
    /// </returns>
    /// <exception cref="ArgumentException">
    /// A panel that is not turned, or of which no step keeps the motif where all have to; or parts that do not stand on each other.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public static ShapePlan? Plan(
        SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, ShapeOptions? options = null, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(silhouette);
        options ??= new ShapeOptions();
        Check(panel, silhouette, options);
        effort ??= new Effort();
        var keeping = Follow(panel, silhouette, options, breaks: false, effort);
        if (options.WithinPanel || options.Tolerance is not { } tolerance
            || Math.Abs(keeping?.Worst.Units ?? double.PositiveInfinity) <= tolerance)
            return keeping;
        var nearer = Follow(panel, silhouette, options, breaks: true, effort);
        return keeping is null ? nearer : keeping with { Nearer = nearer };
    }

    private static void Check(SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, ShapeOptions options)
    {
        if (panel.Path.Working != Working.Turned)
            throw new ArgumentException("Only turned rows are shaped.", nameof(panel));
        Guard.InRange(silhouette.Count, 1, ShapedPiece.MostParts, "parts", nameof(silhouette));
        Guard.InRange(options.LeastUnits, 1, FabricPath.MostStitches, "units", nameof(options));
        Guard.InRange(options.StepWorth, 0, 1_000, "units times rows", nameof(options));
        Guard.InRange(options.StepSpares, 0, 100, "units", nameof(options));
        if (options.Tolerance is { } tolerance)
            Guard.InRange(tolerance, 0, EdgeLine.Furthest, "units", nameof(options));
        for (var i = 0; i < silhouette.Count; i++)
        {
            var part = silhouette[i];
            Guard.InRange(part.Rows, 1, FabricPath.MostRows, "rows", nameof(silhouette));
            var first = part.Below is { } below && below >= 0 && below < i ? silhouette[below].FirstRow + silhouette[below].Rows : 0;
            if (part.Below is null != (i == 0) || part.FirstRow != first || (i > 0 && first == 0))
                throw new ArgumentException(
                    $"Part {i} does not stand on an earlier one, or on the foundation as the first.", nameof(silhouette));
            Guard.InRange(part.FirstRow + part.Rows, 1, FabricPath.MostRows, "rows", nameof(silhouette));
        }
    }

    private static ShapePlan? Follow(
        SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, ShapeOptions options, bool breaks, Effort effort)
    {
        var parts = new List<PartOutline>();
        for (var i = 0; i < silhouette.Count; i++)
        {
            if (Shortfalls(panel, silhouette, parts, options, breaks, effort) is not { } rows)
                return null;
            parts.Add(new PartOutline(silhouette[i].FirstRow, Outline.ByRow([.. rows.Select(r => (r.Right, panel.Units - 1 - r.Left))]))
            {
                Below = silhouette[i].Below,
                Continues = GoesOn(panel, silhouette, i),
            });
        }
        return Measured(options.WithinPanel ? Narrowed(panel, parts) : panel, silhouette, parts, parts[0].Outline.At(0).First);
    }

    /// <summary>
    /// The panel of the first row: every stitch lies where the wider one has it, since both leave whole steps that keep the motif.
    /// </summary>
    private static SteadyPanel Narrowed(SteadyPanel panel, List<PartOutline> parts)
    {
        var first = parts[0].Outline.At(0);
        var start = panel.PlaceAt(0, panel.BeginningOf(0) == RowEdge.Right ? first.First : first.Last);
        var options = panel.Options with { Start = ColourRing.ToUnits(ColourRing.Modulo(start, panel.Ring.Total)) };
        return SteadyPanel.Of(panel.Ring, first.Units, options, panel.Path.Working, panel.SlipStitchYarn);
    }

    /// <summary>
    /// The part is worked right after the one below and lies at the edge where that ended, so that its yarn need not be cut.
    /// </summary>
    private static bool GoesOn(SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, int index)
    {
        var part = silhouette[index];
        if (part.Below is not { } below || below != index - 1)
            return false;
        var beside = silhouette.Where((other, i) => i != index && other.Below == below);
        return panel.BeginningOf(part.FirstRow) == RowEdge.Left
            ? beside.All(other => other.Left.At(part.FirstRow) <= part.Left.At(part.FirstRow))
            : beside.All(other => other.Right.At(part.FirstRow) >= part.Right.At(part.FirstRow));
    }

    private static (int Right, int Left)[]? Shortfalls(
        SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, List<PartOutline> parts, ShapeOptions options, bool breaks,
        Effort effort)
    {
        var index = parts.Count;
        var part = silhouette[index];
        var (right, left) = Wishes(panel, silhouette, parts);
        var beginning = index == 0 ? options.WithinPanel ? PartBeginning.Anywhere : PartBeginning.Foundation
            : GoesOn(panel, silhouette, index) ? PartBeginning.Continued : PartBeginning.Joined;
        var goesOn = index + 1 < silhouette.Count && GoesOn(panel, silhouette, index + 1);
        (int Right, int Left)[]? Solve(EdgeWish? one, EdgeWish? other)
        {
            if ((one is null || one.IsStraightUp) && (other is null || other.IsStraightUp) && !options.WithinPanel)
                return [.. Enumerable.Repeat((one?.Ground ?? 0, other?.Ground ?? 0), part.Rows)];
            var program = new EdgeProgram(panel, options, one, other, breaks);
            return program.States > EdgeProgram.MostStates ? null : program.Solve(part.FirstRow, beginning, goesOn, effort);
        }
        // The edges depend on each other only through the width: where each solved alone leaves enough, the two together are optimal.
        if (Solve(right, null) is not { } alone || Solve(null, left) is not { } other)
            return null;
        var rows = alone.Zip(other, (r, l) => (r.Right, l.Left)).ToArray();
        return IsWorkable(panel, options, part, beginning, rows, right, left) ? rows : Solve(right, left);
    }

    /// <summary>Every row has a width that can be worked, also between the change at its beginning and that at its end.</summary>
    private static bool IsWorkable(
        SteadyPanel panel, ShapeOptions options, SilhouettePart part, PartBeginning beginning, (int Right, int Left)[] rows,
        EdgeWish right, EdgeWish left)
    {
        var most = FabricPath.MostStitches / panel.Options.StitchesPerUnit;
        bool Fits(int one, int other) => panel.Units - one - other is var units && units >= options.LeastUnits && units <= most;
        for (var i = 0; i < rows.Length; i++)
        {
            var before = i == 0 ? (Right: right.Ground, Left: left.Ground) : rows[i - 1];
            var fromRight = panel.BeginningOf(part.FirstRow + i) == RowEdge.Right;
            if (!Fits(rows[i].Right, rows[i].Left)
                || (i > 0 || beginning is PartBeginning.Continued or PartBeginning.Joined)
                    && !(fromRight ? Fits(rows[i].Right, before.Left) : Fits(before.Right, rows[i].Left)))
            {
                return false;
            }
        }
        return true;
    }

    private static (EdgeWish Right, EdgeWish Left) Wishes(
        SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, List<PartOutline> parts)
    {
        var part = silhouette[parts.Count];
        var width = panel.Units * ColourRing.Unit;
        var rows = Enumerable.Range(part.FirstRow, part.Rows);
        var ground = part.Below is { } below
            ? parts[below].Outline.At(parts[below].Outline.Rows - 1) : new OutlineRun(0, 0, panel.Units - 1);
        int[] leastRight = [.. Enumerable.Repeat(int.MinValue, part.Rows)];
        int[] leastLeft = [.. leastRight];
        int[] mostRight = [.. Enumerable.Repeat(int.MaxValue, part.Rows)];
        int[] mostLeft = [.. mostRight];
        foreach (var held in part.Held)
        {
            foreach (var row in rows.Where(held.Has).Select(r => r - part.FirstRow))
            {
                if (held.Edge == RowEdge.Right)
                    (leastRight[row], mostRight[row]) = (held.Least, held.Most);
                else
                    (leastLeft[row], mostLeft[row]) = (panel.Units - held.Most, panel.Units - held.Least);
            }
        }
        foreach (var other in parts.Where((p, i) => i != part.Below))
        {
            var (from, to) = (
                Math.Max(other.FirstRow, part.FirstRow), Math.Min(other.FirstRow + other.Outline.Rows, part.FirstRow + part.Rows));
            if (from >= to)
                continue;
            var toTheRight = silhouette[parts.IndexOf(other)].Right.At(from) <= part.Right.At(from);
            foreach (var run in other.Outline.ByRow().Skip(from - other.FirstRow).Take(to - from))
            {
                var row = other.FirstRow + run.FromRow - part.FirstRow;
                if (toTheRight)
                    leastRight[row] = Math.Max(leastRight[row], run.Last + 1);
                else
                    leastLeft[row] = Math.Max(leastLeft[row], panel.Units - run.First);
            }
        }
        return (
            new EdgeWish([.. rows.Select(part.Right.At)], leastRight, mostRight, ground.First),
            new EdgeWish([.. rows.Select(r => width - part.Left.At(r))], leastLeft, mostLeft, panel.Units - 1 - ground.Last));
    }

    /// <param name="panel">Of the first row.</param>
    /// <param name="column">The silhouette's column that is its rightmost one.</param>
    private static ShapePlan Measured(SteadyPanel panel, IReadOnlyList<SilhouettePart> silhouette, List<PartOutline> parts, int column)
    {
        var piece = ShapedPiece.Work(panel, [.. parts.Select(p => p with { Outline = p.Outline.Shifted(-column) })]);
        var (distance, worst, furthest) = (0L, default(EdgeMiss), -1L);
        for (var i = 0; i < parts.Count; i++)
        {
            foreach (var run in parts[i].Outline.ByRow())
            {
                var row = parts[i].FirstRow + run.FromRow;
                foreach (var (edge, at, wished) in (ReadOnlySpan<(RowEdge, int, EdgeLine)>)
                    [(RowEdge.Right, run.First, silhouette[i].Right), (RowEdge.Left, run.Last + 1, silhouette[i].Left)])
                {
                    var away = at * ColourRing.Unit - wished.At(row);
                    distance += Math.Abs(away);
                    if (Math.Abs(away) > furthest)
                        (furthest, worst) = (Math.Abs(away), new EdgeMiss(i, row, edge, ColourRing.ToUnits(away)));
                }
            }
        }
        return new ShapePlan(piece, ColourRing.ToUnits(distance), worst) { FirstColumn = column };
    }
}
