using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>The outline of a piece whose openings are cut into it, for any start in the colour sequence.</summary>
/// <param name="Units">Of its first row.</param>
/// <param name="Parts">In the order of work.</param>
internal sealed record CutOutline(int Units, ImmutableArray<PartOutline> Parts)
{
    /// <summary>The motif goes on unbroken along its edges.</summary>
    public bool KeepsMotif { get; init; } = true;

    /// <summary>Share of its stitches at which the colours draw something else than the motif, 0 to 1.</summary>
    public double LostShare { get; init; }

    /// <summary>Where its first row begins in the panel that its count was chosen for.</summary>
    public int FirstColumn { get; init; }

    /// <summary>The same, as it was worked.</summary>
    public CutOutline Of(ShapedPiece piece) => this with
    {
        Parts = [.. piece.Parts.Select(p => new PartOutline(p.FirstRow, p.Outline) { Below = p.Below, Continues = p.Continues })],
        KeepsMotif = piece.KeepsMotif,
        LostShare = piece.KeepsMotif ? 0 : piece.LostShare,
    };

    /// <summary>From the rightmost column of all rows to the leftmost.</summary>
    public int Columns => Parts.Max(p => p.Outline.LastColumn) - Parts.Min(p => p.Outline.FirstColumn) + 1;
}

/// <summary>
/// Turns forms, gores, and openings that are cut, in worn centimetres, into edges row by row, and has the nearest outline
/// found that keeps the motif.
/// </summary>
/// <param name="letOff">How far edges may lie off their place before the motif gives way; missing: as each group has it.</param>
internal sealed class CutPlanner(Layout layout, Length? letOff = null)
{
    /// <summary>Fewest stitches beside a cut that can be worked as rows.</summary>
    private const int LeastUnits = 3;

    /// <summary>
    /// What a step has to bring, in stitches times rows: a cut and its return for a few stitches in one row are not worth working (an
    /// assumption without a source).
    /// </summary>
    private const double StepWorth = 30;

    /// <summary>How often a cut is tried longer or shorter, by a step at either end each, so that two pieces' edges are alike.</summary>
    private const int MostChanges = 12;

    /// <summary>
    /// What a step has to spare of jumps where the motif gives way, in stitches: fewer, larger steps are shorter words (an
    /// assumption without a source).
    /// </summary>
    private const double StepSpares = 8;

    /// <summary>
    /// Rows below the shoulder seam of a front that are as wide as it: a seam hides one, and two pairs are seen to meet (an
    /// assumption without a source).
    /// </summary>
    private const int ShoulderRows = 4;

    /// <summary>What is seen of a cut beside its seam: less is not worth being cut (common practice, no source).</summary>
    public static readonly Length LeastSeen = Length.FromCentimetres(1);

    /// <summary>Missing: as each group has it.</summary>
    public Length? LetOff => letOff;

    private SharedFabric SharedFabric => layout.SharedFabric;

    /// <summary>
    /// Outlines of all pieces of a group whose edges beside a cut are sewn to each other: those edges as long as each other, at the
    /// least change of the cuts' wished lengths, or as each piece by itself where no such outlines are near. Null where cuts leave
    /// too little between them.
    /// </summary>
    /// <param name="wanted">Targets of the size's measures, finished.</param>
    public ImmutableArray<CutOutline>? PlanAlike(GroupCounts counts, IReadOnlyDictionary<GarmentMeasure, Length> wanted)
    {
        var group = counts.Group;
        var each = group.Pieces.Select((_, piece) => Plan(counts, piece, wanted)).OfType<CutOutline>().ToImmutableArray();
        if (each.Length < group.Pieces.Length)
            return null;
        foreach (var opening in group.Openings.Where(o => o is { At: OpeningAt.Middle, Cut: not null }))
        {
            if (SewnBeside(opening) is not { Length: > 0 } sewn)
                continue;
            var beside = each.Select((outline, piece) => Beside(counts, piece, outline, opening, sewn)).ToArray();
            var found = beside.OfType<(int Shorter, int Longer)>().ToArray();
            if (found.Distinct().Count() > 1 || found.Any(b => b.Shorter != b.Longer))
                each = Alike(counts, wanted, opening, each, sewn) ?? each;
        }
        return each;
    }

    /// <summary>Edges beside an opening that are sewn to each other.</summary>
    private PieceEdge[] SewnBeside(OpeningDesign opening) =>
    [
        .. layout.Construction.Joins.Where(j => j.Sewn).Select(j => j.First.Concat(j.Second))
            .Where(edges => edges.All(e => e.Opening == opening.Id && e.Stretch is Stretch.BeforeOpening or Stretch.AfterOpening))
            .SelectMany(edges => edges).Where(e => opening.Sides.Contains(e.Side)),
    ];

    /// <summary>Places of the edges at either side of the cut, the shorter first; null where nothing is cut out of the piece.</summary>
    private (int, int)? Beside(GroupCounts counts, int piece, CutOutline outline, OpeningDesign opening, PieceEdge[] sewn)
    {
        var id = counts.Group.Pieces[piece].Id;
        var edges = layout.Edges(counts, piece, outline);
        if (edges.Into(opening) == 0)
            return null;
        var places = sewn.Where(e => e.Piece == id).Select(e => edges.Runs(e, (0, 0)).Sum(r => r.Count)).Order().ToArray();
        return places is [var shorter, var longer] ? (shorter, longer) : null;
    }

    /// <summary>Every piece with its cut made wider or narrower until the edges beside the cuts are alike.</summary>
    private ImmutableArray<CutOutline>? Alike(
        GroupCounts counts, IReadOnlyDictionary<GarmentMeasure, Length> wanted, OpeningDesign opening, ImmutableArray<CutOutline> each,
        PieceEdge[] sewn)
    {
        var step = layout.Along(opening.Sides[0]).AlongStitches ? 1 : 4;
        var pieces = each.Select(_ => new Dictionary<(int Shorter, int Longer), (CutOutline Outline, int Change)>()).ToArray();
        for (var change = 0; change <= MostChanges && !IsBest(change - 1); change++)
        {
            for (var piece = 0; piece < pieces.Length; piece++)
            {
                foreach (var wider in change == 0 ? [0] : new[] { -change, change })
                {
                    if ((wider == 0 ? each[piece] : Plan(counts, piece, wanted, (opening.Id, wider * step))) is { } outline
                        && Beside(counts, piece, outline, opening, sewn) is { } beside)
                        pieces[piece].TryAdd(beside, (outline, change));
                }
            }
        }
        // Where nothing is cut out of a piece, it is left open in the middle, as far as the others are.
        var (cut, alike) = Shared();
        if (alike.Length == 0)
            return null;
        // Pieces lie face to face: of two edges that differ, the longer one would meet the shorter one.
        var best = alike.MinBy(k => (k.Shorter != k.Longer, cut.Sum(p => p[k].Change), cut.Max(p => p[k].Change)));
        return [.. pieces.Select((p, i) => p.Count > 0 ? p[best].Outline : each[i])];

        (Dictionary<(int Shorter, int Longer), (CutOutline Outline, int Change)>[] Cut, (int Shorter, int Longer)[] Alike) Shared()
        {
            var cut = pieces.Where(p => p.Count > 0).ToArray();
            var shared = cut.SelectMany(p => p.Keys).Distinct().Where(k => cut.All(p => p.ContainsKey(k)));
            return (cut, [.. shared.Where(k => cut.Length == pieces.Length || IsInTheMiddle(k))]);
        }

        // What larger changes could find takes more of them than the best that is found; but a piece that is to be cut
        // may be so by them alone.
        bool IsBest(int tried) => tried >= 0
            && pieces.Select((p, i) => p.Count > 0 || !opening.Cut!.Depths.ContainsKey(counts.Group.Pieces[i].Id)).All(known => known)
            && Shared() is var (cut, alike) && alike.Any(k => k.Shorter == k.Longer && cut.Sum(p => p[k].Change) <= tried);
    }

    private static bool IsInTheMiddle((int Shorter, int Longer) beside) => beside.Longer - beside.Shorter <= 1;

    /// <summary>Null where its cuts leave too little between them.</summary>
    /// <param name="wanted">Targets of the size's measures, finished.</param>
    /// <param name="wider">An opening that is wished for so many places longer than its target.</param>
    public CutOutline? Plan(
        GroupCounts counts, int piece, IReadOnlyDictionary<GarmentMeasure, Length> wanted, (OpeningId Opening, int Places) wider = default)
    {
        var options = Options(letOff ?? counts.Group.LetOff ?? PieceGroup.UsualLetOff);
        if (counts.Finding(piece) is not { } finding)
            return null;
        if (counts.Group.Form is { } form)
            return PlanForm(form, finding.Stitches, finding.TurnCost, counts.Rows);
        if (counts.Group.Gores is { } gores)
            return new GorePlanner(layout, counts).Plan(Panel(finding.Stitches, finding.TurnCost), gores, wanted);
        if (counts.Group.Bias > 0)
            return PlanBias(finding.Stitches + counts.Group.Bias / 2, counts.Rows, counts.Group.Bias);
        var cuts = counts.Group.OpeningsOf(counts.Group.Pieces[piece].Id).Where(o => o.Cut is not null)
            .SelectMany(o => o.Sides.Select(side =>
                Wish(counts, piece, o, side, wanted, o.Id == wider.Opening ? wider.Places : 0))).ToArray();
        try
        {
            while (true)
            {
                var outline = layout.Up ? PlanUp(counts.Rows, finding, cuts, options) : PlanSideways(counts.Rows, finding, cuts, options);
                if (outline is null)
                    return null;
                var shallow = Shallow(counts, piece, outline, finding.TurnCost);
                if (!cuts.Any(c => c.Depth > 0 && shallow.Contains(c.Opening)))
                    return outline;
                cuts = [.. cuts.Where(c => !shallow.Contains(c.Opening))];
            }
        }
        catch (ArgumentException)
        {
            // Edges that cross each other, or leave the range of what can be worked.
            return null;
        }
    }

    /// <summary>Openings of which a seam takes all, or leaves too little to be seen: their edge stays straight instead.</summary>
    private HashSet<OpeningDesign> Shallow(GroupCounts counts, int piece, CutOutline outline, double turnCost)
    {
        var edges = layout.Edges(counts, piece, outline);
        return [.. counts.Group.OpeningsOf(counts.Group.Pieces[piece].Id).Where(o =>
            o.Sides.Max(side => edges.Find(o.Id, side)?.Into ?? 0) is > 0 and var into
            && layout.SeenInto(counts.Group, o, into) < LeastSeen)];
    }

    public SteadyPanel Panel(int units, double turnCost, int start = 0) =>
        SteadyPanel.Of(SharedFabric.Ring, units, SharedFabric.Project.Fabric.Path(turnCost, start));

    /// <summary>The full count is the widest row: it makes the motif, and every row is a stretch of its panel.</summary>
    private CutOutline? PlanForm(PieceForm form, int stitches, double turnCost, int rows)
    {
        var panel = Panel(stitches, turnCost);
        if (panel.KeepingStep is null)
            return null;
        var (right, left) = (new double[rows], new double[rows]);
        for (var row = 0; row < rows; row++)
        {
            // Worked up, columns count from the right; worked sideways, from the bottom.
            var (from, to) = form.Crossing((row + 0.5) / rows, upright: !layout.Up);
            (right[row], left[row]) = layout.Up ? ((1 - to) * stitches, (1 - from) * stitches) : (from * stitches, to * stitches);
        }
        var options = new ShapeOptions { WithinPanel = true, LeastUnits = LeastUnits };
        var silhouette = new SilhouettePart(0, rows, EdgeLine.ByRow(right), EdgeLine.ByRow(left));
        return SharedFabric.Shapes.Plan(panel, [silhouette], options, SharedFabric.Effort) is not { } plan ? null
            : new CutOutline(plan.Piece.Panel.Units, [new PartOutline(0, plan.Piece.Parts[0].Outline)]) { FirstColumn = plan.FirstColumn };
    }

    /// <summary>
    /// Rows of N and N − k in turn, each pair k further left: law 13 takes k off the lean of the wider rows alone, so that against the
    /// slanted edges both families lean as those of the mean count N − k/2 do against upright ones.
    /// </summary>
    private static CutOutline? PlanBias(int stitches, int rows, int step)
    {
        if (stitches + rows / 2 * step > FabricPath.MostStitches)
            return null;
        return new CutOutline(stitches, [new PartOutline(0, OutlineShapes.Bias(stitches, rows, step, RowEdge.Left))]);
    }

    /// <summary>A cut as it is wished for, in places of the piece as worn.</summary>
    /// <param name="Begins">Along its side.</param>
    private sealed record CutWish(OpeningDesign Opening, PieceSide Side, double Begins, double Length, double Depth)
    {
        /// <summary>Corners of its edge, from its beginning to its end.</summary>
        public (double Along, double Into)[] Corners =>
            [.. Opening.Cut!.Edge(Opening.At).Select(p => (Begins + p.Along * Length, p.Into * Depth))];
    }

    private CutWish Wish(
        GroupCounts counts, int piece, OpeningDesign opening, PieceSide side, IReadOnlyDictionary<GarmentMeasure, Length> wanted, int wider)
    {
        var all = layout.PlacesAlong(counts, piece, side);
        var length = Math.Max(1, layout.Wish(counts.Group, opening, wanted[opening.Measure]) + wider);
        var id = counts.Group.Pieces[piece].Id;
        var depth = opening.Cut!.Depths.TryGetValue(id, out var measure)
            && wanted[measure] > Length.Zero ? layout.WishInto(counts.Group, opening, id, wanted[measure], length) : 0;
        var (along, into) = (layout.Along(side).AlongStitches, !layout.Along(side).AlongStitches);
        if (!along)
            length = opening.At == OpeningAt.Middle ? Nearest(length, 4, all % 4) : Nearest(length, 2, all % 2);
        if (!into)
            depth = Nearest(depth, 2, 0);
        var begins = opening.At switch { OpeningAt.Beginning => 0, OpeningAt.End => all - length, _ => (all - length) / 2 };
        return new CutWish(opening, side, begins, length, depth);
    }

    /// <summary>Steps at rows' ends come every other row at one edge.</summary>
    private static double Nearest(double rows, int multiple, int rest) =>
        Math.Max(0, Math.Round((rows - rest) / multiple, MidpointRounding.AwayFromZero) * multiple + rest);

    /// <summary>
    /// Worked up, no row is wider than the one below: every cut reaches the top, and sides that grew could close a neck again.
    /// </summary>
    private ShapeOptions Options(Length letOff) => new()
    {
        // The nearest stitch is always let pass: were none, the edge that breaks least would be none at all.
        Tolerance = Math.Max(0.5, letOff / layout.Of(stitches: true).Step),
        LeastUnits = LeastUnits,
        StepWorth = StepWorth,
        StepSpares = StepSpares,
        Chains = !layout.Up,
    };

    private CutOutline? PlanUp(int rows, CountFinding finding, CutWish[] cuts, ShapeOptions options)
    {
        var stitches = finding.Stitches;
        var panel = Panel(stitches, finding.TurnCost);
        var (right, left) = (new List<EdgePoint> { new(0, 0) }, new List<EdgePoint> { new(0, stitches) });
        foreach (var cut in cuts.Where(c => c.Depth > 0 && c.Side.IsUpright()))
        {
            var edge = cut.Side == PieceSide.Right ? RowEdge.Right : RowEdge.Left;
            foreach (var (row, into) in cut.Corners)
            {
                var column = edge == RowEdge.Right ? into : stitches - into;
                (edge == RowEdge.Right ? right : left).Add(new EdgePoint(OfEdge(panel, edge, row), column));
            }
        }
        var neck = cuts.SingleOrDefault(c => c is { Side: PieceSide.Top, Depth: > 0 });
        if (neck is { Opening.At: not OpeningAt.Middle })
        {
            var edge = neck.Opening.At == OpeningAt.End ? RowEdge.Right : RowEdge.Left;
            var points = edge == RowEdge.Right ? right : left;
            foreach (var (along, into) in edge == RowEdge.Right ? neck.Corners.Reverse() : neck.Corners)
                points.Add(new EdgePoint(Math.Max(points[^1].Row, OfEdge(panel, edge, rows - into)), stitches - along));
        }
        if (neck is not { Opening.At: OpeningAt.Middle })
        {
            var held = Shoulder(neck, stitches, rows);
            return Outline(panel, [new SilhouettePart(0, rows, EdgeLine.Of(right), EdgeLine.Of(left)) { Held = held }], options);
        }
        // As worn from the left, columns from the right. From the deepest corner outwards, one edge goes up at either side.
        var corners = neck.Corners;
        var deepest = corners.Max(c => c.Into);
        var from = rows - (int)deepest;
        EdgePoint At((double Along, double Into) corner) => new(rows - corner.Into, stitches - corner.Along);
        var leftSide = corners[..(Array.FindIndex(corners, c => c.Into == deepest) + 1)].Reverse().Select(At).ToArray();
        var rightSide = corners[Array.FindLastIndex(corners, c => c.Into == deepest)..].Select(At).ToArray();
        return from > 0 && Outline(panel,
        [
            new SilhouettePart(0, from, EdgeLine.Of(right), EdgeLine.Of(left)),
            new SilhouettePart(from, rows - from, EdgeLine.Of(right), EdgeLine.Of(rightSide)) { Below = 0 },
            new SilhouettePart(from, rows - from, EdgeLine.Of(leftSide), EdgeLine.Of(left)) { Below = 0 },
        ], options) is { } outline ? SharedFabric.Shapes.Mirrored(panel, outline) : null;
    }

    /// <summary>
    /// Rows run from hem to shoulder, so that every cut is one of their left-hand ends; sides that are cut, and a neck that a front begins
    /// or ends with, leave the first or the last rows short.
    /// </summary>
    private CutOutline? PlanSideways(int rows, CountFinding finding, CutWish[] cuts, ShapeOptions options)
    {
        var (stitches, turnCost) = (finding.Stitches, finding.TurnCost);
        var shorter = cuts.Where(c => c.Depth > 0).Select(c => c switch
        {
            { Side: PieceSide.Left } => c.Length,
            { Side: PieceSide.Top, Opening.At: OpeningAt.Beginning } => c.Depth,
            _ => 0,
        }).DefaultIfEmpty(0).Max();
        var units = shorter > 0 ? stitches - Growth(stitches, turnCost, shorter, options) : stitches;
        if (units < LeastUnits)
            return null;
        var points = new List<EdgePoint> { new(0, units) };
        foreach (var (cut, corner) in cuts.Where(c => c.Depth > 0)
            .OrderBy(c => c.Side == PieceSide.Left ? 0 : c.Side == PieceSide.Top ? 1 : 2)
            .SelectMany(c => (c.Side == PieceSide.Right ? c.Corners.Reverse() : c.Corners).Select(corner => (c, corner))))
        {
            points.Add(cut.Side switch
            {
                PieceSide.Left => new EdgePoint(corner.Into, Math.Max(corner.Along, units)),
                PieceSide.Right => new EdgePoint(rows - corner.Into, corner.Along),
                _ => new EdgePoint(corner.Along, stitches - corner.Into),
            });
        }
        var silhouette = new SilhouettePart(0, rows, EdgeLine.Upright(0), EdgeLine.Of(points)) { Held = Shoulder(cuts, stitches, rows) };
        var panel = Panel(units, turnCost);
        if (Outline(panel, [silhouette], options) is not { } outline)
            return null;
        if (outline.Parts[0].Outline.LastColumn == stitches - 1)
            return outline;
        return outline.Of(ShapedPiece.Work(panel, [outline.Parts[0] with { Outline = Full(outline.Parts[0].Outline, stitches) }]));
    }

    /// <summary>The last rows of a front worked up end beside its neck as far in as the shoulder that it is sewn to asks.</summary>
    private static ImmutableArray<EdgeHold> Shoulder(CutWish? neck, int stitches, int rows)
    {
        if (neck?.Opening.BesideAs is null)
            return [];
        var length = (int)Math.Round(neck.Length);
        var (edge, column) = neck.Opening.At == OpeningAt.End ? (RowEdge.Right, length) : (RowEdge.Left, stitches - length);
        return [new(edge, rows - ShoulderRows, ShoulderRows, column, column)];
    }

    /// <summary>
    /// Of a front worked sideways, the rows beside its neck go all the way up to the shoulder that they are sewn to, and no others do.
    /// </summary>
    private static ImmutableArray<EdgeHold> Shoulder(CutWish[] cuts, int stitches, int rows)
    {
        if (cuts.FirstOrDefault(c => c is { Opening.BesideAs: not null, Depth: > 0 }) is not { } neck)
            return [];
        var (begins, length) = ((int)neck.Begins, (int)neck.Length);
        return
        [
            new(RowEdge.Left, begins, length, 0, stitches - 1),
            begins > 0 ? new(RowEdge.Left, 0, begins, stitches, stitches) : new(RowEdge.Left, length, rows - length, stitches, stitches),
        ];
    }

    /// <summary>Rows from hem to shoulder have the count that was chosen for its motif, wherever their edge would break it least.</summary>
    private static Outline Full(Outline outline, int stitches)
    {
        var last = outline.LastColumn;
        return Shaping.Outline.Of(outline.Rows, [.. outline.Runs.Select(r => r.Last == last ? r with { Last = stitches - 1 } : r)]);
    }

    /// <summary>
    /// By how many stitches the first rows are shorter than the full ones: the nearest number that keeps the motif, or where that is too
    /// far off, the one that breaks it least.
    /// </summary>
    private int Growth(int stitches, double turnCost, double wished, ShapeOptions options)
    {
        var panel = Panel(stitches, turnCost);
        var tolerance = options.Tolerance ?? double.PositiveInfinity;
        var all = Enumerable.Range(0, Math.Max(1, stitches - LeastUnits))
            .Select(k => (Units: k, Away: Math.Abs(k - wished), Jump: Math.Abs(panel.JumpAtTurn(-k, -k)))).ToArray();
        var keeping = all.Where(k => k.Jump == 0).MinBy(k => k.Away);
        return keeping.Away <= tolerance ? keeping.Units
            : all.Where(k => k.Away <= tolerance).OrderBy(k => k.Jump).ThenBy(k => k.Away)
                .Select(k => k.Units).FirstOrDefault(keeping.Units);
    }

    /// <summary>The row nearest above at whose end an edge can be left.</summary>
    private static double OfEdge(SteadyPanel panel, RowEdge edge, double row) =>
        row == Math.Floor(row) && panel.EndOf((int)row) != edge ? row + 1 : row;

    private CutOutline? Outline(SteadyPanel panel, ImmutableArray<SilhouettePart> silhouette, ShapeOptions options) =>
        SharedFabric.Shapes.Outline(panel, silhouette, options, SharedFabric.Effort);
}
