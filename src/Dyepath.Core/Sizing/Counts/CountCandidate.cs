using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>A stitch count that sizes may be given. Candidates are referred to by their place in the problem's list.</summary>
/// <param name="Measure">Finished length along the dimension that is graded, within ±1 km.</param>
/// <param name="Penalty">What the count costs beside its error (for example for forgiving little), in [0, 1e9] units of the loss.</param>
public readonly record struct CountCandidate(Length Measure, double Penalty = 0);
