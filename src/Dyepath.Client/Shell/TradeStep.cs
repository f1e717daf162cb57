using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Fit;
using Dyepath.Workspace.Work;

namespace Dyepath.Client.Shell;

/// <summary>One step of the trade's own order: a page with its address.</summary>
/// <param name="Address">Last part of its address.</param>
/// <param name="Places">Parts of the document that it shows, so that a finding can lead there; longer ones decide first.</param>
public sealed record TradeStep(string Address, string Name, Type Page, params string[] Places)
{
    public static IReadOnlyList<TradeStep> All { get; } =
    [
        new("yarn", "Yarn", typeof(Yarn.YarnPage), "yarn", "companion"),
        new("swatch", "Swatch", typeof(Swatch.SwatchPage), "fabric"),
        new("garment", "Garment", typeof(Garment.GarmentPage), "garment", "sizes"),
        new("fit", "Fit", typeof(Fit.FitPage), "garment.grading", "garment.direction", "sizes.locked", "sizes.overrides"),
        new("fabric", "Fabric", typeof(Fabric.FabricPage), "garment.seams", "garment.starts"),
        new("pattern", "Pattern", typeof(Pattern.PatternPage), "title", "designer", "edition", "words", "photos"),
        new("make", "Make", typeof(Making.Handing.BeginPage)),
    ];

    /// <summary>Steps that show the garment and how it fits: what is to be known of either is told on both.</summary>
    private static readonly string[] OfGarment = ["garment", "fit"];

    /// <summary>
    /// All that is to be known at a step, the worst first: what keeps the design from being planned, wherever it is, and what lies on the
    /// step. The one list that pages, the panel and the steps' marks tell and count.
    /// </summary>
    public ImmutableArray<Finding> Findings(Outcome? outcome) =>
        [
            .. (outcome?.Findings ?? []).Where(f => f.Level == FindingLevel.Fault || Tells(f)).OrderByDescending(f => f.Level)
                // The same thing wanted of several colours is asked for once.
                .DistinctBy(f => outcome!.IsWanted(f) ? f.Text : f.Place + f.Text),
        ];

    /// <summary>The step after it; missing after the last.</summary>
    public TradeStep? Next => All.SkipWhile(step => step != this).Skip(1).FirstOrDefault();

    /// <summary>How far it is, by what is wanted, wrong or doubtful on it; one that only shows what was planned is never done.</summary>
    public StepState State(Outcome? outcome)
    {
        var here = (outcome?.Findings ?? []).Where(f => Showing(f.Place) == this).ToArray();
        var faults = here.Where(f => f.Level == FindingLevel.Fault).ToArray();
        return faults.Any(f => !outcome!.IsWanted(f)) ? StepState.Wrong
            : faults.Length > 0 ? StepState.Wanting
            : here.Any(f => f.Level == FindingLevel.Warning) || IsPoor(outcome?.Plan) ? StepState.Doubtful
            : IsDone(outcome) ? StepState.Done
            : StepState.Open;
    }

    private bool IsPoor(Plan? plan) => Address == "fit" && plan is not null && FitVerdict.Of(plan).Prospect != Prospect.Good;

    /// <summary>What it asks for is put in, and none of it is the example's.</summary>
    private bool IsDone(Outcome? outcome) => Address is "yarn" or "swatch" or "garment" or "fit"
        && outcome is { Plan: not null, Project: { } project } && !ExampleValues.Of(project).Any(v => Showing(v.Place) == this);

    /// <summary>The place of a finding lies on the step, or on one that is told together with it; the pattern tells all.</summary>
    private bool Tells(Finding finding)
    {
        var step = Showing(finding.Place);
        return Address == "pattern" || step == this || (OfGarment.Contains(Address) && OfGarment.Contains(step.Address));
    }

    /// <summary>The step at an address of the program; the first one where it names none.</summary>
    public static TradeStep At(string address)
    {
        var path = address.Split('?', '#')[0];
        return All.FirstOrDefault(step => path.EndsWith($"/{step.Address}", StringComparison.Ordinal)) ?? All[0];
    }

    /// <summary>The step that shows a place of the document.</summary>
    public static TradeStep Showing(string place) => All
        .SelectMany(step => step.Places, (step, shown) => (step, shown))
        .Where(s => place == s.shown || place.StartsWith(s.shown + ".", StringComparison.Ordinal) || place.StartsWith(s.shown + "[", StringComparison.Ordinal))
        .OrderByDescending(s => s.shown.Length).Select(s => s.step).FirstOrDefault() ?? All[0];
}
