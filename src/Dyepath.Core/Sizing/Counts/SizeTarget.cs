using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>One size of the chart, as the grading program sees it. Checked by <see cref="CountProblem.Create"/>.</summary>
/// <param name="Target">
/// Length the count should measure: the size's finished length less its edging, seam and blocking. Within ±1 km.
/// </param>
/// <param name="Weight">How much the size's loss counts against the others', in [1e-6, 1e6].</param>
public sealed record SizeTarget(Length Target, double Weight = 1)
{
    /// <summary>Candidates this size may not have, by index, in any order.</summary>
    public ImmutableArray<int> Excluded { get; init; } = [];

    /// <summary>The candidate this size has by the designer's decision, whatever the others get.</summary>
    public int? Pinned { get; init; }

    /// <summary>A loss for this size alone; the problem's loss where absent.</summary>
    public ErrorLoss? Loss { get; init; }
}
