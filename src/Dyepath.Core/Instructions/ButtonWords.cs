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
        var (on, under, few) = (PlaceNames.Of(holes), PlaceNames.Of(buttons), counted.Values.All(n => n < 2));
        var (before, after) = (context.Each(s => Layout(s).Before * Stitch(s)), context.Each(s => Layout(s).After * Stitch(s)));
        var begins = (few, IsPair) switch
        {
            (true, true) => Phrase.Of($"It begins {before} from the lower end"),
            (true, _) => Phrase.Of($"It begins {before} from the armhole end"),
            (_, true) => Phrase.Of($"The lowest begins {before} from the lower end, the topmost ends {after} from the neck end"),
            _ => Phrase.Of($"The outermost begins {before} from the armhole end, the innermost ends {after} from the neck end"),
        };
        yield return new Instruction(Phrase.Plain("Buttonholes"), Phrase.Join(" ",
        [
            few
                ? Phrase.Of($"{counted} in the band of the {on}, in row {Row}.")
                : Phrase.Of($"{counted} in the band of the {on}, in row {Row}, about {context.Each(s => Layout(s).Spacing(Stitch(s)))} from middle to middle."),
            Corner() is null ? Phrase.Of($"{begins}.") : Phrase.Of($"{begins}, below the corner that folds back."),
            IsPair ? Phrase.Of($"The band of the {under} takes the buttons.")
                : context.Plan.Sizes[0].Edgings.Any(e => e.Where == EdgingPlace.Neck)
                ? Phrase.Of($"The band lies on the {under}, which takes the buttons; sew its inner end to the end of the neck edging.")
                : Phrase.Of($"The band lies on the {under}, which takes the buttons."),
        ]));
    }

    /// <summary>The row with the buttonholes; null where there is none.</summary>
    public Instruction? HoleRow()
    {
        if (Holes is null)
            return null;
        var repeats = context.Each(s => Math.Max(0, Layout(s).Holes - 1));
        var times = repeats.IsSame && repeats.Values[0] == 1 ? Phrase.Plain("once") : Phrase.Of($"{repeats} times in all");
        var (first, last) = (context.Each(s => Ends(s).First), context.Each(s => Ends(s).Last));
        var hole = Phrase.Of($"ch {ButtonBand.Hole}, {Skip} {ButtonBand.Hole} sts");
        var work = repeats.Values.All(n => n == 0)
            ? Phrase.Of($"Ch 1, {Sc} in each of the first {first} sts, {hole}, {Sc} in each of the last {last} sts, turn.")
            : Phrase.Of($"Ch 1, {Sc} in each of the first {first} sts, * {hole}, {Sc} in each of the next {context.Each(s => Layout(s).Between)} sts; work from * {times}; {hole}, {Sc} in each of the last {last} sts, turn.");
        var others = IsPair ? Phrase.Plain(" On the band for the buttons work this row as the others.") : Phrase.Empty;
        return new Instruction(Phrase.Of($"Row {Row}"), work + others);
    }

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

    private OpeningDesign? Corner()
    {
        var piece = _edge.Closes!.Value.Holes;
        return context.Construction.GroupOf(piece).Openings.FirstOrDefault(
            o => o is { At: OpeningAt.End, Cut: null } && o.Sides.Contains(PieceSide.Top)
                && context.Plan.Sizes.All(s => s.Finished.ContainsKey(o.Measure)));
    }
}
