using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>
/// Plans what is one rectangle: a cowl in rounds, or turned and seamed; a wrap or blanket. Worked up, a cowl's circumference and a
/// wrap's width run along the stitches; worked sideways, the other measure does. In rounds a cowl is always worked up.
/// </summary>
internal sealed class RectanglePlanner
{
    private const double CentimetresPerCount = 0.5;

    private static readonly ImmutableArray<PlanRule> Rules =
    [
        new("circumference", "A cowl's circumference is as the document gives it, for every size its own where its sizes say so."),
        new("gauge", "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one."),
        new("seam", "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen."),
    ];

    private readonly Fabrication _fabrication;
    private readonly ImmutableArray<Target> _sizes;
    private readonly FixedNumbers _fixed;
    private readonly bool _isCowl;

    private RectanglePlanner(Fabrication fabrication, ImmutableArray<Target> sizes, FixedNumbers numbers)
    {
        (_fabrication, _sizes, _fixed) = (fabrication, sizes, numbers);
        _isCowl = fabrication.Project.Garment.Shape is Cowl;
    }

    private GarmentSpec Garment => _fabrication.Project.Garment;

    /// <summary>Working of a piece; a wrap and a seamed cowl are turned.</summary>
    private Working Working => _isCowl ? Garment.Working : Working.Turned;

    private bool IsSewn => _isCowl && Working == Working.Turned;

    private Length BothEdges =>
        _isCowl ? 2 * _fabrication.EdgingDepth(EdgingPlace.Brims) : 2 * _fabrication.EdgingDepth(EdgingPlace.Border);

    private PieceId Piece => Garment.Shape switch
    {
        Cowl => PieceId.Cowl,
        Wrap { IsBlanket: true } => PieceId.Blanket,
        _ => PieceId.Wrap,
    };

    public static PlanResult Plan(Fabrication fabrication)
    {
        var faults = EdgingPlanner.Faults(fabrication.Project.Garment, Wearers.Adult).ToList();
        var sizes = Targets(fabrication, faults);
        var selection = fabrication.Project.Sizes;
        var names = sizes.Select(s => s.Name).ToArray();
        var numbers = new FixedNumbers(selection, selection.Base ?? (names.Length == 0 ? "" : names[names.Length / 2]));
        GarmentMeasure[] measures = fabrication.Project.Garment.Shape is Cowl
            ? [GarmentMeasure.Circumference, GarmentMeasure.Height]
            : [GarmentMeasure.Width, GarmentMeasure.Length];
        faults.AddRange(SeamSearch.Faults(fabrication));
        faults.AddRange(numbers.Faults(names, measures, [FixedCounts.PanelStitches, FixedCounts.PanelRows]));
        if (faults.Count > 0)
            return PlanResult.Bad(faults);
        return new RectanglePlanner(fabrication, sizes, numbers).PlanAll();
    }

    /// <summary>One size, or as many as the designer's own chart names; each may give the measures anew.</summary>
    private static ImmutableArray<Target> Targets(Fabrication fabrication, List<Finding> faults)
    {
        var selection = fabrication.Project.Sizes;
        var (first, second, firstKey, secondKey) = fabrication.Project.Garment.Shape switch
        {
            Cowl cowl => (cowl.Circumference, cowl.Height, GarmentMeasure.Circumference, GarmentMeasure.Height),
            Wrap wrap => (wrap.Width, wrap.Length, GarmentMeasure.Width, GarmentMeasure.Length),
            _ => throw new InvalidOperationException("Only cowls and wraps are one rectangle."),
        };
        IReadOnlyList<OwnSize> own = !selection.Own.IsEmpty
            ? selection.Own
            : [.. selection.Names(toBody: false).Select(
                n => new OwnSize(n, ImmutableSortedDictionary<string, Length>.Empty))];
        var targets = own.Select(o => new Target(
            o.Name, o.Measures,
            Fixed(o, firstKey) ?? o.Measures.GetValueOrDefault(GarmentMeasures.Key(firstKey), first),
            Fixed(o, secondKey) ?? o.Measures.GetValueOrDefault(GarmentMeasures.Key(secondKey), second))).ToImmutableArray();
        foreach (var target in targets.Where(t => t.First <= Length.Zero || t.Second <= Length.Zero))
            faults.Add(new Finding(
                FindingLevel.Fault, "garment", $"Size {target.Name} has a measure of 0 cm or less: give both measures."));
        return targets;

        Length? Fixed(OwnSize size, GarmentMeasure measure) => selection.Overrides.Concat(selection.Locked)
            .FirstOrDefault(f => f.Size == size.Name && f.What == GarmentMeasures.Key(measure))?.Length;
    }

    private PlanResult PlanAll()
    {
        var directions = Working == Working.Turned ? Enum.GetValues<Direction>() : [Direction.Up];
        var planned = directions.Select(d => PlanOne(d)).ToArray();
        var wanted = Garment.Direction;
        var open = planned.Where(p => p.Option.Feasible && (wanted is null || p.Option.Direction == wanted)).ToArray();
        if (open.Length == 0)
            return PlanResult.None(planned.Where(p => wanted is null || p.Option.Direction == wanted).SelectMany(p => p.Reasons), planned.Select(p => p.Option));
        var chosen = open.MinBy(p => p.Score)!;
        var sizes = ImmutableArray.CreateBuilder<SizePlan>();
        for (var i = 0; i < _sizes.Length; i++)
        {
            _fabrication.Effort.Begin(EffortPart.Seams);
            if (!TryAssemble(chosen.Option.Direction, i, chosen.Counts[i], out var size, out var fault))
                return PlanResult.Bad([fault]);
            sizes.Add(size);
        }
        return PlanResult.Of(GarmentPlanner.Finish(
            _fabrication, chosen.Option.Direction,
            GarmentPlanner.Why([.. planned.Select(p => p.Option)], chosen.Option, wanted is not null),
            sizes.ToImmutable(), [.. planned.Select(p => p.Option)], Rules));
    }

    private Planned PlanOne(Direction direction)
    {
        var stitches = _fabrication.Stitches(direction);
        var targets = _sizes.Select(s => AlongStitches(direction, s)).ToImmutableArray();
        var pins = _sizes.Select(s => FixedFor(direction).Count(s.Name, FixedCounts.PanelStitches)).ToImmutableArray();
        var rows = Rows(direction, _sizes.Length / 2);
        _fabrication.Effort.Begin(EffortPart.Counts);
        var grading = PieceCounts.Choose(
            _fabrication, direction, Working, stitches, StitchEdges(direction), 1, targets, pins, rows);
        var ruler = FitRuler.Of(
            _fabrication, direction, MeasureAlongStitches(direction), grading,
            [.. _sizes.Select((s, i) => (s.Name, targets[i], pins[i] is not null))], EdgesAlongStitches(direction));
        var tooLarge = _sizes.Select((s, i) => PieceSize.Fault(
            s.Name, PlaceNames.Of(Piece), grading.HasChoice ? grading.Chosen[i].Front.Stitches : null, Rows(direction, i))).OfType<Finding>().ToImmutableArray();
        if (!tooLarge.IsEmpty)
            grading = grading with { Chosen = [], Reasons = tooLarge };
        if (!grading.HasChoice)
        {
            return new Planned(
                new DirectionOption(
                    direction, false, string.Join(" ", grading.Reasons.Select(r => r.Text)), [], Length.Zero, Length.Zero, grading.Curve)
                {
                    Ruler = ruler,
                },
                [], double.PositiveInfinity, grading.Reasons);
        }
        var errors = grading.Chosen.SelectMany((c, i) => new[]
        {
            Math.Abs((c.Measure - targets[i]).Centimetres),
            Math.Abs((_fabrication.Rows(direction).Of(Rows(direction, i), RowEdges(direction)) - AlongRows(
                direction, _sizes[i])).Centimetres),
        }).ToArray();
        var counts = grading.Chosen.Select(c => c.Front.Stitches).Distinct().Order().ToImmutableArray();
        var option = new DirectionOption(
            direction, true,
            FormattableString.Invariant($"{string.Join(", ", counts)} stitches, worst error {errors.Max():0.0} cm."),
            counts, Length.FromCentimetres(errors.Max()), Length.FromCentimetres(Math.Sqrt(errors.Average(e => e * e))), grading.Curve)
        {
            Ruler = ruler,
        };
        return new Planned(
            option, grading.Chosen, errors.Max() + CentimetresPerCount * counts.Length + Math.Sqrt(grading.Chosen.Average(c => c.Penalty)), []);
    }

    /// <summary>
    /// What the fabric alone must measure along its stitches: of a cowl worked up the circumference, which no edging
    /// widens.
    /// </summary>
    private Length AlongStitches(Direction direction, Target size) =>
        (direction == Direction.Up ? size.First : size.Second) - EdgesAlongStitches(direction);

    private Length EdgesAlongStitches(Direction direction) => direction == Direction.Up && _isCowl ? Length.Zero : BothEdges;

    private GarmentMeasure MeasureAlongStitches(Direction direction) => (direction, _isCowl) switch
    {
        (Direction.Up, true) => GarmentMeasure.Circumference,
        (Direction.Up, false) => GarmentMeasure.Width,
        (_, true) => GarmentMeasure.Height,
        _ => GarmentMeasure.Length,
    };

    private Length AlongRows(Direction direction, Target size) => direction == Direction.Up
        ? size.Second - BothEdges
        : size.First - (_isCowl ? Length.Zero : BothEdges);

    /// <summary>A seamed cowl hides both ends of its circumference.</summary>
    private int StitchEdges(Direction direction) => IsSewn && direction == Direction.Up ? 2 : 0;

    private int RowEdges(Direction direction) => IsSewn && direction == Direction.Sideways ? 2 : 0;

    private FixedNumbers FixedFor(Direction direction) =>
        Garment.Direction is null || Garment.Direction == direction ? _fixed : _fixed.MeasuresOnly();

    private int Rows(Direction direction, int size) => FixedFor(direction).Count(_sizes[size].Name, FixedCounts.PanelRows)
        ?? _fabrication.Rows(direction).Nearest(AlongRows(direction, _sizes[size]), RowEdges(direction), Working == Working.Turned ? 2 : 1);

    private bool TryAssemble(
        Direction direction, int size, GradedCount count, [NotNullWhen(true)] out SizePlan? plan, [NotNullWhen(false)] out Finding? fault)
    {
        plan = null;
        var (stitches, rowAxis) = (_fabrication.Stitches(direction), _fabrication.Rows(direction));
        var (across, down) = direction == Direction.Up ? (stitches, rowAxis) : (rowAxis, stitches);
        var finding = count.Front;
        var rows = Rows(direction, size);
        var path = _fabrication.Path(Working, finding.RowStitches, rows, finding.TurnCost);
        var start = Garment.StartOf(Piece)
            ?? SeamSearch.FirstStart(_fabrication, path, finding.Reading.Lean?.UnitsPerRow ?? 0);
        var piece = PieceWriter.Write(_fabrication, Piece, 1, Working, finding, finding.Stitches, rows, start, across, down, 0, []);
        var seams = Seams(direction, path, finding.Stitches, rows);
        if (!EdgingPlanner.TryPlan(
            _fabrication, direction, _sizes[size].Name, Edges(direction, finding.Stitches, rows), out var edgings, out fault))
        {
            return false;
        }
        var (first, second) = (
            across.Of(direction == Direction.Up ? finding.RowStitches.Average() : rows, IsSewn ? 2 : 0) + (
                _isCowl ? Length.Zero : BothEdges),
            down.Of(direction == Direction.Up ? rows : finding.RowStitches.Average(), 0) + BothEdges);
        if (YarnTally.Plan(_fabrication, [piece], edgings, seams) is not { } yarn)
        {
            fault = GarmentPlanner.BallFault(_fabrication);
            return false;
        }
        plan = new SizePlan(
            _sizes[size].Name, _sizes[size].Body, Measures(_sizes[size].First, _sizes[size].Second), Measures(first, second), [piece],
            edgings, seams, yarn);
        return true;
    }

    private ImmutableSortedDictionary<GarmentMeasure, Length> Measures(Length first, Length second)
    {
        var measures = ImmutableSortedDictionary.CreateBuilder<GarmentMeasure, Length>();
        measures[_isCowl ? GarmentMeasure.Circumference : GarmentMeasure.Width] = first;
        measures[_isCowl ? GarmentMeasure.Height : GarmentMeasure.Length] = second;
        return measures.ToImmutable();
    }

    /// <summary>A seam, or the join of the rounds: a joined round meets its own beginning, a spiral the next round's.</summary>
    private ImmutableArray<SeamPlan> Seams(Direction direction, FabricPath path, int stitches, int rows)
    {
        if (!_isCowl || _fabrication.Period is not { } period)
            return [];
        var choice = Garment.Seams;
        var unit = ColourRing.Unit / _fabrication.Stitch.StitchesPerUnit;
        var meter = new SeamMeter(period.Micro);
        if (IsSewn && direction == Direction.Up)
        {
            meter.AddSeam(
                SeamEdge.Right(path, 0, rows, choice.HiddenStitches * unit), SeamEdge.Left(path, 0, rows, choice.HiddenStitches * unit),
                choice.Extension);
        }
        else if (IsSewn)
        {
            var units = (int)(stitches * unit / ColourRing.Unit);
            meter.AddSeam(
                SeamEdge.Top(path, rows - 1 - choice.HiddenRows, 0, units), SeamEdge.Bottom(path, choice.HiddenRows, 0, units),
                choice.Extension);
        }
        else if (Working == Working.Spiral)
        {
            meter.AddSeam(SeamEdge.Left(path, 0, rows - 1, 0), SeamEdge.Right(path, 1, rows - 1, 0), SeamExtension.Continued);
        }
        else
        {
            meter.AddSeam(SeamEdge.Left(path, 0, rows, 0), SeamEdge.Right(path, 0, rows, 0), SeamExtension.Continued);
        }
        var length = direction == Direction.Up
            ? _fabrication.Rows(direction).Of(rows, 0)
            : _fabrication.Stitches(direction).Of(stitches, 0);
        var (jump, match) = SeamSearch.Figures(meter);
        return [new SeamPlan(IsSewn ? SeamId.BackSeam : SeamId.RoundJoin, [Piece], Piece, jump, match, length)];
    }

    private IEnumerable<EdgeOfGarment> Edges(Direction direction, int stitches, int rows)
    {
        var up = direction == Direction.Up;
        if (_isCowl)
        {
            var visible = up ? stitches - StitchEdges(direction) * Garment.Seams.HiddenStitches : rows - RowEdges(
                direction) * Garment.Seams.HiddenRows;
            yield return new EdgeOfGarment(EdgingPlace.Brims, 2, [new EdgeStretch("brim", !up, visible)]);
            yield break;
        }
        yield return new EdgeOfGarment(
            EdgingPlace.Border, 1,
            [
                new EdgeStretch("first row", false, stitches), new EdgeStretch("left edge", true, rows),
                new EdgeStretch("last row", false, stitches),
                new EdgeStretch("right edge", true, rows),
            ],
            Corners: 4, PerCorner: 2);
    }

    /// <param name="First">Circumference, or a wrap's width.</param>
    /// <param name="Second">Height, or a wrap's length.</param>
    private sealed record Target(string Name, ImmutableSortedDictionary<string, Length> Body, Length First, Length Second);

    private sealed record Planned(
        DirectionOption Option, ImmutableArray<GradedCount> Counts, double Score, ImmutableArray<Finding> Reasons);
}
