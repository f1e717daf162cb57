using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Checking;

/// <summary>Picks up as a maker does, and holds it against the edges of the pieces.</summary>
internal static class EdgingCheck
{
    public static void Edging(Plan plan, SizePlan size, EdgingPlan edging, PlainFabric fabric, Disagreements notes)
    {
        if (!EdgingLibrary.TryFind(edging.Edging, out var made))
        {
            notes.Say("edging", $"There is no edging {edging.Edging}.");
            return;
        }
        var (stitches, places) = Follow(edging.Spread);
        notes.Same("pickUp", edging.PickUp, stitches);
        // Rounds between the first and the last widen by 2 at an outer corner and narrow by 2 at an inner one.
        var widened = made.Multiple == 1 ? 0 : 2 * (edging.Corners.Outer - edging.Corners.Inner) * Math.Max(0, edging.Rounds - 2);
        notes.Same("pickUp, over whole repeats", (edging.PickUp + widened - (made.InRows ? made.Plus : 0)) % made.Multiple, 0);
        var edge = plan.Construction.Edgings.First(e => e.Place == edging.Where);
        notes.Same("rule, places on the edge", places, Places(plan, size, edge, edge.Edges, fabric));
        if (!edge.Other.IsEmpty)
            notes.Same("rule of the other, places on the edge", edging.Other is { } other ? Follow(other).Places : 0, Places(plan, size, edge, edge.Other, fabric));
        Rounds(plan, edging, made, notes);
        Corners(size, edging, made, edge, (plan, notes));
        LiesFlat(plan, size, edging, fabric, notes);
        notes.Same("depth", edging.Depth, PlainFabric.EdgingDepth(plan, size, edging.Where, fabric.EdgingHeight), Length.FromMillimetres(0.1));
    }

    /// <summary>
    /// Round by round: picking up is the first, a last one of other stitches goes over what it finds, and every other one is 2 stitches
    /// longer for each outer corner and 2 shorter for each inner one. What is cut to a point turns back there.
    /// </summary>
    private static void Corners(SizePlan size, EdgingPlan edging, Edging made, EdgingEdge edge, (Plan Plan, Disagreements Notes) check)
    {
        var turning = edging.Corners.Outer - edging.Corners.Inner;
        var stitches = edging.PickUp;
        for (var round = 2; round <= edging.Rounds - (made.LastKeepsCount ? 1 : 0); round++)
            stitches += 2 * turning;
        check.Notes.Same("stitches of the last round", edging.LastCount, stitches);
        var pointed = edge.Edges.Select(e => e.Edge).Any(e => e.Opening is { } id && size[e.Piece] is { Shape: not null } piece
            && check.Plan.Construction.GroupOf(e.Piece).Opening(id, e.Piece).Cut is { Profile: [{ Into: 0 }, { Into: 1 }, { Into: 0 }] }
            && piece.Opening(id).Into > 0);
        var turns = !made.Across && !made.Folded && (made.LastKeepsCount ? edging.Rounds > 2 : made.Multiple == 1 && edging.Rounds > 1);
        if (pointed && turns && turning >= 0)
            check.Notes.Say("corners", "No round is narrower at the point of the edge.");
    }

    /// <summary>As many as the document gives, or between the fewest and the most that it allows.</summary>
    private static void Rounds(Plan plan, EdgingPlan edging, Edging made, Disagreements notes)
    {
        var choice = plan.Project.Garment.Edgings.First(e => e.Where == edging.Where);
        if (choice.Rounds is { } given)
        {
            notes.Same("rounds", edging.Rounds, given);
            return;
        }
        var fewest = choice.Fewest ?? Math.Min(made.Rounds / 2, choice.Most ?? made.Rounds);
        var most = choice.Most ?? Math.Max(Math.Min(2 * made.Rounds + 2, made.Most ?? int.MaxValue), choice.Fewest ?? 0);
        if (edging.Rounds < fewest || edging.Rounds > most)
            notes.Say("rounds", $"{edging.Rounds} rounds, where {fewest} to {most} are allowed.");
    }

    /// <summary>
    /// Every stretch takes about as many stitches as lie flat along it: a rule of whole stitches in up to four places is at most a sixth
    /// off, and its last places at most one stitch.
    /// </summary>
    private static void LiesFlat(Plan plan, SizePlan size, EdgingPlan edging, PlainFabric fabric, Disagreements notes)
    {
        var (edge, made) = (Length.Zero, EdgingLibrary.Find(edging.Edging));
        var slopes = plan.Construction.Edgings.First(e => e.Place == edging.Where).Edges.Where(e => size[e.Edge.Piece].Taper is not null)
            .ToDictionary(e => e.Id, e => fabric.Slope(size[e.Edge.Piece]));
        foreach (var rule in edging.Spread.Stretches)
        {
            var each = rule.Stretch.Id is StretchId.OfEdge { Part: EdgePart.Whole } whole && slopes.TryGetValue(whole.Edge, out var slope)
                ? slope / rule.Stretch.Places
                : rule.Stretch.Stepped ? Smoothed(rule.Stretch, fabric, notes)
                : rule.Stretch.Own is not null ? fabric.EdgingHeight : rule.Stretch.RowEnds ? fabric.RowHeight : fabric.StitchWidth;
            edge += rule.Stretch.Places * each;
            var flat = rule.Stretch.Places * made.Draw * (rule.Stretch.RowEnds ? each / fabric.EdgingWidth : fabric.AlongStitches);
            var picked = Follow(new PickUp(0, [rule], 0, 0)).Stitches;
            if (Math.Abs(picked - flat) > 0.17 * flat + 1 && flat > 0.25 * rule.Stretch.Places)
                notes.Say("rule", FormattableString.Invariant($"{picked} stitches along the {EdgeWords.Of(rule.Stretch.Id)}, where {flat:0.#} lie flat."));
        }
        notes.Same("edge", edging.Edge, edge, Length.FromMillimetres(0.1));
    }

    /// <summary>
    /// A straight line along steps is no longer than they are, nor shorter than the shorter kind of place drawn straight across a stair
    /// of equal steps.
    /// </summary>
    private static Length Smoothed(EdgeStretch stretch, PlainFabric fabric, Disagreements notes)
    {
        var each = stretch.Own!.Value.Each;
        var (less, more) = (Length.Min(fabric.StitchWidth, fabric.RowHeight), Length.Max(fabric.StitchWidth, fabric.RowHeight));
        if (each > more || each < 0.7 * less)
            notes.Say("rule", $"A place of the {EdgeWords.Of(stretch.Id)} is taken for {each} long, where stitches and rows are {less} to {more}.");
        return each;
    }

    /// <summary>Stitches picked up, and places passed, by one who goes along the edge group by group.</summary>
    private static (int Stitches, int Places) Follow(PickUp spread)
    {
        var (stitches, places) = (spread.Extra, 0);
        foreach (var rule in spread.Stretches)
        {
            var left = rule.Stretch.Places;
            for (; left >= rule.Places; left -= rule.Places)
                (stitches, places) = (stitches + rule.Stitches, places + rule.Places);
            if (left > 0)
                (stitches, places) = (stitches + rule.RestStitches, places + rule.RestPlaces);
        }
        return (stitches, places);
    }

    /// <summary>Every stretch of the edge counted from its piece, less what seams at its ends hide.</summary>
    private static int Places(Plan plan, SizePlan size, EdgingEdge edging, ImmutableArray<EdgedEdge> edges, PlainFabric fabric)
    {
        var construction = plan.Construction;
        var over = edging.Over;
        var places = size.Edgings.Where(e => e.Where == over.Before || e.Where == over.After).Sum(e => e.Rounds);
        foreach (var (_, edge) in edges)
        {
            var piece = size[edge.Piece];
            var alongStitches = !edge.Side.IsUpright() == (piece.Taper is not null || plan.Direction == Direction.Up);
            var hidden = alongStitches ? fabric.Seams.HiddenStitches : fabric.Seams.HiddenRows;
            var all = alongStitches ? piece.Stitches : piece.Rows;
            if (piece.Shape is not null)
            {
                places += Cut(plan, piece, edge, fabric);
                continue;
            }
            var opening = edge.Opening is { } id ? piece.Opening(id) : null;
            var (before, last) = (opening, edge.Stretch) switch
            {
                (null, _) => (0, all),
                (_, Stretch.BeforeOpening) => (0, opening.First - 1),
                (_, Stretch.AfterOpening) => (opening.Last, all),
                _ => (opening.First - 1, opening.Last),
            };
            places += last - before
                - (before == 0 && construction.IsSewnAt(edge.Piece, edge.Side, atEnd: false) ? hidden : 0)
                - (last == all && construction.IsSewnAt(edge.Piece, edge.Side, atEnd: true) ? hidden : 0);
            if (opening is null && piece.SideBandRows > 0 && !edge.Side.IsUpright())
                places += 2 * (piece.SideBandRows - fabric.Seams.HiddenRows);
        }
        return places;
    }

    /// <summary>Along an edge of a shaped piece, what seams that meet its ends hide taken off.</summary>
    private static int Cut(Plan plan, PiecePlan piece, PieceEdge edge, PlainFabric fabric)
    {
        var (construction, up) = (plan.Construction, plan.Direction == Direction.Up);
        var shape = new PlainShape(piece, construction, up);
        if (construction.GroupOf(piece.Id).IsSloped)
            return shape.Along(edge.Side);
        var opening = construction.GroupOf(piece.Id).OpeningsOf(piece.Id).FirstOrDefault(o => o.Id == edge.Opening);
        if (opening is null || shape.Cut(opening, edge.Side) is null)
            return shape.Visible(edge, fabric.Seams).Length;
        var (along, atBeginning, atEnd) = shape.Places(opening, edge.Side);
        var across = edge.Side.IsUpright() ? PieceSide.Top : PieceSide.Left;
        return along + atBeginning + atEnd
            - HiddenAt(opening.At == OpeningAt.Beginning, edge.Side.AtBeginning())
            - HiddenAt(opening.At == OpeningAt.End, edge.Side.AtEnd());

        int HiddenAt(bool endsWithSide, PieceSide corner) => endsWithSide
            ? construction.IsSewn(piece.Id, corner) ? HiddenAlong(edge.Side) : 0
            : construction.IsSewn(piece.Id, edge.Side) ? HiddenAlong(across) : 0;

        int HiddenAlong(PieceSide side) => !side.IsUpright() == up ? fabric.Seams.HiddenStitches : fabric.Seams.HiddenRows;
    }
}
