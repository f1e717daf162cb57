using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;

namespace Dyepath.Workspace.Swatch;

/// <summary>Measurements that do not belong to one yarn: nothing is to be advised from them.</summary>
public static class MeasuringDoubt
{
    /// <summary>What to measure before a hook is advised; null where nothing stands against it.</summary>
    /// <param name="project">That the measurements are of.</param>
    public static string? BeforeAdvice(MeasuredYarn measured, Project project)
    {
        ArgumentNullException.ThrowIfNull(measured);
        if (ExampleValues.Has(project, "yarn.counted"))
            return "The counts are still those of the example, not of your yarn. Count your yarn first; then a hook can be advised.";
        if (measured.Tension().Any(t => t.IsOfAnotherYarn))
            return "What a colour takes by itself and what it shall take are too far apart to be of one yarn. Count this yarn again, "
                + "or go back to the nearest whole stitches above; then a hook can be advised.";
        if (!measured.YarnPerStitch.Disagreements.IsEmpty)
            return "The yarn in one stitch comes out in two ways that contradict each other. Unravel and measure a row of this yarn again, "
                + "and check counts and lengths; then a hook can be advised.";
        return measured.Findings.Any(f => f.Kind is FindingKind.CountsAndLengthsDisagree or FindingKind.YarnPerStitchBeyondBelief)
            ? "Counts and lengths of this yarn contradict each other. Count it again, or measure its colours again; "
                + "then a hook can be advised."
            : null;
    }
}
