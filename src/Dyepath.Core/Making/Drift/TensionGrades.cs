using System.Collections.Immutable;

namespace Dyepath.Core.Making.Drift;

/// <summary>
/// How much tighter or looser than her natural hands a maker is asked to work: the only levels that words have, and therefore the only
/// ones that advice has. What she makes of them is the filter's gain. (The levels are an assumption, without a source.)
/// </summary>
public static class TensionGrades
{
    /// <summary>Relative, the least first: a touch, a little, plainly, much.</summary>
    public static ImmutableArray<double> Levels { get; } = [0.01, 0.015, 0.03, 0.05];

    private static readonly ImmutableArray<string> Words = ["a touch ", "a little ", "", "much "];

    /// <summary>Every level within what hands can do, both ways, and none at all.</summary>
    /// <param name="most">As <see cref="DriftPlace.LargestCorrection"/>.</param>
    public static IEnumerable<double> Within(double most) =>
        Levels.Where(level => level <= most).SelectMany(level => (double[])[-level, level]).Prepend(0);

    /// <summary>0, natural hands; ±1 to ±4 by <see cref="Levels"/>, negative tighter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No word means this.</exception>
    public static int GradeOf(double level)
    {
        int grade = Levels.IndexOf(Math.Abs(level)) + 1;
        return grade == 0 && level != 0
            ? throw new ArgumentOutOfRangeException(nameof(level), level, "No word means this.")
            : Math.Sign(level) * grade;
    }

    /// <summary>The inverse of <see cref="GradeOf"/>.</summary>
    /// <param name="grade">In [−4, 4].</param>
    public static double LevelOf(int grade) => grade == 0 ? 0 : Math.Sign(grade) * Levels[Math.Abs(grade) - 1];

    /// <summary>Such as <c>a touch tighter</c>; nothing for natural hands.</summary>
    /// <param name="level">One of <see cref="Within"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">No word means this.</exception>
    public static string? Say(double level)
    {
        int grade = GradeOf(level);
        return grade == 0 ? null : Words[Math.Abs(grade) - 1] + (level < 0 ? "tighter" : "looser");
    }
}
