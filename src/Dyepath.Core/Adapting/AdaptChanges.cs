using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>Everything in which a reader's size differs from the pattern's, in the words and to the figures of the pattern.</summary>
internal sealed class AdaptChanges
{
    private const string None = "none";

    private readonly ImmutableArray<AdaptChange>.Builder _changes = ImmutableArray.CreateBuilder<AdaptChange>();
    private readonly Units _units;

    private AdaptChanges(Units units) => _units = units;

    /// <param name="pattern">Of the whole pattern.</param>
    /// <param name="size">The reader's, as it is published.</param>
    /// <param name="own">Of her size alone.</param>
    public static ImmutableArray<AdaptChange> Of(Plan pattern, SizePlan size, Plan own)
    {
        var changes = new AdaptChanges(pattern.Project.Edition.Units);
        changes.Yarn(pattern, own);
        changes.Fabric(pattern, own);
        changes.Add("worked", DirectionWords.Of(pattern.Direction), DirectionWords.Of(own.Direction));
        changes.Add("motif", MotifWords.Of(pattern.Project.Garment.Motif), MotifWords.Of(own.Project.Garment.Motif));
        changes.Pieces(pattern, size, own);
        changes.Edgings(size, own.Sizes[0]);
        changes.Each(
            size.Seams, own.Sizes[0].Seams, s => s.Id, s => s.Where, "colours meet",
            s => s.Extension is null ? "no colours there" : s.Quality.Words());
        changes.Each(
            size.Finished, own.Sizes[0].Finished, f => f.Key, f => $"finished {GarmentMeasures.Words(f.Key)}", "", f => changes.Say(f.Value));
        changes.Supplies(pattern, size, own);
        foreach (var sentence in OwnColours.LeftOut(pattern.Project, own.Project))
            changes.Add("designer's words", sentence, "left out, since it names a colour that your yarn has not");
        return changes._changes.ToImmutable();
    }

    private void Yarn(Plan pattern, Plan own)
    {
        Add("yarn", pattern.Project.Yarn.Name, own.Project.Yarn.Name);
        Add("colours, each with its stitches", Colours(pattern), Colours(own));
        Both("stitches until the colours come round", plan => Units(plan, plan.Sequence.Ring.SequenceUnits));
        Both("the same, unhelped by the hands", plan => Units(plan, plan.Sequence.Measured.Natural.Total.Value));

        void Both(string what, Func<Plan, string> say) => Add(what, say(pattern), say(own));

        static string Colours(Plan plan) => string.Join(", ", plan.Sequence.Colours.Select((c, i) => $"{c.Name} {Number(plan.Sequence.UnitsIn(i))}"));
    }

    private void Fabric(Plan pattern, Plan own)
    {
        Add("hook", Hook(pattern), Hook(own));
        Add("gauge", Gauge(pattern), Gauge(own));
        Add("yarn in a stitch", Say(pattern.Sequence.Measured.YarnPerStitch.PerUnit), Say(own.Sequence.Measured.YarnPerStitch.PerUnit));

        static string Hook(Plan plan) => string.Create(CultureInfo.InvariantCulture, $"{plan.Project.Fabric.Swatch.HookMillimetres:0.###} mm");
        static string Gauge(Plan plan) => string.Create(
            CultureInfo.InvariantCulture, $"{10 / plan.StitchWidth.Centimetres:0.##} stitches and {10 / plan.RowHeight.Centimetres:0.##} rows over 10 cm");
    }

    private void Pieces(Plan pattern, SizePlan size, Plan own)
    {
        var hers = own.Sizes[0].Pieces;
        Each(size.Pieces, hers, p => p.Id, p => p.Name, "stitches", Stitches);
        Each(size.Pieces, hers, p => p.Id, p => p.Name, "rows", p => Counted(p.Rows, "row"));
        foreach (var piece in size.Pieces.Where(p => p.Pooled))
        {
            if (own.Sizes[0].Find(piece.Id) is { Pooled: true } hersToo)
            {
                Add($"{piece.Name}, begins with", First(pattern, piece), First(own, hersToo));
                Add($"{piece.Name}, which side shows", Side(piece), Side(hersToo));
            }
        }

        static string Stitches(PiecePlan piece) => piece.Shape is { } shape && shape.ShortestRow != shape.WidestRow
            ? $"{shape.ShortestRow} to {shape.WidestRow} stitches"
            : $"{string.Join(" and ", piece.RowStitches)} stitches";

        static string First(Plan plan, PiecePlan piece) => string.Create(CultureInfo.InvariantCulture,
            $"{(plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair")} {plan.Sequence.NthUnit(piece.StartSection, piece.Start)} of {plan.Sequence.Colours[piece.StartSection].Name}");

        static string Side(PiecePlan piece) => piece.WrongSideOut ? "wrong side out" : "right side out";
    }

    private void Edgings(SizePlan size, SizePlan own)
    {
        Each(size.Edgings, own.Edgings, e => e.Where, Edge, "rounds", e => Counted(e.Rounds, "round"));
        Each(size.Edgings, own.Edgings, e => e.Where, Edge, "picked up", e => Counted(e.PickUp, "stitch", "stitches"));

        static string Edge(EdgingPlan edging) => $"edging of the {EdgingPlaces.Words(edging.Where)}";
    }

    private void Supplies(Plan pattern, SizePlan size, Plan own)
    {
        var (was, now) = (size.Yarn, own.Sizes[0].Yarn);
        Add("variegated yarn", Wording.Yarn(was.Length, _units), Wording.Yarn(now.Length, _units));
        Add("variegated balls", Balls(was.BallsSafe, pattern.Project.Yarn.Ball), Balls(now.BallsSafe, own.Project.Yarn.Ball));
        Add("companion yarn", pattern.Project.Companion?.Name ?? None, own.Project.Companion?.Name ?? None);
        Add("companion yarn, length", Companion(was), Companion(now));
        Add("companion balls", was.Companion is { } a ? Counted(a.Balls, "ball") : None, now.Companion is { } b ? Counted(b.Balls, "ball") : None);
        Add("pieces that come out well", Well(size), Well(own.Sizes[0]));

        string Balls(int balls, Ball ball) => $"{Counted(balls, "ball")} of {Wording.Yarn(ball.Length, _units)}";
        string Companion(YarnPlan yarn) => yarn.CompanionLength == Length.Zero ? None : Wording.Yarn(yarn.CompanionLength, _units);
        static string Well(SizePlan of) => of.MadeWell is { } well ? FormattableString.Invariant($"{100 * well:0} of 100") : None;
    }

    /// <summary>What is in both is compared, what is in one alone is said.</summary>
    private void Each<T, TKey>(
        IEnumerable<T> was, IEnumerable<T> now, Func<T, TKey> key, Func<T, string> name, string what, Func<T, string> say)
        where TKey : notnull
    {
        var after = now.ToDictionary(key);
        foreach (var item in was)
        {
            Add(Named(item), say(item), after.Remove(key(item), out var own) ? say(own) : None);
        }
        foreach (var item in after.Values)
            Add(Named(item), None, say(item));

        string Named(T item) => what.Length == 0 ? name(item) : $"{name(item)}, {what}";
    }

    private void Add(string what, string from, string to)
    {
        if (from != to)
            _changes.Add(new AdaptChange(what, from, to));
    }

    private string Say(Length length) => Wording.Fine(length, _units);

    private static string Units(Plan plan, double units) => $"{Number(units)} {(plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitches" : "pairs of stitches")}";

    private static string Counted(int count, string one, string? several = null) => $"{count} {(count == 1 ? one : several ?? one + "s")}";

    private static string Number(double number) => Math.Round(number, 1).ToString("0.#", CultureInfo.InvariantCulture);
}
