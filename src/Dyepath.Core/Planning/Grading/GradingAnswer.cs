using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What a size gets.</summary>
/// <param name="Way">Index of a way.</param>
/// <param name="Rounds">Of its edging; missing where none was open.</param>
/// <param name="Finished">Edgings and all.</param>
internal sealed record GradingPick(int Way, int? Rounds, Length Finished);

/// <summary>A way and an edging for every size.</summary>
/// <param name="Picks">In the problem's order of sizes.</param>
/// <param name="Charts">The distinct stitch counts that are used, ascending.</param>
/// <param name="Cost">The objective in cm²: losses, penalties, and what the counts cost.</param>
/// <param name="WorstError">The furthest that a size comes out from its target.</param>
/// <param name="WorstMisfit">The same, each size's error over its tolerance.</param>
internal sealed record GradingPlan(
    ImmutableArray<GradingPick> Picks, ImmutableArray<int> Charts, double Cost, Length WorstError, Length WorstMisfit);

/// <summary>The plan that is made where so many counts are allowed.</summary>
internal sealed record GradingPoint(int Allowed, GradingPlan Plan);

/// <summary>The answer to a grading problem.</summary>
/// <param name="Curve">
/// For every number of counts that has a plan, the plan that is made where that number is allowed. Along it the
/// worst misfit never rises, and falls by at least the saving for every count more that is used.
/// </param>
/// <param name="Plan">The curve's plan at the number of counts that is allowed; missing where the rules cannot all hold.</param>
/// <param name="IsProven">False where the work was cut short: the plan keeps all rules, but a better one may exist.</param>
internal sealed record GradingAnswer(ImmutableArray<GradingPoint> Curve, GradingPlan? Plan, bool IsProven);

/// <summary>Rules that cannot all hold for these sizes, while without any one of the sizes or rules named the others could.</summary>
/// <param name="Sizes">Indices, ascending.</param>
/// <param name="Pins">Sizes of these whose fixed way is part of the conflict.</param>
/// <param name="Rise">That sizes become larger.</param>
/// <param name="Floor">That no size comes below its floor.</param>
/// <param name="MostCounts">That no more counts are used.</param>
/// <param name="OneLean">That one pattern has one lean.</param>
/// <param name="IsProven">False where the work was cut short, so that the sizes and rules named may not conflict.</param>
internal sealed record GradingConflict(
    ImmutableArray<int> Sizes, ImmutableArray<int> Pins, bool Rise, bool Floor, bool MostCounts, bool OneLean, bool IsProven);
