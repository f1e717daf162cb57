using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Instructions;

/// <summary>Which of a pair of bands has the buttonholes, how many, in which row and where.</summary>
/// <param name="at">Index of the edging in every size.</param>
internal sealed class ButtonWords(PatternContext context, int at)
{
    private readonly EdgingEdge _edge = context.EdgesAt(context.Plan.Sizes[0].Edgings[at].Where);

    private readonly Dictionary<SizePlan, ButtonLayout> _layouts = new(ReferenceEqualityComparer.Instance);

    /// <summary>Buttonholes of each size; null where the edging does not close anything, or is too short for any.</summary>
    public PerSize<int>? Holes =>
        _edge.Closes is not null && context.Each(s => Layout(s).Holes) is var holes && holes.Values.Any(n => n > 0) ? holes : null;

    /// <summary>The row with the buttonholes in each size, from 1.</summary>
    public PerSize<int> Row => context.Each(s => ButtonBand.HoleRow(s.Edgings[at].Rounds));

    /// <summary>Across a button, in millimetres.</summary>
    public PerSize<int> Diameter => context.Each(s => ButtonBand.Diameter(Stitch(s)));

    public IEnumerable<Instruction> Said()
    {
        if (_edge.Closes is not var (holes, buttons) || Holes is not { } counted)
            yield break;
        var (first, last, begins) = IsPair ? ("lowest", "topmost", "lower") : ("outermost", "innermost", "armhole");
        var taken = IsPair
            ? $"The band of the {PlaceNames.Of(buttons)} takes the buttons."
            : $"The band lies on the {PlaceNames.Of(buttons)}, which takes the buttons{InnerEnd}.";
        var (before, after) = (context.Each(s => Layout(s).Before * Stitch(s)), context.Each(s => Layout(s).After * Stitch(s)));
        var where = counted.Values.All(n => n < 2)
            ? Phrase.Of($". It begins {before} from the {begins} end")
            : Phrase.Of($", about {context.Each(s => Layout(s).Spacing(Stitch(s)))} from middle to middle. The {first} begins {before} from the {begins} end, the {last} ends {after} from the neck end");
        yield return new Instruction(Phrase.Plain("Buttonholes"), Phrase.Of($"{counted} in the band of the {PlaceNames.Of(holes)}, in row {Row}{where}{Folds()}. {taken}"));
    }

    /// <summary>The row with the buttonholes; null where there is none.</summary>
    public Instruction? HoleRow()
    {
        if (Holes is null)
            return null;
        var others = IsPair ? " On the band for the buttons work this row as the others." : "";
        var repeats = context.Each(s => Math.Max(0, Layout(s).Holes - 1));
        var times = repeats.IsSame && repeats.Values[0] == 1 ? Phrase.Plain("once") : Phrase.Of($"{repeats} times in all");
        var further = repeats.Values.All(n => n == 0)
            ? Phrase.Empty
            : Phrase.Of($"* ch {ButtonBand.Hole}, {Skip} {ButtonBand.Hole} sts, {Sc} in each of the next {context.Each(s => Layout(s).Between)} sts; work from * {times}; ");
        return new Instruction(Phrase.Of($"Row {Row}"), Phrase.Of(
            $"Ch 1, {Sc} in each of the first {context.Each(s => Ends(s).First)} sts, {further}ch {ButtonBand.Hole}, {Skip} {ButtonBand.Hole} sts, {Sc} in each of the last {context.Each(s => Ends(s).Last)} sts, turn.{others}"));
    }

    private string InnerEnd =>
        context.Plan.Sizes[0].Edgings.Any(e => e.Where == EdgingPlace.Neck) ? "; sew its inner end to the end of the neck edging" : "";

    /// <summary>Two bands, one upon the other; else one, on the bare edge of the other piece.</summary>
    private bool IsPair => _edge.Copies > 1;

    private Length Stitch(SizePlan size) => size.Edgings[at].Edge / size.Edgings[at].PickUp;

    private ButtonLayout Layout(SizePlan size)
    {
        if (!_layouts.TryGetValue(size, out var layout))
            _layouts[size] = layout = ButtonLayout.Of(size.Edgings[at].PickUp, Stitch(size), Folded(size));
        return layout;
    }

    /// <summary>
    /// Seen from outside and worked from right to left, the right front's band begins at its lower end and the left front's at the neck,
    /// a shoulder's at the armhole; every other row goes back.
    /// </summary>
    private (int First, int Last) Ends(SizePlan size)
    {
        var layout = Layout(size);
        var up = (!IsPair || _edge.Closes!.Value.Holes == PieceId.RightFront) == (ButtonBand.HoleRow(size.Edgings[at].Rounds) % 2 == 1);
        return up ? (layout.Before, layout.After) : (layout.After, layout.Before);
    }

    /// <summary>
    /// A corner that is left over at the top folds back slantwise: as far down the edge as it is wide, the band included.
    /// </summary>
    private Length Folded(SizePlan size) => Corner() is { } corner ? size.Finished[corner.Measure] + size.Edgings[at].Depth : Length.Zero;

    private string Folds() => Corner() is null ? "" : ", below the corner that folds back";

    private OpeningDesign? Corner()
    {
        var piece = _edge.Closes!.Value.Holes;
        return context.Construction.GroupOf(piece).Openings.FirstOrDefault(
            o => o is { At: OpeningAt.End, Cut: null } && o.Sides.Contains(PieceSide.Top)
                && context.Plan.Sizes.All(s => s.Finished.ContainsKey(o.Measure)));
    }
}
