using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>Yarn of a pooling unit, from means of what was measured alone: no estimator, no errors.</summary>
internal static class PlainYarn
{
    /// <summary>Means and a weighted estimate of the same counts lie no farther apart, relative (an assumption without a source).</summary>
    public const double Slack = 0.05;

    /// <summary>As worked: what the sequence is worked with shares out the yarn that it has.</summary>
    public static Length Unit(Plan plan)
    {
        var yarn = plan.Project.Yarn;
        var worked = plan.Sequence.Ring.Sections.Sum() / (double)ColourRing.Unit;
        var counted = Counted(yarn);
        var length = yarn.Sections.All(s => s.Length is not null)
            ? yarn.Sections.Aggregate(Length.Zero, (sum, s) => sum + s.Length!.Value) : (Length?)null;
        if (Used(plan) is not { } each)
            return length is { } measured ? measured / worked : Supposed(plan) * (counted ?? worked) / worked;
        // What was counted says how much yarn the sequence has; else its length does.
        return counted is { } natural ? each * natural / worked : length is { } all ? all / worked : each;
    }

    /// <summary>
    /// Units that the sequence takes by itself, the mean of all whole repeats of all balls; null where nothing was counted.
    /// </summary>
    private static double? Counted(Yarn yarn)
    {
        var whole = yarn.Counted.SelectMany(ball => ball.Repeats).Where(r => r.Length == yarn.Sections.Length).ToArray();
        return whole.Length == 0 ? null : whole.Average(r => (double)r.Sum());
    }

    /// <summary>
    /// What unravelled stitches took, or else weighed ones where no sequence was both counted and measured; null where neither.
    /// </summary>
    private static Length? Used(Plan plan)
    {
        var (yarn, fabric) = (plan.Project.Yarn, plan.Project.Fabric);
        var used = fabric.Swatch.YarnUsed;
        var (unravelled, weighed) = (used.Where(u => u.Length is not null).ToArray(), used.Where(u => u.Mass is not null).ToArray());
        if (unravelled.Length > 0)
        {
            return unravelled.Aggregate(Length.Zero, (sum, u) => sum + u.Length!.Value)
                * ((double)fabric.Stitch.StitchesPerUnit / unravelled.Sum(u => u.Stitches));
        }
        if (weighed.Length == 0 || (Counted(yarn) is not null && yarn.Sections.All(s => s.Length is not null)))
            return null;
        var grams = weighed.Sum(u => u.Mass!.Value.Grams) / weighed.Sum(u => u.Stitches);
        return yarn.Ball.Length * (grams / yarn.Ball.Mass.Grams * fabric.Stitch.StitchesPerUnit);
    }

    /// <summary>
    /// A single crochet of nine times its width (derived from one hobbyist's measurement), other stitches by what they take of it.
    /// </summary>
    private static Length Supposed(Plan plan)
    {
        var (stitch, swatch) = (plan.Project.Fabric.Stitch, plan.Project.Fabric.Swatch);
        return swatch.Worked.Over / swatch.Worked.Stitches * (9 * stitch.YarnInSingleCrochet * stitch.StitchesPerUnit);
    }
}
