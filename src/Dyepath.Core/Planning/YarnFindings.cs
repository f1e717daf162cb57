using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Findings;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Planning;

/// <summary>What the designer should know of her yarn, and of a hook and a gauge that cannot belong to it.</summary>
internal static class YarnFindings
{
    /// <summary>Where it is said that the hook cannot be right.</summary>
    internal const string Hook = "fabric.swatch.hook";

    /// <summary>Where it is said that stitches of a colour cannot be right.</summary>
    internal const string SectionStitches = "fabric.sectionStitches";

    /// <summary>Where it is said that the gauge cannot be right.</summary>
    internal const string Worked = "fabric.swatch.worked";

    /// <summary>Open work takes a hook of up to so many times the largest usual one (common practice, no source).</summary>
    private const double LargestHook = 2.5;

    /// <summary>Firm work takes one down to this share of the smallest (common practice, no source).</summary>
    private const double SmallestHook = 0.5;

    /// <summary>What lies behind the reasons where there is no plan: measures that cannot be right, and a yarn of one colour.</summary>
    public static IEnumerable<Finding> Behind(SharedFabric shared)
    {
        if (OfOneColour(shared) is { } single)
            yield return single;
        foreach (var wrong in Of(shared).Where(IsWrong))
            yield return wrong;
    }

    /// <summary>A measure that cannot be right, whatever is made of it.</summary>

    public static bool IsWrong(Finding finding) =>
        finding.Level == FindingLevel.Warning && finding.Place is Hook or Worked or SectionStitches;

    public static IEnumerable<Finding> Of(SharedFabric shared)
    {
        var project = shared.Project;
        if (project.Yarn.Ball.Length < 2 * shared.YarnPerUnit * shared.Ring.SequenceUnits)
            yield return new Finding(
                FindingLevel.Warning, "yarn.ball.length", "A ball holds less than two sequences: every join may waste half of it.");
        foreach (var pair in LookAlikes.Find(
            [.. project.Yarn.Sections.Select(s => new NamedColour(s.Name, s.Colour))], LookAlikeLimits.Default))
            yield return new Finding(pair.Viewing == Viewing.Normal ? FindingLevel.Warning : FindingLevel.Note, "yarn.sections", Words(pair));
        foreach (var weight in Weight(project))
            yield return weight;
        if (OutOfReach(shared) is { } outOfReach)
            yield return outOfReach;
        if (OfAnotherYarn(shared) is { } another)
            yield return another;
        if (project.Yarn.Name == StarterDocument.UnnamedYarn)
            yield return new Finding(
                FindingLevel.Note, "yarn.name", $"The yarn is still called “{StarterDocument.UnnamedYarn}”: put in its name and colourway, so that makers find it.");
        if (OfOneColour(shared) is { } single)
            yield return single;
    }

    /// <summary>No count makes a motif of it.</summary>
    private static Finding? OfOneColour(SharedFabric shared) => shared.Period is not null ? null : new Finding(
        FindingLevel.Warning, "yarn.sections", "All sections have one colour: there is nothing to pool. Give each section the colour that it has in the yarn.");

    /// <summary>Ball, category and hook held against each other.</summary>
    private static IEnumerable<Finding> Weight(Project project)
    {
        var ball = project.Yarn.Ball;
        var grist = ball.Length.Metres / ball.Mass.Grams * 100;
        var usual = YarnWeights.ByGrist(grist, YarnWeightRevision.B);
        if (project.Yarn.Category is { } named && usual.All(w => w.Category != named))
            yield return new Finding(FindingLevel.Note, "yarn.category", FormattableString.Invariant(
                $"The pattern names yarn weight category {named}; {grist:0} m in 100 g is usual for category {string.Join(" or ", usual.Select(w => $"{w.Category} ({w.Name})"))}: check the category, or the ball."));
        var hook = Length.FromMillimetres(project.Fabric.Swatch.HookMillimetres);
        var (least, most) = (usual.Min(w => w.Hook.Least), usual.Max(w => w.Hook.Most));
        var isLarge = hook > LargestHook * most;
        if (isLarge || hook < SmallestHook * least)
            yield return new Finding(FindingLevel.Warning, Hook, FormattableString.Invariant(
                $"A hook of {hook.Millimetres:0.##} mm is far too {(isLarge ? "large" : "small")} for this yarn: {grist:0} m in 100 g is usually worked with {least?.Millimetres:0.##} to {most?.Millimetres:0.##} mm. Check the hook, and the ball's length and mass."));
    }

    /// <summary>
    /// A gauge whose stitches are so many times taller or flatter than published ones was miscounted (an assumption without a source).
    /// </summary>
    private const double Misshapen = 2;

    /// <summary>
    /// A single crochet's yarn goes up the row's height and down again and across the stitch, whatever else it does: with less, there is
    /// no such stitch. Taller stitches take more, and a chain no less than it is wide.
    /// </summary>
    private static Finding? OutOfReach(SharedFabric shared)
    {
        var (gauge, stitches) = (shared.Project.Fabric.Swatch.Worked, shared.Stitch.StitchesPerUnit);
        var (wide, tall) = (stitches * gauge.StitchWidth, gauge.RowHeight);
        var shape = gauge.RowHeight / gauge.StitchWidth / shared.Stitch.HeightOverWidth;
        if (shared.YarnPerUnit >= 2 * tall + wide)
        {
            return shape is < Misshapen and > 1 / Misshapen ? null : new Finding(FindingLevel.Warning, Worked, FormattableString.Invariant(
                $"By the gauge a stitch is {Wording.Fine(gauge.StitchWidth, shared.Project.Edition.Units)} wide and {Wording.Fine(gauge.RowHeight, shared.Project.Edition.Units)} tall. {Usual(shared)}Check the swatch's stitches and rows."));
        }
        return new Finding(FindingLevel.Warning, Worked, FormattableString.Invariant(
            $"By the gauge {(stitches == 1 ? "a stitch" : "a pair of stitches")} is {Wording.Fine(wide, shared.Project.Edition.Units)} wide and {Wording.Fine(tall, shared.Project.Edition.Units)} tall; the {Wording.Fine(shared.YarnPerUnit, shared.Project.Edition.Units)} of yarn in it do not reach up, down and across. {Usual(shared)}Check the swatch's stitches and rows, and the yarn that was measured."));
    }

    /// <summary>How many rows go with the swatch's stitches.</summary>
    private static string Usual(SharedFabric shared)
    {
        var gauge = shared.Project.Fabric.Swatch.Worked;
        return FormattableString.Invariant(
            $"In this stitch {gauge.Stitches:0.##} stitches usually go with about {gauge.Stitches / shared.Stitch.HeightOverWidth:0} rows. ");
    }

    /// <summary>Colours that are to take what no hand makes of them.</summary>
    private static Finding? OfAnotherYarn(SharedFabric shared)
    {
        var (project, measured) = (shared.Project, shared.Sequence.Measured);
        if (project.Fabric.Keeping == ColourKeeping.Free || project.Fabric.SectionStitches is null)
            return null;
        var each = measured.Tension().Where(t => t.IsOfAnotherYarn).Select(t => FormattableString.Invariant(
            $"{project.Yarn.Sections[t.Section].Name} is to take {t.Stitches} where its yarn makes {measured.Natural.Sections[t.Section].Value:0.0}")).ToArray();
        return each.Length == 0 ? null : new Finding(FindingLevel.Warning, SectionStitches,
            $"Stitches of a colour: {Wording.List(each)}. No hand works so much {(measured.Tension().First(t => t.IsOfAnotherYarn).Change > 0 ? "looser" : "tighter")}: write the nearest whole stitches ({string.Join(", ", measured.Natural.Nearest())}), or count this yarn again.");
    }

    private static string Words(LookAlike pair)
    {
        var meet = pair.Adjacent ? "They meet along the yarn, so that their border is hard to count" : "The charts' symbols tell them apart";
        return string.Create(CultureInfo.InvariantCulture, $"{pair.First.Name} and {pair.Second.Name} look much alike to {pair.Viewing.Words()} (difference {pair.Difference:0.0}). {meet}.");
    }
}
