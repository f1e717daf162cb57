using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Fit;

/// <summary>What was fixed by hand, against the plan without it.</summary>
public static class PinCost
{
    /// <param name="size">Index of the size whose yarn is said.</param>
    public static string Say(Plan pinned, Plan free, int size)
    {
        var units = pinned.Project.Edition.Units;
        var (furthest, freeFurthest) = (DirectionWords.Furthest(pinned.Chosen, units), free.Chosen.Furthest?.Say(units));
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
