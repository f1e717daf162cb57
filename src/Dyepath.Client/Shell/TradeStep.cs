using Dyepath.Workspace.Shell;

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

    /// <summary>The step that shows a place of the document.</summary>
    public static TradeStep Showing(string place) => All
        .SelectMany(step => step.Places, (step, shown) => (step, shown))
        .Where(s => place == s.shown || place.StartsWith(s.shown + ".", StringComparison.Ordinal) || place.StartsWith(s.shown + "[", StringComparison.Ordinal))
        .OrderByDescending(s => s.shown.Length).Select(s => s.step).FirstOrDefault() ?? All[0];
}
