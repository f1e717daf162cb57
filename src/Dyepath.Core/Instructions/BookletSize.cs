using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Instructions;

/// <summary>How much of a booklet's charts can be written at once, known before any of it is.</summary>
public static class BookletSize
{
    /// <summary>
    /// Stitches in all charts of an edition. Each is drawn with its colour, symbol and lines: so many stay within half a gigabyte and ten
    /// seconds of one core in each form of the booklet (docs/performance.md).
    /// </summary>
    public const int MostChartStitches = 1_000_000;

    /// <summary>Null where an edition's charts can be written; else what they come to, and what to leave out.</summary>
    public static Finding? TooLarge(Plan plan, Edition edition)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(edition);
        return TooLarge(new PatternContext(plan), edition);
    }

    internal static Finding? TooLarge(PatternContext context, Edition edition)
    {
        var stitches = Stitches(context, edition.Size);
        if (stitches <= MostChartStitches)
            return null;
        var (place, leaveOut) = edition.Size is null && context.Plan.Sizes.Length > 1
            ? ("edition.size", "Print one size alone, or plan fewer sizes")
            : ("garment", "Make a smaller garment, or a coarser fabric");
        return new Finding(FindingLevel.Fault, place, FormattableString.Invariant(
            $"The charts come to {stitches:#,0} stitches; {MostChartStitches:#,0} can be printed together. {leaveOut}; the tables of row starts say the same without charts."));
    }

    /// <summary>
    /// Which charts the pattern draws: all where they fit together, else those of the edition's one size where these fit.
    /// </summary>
    internal static Func<ChartVariant, bool> Drawn(PatternContext context)
    {
        if (Stitches(context, null) <= MostChartStitches)
            return _ => true;
        var size = context.Project.Edition.Size;
        var fits = size is not null && Stitches(context, size) <= MostChartStitches;
        return chart => fits && chart.Sizes.Contains(size!);
    }

    private static long Stitches(PatternContext context, string? size) =>
        context.Charts.Where(chart => size is null || chart.Sizes.Contains(size)).Sum(chart => chart.Cells);
}
