using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Fit;

/// <summary>Fit in a maker's words.</summary>
public static class FitWords
{
    /// <summary>Half a millimetre: what no tape shows.</summary>
    private static readonly Length Unseen = Length.FromMillimetres(0.5);

    /// <summary>Finished less target, such as <c>1.2 cm over</c>.</summary>
    public static string Error(Length error, Units units) =>
        IsAsAsked(error) ? "as asked" : error > Length.Zero ? $"{Wording.Fine(error, units)} over" : $"{Wording.Fine(-error, units)} under";

    /// <summary>What is held against the body, such as <c>Neck opening, all round</c>: how far it stretches is told beside it.</summary>
    public static string Part(WornFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Wording.Capital(FitPartNames.Alone(fit.Part));
    }

    /// <summary>Such as <c>6 cm to spare</c>, or <c>1.2 cm too little</c>.</summary>
    public static string Spare(WornFit fit, Units units)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var spare = fit.Spare;
        return IsAsAsked(spare) ? "just enough" : fit.Holds ? $"{Wording.Fine(spare, units)} to spare" : $"{Wording.Fine(-spare, units)} too little";
    }

    /// <summary>Off by no more than a tape shows.</summary>
    public static bool IsAsAsked(Length error) => error <= Unseen && error >= -Unseen;

    /// <summary>Such as <c>84 stitches</c>, or <c>84 and 85 stitches in turn</c>.</summary>
    public static string Stitches(RulerCount count) => count.RowStitches.Length == 2
        ? $"{count.Stitches} and {count.Stitches + 1} stitches in turn"
        : $"{count.Stitches} stitches";

    /// <summary>How far yarn per stitch may drift, and what that is in a row.</summary>
    public static string Forgives(RulerCount count, Units units)
    {
        if (count.RowSlack <= Length.Zero)
            return "Forgives nothing.";
        var (tighter, looser) = (-count.Forgives.Tighter, count.Forgives.Looser);
        var row = $"{Wording.Say(count.RowSlack, units)} in a row of {Yarn(count.RowYarn, units)}";
        return string.Create(
            CultureInfo.InvariantCulture, $"Forgives yarn per stitch {tighter:0.0 %} tighter to {looser:0.0 %} looser: {row}.");
    }

    /// <summary>A sentence; empty where nothing is asked.</summary>
    public static string Task(CountTask task) => task switch
    {
        CountTask.None => "",
        CountTask.ExtraEdgeStitch => "Asks for one stitch more in every other row.",
        CountTask.HalfStitchTurn => "Asks for turns that take half a stitch of yarn.",
        _ => "Asks for one stitch more in every other row, and for turns that take half a stitch of yarn.",
    };

    /// <summary>In metres, or in yards where inches come first.</summary>
    public static string Yarn(Length length, Units units) => Wording.InchesFirst(units)
        ? string.Create(CultureInfo.InvariantCulture, $"{length.Inches / 36:0.0} yd")
        : string.Create(CultureInfo.InvariantCulture, $"{length.Metres:0.0} m");

    /// <summary>How stripes lie that are named as they are worked and drawn as they are worn; null where both are the same.</summary>
    public static string? Lie(MotifKind motif, Direction direction) => (motif, direction) switch
    {
        (MotifKind.Columns, Direction.Sideways) => "upright as worked, across as worn",
        (MotifKind.Bands, Direction.Sideways) => "across as worked, upright as worn",
        _ => null,
    };

    /// <summary>As the document says it.</summary>
    public static string Name(Direction direction) => direction == Direction.Up ? "up" : "sideways";

    /// <summary>What a ruler measures, such as <c>girth</c>.</summary>
    public static string Ruled(GarmentMeasure measure, Construction construction) => measure switch
    {
        GarmentMeasure.Width when construction.Groups.Any(g => g.Across is { Measure: GarmentMeasure.Width, Pieces: > 1 }) => "girth",
        GarmentMeasure.Width => "width",
        _ => GarmentMeasures.Words(measure),
    };

    /// <summary>A number that can be fixed, by its name in the document.</summary>
    public static string Fixable(string what) => FixedCounts.Find(what) is var (group, isStitches)
        ? $"{(isStitches ? "stitches" : "rows")} of a {group}"
        : Enum.TryParse<GarmentMeasure>(what, ignoreCase: true, out var measure) ? GarmentMeasures.Words(measure) : what;
}
