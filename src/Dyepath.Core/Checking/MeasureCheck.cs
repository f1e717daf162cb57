using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Checking;

/// <summary>Body measures against the chart, targets against the garment's rules, finished measures against the pieces.</summary>
internal sealed class MeasureCheck
{
    private static readonly Length Tolerance = Length.FromMillimetres(0.1);

    private readonly Plan _plan;
    private readonly Construction _construction;
    private readonly SizePlan _size;
    private readonly PlainFabric _fabric;
    private readonly Disagreements _notes;

    private MeasureCheck(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes) =>
        (_plan, _construction, _size, _fabric, _notes) = (plan, plan.Construction, size, fabric, notes);

    private bool Up => _plan.Direction == Direction.Up;

    public static void Measures(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var check = new MeasureCheck(plan, size, fabric, notes);
        check.Body();
        // Numbers that the designer fixed move the targets; the rules are then hers.
        if (plan.Project.Sizes is { Locked.IsEmpty: true, Overrides.IsEmpty: true })
            check.Targets();
        foreach (var group in check._construction.Groups)
        {
            check.Finished(
                group, group.Across, [PieceSide.Left, PieceSide.Right], piece => check.Along(group, piece, piece.Width, Direction.Up));
            check.Finished(
                group, group.Down, [PieceSide.Bottom, PieceSide.Top], piece => check.Along(group, piece, piece.Height, Direction.Sideways));
            if (group.Gores is { } gores)
            {
                var shape = new PlainShape(size[group.Pieces[0].Id], check._construction, check.Up);
                var length = fabric.RowHeight * shape.Reaching(PieceSide.Top);
                notes.Same($"finished.{GarmentMeasures.Key(gores.Edge)}", size.Finished[gores.Edge], length - check.Hidden(group, [PieceSide.Left, PieceSide.Right]), Tolerance);
            }
            foreach (var opening in group.Openings)
                check.Opening(group, opening);
            if (group.Fills is { } fills)
                check.Corners(group, fills);
        }
    }

    private void Body()
    {
        var selection = _plan.Project.Sizes;
        if (!_plan.Project.Garment.Shape.IsToBody || !selection.Own.IsEmpty || selection.Chart is null
            || !SizeCharts.TryFind(selection.Chart, out var chart) || !chart.TryFind(_size.Name, out var row))
            return;
        foreach (var measurement in row.Measurements)
        {
            var middle = (measurement.InCentimetres.Minimum + measurement.InCentimetres.Maximum) / 2;
            _notes.Same($"body.{measurement.Measure}", _size.Body.GetValueOrDefault(BodyMeasures.Key(measurement.Measure)), middle, Tolerance);
        }
    }

    /// <summary>Of what is planned first; pieces that are made to fit it have targets that follow from how it came out.</summary>
    private void Targets()
    {
        var names = _plan.Sizes.Select(s => s.Name).ToList();
        var baseAt = _plan.Project.Sizes.Base is { } named ? names.IndexOf(named) : names.Count / 2;
        var (shape, group) = (_plan.Project.Garment.Shape, _construction.Groups[0]);
        var context = new TargetContext(
            new BodyOfSize(_size.Name, _size.Body), names.IndexOf(_size.Name) - baseAt, Wearer(), _size.Finished);
        foreach (var measure in group.OpeningMeasures.Concat([group.Across.Measure, group.Down.Measure]))
        {
            var own = shape.IsToBody ? null : _size.Body.TryGetValue(GarmentMeasures.Key(measure), out var given) ? given : (Length?)null;
            _notes.Same($"target.{GarmentMeasures.Key(measure)}", _size.Target[measure], own ?? shape.Target(measure, context), Tolerance);
        }
    }

    private Wearers Wearer() =>
        _plan.Project.Sizes is { Own.IsEmpty: true, Chart: { } id } && SizeCharts.TryFind(id, out var chart) ? chart.Wearer : Wearers.Adult;

    /// <summary>
    /// On a bias the rows' own width counts, the mean of the two kinds, and not what the piece lies over from first row to last.
    /// </summary>
    private Length Along(PieceGroup group, PiecePlan piece, Length whole, Direction alongStitches)
    {
        if (group.Bias == 0 || _plan.Direction != alongStitches)
            return whole;
        var outline = piece.Shape!.Parts[0].Outline;
        return _fabric.StitchWidth * ((outline.At(0).Units + outline.At(1).Units) / 2.0);
    }

    private void Finished(PieceGroup group, PieceDimension dimension, PieceSide[] ends, Func<PiecePlan, Length> length)
    {
        var pieces = group.Pieces.Select(p => _size[p.Id]).ToArray();
        var measure = Length.Zero;
        for (var i = 0; i < dimension.Pieces; i++)
            measure += length(pieces[i % pieces.Length]) - Hidden(group, ends);
        if (pieces[0].SideBandRows > 0 && dimension.Pieces == 2)
            measure += 2 * dimension.Pieces * (pieces[0].SideBandRows - _fabric.Seams.HiddenRows) * _fabric.EdgingRow;
        foreach (var place in dimension.Edgings)
            measure += PlainFabric.EdgingDepth(_plan, _size, place, _fabric.EdgingHeight);
        if (dimension.Beside is { } part)
            measure += _size.Finished[part];
        _notes.Same($"finished.{GarmentMeasures.Key(dimension.Measure)}", _size.Finished[dimension.Measure], measure, Tolerance);
    }

    /// <summary>What seams take from the ends of a dimension: of a sewn edge along row ends stitches, of one along stitches rows.</summary>
    private Length Hidden(PieceGroup group, PieceSide[] ends)
    {
        var hidden = Length.Zero;
        foreach (var side in ends.Where(side => IsSewn(group.Pieces[0].Id, side)))
        {
            if (group.Fills is not null)
            {
                hidden += side.IsUpright()
                    ? _fabric.TriangleStitch * _fabric.Seams.HiddenStitches
                    : _fabric.EdgingRow * _fabric.Seams.HiddenRows;
            }
            else
            {
                hidden += side.IsUpright() == Up
                    ? _fabric.StitchWidth * _fabric.Seams.HiddenStitches
                    : _fabric.RowHeight * _fabric.Seams.HiddenRows;
            }
        }
        return hidden;
    }

    private bool IsSewn(PieceId piece, PieceSide side)
    {
        foreach (var join in _construction.Joins)
        {
            foreach (var edge in join.First.AddRange(join.Second))
            {
                if (join.Sewn && edge.Piece == piece && edge.Side == side)
                    return true;
            }
        }
        return false;
    }

    /// <summary>
    /// A triangle is as wide as half of the cut that it is sewn into and as tall as the cut is deep, to half a stitch and half a row: what
    /// the seams take of the piece makes the cut wider and deeper, and what is above the shoulder seam is no part of it.
    /// </summary>
    private void Corners(PieceGroup group, CornerFill fills)
    {
        var (piece, into) = (_size[fills.Into], _construction.GroupOf(fills.Into));
        var opening = into.Opening(fills.Opening, fills.Into);
        if (piece.Shape is null || new PlainShape(piece, _construction, Up).Cut(opening, opening.Sides[0]) is not { } cut)
        {
            _notes.Say("inserts", $"Nothing of the {piece.Name} is cut for them.");
            return;
        }
        var (one, other) = Up ? (_fabric.StitchWidth, _fabric.RowHeight) : (_fabric.RowHeight, _fabric.StitchWidth);
        var (across, down) = (one * (cut.To - cut.From), other * cut.Into);
        var upright = Up ? _fabric.StitchWidth * _fabric.Seams.HiddenStitches : _fabric.RowHeight * _fabric.Seams.HiddenRows;
        _notes.Same("inserts, width", _size.Finished[group.Across.Measure], across / 2 + upright, _fabric.TriangleStitch / 2 + Tolerance);
        _notes.Same("inserts, height", _size.Finished[group.Down.Measure], down, _fabric.EdgingRow / 2 + Tolerance);
    }

    /// <summary>An opening of shaped pieces, its length and its depths measured on the pieces as they are laid out.</summary>
    private void Cut(PieceGroup group, OpeningDesign design)
    {
        var side = design.Sides[0];
        var upright = side.IsUpright();
        var (along, into) = upright != Up ? (_fabric.StitchWidth, _fabric.RowHeight) : (_fabric.RowHeight, _fabric.StitchWidth);
        var edging = design.Place is { } place ? PlainFabric.EdgingDepth(_plan, _size, place, _fabric.EdgingRow) : Length.Zero;
        var longest = 0;
        var deep = new Dictionary<GarmentMeasure, List<Length>>();
        foreach (var piece in group.Pieces.Select(p => _size[p.Id]))
        {
            var shape = new PlainShape(piece, _construction, Up);
            var own = group.Opening(design.Id, piece.Id);
            var cuts = own.Sides.Select(s => shape.Cut(own, s)).ToArray();
            var (said, at) = (piece.Opening(design.Id), $"pieces.{piece.Name}.{PlaceNames.Of(design.Id)}");
            longest = Math.Max(longest, cuts.Max(c => c is { } cut ? cut.To - cut.From : 0));
            _notes.Same($"{at}, how deep", said.Into, cuts[0]?.Into ?? 0);
            if (cuts[0] is { } cut)
            {
                _notes.Same($"{at}, where it begins", said.First, cut.From + 1);
                _notes.Same($"{at}, where it ends", said.Last, cut.To);
            }
            if (design.BesideAs is { } other)
                Shoulder(piece, own, other, along, at);
            if (design.Cut is null || !design.Cut.Depths.TryGetValue(piece.Id, out var measure))
                continue;
            if (!deep.TryGetValue(measure, out var depths))
                deep[measure] = depths = [];
            var seen = into * cuts.Where(c => c is not null).Select(c => c!.Value.Into).DefaultIfEmpty(0).Average() - Hidden(group, [side]);
            var band = edging;
            if (_construction.IsFilled(design.Id, piece.Id) && cuts[0] is { } square)
            {
                // Two slopes meet in a point; a band along them is as deep as it is, and at the point as the steeper the deeper.
                var half = along * (square.To - square.From) / 2;
                band = edging / Math.Cos(Math.Atan2(seen.Centimetres, half.Centimetres));
            }
            depths.Add(Length.Max(Length.Zero, seen - band));
        }
        foreach (var (measure, depths) in deep)
        {
            var depth = Length.FromCentimetres(depths.Average(d => d.Centimetres));
            _notes.Same($"finished.{GarmentMeasures.Key(measure)}", _size.Finished[measure], depth, Tolerance);
        }
        if (longest == 0)
            longest = _size[group.Pieces[0].Id].Opening(design.Id).Length;
        var unseen = design.At == OpeningAt.End ? Hidden(group, [upright ? PieceSide.Top : PieceSide.Right]) + edging : 2 * edging;
        var length = along * longest - unseen;
        _notes.Same($"finished.{GarmentMeasures.Key(design.Measure)}", _size.Finished[design.Measure], length, Tolerance);
    }

    /// <summary>What a cut leaves of a front is sewn to the back's shoulder, and is as wide to a centimetre.</summary>
    private void Shoulder(PiecePlan piece, OpeningDesign opening, PieceId other, Length each, string at)
    {
        var (cut, all) = (piece.Opening(opening.Id), new PlainShape(piece, _construction, Up).Reaching(opening.Sides[0]));
        var beside = cut.Into > 0 ? all : all - cut.Length;
        var wanted = _size[other].Opening(opening.Id).First - 1;
        if (each * Math.Abs(beside - wanted) > Length.FromCentimetres(1) + each)
            _notes.Say(at, $"{beside} are left for the shoulder, where the {PlaceNames.Of(other)} has {wanted}.");
    }

    /// <summary>At the right end of its side, and beside one that it is sewn to as wide as that.</summary>
    private void ToOneEnd(PieceGroup group, OpeningDesign design, PiecePlan piece, int all)
    {
        var (opening, at) = (piece.Opening(design.Id), $"pieces.{piece.Name}.marks, the {PlaceNames.Of(design.Id)}");
        var mirrored = piece.Id != group.Pieces[0].Id && group.Pieces.First(p => p.Id == piece.Id).Mirrored && !design.Sides[0].IsUpright();
        _notes.Same($"{at}'s end", mirrored || design.At == OpeningAt.Beginning ? opening.First - 1 : all - opening.Last, 0);
        if (design.BesideAs is { } other)
            _notes.Same($"{at}, what is left beside it", all - opening.Length, _size[other].Opening(design.Id).First - 1);
    }

    private void Opening(PieceGroup group, OpeningDesign design)
    {
        if (group.IsShaped)
        {
            Cut(group, design);
            return;
        }
        var side = design.Sides[0];
        var vertical = side.IsUpright();
        var alongStitches = vertical != Up;
        foreach (var piece in group.Pieces.Select(p => _size[p.Id]))
        {
            var opening = piece.Opening(design.Id);
            var (all, at) = (alongStitches ? piece.Stitches : piece.Rows, $"pieces.{piece.Name}.marks");
            if (design.At != OpeningAt.Middle)
                ToOneEnd(group, design, piece, all);
            // Pieces of a group may differ by a stitch more or less than its opening can be centred on.
            else if (Math.Abs(opening.First - 1 - (all - opening.Last)) > (all - opening.Length) % 2)
                _notes.Say(at, $"The {PlaceNames.Of(design.Id)} is not in the middle: {opening.First - 1} before it, {all - opening.Last} after it.");
            if (!alongStitches && design is { At: OpeningAt.End, BesideAs: null } && opening.Length % 2 != 0)
                _notes.Say(at, $"The {PlaceNames.Of(design.Id)} has {opening.Length} rows; it should have an even number.");
        }
        var measure = (alongStitches ? _fabric.StitchWidth : _fabric.RowHeight) * _size[group.Pieces[0].Id].Opening(design.Id).Length;
        if (design.At == OpeningAt.End)
            measure -= Hidden(group, [vertical ? PieceSide.Top : PieceSide.Right]);
        if (design.Place is { } place)
            measure -= (design.At == OpeningAt.Middle ? 2 : 1) * PlainFabric.EdgingDepth(_plan, _size, place, _fabric.EdgingHeight);
        _notes.Same($"finished.{GarmentMeasures.Key(design.Measure)}", _size.Finished[design.Measure], measure, Tolerance);
    }
}
