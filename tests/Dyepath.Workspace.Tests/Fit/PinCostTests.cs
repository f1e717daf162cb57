using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

/// <summary>What fixing counts by hand costs, as the Fit page tells it.</summary>
public sealed class PinCostTests
{
    [Fact]
    public void A_plan_against_itself_costs_nothing()
    {
        var plan = FitBench.Plan(FitBench.Demo()).Plan!;
        Assert.Equal(
            $"With the counts that you fixed: {DirectionWords.Furthest(plan.Chosen, Units.CentimetresThenInches)}, as without them, "
            + $"as many counts ({plan.Chosen.Counts.Length}) and the same yarn in size M.",
            PinCost.Say(plan, plan, 2));
    }

    [Fact]
    public void A_count_fixed_for_one_size_says_fit_counts_and_yarn_with_it_and_without_it()
    {
        var document = FitBench.Demo();
        var free = FitBench.Plan(document).Plan!;
        document.Set("edition.units", "cm");
        FitEdits.Pin(document, free.Direction, "M", "panelRows", free.Sizes[2].Pieces[0].Rows + 20, "longer");
        var pinned = FitBench.Plan(document).Plan!;
        var words = PinCost.Say(pinned, free, 2);
        Assert.StartsWith("With the counts that you fixed: furthest off", words, StringComparison.Ordinal);
        var (more, less) = (Wording.Yarn(pinned.Sizes[2].Yarn.Length, Units.Centimetres), Wording.Yarn(free.Sizes[2].Yarn.Length, Units.Centimetres));
        Assert.NotEqual(more, less);
        Assert.EndsWith($" and {more} of yarn instead of {less} in size M.", words, StringComparison.Ordinal);
        var (counts, freeCounts) = (pinned.Chosen.Counts.Length, free.Chosen.Counts.Length);
        Assert.Contains(
            counts == freeCounts ? $", as many counts ({counts}) and " : $", {counts} counts instead of {freeCounts} and ", words,
            StringComparison.Ordinal);
        Assert.Contains(
            pinned.Chosen.Furthest == free.Chosen.Furthest ? ", as without them, "
                : $" (without them {free.Chosen.Furthest!.Say(Units.Centimetres)}), ", words, StringComparison.Ordinal);
        Assert.Contains($"{less} of yarn instead of {more}", PinCost.Say(free with { Project = pinned.Project }, pinned, 2), StringComparison.Ordinal);
    }
}
