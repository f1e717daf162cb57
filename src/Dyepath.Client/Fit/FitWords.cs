using System.Globalization;
using Dyepath.Client.Draft;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Client.Fit;

/// <summary>Fit in a maker's words.</summary>
public static class FitWords
{
    /// <summary>Half a millimetre: what no tape shows.</summary>
    private static readonly Length Unseen = Length.FromMillimetres(0.5);

    /// <summary>Finished less target, such as <c>1.2 cm over</c>.</summary>
    public static string Error(Length error, Units units) =>
        error > Unseen ? $"{Wording.Say(error, units)} over" : error < -Unseen ? $"{Wording.Say(-error, units)} under" : "as asked";

    public static string Stitches(RulerCount count) => count.RowStitches.Length == 2
        ? $"{count.Stitches} and {count.Stitches + 1} stitches in turn"
        : $"{count.Stitches} stitches";

    /// <summary>How far yarn per stitch may drift, and what that is in a row.</summary>
    public static string Forgives(RulerCount count, Units units)
    {
        if (count.RowSlack <= Length.Zero)
            return "Forgives nothing.";
        var (tighter, looser) = (-count.ForgivesTighter, count.ForgivesLooser);
        var row = $"{Wording.Say(count.RowSlack, units)} in a row of {Yarn(count.RowYarn, units)}";
        return string.Create(
            CultureInfo.InvariantCulture, $"Forgives yarn per stitch {tighter:0.0 %} tighter to {looser:0.0 %} looser: {row}.");
    }

    public static string Task(CountTask task) => task switch
    {
        CountTask.None => "",
        CountTask.ExtraEdgeStitch => "Asks for one stitch more in every other row.",
        CountTask.HalfStitchTurn => "Asks for turns that take half a stitch of yarn.",
        _ => "Asks for one stitch more in every other row, and for turns that take half a stitch of yarn.",
    };

    public static string Yarn(Length length, Units units) => IsInches(units)
        ? string.Create(CultureInfo.InvariantCulture, $"{length.Inches / 36:0.0} yd")
        : string.Create(CultureInfo.InvariantCulture, $"{length.Metres:0.0} m");

    public static string YarnWhole(Length length, Units units) => IsInches(units)
        ? string.Create(CultureInfo.InvariantCulture, $"{length.Inches / 36:#,0} yd")
        : string.Create(CultureInfo.InvariantCulture, $"{length.Metres:#,0} m");

    public static bool IsInches(Units units) => units is Units.Inches or Units.InchesThenCentimetres;

    public static string Name(Direction direction) => direction == Direction.Up ? "up" : "sideways";

    /// <summary>What a ruler measures, such as <c>girth</c>.</summary>
    public static string Ruled(GarmentMeasure measure, GarmentShape shape) => (measure, shape) switch
    {
        (GarmentMeasure.Width, BoxyTop) => "girth",
        (GarmentMeasure.Width, _) => "width",
        (GarmentMeasure.Circumference, _) => "circumference",
        _ => MeasureWords.Of(measure),
    };

    /// <summary>A number that can be fixed, by its name in the document.</summary>
    public static string Fixable(string what) => what switch
    {
        "panelStitches" => "stitches of a panel",
        "panelRows" => "rows of a panel",
        "sleeveStitches" => "stitches of a sleeve",
        "sleeveRows" => "rows of a sleeve",
        _ => Enum.TryParse<GarmentMeasure>(what, ignoreCase: true, out var measure) ? MeasureWords.Of(measure) : what,
    };

    public static string List(IEnumerable<string> names)
    {
        var all = names.ToArray();
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }
}
