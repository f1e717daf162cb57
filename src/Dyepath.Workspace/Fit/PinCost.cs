using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Workspace.Fit;

/// <summary>What was fixed by hand, against the plan without it.</summary>
public static class PinCost
{
    /// <param name="size">Index of the size whose yarn is said.</param>
    public static string Say(Plan pinned, Plan free, int size)
    {
        var units = pinned.Project.Edition.Units;
        var (furthest, freeFurthest) = (pinned.Chosen.SayFurthest(units), free.Chosen.Furthest?.Say(units));
        var (yarn, freeYarn) = (pinned.Sizes[size].Yarn.Length, free.Sizes[size].Yarn.Length);
        var (counts, freeCounts) = (pinned.Chosen.Counts.Length, free.Chosen.Counts.Length);
        var name = pinned.Sizes[size].Name;
        string[] parts =
        [
            pinned.Chosen.Furthest == free.Chosen.Furthest ? $"{furthest}, as without them" : $"{furthest} (without them {freeFurthest})",
            counts == freeCounts ? $"as many counts ({counts})" : $"{counts} counts instead of {freeCounts}",
            yarn == freeYarn
                ? $"the same yarn in size {name}"
                : $"{Wording.Yarn(yarn, units)} of yarn instead of {Wording.Yarn(freeYarn, units)} in size {name}",
        ];
        return $"With the counts that you fixed: {Wording.List(parts)}.";
    }
}

/// <summary>A count that the designer is about to fix.</summary>
/// <param name="What"><c>panelStitches</c> or <c>panelRows</c>.</param>
/// <param name="Error">What the size's measure along the stitches would miss; missing for rows.</param>
/// <param name="FromRuler">Asked on the ruler, or else in the table.</param>
public sealed record PinProposal(string Size, string What, int Count, Length? Finished, Length? Error, bool FromRuler);
