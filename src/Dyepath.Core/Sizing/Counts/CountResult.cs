using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>Why no plan exists.</summary>
public enum NoPlanReason
{
    /// <summary>The sizes named have no candidate at all that they may have.</summary>
    SizeHasNoCandidate,

    /// <summary>The sizes named are pinned to a candidate that they exclude, or that their loss does not allow.</summary>
    PinNotAllowed,

    /// <summary>The pins alone use more distinct counts than allowed; the pinned sizes are named.</summary>
    PinsUseTooManyCounts,

    /// <summary>Every size has a candidate, but so few distinct counts cannot serve them all; no size is to blame.</summary>
    TooFewCounts,
}

/// <summary>Why no plan exists, and for which sizes.</summary>
/// <param name="Reason">What stands in the way.</param>
/// <param name="Sizes">Indices of the sizes concerned, ascending.</param>
public sealed record NoPlan(NoPlanReason Reason, ImmutableArray<int> Sizes);

/// <summary>Either a plan or the reason why there is none.</summary>
public sealed class CountResult
{
    internal CountResult(CountPlan plan) => Plan = plan;

    internal CountResult(NoPlan noPlan) => NoPlan = noPlan;

    [MemberNotNullWhen(true, nameof(Plan))]
    [MemberNotNullWhen(false, nameof(NoPlan))]
    public bool HasPlan => Plan is not null;

    public CountPlan? Plan { get; }

    public NoPlan? NoPlan { get; }
}
