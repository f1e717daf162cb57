using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// When one more count is no longer worth its chart, its swatch and its pages. A number of counts K is
/// recommended when the worst error is at most <paramref name="Enough"/>, or when every larger number
/// K + j lowers the worst error by less than j × <paramref name="WorthOneCount"/>; the smallest such K wins.
/// </summary>
/// <param name="Enough">A worst error nobody needs to improve on, at least 0.</param>
/// <param name="WorthOneCount">What one further count must take off the worst error, at least 0.</param>
public readonly record struct KneeRule(Length Enough, Length WorthOneCount)
{
    /// <summary>1 cm is enough; a further count must take off ½ cm (common practice, no source).</summary>
    public static KneeRule Default { get; } = new(Length.FromCentimetres(1), Length.FromCentimetres(0.5));
}

/// <summary>Worst error against number of counts. The worst error never rises along it.</summary>
public sealed class TradeOff
{
    internal TradeOff(ImmutableArray<CountResult> byCounts) => ByCounts = byCounts;

    /// <summary>
    /// Element k allows k + 1 counts. Early elements may have no plan (pins, or counts that not every size may have).
    /// </summary>
    public ImmutableArray<CountResult> ByCounts { get; }

    /// <summary>The plan at the knee, or the reason of the last element when no number of counts has a plan.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative length in the rule.</exception>
    public CountResult Recommended(KneeRule rule)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rule.Enough, Length.Zero, nameof(rule));
        ArgumentOutOfRangeException.ThrowIfLessThan(rule.WorthOneCount, Length.Zero, nameof(rule));
        for (int k = 0; k < ByCounts.Length; k++)
        {
            if (ByCounts[k].Plan is { } plan && (plan.WorstError <= rule.Enough || IsKnee(k, plan.WorstError, rule.WorthOneCount)))
                return ByCounts[k];
        }

        return ByCounts[^1];
    }

    private bool IsKnee(int k, Length worst, Length worthOneCount)
    {
        for (int more = k + 1; more < ByCounts.Length; more++)
        {
            if (ByCounts[more].Plan is { } plan && worst - plan.WorstError >= (more - k) * worthOneCount)
                return false;
        }

        return true;
    }
}
