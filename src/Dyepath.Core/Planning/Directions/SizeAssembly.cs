using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>
/// Makes the size plans of a garment from the counts of the chosen direction: how each piece begins, seams, edgings, yarn.
/// </summary>
internal sealed class SizeAssembly(DirectionPlan chosen, SizeTargets targets)
{
    private readonly Layout _layout = chosen.Layout;
    private readonly WornEdges _edges = new(chosen.Layout);
    private readonly Dictionary<HeldMotif, double> _chances = [];

    private SharedFabric SharedFabric => _layout.SharedFabric;

    private Construction Construction => _layout.Construction;

    /// <summary>False where edgings or balls cannot be planned.</summary>
    public bool TryAssemble(int size, [NotNullWhen(true)] out SizePlan? plan, [NotNullWhen(false)] out Finding? fault)
    {
        plan = null;
        var body = targets.Sizes.Sizes[size];
        var (groups, laid) = Lay(size);
        var pieces = laid.Select(Piece).ToImmutableArray();
        var seams = Construction.Joins.Select(join => Seam(join, laid)).ToImmutableArray();
        var walk = new EdgeWalk(_layout, _edges, laid);
        if (!EdgingPlanner.TryPlan(SharedFabric, _layout.Direction, body.Name, walk.Edges(), RoundsAt, out var edgings, out fault))
            return false;
        edgings =
        [
            .. edgings.Select(edging => edging with
            {
                Elastic = Construction.ElasticAt(edging.Where, EdgingLibrary.Find(edging.Edging), body.Measures),
            }),
        ];
        if (YarnTally.Plan(SharedFabric, pieces, edgings, seams) is not { } yarn)
        {
            fault = GarmentPlanner.BallFault(SharedFabric);
            return false;
        }
        var finished = Finished(groups);
        // What follows another piece, or closes as far as it can, has no target of its own.
        var wanted = groups.SelectMany(g => g.Group.Openings).Where(o => o.BesideAs is not null)
            .Select(o => o.Measure).Concat(groups.Select(g => g.Group.Gores).Where(g => g?.Cone is not null).Select(g => g!.Edge))
            .Aggregate(chosen.Targets[size], (all, measure) => all.SetItem(measure, finished[measure]));
        plan = new SizePlan(body.Name, wanted, finished, pieces, edgings, seams, yarn)
        {
            Body = body.Measures,
            Worn = targets.Worn(size, finished),
        };
        return true;

        int? RoundsAt(EdgingPlace place) => groups.FirstOrDefault(g => _layout.Varied(g.Group) == place)?.Graded?.Rounds;
    }

    /// <summary>
    /// Decides piece after piece: the first one begins where its motif shows best, every other where it meets best what is decided
    /// already. The first two of a group may also give way by some rows.
    /// </summary>
    private (ImmutableArray<GroupCounts> Groups, ImmutableArray<LaidPiece> Laid) Lay(int size)
    {
        var groups = chosen.Sizes[size];
        var laid = ImmutableArray<LaidPiece>.Empty;
        for (var at = 0; at < groups.Length; at++)
        {
            for (var piece = 0; piece < groups[at].Group.Pieces.Length; piece++)
            {
                var decision = Decide(size, groups[at], piece, laid)
                    ?? new SeamDecision(groups[at].Rows, false, FirstStart(groups[at], piece));
                if (decision.Rows != groups[at].Rows)
                {
                    var counts = WithRows(size, groups[at], decision.Rows);
                    laid = [.. laid.Select(l => l.Counts == groups[at] ? Lay(counts, l.At, l.Start, l.Turned) : l)];
                    groups = groups.SetItem(at, counts);
                }
                laid = laid.Add(Lay(groups[at], piece, decision.Start, decision.Turned));
            }
        }
        return (groups, laid);
    }

    private SeamDecision? Decide(int size, GroupCounts counts, int piece, ImmutableArray<LaidPiece> laid)
    {
        var design = counts.Group.Pieces[piece];
        var joins = Construction.Joins
            .Where(j => Meets(j, design.Id, laid) && !BesideBands(j, id => id == design.Id ? counts : Of(id, laid).Counts)).ToArray();
        if (counts.Finding(piece) is null || joins.Length == 0)
            return null;
        var pair = laid.Where(l => l.Counts == counts).ToArray();
        var measure = counts.Group.Along(_layout.Direction, false).Measure;
        var mayChangeRows = pair.Length == 1 && counts.Outlines.IsEmpty
            && laid.All(l => l.Counts == counts || l.Counts.Group.Along(_layout.Direction, false).Measure != measure)
            && targets.Fixed.Count(targets.Name(size), FixedCounts.Rows(counts.Group)) is null;
        return SeamSearch.Choose(
            SharedFabric, counts.Rows, (mayChangeRows, design.MayTurn, SharedFabric.Project.Garment.StartOf(design.Id)),
            rows => Error(size, counts with { Rows = rows }),
            (rows, turned) =>
            {
                var own = rows == counts.Rows ? counts : WithRows(size, counts, rows);
                var piecesSoFar = own == counts ? laid : [.. laid.Select(l => pair.Contains(l) ? Lay(own, l.At, l.Start, l.Turned) : l)];
                piecesSoFar = piecesSoFar.Add(Lay(own, piece, 0, turned));
                return
                [
                    .. joins.Select(j => new OpenSeam(
                        Judge(j, piecesSoFar), j.Second.Any(e => e.Piece == design.Id) ? 1 : -1, Length(j, piecesSoFar).Centimetres)),
                ];
            });
    }

    /// <summary>A join of a piece with others, all of which are decided.</summary>
    private static bool Meets(Join join, PieceId piece, ImmutableArray<LaidPiece> laid)
    {
        var pieces = join.First.Concat(join.Second).Select(e => e.Piece).Distinct().ToArray();
        return pieces.Length > 1 && pieces.Contains(piece) && pieces.All(p => p == piece || laid.Any(l => l.Id == p && l.Path is not null));
    }

    private int FirstStart(GroupCounts counts, int piece) => counts.Finding(piece) is { } finding
        ? SharedFabric.Project.Garment.StartOf(counts.Group.Pieces[piece].Id)
            ?? (SeamSearch.FirstStart(SharedFabric, Path(counts, finding, 0), finding.Reading.Lean?.UnitsPerRow ?? 0)
                + (counts.Outlines.IsEmpty ? 0 : counts.Outlines[piece].FirstColumn)) % SeamSearch.SequenceUnits(SharedFabric)
        : 0;

    /// <summary>Counted in rows, a centred opening must be centred on as many as there are.</summary>
    private GroupCounts WithRows(int size, GroupCounts counts, int rows)
    {
        var own = counts with { Rows = rows };
        foreach (var opening in counts.Group.Openings.Where(o => o.At == OpeningAt.Middle && !_layout.Along(o.Sides[0]).AlongStitches))
        {
            var count = _layout.Count(own.Group, opening, chosen.Targets[size][opening.Measure], rows);
            own = own with { Openings = own.Openings.SetItem(opening.Id, count) };
        }
        foreach (var opening in counts.Group.Openings)
        {
            if (opening.BesideAs is not { } piece)
                continue;
            var count = Math.Max(1, _layout.CountBeside(own, opening, piece, chosen.Sizes[size]));
            own = own with { Openings = own.Openings.SetItem(opening.Id, count) };
        }
        return own;
    }

    private Length Error(int size, GroupCounts counts)
    {
        var dimension = counts.Group.Along(_layout.Direction, false);
        return _layout.Measure(counts, stitches: false) + _layout.Beside(dimension, chosen.Sizes[size])
            - chosen.Targets[size][dimension.Measure];
    }

    private LaidPiece Lay(GroupCounts counts, int piece, int start, bool turned)
    {
        var shape = _layout.Shape(counts, piece, start);
        var path = shape?.Parts[0].Path ?? (counts.Finding(piece) is { } finding ? Path(counts, finding, start) : null);
        return new LaidPiece(counts.Group.Pieces[piece].Id, counts, piece, path, turned)
        {
            Start = start,
            Shape = shape,
            Edges = shape is null ? null : _layout.Edges(counts, piece, shape, turned),
        };
    }

    private FabricPath Path(GroupCounts counts, CountFinding finding, int start) =>
        SharedFabric.Path(counts.Group.Working, finding.RowStitches, counts.Rows, finding.TurnCost, start);

    private PiecePlan Piece(LaidPiece laid)
    {
        var (counts, design) = (laid.Counts, laid.Counts.Group.Pieces[laid.At]);
        var bands = counts.Bands == 0 ? 0 : counts.Bands + SharedFabric.Project.Garment.Seams.HiddenRows;
        var openings = counts.Group.OpeningsOf(laid.Id).Select(o => Opening(laid, o)).ToImmutableArray();
        var piece = PieceWriter.Write(SharedFabric, _layout, laid, design.Copies, bands, openings);
        return piece with { MadeWell = ChanceOf(piece), SideBand = bands == 0 ? null : SideBand(laid, bands) };
    }

    /// <summary>Pieces of the same rows and lean have the same chance.</summary>
    private double? ChanceOf(PiecePlan piece)
    {
        if (MadeWell.Held(SharedFabric, piece) is not { } motif)
            return null;
        if (!_chances.TryGetValue(motif, out var chance))
            _chances[motif] = chance = SharedFabric.Decisions.MadeWell(() => MadeWell.Chance(motif, SharedFabric));
        return chance;
    }

    /// <summary>Along the whole side, parted where its opening begins, so that the band can be marked there.</summary>
    private SideBandPlan SideBand(LaidPiece laid, int rows)
    {
        var along = _layout.Along(PieceSide.Right).AlongStitches;
        var all = _layout.PlacesAlong(laid.Counts, laid.At, PieceSide.Right);
        var opens = laid.Counts.Group.Openings.FirstOrDefault(o => o.At == OpeningAt.End && o.Sides.Any(s => s.IsUpright()));
        var above = opens is null ? 0 : laid.Counts.Openings[opens.Id];
        ImmutableArray<EdgeStretch> stretches = above == 0 || above >= all
            ? [new EdgeStretch(new StretchId.OfSide(SidePart.Whole), !along, all)]
            : [new EdgeStretch(new StretchId.OfSide(SidePart.BelowMark), !along, all - above),
                new EdgeStretch(new StretchId.OfSide(SidePart.AboveMark), !along, above)];
        EdgingLibrary.TryFind(EdgingLibrary.Plain, out var band);
        var flat = SharedFabric.EdgingGaugeFor(Direction.Up).Flat(SharedFabric.GaugeFor(Direction.Up));
        // More than a place can take is worked as many as it can.
        var worked = new FlatRatios(Math.Min(flat.Stitches, PickUp.Ratios.Largest), Math.Min(flat.RowEnds, PickUp.Ratios.Largest));
        return new SideBandPlan(rows, PickUp.Plan(band!, stretches, worked, 0, closed: false));
    }

    private PieceOpening Opening(LaidPiece laid, OpeningDesign opening)
    {
        if (laid.Edges?.Find(opening.Id, opening.Sides[0]) is { } cut)
        {
            return new PieceOpening(opening.Id, _layout.Along(opening.Sides[0]).AlongStitches, cut.Begins + 1, cut.Begins + cut.Length)
            {
                Into = cut.Into,
                Mean = opening.Sides.Select(side => laid.Edges.Find(opening.Id, side)).OfType<CutExtent>().Average(c => c.Length),
            };
        }
        var run = _edges.Runs(new PieceEdge(laid.Id, opening.Sides[0], Stretch.Opening, opening.Id), laid)[0];
        var all = _layout.PlacesAlong(laid.Counts, laid.At, opening.Sides[0]);
        var (begins, ends) = (opening.At == OpeningAt.Beginning ? 0 : run.From, opening.At == OpeningAt.End ? all : run.From + run.Count);
        return new PieceOpening(opening.Id, run.AlongStitches, begins + 1, ends)
        {
            Side = opening.Sides is not [var only] || opening.At == OpeningAt.Middle ? null
                : only.IsUpright() ? only
                : opening.At == OpeningAt.End ? PieceSide.Right : PieceSide.Left,
            Beside = opening.At == OpeningAt.Middle ? null : all - (ends - begins),
        };
    }

    private SeamPlan Seam(Join join, ImmutableArray<LaidPiece> laid)
    {
        // Beside a plain band no colours adjoin, nor beside a plain piece.
        if (BesideBands(join, id => Of(id, laid).Counts) || join.First.Concat(join.Second).Any(e => Of(e.Piece, laid).Path is null))
            return Plan(0, 1);
        var judged = Judge(join, laid).MinBy(j => j.Meter.MeanJump());
        var (jump, match) = SeamSearch.Figures(judged.Meter);
        return Plan(jump, match) with
        {
            Extension = judged.Extension,
            Chance = SharedFabric.Period is { } period ? ColourRing.ToUnits(period.Micro) / 4 : 0,
        };

        SeamPlan Plan(double jump, double match) => new(
            join.Id, Runs(join.First, join, laid), Runs(join.Second, join, laid), join.Sewn, jump, match, Length(join, laid));
    }

    /// <summary>Against every extension that the seam may be judged by, the likelier one first; a round's join can only run on.</summary>
    private ImmutableArray<JudgedSeam> Judge(Join join, ImmutableArray<LaidPiece> laid)
    {
        var (first, second) = (Read(Runs(join.First, join, laid)), Read(Runs(join.Second, join, laid)));
        ImmutableArray<SeamExtension> extensions = join.Kind == JoinKind.Round ? [SeamExtension.Continued]
            : SharedFabric.Project.Garment.Seams.Extension is { } wanted ? [wanted] : [SeamExtension.Continued, SeamExtension.Mirrored];
        return
        [
            .. extensions.Select(extension =>
            {
                var meter = new SeamMeter(SharedFabric.PeriodMicro);
                meter.AddSeam(first, second, extension);
                return new JudgedSeam(extension, meter);
            }),
        ];

        ImmutableArray<SeamStitch> Read(ImmutableArray<EdgeRun> runs) => runs.Any(r => Of(r.Piece, laid).Path is null)
            ? []
            : [.. runs.SelectMany(run => _edges.Read(run, Of(run.Piece, laid), join.Sewn))];
    }

    /// <summary>A joined round meets its own beginning, a spiral the next round's.</summary>
    private ImmutableArray<EdgeRun> Runs(ImmutableArray<PieceEdge> edges, Join join, ImmutableArray<LaidPiece> laid) =>
    [
        .. edges.SelectMany(edge =>
        {
            var piece = Of(edge.Piece, laid);
            var runs = _edges.Runs(edge, piece);
            return join.Sewn || piece.Counts.Group.Working != Working.Spiral
                ? runs
                : [.. runs.Select(run => run with { From = run.From + (edges == join.First ? 0 : 1), Count = run.Count - 1 })];
        }),
    ];

    private static LaidPiece Of(PieceId piece, ImmutableArray<LaidPiece> laid) => laid.First(l => l.Id == piece);

    /// <summary>A band runs along the whole side, its opening too.</summary>
    private static bool BesideBands(Join join, Func<PieceId, GroupCounts> counts) =>
        join.First.Concat(join.Second).Any(e => e.Side.IsUpright() && counts(e.Piece).Bands > 0);

    /// <summary>Along its first side; side bands at the end of an edge are sewn too.</summary>
    private Length Length(Join join, ImmutableArray<LaidPiece> laid) => join.First.Aggregate(Quantities.Length.Zero, (sum, edge) =>
    {
        var piece = Of(edge.Piece, laid);
        var along = _edges.Runs(edge, piece)
            .Aggregate(Quantities.Length.Zero, (length, run) => length + _layout.For(piece.Counts.Group).Along(run.Side).Of(run.Count, 0));
        var bands = !edge.Side.IsUpright() && edge.Stretch is Stretch.BeforeOpening or Stretch.AfterOpening
            ? piece.Counts.Bands * SharedFabric.SingleCrochetHeight
            : Quantities.Length.Zero;
        return sum + along + bands;
    });

    private ImmutableSortedDictionary<GarmentMeasure, Length> Finished(ImmutableArray<GroupCounts> groups)
    {
        var finished = ImmutableSortedDictionary.CreateBuilder<GarmentMeasure, Length>();
        foreach (var counts in groups)
        {
            foreach (var stitches in new[] { true, false })
            {
                var dimension = counts.Group.Along(_layout.Direction, stitches);
                finished[dimension.Measure] = _layout.Measure(counts, stitches) + _layout.Beside(dimension, groups);
            }
            if (counts.Group.Gores is { } gores)
                finished[gores.Edge] = _layout.MeasureTop(counts);
            foreach (var opening in counts.Group.Openings)
                finished[opening.Measure] = _layout.Measure(counts.Group, opening, counts.Openings[opening.Id]);
            if (counts.Group.Openings.Any(o => o.Cut is not null))
            {
                foreach (var (measure, depth) in _layout.Depths(counts, _layout.Edges(counts)))
                    finished[measure] = depth;
            }
        }
        return finished.ToImmutable();
    }
}
