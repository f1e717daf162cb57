using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>Buttons and elastics, which are bought for the edgings beside yarn.</summary>
public static class Notions
{
    /// <summary>Buttons of each size; null where nothing is buttoned.</summary>
    public static PerSize<int>? Buttons(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var context = new PatternContext(plan);
        return Enumerable.Range(0, plan.Sizes[0].Edgings.Length).Select(at => new ButtonWords(context, at).Holes)
            .FirstOrDefault(holes => holes is not null);
    }

    /// <summary>
    /// Elastic of each size for an edging, its overlap included; null where it takes none or the body's girth there is not known.
    /// </summary>
    /// <param name="at">Index of the edging in every size.</param>
    public static PerSize<Length>? Elastic(Plan plan, int at)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Sizes.All(s => s.Edgings[at].Elastic is not null)
            ? new PerSize<Length>([.. plan.Sizes.Select(s => s.Edgings[at].Elastic!.Value)])
            : null;
    }
}
