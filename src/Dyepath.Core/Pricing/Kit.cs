using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Pricing;

/// <summary>What a group that makes one size together needs: each person's safe balls, and one ball in ten more.</summary>
/// <param name="People">1 or more.</param>
/// <param name="Balls">Of the variegated yarn, those in reserve included.</param>
/// <param name="CompanionBalls">Of the companion yarn, those in reserve included; missing where there is none.</param>
/// <param name="Markers">As many as each has in the work at once.</param>
/// <param name="Buttons">Missing where nothing is buttoned.</param>
public sealed record Kit(int People, int Balls, int? CompanionBalls, int Markers, int? Buttons)
{
    /// <summary>One ball in so many is in reserve (common practice, no source).</summary>
    public const int ReserveOneIn = 10;

    /// <summary>One for each.</summary>
    public int Hooks => People;

    /// <summary>For so many people in one size.</summary>
    /// <param name="at">Index of the size.</param>
    public static Kit For(Plan plan, int at, int people)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var size = plan.Sizes[at];
        return new Kit(
            people,
            WithReserve(people * size.Yarn.BallsSafe),
            size.Yarn.Companion is { } companion ? WithReserve(people * companion.Balls) : null,
            people * BeforeSection.Markers(size),
            Notions.Buttons(plan) is { } buttons ? people * buttons.Values[at] : null);
    }

    private static int WithReserve(int balls) => balls + (balls + ReserveOneIn - 1) / ReserveOneIn;
}
